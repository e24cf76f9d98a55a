//! Do doors, documents and pictures only show results of the core?
//!
//! A door that solves, or that extracts meaning from a sentence, holds knowledge that another door lacks.
//! Names of files, escapes of pictures and the section cases of `solve` are a door's own business.

use super::{Complaint, Report};
use crate::rust_text::{RustText, Token, is_test_file, tokens};
use crate::tree::Tree;

/// Folders in which nothing is solved: the doors, pictures and papers, and the document of a plan.
const SHOWING: &[&str] = &[
    "crates/cli/src/",
    "crates/hatch/src/",
    "crates/paper/src/",
    "crates/drawing/src/",
    "crates/joint/src/plan/",
];
/// Folders that show a sentence of the core as it is: doors, pictures and papers.
const SENTENCES: &[&str] = &[
    "crates/cli/src/",
    "crates/hatch/src/",
    "crates/paper/src/",
    "crates/drawing/src/",
];
/// Functions that solve something.
const SOLVERS: &[&str] = &[
    "at_currents",
    "at_rest",
    "first_to_limit_s",
    "load_to_degc",
    "press",
    "rate_run",
    "study",
    "study_plug",
];
/// Doors of section cases: `solve` answers a case, which holds no rule of the trade.
const CASES: &[&str] = &[
    "crates/cli/src/solve.rs",
    "crates/hatch/src/lib.rs",
    "crates/hatch/src/exports.rs",
];
/// Methods that take a text apart.
const CUTTERS: &[&str] = &[
    "rsplit",
    "rsplit_once",
    "rsplitn",
    "split",
    "split_once",
    "splitn",
    "strip_prefix",
    "strip_suffix",
];
/// Methods that look for words in a text, where their argument is a text.
const SEEKERS: &[&str] = &["contains", "ends_with", "find", "rfind", "starts_with"];
/// Files that take apart texts other than sentences: names of files, letters of pictures.
const OWN_TEXTS: &[&str] = &["crates/cli/src/files.rs", "crates/drawing/src/label.rs"];
/// Reasons of `joint` that are still texts.
/// The number only falls: lower it with every reason that becomes a type.
const TEXT_REASONS: usize = 0;

/// Judges the code of all doors, and counts the core's reasons that are texts.
pub fn judge(tree: &Tree) -> Report {
    let mut complaints = Vec::new();
    let mut n_reasons = 0;
    for (path, source) in tree.files("crates/", ".rs") {
        if is_test_file(path) {
            continue;
        }
        let code = RustText::split(source).code_without_tests();
        let tokens = tokens(&code);
        let is_in = |rooms: &[&str]| rooms.iter().any(|room| path.starts_with(room));
        if is_in(SHOWING) {
            complaints.extend(solving(path, &tokens));
        }
        if is_in(SENTENCES) && !OWN_TEXTS.contains(&path) {
            complaints.extend(cutting(path, source, &tokens));
        }
        if path.starts_with("crates/joint/src/") {
            n_reasons += text_reasons(&tokens);
        }
    }
    complaints.extend(reasons(n_reasons));
    complaints.into()
}

/// Calls of functions that solve.
fn solving(path: &str, tokens: &[Token<'_>]) -> Vec<Complaint> {
    let mut complaints = Vec::new();
    for (index, token) in tokens.iter().enumerate() {
        let is_call = text(tokens, index + 1) == "(";
        let is_defined = index > 0 && tokens[index - 1].text == "fn";
        let is_solver =
            SOLVERS.contains(&token.text) || (token.text == "solve" && !CASES.contains(&path));
        if is_call && is_solver && !is_defined {
            let found = format!("`{}` solves something where things are shown", token.text);
            let cure = "let study, pressure, warm or model solve it, and take what they hand out";
            complaints.push(Complaint::at(path, token.line, found, cure));
        }
    }
    complaints
}

/// Sentences that are taken apart or compared with words; a single letter is not a sentence.
fn cutting(path: &str, source: &str, tokens: &[Token<'_>]) -> Vec<Complaint> {
    let lines: Vec<&str> = source.lines().collect();
    let holds = |line: usize, text: &str| lines.get(line - 1).is_some_and(|l| l.contains(text));
    let mut complaints = Vec::new();
    let mut add = |line: usize, found: String| {
        let cure = "let the document hold the parts, as types or as a list of lines";
        complaints.push(Complaint::at(path, line, found, cure));
    };
    for (index, token) in tokens.iter().enumerate() {
        let is_method = index > 0 && tokens[index - 1].text == ".";
        let is_call = is_method && text(tokens, index + 1) == "(";
        // The insides of literals are blanked, so a literal argument leaves nothing between the brackets.
        let takes_literal = text(tokens, index + 2) == ")";
        let is_letter = holds(token.line, &format!("{}('", token.text));
        if is_call && CUTTERS.contains(&token.text) {
            add(token.line, format!("`{}` takes a text apart", token.text));
        }
        if is_call && SEEKERS.contains(&token.text) && takes_literal && !is_letter {
            add(
                token.line,
                format!("`{}` looks for words in a text", token.text),
            );
        }
        let is_comparison = matches!(token.text, "=" | "!") && text(tokens, index + 1) == "=";
        let with_literal = matches!(
            text(tokens, index + 2),
            "{" | "}" | ")" | ";" | "," | "&" | "|"
        );
        let is_letter = holds(token.line, "= '");
        if is_comparison && with_literal && !is_letter {
            add(token.line, "a text is compared with words".to_owned());
        }
    }
    complaints
}

fn text<'t>(tokens: &[Token<'t>], index: usize) -> &'t str {
    tokens.get(index).map_or("", |token| token.text)
}

