//! Quantity: what of a field is judged, and where a gap is nearest to breakdown.

pub use crate::said::Quantity;
use jointwright_numerics::gas::Curve;

/// The way on which the gap before the edge of the screen, or a film, is nearest to breakdown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GapPlace {
    /// Index in the list of wanted numbers of the voltage along it over what air withstands.
    pub wanted_index: usize,
    /// By which curve of breakdown.
    pub curve: Curve,
}
