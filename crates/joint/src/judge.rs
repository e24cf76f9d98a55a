//! Judge: all checks on one joint, the parts that would fit if one is left open, and the outcome.
//!
//! Why its own room: one place says that the joint's outcome is the worst of its rulings.
//!
//! Invariants: removing computed rulings never turns a pass into a fail, and adding them never turns a fail into a pass; an outcome of "pass" never means that a joint may be built or kept.
//!
//! Not here: the document and the page (`plan`, the doors).

mod cable_run;
mod closing;

pub use cable_run::{JudgedRun, judge_run};

use crate::catalogue::{Catalogue, PartKind};
use crate::checks::{CHECKS, Inputs, LegInputs};
use crate::cutback::Refusal;
use crate::fit::Chosen;
use crate::form::Complaint;
use crate::job::{Job, JointKind, Order, PartNames};
use crate::limit::{Datum, Outcome, Reach, Ruling};
use crate::model::{Depth, Model, Solved, with_parts};
use crate::said::Said;
use crate::warm::Warm;
use std::ops::ControlFlow;
use std::sync::Arc;

/// Judgement of one joint.
#[derive(Clone, Debug)]
pub struct Judged<'o> {
    /// Inputs of the checks.
    pub inputs: Inputs<'o>,
    /// Rulings, in the order of checks, legs and phases.
    pub rulings: Vec<Ruling>,
    /// Words of named engineers on questions that are judged by now: they close nothing.
    pub idle_closings: Vec<Said>,
}

/// For one open part of one leg: the rows that fit, and the reasons why the others do not.
#[derive(Clone, Debug, PartialEq)]
pub struct Proposal {
    /// Leg.
    pub leg: String,
    /// Other legs that share this one part and also have it open.
    pub shared_with: Vec<String>,
    /// Kind of part.
    pub part: PartKind,
    /// Parts against which no check fails; with each the number of questions that stay unjudged.
    pub fits: Vec<(String, usize)>,
    /// Parts that fail, each with the first reason.
    pub does_not_fit: Vec<(String, Said)>,
}

/// Judges a joint, including its fields and pressures.
///
/// # Errors
/// Rows that contradict each other, as complaints at the rows.
pub fn judge(order: &Order) -> Result<Judged<'_>, Vec<Complaint>> {
    judged(order, Depth::Whole)
}

/// Judges a joint with its pressures and temperatures, and without any field: the checks that rest on a field say nothing.
///
/// # Errors
/// As for [`judge()`].
pub fn judge_without_fields(order: &Order) -> Result<Judged<'_>, Vec<Complaint>> {
    judged(order, Depth::WithoutFields)
}

/// Judges a joint without solving any field or pressure, which takes microseconds; the checks that rest on one say nothing.
///
/// # Errors
/// As for [`judge()`].
pub fn judge_unsolved(order: &Order) -> Result<Judged<'_>, Vec<Complaint>> {
    judged(order, Depth::Unsolved)
}

/// Judges an order, solved to a depth.
fn judged(order: &Order, depth: Depth) -> Result<Judged<'_>, Vec<Complaint>> {
    let mut solved = Solved::new(order)?;
    solved.solve(order, depth, &mut |_| ControlFlow::Continue(()));
    rule(solved.inputs(order), depth == Depth::Whole)
}

/// Judges a model as far as it is solved; checks that rest on more say nothing.
///
/// # Errors
/// As for [`judge()`].
pub fn judge_model(model: &Model) -> Result<Judged<'_>, Vec<Complaint>> {
    rule(model.inputs(), model.is_solved(Depth::Whole))
}

