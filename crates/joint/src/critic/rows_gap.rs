//! Finds cables that fall between two neighbouring rows of one table.

use super::entry::Entry;
use super::table::{are_told_apart, tables};
use super::{Class, Defect, shown};
use crate::catalogue::Catalogue;

pub(super) const CLASS: Class = Class {
    slug: "rows_gap",
    question: "Does a cable fall between two neighbouring rows of one table?",
    find,
};

fn find(_: &Catalogue, entries: &[Entry<'_>]) -> Vec<Defect> {
    let mut defects = Vec::new();
    for table in tables(entries) {
        for (index, line) in table.lines.iter().enumerate() {
            // The row below is the row that reaches farthest among the rows that could take the cable instead.
            let below = table.lines[..index]
                .iter()
                .filter(|other| !are_told_apart(other, line))
                .max_by_key(|other| other.range.greatest());
            let Some(below) = below.filter(|b| b.range.greatest() < line.range.least()) else {
                continue;
            };
            let found = format!(
                "The {} of `{}` ends at {} and that of `{}` begins at {}: a cable between them has no row in {}.",
                table.range,
                below.entry.head.id,
                shown(below.range.greatest()),
                line.entry.head.id,
                shown(line.range.least()),
                table.paper
            );
            let mut defect = Defect::of_row(
                CLASS.slug,
                &line.entry,
                found,
                "Expected neighbouring rows of one table to touch.",
                "Look up both bounds in the paper; where it leaves the gap itself, ask its maker what such a cable gets.",
            );
            defect.rows = vec![below.entry.head.id.clone(), line.entry.head.id.clone()];
            defects.push(defect);
        }
    }
    defects
}
