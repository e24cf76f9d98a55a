//! Handling: how a part comes onto the cable, whether a metallic shield is cut or laid back at its edge, and when its bridge comes off, as rows state it.
//!
//! Why its own file: the order of a make-up rests on these words, and no dimension does.
//!
//! Invariants: a word that a row does not state follows from its other words or is unknown; no word is guessed.
//!
//! Not here: which step waits for which (`programme`).

use super::piece::{SHIELD_KINDS, field};
use super::row::{Adapter, Body, Head, MayMove, Seal};
use super::rubber::Rubber;
use super::walk_row::RowReader;
use crate::form::Need::{Optional, Required};
use crate::form::{Field, Kind, Record, Shape};
pub use crate::said::BridgeMoment;
use jointwright_units::Length;

/// Words for the ways in which a part comes onto the cable.
pub const GOES_ON: &[&str] = &["push-on", "holdout", "torch", "wrapped"];
/// Words for the moments at which the bridge of a metallic shield comes off.
pub const BRIDGE_MOMENTS: &[&str] = &["after-bond-is-measured", "before-bond-is-measured"];

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

/// Shields whose wires or straps are laid back instead of cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LayBack {
    /// Kinds of metallic shield.
    pub shields: Vec<String>,
    /// Length of each wire or strap kept beyond the edge, where stated.
    pub length: Option<Length>,
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

pub(super) const BRIDGE_OFF_FIELD: Field = field(
    "bridge_off",
    Kind::Choice(BRIDGE_MOMENTS),
    Optional,
    "When its paper lets the bridge of the metallic shield come off.",
);

pub(super) const LAY_BACK: Shape = Shape {
    name: "lay_back",
    about: "Shields whose wires or straps are laid back at their edge, not cut.",
    fields: &[
        field(
            "shields",
            Kind::List(&Kind::Choice(SHIELD_KINDS)),
            Required,
            "Kinds of metallic shield that are laid back.",
        ),
        field(
            "length",
            Kind::Cut,
            Optional,
            "How much of each wire or strap is kept beyond the edge.",
        ),
    ],
};

impl RowReader<'_> {
    pub(super) fn goes_on(record: &Record) -> Option<GoesOn> {
        record.text("goes_on").and_then(GoesOn::from_name)
    }

    /// Treatment of shields at their edge by a shield part: laid back, and cut off; no kind is both.
    pub(super) fn shield_edges(&mut self, record: &Record) -> (Option<LayBack>, Vec<String>) {
        let lay_back = record.record("lay_back").map(|row| LayBack {
            shields: row.texts("shields"),
            length: row.length("length"),
        });
        let cut_off = record.texts("cut_off");
        let laid = lay_back.iter().flat_map(|l| &l.shields);
        for shield in laid.clone().filter(|s| cut_off.contains(s)) {
            self.complain(
                record.at("lay_back"),
                format!("A shield of {shield} is both laid back and cut off."),
                "Look up in the paper which of them it is.",
            );
        }
        let takes = record.texts("shields");
        for shield in laid.chain(&cut_off).filter(|s| !takes.contains(s)) {
            self.complain(
                record.at("shields"),
                format!("The row says what becomes of {shield} at their edge, and does not take them by its `shields`."),
                "Add them to `shields`, or take them out.",
            );
        }
        (lay_back, cut_off)
    }
}

/// Whether a part stands expanded on a holdout, by its row.
fn is_held(head: &Head, may_move: Option<&MayMove>, rubber: Option<&Rubber>) -> bool {
    may_move == Some(&MayMove::BeforeHoldoutIsOut)
        || head.shelf.as_ref().is_some_and(|s| s.from == "expanded")
        || rubber.is_some_and(|r| r.hold_diameter.is_some())
}

/// Way in which a body or adapter comes on: from its row, else from its shelf life, its rubber and the time until which it may be moved.
fn on_cable(
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

impl Body {
    /// Way in which it comes onto the cable, where its row states it or implies it.
    pub fn comes_by(&self) -> Option<GoesOn> {
        on_cable(
            self.goes_on,
            &self.head,
            self.may_move.as_ref(),
            self.rubber.as_ref(),
        )
    }
}

impl Adapter {
    /// Way in which it comes onto the cable, where its row states it or implies it.
    pub fn comes_by(&self) -> Option<GoesOn> {
        on_cable(
            self.goes_on,
            &self.head,
            self.may_move.as_ref(),
            self.rubber.as_ref(),
        )
    }
}

impl Seal {
    /// Way in which it closes, where its row states it or implies it.
    pub fn comes_by(&self) -> Option<GoesOn> {
        let held = is_held(&self.head, self.may_move.as_ref(), self.rubber.as_ref());
        self.goes_on.or(held.then_some(GoesOn::Holdout))
    }
}
