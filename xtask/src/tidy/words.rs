//! Is anything named as a drawer, left unfinished, or switched off?
//!
//! A file without a subject collects everything; unfinished work is not done; an ignored test tests nothing.
//! In comments and documents, words between backticks are quoted, not used.

use super::{Complaint, Report};
use crate::rust_text::{RustText, Token, tokens};
use crate::tree::Tree;

/// Names that say nothing about their content.
const DRAWERS: &[&str] = &[
    "util", "utils", "helper", "helpers", "common", "core", "misc", "manager", "managers",
    "service", "services",
];
/// Last words that also make a name a drawer.
/// `core` is not one: a cable has cores.
const DRAWER_ENDINGS: &[&str] = &[
    "_util", "_utils", "_helper", "_helpers", "_misc", "_manager",
];
/// Marks of unfinished work in comments and documents.
const MARKS: &[&str] = &["TODO", "FIXME", "XXX"];
/// Other text files that are searched for these marks.
const TEXT_ENDINGS: &[&str] = &[".toml", ".txt", ".bib", ".sh", "/test", ".ci/run"];

/// Judges every name, every source file and every document.
pub fn judge(tree: &Tree) -> Report {
    let mut complaints = Vec::new();
    for folder in tree.folders() {
        complaints.extend(judge_name(folder, folder));
    }
    for (path, source) in tree.files("", ".rs") {
        complaints.extend(judge_name(path, path.trim_end_matches(".rs")));
        let text = RustText::split(source);
        complaints.extend(judge_code(path, &tokens(&text.code)));
        complaints.extend(judge_comments(path, &text.comments));
    }
    for (path, text) in tree.files("", "") {
        let is_text = TEXT_ENDINGS
            .iter()
            .any(|ending| format!("/{path}").ends_with(ending));
        if path.ends_with(".md") {
            complaints.extend(judge_marks(path, &without_fences(text)));
        } else if is_text {
            complaints.extend(judge_marks(path, text));
        }
    }
    complaints.into()
}

fn is_drawer(name: &str) -> bool {
    DRAWERS.contains(&name) || DRAWER_ENDINGS.iter().any(|ending| name.ends_with(ending))
}

fn judge_name(path: &str, stem: &str) -> Option<Complaint> {
    let name = stem.rsplit('/').next().unwrap_or(stem);
    is_drawer(name).then(|| {
        Complaint::of(
            path,
            format!("`{name}` says nothing of what is inside"),
            RENAME,
        )
    })
}

const RENAME: &str =
    "name it after the one subject that it holds, in a word of the trade or of a textbook";

