//! Told apart: the mark of a plan, its issue, and the time at which it was made.
//!
//! The mark is a fingerprint of the input: every byte of the job and of its catalogues, the embedded tables, the version of the program.
//! It also covers the output that is cut to or ruled, so two builds of one version that cut differently have two marks.
//! Fields, pressures and temperatures are not part of it, because their last digits differ from machine to machine.
//! The time at which a plan was made is printed and is not part of the mark: nothing depends on a clock.

use crate::fingerprint::Fingerprint;
use crate::job::Order;
use crate::judge::Judged;
use crate::plane::Plane;
use crate::said::{MarkSaid, Subject, Wording};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::fmt::Write;

/// Greatest number of letters of a day and time; a longer text is ignored.
const TIME_LETTERS: usize = 40;

/// Mark that tells this plan from every other.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct MarkDoc {
    /// Eight letters to compare on paper and over the telephone: "KTRM-47WX".
    pub short: String,
    /// The same letters as read aloud.
    pub aloud: String,
    /// Whole fingerprint: SHA-256, 64 hexadecimal digits; two plans with the same short mark by chance differ here.
    pub whole: String,
    /// Number of the issue in the job's own count; null if the job counts none.
    pub issue: Option<i64>,
    /// The issue in words, and the issue that it replaces.
    pub issue_words: String,
    /// Day and time of making, as given to the door, or a note that none was given; no answer depends on it.
    pub made: String,
}

impl MarkDoc {
    /// Mark as printed on every page: "PLAN KTRM-47WX".
    pub fn words(&self) -> String {
        format!("PLAN {}", self.short)
    }

    /// Issue and time of making, in one line.
    pub fn line(&self) -> String {
        format!("{}; made {}", self.issue_words, self.made)
    }

    /// Returns the same mark with a day and time of making, printed as given; an empty or too long text changes nothing.
    pub(crate) fn made_at(mut self, made: &str) -> MarkDoc {
        let clean: String = made.chars().filter(|c| !c.is_control()).collect();
        let clean = clean.trim();
        let is_one = (1..=TIME_LETTERS).contains(&clean.chars().count());
        if is_one {
            self.made = clean.to_owned();
        }
        self
    }
}

/// Returns the mark of a judged joint, for a program of this name and version.
pub fn mark_of(judged: &Judged<'_>, program: &str, wording: &dyn Wording) -> MarkDoc {
    mark_with(judged.inputs.order, &came_out(judged), program, wording)
}

/// Returns the mark of an order and of its output.
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

/// Places of all planes, windows of all cuts, and outcomes of all rulings, as whole numbers and words, which are the same on every machine.
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

/// Subject of a ruling in the words of the mark, which change with no version and no language.
fn key(subject: &Subject) -> String {
    match (&subject.leg, subject.phase) {
        (Some(leg), Some(phase)) => format!("leg {leg}, phase {phase}"),
        (Some(leg), None) => format!("leg {leg}"),
        _ => "joint".to_owned(),
    }
}
