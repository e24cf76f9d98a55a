//! Told apart: the mark of a plan, its issue, and when it was made.
//!
//! The mark is taken of what went in (every byte of the job and of its catalogues, the embedded tables, the version of the program) and of what came out of it to be cut to and ruled, so that two builds of one version that cut differently have two marks.
//! Fields, pressures and temperatures are no part of it: their last digits differ from machine to machine.
//! When a plan was made is printed, and is no part of the mark: nothing depends on a clock.

use crate::fingerprint::Fingerprint;
use crate::job::Order;
use crate::judge::Judged;
use crate::plane::Plane;
use crate::said::{MarkSaid, Subject, Wording};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::fmt::Write;

/// Most letters of a day and time; a longer text is none.
const TIME_LETTERS: usize = 40;

/// What tells this plan from every other.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct MarkDoc {
    /// Eight letters to compare on paper and over the telephone: "KTRM-47WX".
    pub short: String,
    /// The same as it is read aloud.
    pub aloud: String,
    /// The whole fingerprint: SHA-256, 64 hexadecimal digits; two plans whose short marks are alike by chance differ here.
    pub whole: String,
    /// Which issue it is, as the job counts them; null where it counts none.
    pub issue: Option<i64>,
    /// The issue in words, and which one it replaces.
    pub issue_words: String,
    /// Day and time at which it was made, as the door was told, or that none was given; no answer depends on it.
    pub made: String,
}

impl MarkDoc {
    /// The mark as it stands on every page: "PLAN KTRM-47WX".
    pub fn words(&self) -> String {
        format!("PLAN {}", self.short)
    }

    /// Issue, and when it was made, in one line.
    pub fn line(&self) -> String {
        format!("{}; made {}", self.issue_words, self.made)
    }

    /// The same mark of a plan made at this day and time, which is printed as it is given; no text or too long a one changes nothing.
    pub(super) fn made_at(mut self, made: &str) -> MarkDoc {
        let clean: String = made.chars().filter(|c| !c.is_control()).collect();
        let clean = clean.trim();
        let is_one = (1..=TIME_LETTERS).contains(&clean.chars().count());
        if is_one {
            self.made = clean.to_owned();
        }
        self
    }
}

/// The mark of a judged joint, as a program of this name and version gives it.
pub fn mark_of(judged: &Judged<'_>, program: &str, wording: &dyn Wording) -> MarkDoc {
    mark_with(judged.inputs.order, &came_out(judged), program, wording)
}

/// The mark of an order and of what came out of it.
pub(super) fn mark_with(
    order: &Order,
    came_out: &str,
    program: &str,
    wording: &dyn Wording,
) -> MarkDoc {
    let went_in = order.went_in.whole();
    let print = Fingerprint::of([
        ("program", program),
        ("went in", went_in.as_str()),
        ("came out", came_out),
    ]);
    let issue = order.job.issue;
    let say = |said: MarkSaid| wording.say(&said.into());
    MarkDoc {
        aloud: say(MarkSaid::Aloud {
            short: print.short(),
        }),
        short: print.short(),
        whole: print.whole(),
        issue,
        issue_words: say(issue.map_or(MarkSaid::NotNumbered, |issue| MarkSaid::Issue { issue })),
        made: say(MarkSaid::NoTime),
    }
}

/// Places of all planes, windows of all cuts, and the outcome of every ruling: whole numbers and words, the same on every machine.
fn came_out(judged: &Judged<'_>) -> String {
    let mut text = String::new();
    // Writing to a text cannot fail.
    for leg in &judged.inputs.legs {
        let _ = writeln!(text, "leg {}", leg.leg.id);
        for plane in Plane::ALL.iter().copied() {
            if let Some(at) = leg.cutback.nominal(plane) {
                let _ = writeln!(text, "{} {}", plane.name(), at.half_nm());
            }
        }
        for cut in &leg.cutback.cuts {
            let (at, window) = (cut.nominal, cut.window);
            let _ = writeln!(
                text,
                "{} {at:?} {window:?} {:?}",
                cut.plane.name(),
                cut.ladder
            );
        }
    }
    for ruling in &judged.rulings {
        let (subject, outcome) = (key(&ruling.subject), ruling.outcome.name());
        let _ = writeln!(text, "{} {subject} {outcome}", ruling.check);
    }
    text
}

/// Whom a ruling concerns, in the words that marks are made of: they change in no version and in no language.
fn key(subject: &Subject) -> String {
    match (&subject.leg, subject.phase) {
        (Some(leg), Some(phase)) => format!("leg {leg}, phase {phase}"),
        (Some(leg), None) => format!("leg {leg}"),
        _ => "joint".to_owned(),
    }
}
