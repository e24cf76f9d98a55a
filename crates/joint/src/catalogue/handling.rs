//! Handling: how a part comes onto the cable, and until when it may be moved there, as rows state it.
//!
//! Why its own file: the order of a make-up rests on these words, and no dimension does.
//!
//! Invariants: a word that a row does not state follows from its other words or is unknown; no word is guessed.
//!
//! Not here: which step waits for which (`programme`).

use super::head::Head;
use super::reader::RowReader;
use super::rubber::Rubber;
use super::word::MOVES;
use crate::form::Need::{Optional, Required};
use crate::form::{Field, Kind, Record, Shape, field};

/// Words for the ways in which a part comes onto the cable.
pub const GOES_ON: &[&str] = &["push-on", "holdout", "torch", "wrapped"];

/// Way in which a part comes onto the cable.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GoesOn {
    /// Pushed on, greased.
    PushOn,
    /// Let down from a holdout.
    Holdout,
    /// Shrunk with a torch.
    Torch,
    /// Wrapped around the cable.
    Wrapped,
}

impl GoesOn {
    fn from_name(name: &str) -> Option<GoesOn> {
        Some(match name {
            "push-on" => GoesOn::PushOn,
            "holdout" => GoesOn::Holdout,
            "torch" => GoesOn::Torch,
            "wrapped" => GoesOn::Wrapped,
            _ => return None,
        })
    }
}

/// Time until which a part may be moved after it is placed.
#[derive(Clone, Debug, PartialEq)]
pub enum MayMove {
    /// Never.
    Never,
    /// Until the holdout is out.
    BeforeHoldoutIsOut,
    /// For this number of minutes.
    WithinMinutes(i64),
}

pub(super) const GOES_ON_FIELD: Field = field(
    "goes_on",
    Kind::Choice(GOES_ON),
    Optional,
    "How it comes onto the cable: pushed on, let down from a holdout, shrunk with a torch, or wrapped around.",
);

pub(super) const PASSES_FIELD: Field = field(
    "passes",
    Kind::Diameter,
    Optional,
    "Greatest diameter that it passes over while it is slid on or parked.",
);

pub(super) fn goes_on(record: &Record) -> Option<GoesOn> {
    record.text("goes_on").and_then(GoesOn::from_name)
}

pub(super) const MOVE: Shape = Shape {
    name: "may_move",
    about: "When the part may still be moved after it is placed.",
    fields: &[
        field("when", Kind::Choice(MOVES), Required, "The rule."),
        field(
            "minutes",
            Kind::Integer {
                least: 1,
                greatest: 600,
            },
            Optional,
            "Minutes, for `within-minutes`.",
        ),
    ],
};

pub(super) fn read_may_move(reader: &mut RowReader<'_>, record: &Record) -> Option<MayMove> {
    let row = record.record("may_move")?;
    match (row.text("when")?, row.integer("minutes")) {
        ("never", _) => Some(MayMove::Never),
        ("before-holdout-is-out", _) => Some(MayMove::BeforeHoldoutIsOut),
        (_, Some(minutes)) => Some(MayMove::WithinMinutes(minutes)),
        (_, None) if row.is_given("minutes") => None,
        (_, None) => {
            reader.complain(
                row.at,
                "`within-minutes` has no `minutes`.".to_owned(),
                "Add the number of minutes.",
            );
            None
        }
    }
}

/// Whether a part stands expanded on a holdout, by its row.
pub(super) fn is_held(head: &Head, may_move: Option<&MayMove>, rubber: Option<&Rubber>) -> bool {
    may_move == Some(&MayMove::BeforeHoldoutIsOut)
        || head.shelf.as_ref().is_some_and(|s| s.from == "expanded")
        || rubber.is_some_and(|r| r.hold_diameter.is_some())
}

/// Way in which a body or adapter comes on: from its row, else from its shelf life, its rubber and the time until which it may be moved.
pub(super) fn on_cable(
    stated: Option<GoesOn>,
    head: &Head,
    may_move: Option<&MayMove>,
    rubber: Option<&Rubber>,
) -> Option<GoesOn> {
    let derived = if is_held(head, may_move, rubber) {
        Some(GoesOn::Holdout)
    } else if rubber.is_some() || head.shelf.as_ref().is_some_and(|s| s.from == "made") {
        // Rubber that is smaller than the cable and has no holdout is pushed on.
        Some(GoesOn::PushOn)
    } else {
        None
    };
    stated.or(derived)
}
