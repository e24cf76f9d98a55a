//! Do papers and pictures take every text from `wording`?
//!
//! A sentence that stands in a door is in one language for ever: no test of the languages sees it.
//! Two words beside each other are held to be a text; a single word is not seen.
//! Tags of a picture are refused in the same way: only the canvas writes them, because only the canvas escapes what stands in them.

use super::{Complaint, Report};
use crate::rust_text::{RustText, is_test_file};
use crate::tree::Tree;

/// Folders whose texts are labels of `wording`.
const WORDLESS: &[&str] = &["crates/paper/src/", "crates/drawing/src/"];
/// Files with texts for programmers: faults of the program.
const FAULTS: &[&str] = &["crates/paper/src/world.rs"];
/// Pairs that are the same in every language: units, and names of typefaces.
const SAME: &[&str] = &["kV rms", "DejaVu Sans", "Sans Condensed"];

/// Folder that writes the elements of pictures.
const CANVAS: &str = "crates/drawing/src/canvas/";

/// Judges the literals of papers and pictures, and the markup of templates.
pub fn judge(tree: &Tree) -> Report {
    let mut complaints = Vec::new();
    let is_wordless = |path: &str| {
        let is_in = WORDLESS.iter().any(|room| path.starts_with(room));
        is_in && !is_test_file(path) && !FAULTS.contains(&path)
    };
    for (path, source) in tree.files("crates/", ".rs") {
        if !is_wordless(path) {
            continue;
        }
        for (line, literals) in RustText::split(source).literals_without_tests() {
            complaints.extend(complaint(path, line, literals));
            complaints.extend(tag(path, line, literals));
        }
    }
    for (path, source) in tree.files("crates/", ".typ") {
        for (index, line) in source.lines().enumerate().filter(|_| is_wordless(path)) {
            for text in markup(line) {
                complaints.extend(complaint(path, index + 1, text));
            }
        }
    }
    complaints.into()
}

fn complaint(path: &str, line: usize, text: &str) -> Option<Complaint> {
    let words = words_beside(text)?;
    let found = format!("a text of its own: \u{201c}{words}\u{201d}");
    let cure = "give it a label in crates/wording/src/label, in every language";
    Some(Complaint::at(path, line, found, cure))
}

/// A tag written by hand.
fn tag(path: &str, line: usize, literals: &str) -> Option<Complaint> {
    let is_tag =
        |rest: &str| rest.starts_with(|c: char| c.is_ascii_alphabetic() || c == '/' || c == '{');
    let has_tag = literals.split('<').skip(1).any(is_tag);
    (has_tag && !path.starts_with(CANVAS)).then(|| {
        let found = "a tag of a picture, written by hand";
        let cure = "let crates/drawing/src/canvas write the element: it escapes what stands in it";
        Complaint::at(path, line, found, cure)
    })
}

/// First two words beside each other in a line of literals; elements and attributes of a picture are none.
fn words_beside(text: &str) -> Option<String> {
    if text.contains(['<', '=']) {
        return None;
    }
    let mut plain = String::new();
    let mut depth = 0_usize;
    for letter in text.chars() {
        match letter {
            '{' => depth += 1,
            '}' => depth = depth.saturating_sub(1),
            _ if depth > 0 => {}
            letter => plain.push(letter),
        }
    }
    let is_word = |word: &str| {
        let word = word.trim_end_matches([',', ';', ':', '.', '\'']);
        word.chars().count() > 1 && word.chars().all(|c| c.is_alphabetic() || c == '-')
    };
    let pieces: Vec<&str> = plain
        .split(' ')
        .map(|piece| piece.trim_matches('"'))
        .collect();
    let pairs = pieces
        .windows(2)
        .filter(|pair| is_word(pair[0]) && is_word(pair[1]));
    pairs
        .map(|pair| pair.join(" "))
        .find(|pair| !SAME.contains(&pair.as_str()))
}

/// Texts of a template's line: between brackets up to the next sign of code, between quotes, and lines that begin as a sentence.
fn markup(line: &str) -> Vec<&str> {
    let line = line.trim();
    if line.starts_with("//") {
        return Vec::new();
    }
    let mut texts: Vec<&str> = line.split('"').skip(1).step_by(2).collect();
    let is_code = |c: char| matches!(c, '#' | '[' | ']' | '(' | ')' | '{' | '}');
    texts.extend(
        line.split('[')
            .skip(1)
            .filter_map(|text| text.split(is_code).next()),
    );
    if line.starts_with(char::is_uppercase) {
        texts.extend(line.split(is_code).next());
    }
    texts
}

#[cfg(test)]
mod tests {
    use super::super::check;
    use super::*;

    #[test]
    fn a_sentence_in_a_paper_or_a_picture_is_found() {
        let code = "fn f() { g(\"no window is set\"); }";
        for path in ["crates/paper/src/a.rs", "crates/drawing/src/a/b.rs"] {
            let expected = format!("{path}:1: a text of its own: \u{201c}no window\u{201d}");
            check(judge, &[(path, code)], &[&expected]);
        }
        check(judge, &[("crates/joint/src/a.rs", code)], &[]);
        check(judge, &[("crates/paper/src/world.rs", code)], &[]);
        check(judge, &[("crates/drawing/src/a_tests.rs", code)], &[]);
    }

    #[test]
    fn a_tag_outside_of_the_canvas_is_found() {
        let code = "fn f() { g(\"<rect x=\\\"0\\\"/>\"); h(\"a < b\"); }";
        let path = "crates/drawing/src/a.rs";
        let expected = format!("{path}:1: a tag of a picture, written by hand");
        check(judge, &[(path, code)], &[&expected]);
        check(judge, &[("crates/drawing/src/canvas/a.rs", code)], &[]);
    }

    #[test]
    fn a_sentence_with_holes_is_found_and_a_unit_is_none() {
        assert!(words_beside("\"goes to {place}\"").is_some());
        assert!(words_beside("\"{n} presses, an end\"").is_some());
        assert_eq!(words_beside("\"{kv:.2} kV rms\""), None);
        assert_eq!(words_beside("\"{left} {right}\", \"mm\""), None);
        assert_eq!(words_beside("\"rect x=\\\"0\\\" fill of it\""), None);
    }

    #[test]
    fn a_sentence_in_a_template_is_found_and_its_code_is_none() {
        let path = "crates/paper/src/sheet.typ";
        let found = [(path, "  #strong[stay under] \\\n  Each name is written.\n")];
        check(
            judge,
            &found,
            &[
                "crates/paper/src/sheet.typ:1: a text of its own: \u{201c}stay under\u{201d}",
                "crates/paper/src/sheet.typ:2: a text of its own: \u{201c}Each name\u{201d}",
            ],
        );
        let code = "// What a note says.\n#let a = if b [ \\ #c ] else [#d]\n  for c in d { e }\n";
        check(judge, &[(path, code)], &[]);
    }

    #[test]
    fn texts_for_tests_alone_are_left_out() {
        let code = "#[cfg(test)]\nmod tests {\n    fn f() {\n        g(\"as it is\");\n    }\n}\n";
        check(judge, &[("crates/paper/src/a.rs", code)], &[]);
    }
}