/// Solves an order completely, judges it, and passes the result to `then`: the one way of doors from an order to its rulings.
///
/// # Errors
/// As for [`judge()`].
pub fn with_judged<T>(
    order: Order,
    then: impl FnOnce(&Judged<'_>) -> T,
) -> Result<T, Vec<Complaint>> {
    with_model(order, |_, judged| then(judged))
}

/// Solves an order completely and judges it; passes on the model too, so that ends as built can be judged beside it.
///
/// # Errors
/// As for [`judge()`].
pub fn with_model<T>(
    order: Order,
    then: impl FnOnce(&Model, &Judged<'_>) -> T,
) -> Result<T, Vec<Complaint>> {
    let mut model = Model::new(order)?;
    model.solve(Depth::Whole, &mut |_| ControlFlow::Continue(()));
    judge_model(&model).map(|judged| then(&model, &judged))
}

/// Runs every check.
fn rule(inputs: Inputs<'_>, is_whole: bool) -> Result<Judged<'_>, Vec<Complaint>> {
    let job = &inputs.order.job;
    let rulings = CHECKS.iter().flat_map(|check| inputs.ask(check));
    let rulings: Vec<Ruling> = rulings.map(|ruling| closing::closed(job, ruling)).collect();
    let idle_closings = closing::idle(job, &rulings, is_whole)?;
    Ok(Judged {
        inputs,
        rulings,
        idle_closings,
    })
}

/// Worst outcome of a list of rulings; an empty list is not judged.
pub fn worst(rulings: &[Ruling]) -> Outcome {
    rulings
        .iter()
        .map(|r| r.outcome)
        .max()
        .unwrap_or(Outcome::NotJudged)
}

/// Passing ruling with the least margin in millimetres.
pub fn governing(rulings: &[Ruling]) -> Option<&Ruling> {
    let lengths = rulings
        .iter()
        .filter(|r| r.outcome == Outcome::Pass && r.unit == Some("mm"));
    lengths
        .filter(|r| r.margin.is_some())
        .min_by(|a, b| a.margin.unwrap_or(0.0).total_cmp(&b.margin.unwrap_or(0.0)))
}

/// Passing ruling of a computed quantity in another unit than millimetres, with the smallest ratio of margin to limit.
pub fn governing_computed(rulings: &[Ruling]) -> Option<&Ruling> {
    let part = |ruling: &Ruling| match (&ruling.limit, ruling.margin) {
        (Some(Datum::Number(limit)), Some(margin)) if *limit != 0.0 => Some(margin / limit.abs()),
        _ => None,
    };
    let computed = rulings.iter().filter(|r| {
        r.outcome == Outcome::Pass
            && r.reach == Reach::Computed
            && r.unit.is_some_and(|u| u != "mm")
    });
    computed
        .filter_map(|ruling| Some((part(ruling)?, ruling)))
        .min_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, ruling)| ruling)
}

/// Rulings without those that this program computed.
pub fn without_computed(rulings: &[Ruling]) -> Vec<Ruling> {
    rulings
        .iter()
        .filter(|r| r.reach == Reach::Instructions)
        .cloned()
        .collect()
}

/// Tries every row of the catalogue for each part that is left open: asks all checks once a row, and solves nothing.
pub fn proposals(judged: &Judged<'_>) -> Vec<Proposal> {
    let (inputs, rulings) = (&judged.inputs, &judged.rulings);
    let mut proposals: Vec<Proposal> = Vec::new();
    for leg in &inputs.legs {
        for kind in PartKind::ALL {
            if !is_open(leg, kind, rulings) {
                continue;
            }
            // A part that all legs share is proposed once.
            let mut known = proposals.iter_mut().filter(|p| p.part == kind);
            match known.find(|_| is_shared(&inputs.order.job, kind)) {
                Some(known) => known.shared_with.push(leg.leg.id.clone()),
                None => proposals.push(proposal(inputs, leg, kind)),
            }
        }
    }
    proposals
}

/// Whether a part is proposed: it is left open, or it is an adapter and the bare leg is outside the body's range.
fn is_open(leg: &LegInputs<'_>, kind: PartKind, rulings: &[Ruling]) -> bool {
    match kind {
        PartKind::Body => leg.chosen.body.is_none(),
        PartKind::Connector => leg.chosen.connector.is_none(),
        PartKind::ShieldPart => leg.chosen.shield_part.is_none(),
        PartKind::Seal => leg.chosen.seal.is_none(),
        PartKind::Adapter => {
            leg.chosen.body.is_some()
                && leg.chosen.adapter.is_none()
                && rulings.iter().any(|r| {
                    r.check == "insulation_in_body"
                        && r.outcome == Outcome::Fail
                        && r.subject.leg.as_ref() == Some(&leg.leg.id)
                })
        }
    }
}

fn proposal(inputs: &Inputs<'_>, leg: &LegInputs<'_>, kind: PartKind) -> Proposal {
    // A part that several legs share must fit them all.
    let is_shared = is_shared(&inputs.order.job, kind);
    let concerns =
        |ruling: &Ruling| is_shared || ruling.subject.leg.as_ref().is_none_or(|l| *l == leg.leg.id);
    let ask = |inputs: &Inputs<'_>| -> Vec<Ruling> {
        let asked = CHECKS.iter().flat_map(|c| inputs.ask(c));
        asked.filter(concerns).collect()
    };
    let before = ask(inputs);
    let mut proposal = Proposal {
        leg: leg.leg.id.clone(),
        shared_with: Vec::new(),
        part: kind,
        fits: Vec::new(),
        does_not_fit: Vec::new(),
    };
    for id in ids(&inputs.order.catalogue, kind) {
        match with_part(inputs, leg, kind, &id) {
            Err(refusals) => proposal.does_not_fit.push((
                id,
                refusals
                    .first()
                    .map_or_else(|| Said::all([]), |r| r.message.clone().into()),
            )),
            Ok(tried) => {
                let rulings = ask(&tried);
                let fail = rulings
                    .iter()
                    .find(|r| r.outcome == Outcome::Fail && !before.contains(r));
                match fail {
                    Some(fail) => proposal
                        .does_not_fit
                        .push((id, fail.why.clone().unwrap_or_else(|| Said::all([])))),
                    None => {
                        let unjudged = rulings.iter().filter(|r| r.outcome == Outcome::NotJudged);
                        let open = unjudged.filter(|r| !before.contains(r)).count();
                        proposal.fits.push((id, open));
                    }
                }
            }
        }
    }
    proposal
}

