//! Record: values of one table of a file, each with its place and checked against its field.

use jiff::civil::Date;
use jointwright_units::Length;
use std::collections::{BTreeMap, BTreeSet};

/// Value of a field.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// Text, short name or word of a choice.
    Text(String),
    /// Length, diameter or thickness.
    Length(Length),
    /// Number, or quantity in the unit named at [`super::Measure`].
    Number(f64),
    /// Whole number.
    Integer(i64),
    /// True or false.
    Flag(bool),
    /// Date.
    Date(Date),
    /// Table.
    Record(Record),
    /// List.
    List(Vec<Item>),
}

/// Value, with its byte offset.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// Byte offset in the source.
    pub at: usize,
    /// Value.
    pub value: Value,
}

/// Fields of a table that are present and well formed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Record {
    /// Byte offset of the table.
    pub at: usize,
    values: BTreeMap<&'static str, Item>,
    /// Fields in the file with a value that could not be read; each has its own complaint.
    wrong: BTreeSet<&'static str>,
    /// Whether the whole file is TOML; if not, a missing field proves nothing.
    is_whole: bool,
}

impl Record {
    /// Record without fields.
    pub fn new(at: usize) -> Record {
        Record {
            at,
            is_whole: true,
            ..Record::default()
        }
    }

    pub(super) fn put(&mut self, name: &'static str, item: Item) {
        self.values.insert(name, item);
    }

    pub(super) fn note_wrong(&mut self, name: &'static str) {
        self.wrong.insert(name);
    }

    pub(super) fn note_broken(&mut self) {
        self.is_whole = false;
    }

    /// Rows that a row stands for: one for each thing that the field names.
    pub(super) fn each(&self, name: &'static str) -> Vec<Record> {
        let Some(Value::List(items)) = self.item(name).map(|item| &item.value) else {
            return vec![self.clone()];
        };
        let row = |item: &Item| {
            let mut row = self.clone();
            row.put(name, item.clone());
            row
        };
        items.iter().map(row).collect()
    }

    /// Content of a row without its place: two rows with equal values have equal content.
    pub fn said(&self) -> String {
        let each = self.values.iter();
        let each = each.map(|(name, item)| format!("{name}={}", item.said()));
        format!("{{{}}}", each.collect::<Vec<_>>().join(","))
    }

    /// Whether the file has the field, well formed or not.
    pub fn is_given(&self, name: &str) -> bool {
        self.values.contains_key(name) || self.wrong.contains(name)
    }

    /// Whether the whole file was TOML.
    pub fn is_whole(&self) -> bool {
        self.is_whole
    }

    /// Value in a field; `None` if the field is absent or could not be read.
    pub fn item(&self, name: &str) -> Option<&Item> {
        self.values.get(name)
    }

    /// Byte offset of a field's value, or of the table if the field has no value.
    pub fn at(&self, name: &str) -> usize {
        self.item(name).map_or(self.at, |item| item.at)
    }

    /// Fields in the order of their names.
    pub fn items(&self) -> impl Iterator<Item = (&'static str, &Item)> {
        self.values.iter().map(|(name, item)| (*name, item))
    }

    /// Text in a field.
    pub fn text(&self, name: &str) -> Option<&str> {
        match &self.item(name)?.value {
            Value::Text(text) => Some(text),
            _ => None,
        }
    }

    /// Text in a field, owned.
    pub fn string(&self, name: &str) -> Option<String> {
        self.text(name).map(str::to_owned)
    }

    /// Length in a field.
    pub fn length(&self, name: &str) -> Option<Length> {
        match self.item(name)?.value {
            Value::Length(length) => Some(length),
            _ => None,
        }
    }

    /// Number in a field.
    pub fn number(&self, name: &str) -> Option<f64> {
        match self.item(name)?.value {
            Value::Number(number) => Some(number),
            _ => None,
        }
    }

    /// Whole number in a field.
    pub fn integer(&self, name: &str) -> Option<i64> {
        match self.item(name)?.value {
            Value::Integer(integer) => Some(integer),
            _ => None,
        }
    }

    /// Flag in a field.
    pub fn flag(&self, name: &str) -> Option<bool> {
        match self.item(name)?.value {
            Value::Flag(flag) => Some(flag),
            _ => None,
        }
    }

    /// Date in a field.
    pub fn date(&self, name: &str) -> Option<Date> {
        match self.item(name)?.value {
            Value::Date(date) => Some(date),
            _ => None,
        }
    }

    /// Table in a field.
    pub fn record(&self, name: &str) -> Option<&Record> {
        match &self.item(name)?.value {
            Value::Record(record) => Some(record),
            _ => None,
        }
    }

    /// Tables in a list field; empty if the field was not given.
    pub fn records(&self, name: &str) -> impl Iterator<Item = &Record> {
        self.list(name).filter_map(|item| match &item.value {
            Value::Record(record) => Some(record),
            _ => None,
        })
    }

    /// Items of a list field; empty if the field was not given.
    pub fn list(&self, name: &str) -> impl Iterator<Item = &Item> {
        let items: &[Item] = match self.item(name).map(|item| &item.value) {
            Some(Value::List(items)) => items,
            _ => &[],
        };
        items.iter()
    }

    /// Texts of a list field.
    pub fn texts(&self, name: &str) -> Vec<String> {
        self.list(name)
            .filter_map(|item| match &item.value {
                Value::Text(text) => Some(text.clone()),
                _ => None,
            })
            .collect()
    }

    /// Lengths of a list field.
    pub fn lengths(&self, name: &str) -> Vec<Length> {
        self.list(name)
            .filter_map(|item| match item.value {
                Value::Length(length) => Some(length),
                _ => None,
            })
            .collect()
    }
}

impl Item {
    fn said(&self) -> String {
        match &self.value {
            Value::Record(record) => record.said(),
            Value::List(items) => {
                let each: Vec<String> = items.iter().map(Item::said).collect();
                format!("[{}]", each.join(","))
            }
            other => format!("{other:?}"),
        }
    }
}
