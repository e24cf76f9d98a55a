//! Copies: a row that holds the data of an invented part is invented too, whatever it says of itself.
//!
//! A demonstration row copied into another file, renamed and with its mark taken off, would otherwise carry invented numbers into a real joint.

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
/// Fewest numbers for which a row that is nearly the same counts as a copy.
const NUMBERS_FOR_LIKENESS_LEAST: usize = 4;

/// The data of one row: every value below its naming, by where it stands.
#[derive(Debug)]
pub(super) struct Print {
    kind: &'static str,
    facts: BTreeSet<String>,
    numbers: BTreeMap<String, String>,
}

impl Print {
    /// Data of a row of this kind.
    pub fn of(kind: &'static str, record: &Record) -> Print {
        let mut print = Print {
            kind,
            facts: BTreeSet::new(),
            numbers: BTreeMap::new(),
        };
        for (name, item) in record.items() {
            if !NAMING.contains(&name) {
                print.add(name, &item.value);
            }
        }
        print
    }

    fn add(&mut self, path: &str, value: &Value) {
        match value {
            Value::Record(record) => self.add_record(path, record),
            Value::List(items) => {
                for item in items {
                    match &item.value {
                        // The rows of a list are told apart by what they say, not by their order.
                        Value::Record(record) => {
                            self.add_record(&format!("{path}[{}]", words(record)), record)
                        }
                        value => self.add(path, value),
                    }
                }
            }
            Value::Length(length) => self.number(path, length.to_string()),
            Value::Number(number) => self.number(path, number.to_string()),
            other => {
                self.facts.insert(format!("{path}={other:?}"));
            }
        }
    }

    fn add_record(&mut self, path: &str, record: &Record) {
        for (name, item) in record.items().filter(|(name, _)| !REMARKS.contains(name)) {
            self.add(&format!("{path}.{name}"), &item.value);
        }
    }

    fn number(&mut self, path: &str, shown: String) {
        self.facts.insert(format!("{path}={shown}"));
        let mut path = path.to_owned();
        while self.numbers.contains_key(&path) {
            path.push('+');
        }
        self.numbers.insert(path, shown);
    }

    /// Whether this row holds the data of the other: all of it, or three quarters of its numbers where there are many.
    pub fn copies(&self, invented: &Print) -> bool {
        if self.kind != invented.kind || self.numbers.is_empty() {
            return false;
        }
        if self.facts == invented.facts {
            return true;
        }
        let same = invented
            .numbers
            .iter()
            .filter(|(path, shown)| self.numbers.get(*path) == Some(shown))
            .count();
        let most = self.numbers.len().max(invented.numbers.len());
        most >= NUMBERS_FOR_LIKENESS_LEAST && 4 * same >= 3 * most
    }
}

fn words(record: &Record) -> String {
    let words: Vec<&str> = record
        .items()
        // Where a number stands in a paper says nothing of the part.
        .filter(|(name, _)| !REMARKS.contains(name))
        .filter_map(|(_, item)| match &item.value {
            Value::Text(text) => Some(text.as_str()),
            _ => None,
        })
        .collect();
    words.join("/")
}
