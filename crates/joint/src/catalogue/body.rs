//! Body of a joint.
//!
//! Invariants: a body has ranges and distances itself or two sides that have them, never both.

use super::fits::{Fits, read_fits};
use super::handling::{GoesOn, MayMove, goes_on, on_cable, read_may_move};
use super::head::{Head, Row, read_head, row_heads};
use super::inner::{Inner, read_inner};
use super::link::{LinkRow, read_links};
use super::reader::RowReader;
use super::rubber::{Rubber, read_rubber};
use super::taper::{Taper, read_taper};
use super::thermal::{Ageing, ageing, complain_of_temperatures};
use super::word::layers;
use crate::cable::Layer;
use crate::form::Record;
use jointwright_units::{Interval, Length};

/// Joint body.
#[derive(Clone, Debug, PartialEq)]
pub struct Body {
    /// Fields that every row has.
    pub head: Head,
    /// Side of a body with unlike sides; `None` for a whole body.
    pub side: Option<String>,
    /// The two sides of a body with unlike sides, each as the whole body seen by a leg from there; empty otherwise.
    pub sides: Vec<Body>,
    /// Kinds of joint.
    pub kinds: Vec<String>,
    /// Number of legs, for a branch body.
    pub legs: Option<i64>,
    /// Highest system voltage, kV.
    pub system_greatest_kv: f64,
    /// Earthings of its rating.
    pub earthings: Vec<String>,
    /// Ranges.
    pub fits: Vec<Fits>,
    /// Layers without a range on which its paper lets it lie.
    pub may_lie_on: Vec<Layer>,
    /// Adapters that belong to it.
    pub adapters: Vec<String>,
    /// Whether an adapter's outside may meet its bore range.
    pub fits_adapter: bool,
    /// Length as placed.
    pub length: Length,
    /// Length while parked.
    pub parked_length: Option<Length>,
    /// Longest connector as made.
    pub connector_length_greatest: Option<Length>,
    /// Outside diameter of the connector under the electrode.
    pub connector_diameter: Option<Interval>,
    /// Overlap of the electrode on the insulation.
    pub electrode_overlap_least: Option<Length>,
    /// Bondings it allows; empty where its paper is silent.
    pub bondings: Vec<String>,
    /// Mating interface.
    pub interface: Option<String>,
    /// Distances.
    pub links: Vec<LinkRow>,
    /// Time until which it may be moved.
    pub may_move: Option<MayMove>,
    /// Way in which it comes onto the cable, as its row states it.
    pub goes_on: Option<GoesOn>,
    /// Greatest diameter that it passes over while it is slid on or parked, if stated.
    pub passes: Option<Length>,
    /// Abrasive and grit for the insulation, where its paper states them.
    pub abrasive: Option<String>,
    /// Inside of the body.
    pub inner: Option<Inner>,
    /// Tapered plug under the body, for separable joints.
    pub taper: Option<Taper>,
    /// Relaxed dimensions and rubber.
    pub rubber: Option<Rubber>,
    /// Highest temperature of the conductor in a short circuit, degrees Celsius.
    pub conductor_fault_greatest_degc: Option<f64>,
    /// Highest temperature of the conductor in service, degrees Celsius.
    pub conductor_greatest_degc: Option<f64>,
    /// Highest temperature of the conductor in an emergency, degrees Celsius.
    pub conductor_emergency_greatest_degc: Option<f64>,
    /// Ageing by warmth.
    pub ageing: Option<Ageing>,
    /// Straight cable beyond each end.
    pub bend_keep_off: Option<Length>,
}

impl Body {
    /// The body as a leg sees it: from the side that the job names, if its sides differ; without ranges and distances if the job names none.
    pub fn seen_from(&self, side: Option<&str>) -> &Body {
        let named = |body: &&Body| side.is_some() && body.side.as_deref() == side;
        self.sides.iter().find(named).unwrap_or(self)
    }

    /// Names of its sides, for a message.
    pub fn side_names(&self) -> Vec<String> {
        let names = self.sides.iter().filter_map(|body| body.side.as_deref());
        names.map(str::to_owned).collect()
    }
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

impl Row for Body {
    row_heads!();

    fn mark_as_copy(&mut self, is_copy: bool) {
        self.head.demonstration |= is_copy;
        for side in &mut self.sides {
            side.mark_as_copy(is_copy);
        }
    }

