//! Wanted: one reading of a hold point, and its window.
//!
//! Invariants: a reading has a window with its source, or the reason why nobody sets one; two readings of one quantity at one end fill one slot.

use crate::checks::{EndInputs, LegInputs};
use crate::plane::Plane;
use crate::said::Said;
use crate::slot::{Measured, Slot};
use jointwright_units::{Interval, Length};

/// Window of a reading.
#[derive(Clone, Debug, PartialEq)]
pub enum Against {
    /// Window of a cut or mark of the leg named.
    Cut(String, Plane),
    /// Range, with its source.
    Range(Interval, Said),
    /// Range of lengths along the cable, with its source.
    Along(Interval, Said),
    /// Greatest value, with its source.
    AtMost(Length, Said),
    /// Least value, with its source.
    AtLeast(Length, Said),
    /// Words, or numbers of another kind, with their source.
    Words(Said, Said),
    /// Nobody sets a window; the reason.
    NoWindow(Said),
}

impl Against {
    /// Words, or numbers of another kind, with their source.
    pub(super) fn words(found: impl Into<Said>, source: impl Into<Said>) -> Against {
        Against::Words(found.into(), source.into())
    }

    /// Nobody sets a window; the reason.
    pub(super) fn no_window(why: impl Into<Said>) -> Against {
        Against::NoWindow(why.into())
    }
}

/// One reading of a hold point.
#[derive(Clone, Debug, PartialEq)]
pub struct Wanted {
    /// Quantity to read.
    pub what: Said,
    /// Window of the reading.
    pub against: Against,
    /// Slots that it fills, at all ends at which it is read; empty if it belongs to no end.
    pub slots: Vec<Slot>,
}

impl Wanted {
    /// A reading of no end, and its window.
    pub(super) fn new(what: impl Into<Said>, against: Against) -> Wanted {
        Wanted {
            what: what.into(),
            against,
            slots: Vec::new(),
        }
    }

    /// A reading at each end of a leg, and its window.
    pub(super) fn on(
        leg: &LegInputs<'_>,
        measured: Measured,
        what: impl Into<Said>,
        against: Against,
    ) -> Wanted {
        let slot = |end: &EndInputs| Slot::new(&end.id, measured.clone());
        Wanted {
            slots: leg.ends.iter().map(slot).collect(),
            ..Wanted::new(what, against)
        }
    }
}
