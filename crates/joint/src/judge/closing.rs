//! Closing: a named engineer's word on a question that is not judged, and the complaint about a word on no question.
//!
//! Why its own file: a word that closes nothing, unnoticed, is taken for a word that closes something.
//!
//! Invariants: a word changes no outcome; a word on a question that nobody asks is a complaint at its row; a word on a question that is judged by now is named.

use crate::form::Complaint;
use crate::job::{Closing, Job};
use crate::limit::{Outcome, Rests, Ruling, rests};
use crate::said::{ClosingSaid, Said};

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
    let mut complaints = Vec::new();
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
            Use::Never(message, hint) => complaints.push(Complaint::at(&row.place, message, hint)),
        }
    }
    if complaints.is_empty() {
        return Ok(idle);
    }
    complaints.sort();
    Err(complaints)
}

/// Effect of a word.
enum Use {
    /// It closes a question that waits for the fact it names.
    Closes,
    /// Its question is judged.
    IsJudged,
    /// There is no such question; the finding, and the advice.
    Never(String, String),
}

fn use_of(row: &Closing, rulings: &[Ruling]) -> Use {
    let of_check: Vec<&Ruling> = rulings.iter().filter(|r| r.check == row.check).collect();
    let ours: Vec<&Ruling> = of_check
        .iter()
        .copied()
        .filter(|ruling| concerns(row, ruling))
        .collect();
    let whom = row.whom.words();
    let check = &row.check;
    if ours.is_empty() {
        let asked = each_once(of_check.iter().map(|r| r.subject.words()));
        let hint = if asked.is_empty() {
            "Take the row out, or name the check that the plan leaves not judged.".to_owned()
        } else {
            format!("It asks of: {}. Name one of them.", asked.join("; "))
        };
        let message =
            format!("The check `{check}` asks nothing of {whom}: this word closes nothing.");
        return Use::Never(message, hint);
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
    let message = format!(
        "`{check}` of {whom} does not wait for the fact `{}`: this word closes nothing.",
        row.fact
    );
    let hint = format!(
        "It waits for: {}. Name one of them; where the fact has been answered, take the row out.",
        facts.join(", ")
    );
    Use::Never(message, hint)
}

fn each_once(texts: impl Iterator<Item = String>) -> Vec<String> {
    let mut once: Vec<String> = Vec::new();
    for text in texts {
        if !once.contains(&text) {
            once.push(text);
        }
    }
    once
}
