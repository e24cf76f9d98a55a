//! Does every public number of units and joint say its unit in its name?
//!
//! The rule covers public fields, and arguments and results of public functions, whose type holds an `f64`.
//! A name ends in a unit, or in a unit and a qualifier: `gap_mm`, `gap_mm_max`, `share_ratio`.
//! Exempt are:
//! macros, whose names are made where they are called; the room `form`, which reads numbers whose unit its table of fields states; newtypes; fields without `pub`; and a `value`, `error`, `limit` or `margin` beside a field `unit`.

use super::{Complaint, Report};
use crate::rust_text::{RustText, Token, closing, is_test_file, tokens};
use crate::tree::Tree;

/// Units as they stand in names, including those of angles, shares and ratios.
const UNITS: &str = "nm um mm cm m km in ft kft mil mm2 m2 cmil kcmil per_m mm_per_m \
    v kv mv v_per_m kv_per_mm a ka ma a2s ohm uohm ohm_m ohm_per_m ohm_per_km ohm_per_kft \
    s ms h days hz degc k per_k w w_per_m w_per_m2k k_m_per_w j kj kj_per_mol n kn n_m pa kpa mpa \
    f pf nf uf pf_per_m kg kg_per_m3 rad deg percent ratio ratios";
/// Textbook quantities without a unit: the whole name says so.
const WITHOUT_UNIT: &[&str] = &["relative_permittivity", "quantile", "probability"];
/// Room that reads numbers whose unit its table of fields states.
const UNNAMED: &str = "crates/joint/src/form/";
/// Words that may follow the unit.
const QUALIFIERS: &[&str] = &[
    "min", "max", "least", "greatest", "nominal", "mean", "median", "rms", "peak", "before",
    "after", "spread",
];
/// Names whose unit is in the field `unit` beside them.
const WITH_UNIT_FIELD: &[&str] = &[
    "value", "limit", "margin", "error", "least", "greatest", "nominal",
];

/// Judges the public numbers of units and joint.
pub fn judge(tree: &Tree) -> Report {
    let mut complaints = Vec::new();
    for prefix in ["crates/units/src/", "crates/joint/src/"] {
        for (path, source) in tree
            .files(prefix, ".rs")
            .filter(|(path, _)| is_judged(path))
        {
            let code = RustText::split(source).code_without_tests();
            let tokens = tokens(&code);
            for (name, line) in numbers(&tokens) {
                if !says_unit(name) {
                    let found = format!("`{name}` is a public number and does not say its unit");
                    let cure = "end the name in its unit, qualifier last (`gap_mm_max`), or in `_ratio`; or use a type that carries the unit";
                    complaints.push(Complaint::at(path, line, found, cure));
                }
            }
        }
    }
    complaints.into()
}

fn is_judged(path: &str) -> bool {
    !is_test_file(path) && !path.starts_with(UNNAMED)
}

fn says_unit(name: &str) -> bool {
    let mut words: Vec<&str> = name.split('_').collect();
    while words.last().is_some_and(|word| QUALIFIERS.contains(word)) {
        words.pop();
    }
    let rest = words.join("_");
    WITHOUT_UNIT.contains(&rest.as_str())
        || UNITS
            .split_whitespace()
            .any(|unit| rest == unit || rest.ends_with(&format!("_{unit}")))
}

/// Name and line of every public number.
fn numbers<'t>(tokens: &[Token<'t>]) -> Vec<(&'t str, usize)> {
    let mut found = Vec::new();
    let mut index = 0;
    while index < tokens.len() {
        match tokens[index].text {
            "macro_rules" => index = closing(tokens, index + 3),
            "struct" => found.extend(fields(tokens, index)),
            "fn" if is_public(tokens, index) => found.extend(signature(tokens, index)),
            _ => {}
        }
        index += 1;
    }
    found
}

/// Whether the function at `index` is `pub` and not `pub(crate)`, whatever qualifiers stand between.
fn is_public(tokens: &[Token<'_>], index: usize) -> bool {
    let before = tokens[..index]
        .iter()
        .rev()
        .find(|token| !matches!(token.text, "const" | "async"));
    before.is_some_and(|token| token.text == "pub")
}

fn fields<'t>(tokens: &[Token<'t>], index: usize) -> Vec<(&'t str, usize)> {
    let mut open = index + 2;
    while open < tokens.len() && !matches!(tokens[open].text, "{" | ";" | "(") {
        open += 1;
    }
    if tokens.get(open).is_none_or(|token| token.text != "{") {
        return Vec::new();
    }
    let body = &tokens[open + 1..closing(tokens, open)];
    let has_unit_field = parts(body)
        .iter()
        .any(|part| part.iter().any(|t| t.text == "unit"));
    parts(body)
        .into_iter()
        .filter_map(|part| {
            let colon = part.iter().position(|token| token.text == ":")?;
            let (name, kind) = (&part[colon.checked_sub(1)?], &part[colon + 1..]);
            let is_named_beside = has_unit_field && WITH_UNIT_FIELD.contains(&name.text);
            let is_open = colon >= 2 && part[colon - 2].text == "pub";
            (is_open && holds_f64(kind) && !is_named_beside).then_some((name.text, name.line))
        })
        .collect()
}

