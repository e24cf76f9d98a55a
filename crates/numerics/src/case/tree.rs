//! Tree: the values of a JSON text with their places in it.
//!
//! **Why separate.** A complaint about a value needs its line and column, which a parsed value has lost.

/// A step from a value to a value inside it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Segment<'n> {
    /// To the value of a key.
    Name(&'n str),
    /// To an item of a list, from 0.
    Index(usize),
}

/// A value and the place where it begins.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Node {
    /// Byte offset in the text.
    pub(super) offset: usize,
    pub(super) value: Value,
}

/// A key of a table.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Key {
    /// Byte offset in the text.
    pub(super) offset: usize,
    pub(super) name: String,
}

/// Content of a value.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Value {
    Null,
    Flag,
    Number(f64),
    Text(String),
    List(Vec<Node>),
    Table(Vec<(Key, Node)>),
}

impl Value {
    /// Its kind, in words.
    pub(super) fn word(&self) -> &'static str {
        match self {
            Value::Null => "nothing (null)",
            Value::Flag => "true or false",
            Value::Number(_) => "a number",
            Value::Text(_) => "a text",
            Value::List(_) => "a list",
            Value::Table(_) => "a table of fields",
        }
    }
}

impl Node {
    /// The value of a key.
    pub(super) fn field(&self, name: &str) -> Option<&Node> {
        match &self.value {
            Value::Table(entries) => entries
                .iter()
                .find(|(key, _)| key.name == name)
                .map(|(_, node)| node),
            _ => None,
        }
    }

    /// The entries of a table; empty for any other value.
    pub(super) fn entries(&self) -> &[(Key, Node)] {
        match &self.value {
            Value::Table(entries) => entries,
            _ => &[],
        }
    }

    /// The entries of the table in a field.
    pub(super) fn entries_at(&self, name: &str) -> &[(Key, Node)] {
        self.field(name).map_or(&[], Node::entries)
    }

    /// The items of a list; empty for any other value.
    pub(super) fn items(&self) -> &[Node] {
        match &self.value {
            Value::List(items) => items,
            _ => &[],
        }
    }

    /// The items of the list in a field.
    pub(super) fn items_at(&self, name: &str) -> &[Node] {
        self.field(name).map_or(&[], Node::items)
    }

    pub(super) fn number(&self) -> Option<f64> {
        match self.value {
            Value::Number(number) => Some(number),
            _ => None,
        }
    }

    pub(super) fn number_at(&self, name: &str) -> Option<f64> {
        self.field(name)?.number()
    }

    pub(super) fn text(&self) -> Option<&str> {
        match &self.value {
            Value::Text(text) => Some(text),
            _ => None,
        }
    }

    pub(super) fn text_at(&self, name: &str) -> Option<&str> {
        self.field(name)?.text()
    }

    /// Offset of the value at the end of the steps, or of the last value that exists on the way.
    pub(super) fn offset_of(&self, steps: &[Segment<'_>]) -> usize {
        let mut at = self;
        for step in steps {
            let next = match step {
                Segment::Name(name) => at.field(name),
                Segment::Index(index) => at.items().get(*index),
            };
            match next {
                Some(node) => at = node,
                None => break,
            }
        }
        at.offset
    }
}
