//! Do files and functions stay small, and does the list of exceptions shrink?
//!
//! A function over 70 lines or a file over 800 lines is a question to ask, not a crime.
//! `xtask/ratchet.txt` lists today's exceptions with their size: `file <path> <lines>` or `function <path> <name> <lines>`.
//! Tables (`*_table.rs`), `generated/` and test folders are exempt: nobody reads them from top to bottom.

use std::collections::BTreeMap;

use super::{Complaint, Report};
use crate::rust_text::{RustText, closing, tokens};
use crate::tree::Tree;

const LIST: &str = "xtask/ratchet.txt";
const FILE_LINES_MAX: usize = 800;
const FUNCTION_LINES_MAX: usize = 70;

/// Size of a file or function today.
struct Size {
    lines: usize,
    line: usize,
    path: String,
    is_file: bool,
}

/// Compares sizes with the limits and with the list.
pub fn judge(tree: &Tree) -> Report {
    let sizes = sizes(tree);
    let mut complaints = Vec::new();
    let mut listed: BTreeMap<String, (usize, usize)> = BTreeMap::new();
    for (index, line) in tree.text(LIST).unwrap_or_default().lines().enumerate() {
        if line.trim().is_empty() || line.starts_with('#') {
            continue;
        }
        match line
            .trim()
            .rsplit_once(' ')
            .map(|(name, lines)| (name, lines.parse::<usize>()))
        {
            Some((name, Ok(lines))) => {
                listed.insert(name.to_owned(), (lines, index + 1));
            }
            _ => {
                let cure = "write `file <path> <lines>` or `function <path> <name> <lines>`";
                complaints.push(Complaint::at(
                    LIST,
                    index + 1,
                    format!("`{line}` ends in no number of lines"),
                    cure,
                ));
            }
        }
    }
    for (name, size) in &sizes {
        let limit = if size.is_file {
            FILE_LINES_MAX
        } else {
            FUNCTION_LINES_MAX
        };
        let allowed = listed
            .get(name)
            .map_or(limit, |(lines, _)| (*lines).max(limit));
        if size.lines > allowed {
            complaints.push(too_long(name, size, allowed));
        }
    }
    for (name, (lines, line)) in &listed {
        let limit = if name.starts_with("file ") {
            FILE_LINES_MAX
        } else {
            FUNCTION_LINES_MAX
        };
        let today = sizes.get(name).map_or(0, |size| size.lines);
        if today <= limit {
            let found = format!("`{name}` needs no entry any more ({today} lines, limit {limit})");
            complaints.push(Complaint::at(LIST, *line, found, "remove the line"));
        } else if today < *lines {
            let found = format!("`{name}` is listed with {lines} lines and has {today}");
            complaints.push(Complaint::at(
                LIST,
                *line,
                found,
                format!("write {today}; the list only shrinks"),
            ));
        }
    }
    complaints.into()
}

fn too_long(name: &str, size: &Size, allowed: usize) -> Complaint {
    let found = format!("`{name}` has {} lines, over {allowed}", size.lines);
    let cure = "find the second thing it does and give that its own name; never chop for the number's sake";
    Complaint::at(&size.path, size.line, found, cure)
}

/// Sizes of all files and functions.
/// Of functions with the same name in one file, the longest counts.
fn sizes(tree: &Tree) -> BTreeMap<String, Size> {
    let mut sizes: BTreeMap<String, Size> = BTreeMap::new();
    for (path, source) in tree.files("", ".rs").filter(|(path, _)| !is_exempt(path)) {
        let file = Size {
            lines: source.lines().count(),
            line: 1,
            path: path.to_owned(),
            is_file: true,
        };
        sizes.insert(format!("file {path}"), file);
        if is_of_sentences(path) {
            continue;
        }
        let code = RustText::split(source).code;
        for (name, line, lines) in functions(&code) {
            let key = format!("function {path} {name}");
            if sizes.get(&key).is_none_or(|other| other.lines < lines) {
                sizes.insert(
                    key,
                    Size {
                        lines,
                        line,
                        path: path.to_owned(),
                        is_file: false,
                    },
                );
            }
        }
    }
    sizes
}