    fn read(reader: &mut RowReader<'_>, record: &Record) -> Option<Body> {
        let head = read_head(reader, record);
        let fits = read_fits(reader, record);
        let connector_diameter = reader.interval(
            record,
            "connector_diameter_least",
            "connector_diameter_greatest",
        );
        complain_of_temperatures(reader, record);
        let inner = read_inner(reader, record);
        let taper = read_taper(reader, record);
        let rubber = read_rubber(reader, record, &fits);
        let may_move = read_may_move(reader, record);
        let links = read_links(reader, record, head.as_ref());
        complain_of_missing(reader, record);
        let head = head?;
        let body = Body {
            side: None,
            sides: Vec::new(),
            kinds: record.texts("kinds"),
            legs: record.integer("legs"),
            system_greatest_kv: record.number("system_greatest")?,
            earthings: record.texts("earthings"),
            fits,
            may_lie_on: layers(record, "may_lie_on"),
            adapters: record.texts("parts"),
            fits_adapter: record.flag("fits_adapter").unwrap_or(false),
            length: record.length("length")?,
            parked_length: record.length("parked_length"),
            connector_length_greatest: record.length("connector_length_greatest"),
            connector_diameter,
            electrode_overlap_least: record.length("electrode_overlap_least"),
            bondings: record.texts("bondings"),
            interface: record.string("interface"),
            links,
            may_move,
            goes_on: goes_on(record),
            passes: record.length("passes"),
            abrasive: record.string("abrasive"),
            inner,
            taper,
            rubber,
            conductor_fault_greatest_degc: record.number("conductor_fault_greatest"),
            conductor_greatest_degc: record.number("conductor_greatest"),
            conductor_emergency_greatest_degc: record.number("conductor_emergency_greatest"),
            ageing: record.record("ageing").and_then(ageing),
            bend_keep_off: record.length("bend_keep_off"),
            head,
        };
        if record.is_given("side") {
            return read_sides(reader, body, record);
        }
        Some(body)
    }
}

/// Complains of missing ranges and distances that a body without sides needs.
fn complain_of_missing(reader: &mut RowReader<'_>, record: &Record) {
    let id = record.text("id").unwrap_or("?");
    for (name, what) in [("fits", "ranges"), ("link", "distances")] {
        if record.is_whole() && !record.is_given(name) && !record.is_given("side") {
            reader.complain(
                record.at,
                format!("Body `{id}` has no `{name}`."),
                format!("Add the {what} that its paper gives, or a `side` for each side where the two differ."),
            );
        }
    }
}

/// Reads a body with unlike sides: the whole body, and the body as a leg sees it from each side.
fn read_sides(reader: &mut RowReader<'_>, body: Body, record: &Record) -> Option<Body> {
    let id = body.head.id.clone();
    let rows: Vec<&Record> = record.records("side").collect();
    if rows.len() != 2 || body.kinds.iter().any(|kind| kind != "straight") {
        reader.complain(
            record.at("side"),
            format!(
                "Body `{id}` has {} `side` rows and is for {}; sides are for a straight body whose two sides differ.",
                rows.len(),
                body.kinds.join(", ")
            ),
            "Write two `side` rows with `kinds = [\"straight\"]`, or none.",
        );
        return None;
    }
    for name in ["inner", "rubber"] {
        if record.is_given(name) {
            reader.complain(
                record.at(name),
                format!("Body `{id}` has `side` rows and `{name}` beside them."),
                "Say it in each `side`: what holds at one need not hold at the other.",
            );
        }
    }
    let mut sides: Vec<Body> = Vec::new();
    for row in rows {
        let mut fits = body.fits.clone();
        fits.extend(read_fits(reader, row));
        let mut links = body.links.clone();
        links.extend(read_links(reader, row, Some(&body.head)));
        let (inner, rubber) = (read_inner(reader, row), read_rubber(reader, row, &fits));
        let name = row.string("name")?;
        if sides.iter().any(|side| side.side.as_ref() == Some(&name)) {
            reader.complain(
                row.at("name"),
                format!("Both sides of `{id}` have one name."),
                "Rename one of them.",
            );
            return None;
        }
        sides.push(Body {
            side: Some(name),
            fits,
            links,
            inner,
            rubber,
            ..body.clone()
        });
    }
    Some(Body {
        fits: Vec::new(),
        links: Vec::new(),
        sides,
        ..body
    })
}
