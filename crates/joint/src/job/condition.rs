//! Condition: moisture and jacket of one end as they were found.

use super::reader::JobReader;
use crate::end::EndId;
use crate::form::Record;
use jiff::civil::Date;

/// Test of one end for moisture.
#[derive(Clone, Debug)]
pub struct Moisture {
    /// Tested place: "conductor" or "shield".
    pub place: String,
    /// Whether it was wet.
    pub is_wet: bool,
    /// Method.
    pub how: String,
    /// Day of the test.
    pub date: Date,
    /// Person and day.
    pub source: String,
}

/// Jacket of one end at the place of the seal.
#[derive(Clone, Debug)]
pub struct Surface {
    /// Condition of the jacket.
    pub jacket: String,
    /// Person who looked.
    pub by: String,
}

pub(super) fn moisture(reader: &mut JobReader<'_>, row: &Record) -> Option<(EndId, Moisture)> {
    let end = reader.end(row)?;
    reader.not_after_the_work(row);
    let row = Moisture {
        place: row.string("in")?,
        is_wet: row.text("found")? == "wet",
        how: row.string("how")?,
        date: row.date("date")?,
        source: format!("{}, {}", row.string("by")?, row.date("date")?),
    };
    Some((end, row))
}

pub(super) fn surface(reader: &mut JobReader<'_>, row: &Record) -> Option<(EndId, Surface)> {
    let end = reader.end(row)?;
    let row = Surface {
        jacket: row.string("jacket")?,
        by: row.string("by")?,
    };
    Some((end, row))
}