fn signature<'t>(tokens: &[Token<'t>], index: usize) -> Vec<(&'t str, usize)> {
    let mut open = index + 2;
    while open < tokens.len() && tokens[open].text != "(" {
        open += 1;
    }
    let close = closing(tokens, open);
    let mut found: Vec<(&str, usize)> = parts(tokens.get(open + 1..close).unwrap_or_default())
        .into_iter()
        .filter_map(|part| {
            let colon = part.iter().position(|token| token.text == ":")?;
            let name = &part[colon.checked_sub(1)?];
            holds_f64(&part[colon + 1..]).then_some((name.text, name.line))
        })
        .collect();
    let result: Vec<Token<'_>> = tokens[close..]
        .iter()
        .copied()
        .take_while(|token| !matches!(token.text, "{" | ";" | "where"))
        .collect();
    if result.iter().any(|token| token.text == "->") && holds_f64(&result) {
        found.push((tokens[index + 1].text, tokens[index].line));
    }
    found
}

/// Whether a type holds a bare number.
/// A function type does not: its own arguments have no names.
fn holds_f64(kind: &[Token<'_>]) -> bool {
    kind.iter().any(|token| matches!(token.text, "f64" | "f32"))
        && !kind
            .iter()
            .any(|token| matches!(token.text, "Fn" | "FnMut" | "FnOnce" | "fn"))
}

/// Pieces between commas, with brackets of every kind kept whole.
fn parts<'s, 't>(tokens: &'s [Token<'t>]) -> Vec<&'s [Token<'t>]> {
    let (mut found, mut start, mut index, mut depth) = (Vec::new(), 0, 0, 0_usize);
    while index < tokens.len() {
        match tokens[index].text {
            "(" | "[" | "{" => index = closing(tokens, index),
            "<" => depth += 1,
            ">" => depth = depth.saturating_sub(1),
            "," if depth == 0 => {
                found.push(&tokens[start..index]);
                start = index + 1;
            }
            _ => {}
        }
        index += 1;
    }
    found.push(&tokens[start.min(tokens.len())..]);
    found
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
    fn a_number_with_its_unit_is_right() {
        check_code(
            "pub struct A { pub gap_mm: f64, pub gap_mm_max: Option<f64>, pub share_ratio: f64 }",
            &[],
        );
        check_code(
            "impl A { pub fn mm(self) -> f64 { 0.0 } pub fn from_mm(mm: f64) -> A { A } }",
            &[],
        );
        check_code("pub struct Kilovolt(pub f64);", &[]);
    }

    #[test]
    fn a_number_without_its_unit_is_named() {
        check_code(
            "pub struct A {\n    /// Gap.\n    pub gap: f64,\n}",
            &["fit.rs:3: `gap` is a public number"],
        );
        check_code(
            "pub struct A<T> where T: Copy { pub gap: Option<f64>, pub b: T }",
            &["`gap`"],
        );
        check_code(
            "pub struct A { pub gaps: BTreeMap<String, f64>, pub b: u8 }",
            &["`gaps`"],
        );
        check_code(
            "pub const fn gap(self, bore: f64) -> f64 { 0.0 }",
            &["`bore`", "`gap`"],
        );
    }

    #[test]
    fn what_is_not_public_may_be_short() {
        check_code(
            "struct A { gap: f64 } fn f(r: f64) -> f64 { r } pub(crate) fn g(r: f64) {}",
            &[],
        );
        check_code("pub fn each(visit: impl Fn(f64) -> f64) {}", &[]);
    }

    #[test]
    fn a_value_beside_its_unit_field_is_right_and_alone_is_named() {
        check_code("pub struct A { pub value: f64, pub unit: Unit }", &[]);
        check_code("pub struct A { pub value: f64 }", &["`value`"]);
        check_code("pub struct A { pub gap: f64, pub unit: Unit }", &["`gap`"]);
    }

    #[test]
    fn a_macro_is_left_to_where_it_is_called() {
        check_code(
            "macro_rules! a { ($n:ident) => { pub fn $n(x: f64) -> f64 { x } } }",
            &[],
        );
        check_code(
            "macro_rules! a { () => {} } pub fn gap(gap_mm: f64) -> f64 { 0.0 }",
            &["`gap`"],
        );
    }

    #[test]
    fn a_quantity_without_unit_is_one_of_the_textbook() {
        check_code("pub struct A { pub relative_permittivity: f64 }", &[]);
        check_code(
            "pub struct A { pub permittivity: f64 }",
            &["`permittivity`"],
        );
    }

    #[test]
    fn numerics_speaks_in_symbols() {
        check(
            judge,
            &[("crates/numerics/src/a.rs", "pub fn f(r: f64) -> f64 { r }")],
            &[],
        );
    }
}
