//! Unlike: one thing that was seen or read of a cable and is not as its papers have it, with what was found and what was expected.
//!
//! Why its own file: the stop, the fail and the line of the page say it in one sentence.

use super::{Layer, Metal, Shield, ShieldKind, Stranding};
use jointwright_units::Interval;

/// What was found, and then what the papers say.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Unlike {
    /// Metal of the conductor.
    Metal(Metal, Metal),
    /// How the strands lie.
    Stranding(Stranding, Stranding),
    /// Strands counted, where the papers have one and several were, or the other way round.
    Strands(u32, Stranding),
    /// Form of the metallic shield.
    ShieldKind(ShieldKind, ShieldKind),
    /// Straps or wires counted.
    ShieldElements(u32, Shield),
    /// A diameter.
    Over {
        /// Over which layer.
        layer: Layer,
        /// What was read, errors included.
        read: Interval,
        /// What it can be by the papers, on the layers inside as they were read.
        papers: Interval,
    },
}
