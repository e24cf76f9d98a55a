//! Tests that one misprinted number gives one defect or none: its effects elsewhere are not reported again.

use super::text;
use jointwright_joint::catalogue::{Catalogue, DEMONSTRATION_TEXT};
use jointwright_joint::critic::criticise;
use jointwright_joint::form::{Complaints, Source};

/// Places of the numbers of millimetres in a text.
fn numbers(text: &str) -> Vec<(usize, usize)> {
    let ends = text.match_indices(" mm\"").map(|(end, _)| end);
    ends.filter_map(|end| {
        let start = text[..end].rfind('"')? + 1;
        let is_number = text[start..end]
            .chars()
            .all(|c| c.is_ascii_digit() || c == '.');
        is_number.then_some((start, end))
    })
    .collect()
}

/// Misprints of a number: neighbouring digits exchanged, a point lost, or a zero too many.
fn misprints(number: &str) -> Vec<String> {
    let digits: Vec<char> = number.chars().collect();
    let exchanged = (1..digits.len()).filter_map(|at| {
        let mut digits = digits.clone();
        digits.swap(at - 1, at);
        let is_other = digits[at] != digits[at - 1] && !digits[at - 1..=at].contains(&'.');
        is_other.then(|| digits.into_iter().collect())
    });
    let blown = match number.contains('.') {
        true => number.replace('.', ""),
        false => format!("{number}0"),
    };
    exchanged.chain([blown]).collect()
}

/// Number of defects that each misprint adds to the text's own; misprints that the reader refuses are left out.
fn added(text: &str) -> Vec<(String, usize)> {
    let said = |text: String| {
        let mut complaints = Complaints::default();
        let source = Source::new("catalogue.toml", text);
        let catalogue = Catalogue::read(&[source], true, &mut complaints);
        let defects = criticise(&catalogue);
        complaints.is_empty().then(|| {
            defects
                .into_iter()
                .map(|d| (d.class, d.found))
                .collect::<Vec<_>>()
        })
    };
    let before = said(text.to_owned()).expect("the text is read without complaint");
    let mut added = Vec::new();
    for (start, end) in numbers(text) {
        for misprint in misprints(&text[start..end]) {
            let broken = format!("{}{misprint}{}", &text[..start], &text[end..]);
            let Some(after) = said(broken) else { continue };
            let new = after.iter().filter(|d| !before.contains(d)).count();
            let line = text[..start].lines().count();
            added.push((format!("line {line}: {misprint}"), new));
        }
    }
    added
}

/// Checks that every misprint gives one defect or none, and that at least this many give one.
#[track_caller]
fn check(text: &str, found_least: usize) {
    let added = added(text);
    let more: Vec<_> = added.iter().filter(|(_, n)| *n > 1).collect();
    assert!(more.is_empty(), "{more:?}");
    let found = added.iter().filter(|(_, n)| *n == 1).count();
    assert!(found >= found_least, "{found} of {} are found", added.len());
}

#[test]
fn a_misprint_in_a_table_is_said_once() {
    check(text!("clean-tables"), 100);
}

#[test]
fn a_misprint_in_the_demonstration_is_said_once() {
    check(DEMONSTRATION_TEXT, 55);
}

#[test]
fn a_misprint_in_single_parts_is_said_once() {
    check(text!("clean"), 10);
    check(text!("clean-left-to-others"), 10);
}

#[test]
fn misprints_are_other_numbers() {
    assert_eq!(misprints("26.5"), ["62.5", "265"]);
    assert_eq!(misprints("100"), ["010", "1000"]);
}
