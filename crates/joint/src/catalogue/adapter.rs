//! Adapter: the part that brings a cable up to the bore of its body.

use super::fits::{Fits, read_fits};
use super::handling::{GoesOn, MayMove, goes_on, on_cable, read_may_move};
use super::head::{Head, Row, read_head, row_heads};
use super::link::{LinkRow, read_links};
use super::reader::RowReader;
use super::rubber::{Rubber, read_rubber};
use super::thermal::read_stuff;
use super::word::layers;
use crate::cable::Layer;
use crate::form::Record;
use jointwright_numerics::heat::Stuff;
use jointwright_units::{Interval, Length};

/// Adapter.
#[derive(Clone, Debug)]
pub struct Adapter {
    /// Fields that every row has.
    pub head: Head,
    /// Ranges.
    pub fits: Vec<Fits>,
    /// Whether the body's bore may stand over bare insulation beyond it, if its paper states it.
    pub leaves_bare: Option<bool>,
    /// Layers without a range on which its paper lets it lie.
    pub may_lie_on: Vec<Layer>,
    /// Outside diameter on the cable.
    pub outside: Interval,
    /// Highest system voltage, kV.
    pub system_greatest_kv: f64,
    /// Distances.
    pub links: Vec<LinkRow>,
    /// Time until which it may be moved.
    pub may_move: Option<MayMove>,
    /// Way in which it comes onto the cable, as its row states it.
    pub goes_on: Option<GoesOn>,
    /// Greatest diameter that it passes over while it is slid on or parked, if stated.
    pub passes: Option<Length>,
    /// Relative permittivity, if stated.
    pub relative_permittivity: Option<f64>,
    /// Relaxed dimensions and rubber.
    pub rubber: Option<Rubber>,
    /// Thermal resistivity and heat capacity, if stated.
    pub stuff: Option<Stuff>,
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

impl Row for Adapter {
    row_heads!();
    fn read(reader: &mut RowReader<'_>, record: &Record) -> Option<Adapter> {
        let head = read_head(reader, record);
        let fits = read_fits(reader, record);
        let outside = reader.interval(record, "outside_least", "outside_greatest");
        let rubber = read_rubber(reader, record, &fits);
        let may_move = read_may_move(reader, record);
        let stuff = read_stuff(reader, record);
        let links = read_links(reader, record, head.as_ref());
        let head = head?;
        Some(Adapter {
            stuff,
            fits,
            leaves_bare: record.flag("leaves_bare"),
            may_lie_on: layers(record, "may_lie_on"),
            outside: outside?,
            system_greatest_kv: record.number("system_greatest")?,
            links,
            may_move,
            goes_on: goes_on(record),
            passes: record.length("passes"),
            relative_permittivity: record.number("relative_permittivity"),
            rubber,
            head,
        })
    }
}
