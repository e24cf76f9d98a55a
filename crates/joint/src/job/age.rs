//! Age: from which day a lot ages, and its last day by label and row.
//!
//! Why its own file: the check of the date and the pressure of an aged part read one rule.
//!
//! Invariant: a day that is not written down is taken at the latest that it can be, so that what is past its date then is past it for certain.

use super::Lot;
use crate::catalogue::Shelf;
use crate::said::Begun;
use jiff::ToSpan;
use jiff::civil::Date;

impl Lot {
    /// The day on which its age began by its row, as it is written down.
    pub fn begun(&self, shelf: &Shelf) -> Option<Date> {
        match shelf.begun() {
            Begun::Expanded => self.expanded,
            Begun::Made => self.made,
        }
    }

    /// The day from which the months of its row run, at the latest: nothing is made after it was expanded.
    pub fn begun_at_latest(&self, shelf: &Shelf) -> Option<Date> {
        let begun = self.begun(shelf);
        match shelf.begun() {
            Begun::Expanded => begun,
            Begun::Made => begun.or(self.expanded),
        }
    }

    /// Last day by the months of its row, at the latest.
    pub fn last_by_row(&self, shelf: &Shelf) -> Option<Date> {
        let begun = self.begun_at_latest(shelf)?;
        begun.checked_add(shelf.months.months()).ok()
    }

    /// Last day by its label and by its row, at the latest.
    pub fn last_day(&self, shelf: Option<&Shelf>) -> Option<Date> {
        let by_row = shelf.and_then(|shelf| self.last_by_row(shelf));
        self.expires.into_iter().chain(by_row).min()
    }
}
