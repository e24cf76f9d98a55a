//! Reader of rows: the file, the complaints about it, and the day of the work.
//!
//! Why its own file: every kind of row is read with it, and it knows none of them.

use crate::cable::Size;
use crate::form::{Complaints, Item, Record, Source, Span, Value};
use crate::said::Said;
use jiff::civil::Date;
use jointwright_units::Interval;

/// Reads the rows of one file.
pub(super) struct RowReader<'a> {
    pub source: &'a Source,
    pub complaints: &'a mut Complaints,
    /// Day of the work, where the file is read for a job.
    pub today: Option<Date>,
}

impl RowReader<'_> {
    /// Adds a complaint at a byte of the file.
    pub fn complain(&mut self, at: usize, message: impl Into<Said>, hint: impl Into<Said>) {
        self.complaints
            .add(self.source.complaint(at, message, hint));
    }

    /// Place of a byte in the file.
    pub fn place(&self, at: usize) -> Span {
        self.source.span(at)
    }

    /// Complains of a missing field that every further step needs; the message calls the record `what`.
    pub fn complain_of_missing(&mut self, record: &Record, what: &str, name: &str, hint: &str) {
        if record.is_whole() && !record.is_given(name) {
            self.complain(
                record.at,
                format!("{what} has no `{name}`."),
                hint.to_owned(),
            );
        }
    }

    /// Interval between two fields of a record.
    pub fn interval(&mut self, record: &Record, least: &str, greatest: &str) -> Option<Interval> {
        let (low, high) = (record.length(least)?, record.length(greatest)?);
        let interval = Interval::new(low, high);
        if interval.is_none() {
            self.complain(
                record.at(least),
                format!("`{least}` is {low} and `{greatest}` is {high}; the least cannot be above the greatest."),
                "Exchange them, or look them up again.",
            );
        }
        interval
    }

    /// Conductor sizes in the list `sizes`.
    pub fn sizes(&mut self, record: &Record) -> Vec<Size> {
        record
            .list("sizes")
            .filter_map(|item| self.size(item, "sizes"))
            .collect()
    }

    /// Conductor size in a field.
    pub fn size_in(&mut self, record: &Record, name: &str) -> Option<Size> {
        self.size(record.item(name)?, name)
    }

    fn size(&mut self, item: &Item, name: &str) -> Option<Size> {
        let Value::Text(text) = &item.value else {
            return None;
        };
        match Size::parse(text) {
            Ok(size) => Some(size),
            Err(error) => {
                self.complain(
                    item.at,
                    format!("`{name}` holds \"{text}\": {error}."),
                    "Write \"4/0 AWG\", \"500 kcmil\" or \"240 mm2\".",
                );
                None
            }
        }
    }
}