fn is_exempt(path: &str) -> bool {
    path.ends_with("_table.rs")
        || format!("/{path}").contains("/generated/")
        || format!("/{path}").contains("/tests/")
}

/// Whether a file is a list of sentences, one arm each: its functions are as long as the list.
fn is_of_sentences(path: &str) -> bool {
    ["english", "spanish"]
        .iter()
        .any(|language| path.starts_with(&format!("crates/wording/src/{language}/")))
}

/// Name, first line and number of lines of every function with a body.
fn functions(code: &str) -> Vec<(&str, usize, usize)> {
    let tokens = tokens(code);
    let mut found = Vec::new();
    for (index, token) in tokens.iter().enumerate() {
        let is_definition =
            token.text == "fn" && tokens.get(index + 1).is_some_and(|name| name.text != "(");
        if !is_definition {
            continue;
        }
        let mut at = index + 2;
        while at < tokens.len() && !matches!(tokens[at].text, "{" | ";") {
            at = if matches!(tokens[at].text, "(" | "[") {
                closing(&tokens, at) + 1
            } else {
                at + 1
            };
        }
        if tokens.get(at).is_some_and(|open| open.text == "{") {
            let last = &tokens[closing(&tokens, at)];
            found.push((
                tokens[index + 1].text,
                token.line,
                last.line - token.line + 1,
            ));
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::super::check;
    use super::*;

    fn function(n_lines: usize) -> String {
        format!(
            "fn long(a: [u8; 2]) -> u8 {{\n{}}}\n",
            "    let s = \"}\"; // }\n".repeat(n_lines - 2)
        )
    }

    #[track_caller]
    fn check_function(n_lines: usize, list: &str, expected: &[&str]) {
        check(
            judge,
            &[("crates/a/src/b.rs", &function(n_lines)), (LIST, list)],
            expected,
        );
    }

    #[test]
    fn seventy_lines_are_allowed_and_one_more_is_named() {
        check_function(70, "", &[]);
        check_function(
            71,
            "",
            &["crates/a/src/b.rs:1: `function crates/a/src/b.rs long` has 71 lines, over 70"],
        );
    }

    #[test]
    fn a_list_of_sentences_may_be_long_and_its_neighbours_may_not() {
        let long = function(71);
        let files = [
            ("crates/wording/src/english/a.rs", long.as_str()),
            (LIST, ""),
        ];
        check(judge, &files, &[]);
        let files = [("crates/wording/src/lib.rs", long.as_str()), (LIST, "")];
        let expected = "crates/wording/src/lib.rs:1: `function crates/wording/src/lib.rs long` has 71 lines, over 70";
        check(judge, &files, &[expected]);
    }

    #[test]
    fn the_list_allows_what_stands_and_no_more() {
        check_function(80, "# today\nfunction crates/a/src/b.rs long 80\n", &[]);
        check_function(
            81,
            "function crates/a/src/b.rs long 80\n",
            &["has 81 lines, over 80"],
        );
    }

    #[test]
    fn the_list_only_shrinks() {
        check_function(
            75,
            "function crates/a/src/b.rs long 80\n",
            &[
                "xtask/ratchet.txt:1: `function crates/a/src/b.rs long` is listed with 80 lines and has 75",
            ],
        );
        check_function(
            60,
            "function crates/a/src/b.rs long 80\n",
            &["needs no entry any more (60 lines"],
        );
        check_function(
            60,
            "function crates/a/src/b.rs gone 80\n",
            &["needs no entry any more (0 lines"],
        );
        check_function(60, "function long\n", &["ends in no number"]);
    }

    #[test]
    fn eight_hundred_lines_of_file_are_allowed_and_one_more_is_named() {
        let (fits, over) = ("//\n".repeat(800), "//\n".repeat(801));
        check(judge, &[("crates/a/src/b.rs", &fits)], &[]);
        check(
            judge,
            &[("crates/a/src/b.rs", &over)],
            &["has 801 lines, over 800"],
        );
        check(
            judge,
            &[
                ("crates/a/src/size_table.rs", &over),
                ("crates/a/tests/b.rs", &over),
            ],
            &[],
        );
    }
}
