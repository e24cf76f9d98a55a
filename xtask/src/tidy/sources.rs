//! Does every cited key stand in REFERENCES.bib, with the way it was read?
//!
//! A key is lower-case words joined by underscores, such as `iec_60228`.
//! There are three ways to cite it:
//! between square brackets in docs/theory and tests/published; as a bare word in `source = "…"` of a data file; as a bare word under `# Source` in a doc comment, where square brackets would be a link.
//! A data row and a `# Source` cite a key, or say where else their value comes from.

use std::collections::BTreeMap;

use super::{Complaint, Report};
use crate::rust_text::RustText;
use crate::tree::Tree;

const BIBLIOGRAPHY: &str = "REFERENCES.bib";
/// Words that may stand in place of a key.
const WORDS: &[&str] = &[
    "memory",
    "common practice",
    "closed form",
    "derived",
    "definition",
    "docs/theory",
    "data/",
    "invented",
];

/// One entry of the bibliography.
struct Entry<'t> {
    line: usize,
    note: &'t str,
}

/// One place that cites, with its text.
struct Citation {
    path: String,
    line: usize,
    text: String,
    keys: Vec<String>,
}

/// Judges the bibliography and every citation.
pub fn judge(tree: &Tree) -> Report {
    let bibliography = tree.text(BIBLIOGRAPHY).unwrap_or_default();
    let entries = entries(bibliography);
    let mut complaints: Vec<Complaint> = entries
        .iter()
        .filter(|(_, entry)| entry.note.is_empty())
        .map(|(key, entry)| {
            let found = format!("`{key}` does not say how it was read");
            Complaint::at(BIBLIOGRAPHY, entry.line, found, NOTE_CURE)
        })
        .collect();
    for citation in in_documents(tree)
        .into_iter()
        .chain(in_data(tree))
        .chain(in_code(tree))
    {
        for key in &citation.keys {
            if !entries.contains_key(key.as_str()) {
                let found = format!("`{key}` is cited and not in {BIBLIOGRAPHY}");
                let cure = format!("add the entry to {BIBLIOGRAPHY}, or correct the key");
                complaints.push(Complaint::at(&citation.path, citation.line, found, cure));
            }
        }
        let text = citation.text.to_lowercase();
        if citation.keys.is_empty() && !WORDS.iter().any(|word| text.contains(word)) {
            let cure = format!(
                "name a key of {BIBLIOGRAPHY}, or say one of: {}",
                WORDS.join(", ")
            );
            complaints.push(Complaint::at(
                &citation.path,
                citation.line,
                "this source cites nothing",
                cure,
            ));
        }
    }
    let is_memory = |text: &str| text.to_lowercase().contains("memory");
    let n_memory = entries
        .values()
        .filter(|entry| entry.note.starts_with("memory"))
        .count();
    let n_partly = entries
        .values()
        .filter(|entry| is_memory(entry.note))
        .count()
        - n_memory;
    let n_rows = data(tree)
        .flat_map(|(_, text)| text.lines())
        .filter(|line| is_memory(line) || line.contains("sure = \"M\""))
        .count();
    let note = format!(
        "{} sources, {n_memory} of them from memory and {n_partly} in part; {n_rows} lines of data are from memory",
        entries.len()
    );
    Report {
        complaints,
        notes: vec![note],
    }
}

const NOTE_CURE: &str = "add `note = {…}`: read in the original, read in a public copy, or memory";

/// Data files of the core.
fn data(tree: &Tree) -> impl Iterator<Item = (&str, &str)> {
    tree.files("", ".toml")
        .filter(|(path, _)| path.starts_with("data/") || path.starts_with("crates/joint/src/"))
}

/// Keys between square brackets in theory pages and in the pages of published checks.
fn in_documents(tree: &Tree) -> Vec<Citation> {
    let mut found = Vec::new();
    let pages = tree
        .files("docs/theory/", ".md")
        .chain(tree.files("tests/published/", ".md"));
    for (path, text) in pages {
        let mut is_fenced = false;
        for (index, line) in text.lines().enumerate() {
            if line.trim_start().starts_with("```") {
                is_fenced = !is_fenced;
            }
            let keys = if is_fenced {
                Vec::new()
            } else {
                bracketed(&without_quotes(line))
            };
            if !keys.is_empty() {
                let (path, text) = (path.to_owned(), line.to_owned());
                found.push(Citation {
                    path,
                    line: index + 1,
                    text,
                    keys,
                });
            }
        }
    }
    found
}

fn bracketed(line: &str) -> Vec<String> {
    line.match_indices('[')
        .filter_map(|(at, _)| {
            let (key, rest) = line[at + 1..].split_once(']')?;
            let is_link = rest.starts_with(['(', '[', ':']);
            (is_key(key) && !is_link).then(|| key.to_owned())
        })
        .collect()
}

/// Every `source = "…"` of the data.
fn in_data(tree: &Tree) -> Vec<Citation> {
    let mut found = Vec::new();
    for (path, text) in data(tree) {
        for (index, line) in text.lines().enumerate() {
            let code = line.split('#').next().unwrap_or_default();
            let Some((_, said)) = code.split_once("source = \"") else {
                continue;
            };
            let text = said.split('"').next().unwrap_or_default().to_owned();
            let keys = bare(&text);
            found.push(Citation {
                path: path.to_owned(),
                line: index + 1,
                text,
                keys,
            });
        }
    }
    found
}

