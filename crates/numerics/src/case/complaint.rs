//! Complaint: the fault of a case file, its place, and the next step.

use super::tree::{Node, Segment};
use std::fmt;

/// Greatest number of complaints of one run; hardly anybody reads more to the end.
const COMPLAINTS_MOST: usize = 200;

/// A fault of a case file, its place, and the next step.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Complaint {
    /// Line of the value, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
    /// Path of the value, as `curves[12].tag`, indices from 0; empty for the whole file.
    pub path: String,
    /// The finding and the expectation, in whole sentences.
    pub message: String,
    /// The next step, a whole sentence, or empty.
    pub hint: String,
}

impl fmt::Display for Complaint {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{} ", self.line, self.column)?;
        if !self.path.is_empty() {
            write!(f, "{}: ", self.path)?;
        }
        f.write_str(&self.message)?;
        if !self.hint.is_empty() {
            write!(f, " Hint: {}", self.hint)?;
        }
        Ok(())
    }
}

/// A complaint whose line has not been determined yet.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Found {
    offset: usize,
    path: String,
    message: String,
    hint: String,
}

/// The complaints of one run over one text.
pub(super) struct Complaints<'t> {
    text: &'t str,
    found: Vec<Found>,
    /// Number of complaints, kept or not.
    n_found: usize,
}

impl<'t> Complaints<'t> {
    pub(super) fn new(text: &'t str) -> Self {
        Self {
            text,
            found: Vec::new(),
            n_found: 0,
        }
    }

    /// Number of complaints so far.
    pub(super) fn len(&self) -> usize {
        self.n_found
    }