fn ids(catalogue: &Catalogue, kind: PartKind) -> Vec<String> {
    match kind {
        PartKind::Body => catalogue.bodies.iter().map(|r| r.head.id.clone()).collect(),
        PartKind::Adapter => catalogue
            .adapters
            .iter()
            .map(|r| r.head.id.clone())
            .collect(),
        PartKind::Connector => catalogue
            .connectors
            .iter()
            .map(|r| r.head.id.clone())
            .collect(),
        PartKind::ShieldPart => catalogue
            .shield_parts
            .iter()
            .map(|r| r.head.id.clone())
            .collect(),
        PartKind::Seal => catalogue.seals.iter().map(|r| r.head.id.clone()).collect(),
    }
}

/// Whether all legs of a joint share one part of this kind.
fn is_shared(job: &Job, kind: PartKind) -> bool {
    match kind {
        PartKind::Body => job.kind != JointKind::Separable,
        PartKind::Connector => job.kind == JointKind::Straight,
        _ => false,
    }
}

/// The joint with one more part chosen: on one leg, and on every other leg that shares it and also has it open.
fn with_part<'o>(
    inputs: &Inputs<'o>,
    leg: &LegInputs<'o>,
    kind: PartKind,
    id: &str,
) -> Result<Inputs<'o>, Vec<Refusal>> {
    let order = inputs.order;
    let is_shared = is_shared(&order.job, kind);
    let mut legs = Vec::new();
    for each in &inputs.legs {
        let mut names: PartNames = each.leg.parts.clone();
        let slot = match kind {
            PartKind::Body => &mut names.body,
            PartKind::Adapter => &mut names.adapter,
            PartKind::Connector => &mut names.connector,
            PartKind::ShieldPart => &mut names.shield_part,
            PartKind::Seal => &mut names.seal,
        };
        if each.leg.id != leg.leg.id && !(is_shared && slot.is_none()) {
            legs.push(each.clone());
            continue;
        }
        *slot = Some(id.to_owned());
        let chosen = Chosen::from_names(&order.catalogue, &names, each.leg.cable.conductor);
        legs.push(with_parts(&order.job, each.leg, chosen)?);
    }
    Ok(Inputs {
        order,
        legs,
        warm: Arc::new(Warm::NotAsked),
    })
}
