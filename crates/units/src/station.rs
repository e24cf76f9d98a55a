//! Station: a position along the axis of a leg, in half-nanometres.

use crate::Length;
use std::ops::{Add, Neg, Sub};

/// A signed position along an axis, in whole half-nanometres.
///
/// Half of a connector's length is a whole number in this unit, so two ways to the same plane agree to the last bit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Station(i64);

impl Station {
    /// The datum.
    pub const ZERO: Station = Station(0);

    /// Station of `halves` half-nanometres.
    pub const fn from_half_nm(halves: i64) -> Station {
        Station(halves)
    }

    /// Whole half-nanometres.
    pub const fn half_nm(self) -> i64 {
        self.0
    }

    /// Half of `length`.
    pub const fn half_of(length: Length) -> Station {
        Station(length.nm())
    }

    /// Millimetres, for documents that carry floats; the nearest double to the exact value.
    pub fn mm(self) -> f64 {
        self.0 as f64 / 2.0e6
    }

    /// Metres, for formulas of a textbook.
    pub fn m(self) -> f64 {
        self.mm() * 1e-3
    }

    /// The greatest length that does not exceed this station.
    pub fn floor(self) -> Length {
        Length::from_nm(self.0.div_euclid(2))
    }

    /// The least length that is not below this station.
    pub fn ceil(self) -> Length {
        Length::from_nm(-(-self.0).div_euclid(2))
    }
}

impl From<Length> for Station {
    fn from(length: Length) -> Station {
        Station(length.nm() * 2)
    }
}

impl Add for Station {
    type Output = Station;
    fn add(self, other: Station) -> Station {
        Station(self.0 + other.0)
    }
}

impl Sub for Station {
    type Output = Station;
    fn sub(self, other: Station) -> Station {
        Station(self.0 - other.0)
    }
}

impl Neg for Station {
    type Output = Station;
    fn neg(self) -> Station {
        Station(-self.0)
    }
}
