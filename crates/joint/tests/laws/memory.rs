//! Common practice never passes; a value from memory rules nothing until the owner confirms it.

use super::tries;
use crate::cases::{accepted, everything, named, plan_of, read};
use jointwright_joint::limit::{Bound, Known, Limit, Outcome, Question, Reach, Subject, Word};
use jointwright_units::{Interval, Length};
use proptest::prelude::*;

const CASE: &str = "four-way-tape-confirmed-by-the-owner";

/// Outcomes of `cable_level` with this clearing time, and with the confirmation of the level or without.
fn outcomes(clearing: &str, confirmed: bool) -> Vec<String> {
    let case = named(CASE);
    let mut job = case.job.replace("\"5400 s\"", &format!("\"{clearing}\""));
    if !confirmed {
        job = job.replace("insulation-level-133", "insulation-level-100");
    }
    let order = accepted(read(&job, &case.catalogues()), clearing);
    let plan = plan_of(&order, clearing);
    let level = plan.rulings.iter().filter(|r| r.check == "cable_level");
    level.map(|r| r.ruling.name().to_owned()).collect()
}

#[track_caller]
fn check(clearing: &str, confirmed: bool, expected: &str) {
    assert_eq!(
        outcomes(clearing, confirmed),
        [expected; 3],
        "{clearing}, confirmed: {confirmed}"
    );
}

#[test]
fn the_level_waits_for_the_owner_and_then_passes_or_fails() {
    check("0.5 s", false, "not-judged");
    check("5400 s", false, "not-judged");
    check("0.5 s", true, "pass");
    check("3600 s", true, "pass");
    check("3601 s", true, "fail");
    check("5400 s", true, "fail");
}

#[test]
fn without_a_clearing_time_even_a_confirmed_level_is_not_judged() {
    let case = named(CASE);
    let job = case.job.replace("clearing_time = \"5400 s\"\n", "");
    assert_ne!(job, case.job);
    let order = accepted(read(&job, &case.catalogues()), CASE);
    let plan = plan_of(&order, CASE);
    let level = plan.rulings.iter().filter(|r| r.check == "cable_level");
    let rulings: Vec<&str> = level.map(|r| r.ruling.name()).collect();
    assert_eq!(rulings, ["not-judged"; 3]);
}

#[test]
fn no_plan_passes_on_common_practice_or_rules_on_memory() {
    let mut n_from_memory = 0;
    for case in everything() {
        for r in case.plan().rulings {
            let source = r.source.as_deref().unwrap_or_default();
            let memory = source.contains("from memory");
            n_from_memory += usize::from(memory);
            assert!(
                !memory || r.ruling == Outcome::NotJudged,
                "{}: {r:?}",
                case.slug
            );
            assert!(
                !source.contains("common practice") || r.ruling != Outcome::Pass,
                "{}: {r:?}",
                case.slug
            );
        }
    }
    assert!(
        n_from_memory > 50,
        "{n_from_memory} rulings wait for the owner"
    );
}

fn outcome(word: Word, least: i64, width: i64, error: i64, bound: Bound) -> Outcome {
    let nm = Length::from_nm;
    let read = Interval::new(nm(least), nm(least + width)).expect("least first");
    let question = Question {
        check: "bend_radius",
        subject: Subject::leg("A"),
        value: Known {
            read,
            error: nm(error),
        },
        limit: &Limit { bound, word },
        reach: Reach::Instructions,
        what: "a length".into(),
        hint: "Stop.".into(),
    };
    question.rule().outcome
}

proptest! {
    #![proptest_config(tries(256))]

    #[test]
    fn whose_word_it_is_decides_what_may_be_concluded(
        least in -50_i64..50, width in 0_i64..20, error in 0_i64..5, low in -40_i64..40, span in 0_i64..40, side in 0..3,
    ) {
        let nm = Length::from_nm;
        let bound = match side {
            0 => Bound::AtLeast(nm(low)),
            1 => Bound::AtMost(nm(low)),
            _ => Bound::Within(Interval::new(nm(low), nm(low + span)).expect("least first")),
        };
        let of = |word: Word| outcome(word, least, width, error, bound);
        let instructions = of(Word::Instructions("paper".into()));
        let practice = of(Word::CommonPractice("rule".into()));
        let memory = of(Word::Memory { key: "key".to_owned(), source: "book".into() });
        prop_assert_eq!(memory, Outcome::NotJudged);
        prop_assert_ne!(practice, Outcome::Pass);
        // If common practice fails, the instructions' own limit at the same place fails too.
        prop_assert_eq!(practice == Outcome::Fail, instructions == Outcome::Fail);
    }
}
