//! Seal: the part that closes the joint against water.

use super::fits::{Fits, read_fits};
use super::handling::{GoesOn, MayMove, goes_on, is_held, read_may_move};
use super::head::{Head, Row, read_head, row_heads};
use super::link::{LinkRow, read_links};
use super::reader::RowReader;
use super::rubber::{Rubber, read_rubber};
use super::thermal::{Cover, cover};
use super::word::layers;
use crate::cable::Layer;
use crate::form::Record;
use jointwright_units::Length;

/// Seal.
#[derive(Clone, Debug)]
pub struct Seal {
    /// Fields that every row has.
    pub head: Head,
    /// Ranges.
    pub fits: Vec<Fits>,
    /// Layers without a range on which its paper lets it lie.
    pub may_lie_on: Vec<Layer>,
    /// Whether one piece goes over the whole joint, from one jacket to the other.
    pub spans_joint: bool,
    /// Least length once it has closed.
    pub length: Option<Length>,
    /// Overlap onto the jacket.
    pub overlap_least: Option<Length>,
    /// Overlap over the end of the body.
    pub body_overlap_least: Option<Length>,
    /// Length while parked.
    pub parked_length: Option<Length>,
    /// Whether a lead may come out under it, if its paper states it.
    pub takes_bonding_lead: Option<bool>,
    /// Conditions of the jacket on which it may close; empty where its paper is silent.
    pub jacket_surfaces: Vec<String>,
    /// Relaxed dimensions and rubber.
    pub rubber: Option<Rubber>,
    /// Wall of the seal that the heat must pass, if stated.
    pub cover: Option<Cover>,
    /// Distances.
    pub links: Vec<LinkRow>,
    /// Time until which it may be moved.
    pub may_move: Option<MayMove>,
    /// Way in which it closes, as its row states it.
    pub goes_on: Option<GoesOn>,
    /// Greatest diameter that it passes over while it is slid on or parked, if stated.
    pub passes: Option<Length>,
}

impl Seal {
    /// Way in which it closes, where its row states it or implies it.
    pub fn comes_by(&self) -> Option<GoesOn> {
        let held = is_held(&self.head, self.may_move.as_ref(), self.rubber.as_ref());
        self.goes_on.or(held.then_some(GoesOn::Holdout))
    }
}

impl Row for Seal {
    row_heads!();
    fn read(reader: &mut RowReader<'_>, record: &Record) -> Option<Seal> {
        let head = read_head(reader, record);
        let fits = read_fits(reader, record);
        let rubber = read_rubber(reader, record, &fits);
        let may_move = read_may_move(reader, record);
        let links = read_links(reader, record, head.as_ref());
        let head = head?;
        Some(Seal {
            cover: record.record("cover").and_then(cover),
            fits,
            may_lie_on: layers(record, "may_lie_on"),
            spans_joint: record.text("spans") == Some("joint"),
            length: record.length("length"),
            overlap_least: record.length("overlap_least"),
            body_overlap_least: record.length("body_overlap_least"),
            parked_length: record.length("parked_length"),
            takes_bonding_lead: record.flag("takes_lead"),
            jacket_surfaces: record.texts("jacket_surfaces"),
            rubber,
            goes_on: goes_on(record),
            passes: record.length("passes"),
            links,
            may_move,
            head,
        })
    }
}
