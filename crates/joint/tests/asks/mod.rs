//! Asks: the facts that would settle each question that is not judged, each put once to somebody who can answer, and settled by the answer.

mod answered;
mod closed;
mod stops;

use crate::cases::{Case, accepted, everything, read};
use jointwright_joint::catalogue::CATALOGUE;
use jointwright_joint::catalogue::PartKind;
use jointwright_joint::form::{Kind, Shape};
use jointwright_joint::job::JOB;
use jointwright_joint::judge::{Judged, judge};
use jointwright_joint::limit::Who;
use jointwright_joint::limit::fact_table::FACTS;
use jointwright_joint::limit::{File, Outcome, Ruling};
use jointwright_joint::plan::Plan;
use jointwright_wording::plan;
use std::collections::{BTreeMap, BTreeSet};

/// The job that `new` writes.
pub const STARTER: Case = Case {
    slug: "starter",
    job: include_str!("../../../../data/starter.toml"),
    parts: None,
};

/// A job judged with its fields, pressures and temperatures, as the terminal does.
#[track_caller]
pub fn judged_of<T>(job: &str, case: Case, of: impl FnOnce(&Judged<'_>) -> T) -> T {
    let order = accepted(read(job, &case.catalogues()), case.slug);
    of(&accepted(judge(&order), case.slug))
}

#[track_caller]
pub fn plan_with_fields(job: &str, case: Case) -> Plan {
    judged_of(job, case, plan)
}

/// Rulings that are not judged and name no fact that would settle them.
fn without_ask(rulings: &[Ruling]) -> Vec<String> {
    let mute = |r: &&Ruling| r.outcome == Outcome::NotJudged && r.asks.is_empty();
    let named = |r: &Ruling| {
        format!(
            "{} of {}: {}",
            r.check,
            r.subject.words(),
            crate::cases::english(&r.why)
        )
    };
    rulings.iter().filter(mute).map(named).collect()
}

#[test]
fn every_ruling_that_is_not_judged_names_what_would_settle_it() {
    let mut all = Vec::new();
    let mut n_asked = 0;
    for case in everything().chain([STARTER]) {
        judged_of(case.job, case, |judged| {
            let mute = without_ask(&judged.rulings);
            all.extend(mute.iter().map(|what| format!("{}: {what}", case.slug)));
            n_asked += judged.rulings.iter().filter(|r| !r.asks.is_empty()).count();
        });
    }
    assert!(all.is_empty(), "{} of {n_asked}: {all:#?}", all.len());
    assert!(n_asked > 500, "{n_asked}");
}

#[test]
fn a_ruling_that_is_judged_asks_for_nothing() {
    for case in everything() {
        judged_of(case.job, case, |judged| {
            for r in &judged.rulings {
                assert!(
                    r.outcome == Outcome::NotJudged || r.asks.is_empty(),
                    "{}: {r:?}",
                    case.slug
                );
            }
        });
    }
}

/// Table of a file by its path, such as `leg.cable.shield`; the file itself by its own name.
fn shape_at<'s>(file: &'s Shape, path: &str) -> Option<&'s Shape> {
    if path == "file" {
        return Some(file);
    }
    path.split('.').try_fold(file, |shape, name| {
        let field = shape.fields.iter().find(|field| field.name == name)?;
        match field.kind {
            Kind::Table(inner) | Kind::Rows(inner) => Some(inner),
            _ => None,
        }
    })
}

#[test]
fn every_fact_goes_into_a_field_that_its_file_has() {
    for fact in FACTS {
        let file = match fact.file {
            File::Job => &JOB,
            File::Catalogue => &CATALOGUE,
        };
        let fields: Vec<&str> = fact
            .tables
            .iter()
            .flat_map(|path| {
                let shape = shape_at(file, path);
                let shape = shape.unwrap_or_else(|| panic!("{}: no table {path}", fact.key));
                shape.fields.iter().map(|field| field.name)
            })
            .collect();
        for name in fact.fields {
            assert!(fields.contains(name), "{}: no field {name}", fact.key);
        }
    }
}

#[test]
fn equal_facts_are_asked_once_and_every_open_ruling_waits_for_one() {
    for case in everything().chain([STARTER]) {
        let plan = plan_with_fields(case.job, case);
        let mut keys: Vec<&str> = plan.asks.iter().map(|ask| ask.key()).collect();
        keys.sort_unstable();
        let n = keys.len();
        keys.dedup();
        assert_eq!(keys.len(), n, "{}", case.slug);
        let n = keys
            .iter()
            .filter(|key| !["row-checked", "paper-current"].contains(*key))
            .count();
        let n_waiting = plan
            .rulings
            .iter()
            .filter(|r| r.ruling == Outcome::NotJudged);
        assert_eq!(n_waiting.count() > 0, n > 0, "{}", case.slug);
        // First the facts that crew or owner can close before the work, then those found during it, then those for makers; in each group the fact that settles most comes first.
        let order = plan.asks.iter().map(|ask| {
            let settles = usize::MAX - ask.settles.len();
            (!ask.near, ask.during_work, settles)
        });
        assert!(order.is_sorted(), "{}", case.slug);
        for ask in &plan.asks {
            let of_rows = ["row-checked", "paper-current"].contains(&ask.key());
            let waits = !ask.settles.is_empty() || !ask.helps.is_empty();
            assert_eq!(waits, !of_rows, "{ask:?}");
            assert!(!ask.question.contains("{of}"), "{ask:?}");
        }
    }
}

