//! Shield part: restores or bonds the metallic shield; with the shields that it lays back or cuts off, and the moment at which its bridge comes off.
//!
//! Invariants: no kind of shield is both laid back and cut off.

use super::fits::{Fits, read_fits};
use super::head::{Head, Row, read_head, row_heads};
use super::link::{LinkRow, read_links};
use super::reader::RowReader;
use super::withstand::{Withstand, read_withstand};
use super::word::{SHIELD_KINDS, layers};
use crate::cable::Layer;
use crate::form::Need::{Optional, Required};
use crate::form::{Field, Kind, Record, Shape, field};
pub use crate::said::BridgeMoment;
use jointwright_units::Length;

/// Shield restoration or bonding part.
#[derive(Clone, Debug)]
pub struct ShieldPart {
    /// Fields that every row has.
    pub head: Head,
    /// Kinds of metallic shield.
    pub shields: Vec<String>,
    /// Bondings.
    pub bondings: Vec<String>,
    /// Metal section, mm².
    pub area_mm2: Option<f64>,
    /// Short circuit that its paper allows.
    pub withstands: Option<Withstand>,
    /// Greatest resistance of its connection, ohm, where its paper states one.
    pub contact_greatest_ohm: Option<f64>,
    /// Ranges.
    pub fits: Vec<Fits>,
    /// Layers without a range on which its paper lets it lie.
    pub may_lie_on: Vec<Layer>,
    /// Whether a stretch of it is blocked against water, if its paper states it.
    pub blocked: Option<bool>,
    /// Whether any piece of it passes out under the seal, if its paper states it.
    pub passes_seal: Option<bool>,
    /// Shields that it lays back, where its paper states them.
    pub lay_back: Option<LayBack>,
    /// Kinds of shield that it cuts off, where its paper states them.
    pub cut_off: Vec<String>,
    /// Moment at which its paper lets the bridge come off.
    pub bridge_off: Option<BridgeMoment>,
    /// Whether one piece of it goes across the joint from leg to leg.
    pub across_legs: bool,
    /// Distances.
    pub links: Vec<LinkRow>,
}

/// Shields whose wires or straps are laid back instead of cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LayBack {
    /// Kinds of metallic shield.
    pub shields: Vec<String>,
    /// Length of each wire or strap kept beyond the edge, if stated.
    pub length: Option<Length>,
}

pub(super) const BRIDGE_OFF_FIELD: Field = field(
    "bridge_off",
    Kind::Choice(BridgeMoment::NAMES),
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

impl Row for ShieldPart {
    row_heads!();
    fn read(reader: &mut RowReader<'_>, record: &Record) -> Option<ShieldPart> {
        let head = read_head(reader, record);
        let fits = read_fits(reader, record);
        let withstands = read_withstand(reader, record);
        let (lay_back, cut_off) = read_shield_edges(reader, record);
        let links = read_links(reader, record, head.as_ref());
        let head = head?;
        Some(ShieldPart {
            shields: record.texts("shields"),
            bondings: record.texts("bondings"),
            area_mm2: record.number("area"),
            withstands,
            contact_greatest_ohm: record.number("contact_greatest"),
            fits,
            may_lie_on: layers(record, "may_lie_on"),
            blocked: record.flag("blocked"),
            passes_seal: record.flag("passes_seal"),
            lay_back,
            cut_off,
            bridge_off: record.text("bridge_off").and_then(BridgeMoment::from_name),
            across_legs: record.flag("across_legs").unwrap_or(false),
            links,
            head,
        })
    }
}

/// Treatment of shields at their edge by a shield part: laid back, and cut off; no kind is both.
pub(super) fn read_shield_edges(
    reader: &mut RowReader<'_>,
    record: &Record,
) -> (Option<LayBack>, Vec<String>) {
    let lay_back = record.record("lay_back").map(|row| LayBack {
        shields: row.texts("shields"),
        length: row.length("length"),
    });
    let cut_off = record.texts("cut_off");
    let laid = lay_back.iter().flat_map(|l| &l.shields);
    for shield in laid.clone().filter(|s| cut_off.contains(s)) {
        reader.complain(
            record.at("lay_back"),
            format!("A shield of {shield} is both laid back and cut off."),
            "Look up in the paper which of them it is.",
        );
    }
    let takes = record.texts("shields");
    for shield in laid.chain(&cut_off).filter(|s| !takes.contains(s)) {
        reader.complain(
            record.at("shields"),
            format!("The row says what becomes of {shield} at their edge, and does not take them by its `shields`."),
            "Add them to `shields`, or take them out.",
        );
    }
    (lay_back, cut_off)
}
