//! Do doc comments begin with a noun or a verb?
//!
//! A doc comment that begins with "What", "How" or "That of" stands in place of a name: the reader finds out late what it is about.
//! Those that stand today are counted for each crate, and the count only falls.

use std::collections::BTreeMap;

use super::{Complaint, Report};
use crate::rust_text::RustText;
use crate::tree::Tree;

/// Words that begin no doc comment.
const WORDS: &[&str] = &["That of", "Those of", "Of", "What", "How", "Which"];
/// Doc comments of each crate that still begin with such words; a crate that is not named has none.
const KNOWN: &[(&str, usize)] = &[];
/// Number by which a count may lie below the table in silence.
///
/// Several people mend at the same time: if each had to lower the same line, they would only collide there.
/// When a crate has none left, or the mending is over, its line states the count exactly.
const SLACK: usize = 20;

/// Counts the openings of every crate and holds them against the table.
pub fn judge(tree: &Tree) -> Report {
    let mut found: BTreeMap<String, Vec<(String, usize)>> = BTreeMap::new();
    for (path, source) in tree.files("", ".rs") {
        for line in openings(source) {
            let place = (path.to_owned(), line);
            found.entry(crate_of(path)).or_default().push(place);
        }
    }
    against(KNOWN, &found).into()
}

/// Folder of the crate that a file belongs to.
fn crate_of(path: &str) -> String {
    let n_folders = if path.starts_with("crates/") { 2 } else { 1 };
    path.split('/')
        .take(n_folders)
        .collect::<Vec<_>>()
        .join("/")
}

/// Lines on which a doc comment begins with one of the words.
fn openings(source: &str) -> Vec<usize> {
    let comments = RustText::split(source).comments;
    let mut lines = Vec::new();
    let mut last = None;
    for (index, line) in comments.lines().enumerate() {
        let doc = doc_line(line);
        let begins = doc.filter(|(kind, _)| last != Some(*kind));
        if begins.is_some_and(|(_, text)| WORDS.iter().any(|words| leads(text, words))) {
            lines.push(index + 1);
        }
        last = doc.map(|(kind, _)| kind);
    }
    lines
}

/// Kind and text of a line of a doc comment.
fn doc_line(line: &str) -> Option<(&'static str, &str)> {
    let line = line.trim();
    let kind = ["///", "//!"]
        .into_iter()
        .find(|kind| line.starts_with(kind) && !line.starts_with("////"))?;
    Some((kind, line[kind.len()..].trim()))
}

/// Whether a text begins with these words, and not with longer ones.
fn leads(text: &str, words: &str) -> bool {
    text.strip_prefix(words)
        .is_some_and(|rest| !rest.starts_with(|letter: char| letter.is_alphanumeric()))
}

fn against(
    known: &[(&str, usize)],
    found: &BTreeMap<String, Vec<(String, usize)>>,
) -> Vec<Complaint> {
    let mut complaints = Vec::new();
    let known: BTreeMap<&str, usize> = known.iter().copied().collect();
    let none = Vec::new();
    for (folder, places) in found {
        let allowed = known.get(folder.as_str()).copied().unwrap_or(0);
        if places.len() > allowed {
            complaints.extend(too_many(folder, places, allowed));
        }
    }
    for (folder, allowed) in known {
        let n = found.get(folder).unwrap_or(&none).len();
        if n + SLACK < allowed {
            let said =
                format!("{n} doc comments begin with such words, {allowed} stand in the table");
            let cure = "lower KNOWN in xtask/src/tidy/openings.rs, so that they stay gone";
            complaints.push(Complaint::of(folder, said, cure));
        }
    }
    complaints
}

/// Complaint about a crate that has more openings than the table; where it has none, every line is named.
fn too_many(folder: &str, places: &[(String, usize)], allowed: usize) -> Vec<Complaint> {
    let cure = "begin with a noun or a verb in the third person: see STYLE.md, \"Plain English\"";
    let words = WORDS.join("\", \"");
    if allowed == 0 {
        let said = format!("a doc comment begins with one of \"{words}\"");
        return places
            .iter()
            .map(|(path, line)| Complaint::at(path, *line, said.clone(), cure))
            .collect();
    }
    let n = places.len();
    let said = format!("{n} doc comments begin with \"{words}\", {allowed} are known");
    vec![Complaint::of(folder, said, cure)]
}

#[cfg(test)]
mod tests {
    use super::super::check;
    use super::*;

    /// Number of places of a crate in which a doc comment begins so.
    fn found(folder: &str, n: usize) -> BTreeMap<String, Vec<(String, usize)>> {
        let path = format!("{folder}/src/a.rs");
        let places = (1..=n).map(|line| (path.clone(), line)).collect();
        BTreeMap::from([(folder.to_owned(), places)])
    }

    #[test]
    fn a_planted_opening_is_named_where_none_is_known() {
        let file = |text: &'static str| [("crates/new/src/a.rs", text)];
        for words in WORDS {
            let text = format!("/// {words} it is.\nfn f() {{}}\n");
            let report = judge(&Tree::of(&[("crates/new/src/a.rs", &text)]));
            let is_named = |c: &Complaint| c.path == "crates/new/src/a.rs" && c.line == Some(1);
            assert!(report.complaints.iter().any(is_named), "{words}");
        }
        let right = file("//! Room.\n/// Whether it fits.\n/// What follows is free.\nfn f() {}\n");
        let report = judge(&Tree::of(&right));
        assert!(report.complaints.iter().all(|c| c.line.is_none()));
    }

    #[test]
    fn only_the_first_line_of_a_doc_comment_counts() {
        assert_eq!(openings("//! What it is.\n//! How it is.\n"), [1]);
        assert_eq!(openings("//! Room.\n/// How far.\nfn f() {}\n"), [2]);
        assert_eq!(
            openings("    /// Of each.\n    a: u8,\n    /// Of all.\n"),
            [1, 3]
        );
        assert_eq!(
            openings("// What for.\n//// What.\nlet a = \"/// What\";\n"),
            []
        );
        assert_eq!(
            openings("/// Offset.\n/// However.\n\n/// Whatever comes.\n"),
            []
        );
    }

    #[test]
    fn the_count_only_falls() {
        let known = &[("crates/a", 30)];
        let said = |n: usize| against(known, &found("crates/a", n));
        assert!(said(30).is_empty());
        assert!(said(30 - SLACK).is_empty());
        assert!(said(31)[0].found.contains("31 doc comments begin"));
        assert!(said(29 - SLACK)[0].cure.contains("lower KNOWN"));
        assert_eq!(against(known, &BTreeMap::new()).len(), 1);
    }

    #[test]
    fn a_file_belongs_to_the_crate_of_its_folder() {
        assert_eq!(crate_of("crates/units/src/length.rs"), "crates/units");
        assert_eq!(crate_of("xtask/src/main.rs"), "xtask");
    }

    #[test]
    fn a_tree_without_crates_asks_for_a_lower_table() {
        let above = KNOWN.iter().filter(|(_, n)| *n > SLACK);
        let expected: Vec<&str> = above.map(|(folder, _)| *folder).collect();
        let mut expected = expected;
        expected.sort_unstable();
        check(judge, &[], &expected);
    }
}