fn judge_code(path: &str, tokens: &[Token<'_>]) -> Vec<Complaint> {
    let mut complaints = Vec::new();
    for (index, token) in tokens.iter().enumerate() {
        let next = tokens.get(index + 1).map_or("", |token| token.text);
        let before = if index == 0 {
            ""
        } else {
            tokens[index - 1].text
        };
        let said = match token.text {
            "todo" | "unimplemented" if next == "!" => Some((
                format!("`{}!` is unfinished work", token.text),
                "finish it, or leave it out and say so in the issue",
            )),
            "ignore" if before == "[" || before == "," => Some((
                "an ignored test tests nothing".to_owned(),
                "make it run, gate it behind JOINTWRIGHT_LONG=1, or delete it",
            )),
            "should_panic" => Some((
                "`should_panic` does not say which panic".to_owned(),
                "return an error and compare it, or assert the state before",
            )),
            "fn" if next.starts_with("get_") => Some((
                format!("`{next}` says nothing by its first word"),
                "name it after what it gives: `bore()`, not `get_bore()`",
            )),
            "mod" if is_drawer(next) => Some((
                format!("`mod {next}` says nothing of what is inside"),
                RENAME,
            )),
            _ => None,
        };
        complaints.extend(said.map(|(found, cure)| Complaint::at(path, token.line, found, cure)));
    }
    complaints
}

fn judge_comments(path: &str, comments: &str) -> Vec<Complaint> {
    let mut complaints = judge_marks(path, comments);
    for (index, line) in comments.lines().enumerate() {
        let fence = line
            .trim_start_matches([' ', '/', '!'])
            .strip_prefix("```")
            .unwrap_or_default();
        let off = fence
            .split([',', ' '])
            .find(|word| matches!(*word, "ignore" | "should_panic" | "no_run"));
        if let Some(word) = off {
            let found = format!("a doc example marked `{word}` shows nothing");
            complaints.push(Complaint::at(
                path,
                index + 1,
                found,
                "make it run, or fence it as text",
            ));
        }
    }
    complaints
}

fn judge_marks(path: &str, text: &str) -> Vec<Complaint> {
    let mut complaints = Vec::new();
    for (index, line) in text.lines().enumerate() {
        let line = without_quotes(line);
        let mut words = line.split(|letter: char| !letter.is_ascii_alphanumeric());
        if let Some(mark) = words.find(|word| MARKS.contains(word)) {
            let cure = "do it now, or file an issue and describe here what holds today";
            complaints.push(Complaint::at(
                path,
                index + 1,
                format!("`{mark}` marks unfinished work"),
                cure,
            ));
        }
    }
    complaints
}

/// A line without the text between backticks.
fn without_quotes(line: &str) -> String {
    line.split('`').step_by(2).collect::<Vec<_>>().join(" ")
}

/// A document with its fenced blocks blanked.
fn without_fences(text: &str) -> String {
    let mut is_inside = false;
    let mut shown = String::new();
    for line in text.lines() {
        let is_fence = line.trim_start().starts_with("```");
        is_inside ^= is_fence;
        if !is_inside && !is_fence {
            shown.push_str(line);
        }
        shown.push('\n');
    }
    shown
}

#[cfg(test)]
mod tests {
    use super::super::check;
    use super::*;

    #[track_caller]
    fn check_code(code: &str, expected: &[&str]) {
        check(judge, &[("crates/joint/src/fit.rs", code)], expected);
    }

    #[test]
    fn a_file_named_after_its_subject_is_right() {
        check(
            judge,
            &[("crates/joint/src/core_diameter.rs", "mod bore;")],
            &[],
        );
    }

    #[test]
    fn a_drawer_is_named_wherever_it_stands() {
        check(
            judge,
            &[("crates/joint/src/util.rs", "")],
            &["crates/joint/src/util.rs: `util` says nothing"],
        );
        check(
            judge,
            &[("crates/joint/src/common/mod.rs", "")],
            &["crates/joint/src/common: `common` says nothing"],
        );
        check(
            judge,
            &[("crates/joint/src/text_helpers.rs", "")],
            &["`text_helpers` says nothing"],
        );
        check_code("mod misc { }", &["fit.rs:1: `mod misc`"]);
    }

    #[test]
    fn unfinished_code_is_named() {
        check_code("fn f() { todo!() }", &["`todo!` is unfinished"]);
        check_code(
            "fn f() { unimplemented!() }",
            &["`unimplemented!` is unfinished"],
        );
        check_code(
            "// not in a word: `todo!()`\nconst A: &str = \"todo!()\";",
            &[],
        );
    }

    #[test]
    fn a_test_that_is_switched_off_is_named() {
        check_code(
            "#[test]\n#[ignore]\nfn a() {}",
            &["fit.rs:2: an ignored test"],
        );
        check_code("#[ignore = \"slow\"]\nfn a() {}", &["an ignored test"]);
        check_code("#[should_panic]\nfn a() {}", &["does not say which panic"]);
        check_code(
            "/// ```ignore\n/// x\n/// ```\nfn a() {}",
            &["marked `ignore`"],
        );
        check_code(
            "/// ```\n/// ignore this word\n/// ```\nfn ignore_blank() {}",
            &[],
        );
    }

    #[test]
    fn a_function_begins_with_what_it_gives() {
        check_code("fn bore() {} fn target() {}", &[]);
        check_code("fn get_bore() {}", &["`get_bore` says nothing"]);
    }

    #[test]
    fn marks_of_unfinished_work_are_named_unless_talked_about() {
        check_code("// TODO later", &["`TODO` marks unfinished"]);
        check(
            judge,
            &[("STYLE.md", "No `TODO` stays.\n\n```\nFIXME\n```\n")],
            &[],
        );
        check(
            judge,
            &[("STYLE.md", "FIXME: write this")],
            &["STYLE.md:1: `FIXME`"],
        );
        check(judge, &[("data/limit/a.toml", "# TODO")], &["`TODO`"]);
    }
}
