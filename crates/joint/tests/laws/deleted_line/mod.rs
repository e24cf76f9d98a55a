//! Deleting a line never helps: whatever optional line is deleted from a job or a catalogue row, no new pass appears, and no failure or question disappears in silence.
//!
//! Two rulings answer the same question if check, subject and the source of their limit are the same; numbers may change.
//! A ruling that disappears counts as a pass, unless a new ruling that is not judged concerns the same leg.
//! A refused file passes nothing.
//!
//! Lines that may be deleted although it helps stand in `exempt`, each with its reason.

mod bench;
mod exempt;
mod named;
mod runs;
mod sweep;
mod worse;

pub use bench::{Bench, Depth};

use jointwright_joint::limit::{Outcome, Ruling, Subject};
use std::collections::BTreeMap;

/// Question that survives a change of numbers: check, subject, source of the limit.
type Asked = (&'static str, Subject, String);

/// Checks that stay the same question if their limit has another source: the window of a cut, and the roundness that the part on the insulation requires.
const OF_WHOEVER_GOVERNS: &[&str] = &["cut_window", "insulation_ovality"];

/// Source of a ruling's limit without its numbers: its kind, and the part or person.
fn whose(check: &str, source: &str) -> String {
    if OF_WHOEVER_GOVERNS.contains(&check) {
        return "whoever governs".to_owned();
    }
    let (word, rest) = source.split_once(": ").unwrap_or((source, ""));
    let who = rest.split([',', ';']).next().unwrap_or_default();
    match word {
        // The range that a kit takes today is the instructions' own until the store has used up some of it.
        "no worse than the worst the instructions allow" => format!("instructions: {who}"),
        // A limit of a job is printed with its numbers.
        "job" => word.to_owned(),
        _ => format!("{word}: {who}"),
    }
}

fn passes(rulings: &[Ruling]) -> BTreeMap<Asked, usize> {
    let mut passes = BTreeMap::new();
    for r in rulings.iter().filter(|r| r.outcome == Outcome::Pass) {
        let whose = whose(r.check, &crate::cases::english(&r.source));
        *passes
            .entry((r.check, r.subject.clone(), whose))
            .or_default() += 1;
    }
    passes
}

/// Rulings that are not a pass, by check and subject.
fn open(rulings: &[Ruling]) -> BTreeMap<(&'static str, Subject), usize> {
    let mut open = BTreeMap::new();
    for r in rulings.iter().filter(|r| r.outcome != Outcome::Pass) {
        *open.entry((r.check, r.subject.clone())).or_default() += 1;
    }
    open
}

/// Whether a ruling on one subject concerns the other: the joint concerns its legs, a leg its ends.
fn concerns(a: &Subject, b: &Subject) -> bool {
    let is_leg = a.leg.is_none() || b.leg.is_none() || a.leg == b.leg;
    is_leg && (a.phase.is_none() || b.phase.is_none() || a.phase == b.phase)
}

/// Rulings that a change has helped: new passes, and rulings that disappeared in silence.
pub fn helped(before: &[Ruling], after: &[Ruling]) -> Vec<(&'static str, Subject, String)> {
    let mut helped = Vec::new();
    let had = passes(before);
    for (asked, n) in passes(after) {
        let n_had = had.get(&asked).copied().unwrap_or(0);
        if n > n_had {
            let (check, subject, whose) = asked;
            let what = format!("passes {n} times by {whose}, before {n_had}");
            helped.push((check, subject, what));
        }
    }
    let known: Vec<String> = before
        .iter()
        .map(|r| crate::cases::english(&r.why))
        .collect();
    let new: Vec<&Ruling> = after
        .iter()
        .filter(|r| r.outcome == Outcome::NotJudged)
        .filter(|r| r.why.is_some() && !known.contains(&crate::cases::english(&r.why)))
        .collect();
    let still = open(after);
    for ((check, subject), n_had) in open(before) {
        let n = still.get(&(check, subject.clone())).copied().unwrap_or(0);
        if n < n_had && !new.iter().any(|r| concerns(&r.subject, &subject)) {
            let what = format!("{n} of {n_had} stay open, and nothing asks instead");
            helped.push((check, subject, what));
        }
    }
    helped
}
