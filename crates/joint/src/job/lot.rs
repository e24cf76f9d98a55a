//! Lot: a part on the truck, its label and its store.
//!
//! Not here: its last day (`age`).

use super::reader::JobReader;
use crate::end::EndId;
use crate::form::Record;
use crate::said::{RowHint, RowSaid};
use jiff::civil::Date;

/// Part on the truck.
#[derive(Clone, Debug)]
pub struct Lot {
    /// Kind of part.
    pub part: String,
    /// Lot.
    pub lot: String,
    /// Day made.
    pub made: Option<Date>,
    /// Day expanded.
    pub expanded: Option<Date>,
    /// Day on the label.
    pub expires: Option<Date>,
    /// Whether somebody looked at the label and found no day on it.
    pub has_no_expiry: bool,
    /// Least and greatest temperature in store, degrees Celsius.
    pub store_degc: (Option<f64>, Option<f64>),
    /// Stays in order: last day, and highest temperature in degrees Celsius.
    pub stays_degc: Vec<(Date, f64)>,
}

impl Lot {
    /// Whether its label may print a day that nobody has written down.
    pub fn label_is_unread(&self) -> bool {
        self.expires.is_none() && !self.has_no_expiry
    }

    /// Whether its stays are known up to a day.
    pub fn stays_reach(&self, day: Date) -> bool {
        self.stays_degc
            .last()
            .is_some_and(|(until, _)| *until >= day)
    }

    /// Greatest known temperature of its store and its stays, degrees Celsius.
    pub fn warmest_degc(&self) -> Option<f64> {
        let stays = self.stays_degc.iter().map(|(_, degc)| *degc);
        stays.chain(self.store_degc.1).reduce(f64::max)
    }
}

pub(super) fn lot(reader: &mut JobReader<'_>, row: &Record) -> Option<(EndId, Lot)> {
    let end = reader.end(row)?;
    let stays = stays(reader, row);
    store(reader, row, &stays);
    let has_no_expiry = row.flag("no_expiry") == Some(true);
    if let Some(expires) = row.date("expires").filter(|_| has_no_expiry) {
        reader.complain(
            row.at("no_expiry"),
            RowSaid::LabelPrintsBoth {
                expires: expires.to_string(),
            },
            RowHint::LookAtLabel,
        );
    }
    let row = Lot {
        part: row.string("part")?,
        lot: row.string("lot")?,
        made: row.date("made"),
        expanded: row.date("expanded"),
        expires: row.date("expires"),
        has_no_expiry,
        store_degc: (row.number("store_least"), row.number("store_greatest")),
        stays_degc: stays,
    };
    Some((end, row))
}

/// Stays of a part; complains if one does not end after the one before it.
fn stays(reader: &mut JobReader<'_>, lot: &Record) -> Vec<(Date, f64)> {
    let mut stays: Vec<(Date, f64)> = Vec::new();
    for row in lot.records("stay") {
        let (Some(until), Some(degc)) = (row.date("until"), row.number("greatest")) else {
            continue;
        };
        if let Some((last, _)) = stays.last()
            && *last >= until
        {
            let last = *last;
            reader.complain(
                row.at("until"),
                RowSaid::StayNotAfter {
                    until: until.to_string(),
                    last: last.to_string(),
                },
                RowHint::StaysInOrder,
            );
        }
        stays.push((until, degc));
    }
    stays
}

/// Complains if a part's highest temperature is below its lowest.
fn store(reader: &mut JobReader<'_>, row: &Record, stays: &[(Date, f64)]) {
    let Some(coldest) = row.number("store_least") else {
        return;
    };
    let stays = stays.iter().map(|(_, degc)| *degc);
    let warmest = stays.chain(row.number("store_greatest"));
    if let Some(warmest) = warmest.filter(|degc| *degc < coldest).reduce(f64::min) {
        reader.complain(
            row.at("store_least"),
            RowSaid::ColdestAboveWarmest {
                coldest_degc: coldest,
                warmest_degc: warmest,
            },
            RowHint::ExchangeOrLookUp,
        );
    }
}
