//! The order of legs, rows and keys, and the comments between them, change nothing in the document but its mark, which depends on every byte.

use super::toml_text::{Order, rows, text, tree};
use super::tries;
use crate::cases::{CASES, Case, EXAMPLES, accepted, everything, named, plan_of, read};
use proptest::prelude::*;
use toml::Value;

fn document(job: &str, catalogues: &[(String, String)], what: &str) -> String {
    let order = accepted(read(job, catalogues), what);
    let mut plan = plan_of(&order, what);
    let mark = &mut plan.plan_mark;
    for text in [&mut mark.short, &mut mark.aloud, &mut mark.whole] {
        text.clear();
    }
    serde_json::to_string_pretty(&plan).expect("a document")
}

fn shuffled(case: Case, seed: u64) -> String {
    let mut order = Order(seed);
    let job = text(&tree(case.job), Some(&mut order));
    let catalogues: Vec<(String, String)> = case
        .catalogues()
        .into_iter()
        .map(|(name, catalogue)| (name, text(&tree(&catalogue), Some(&mut order))))
        .collect();
    document(&job, &catalogues, case.slug)
}

#[track_caller]
fn check(case: Case, seed: u64) {
    let as_written = document(case.job, &case.catalogues(), case.slug);
    let found = shuffled(case, seed);
    if let Some((a, b)) = as_written.lines().zip(found.lines()).find(|(a, b)| a != b) {
        panic!("{}, seed {seed}:\n{a}\nbecame\n{b}", case.slug);
    }
    assert_eq!(as_written.len(), found.len());
}

#[test]
fn three_orders_of_every_case_and_example_give_the_same_document() {
    for case in everything() {
        for seed in 1..=3 {
            check(case, seed);
        }
    }
}

proptest! {
    #![proptest_config(tries(64))]

    #[test]
    fn any_order_gives_the_same_document(pick in 0..CASES.len() + EXAMPLES.len(), seed in any::<u64>()) {
        check(everything().nth(pick).expect("a case"), seed);
    }
}

#[test]
fn an_order_really_changes_the_text() {
    let case = named("quarry-four-way");
    let as_is = text(&tree(case.job), None);
    let shuffled = text(&tree(case.job), Some(&mut Order(1)));
    assert_ne!(as_is, shuffled);
    assert!(shuffled.contains("# a note"));
}

#[test]
fn a_reading_given_to_another_leg_changes_the_document() {
    let case = named("quarry-four-way");
    let mut job = tree(case.job);
    for reading in rows(&mut job, "reading") {
        let other = match reading["leg"].as_str() {
            Some("A") => "B",
            Some("B") => "A",
            _ => continue,
        };
        reading.insert("leg".to_owned(), Value::from(other));
    }
    let changed = document(&text(&job, None), &case.catalogues(), case.slug);
    assert_ne!(changed, document(case.job, &case.catalogues(), case.slug));
}
