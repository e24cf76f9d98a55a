//! Quantity: the judged quantities of a field, and the ways on which a gap is nearest to breakdown.

pub use crate::said::Quantity;
use jointwright_numerics::gas::Curve;

/// Way on which the gap before the edge of the screen, or a film, is nearest to breakdown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GapPlace {
    /// Index in the list of wanted numbers: ratio of the voltage along the way to the voltage that air withstands.
    pub wanted_index: usize,
    /// Breakdown curve that was used.
    pub curve: Curve,
}
