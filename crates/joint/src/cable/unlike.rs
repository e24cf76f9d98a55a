//! Unlike: one observation or reading of a cable that differs from its papers, with the finding and the expectation.
//!
//! Why its own file: the stop, the fail and the line of the page say it in one sentence.

use super::{Layer, Metal, Shield, ShieldKind, Stranding};
use jointwright_units::Interval;

/// Finding, followed by the papers' statement.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Unlike {
    /// Metal of the conductor.
    Metal(Metal, Metal),
    /// Arrangement of the strands.
    Stranding(Stranding, Stranding),
    /// Number of strands, if it is one where the papers have several, or several where they have one.
    Strands(u32, Stranding),
    /// Form of the metallic shield.
    ShieldKind(ShieldKind, ShieldKind),
    /// Straps or wires counted.
    ShieldElements(u32, Shield),
    /// A diameter.
    Over {
        /// Layer of the diameter.
        layer: Layer,
        /// Reading, errors included.
        read: Interval,
        /// Range by the papers, on the layers inside as they were read.
        papers: Interval,
    },
}
