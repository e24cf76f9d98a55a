//! A missing input is never a pass: whatever optional item is deleted from a job, no new pass appears.
//!
//! Passes are compared by check and subject: as many afterwards as before, or fewer.
//! A refused job passes nothing.
//!
//! The cases leave some items out on purpose, because deleting them removes a word against the joint and not an input: one of several readings of one layer of one end, one of several trial presses, a count or reading that contradicts papers which the owner has confirmed, a window or limit of the owner narrower than the instructions'.
//! No program can know what was not written down.

use super::toml_text::{text, tree};
use super::tries;
use crate::cases::{CASES, Case, accepted, everything, read};
use jointwright_joint::form::{Kind, Need, Shape};
use jointwright_joint::job::JOB;
use jointwright_joint::judge::judge_unsolved as judge;
use jointwright_joint::limit::{Outcome, Ruling, Subject};
use proptest::prelude::*;
use std::collections::BTreeMap;
use toml::{Table, Value};

/// A step into a tree.
#[derive(Clone, Debug, PartialEq)]
enum Segment {
    Key(String),
    Row(usize),
}

/// Every optional item of a job: fields, and rows of optional lists.
fn optional(table: &Table, shape: &Shape, path: &[Segment], found: &mut Vec<Vec<Segment>>) {
    for field in shape.fields {
        let Some(value) = table.get(field.name) else {
            continue;
        };
        let here: Vec<Segment> = path
            .iter()
            .cloned()
            .chain([Segment::Key(field.name.to_owned())])
            .collect();
        if matches!(field.need, Need::Optional) {
            found.push(here.clone());
        }
        match (&field.kind, value) {
            (Kind::Table(inner), Value::Table(table)) => optional(table, inner, &here, found),
            (Kind::Rows(inner), Value::Array(rows)) => {
                for (index, row) in rows.iter().enumerate() {
                    let here: Vec<Segment> =
                        here.iter().cloned().chain([Segment::Row(index)]).collect();
                    if matches!(field.need, Need::Optional) {
                        found.push(here.clone());
                    }
                    if let Value::Table(table) = row {
                        optional(table, inner, &here, found);
                    }
                }
            }
            _ => {}
        }
    }
}

fn paths(table: &Table) -> Vec<Vec<Segment>> {
    let mut found = Vec::new();
    optional(table, &JOB, &[], &mut found);
    found
}

/// Deletes one item; the other half of a pair (`…_least`, `…_greatest`) goes with it, because half a pair is refused.
fn take_out(table: &mut Table, path: &[Segment]) {
    let Some((Segment::Key(first), rest)) = path.split_first() else {
        return;
    };
    let Some(value) = table.get_mut(first) else {
        return;
    };
    match (rest, value) {
        ([], _) => {
            table.remove(first);
            for (half, other) in [("_least", "_greatest"), ("_greatest", "_least")] {
                if let Some(stem) = first.strip_suffix(half) {
                    table.remove(&format!("{stem}{other}"));
                }
            }
        }
        ([Segment::Row(index)], Value::Array(rows)) if *index < rows.len() => {
            rows.remove(*index);
        }
        ([Segment::Row(index), rest @ ..], Value::Array(rows)) => {
            if let Some(Value::Table(row)) = rows.get_mut(*index) {
                take_out(row, rest);
            }
        }
        (rest, Value::Table(inner)) => take_out(inner, rest),
        _ => {}
    }
}

