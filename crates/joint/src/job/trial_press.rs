//! Trial press: how much a sleeve grew when it was pressed on a piece of the same cable.

use super::cable_of::size;
use super::part_ends::pressed;
use super::reader::JobReader;
use crate::cable::{Metal, Size};
use crate::catalogue::metal;
use crate::form::Record;
use crate::said::{RowHint, RowSaid};
use jiff::civil::Date;
use jointwright_units::{Interval, Length};

/// Trial presses of a connector.
#[derive(Clone, Debug)]
pub struct TrialPress {
    /// Connector.
    pub connector: String,
    /// Pressed end, for a sleeve whose ends differ.
    pub end: Option<String>,
    /// Conductor size.
    pub size: Size,
    /// Conductor metal.
    pub metal: Metal,
    /// Tool.
    pub tool: String,
    /// Die.
    pub die: String,
    /// Number of presses for each end.
    pub presses: i64,
    /// Growth over the trials: of the whole sleeve, or of the pressed end.
    pub growth: Interval,
    /// Person who pressed it.
    pub by: String,
    /// Day of the trial.
    pub date: Date,
}

pub(super) fn trial_press(reader: &mut JobReader<'_>, row: &Record) -> Option<TrialPress> {
    let size = size(reader, row, "size");
    let connector = row.string("connector")?;
    pressed(reader, row, &connector);
    reader.not_after_the_work(row);
    let before = row.length("length_before")?;
    let after = Interval::hull(row.lengths("length_after"));
    let Some(after) = after else {
        reader.complain(row.at, RowSaid::NoLengthAfter, RowHint::GiveLengthAfter);
        return None;
    };
    let error = row.length("error")?;
    // The growth is a difference of two lengths, so their errors add up.
    let read = after - Interval::point(before);
    let growth = read.widened(error * 2);
    if read.least() + error * 2 < Length::ZERO {
        reader.complain(
            row.at("length_after"),
            RowSaid::SleeveShorter {
                before: before.to_string(),
                after: after.least().to_string(),
            },
            RowHint::MeasureBothAgain,
        );
        return None;
    }
    // A sleeve never grows by less than zero, whatever the rule could resolve.
    let growth = Interval::new(growth.least().max(Length::ZERO), growth.greatest())?;
    let listed = reader
        .catalogue
        .connector(&connector)
        .map(|part| part.length);
    if let Some(listed) = listed.filter(|listed| (*listed - before).abs() * 20 > *listed) {
        reader.complain(
            row.at("length_before"),
            RowSaid::SleeveUnlikePaper {
                before: before.to_string(),
                connector: connector.clone(),
                listed: listed.to_string(),
            },
            RowHint::PressTheNamed,
        );
    }
    Some(TrialPress {
        connector,
        end: row.string("end"),
        size: size?,
        metal: metal(row.text("metal")?)?,
        tool: row.string("tool")?,
        die: row.string("die")?,
        presses: row.integer("presses")?,
        growth,
        by: row.string("by")?,
        date: row.date("date")?,
    })
}
