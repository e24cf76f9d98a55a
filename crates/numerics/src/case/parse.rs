//! Parse: the tree of a JSON text.
//!
//! **Invariants.** `serde_json` decides whether the text is JSON; only accepted text is walked here, so nothing here can fail.
//! The parser limits the nesting to 128 levels.

use super::complaint::{Complaints, quoted};
use super::tree::{Key, Node, Value};

/// The tree of a text, or `None` and a complaint that says why.
pub(super) fn parse(text: &str, complaints: &mut Complaints<'_>) -> Option<Node> {
    if text.trim().is_empty() {
        complaints.add_top(
            "The file is empty; a section case was expected.",
            "docs/case-format.md says what stands in one.",
        );
        return None;
    }
    if let Err(error) = serde_json::from_str::<serde_json::Value>(text) {
        let offset = offset_of(text, error.line(), error.column());
        let said = error.to_string();
        let said = said.split(" at line ").next().unwrap_or_default();
        complaints.add_at(
            offset,
            String::new(),
            format!("The text is not JSON here: {said}."),
            "Nothing after this place was read.".to_owned(),
        );
        return None;
    }
    let mut scan = Scan {
        text,
        at: 0,
        twice: Vec::new(),
    };
    let tree = scan.value();
    for key in scan.twice {
        let message = format!("The word {} stands twice in one table.", quoted(&key.name));
        let hint = "Which of the two is meant cannot be told; leave one.".to_owned();
        complaints.add_at(key.offset, String::new(), message, hint);
    }
    tree
}

/// Offset of a line and column as the parser counts them: in bytes, with the column of the byte read last.
fn offset_of(text: &str, line: usize, column: usize) -> usize {
    let starts = std::iter::once(0).chain(text.match_indices('\n').map(|(at, _)| at + 1));
    let start = starts.take(line.max(1)).last().unwrap_or(0);
    start + column.saturating_sub(1)
}

/// A walk over text that is JSON.
struct Scan<'t> {
    text: &'t str,
    at: usize,
    /// Keys that the table already has.
    twice: Vec<Key>,
}

impl Scan<'_> {
    fn peek(&self) -> u8 {
        self.text.as_bytes().get(self.at).copied().unwrap_or(0)
    }

    fn skip_white(&mut self) {
        while matches!(self.peek(), b' ' | b'\t' | b'\n' | b'\r') {
            self.at += 1;
        }
    }

    fn value(&mut self) -> Option<Node> {
        self.skip_white();
        let offset = self.at;
        let value = match self.peek() {
            b'{' => self.table()?,
            b'[' => self.list()?,
            b'"' => Value::Text(self.string()?),
            b'n' => self.word(Value::Null),
            b't' | b'f' => self.word(Value::Flag),
            _ => self.number()?,
        };
        Some(Node { offset, value })
    }

    fn word(&mut self, value: Value) -> Value {
        while self.peek().is_ascii_alphabetic() {
            self.at += 1;
        }
        value
    }

    fn number(&mut self) -> Option<Value> {
        let start = self.at;
        while matches!(self.peek(), b'0'..=b'9' | b'-' | b'+' | b'.' | b'e' | b'E') {
            self.at += 1;
        }
        let number = self.text.get(start..self.at)?.parse().ok()?;
        Some(Value::Number(number))
    }

    fn string(&mut self) -> Option<String> {
        let start = self.at;
        self.at += 1;
        loop {
            match self.peek() {
                b'"' => break,
                b'\\' => self.at += 2,
                0 if self.at >= self.text.len() => return None,
                _ => self.at += 1,
            }
        }
        self.at += 1;
        serde_json::from_str(self.text.get(start..self.at)?).ok()
    }

    fn list(&mut self) -> Option<Value> {
        let mut items = Vec::new();
        self.at += 1;
        loop {
            self.skip_white();
            match self.peek() {
                b']' => break,
                b',' => self.at += 1,
                _ => items.push(self.value()?),
            }
        }
        self.at += 1;
        Some(Value::List(items))
    }

    fn table(&mut self) -> Option<Value> {
        let mut entries: Vec<(Key, Node)> = Vec::new();
        let mut names = std::collections::BTreeSet::new();
        self.at += 1;
        loop {
            self.skip_white();
            match self.peek() {
                b'}' => break,
                b',' => self.at += 1,
                _ => {
                    let offset = self.at;
                    let name = self.string()?;
                    let key = Key { offset, name };
                    if !names.insert(key.name.clone()) {
                        self.twice.push(key.clone());
                    }
                    self.skip_white();
                    // The colon.
                    self.at += 1;
                    entries.push((key, self.value()?));
                }
            }
        }
        self.at += 1;
        Some(Value::Table(entries))
    }
}

#[cfg(test)]
mod tests {
    use super::super::tree::Segment;
    use super::*;

    fn tree(text: &str) -> Node {
        let mut complaints = Complaints::new(text);
        let tree = parse(text, &mut complaints).expect("it is JSON");
        assert_eq!(complaints.len(), 0);
        tree
    }

    #[test]
    fn every_value_has_its_place() {
        let text = "{ \"a\" : [1, -2.5e3, \"x\\\"}\"],\n \"½\": {\"c\": null, \"d\":true} }";
        let tree = tree(text);
        let at = |steps: &[Segment<'_>]| &text[tree.offset_of(steps)..];
        assert!(at(&[Segment::Name("a"), Segment::Index(1)]).starts_with("-2.5e3"));
        assert!(at(&[Segment::Name("a"), Segment::Index(2)]).starts_with("\"x"));
        assert!(at(&[Segment::Name("½"), Segment::Name("d")]).starts_with("true"));
        assert!(at(&[Segment::Name("a"), Segment::Index(9)]).starts_with("[1"));
        assert_eq!(tree.items_at("a")[1].number(), Some(-2500.0));
        assert_eq!(tree.items_at("a")[2].text(), Some("x\"}"));
    }

    #[test]
    fn text_that_is_not_json_is_refused_where_it_stops_being() {
        for (text, column) in [("{\"a\": 1,}", 9), ("[1 2]", 4), ("{\"a\": 1e999}", 11)] {
            let mut complaints = Complaints::new(text);
            assert!(parse(text, &mut complaints).is_none());
            let found = complaints.into_sorted();
            assert_eq!(
                (found[0].line, found[0].column),
                (1, column),
                "{}",
                found[0]
            );
        }
    }

    #[test]
    fn a_key_that_stands_twice_is_named() {
        let text = "{\"a\": 1, \"a\": 2}";
        let mut complaints = Complaints::new(text);
        parse(text, &mut complaints);
        let found = complaints.into_sorted();
        assert!(found[0].message.contains("\"a\" stands twice") && found[0].column == 10);
    }
}
