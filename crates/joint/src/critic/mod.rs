//! Critic: contradictions within a catalogue, before anybody plans a joint with it.
//!
//! Why its own room: the rows beside it show a misprinted digit in a row here; otherwise the cable shows it in a vault.
//!
//! Invariants: a defect is reported once, with the row, both values and the expected value; the order of rows changes only places; a fact that a row may leave to other rows is no defect.
//!
//! Not here: whether a file can be read (`catalogue`), whether a part goes on a cable (`checks`).
//! An empty result does not mean that the rows agree with their paper.

mod column_not_monotone;
mod electrode_short;
mod entry;
mod figure;
mod links_contradict;
mod part_over_layer;
mod permitting_text;
mod plane_loose;
mod range_unreached;
mod remark;
mod row_chain;
mod rows_gap;
mod rows_overlap;
mod table;
mod text_against_number;
mod window_rounds_to_nothing;

pub use remark::{Remark, remarks};

use crate::catalogue::Catalogue;
use crate::form::Span;
use entry::{Entry, entries};
use jointwright_units::Length;

/// A contradiction within a catalogue.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Defect {
    /// Permanent name of its class.
    pub class: &'static str,
    /// Place of the defect.
    pub place: Span,
    /// Short names of the rows that take part.
    pub rows: Vec<String>,
    /// Finding, in whole sentences, with values and units.
    pub found: String,
    /// Expectation and its source, a whole sentence.
    pub expected: String,
    /// Next action, a whole sentence.
    pub hint: String,
}

impl Defect {
    /// Defect of one row.
    fn of_row(
        class: &'static str,
        entry: &Entry<'_>,
        found: String,
        expected: &str,
        hint: &str,
    ) -> Defect {
        Defect {
            class,
            place: entry.head.place.clone(),
            rows: vec![entry.head.id.clone()],
            found,
            expected: expected.to_owned(),
            hint: hint.to_owned(),
        }
    }

    /// The same defect, at another place.
    fn at(self, place: &Span) -> Defect {
        Defect {
            place: place.clone(),
            ..self
        }
    }
}

/// A class of defect: asks one question of all rows.
struct Class {
    slug: &'static str,
    question: &'static str,
    find: fn(&Catalogue, &[Entry<'_>]) -> Vec<Defect>,
}

const CLASSES: &[Class] = &[
    rows_overlap::CLASS,
    rows_gap::CLASS,
    links_contradict::CLASS,
    plane_loose::CLASS,
    part_over_layer::CLASS,
    electrode_short::CLASS,
    range_unreached::CLASS,
    column_not_monotone::CLASS,
    text_against_number::CLASS,
    window_rounds_to_nothing::CLASS,
    permitting_text::CLASS,
];

/// Every class of defect with its question.
pub fn classes() -> impl Iterator<Item = (&'static str, &'static str)> {
    CLASSES.iter().map(|class| (class.slug, class.question))
}

/// Defects of a catalogue, in the order of file, line and column.
pub fn criticise(catalogue: &Catalogue) -> Vec<Defect> {
    let entries = entries(catalogue);
    let defects: Vec<Defect> = CLASSES
        .iter()
        .flat_map(|class| (class.find)(catalogue, &entries))
        .collect();
    // The place of a part over a layer depends on everything else in the rows, so it is reported only when that is right.
    let (late, mut defects): (Vec<Defect>, Vec<Defect>) = defects
        .into_iter()
        .partition(|d| d.class == part_over_layer::CLASS.slug);
    let is_new = |late: &Defect| {
        let shares_a_row = |d: &Defect| d.rows.iter().any(|row| late.rows.contains(row));
        !defects.iter().any(shares_a_row)
    };
    let late: Vec<Defect> = late.into_iter().filter(is_new).collect();
    defects.extend(late);
    defects.sort_by(|a, b| {
        let key = |d: &Defect| (d.place.clone(), d.class, d.found.clone());
        key(a).cmp(&key(b))
    });
    // A defect of a whole row shows at each of its ends.
    defects.dedup();
    defects
}

/// A length as its paper may have it: also in inches, if it is a fraction of an inch and no tenth of a millimetre.
fn shown(length: Length) -> String {
    match length.exact_inch() {
        Some(inch) if length.nm() % 100_000 != 0 => format!("{inch} ({length})"),
        _ => length.to_string(),
    }
}

/// Words in a row, as `a, b and c`.
fn listed(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [one] => one.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}
