//! Unknown part: complaints about a name that no row of the catalogue has.

use super::reader::JobReader;
use crate::said::{NameHint, NameSaid};

pub(super) fn names<'s>(names: impl Iterator<Item = &'s String>) -> String {
    let names: Vec<&str> = names.map(String::as_str).collect();
    names.join(", ")
}

pub(super) fn unknown_part(
    reader: &mut JobReader<'_>,
    at: usize,
    kind: &str,
    id: &str,
    known: &str,
) {
    // A row that could not be read has its own complaint, so its name is not unknown.
    if !reader.catalogue.is_whole() || reader.catalogue.names_row(kind, id) {
        return;
    }
    let hint = if reader.catalogue.has_complaints() {
        NameHint::CatalogueIsWrong
    } else if known.is_empty() {
        NameHint::AddTheRow
    } else {
        NameHint::RowsAre {
            rows: known.to_owned(),
        }
    };
    let no_row = NameSaid::NoRow {
        kind: kind.to_owned(),
        id: id.to_owned(),
    };
    reader.complain(at, no_row, hint);
}
