//! Masthead: the first lines of every page, and the banner that also ends it.
//!
//! Why its own room: pages of one joint begin alike, so that a reader compares the mark of the plan and the verdict at one glance.
//!
//! Not here: numbers and rules; all of them come from the document.

use crate::lines::{Lines, WIDTH};
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::{MarkDoc, Plan};
use jointwright_wording::Tongue;
use jointwright_wording::label::PageLabel;

/// Adds the banner across the page of an invented plan.
pub fn banner(plan: &Plan, lines: &mut Lines) {
    banner_of(plan.invented.as_deref(), lines);
}

/// Adds the banner across the page of any invented document.
pub fn banner_of(invented: Option<&str>, lines: &mut Lines) {
    if let Some(invented) = invented {
        lines.add(&format!("{:*^WIDTH$}", format!(" {invented} ")));
    }
}

/// Adds the mark of the plan, which a reader sees first, and its issue.
pub fn mark(mark: &MarkDoc, lines: &mut Lines) {
    let tongue = lines.tongue;
    lines.wrap("", &format!("{}: {}", tongue.plan_mark(mark), mark.aloud));
    lines.wrap("  ", &tongue.plan_issue(mark));
}

/// Adds the verdict on the joint; it stands on its other pages before any number.
pub fn verdict(outcome: Outcome, fails: &[String], lines: &mut Lines) {
    match outcome {
        Outcome::Fail => {
            lines.label("", &PageLabel::JointFails);
            for what in fails.iter().cloned() {
                lines.label("  ", &PageLabel::Fails { what });
            }
        }
        Outcome::Pass => lines.label("", &PageLabel::EveryRulingPasses),
        Outcome::NotJudged => lines.label("", &PageLabel::NothingFails),
    }
}

/// Returns the planes without a place, if any, and the verdict in words.
pub fn standing(plan: &Plan) -> String {
    let tongue = Tongue::of_plan(plan);
    let mut planes: Vec<String> = Vec::new();
    for cut in plan.legs.iter().flat_map(|leg| &leg.cuts) {
        if cut.nominal_mm.is_none() && !planes.contains(&cut.words) {
            planes.push(cut.words.clone());
        }
    }
    let outcome = tongue.label(&outcome(plan));
    if plan.must_stop() || planes.is_empty() {
        return outcome;
    }
    let unplaced = tongue.label(&PageLabel::NoPlaceYet { planes });
    format!("{unplaced} {outcome}")
}

fn outcome(plan: &Plan) -> PageLabel {
    match plan.outcome {
        Outcome::Fail => PageLabel::OutOfWindowCutNothing,
        _ if plan.must_stop() => PageLabel::StopCutNothing,
        Outcome::Pass => PageLabel::AllInWindow,
        Outcome::NotJudged => PageLabel::NotAllJudged,
    }
}