#[test]
fn issue_16_no_check_stands_on_both_sides_of_with_other_answers() {
    let mut n_helped = 0;
    for case in everything().chain([STARTER]) {
        let plan = plan_with_fields(case.job, case);
        for ask in &plan.asks {
            let mut all: Vec<&String> = ask.settles.iter().chain(&ask.helps).collect();
            all.sort_unstable();
            let n = all.len();
            all.dedup();
            assert_eq!(all.len(), n, "{}: {ask:?}", case.slug);
            n_helped += usize::from(!ask.settles.is_empty() && !ask.helps.is_empty());
        }
    }
    assert!(n_helped > 0, "both sides are seen");
}

#[test]
fn issue_16_a_letter_about_one_row_names_the_table_of_its_kind_alone() {
    let mut n_letters = 0;
    for case in everything().chain([STARTER]) {
        let plan = plan_with_fields(case.job, case);
        let makers = plan.asks.iter().filter(|ask| ask.who == Who::PartMaker);
        let ids = makers.flat_map(|ask| ask.of.iter().zip(&ask.kinds));
        let kinds: BTreeMap<&String, &String> = ids.filter(|(_, kind)| !kind.is_empty()).collect();
        for letter in jointwright_wording::letters(&plan) {
            let to = kinds.iter().find(|(of, _)| {
                letter
                    .text
                    .contains(&format!("To: the maker of {of}, or its paper"))
            });
            let Some((of, kind)) = to else {
                continue;
            };
            n_letters += 1;
            for line in letter.text.lines().filter(|l| l.contains("Goes into the")) {
                assert!(!line.contains(" or "), "{of}: {line}");
                let table = format!("catalogue, under {kind}");
                assert!(line.contains(&table), "{of}: {line}");
            }
        }
    }
    assert!(n_letters > 7, "{n_letters}");
}

#[test]
fn issue_16_rows_that_nobody_checked_and_papers_that_may_be_replaced_are_each_asked_for_once() {
    let larkspur = everything().find(|case| case.slug == "larkspur-three-way");
    let case = larkspur.expect("an example");
    let plan = plan_with_fields(case.job, case);
    let ask = |key: &str| plan.asks.iter().find(|ask| ask.key() == key).expect(key);
    let doubtful = |doubt: &str| {
        let parts = plan.legs.iter().flat_map(|leg| &leg.parts);
        let of = parts.filter(|part| part.doubts.iter().any(|d| d.contains(doubt)));
        of.map(|part| part.id.clone()).collect::<BTreeSet<String>>()
    };
    for (key, doubt) in [
        ("row-checked", "not checked by a second person"),
        ("paper-current", "current only until"),
    ] {
        let ask = ask(key);
        let asked: BTreeSet<String> = ask.of.iter().cloned().collect();
        assert_eq!(asked.len(), ask.of.len(), "{key}");
        assert!(!doubtful(doubt).is_empty() && doubtful(doubt).is_subset(&asked));
        assert!(ask.near && !ask.question.contains("must"), "{ask:?}");
        assert!(ask.goes_into.tables.len() <= ask.of.len(), "{ask:?}");
    }
    let letters = jointwright_wording::letters(&plan);
    let engineer = letters.iter().find(|letter| letter.name == "ask-engineer");
    let text = &engineer.expect("a letter").text;
    assert!(text.contains("(fact: row-checked)") && text.contains("(fact: paper-current)"));
}

#[test]
fn the_starter_job_asks_for_at_most_eight_things() {
    let plan = plan_with_fields(STARTER.job, STARTER);
    // An ask about the rows themselves leaves no question open.
    let waited_for = plan
        .asks
        .iter()
        .filter(|ask| !ask.settles.is_empty() || !ask.helps.is_empty());
    let asks: Vec<String> = waited_for
        .map(|ask| {
            format!(
                "{}: {} ({})",
                ask.who.name(),
                ask.question,
                ask.settles.len()
            )
        })
        .collect();
    assert!(asks.len() <= 8, "{}: {asks:#?}", asks.len());
    assert!(plan.asks.iter().all(|ask| ask.key() != "word"), "{asks:#?}");
}

#[test]
fn one_part_that_all_legs_share_is_asked_for_once() {
    let open = STARTER.job.replace("body = \"demo-straight-15\"", "");
    assert_eq!(
        STARTER.job.matches("body = \"demo-straight-15\"").count(),
        2
    );
    let plan = plan_with_fields(&open, STARTER);
    let bodies: Vec<_> = plan
        .proposals
        .iter()
        .filter(|p| p.part == PartKind::Body)
        .collect();
    assert_eq!(bodies.len(), 1);
    assert_eq!(
        (bodies[0].leg.as_str(), &bodies[0].shared_with[..]),
        ("A", &["B".to_owned()][..])
    );
    let asks: Vec<&String> = plan
        .asks
        .iter()
        .filter(|a| a.key() == "part")
        .flat_map(|a| &a.of)
        .collect();
    assert_eq!(asks, ["body of the joint"]);
    // The twin: each leg with a seal of its own.
    let open = STARTER.job.replace("seal = \"demo-seal-30\"", "");
    let plan = plan_with_fields(&open, STARTER);
    assert_eq!(
        plan.proposals
            .iter()
            .filter(|p| p.part == PartKind::Seal)
            .count(),
        2
    );
}
