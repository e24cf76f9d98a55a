//! Reading: diameters read at one end.

use super::reader::JobReader;
use crate::cable::Layer;
use crate::catalogue::layer;
use crate::end::EndId;
use crate::form::{Record, Span};
use crate::said::{RowHint, RowSaid};
use jointwright_units::Length;

/// Reading at one end.
#[derive(Clone, Debug)]
pub struct Reading {
    /// Layer.
    pub over: Layer,
    /// Instrument.
    pub instrument: String,
    /// Error either way.
    pub error: Length,
    /// Values.
    pub values: Vec<Length>,
    /// Place along the cable.
    pub place_along: Option<String>,
    /// Temperature, degrees Celsius.
    pub degc: Option<f64>,
    /// Place in the file.
    pub place: Span,
}

/// Greatest diameter that can be a reading on one core of medium-voltage cable.
const READING_GREATEST: Length = Length::from_nm(200_000_000);

/// Least diameter that can be a reading.
const READING_LEAST: Length = Length::from_nm(1_000_000);

pub(super) fn reading(reader: &mut JobReader<'_>, row: &Record) -> Option<(EndId, Reading)> {
    let end = reader.end(row);
    let values = row.lengths("values");
    row.item("values")?;
    if row.list("values").count() == 0 {
        reader.complain(
            row.at("values"),
            RowSaid::NoValues,
            RowHint::WriteWhatItShowed,
        );
        return None;
    }
    for value in &values {
        if !(READING_LEAST..=READING_GREATEST).contains(value) {
            reader.complain(
                row.at("values"),
                RowSaid::NoDiameter {
                    value: value.to_string(),
                    least: READING_LEAST.to_string(),
                    greatest: READING_GREATEST.to_string(),
                },
                RowHint::LookAtUnit,
            );
        }
    }
    if row.length("error") == Some(Length::ZERO) {
        reader.complain(
            row.at("error"),
            RowSaid::ErrorIsNothing,
            RowHint::WriteItsCertificate,
        );
    }
    let row = Reading {
        over: layer(row.text("over")?)?,
        instrument: row.string("instrument")?,
        error: row.length("error")?,
        values,
        place_along: row.string("place"),
        degc: row.number("temperature"),
        place: reader.place_of(row.at),
    };
    Some((end?, row))
}
