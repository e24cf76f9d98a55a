//! Tests that the order of rows and of links changes only places.

use super::{defects, text};
use jointwright_joint::catalogue::DEMONSTRATION_TEXT;
use jointwright_joint::critic::Defect;
use proptest::prelude::*;
use proptest::test_runner::TestRunner;

const TEXTS: &[&str] = &[
    text!("clean-tables"),
    text!("rows_overlap"),
    text!("rows_overlap-three"),
    text!("rows_gap"),
    text!("links_contradict"),
    text!("links_contradict-order"),
    text!("links_contradict-two-loops"),
    text!("plane_loose"),
    text!("plane_loose-seal"),
    text!("electrode_short"),
    text!("column_not_monotone"),
    text!("column_not_monotone-one-row"),
    text!("text_against_number-cut"),
    text!("window_rounds_to_nothing"),
    DEMONSTRATION_TEXT,
];

/// Text of a defect without its place.
fn said(defects: Vec<Defect>) -> Vec<String> {
    let mut said: Vec<String> = defects
        .into_iter()
        .map(|d| {
            format!(
                "{} {:?} {} {} {}",
                d.class, d.rows, d.found, d.expected, d.hint
            )
        })
        .collect();
    said.sort();
    said
}

/// The text with its rows in another order, and the links of each row too.
fn shuffled(text: &str, keys: &[u64]) -> String {
    // A heading with a dot in it belongs to the row above.
    let is_row = |at: usize| {
        let heading = text[at + 1..].lines().next().unwrap_or_default();
        !heading.contains('.')
    };
    let starts: Vec<usize> = text
        .match_indices("\n[[")
        .filter(|(at, _)| is_row(*at))
        .map(|(at, _)| at + 1)
        .collect();
    let mut rows: Vec<(u64, String)> = Vec::new();
    for (index, start) in starts.iter().enumerate() {
        let end = starts.get(index + 1).copied().unwrap_or(text.len());
        let mut lines: Vec<&str> = text[*start..end].lines().collect();
        for group in lines.split_mut(|line| !line.starts_with("  { from = ")) {
            let n = group.len();
            if n > 0 {
                group.rotate_left(keys[(index + 1) % keys.len()] as usize % n);
            }
        }
        let row = lines.join("\n") + "\n";
        rows.push((keys[index % keys.len()].wrapping_mul(index as u64 + 1), row));
    }
    rows.sort();
    let rows: Vec<String> = rows.into_iter().map(|(_, row)| row).collect();
    format!("{}{}", &text[..starts[0]], rows.concat())
}

#[test]
fn the_order_of_rows_changes_nothing_but_places() {
    let config = proptest::test_runner::Config {
        cases: 16,
        ..crate::hostile::random::config()
    };
    let keys = prop::collection::vec(any::<u64>(), 7);
    let ran = TestRunner::new(config).run(&keys, |keys| {
        for text in TEXTS {
            let other = shuffled(text, &keys);
            prop_assert_eq!(said(defects(text)), said(defects(&other)), "{}", other);
        }
        Ok(())
    });
    if let Err(broken) = ran {
        panic!("{broken}");
    }
}

#[test]
fn the_shuffle_moves_rows_and_links() {
    let text = text!("rows_gap");
    let other = shuffled(text, &[3, 1, 4, 1, 5, 9, 2]);
    assert_ne!(other, text);
    let sorted = |text: &str| {
        let mut lines: Vec<String> = text.lines().map(str::to_owned).collect();
        lines.sort();
        lines
    };
    assert_eq!(sorted(&other), sorted(text));
}