    /// Complains about the value at the end of the steps, or about the last value that exists on the way.
    pub(super) fn add(
        &mut self,
        tree: &Node,
        steps: &[Segment<'_>],
        message: impl Into<String>,
        hint: impl Into<String>,
    ) {
        if self.is_flooded() {
            return;
        }
        let offset = tree.offset_of(steps);
        self.add_at(offset, path(steps), message.into(), hint.into());
    }

    /// Complains about the whole file.
    pub(super) fn add_top(&mut self, message: impl Into<String>, hint: impl Into<String>) {
        self.add_at(0, String::new(), message.into(), hint.into());
    }

    pub(super) fn add_at(&mut self, offset: usize, path: String, message: String, hint: String) {
        if self.is_flooded() {
            return;
        }
        self.n_found += 1;
        self.found.push(Found {
            offset,
            path: one_line(&path),
            message: one_line(&message),
            hint: one_line(&hint),
        });
    }

    /// Whether there are more complaints than anybody would read; if so, counts one more.
    fn is_flooded(&mut self) -> bool {
        let is_flooded = self.found.len() >= 10 * COMPLAINTS_MOST;
        self.n_found += usize::from(is_flooded);
        is_flooded
    }

    /// The complaints in the order of the text, without duplicates.
    pub(super) fn into_sorted(mut self) -> Vec<Complaint> {
        let n_dropped = self.n_found - self.found.len();
        self.found.sort();
        self.found.dedup();
        let n_more = n_dropped + self.found.len().saturating_sub(COMPLAINTS_MOST);
        self.found.truncate(COMPLAINTS_MOST);
        if n_more > 0
            && let Some(last) = self.found.last()
        {
            self.found.push(Found {
                offset: last.offset,
                path: String::new(),
                message: format!("There are {n_more} more complaints."),
                hint: "The first ones are often the cause of the others.".to_owned(),
            });
        }
        let text = self.text;
        let placed = |found: Found| {
            let (line, column) = line_and_column(text, found.offset);
            Complaint {
                line,
                column,
                path: found.path,
                message: found.message,
                hint: found.hint,
            }
        };
        self.found.into_iter().map(placed).collect()
    }
}

/// The path of a value in words.
pub(super) fn path(steps: &[Segment<'_>]) -> String {
    let mut path = String::new();
    for step in steps {
        match step {
            Segment::Index(index) => path.push_str(&format!("[{index}]")),
            Segment::Name(name) if is_plain(name) => {
                if !path.is_empty() {
                    path.push('.');
                }
                path.push_str(name);
            }
            Segment::Name(name) => path.push_str(&format!("[{name:?}]")),
        }
    }
    path
}

fn is_plain(name: &str) -> bool {
    !name.is_empty()
        && name
            .chars()
            .all(|c| c.is_ascii_alphanumeric() || matches!(c, '_' | '-'))
}

/// Line and column, both from 1, of a byte offset; columns count characters.
pub(super) fn line_and_column(text: &str, offset: usize) -> (usize, usize) {
    let mut offset = offset.min(text.len());
    while !text.is_char_boundary(offset) {
        offset -= 1;
    }
    let before = &text[..offset];
    let line_start = before.rfind('\n').map_or(0, |at| at + 1);
    (
        before.matches('\n').count() + 1,
        before[line_start..].chars().count() + 1,
    )
}

fn one_line(text: &str) -> String {
    text.chars()
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect()
}

/// A word as quoted in a complaint: on one line, and short enough to leave room for the rest.
pub(super) fn quoted(word: &str) -> String {
    const LENGTH_MOST: usize = 60;
    let short: String = word.chars().take(LENGTH_MOST).collect();
    if short.len() < word.len() {
        format!("{short:?} and so on")
    } else {
        format!("{short:?}")
    }
}

/// The known word nearest to an unknown word, as a hint.
pub(super) fn nearest<'w>(word: &str, known: impl Iterator<Item = &'w str>) -> String {
    // A long word is not a typing error, and its edit distance is expensive.
    const LENGTH_MOST: usize = 100;
    let mut best: Option<(usize, &str)> = None;
    let mut list: Vec<&str> = Vec::new();
    for other in known {
        list.push(other);
        if word.len() > LENGTH_MOST || other.len() > LENGTH_MOST {
            continue;
        }
        let distance = strsim::osa_distance(word, other);
        if distance <= 1 + other.chars().count() / 4 && best.is_none_or(|(d, _)| distance < d) {
            best = Some((distance, other));
        }
    }
    match best {
        Some((_, other)) => format!("The nearest known word is {}.", quoted(other)),
        None if list.is_empty() => String::new(),
        None => {
            const WORDS_MOST: usize = 12;
            let shown: Vec<String> = list.iter().take(WORDS_MOST).map(|w| quoted(w)).collect();
            let more = if list.len() > WORDS_MOST { ", …" } else { "" };
            format!("Known are {}{more}.", shown.join(", "))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_and_columns_count_characters_from_one() {
        for (offset, expected) in [(0, (1, 1)), (3, (1, 2)), (5, (2, 1)), (99, (2, 3))] {
            assert_eq!(line_and_column("½½\ncd", offset), expected);
        }
    }

    #[test]
    fn paths_name_fields_and_count_items_from_nought() {
        let steps = [
            Segment::Name("curves"),
            Segment::Index(12),
            Segment::Name("tag"),
        ];
        assert_eq!(path(&steps), "curves[12].tag");
        let steps = [Segment::Name("potentials_kv"), Segment::Name("a \"b\"")];
        assert_eq!(path(&steps), "potentials_kv[\"a \\\"b\\\"\"]");
    }

    #[test]
    fn the_nearest_word_is_offered_and_else_the_list() {
        let known = ["eps_r", "sigma_s_per_m"];
        assert!(nearest("epsr", known.into_iter()).contains("nearest known word is \"eps_r\""));
        assert!(nearest("colour", known.into_iter()).contains("Known are \"eps_r\", \"sigma"));
        assert_eq!(nearest("a", [].into_iter()), "");
    }

    #[test]
    fn a_flood_of_complaints_is_cut_and_says_so() {
        let mut complaints = Complaints::new("text");
        for n in 0..1000 {
            complaints.add_at(0, String::new(), format!("Number {n}."), String::new());
        }
        let found = complaints.into_sorted();
        assert_eq!(found.len(), COMPLAINTS_MOST + 1);
        assert_eq!(
            found[COMPLAINTS_MOST].message,
            "There are 800 more complaints."
        );
        let mut complaints = Complaints::new("text");
        for n in 0..100_000 {
            complaints.add_at(0, String::new(), format!("Number {n}."), String::new());
        }
        assert_eq!(complaints.len(), 100_000);
        let last = complaints.into_sorted().pop().expect("there are some");
        assert_eq!(last.message, "There are 99800 more complaints.");
    }
}
