//! Tests that catalogues broken at random are criticised without a panic, and that every defect has its place.

use super::text;
use crate::hostile::mutate::{any_break, any_measure, broken};
use crate::hostile::random::config;
use jointwright_joint::catalogue::{Catalogue, DEMONSTRATION_TEXT};
use jointwright_joint::critic::{Defect, classes, criticise};
use jointwright_joint::form::{Complaints, Source};
use proptest::prelude::*;
use proptest::test_runner::TestRunner;

const TEXTS: &[&str] = &[
    DEMONSTRATION_TEXT,
    text!("clean"),
    text!("clean-tables"),
    text!("clean-left-to-others"),
    text!("rows_overlap-connector"),
    text!("links_contradict-two-loops"),
    text!("text_against_number-cut"),
];

/// Fault of a defect itself.
fn flaw(defect: &Defect, n_lines: usize) -> Option<String> {
    let (column, line) = (defect.place.column, defect.place.line);
    let is_placed = column >= 1 && (1..=n_lines + 1).contains(&line);
    let is_known = classes().any(|(slug, _)| slug == defect.class);
    let is_said = [&defect.found, &defect.expected, &defect.hint]
        .iter()
        .all(|sentence| sentence.ends_with('.') && !sentence.chars().any(char::is_control));
    let is_whole = is_placed && is_known && is_said && !defect.rows.is_empty();
    (!is_whole).then(|| format!("{defect:?}"))
}

#[track_caller]
fn check<S: Strategy<Value = crate::hostile::mutate::Break>>(
    each: fn() -> S,
    most: usize,
    found_least: usize,
) {
    let n_found = std::cell::Cell::new(0_usize);
    let input = (0..TEXTS.len(), prop::collection::vec(each(), 0..=most));
    let ran = TestRunner::new(config()).run(&input, |(which, breaks)| {
        let bytes = broken(TEXTS[which], &breaks);
        let Ok(source) = Source::from_bytes("catalogue.toml", &bytes) else {
            return Ok(());
        };
        let n_lines = source.text().lines().count();
        // Also the part that could be read of a file with complaints.
        let catalogue = Catalogue::read(&[source], true, &mut Complaints::default());
        for defect in criticise(&catalogue) {
            n_found.set(n_found.get() + 1);
            let flaw = flaw(&defect, n_lines);
            prop_assert!(flaw.is_none(), "{:?}", flaw);
        }
        Ok(())
    });
    if let Err(broken) = ran {
        panic!("{broken}");
    }
    // If all files were refused, the critic would stay untried.
    assert!(n_found.get() >= found_least, "{} defects", n_found.get());
}

#[test]
fn a_hostile_catalogue_is_criticised_without_a_panic() {
    check(any_break, 6, 50);
}

#[test]
fn a_hostile_catalogue_whose_lengths_are_anything_is_criticised_without_a_panic() {
    check(any_measure, 8, 200);
}

#[test]
fn numbers_in_hostile_texts_are_read_without_a_panic() {
    let clean = text!("clean");
    let texts = "[0-9½¾/. \"″(),;\\-–a-z²kVmin]{1,60}";
    let ran = TestRunner::new(config()).run(&texts, |words| {
        let words = words.replace(['"', '\\'], "");
        let say = format!("say = \"Cut the insulation shield {words} presses (\"");
        let text = clean.replacen(
            "say = \"Make four presses from the middle outward, 8 presses in all.\"",
            &say,
            1,
        );
        let text = text.replacen(
            "name = \"Invented bus, 15 kV class\"",
            &format!("name = \"b {words}kV class\""),
            1,
        );
        let source = Source::new("catalogue.toml", text);
        let catalogue = Catalogue::read(&[source], true, &mut Complaints::default());
        criticise(&catalogue);
        Ok(())
    });
    if let Err(broken) = ran {
        panic!("{broken}");
    }
}
