//! Conversion between the units of files and SI; no other file converts them.
//!
//! **Invariants.** One rounding each way: a division by a power of ten, which is exact as a float.

use crate::outline::Point;

/// Metres from millimetres.
pub(super) fn metres(mm: f64) -> f64 {
    mm / 1e3
}

/// A place in metres from one in millimetres.
pub(super) fn place(mm: [f64; 2]) -> Point {
    Point::new(metres(mm[0]), metres(mm[1]))
}

/// Volts from kilovolts.
pub(super) fn volts(kv: f64) -> f64 {
    kv * 1e3
}

/// Volts per metre from kilovolts per millimetre.
pub(super) fn volts_per_metre(kv_per_mm: f64) -> f64 {
    kv_per_mm * 1e6
}

/// Pascals from megapascals.
pub(super) fn pascals(mpa: f64) -> f64 {
    mpa * 1e6
}

/// Megapascals from pascals.
pub(super) fn megapascals(pa: f64) -> f64 {
    pa / 1e6
}

/// A place in millimetres from one in metres.
pub(super) fn place_mm(metres: Point) -> [f64; 2] {
    [metres.r * 1e3, metres.z * 1e3]
}

/// Kilovolts from volts.
pub(super) fn kilovolts(volts: f64) -> f64 {
    volts / 1e3
}

/// Kilovolts per millimetre from volts per metre.
pub(super) fn kilovolts_per_mm(volts_per_metre: f64) -> f64 {
    volts_per_metre / 1e6
}

/// Picofarads from farads.
pub(super) fn picofarads(farads: f64) -> f64 {
    farads * 1e12
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_way_is_one_rounding_of_the_number_in_the_file() {
        assert_eq!(place([250.0, -80.0]), Point::new(0.25, -0.08));
        assert_eq!((volts(8.5), volts_per_metre(0.5)), (8500.0, 5e5));
        // Half a unit in the last place of 6.65 and of 0.00665 each.
        assert!((metres(6.65) - 0.00665).abs() <= 0.5 * f64::EPSILON * 0.00665 * 2.0);
        assert_eq!(place_mm(Point::new(0.25, -0.5)), [250.0, -500.0]);
        assert_eq!((kilovolts(8700.0), kilovolts_per_mm(5e5)), (8.7, 0.5));
        assert_eq!(picofarads(2.0_f64.powi(-40)), 1e12 * 2.0_f64.powi(-40));
    }
}
