//! Critic: what contradicts itself in a catalogue, before anybody plans a joint with it.
//!
//! Why its own room: a misprinted digit in a row is found here by the rows beside it, not in a vault by the cable.
//!
//! Invariants: a defect is said once, with the row, both values and what was expected; the order of rows changes nothing but places; what a row may leave to other rows is no defect.
//!
//! Not here: whether a file can be read (`catalogue`), whether a part goes on a cable (`checks`).
//! Finding nothing does not mean that the rows say what their paper says.

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
mod rows_gap;
mod rows_overlap;
mod table;
mod text_against_number;
mod tie;
mod window_rounds_to_nothing;

pub use remark::{Remark, remarks};

use crate::catalogue::Catalogue;
use crate::form::Span;
use entry::{Entry, entries};
use jointwright_units::Length;

/// What contradicts itself in a catalogue.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Defect {
    /// Name of its class, for ever.
    pub class: &'static str,
    /// Where it stands.
    pub place: Span,
    /// Short names of the rows that take part in it.
    pub rows: Vec<String>,
    /// What was found, whole sentences, with values and units.
    pub found: String,
    /// What was expected and on whose word, a whole sentence.
    pub expected: String,
    /// What to do next, a whole sentence.
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

/// Every class of defect with the question it asks.
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
    // What lies where hangs on everything that the rows say, and is said only once that is right.
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
    // What is wrong with a whole row shows at each of its ends.
    defects.dedup();
    defects
}

/// A length as its paper may have it: in inches too where it is a fraction of an inch and no tenth of a millimetre.
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
