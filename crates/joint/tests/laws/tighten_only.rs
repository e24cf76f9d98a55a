//! Computed rulings only tighten: without them no pass becomes a fail, and with them no fail becomes a pass.

use super::toml_text::{each_length, rows, text, tree};
use super::tries;
use crate::cases::{CASES, EXAMPLES, accepted, everything, read};
use jointwright_joint::judge::{judge, without_computed, worst};
use jointwright_joint::limit::{Outcome, Reach, Ruling};
use proptest::prelude::*;
use toml::Value;

/// Violation of the law by a rule for the outcome; `None` if the law holds.
fn broken(rulings: &[Ruling], outcome: fn(&[Ruling]) -> Outcome) -> Option<String> {
    let (with, without) = (outcome(rulings), outcome(&without_computed(rulings)));
    if with == Outcome::Pass && without == Outcome::Fail {
        return Some("removing what is computed turns the pass into a fail".to_owned());
    }
    if without == Outcome::Fail && with != Outcome::Fail {
        return Some(format!(
            "adding what is computed turns the fail into {}",
            with.name()
        ));
    }
    // Every ruling from the instructions stays, whatever is computed beside it.
    let kept = without_computed(rulings);
    let fails = |rulings: &[Ruling]| {
        rulings
            .iter()
            .filter(|r| r.outcome == Outcome::Fail)
            .count()
    };
    let computed_fails = rulings
        .iter()
        .filter(|r| r.reach == Reach::Computed && r.outcome == Outcome::Fail)
        .count();
    (fails(rulings) != fails(&kept) + computed_fails).then(|| "a fail went missing".to_owned())
}

/// Rulings of a case with its readings and room changed by these amounts, in micrometres; `None` if the change is refused.
fn changed(pick: usize, reading_um: i64, room_um: i64, link_um: i64) -> Option<Vec<Ruling>> {
    let case = everything().nth(pick).expect("a case");
    let um = |n: i64| jointwright_units::Length::from_nm(n * 1_000);
    let mut job = tree(case.job);
    for row in rows(&mut job, "reading") {
        if let Some(values) = row.get_mut("values") {
            each_length(values, &mut |length| length + um(reading_um));
        }
    }
    for leg in rows(&mut job, "leg") {
        for name in ["straight", "park_room", "slack", "bend_radius"] {
            if let Some(value) = leg.get_mut(name) {
                each_length(value, &mut |length| length + um(room_um));
            }
        }
    }
    let mut catalogues = case.catalogues();
    for (_, catalogue) in &mut catalogues {
        let mut parts = tree(catalogue);
        for row in rows(&mut parts, "body") {
            let links = row.get_mut("link").and_then(Value::as_array_mut);
            for link in links.into_iter().flatten().filter_map(Value::as_table_mut) {
                let is_inner = link.get("from").and_then(Value::as_str) == Some("body-seat");
                if let (true, Some(distance)) = (is_inner, link.get_mut("distance")) {
                    each_length(distance, &mut |length| length + um(link_um));
                }
            }
        }
        *catalogue = text(&parts, None);
    }
    let order = read(&text(&job, None), &catalogues).ok()?;
    Some(judge(&order).ok()?.rulings)
}

proptest! {
    #![proptest_config(tries(128))]

    #[test]
    fn on_random_changes_of_every_case(
        pick in 0..CASES.len() + EXAMPLES.len(),
        reading_um in -4_000_i64..4_000,
        room_um in -200_000_i64..200_000,
        link_um in -20_000_i64..20_000,
    ) {
        if let Some(rulings) = changed(pick, reading_um, room_um, link_um) {
            prop_assert_eq!(broken(&rulings, worst), None);
        }
    }
}

#[test]
fn on_every_case_and_example_as_written() {
    let mut n_computed = 0;
    for case in everything() {
        let order = case.order();
        let rulings = accepted(judge(&order), case.slug).rulings;
        n_computed += rulings.len() - without_computed(&rulings).len();
        assert_eq!(broken(&rulings, worst), None, "{}", case.slug);
    }
    assert!(n_computed > 100, "{n_computed} rulings are computed");
}

/// A wrong rule: a computed pass makes up for a fail.
fn forgiving(rulings: &[Ruling]) -> Outcome {
    let computed_pass = |r: &Ruling| r.reach == Reach::Computed && r.outcome == Outcome::Pass;
    if rulings.iter().any(computed_pass) {
        Outcome::Pass
    } else {
        worst(rulings)
    }
}

#[test]
fn a_computed_pass_that_makes_up_for_a_fail_breaks_the_law() {
    let order = crate::cases::named("three-way-wires-adapter-on-two-legs").order();
    let rulings = accepted(judge(&order), "case").rulings;
    assert!(broken(&rulings, forgiving).is_some());
    assert_eq!(broken(&rulings, worst), None);
}

#[test]
fn the_random_changes_reach_passes_and_fails_of_computed_rulings() {
    let far = changed(4, 0, 0, 18_000).expect("it is read");
    let near = changed(4, 0, 0, 0).expect("it is read");
    let fails = |rulings: &[Ruling]| {
        rulings
            .iter()
            .filter(|r| r.reach == Reach::Computed && r.outcome == Outcome::Fail)
            .count()
    };
    assert!(
        fails(&far) > fails(&near),
        "{} {}",
        fails(&far),
        fails(&near)
    );
}
