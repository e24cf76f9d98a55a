//! Page: a plan for the terminal, 80 columns, nothing by colour alone.
//!
//! Not here: numbers and rules; all of them come from the plan document.
//! Not here: language; labels are in crate `wording`.

mod leg;
mod lines;
mod rulings;

pub use lines::{Lines, styled};

use crate::asks_page::asks;
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::{MarkDoc, Plan};
use jointwright_wording::Tongue;
use jointwright_wording::label::{LegLine, PageLabel, PlanLegLabel};
use leg::{alike_legs, leg};
use lines::WIDTH;
use rulings::{closed, fails, governs, not_judged, proposals, unsettled};

/// Returns the page of a plan, without any styling.
pub fn page(plan: &Plan) -> String {
    let mut lines = Lines::new(Tongue::of_plan(plan));
    head(plan, &mut lines);
    asks(plan, &mut lines);
    for legs in alike_legs(plan) {
        lines.blank();
        leg(plan, &legs, &mut lines);
    }
    warm(plan, &mut lines);
    if let Some(leg) = plan.legs.first() {
        let said = leg.shield.never.clone();
        lines.heading(&PageLabel::ShieldsNever { said });
    }
    blanks(plan, &mut lines);
    unsettled(plan, &mut lines);
    fails(plan, &mut lines);
    not_judged(plan, &mut lines);
    closed(plan, &mut lines);
    proposals(&plan.proposals, &mut lines);
    foot(plan, &mut lines);
    lines.text
}

/// Returns the names of the files that were written, and their folder.
pub fn written(tongue: Tongue, folder: &str, names: &[&str]) -> String {
    let mut lines = Lines::new(tongue);
    lines.blank();
    // A path is one word, so its line is never broken.
    let folder = folder.to_owned();
    lines.add(&lines.say(&PageLabel::WroteInto { folder }));
    lines.wrap("  ", &names.join(", "));
    lines.text
}

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

fn head(plan: &Plan, lines: &mut Lines) {
    banner(plan, lines);
    mark(&plan.plan_mark, lines);
    let job = &plan.job;
    lines.wrap("", &format!("{}: {}", job.id, job.title));
    lines.label(
        "  ",
        &PageLabel::Joint {
            kind: job.kind,
            n_phases: job.phases.into(),
            place: job.place.clone(),
            date: job.date.clone(),
        },
    );
    let count = |outcome: Outcome| plan.rulings.iter().filter(|r| r.ruling == outcome).count();
    let checked = lines.say(&PageLabel::Checked {
        n_pass: count(Outcome::Pass),
        n_open: count(Outcome::NotJudged),
        n_fail: count(Outcome::Fail),
    });
    lines.wrap("  ", &format!("{checked} {}", standing(plan)));
    lines.label("  ", &call(plan));
    lines.label("  ", &PageLabel::LegsAndPhases);
}

fn call(plan: &Plan) -> PageLabel {
    let call = &plan.job.stop_and_call;
    PageLabel::StopAndCall {
        name: call.name.clone(),
        number: call.number.clone(),
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

/// Adds the temperatures of the joint under load.
fn warm(plan: &Plan, lines: &mut Lines) {
    let Some(warm) = plan.warm.as_ref().filter(|warm| !warm.legs.is_empty()) else {
        return;
    };
    lines.heading(&PlanLegLabel::Line(LegLine::UnderLoad));
    for leg in &warm.legs {
        for line in &leg.lines {
            lines.wrap("  ", &format!("{}: {line}", leg.leg));
        }
    }
}

fn blanks(plan: &Plan, lines: &mut Lines) {
    for blank in &plan.blanks {
        let (port, plug) = (blank.port, blank.plug.clone());
        lines.heading(&PlanLegLabel::Blank { port, plug });
    }
}

fn foot(plan: &Plan, lines: &mut Lines) {
    if !plan.must_stop() {
        governs(plan, lines);
    }
    lines.blank();
    lines.label("  ", &call(plan));
    lines.wrap("  ", &plan.never);
    banner(plan, lines);
}
