//! Fits: the range of diameters that a part takes over a named layer of the cable.

use super::reader::RowReader;
use super::word::{LAYER_NAMES, WHERE_NAMES, layer};
use crate::cable::Layer;
use crate::form::Need::{Optional, Required};
use crate::form::{Kind, Measure, Record, Shape, field};
use jointwright_units::{Interval, Length};

/// Range over a layer.
#[derive(Clone, Debug, PartialEq)]
pub struct Fits {
    /// "bore", "mouth" or "seal".
    pub at: String,
    /// Layer over which the diameter is measured.
    pub over: Layer,
    /// Permitted diameters.
    pub range: Interval,
    /// Temperature for which the range is stated, degrees Celsius.
    pub at_degc: Option<f64>,
    /// Greatest permitted ovality.
    pub ovality: Option<Length>,
}

impl Fits {
    /// Whether it is a range of the bore.
    pub fn is_bore(&self) -> bool {
        self.at == "bore"
    }

    /// The range of the bore over a layer, among the ranges of a part.
    pub fn bore_over(fits: &[Fits], layer: Layer) -> Option<&Fits> {
        fits.iter()
            .find(|fits| fits.is_bore() && fits.over == layer)
    }
}

pub(super) const FITS: Shape = Shape {
    name: "fits",
    about: "A range over a named layer of the cable.",
    fields: &[
        field(
            "at",
            Kind::Choice(WHERE_NAMES),
            Required,
            "Where on the part.",
        ),
        field(
            "over",
            Kind::Choice(LAYER_NAMES),
            Required,
            "Which layer the range is measured over.",
        ),
        field(
            "least",
            Kind::Above(&Kind::Diameter),
            Required,
            "Least permitted diameter.",
        ),
        field(
            "greatest",
            Kind::Above(&Kind::Diameter),
            Required,
            "Greatest permitted diameter.",
        ),
        field(
            "at_temperature",
            Kind::Quantity(Measure::Temperature),
            Optional,
            "Temperature for which the range is stated, if the paper states one.",
        ),
        field(
            "ovality",
            Kind::Diameter,
            Optional,
            "Greatest permitted difference between the diameters of one place.",
        ),
    ],
};

pub(super) fn read_fits(reader: &mut RowReader<'_>, record: &Record) -> Vec<Fits> {
    record
        .records("fits")
        .filter_map(|row| read_range(reader, row))
        .collect()
}

fn read_range(reader: &mut RowReader<'_>, row: &Record) -> Option<Fits> {
    Some(Fits {
        range: reader.interval(row, "least", "greatest")?,
        at: row.string("at")?,
        over: layer(row.text("over")?)?,
        at_degc: row.number("at_temperature"),
        ovality: row.length("ovality"),
    })
}