/// Every `# Source` of a doc comment, up to the next heading or empty line.
fn in_code(tree: &Tree) -> Vec<Citation> {
    let mut found = Vec::new();
    for (path, source) in tree.files("crates/", ".rs") {
        let comments = RustText::split(source).comments;
        let lines: Vec<&str> = comments
            .lines()
            .map(|line| line.trim_start_matches([' ', '/', '!']))
            .collect();
        for (index, line) in lines.iter().enumerate() {
            let Some(first) = line.strip_prefix("# Source") else {
                continue;
            };
            let rest = lines[index + 1..]
                .iter()
                .take_while(|line| !line.is_empty() && !line.starts_with("# "));
            let said: Vec<&str> = std::iter::once(&first).chain(rest).copied().collect();
            let text = said.join(" ");
            let keys = bare(&without_quotes(&text));
            found.push(Citation {
                path: path.to_owned(),
                line: index + 1,
                text,
                keys,
            });
        }
    }
    found
}

/// Keys that stand as separate words; parts of paths and of file names do not count.
fn bare(text: &str) -> Vec<String> {
    text.split_whitespace()
        .map(|word| word.trim_matches(|letter: char| ",;:.()[]".contains(letter)))
        .filter(|word| is_key(word))
        .map(str::to_owned)
        .collect()
}

fn is_key(text: &str) -> bool {
    let is_word = |word: &str| {
        !word.is_empty()
            && word
                .bytes()
                .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit())
    };
    text.contains('_') && text.split('_').all(is_word)
}

/// A line without the text between backticks.
fn without_quotes(line: &str) -> String {
    line.split('`').step_by(2).collect::<Vec<_>>().join(" ")
}

fn entries(bibliography: &str) -> BTreeMap<&str, Entry<'_>> {
    let mut entries = BTreeMap::new();
    for (at, _) in bibliography
        .match_indices("\n@")
        .map(|(at, sign)| (at + 1, sign))
        .chain(bibliography.starts_with('@').then_some((0, "@")))
    {
        let rest = &bibliography[at..];
        let size = rest[1..].find("\n@").map_or(rest.len(), |size| size + 1);
        let Some((key, body)) = rest[..size]
            .split_once('{')
            .and_then(|(_, inner)| inner.split_once(','))
        else {
            continue;
        };
        let note = body
            .split_once("note = {")
            .map_or("", |(_, note)| note.split('}').next().unwrap_or_default());
        let line = bibliography[..at].matches('\n').count() + 1;
        entries.insert(
            key.trim(),
            Entry {
                line,
                note: note.trim(),
            },
        );
    }
    entries
}

#[cfg(test)]
mod tests {
    use super::super::check;
    use super::*;

    const BIB: (&str, &str) = (
        BIBLIOGRAPHY,
        "% sources\n@standard{nec_ch9_t8,\n  title = {Conductors},\n  note = {memory},\n}\n",
    );

    #[track_caller]
    fn check_file(path: &str, text: &str, expected: &[&str]) {
        check(judge, &[BIB, (path, text)], expected);
    }

    #[test]
    fn a_key_in_the_bibliography_is_right() {
        check_file(
            "docs/theory/a.md",
            "# R\n\nSee [nec_ch9_t8] and [a link](x_y.md).\n",
            &[],
        );
        check_file(
            "crates/joint/src/a.rs",
            "/// # Source\n/// nec_ch9_t8, column 2.\nfn f() {}",
            &[],
        );
        check_file(
            "data/limit/a.toml",
            "source = \"nec_ch9_t8, column 2\"\n",
            &[],
        );
    }

    #[test]
    fn a_key_that_is_missing_is_named() {
        let missing = "`iec_60228` is cited and not";
        check_file("docs/theory/a.md", "# R\n\nSee [iec_60228].\n", &[missing]);
        check_file(
            "crates/joint/src/a.rs",
            "/// # Source  iec_60228.\nfn f() {}",
            &[missing],
        );
        check_file(
            "data/limit/a.toml",
            "row = { source = \"iec_60228 table 2\" }\n",
            &[missing],
        );
    }

    #[test]
    fn brackets_that_cite_nothing_are_left_alone() {
        let page = "# A\n\nIn [0, 1], `[a_key_shown]`, [x].\n\n```\n[no_such_key]\n```\n";
        check_file("docs/theory/a.md", page, &[]);
        check_file("docs/howto/a.md", "# A\n\n[no_such_key]\n", &[]);
    }

    #[test]
    fn a_source_must_say_something() {
        let nothing = "this source cites nothing";
        check_file(
            "crates/joint/src/a.rs",
            "/// # Source\n/// A book.\nfn f() {}",
            &[nothing],
        );
        check_file("data/limit/a.toml", "source = \"a book\"\n", &[nothing]);
        check_file(
            "crates/joint/src/a.rs",
            "/// # Source  Common practice.\nfn f() {}",
            &[],
        );
        let with_path = "/// # Source\n/// Closed form, held by `tests/published/a_b`.\nfn f() {}";
        check_file("crates/joint/src/a.rs", with_path, &[]);
    }

    #[test]
    fn an_entry_must_say_how_it_was_read_and_memory_is_counted() {
        let silent = (BIBLIOGRAPHY, "@book{a_b,\n title = {T},\n}\n");
        check(judge, &[silent], &["REFERENCES.bib:1: `a_b` does not say"]);
        let report = judge(&Tree::of(&[
            BIB,
            ("data/limit/a.toml", "sure = \"M\"\nsure = \"V\"\n"),
        ]));
        let note =
            "1 sources, 1 of them from memory and 0 in part; 1 lines of data are from memory";
        assert_eq!(report.notes, [note]);
    }
}
