//! The mark of a plan distinguishes it from every other plan: it changes with every byte of the input and with the version, and with nothing else.

use crate::cases::{CASES, accepted, everything, named, read};
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::judge::judge_unsolved as judge;
use jointwright_joint::plan::{MarkDoc, mark_of, program};
use jointwright_joint::plane::Plane;
use jointwright_wording::{Tongue, plan};
use std::collections::BTreeMap;

/// Text in place of a time that nobody gave.
const NO_TIME: &str = "time not given";

fn catalogues(demonstration: &str) -> Vec<(String, String)> {
    vec![(DEMONSTRATION.to_owned(), demonstration.to_owned())]
}

/// Mark of a job with these catalogues, by a program with this name.
#[track_caller]
fn mark(job: &str, catalogues: &[(String, String)], program: &str) -> MarkDoc {
    let order = accepted(read(job, catalogues), "the job");
    let judged = accepted(judge(&order), "the job");
    mark_of(&judged, program, &Tongue::of(&order.job))
}

/// A text with one passage changed; the passage must be there.
fn changed(text: &str, from: &str, to: &str) -> String {
    assert!(text.contains(from), "{from}");
    text.replacen(from, to, 1)
}

#[test]
fn the_same_texts_give_the_same_mark() {
    for case in everything() {
        let [one, other] = [(); 2].map(|()| case.plan().plan_mark);
        assert_eq!(one, other, "{}", case.slug);
        assert_eq!(one.short.len(), 9, "{}", one.short);
        assert_eq!(one.made, NO_TIME);
    }
}

#[test]
fn no_two_cases_share_a_mark() {
    let mut seen: BTreeMap<String, &str> = BTreeMap::new();
    for case in everything() {
        if let Some(first) = seen.insert(case.plan().plan_mark.short, case.slug) {
            panic!("{first} and {} have one mark", case.slug);
        }
    }
    assert!(seen.len() > CASES.len());
}

#[test]
fn one_number_of_job_catalogue_or_version_changes_the_mark() {
    let job = named("dock-straight-pressed").job;
    let parts = catalogues(DEMONSTRATION_TEXT);
    let now = program();
    let first = mark(job, &parts, &now);
    let others = [
        // A load, a reading, a byte of a comment.
        mark(
            &changed(job, "load = \"320 A\"", "load = \"321 A\""),
            &parts,
            &now,
        ),
        mark(&format!("{job}# a comment\n"), &parts, &now),
        mark(&format!("{job}\n"), &parts, &now),
        mark(&changed(job, "issue = 1", "issue = 11"), &parts, &now),
        // A number in a row of the catalogue that this joint does not even use.
        mark(
            job,
            &catalogues(&changed(
                DEMONSTRATION_TEXT,
                "parked_length = \"260 mm\"",
                "parked_length = \"261 mm\"",
            )),
            &now,
        ),
        mark(job, &parts, "jointwright 0.1.1"),
    ];
    for (at, other) in others.iter().enumerate() {
        assert_ne!(other.short, first.short, "change {at}");
        assert_ne!(other.whole, first.whole, "change {at}");
    }
    assert_eq!(mark(job, &parts, &now), first);
}

#[test]
fn the_order_and_the_number_of_catalogues_change_the_mark() {
    let job = named("dock-straight-pressed").job;
    let own = (
        "own.toml".to_owned(),
        "about = \"no rows yet\"\n".to_owned(),
    );
    let demonstration = catalogues(DEMONSTRATION_TEXT).remove(0);
    let of = |parts: &[(String, String)]| mark(job, parts, &program()).whole;
    let alone = of(std::slice::from_ref(&demonstration));
    let first = of(&[demonstration.clone(), own.clone()]);
    let last = of(&[own, demonstration]);
    assert!(alone != first && first != last && alone != last);
}

#[test]
fn two_plans_of_one_job_with_another_end_of_the_body_have_two_marks() {
    let job = named("dock-straight-pressed").job;
    // Place of the body's end, and the mark of the plan.
    let planned = |text: &str| {
        let order = accepted(read(job, &catalogues(text)), "the job");
        let plan = plan(&accepted(judge(&order), "the job"));
        let ends = plan.legs[0]
            .cuts
            .iter()
            .find(|cut| cut.plane == Plane::BodyEnd);
        let at = ends.and_then(|cut| cut.mark_mm.clone());
        (at.expect("the body ends somewhere"), plan.plan_mark.short)
    };
    let (at, short) = planned(DEMONSTRATION_TEXT);
    let longer = changed(
        DEMONSTRATION_TEXT,
        "to = \"body-end\", distance = \"200 mm\", place = \"figure 2\"",
        "to = \"body-end\", distance = \"210 mm\", place = \"figure 2\"",
    );
    let (later, other) = planned(&longer);
    assert!(
        at != later && short != other,
        "{at} {later} {short} {other}"
    );
}

#[test]
fn the_time_is_printed_and_changes_nothing() {
    let case = named("dock-straight-pressed");
    let order = case.order();
    let judged = accepted(judge(&order), case.slug);
    let at = |made: &str| plan(&judged).made_at(made);
    let (one, other) = (
        at("2026-03-09 14:05 UTC+01:00"),
        at("2031-01-01 00:00 UTC+00:00"),
    );
    assert_eq!(one.plan_mark.made, "2026-03-09 14:05 UTC+01:00");
    assert_eq!(one.plan_mark.short, other.plan_mark.short);
    assert_eq!(one.plan_mark.whole, other.plan_mark.whole);
    let text = |plan: &jointwright_joint::plan::Plan| {
        serde_json::to_string(plan)
            .expect("JSON")
            .replace(&plan.plan_mark.made, "")
    };
    assert_eq!(text(&one), text(&other));
    // A text that is no day and time, but a page of words, is refused.
    for made in ["", "  ", &"x".repeat(41)] {
        assert_eq!(at(made).plan_mark.made, NO_TIME);
    }
}

#[test]
fn an_issue_is_counted_by_the_job_and_says_what_it_replaces() {
    let job = named("dock-straight-pressed").job;
    let parts = catalogues(DEMONSTRATION_TEXT);
    let said = |job: &str| mark(job, &parts, &program()).issue_words;
    let numbered = |n: &str| changed(job, "issue = 1\n", n);
    assert_eq!(said(job), "issue 1");
    assert_eq!(said(&numbered("")), "issue not numbered");
    assert_eq!(
        said(&numbered("issue = 3\n")),
        "issue 3, replaces 2, destroy it"
    );
    for wrong in [
        "issue = 0\n",
        "issue = -1\n",
        "issue = 1.5\n",
        "issue = \"1\"\n",
    ] {
        assert!(read(&numbered(wrong), &parts).is_err(), "{wrong}");
    }
}
