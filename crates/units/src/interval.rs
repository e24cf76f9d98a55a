//! Interval: a length known only by its two bounds.

use crate::Length;
use std::ops::{Add, Sub};

/// A closed interval of lengths, `least <= greatest`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Interval {
    least: Length,
    greatest: Length,
}

impl Interval {
    /// Interval between two bounds, or `None` if the first is greater than the second.
    pub fn new(least: Length, greatest: Length) -> Option<Interval> {
        (least <= greatest).then_some(Interval { least, greatest })
    }

    /// Interval that holds one value only.
    pub const fn point(value: Length) -> Interval {
        Interval {
            least: value,
            greatest: value,
        }
    }

    /// Interval `value` plus and minus `spread`.
    ///
    /// # Panics
    /// If `spread` is negative.
    pub fn around(value: Length, spread: Length) -> Interval {
        assert!(spread >= Length::ZERO, "a spread is not negative");
        Interval {
            least: value - spread,
            greatest: value + spread,
        }
    }

    /// Smallest interval that contains all of `values`, or `None` if there are none.
    pub fn hull(values: impl IntoIterator<Item = Length>) -> Option<Interval> {
        values.into_iter().fold(None, |sofar: Option<Interval>, v| {
            Some(sofar.map_or(Interval::point(v), |i| Interval {
                least: i.least.min(v),
                greatest: i.greatest.max(v),
            }))
        })
    }

    /// Lower bound.
    pub const fn least(self) -> Length {
        self.least
    }

    /// Upper bound.
    pub const fn greatest(self) -> Length {
        self.greatest
    }

    /// Upper bound less lower bound.
    pub fn width(self) -> Length {
        self.greatest - self.least
    }

    /// Whether `value` lies inside, bounds included.
    pub fn contains(self, value: Length) -> bool {
        self.least <= value && value <= self.greatest
    }

    /// Whether the whole of `other` lies inside, bounds included.
    pub fn covers(self, other: Interval) -> bool {
        self.least <= other.least && other.greatest <= self.greatest
    }

    /// Intersection of both intervals, or `None` if they have no value in common.
    pub fn meet(self, other: Interval) -> Option<Interval> {
        Interval::new(
            self.least.max(other.least),
            self.greatest.min(other.greatest),
        )
    }

    /// The interval grown by `spread` at both ends.
    ///
    /// # Panics
    /// If `spread` is negative.
    pub fn widened(self, spread: Length) -> Interval {
        assert!(spread >= Length::ZERO, "a spread is not negative");
        Interval {
            least: self.least - spread,
            greatest: self.greatest + spread,
        }
    }
}

impl Add for Interval {
    type Output = Interval;
    fn add(self, other: Interval) -> Interval {
        Interval {
            least: self.least + other.least,
            greatest: self.greatest + other.greatest,
        }
    }
}

impl Sub for Interval {
    type Output = Interval;
    fn sub(self, other: Interval) -> Interval {
        Interval {
            least: self.least - other.greatest,
            greatest: self.greatest - other.least,
        }
    }
}
