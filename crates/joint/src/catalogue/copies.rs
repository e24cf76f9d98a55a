//! Copies: a row that holds the numbers of an invented part is invented too, whatever it says of itself.
//!
//! Otherwise a demonstration row, copied into another file, renamed and with its mark taken off, would carry invented numbers into a real joint.
//!
//! Only numbers are compared, each by its field: texts beside them, the order of rows, the case of letters and changes that a reading could not see do not count.
//! A number has as many bits as it needs to be told from other plausible numbers in its field; these weights are our own, chosen so that random plausible rows are not taken for copies (see the law on chance).

use crate::form::{Record, Value};
use std::collections::{BTreeMap, BTreeSet};

/// Fields that a copy changes without changing the part.
const NAMING: &[&str] = &[
    "id",
    "name",
    "demonstration",
    "instructions",
    "checked_by",
    "checked",
    "note",
    "step",
    "shelf",
    "about",
];
/// Fields of a row in a list that a copy changes without changing the part.
const REMARKS: &[&str] = &["place"];
/// Greatest difference of two lengths that count as one: the error of a good reading, nm.
const SAME_LENGTH_NM: i64 = 100_000;
/// Greatest difference of two other numbers that count as one, as a share of the larger.
const SAME_SHARE: f64 = 0.01;
/// Least length that is one of many possible in its field, nm; below it are tolerances, thicknesses, gaps.
const TELLING_NM: i64 = 10_000_000;
/// Weight of a length, of a small length and of any other number, bits.
const BITS: [u32; 3] = [5, 2, 2];
/// Fewest bits that two rows must share before their likeness counts: one in a million by chance.
const BITS_LEAST: u32 = 20;

/// A number of a row.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Figure {
    Length(i64),
    Number(f64),
}

impl Figure {
    /// Weight of the number; zero has no weight, whatever its field.
    fn bits(self) -> u32 {
        match self {
            Figure::Length(0) => 0,
            Figure::Length(nm) if nm.abs() >= TELLING_NM => BITS[0],
            Figure::Length(_) => BITS[1],
            Figure::Number(0.0) => 0,
            Figure::Number(_) => BITS[2],
        }
    }

    fn is_same(self, other: Figure) -> bool {
        match (self, other) {
            (Figure::Length(a), Figure::Length(b)) => (a - b).abs() <= SAME_LENGTH_NM,
            (Figure::Number(a), Figure::Number(b)) => {
                (a - b).abs() <= SAME_SHARE * a.abs().max(b.abs())
            }
            _ => false,
        }
    }

    fn order(self) -> f64 {
        match self {
            Figure::Length(nm) => nm as f64,
            Figure::Number(number) => number,
        }
    }
}

/// Data of one row: every value except its naming, by its field.
#[derive(Debug)]
pub(super) struct Print {
    kind: &'static str,
    /// Values that are not numbers, in small letters.
    facts: BTreeSet<String>,
    /// Numbers of each field, in order.
    figures: BTreeMap<String, Vec<Figure>>,
}

impl Print {
    /// Data of a row of this kind.
    pub fn of(kind: &'static str, record: &Record) -> Print {
        let mut print = Print {
            kind,
            facts: BTreeSet::new(),
            figures: BTreeMap::new(),
        };
        for (name, item) in record.items() {
            if !NAMING.contains(&name) {
                print.add(name, &item.value);
            }
        }
        for figures in print.figures.values_mut() {
            figures.sort_by(|a, b| a.order().total_cmp(&b.order()));
        }
        print
    }

    fn add(&mut self, path: &str, value: &Value) {
        match value {
            Value::Record(record) => {
                for (name, item) in record.items().filter(|(name, _)| !REMARKS.contains(name)) {
                    self.add(&format!("{path}.{name}"), &item.value);
                }
            }
            Value::List(items) => {
                for item in items {
                    self.add(path, &item.value);
                }
            }
            Value::Length(length) => self.figure(path, Figure::Length(length.nm())),
            Value::Number(number) => self.figure(path, Figure::Number(*number)),
            Value::Integer(number) => self.figure(path, Figure::Number(*number as f64)),
            other => {
                let said = format!("{path}={other:?}").to_lowercase();
                self.facts.insert(said);
            }
        }
    }

    fn figure(&mut self, path: &str, figure: Figure) {
        let figures = self.figures.entry(path.to_owned()).or_default();
        figures.push(figure);
    }

    /// Bits of all numbers.
    fn bits(&self) -> u32 {
        self.figures.values().flatten().map(|f| f.bits()).sum()
    }

    fn n_figures(&self) -> usize {
        self.figures.values().map(Vec::len).sum()
    }

    /// Bits and count of the numbers that also stand in the other row, each paired once within its field.
    fn shared(&self, other: &Print) -> (u32, usize) {
        let mut shared = (0, 0);
        for (path, ours) in &self.figures {
            let mut theirs = other.figures.get(path).into_iter().flatten().peekable();
            for figure in ours {
                // Both lists are in order: a number that lies too far below finds no partner any more.
                while theirs
                    .next_if(|t| !t.is_same(*figure) && t.order() < figure.order())
                    .is_some()
                {}
                if theirs.next_if(|t| t.is_same(*figure)).is_some() {
                    shared = (shared.0 + figure.bits(), shared.1 + 1);
                }
            }
        }
        shared
    }

    /// Whether this row holds the data of the other: all its numbers and words, or three quarters of the smaller row's bits.
    pub fn copies(&self, invented: &Print) -> bool {
        if self.kind != invented.kind || self.figures.is_empty() {
            return false;
        }
        let (bits, n) = self.shared(invented);
        let is_all = n == self.n_figures() && n == invented.n_figures();
        if is_all && self.facts == invented.facts {
            return true;
        }
        let least = self.bits().min(invented.bits());
        bits >= BITS_LEAST && 4 * bits >= 3 * least
    }

    /// Whether this row has too few bits to be told from the other by itself: beside copies it counts as a copy.
    pub fn is_hidden_by(&self, invented: &Print) -> bool {
        let is_small = self.bits().min(invented.bits()) < BITS_LEAST;
        self.kind == invented.kind && is_small && self.shared(invented).1 == self.n_figures()
    }
}
