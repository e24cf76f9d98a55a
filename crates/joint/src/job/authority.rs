//! Authority: who has decided something, as a source.

use super::people::Person;
use super::reader::JobReader;
use crate::form::Record;
use crate::said::{OwnerHint, OwnerSaid};
use jiff::civil::Date;

/// Name and date of somebody with the authority for the decision, as a source.
pub(super) fn decided(reader: &mut JobReader<'_>, row: &Record, what: &str) -> Option<String> {
    let (by, date): (String, Date) = (row.string("by")?, row.date("date")?);
    if reader.people.are_known
        && !reader
            .people
            .known
            .iter()
            .any(|p| p.name == by && p.decides.iter().any(|d| d == what))
    {
        let decides = |p: &&Person| p.decides.iter().any(|d| d == what);
        let who = reader.people.known.iter().filter(decides);
        let no_authority = OwnerSaid::HasNoAuthority {
            by: by.clone(),
            what: what.to_owned(),
            who: who.map(|p| p.name.clone()).collect(),
        };
        reader.complain(row.at("by"), no_authority, OwnerHint::LetSomebodyDecide);
    }
    reader.not_after_the_work(row);
    Some(format!("{by}, {date}"))
}