/// Number of `Result<…, String>` in a file.
fn text_reasons(tokens: &[Token<'_>]) -> usize {
    let mut n = 0;
    for start in 0..tokens.len() {
        if tokens[start].text != "Result" || text(tokens, start + 1) != "<" {
            continue;
        }
        let (mut depth, mut at) = (0_i32, start + 1);
        while at < tokens.len() {
            match tokens[at].text {
                "<" => depth += 1,
                ">" if text(tokens, at.wrapping_sub(1)) != "-" => depth -= 1,
                _ => {}
            }
            if depth == 0 {
                break;
            }
            at += 1;
        }
        let is_text =
            text(tokens, at.wrapping_sub(1)) == "String" && text(tokens, at.wrapping_sub(2)) == ",";
        n += usize::from(is_text);
    }
    n
}

fn reasons(n: usize) -> Option<Complaint> {
    let path = "crates/joint/src";
    if n == TEXT_REASONS {
        return None;
    }
    let found = format!("{n} reasons are texts (`Result<_, String>`), {TEXT_REASONS} are known");
    let cure = if n > TEXT_REASONS {
        "give the new ones a type: a page in another language cannot say a text"
    } else {
        "lower TEXT_REASONS in xtask/src/tidy/doors.rs, so that they stay gone"
    };
    Some(Complaint::of(path, found, cure))
}

#[cfg(test)]
mod tests {
    use super::super::check;
    use super::*;

    #[track_caller]
    fn check_code(path: &str, code: &str, expected: &[&str]) {
        let text = RustText::split(code).code_without_tests();
        let tokens = tokens(&text);
        let mut found: Vec<String> = solving(path, &tokens)
            .into_iter()
            .chain(cutting(path, code, &tokens))
            .map(|complaint| complaint.found)
            .collect();
        found.sort();
        assert_eq!(found.len(), expected.len(), "{found:?}");
        for words in expected {
            assert!(found.iter().any(|f| f.contains(words)), "{found:?}");
        }
    }

    #[test]
    fn what_shows_solves_nothing() {
        let path = "crates/cli/src/page.rs";
        check_code(
            path,
            "fn f() { done.model.at_rest(1.0); }",
            &["`at_rest` solves"],
        );
        check_code(
            path,
            "fn f() { field::solve(&a, &b); }",
            &["`solve` solves"],
        );
        check_code("crates/cli/src/solve.rs", "fn f() { solve(&a); }", &[]);
        check_code(
            path,
            "fn press(n: i64) {} fn f() { presses(2); study.shown(); }",
            &[],
        );
    }

    #[test]
    fn doors_take_no_sentence_apart() {
        let path = "crates/paper/src/front.rs";
        check_code(path, "fn f() { t.split(\", \"); }", &["`split` takes"]);
        check_code(
            path,
            "fn f() { t.contains(\"none\"); }",
            &["`contains` looks"],
        );
        check_code(
            path,
            "fn f() { if a.kind == \"body\" {} }",
            &["compared with words"],
        );
        check_code(
            path,
            "fn f() { if a.kind != \"body\" {} }",
            &["compared with words"],
        );
        check_code(path, "fn f() { list.contains(&name); let a = \"b\"; }", &[]);
    }

    #[test]
    fn reasons_that_are_texts_are_counted() {
        let n = |code: &str| text_reasons(&tokens(&RustText::split(code).code));
        assert_eq!(n("fn f() -> Result<u8, String> {}"), 1);
        assert_eq!(n("fn f() -> Result<Vec<(f64, f64)>, String> {}"), 1);
        assert_eq!(n("fn f() -> Result<String, Why> {}"), 0);
        assert_eq!(n("let f: Result<Result<u8, String>, Why>;"), 1);
        assert!(reasons(TEXT_REASONS).is_none());
        assert!(reasons(TEXT_REASONS + 1).is_some());
    }

    #[test]
    fn a_door_is_found_by_its_path() {
        let code = "fn f() { a.at_rest(1.0); }";
        let found = &["crates/drawing/src/a.rs:1: `at_rest` solves"];
        check(judge, &[("crates/drawing/src/a.rs", code)], found);
        check(judge, &[("crates/joint/src/warm/a.rs", code)], &[]);
    }
}
