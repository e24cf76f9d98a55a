//! Cable run: what is ruled on a run of cable without a joint.
//!
//! Why its own file: a run has no parts and no ends, so the checks of a joint have nothing to ask of it but one: does its load keep it below the job's highest temperature?
//!
//! Invariants: nothing passes while part of the route may be missing, nor on values from memory that the owner has not confirmed; a stretch that fails still fails.
//!
//! Not here: how warm it gets (`warm`), the document (`plan`).

use super::closing;
use crate::ask;
use crate::form::Complaint;
use crate::job::{Job, Order};
use crate::limit::{
    AmountQuestion, Ask, Outcome, Ruling, Subject, Word, fact_table as fact, shown,
};
use crate::section::Unknown;
use crate::warm::{CableRun, Stretched, rate_run};
use jointwright_units::Length;

/// The question that a run of cable is held against.
const CHECK: &str = "service_temperature";
/// What a crew does about a cable that gets hotter than the job states.
const HINT: &str = "Stop and call: at this load the cable gets hotter than the job states for it. The engineer decides on the load, or on what surrounds the cable.";
/// Room left for what the formulas of a cable leave out, as a share of its rise: that of a joint at rest; within it nothing is judged.
const ERROR_RATIO: f64 = 0.01;
/// A run of cable, rated and ruled on.
#[derive(Clone, Debug)]
pub struct JudgedRun<'o> {
    /// Its order.
    pub order: &'o Order,
    /// What it carries, or what is not known of it.
    pub run: Result<CableRun, Unknown>,
    /// Rulings, stretch by stretch.
    pub rulings: Vec<Ruling>,
    /// Words of engineers that close nothing any more, a sentence each.
    pub idle_closings: Vec<String>,
}

/// Rates and judges the run of cable of a job without a joint.
///
/// # Errors
/// Words of engineers on no question, as complaints at their rows.
pub fn judge_run(order: &Order) -> Result<JudgedRun<'_>, Vec<Complaint>> {
    let job = &order.job;
    let run = rate_run(job);
    let rulings: Vec<Ruling> = rulings(job, &run)
        .into_iter()
        .map(|ruling| closing::closed(job, ruling))
        .collect();
    let idle_closings = closing::idle(job, &rulings, true)?;
    Ok(JudgedRun {
        order,
        run,
        rulings,
        idle_closings,
    })
}

/// Whether the job's load keeps below the job's highest temperature, stretch by stretch.
fn rulings(job: &Job, run: &Result<CableRun, Unknown>) -> Vec<Ruling> {
    let subject = job
        .legs
        .first()
        .map_or_else(Subject::joint, |leg| Subject::leg(&leg.id));
    let open = |why: &str, asks: Vec<Ask>| {
        let ruling = Ruling::not_judged(CHECK, subject.clone(), why.to_owned());
        vec![ruling.asking_all(asks)]
    };
    let run = match run {
        Ok(run) => run,
        Err(_) => {
            let asks = ask::cable(job).into_iter().chain(ask::cable_duty(job));
            return open("what the cable carries is not known", asks.collect());
        }
    };
    let load_a = job.legs.first().and_then(|leg| job.load_of_a(leg));
    let Some(load_a) = load_a else {
        return open("the job does not state duty.load", ask::cable_duty(job));
    };
    let Some(greatest_degc) = job.duty.conductor_greatest_degc else {
        return open(
            "the job does not state duty.conductor_greatest",
            ask::cable_duty(job),
        );
    };
    if !run.unconfirmed.is_empty() {
        let keys = run.unconfirmed.join("`, `");
        let why = format!(
            "these temperatures rest on values from memory that the owner has not confirmed: `{keys}`"
        );
        let asks = run.unconfirmed.iter();
        return open(&why, asks.map(|key| fact::CONFIRMATION.of(*key)).collect());
    }
    let word = &Word::Job("duty.conductor_greatest".into());
    let uncovered = uncovered(job).map(|why| {
        let asks = job.legs.first().map(ask::cable_route);
        Ruling::not_judged(CHECK, subject.clone(), why).asking_all(asks)
    });
    let each = run.stretches.iter().map(|of: &Stretched| {
        let what = format!(
            "conductor of the cable with {} A all the time in {}",
            shown(load_a),
            of.what
        );
        let Some(at) = of.at_load else {
            let limit = format!("{greatest_degc} degC");
            let ruling =
                Ruling::on_words(CHECK, subject.clone(), "without end", limit, word.clone());
            return ruling.failing(format!("{what}: it warms without end"), HINT);
        };
        AmountQuestion {
            check: CHECK,
            subject: subject.clone(),
            what: what.into(),
            value: at.conductor_degc,
            error: ERROR_RATIO * (at.conductor_degc - of.degc).max(0.0),
            least: None,
            greatest: Some(greatest_degc),
            unit: "degC",
            word,
            hint: HINT.into(),
        }
        .rule()
    });
    // What fails in one stretch fails, wherever the others are; nothing passes while part of the route may be missing.
    let is_kept = |ruling: &Ruling| uncovered.is_none() || ruling.outcome != Outcome::Pass;
    let each: Vec<Ruling> = each.filter(is_kept).collect();
    each.into_iter().chain(uncovered.clone()).collect()
}

/// Why the stretches may not be the whole route, if they may not: a stretch that nobody wrote down may be the worst.
fn uncovered(job: &Job) -> Option<String> {
    let leg = job.legs.first()?;
    let Some(route) = leg.route_length else {
        return Some(format!(
            "the job does not state route_length, so that leg {} may have stretches that nobody wrote down",
            leg.id
        ));
    };
    let mut sum = Length::ZERO;
    for row in &job.surroundings {
        let Some(length) = row.length else {
            return Some(format!("{}: {} has no length", row.place, row.what));
        };
        sum += length;
    }
    (sum != route).then(|| {
        format!(
            "the stretches are {:.3} m long together, and the route of leg {} {:.3} m: part of it ({} mm) is said twice or not at all",
            sum.mm() * 1e-3,
            leg.id,
            route.mm() * 1e-3,
            (sum - route).mm().abs()
        )
    })
}
