//! Cable run: the rulings on a run of cable without a joint.
//!
//! Why its own file: a run has no parts and no ends, so only one check of a joint applies: whether its load keeps it below the job's highest temperature.
//!
//! Invariants: no stretch passes while part of the route may be missing, nor on values from memory that the owner has not confirmed; a stretch that fails still fails.
//!
//! Not here: its temperatures (`warm`), the document (`plan`).

use super::closing;
use crate::ask;
use crate::form::Complaint;
use crate::job::{Job, Order};
use crate::limit::{AmountQuestion, Ask, Outcome, Ruling, Subject, Word, fact_table as fact};
use crate::said::{HeatSaid, Said, WarmingSaid};
use crate::section::Unknown;
use crate::warm::{CableRun, Stretched, rate_run};
use jointwright_units::Length;

/// Check of a run of cable.
const CHECK: &str = "service_temperature";
/// Error of a cable's formulas, as a share of its temperature rise: the same as for a joint in steady state; within it nothing is judged.
const ERROR_RATIO: f64 = 0.01;
/// A run of cable with its rating and its rulings.
#[derive(Clone, Debug)]
pub struct JudgedRun<'o> {
    /// Order of the run.
    pub order: &'o Order,
    /// Rating of the run, or the missing fact.
    pub run: Result<CableRun, Unknown>,
    /// Rulings, stretch by stretch.
    pub rulings: Vec<Ruling>,
    /// Words of engineers that no longer close anything.
    pub idle_closings: Vec<Said>,
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

/// Rulings, stretch by stretch: whether the job's load keeps the cable below the job's highest temperature.
fn rulings(job: &Job, run: &Result<CableRun, Unknown>) -> Vec<Ruling> {
    let subject = job
        .legs
        .first()
        .map_or_else(Subject::joint, |leg| Subject::leg(&leg.id));
    let open = |why: Said, asks: Vec<Ask>| {
        let ruling = Ruling::not_judged(CHECK, subject.clone(), why);
        vec![ruling.asking_all(asks)]
    };
    let run = match run {
        Ok(run) => run,
        Err(_) => {
            let asks = ask::cable(job).into_iter().chain(ask::cable_duty(job));
            return open(WarmingSaid::RunNotKnown.into(), asks.collect());
        }
    };
    let load_a = job.legs.first().and_then(|leg| job.load_of_a(leg));
    let Some(load_a) = load_a else {
        let why = WarmingSaid::not_stated("duty.load");
        return open(why.into(), ask::cable_duty(job));
    };
    let Some(greatest_degc) = job.duty.conductor_greatest_degc else {
        let why = WarmingSaid::not_stated("duty.conductor_greatest");
        return open(why.into(), ask::cable_duty(job));
    };
    if !run.unconfirmed.is_empty() {
        let keys = run.unconfirmed.iter().map(|key| (*key).to_owned());
        let why = HeatSaid::RestOnMemory {
            keys: keys.collect(),
        };
        let asks = run.unconfirmed.iter();
        let asks = asks.map(|key| fact::CONFIRMATION.of(*key)).collect();
        return open(why.into(), asks);
    }
    let uncovered = uncovered(job).map(|why| {
        let asks = job.legs.first().map(ask::cable_route);
        Ruling::not_judged(CHECK, subject.clone(), why).asking_all(asks)
    });
    let each = run.stretches.iter();
    let each = each.map(|of| on_stretch(of, &subject, load_a, greatest_degc));
    // A stretch that fails fails, wherever the others are; no stretch passes while part of the route may be missing.
    let is_kept = |ruling: &Ruling| uncovered.is_none() || ruling.outcome != Outcome::Pass;
    let each: Vec<Ruling> = each.filter(is_kept).collect();
    each.into_iter().chain(uncovered.clone()).collect()
}

/// Whether the load keeps the cable below the highest temperature in one stretch.
fn on_stretch(of: &Stretched, subject: &Subject, load_a: f64, greatest_degc: f64) -> Ruling {
    let word = &Word::Job("duty.conductor_greatest".into());
    let what = WarmingSaid::ConductorIn {
        load_a,
        stretch: of.what.clone().into(),
    };
    let Some(at) = of.at_load else {
        let limit = WarmingSaid::AtMost {
            degc: greatest_degc,
        };
        let found = WarmingSaid::WithoutEnd;
        let ruling = Ruling::on_words(CHECK, subject.clone(), found, limit, word.clone());
        let why = Said::of(what, WarmingSaid::WarmsWithoutEnd);
        return ruling.failing(why, WarmingSaid::CableHotterThanStated);
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
        hint: WarmingSaid::CableHotterThanStated.into(),
    }
    .rule()
}

/// Reason why the stretches may not be the whole route: a stretch that nobody wrote down may be the worst; `None` if they are the whole.
fn uncovered(job: &Job) -> Option<Said> {
    let leg = job.legs.first()?;
    let Some(route) = leg.route_length else {
        let leg = leg.id.clone();
        return Some(WarmingSaid::RouteNotStated { leg }.into());
    };
    let mut sum = Length::ZERO;
    for row in &job.surroundings {
        let Some(length) = row.length else {
            let what = row.what.clone();
            let said = WarmingSaid::StretchHasNoLength { what };
            return Some(Said::of(row.place.to_string(), said));
        };
        sum += length;
    }
    (sum != route).then(|| {
        let said = WarmingSaid::StretchesAreNotTheRoute {
            leg: leg.id.clone(),
            stretches_m: sum.m(),
            route_m: route.m(),
            apart_mm: (sum - route).mm().abs(),
        };
        said.into()
    })
}
