//! Consumable: compound, tape or mastic, with its windings at an end.

use super::head::{Head, Row, read_head, row_heads};
use super::reader::RowReader;
use super::word::{LAYER_NAMES, layer, metal};
use crate::cable::{Layer, Metal};
use crate::form::Need::{Optional, Required};
use crate::form::{Kind, Record, Shape, field};
use jointwright_units::Length;

/// Consumable.
#[derive(Clone, Debug)]
pub struct Consumable {
    /// Fields that every row has.
    pub head: Head,
    /// Metals it serves; empty if the row names none.
    pub metals: Vec<Metal>,
    /// Whether it is used on bare conductors, if the row says so.
    pub touches_conductor: Option<bool>,
    /// Substance.
    pub contains: Option<String>,
    /// Width and thickness of a tape.
    pub tape: Option<(Length, Length)>,
    /// Amount for each end.
    pub amount: Option<String>,
    /// Windings at an end.
    pub wraps: Vec<Wrap>,
}

/// Winding of a tape at an end.
#[derive(Clone, Debug, PartialEq)]
pub struct Wrap {
    /// Layer under the tape.
    pub over: Layer,
    /// Stretch of cable that the tape covers.
    pub length: Length,
    /// Number of passes over the stretch.
    pub layers: i64,
    /// Share of the width by which a turn laps the turn before, 0 to 0.9.
    pub lap_ratio: f64,
    /// Ratio of the drawn length to the tape's own length, 1 if it is not drawn.
    pub drawn_ratio: f64,
}

pub(super) const WRAP: Shape = Shape {
    name: "wrap",
    about: "How a tape is wound, so that its length can be computed.",
    fields: &[
        field(
            "over",
            Kind::Choice(LAYER_NAMES),
            Required,
            "Layer it is wound over.",
        ),
        field(
            "length",
            Kind::Above(&Kind::Cut),
            Required,
            "Stretch of cable that it covers.",
        ),
        field(
            "layers",
            Kind::Integer {
                least: 1,
                greatest: 40,
            },
            Required,
            "Passes from one end of the stretch to the other.",
        ),
        field(
            "lap",
            Kind::Number {
                least: 0.0,
                greatest: 0.9,
            },
            Required,
            "Share of the width by which a turn laps the turn before: 0.5 for half-lapped.",
        ),
        field(
            "drawn",
            Kind::Number {
                least: 1.0,
                greatest: 4.0,
            },
            Optional,
            "How many times its own length it is drawn to as it goes on; left out, it is not drawn.",
        ),
    ],
};

impl Row for Consumable {
    row_heads!();
    fn read(reader: &mut RowReader<'_>, record: &Record) -> Option<Consumable> {
        let tape: Option<(Length, Length)> = record.length("width").zip(record.length("thickness"));
        let wraps: Vec<Wrap> = record.records("wrap").filter_map(read_wrap).collect();
        let has_size = record.is_given("width") && record.is_given("thickness");
        if !wraps.is_empty() && !has_size {
            reader.complain(
                record.at,
                "A `wrap` is given, but not both the width and the thickness of the tape."
                    .to_owned(),
                "Add `width` and `thickness`, so that its length can be computed.",
            );
        }
        Some(Consumable {
            head: read_head(reader, record)?,
            wraps,
            metals: record
                .texts("metals")
                .iter()
                .filter_map(|m| metal(m))
                .collect(),
            touches_conductor: record.flag("touches_conductor"),
            contains: record.string("contains"),
            tape,
            amount: record.string("amount"),
        })
    }
}

fn read_wrap(record: &Record) -> Option<Wrap> {
    Some(Wrap {
        over: layer(record.text("over")?)?,
        length: record.length("length")?,
        layers: record.integer("layers")?,
        lap_ratio: record.number("lap")?,
        drawn_ratio: record.number("drawn").unwrap_or(1.0),
    })
}
