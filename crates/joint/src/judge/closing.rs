//! Closing: a named engineer's word on a question that is not judged, and the complaint about a word on no question.
//!
//! Why its own file: a word that closes nothing, unnoticed, is taken for a word that closes something.
//!
//! Invariants: a word changes no outcome.
//! A word on a question that nobody asks is a complaint at its row.
//! A word on a question that has been judged in the meantime is named.

use crate::form::{Complaint, Complaints};
use crate::job::{Closing, Job};
use crate::limit::{Outcome, Rests, Ruling, rests};
use crate::said::{ClosingSaid, OwnerHint, OwnerSaid, Said};

/// Whether a word concerns the question of a ruling, whatever fact it names.
fn concerns(row: &Closing, ruling: &Ruling) -> bool {
    row.check == ruling.check && row.whom.covers(&ruling.subject)
}

/// The ruling with the word of the person who closed it: every fact that it asks for has a closing that still holds.
///
/// Its outcome stays: a closing is never a pass.
pub(super) fn closed(job: &Job, ruling: Ruling) -> Ruling {
    if ruling.outcome != Outcome::NotJudged || ruling.asks.is_empty() {
        return ruling;
    }
    let ours = job.closings.iter().filter(|row| concerns(row, &ruling));
    let rows: Vec<&Closing> = ours.collect();
    let said = |row: &Closing| ClosingSaid::Word {
        by: row.by.clone(),
        why: row.why.clone(),
        date: row.date.to_string(),
        until: row.until.to_string(),
    };
    let of = |holds: bool| -> Option<Said> {
        let mut all: Vec<ClosingSaid> = Vec::new();
        for ask in &ruling.asks {
            let ours = rows.iter().filter(|row| row.fact == ask.fact.key);
            let ours = ours.filter(|row| !holds || row.until >= job.date);
            let ours: Vec<ClosingSaid> = ours.map(|row| said(row)).collect();
            if ours.is_empty() {
                return None;
            }
            // Two words on one question are both printed.
            all.extend(
                ours.into_iter()
                    .filter(|one| !all.contains(one))
                    .collect::<Vec<_>>(),
            );
        }
        Some(Said::all(all.into_iter().map(Said::from)))
    };
    let closed_by = of(true);
    let closed_until = if closed_by.is_none() { of(false) } else { None };
    Ruling {
        closed_by,
        closed_until,
        ..ruling
    }
}

/// Words on questions that are judged by now.
///
/// Where only part is computed, the checks that need the other part ask nothing, and words on them wait.
///
/// # Errors
/// Words on no question of this joint, as complaints at their rows, with the questions that are asked instead.
pub(super) fn idle(
    job: &Job,
    rulings: &[Ruling],
    is_whole: bool,
) -> Result<Vec<Said>, Vec<Complaint>> {
    let mut idle = Vec::new();
    let mut complaints = Complaints::default();
    let rests_on_more = |check: &str| rests(check) != Rests::Nothing;
    let asked = |row: &&Closing| is_whole || !rests_on_more(&row.check);
    for row in job.closings.iter().filter(asked) {
        match use_of(row, rulings) {
            Use::Closes => {}
            Use::IsJudged => {
                let said = ClosingSaid::ClosesNothing {
                    by: row.by.clone(),
                    date: row.date.to_string(),
                    check: row.check.clone(),
                    subject: row.whom.clone(),
                };
                idle.push(said.into());
            }
            Use::Never(message, hint) => complaints.add(Complaint::at(&row.place, message, hint)),
        }
    }
    if complaints.is_empty() {
        return Ok(idle);
    }
    Err(complaints.into_sorted())
}

/// Effect of a word.
enum Use {
    /// It closes a question that waits for the fact it names.
    Closes,
    /// Its question is judged.
    IsJudged,
    /// There is no such question; the finding, and the advice.
    Never(Said, Said),
}

fn use_of(row: &Closing, rulings: &[Ruling]) -> Use {
    let of_check: Vec<&Ruling> = rulings.iter().filter(|r| r.check == row.check).collect();
    let ours: Vec<&Ruling> = of_check
        .iter()
        .copied()
        .filter(|ruling| concerns(row, ruling))
        .collect();
    let (check, subject) = (row.check.clone(), row.whom.clone());
    if ours.is_empty() {
        let subjects = each_once(of_check.iter().map(|r| r.subject.clone()));
        let hint = if subjects.is_empty() {
            OwnerHint::NameAnOpenCheck
        } else {
            OwnerHint::AsksOf { subjects }
        };
        let message = OwnerSaid::AsksNothingOf { check, subject };
        return Use::Never(message.into(), hint.into());
    }
    let open: Vec<&&Ruling> = ours
        .iter()
        .filter(|r| r.outcome == Outcome::NotJudged)
        .collect();
    if open.is_empty() {
        return Use::IsJudged;
    }
    let facts = each_once(
        open.iter()
            .flat_map(|r| r.asks.iter().map(|ask| ask.fact.key.to_owned())),
    );
    if facts.contains(&row.fact) {
        return Use::Closes;
    }
    let message = OwnerSaid::WaitsForAnother {
        check,
        subject,
        fact: row.fact.clone(),
    };
    Use::Never(message.into(), OwnerHint::WaitsFor { facts }.into())
}

fn each_once<T: PartialEq>(all: impl Iterator<Item = T>) -> Vec<T> {
    let mut once: Vec<T> = Vec::new();
    for one in all {
        if !once.contains(&one) {
            once.push(one);
        }
    }
    once
}
