//! Page: a plan for the terminal, 80 columns, nothing by colour alone.
//!
//! Not here: numbers and rules; all of them come from the plan document.
//! Not here: language; labels are in crate `wording`.

mod leg;
mod rulings;

use crate::asks_page::asks;
use crate::lines::Lines;
use crate::masthead::{banner, mark, standing};
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::Plan;
use jointwright_wording::Tongue;
use jointwright_wording::label::{LegLine, PageLabel, PlanLegLabel};
use leg::{alike_legs, leg};
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