type Passes = BTreeMap<(&'static str, Subject), usize>;

fn passes(rulings: &[Ruling]) -> Passes {
    let mut passes = Passes::new();
    for r in rulings.iter().filter(|r| r.outcome == Outcome::Pass) {
        *passes.entry((r.check, r.subject.clone())).or_default() += 1;
    }
    passes
}

/// Passes afterwards that were not there before.
fn gained(before: &Passes, after: &Passes) -> Vec<String> {
    let more = after
        .iter()
        .filter(|(key, n)| before.get(*key).is_none_or(|had| had < n));
    more.map(|((check, subject), n)| format!("{check} of {} passes {n} times", subject.words()))
        .collect()
}

/// Whether a gain comes from another leg that parks.
///
/// The leg that parks the body is a statement, not a reading: a leg that is not named for it needs only its seal, and the joint says that no leg is named.
fn is_of_another_leg_parking(out: &[Vec<Segment>], rulings: &[Ruling], gained: &str) -> bool {
    let parks = Segment::Key("parks".to_owned());
    let is_said = |r: &Ruling| {
        r.check == "park_room" && r.subject.leg.is_none() && r.outcome == Outcome::NotJudged
    };
    gained.starts_with("park_room of leg")
        && out.iter().any(|path| path.contains(&parks))
        && rulings.iter().any(is_said)
}

fn rulings(job: &str, case: Case) -> Option<Vec<Ruling>> {
    let order = read(job, &case.catalogues()).ok()?;
    Some(accepted(judge(&order), case.slug).rulings)
}

fn broken(case: Case, before: &Passes, out: &[Vec<Segment>]) -> Vec<String> {
    let mut job = tree(case.job);
    // From the last to the first, so that the row numbers of the whole job stay valid.
    for path in out.iter().rev() {
        take_out(&mut job, path);
    }
    let after = rulings(&text(&job, None), case).unwrap_or_default();
    let mut gained = gained(before, &passes(&after));
    gained.retain(|what| !is_of_another_leg_parking(out, &after, what));
    gained
}

#[track_caller]
fn passes_of(case: Case) -> Passes {
    passes(&rulings(case.job, case).expect("the case is read"))
}

/// Deletes each optional item by itself, in all cases of a kind of joint.
#[track_caller]
fn check(kind: &str, n_things_least: usize) {
    let mut n_things = 0;
    let mut all = Vec::new();
    for case in CASES.iter().filter(|case| case.slug.starts_with(kind)) {
        let before = passes_of(*case);
        for path in paths(&tree(case.job)) {
            n_things += 1;
            let broken = broken(*case, &before, std::slice::from_ref(&path));
            all.extend(
                broken
                    .iter()
                    .map(|what| format!("{} without {path:?}: {what}", case.slug)),
            );
        }
    }
    assert!(all.is_empty(), "{all:#?}");
    assert!(n_things >= n_things_least, "{n_things} things taken out");
}

#[test]
fn each_optional_thing_of_straight_joints_taken_out_by_itself() {
    check("straight", 250);
}

#[test]
fn each_optional_thing_of_branch_joints_taken_out_by_itself() {
    check("branch", 350);
}

#[test]
fn each_optional_thing_of_three_way_joints_taken_out_by_itself() {
    check("three-way", 350);
}

#[test]
fn each_optional_thing_of_four_way_joints_taken_out_by_itself() {
    check("four-way", 350);
}

proptest! {
    #![proptest_config(tries(256))]

    #[test]
    fn several_at_once(pick in 0..everything().count(), picks in proptest::collection::vec(any::<proptest::sample::Index>(), 2..6)) {
        let case = everything().nth(pick).expect("a case");
        let all = paths(&tree(case.job));
        let mut out: Vec<usize> = picks.iter().map(|p| p.index(all.len())).collect();
        out.sort_unstable();
        out.dedup();
        let out: Vec<Vec<Segment>> = out.into_iter().map(|i| all[i].clone()).collect();
        let broken = broken(case, &passes_of(case), &out);
        prop_assert!(broken.is_empty(), "{} without {:?}: {:?}", case.slug, out, broken);
    }
}

#[test]
fn a_pass_that_appears_is_noticed() {
    let case = crate::cases::named("four-way-straps-blank-without-plug");
    let before = passes_of(case);
    let with_plug = case
        .job
        .replace("{ port = 4 }", "{ port = 4, plug = \"demo-blank-plug\" }");
    let after = passes(&rulings(&with_plug, case).expect("it is read"));
    assert_eq!(
        gained(&before, &after),
        ["bus_ports of joint passes 2 times"]
    );
    assert_eq!(gained(&after, &before), [""; 0]);
}
