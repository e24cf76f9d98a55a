//! Place of the joint.

use super::reader::JobReader;
use crate::form::Record;
use crate::said::{HeadHint, HeadSaid};

/// Place of the joint.
#[derive(Clone, Debug)]
pub struct Place {
    /// Kind: vault, duct or buried.
    pub kind: String,
    /// Name.
    pub name: String,
    /// Least and greatest ambient temperature, degrees Celsius.
    pub ambient_degc: (Option<f64>, Option<f64>),
    /// Whether the place is wet, if stated.
    pub wet: Option<bool>,
}

pub(super) fn place(reader: &mut JobReader<'_>, record: &Record) -> Option<Place> {
    let ambient_degc = (
        record.number("ambient_least"),
        record.number("ambient_greatest"),
    );
    if let (Some(least), Some(greatest)) = ambient_degc
        && least > greatest
    {
        reader.complain(
            record.at("ambient_least"),
            HeadSaid::AmbientReversed {
                least_degc: least,
                greatest_degc: greatest,
            },
            HeadHint::Exchange,
        );
    }
    Some(Place {
        kind: record.string("kind")?,
        name: record.string("name")?,
        ambient_degc,
        wet: record.flag("wet"),
    })
}
