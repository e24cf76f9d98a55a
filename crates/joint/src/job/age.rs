//! Age: day from which a lot ages, and its last day by label and row.
//!
//! Why its own file: the check of the date and the pressure of an aged part use the same rule.
//!
//! Invariant: a day that is not written down counts as the latest possible day, so a part past its date by that day is past it for certain.

use super::Lot;
use crate::catalogue::Shelf;
use crate::said::Begun;
use jiff::ToSpan;
use jiff::civil::Date;

impl Lot {
    /// Day on which its age begins by its row, if the job states it.
    pub fn begun(&self, shelf: &Shelf) -> Option<Date> {
        match shelf.begun() {
            Begun::Expanded => self.expanded,
            Begun::Made => self.made,
        }
    }

    /// Latest day from which the months of its row run: no part is made after it was expanded.
    pub fn begun_at_latest(&self, shelf: &Shelf) -> Option<Date> {
        let begun = self.begun(shelf);
        match shelf.begun() {
            Begun::Expanded => begun,
            Begun::Made => begun.or(self.expanded),
        }
    }

    /// Latest last day by the months of its row.
    pub fn last_by_row(&self, shelf: &Shelf) -> Option<Date> {
        let begun = self.begun_at_latest(shelf)?;
        begun.checked_add(shelf.months.months()).ok()
    }

    /// Latest last day by its label and its row.
    pub fn last_day(&self, shelf: Option<&Shelf>) -> Option<Date> {
        let by_row = shelf.and_then(|shelf| self.last_by_row(shelf));
        self.expires.into_iter().chain(by_row).min()
    }
}
