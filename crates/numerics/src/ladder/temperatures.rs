//! Temperatures of all cells of a ladder, by their numbers.

/// Temperatures of all cells of one ladder, °C.
#[derive(Clone, Debug, PartialEq)]
pub struct Temperatures {
    pub(super) degc: Vec<f64>,
}
