//! Does the core stay pure where clippy cannot check it?
//!
//! Clippy's disallowed lists hold clock, file, network, environment, threads and unordered maps.
//! This rule holds the rest:
//! the core's crates have the same lists; only three rooms embed data; numerics uses serde in its room of case files alone; units computes nothing whose last bit depends on the machine.

use super::{Complaint, Report};
use crate::rust_text::{RustText, Token, is_test_file, tokens};
use crate::tree::Tree;

const CORE: &[&str] = &["units", "numerics", "joint", "wording", "drawing"];
/// Room of numerics whose types have a document form: section cases and their answers.
const DOCUMENTS: &str = "crates/numerics/src/case/";
/// Rooms that may embed data.
const EMBEDDING: &[&str] = &[
    "crates/joint/src/limit",
    "crates/joint/src/catalogue",
    "crates/joint/src/cable",
];
/// Functions of f64 that are not exact by definition: two machines may differ in the last bit.
const INEXACT: &[&str] = &[
    "acos", "acosh", "asin", "asinh", "atan", "atan2", "atanh", "cbrt", "cos", "cosh", "exp",
    "exp2", "exp_m1", "hypot", "ln", "ln_1p", "log", "log10", "log2", "powf", "powi", "sin",
    "sin_cos", "sinh", "tan", "tanh",
];

/// Judges the purity lists in the core's manifests, and the core's code.
pub fn judge(tree: &Tree) -> Report {
    let mut complaints = lists(tree);
    for (path, source) in tree.files("crates/", ".rs") {
        let name = path.split('/').nth(1).unwrap_or_default();
        if CORE.contains(&name) && !is_test_file(path) {
            let code = RustText::split(source).code_without_tests();
            complaints.extend(judge_code(path, name, &tokens(&code)));
        }
    }
    complaints.into()
}

fn lists(tree: &Tree) -> Vec<Complaint> {
    let path = |name: &str| format!("crates/{name}/clippy.toml");
    let first = tree.text(&path(CORE[0])).unwrap_or_default();
    CORE.iter()
        .filter(|name| tree.holds(&format!("crates/{name}")))
        .filter(|name| {
            tree.text(&path(name))
                .is_none_or(|text| text != first || text.trim().is_empty())
        })
        .map(|name| {
            let cure = format!(
                "copy the newest of them over the others, so that `{}` is the same in all",
                path(name)
            );
            Complaint::of(
                &path(name),
                format!("it differs from `{}`, or holds nothing", path(CORE[0])),
                cure,
            )
        })
        .collect()
}

fn judge_code(path: &str, crate_name: &str, tokens: &[Token<'_>]) -> Vec<Complaint> {
    let mut complaints = Vec::new();
    let next = |index: usize| tokens.get(index + 1).map_or("", |token| token.text);
    for (index, token) in tokens.iter().enumerate() {
        let before = if index == 0 {
            ""
        } else {
            tokens[index - 1].text
        };
        match token.text {
            "include_str" | "include_bytes" | "include"
                if next(index) == "!" && !may_embed(path) =>
            {
                let found = format!(
                    "`{}!` embeds data outside limit, catalogue and cable",
                    token.text
                );
                let cure =
                    "take the text as an argument, or embed it in one of those rooms of joint";
                complaints.push(Complaint::at(path, token.line, found, cure));
            }
            "serde" | "Serialize" | "Deserialize"
                if crate_name == "numerics" && !path.starts_with(DOCUMENTS) =>
            {
                let found = format!(
                    "`{}` in numerics: a kernel has no document form",
                    token.text
                );
                let cure =
                    "give the document its own shape in numerics/src/case or in joint, and convert";
                complaints.push(Complaint::at(path, token.line, found, cure));
            }
            word if crate_name == "units"
                && INEXACT.contains(&word)
                && next(index) == "("
                && matches!(before, "." | "::") =>
            {
                let found =
                    format!("`{word}` in units may differ in its last bit between machines");
                let cure = "use whole nanometres, or move the computation to numerics";
                complaints.push(Complaint::at(path, token.line, found, cure));
            }
            _ => {}
        }
    }
    complaints
}

fn may_embed(path: &str) -> bool {
    EMBEDDING.iter().any(|room| {
        path.strip_prefix(room)
            .is_some_and(|rest| rest.starts_with('/') || rest == ".rs")
    })
}

#[cfg(test)]
mod tests {
    use super::super::check;
    use super::*;

    const LIST: &str = "disallowed-types = []\n";

    #[track_caller]
    fn check_code(path: &str, code: &str, expected: &[&str]) {
        let lists = [
            ("crates/units/clippy.toml", LIST),
            ("crates/numerics/clippy.toml", LIST),
            ("crates/joint/clippy.toml", LIST),
        ];
        let mut files = lists.to_vec();
        files.push((path, code));
        check(judge, &files, expected);
    }

    #[test]
    fn three_lists_that_are_one_are_right_and_one_that_differs_is_named() {
        check_code("crates/units/src/lib.rs", "", &[]);
        let files = [
            ("crates/units/clippy.toml", LIST),
            ("crates/numerics/clippy.toml", "# other\n"),
            ("crates/joint/clippy.toml", LIST),
        ];
        check(judge, &files, &["crates/numerics/clippy.toml: it differs"]);
    }

    #[test]
    fn a_missing_or_empty_list_is_named() {
        check(
            judge,
            &[("crates/units/src/lib.rs", "")],
            &["crates/units/clippy.toml: it differs"],
        );
        let files = [
            ("crates/units/clippy.toml", LIST),
            ("crates/joint/src/lib.rs", ""),
        ];
        check(judge, &files, &["crates/joint/clippy.toml: it differs"]);
    }

    #[test]
    fn data_is_embedded_in_three_rooms_only() {
        let code = "const A: &str = include_str!(\"a.toml\");";
        check_code("crates/joint/src/limit/mod.rs", code, &[]);
        check_code("crates/joint/src/cable.rs", code, &[]);
        check_code("crates/joint/tests/case.rs", code, &[]);
        check_code("crates/cli/src/new.rs", code, &[]);
        check_code(
            "crates/joint/src/fit/mod.rs",
            code,
            &["fit/mod.rs:1: `include_str!` embeds data outside"],
        );
        check_code(
            "crates/joint/src/cables/mod.rs",
            code,
            &["embeds data outside"],
        );
    }

    #[test]
    fn serde_stays_out_of_numerics() {
        let code = "#[derive(serde::Serialize)]\nstruct A;";
        check_code("crates/joint/src/job/mod.rs", code, &[]);
        check_code(
            "crates/numerics/src/chain.rs",
            code,
            &["`serde` in numerics", "`Serialize` in numerics"],
        );
        check_code("crates/numerics/src/case/document.rs", code, &[]);
        check_code(
            "crates/numerics/src/cases.rs",
            code,
            &["`serde` in numerics", "`Serialize` in numerics"],
        );
    }

    #[test]
    fn units_compute_nothing_that_differs_between_machines() {
        check_code(
            "crates/numerics/src/a.rs",
            "fn f(x: f64) -> f64 { x.sin() }",
            &[],
        );
        check_code(
            "crates/units/src/a.rs",
            "fn f(x: f64) -> f64 { x.sqrt() + x.abs() }",
            &[],
        );
        check_code(
            "crates/units/src/a.rs",
            "fn f(x: f64) -> f64 { x.powf(2.0) }",
            &["`powf` in units"],
        );
        check_code(
            "crates/units/src/a.rs",
            "fn f(x: f64) -> f64 { f64::ln(x) }",
            &["`ln` in units"],
        );
    }
}
