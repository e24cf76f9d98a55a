//! Length: a whole number of nanometres.

use std::iter::Sum;
use std::ops::{Add, AddAssign, Mul, Neg, Sub, SubAssign};

/// A length or a signed distance, in whole nanometres.
///
/// Arithmetic panics on overflow (9.2 million kilometres); it never wraps.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(i64);

impl Length {
    /// Zero length.
    pub const ZERO: Length = Length(0);
    /// One millimetre.
    pub const MM: Length = Length(1_000_000);
    /// One inch, 25.4 mm exactly.
    pub const INCH: Length = Length(25_400_000);
    /// One sixty-fourth of an inch, the finest tick of a crew's tape; 396 875 nm exactly.
    pub const INCH_64TH: Length = Length(396_875);
    /// One mil, a thousandth of an inch; 25 400 nm exactly.
    pub const MIL: Length = Length(25_400);

    /// Length of `nm` nanometres.
    pub const fn from_nm(nm: i64) -> Length {
        Length(nm)
    }

    /// Whole nanometres.
    pub const fn nm(self) -> i64 {
        self.0
    }

    /// Millimetres, for documents that carry floats; the nearest double to the exact value.
    pub fn mm(self) -> f64 {
        self.0 as f64 / 1.0e6
    }

    /// Metres, for formulas of a textbook.
    pub fn m(self) -> f64 {
        self.mm() * 1e-3
    }

    /// Absolute value.
    pub const fn abs(self) -> Length {
        Length(self.0.abs())
    }
}

impl Add for Length {
    type Output = Length;
    fn add(self, other: Length) -> Length {
        Length(self.0 + other.0)
    }
}

impl AddAssign for Length {
    fn add_assign(&mut self, other: Length) {
        self.0 += other.0;
    }
}

impl Sub for Length {
    type Output = Length;
    fn sub(self, other: Length) -> Length {
        Length(self.0 - other.0)
    }
}

impl SubAssign for Length {
    fn sub_assign(&mut self, other: Length) {
        self.0 -= other.0;
    }
}

impl Neg for Length {
    type Output = Length;
    fn neg(self) -> Length {
        Length(-self.0)
    }
}

impl Mul<i64> for Length {
    type Output = Length;
    fn mul(self, factor: i64) -> Length {
        Length(self.0 * factor)
    }
}

impl Sum for Length {
    fn sum<I: Iterator<Item = Length>>(items: I) -> Length {
        items.fold(Length::ZERO, Add::add)
    }
}
