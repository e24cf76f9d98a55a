//! Unknown: a fact that is missing for an answer about a cable.

use super::{Conductor, Wall};

/// A fact that is missing for an answer.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Unknown {
    /// No diameter row for this size and stranding.
    #[error("no row for {} {}", .conductor.size, .conductor.stranding.name())]
    ConductorDiameter {
        /// Conductor.
        conductor: Conductor,
    },
    /// No wall row for this class, level or voltage.
    #[error("no wall row for {}", .wall.phrase())]
    WallRow {
        /// Wall.
        wall: Wall,
    },
    /// No resistance row for this conductor.
    #[error("no DC resistance row for {}", .conductor.phrase(super::Words::Iec))]
    Resistance {
        /// Conductor.
        conductor: Conductor,
    },
    /// A lapped tape with an overlap that no tape has.
    #[error("overlap of the tape is {overlap_percent} %, from 0 to less than 95 % is expected")]
    Overlap {
        /// Stated overlap, %.
        overlap_percent: f64,
    },
}
