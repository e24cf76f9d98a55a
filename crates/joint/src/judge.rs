//! Judge: all checks on one joint, the parts that would fit where one is left open, and what it comes to.
//!
//! Why its own room: the joint's outcome is the worst of its rulings, and that is said in one place.
//!
//! Invariants: removing what is computed never turns a pass into a fail, adding it never turns a fail into a pass; an outcome of "pass" never means that a joint may be built or kept.
//!
//! Not here: the document and the page (`plan`, the doors).

mod closing;

use crate::catalogue::{Catalogue, PartKind};
use crate::checks::{CHECKS, EndInputs, Inputs, LegInputs};
use crate::cutback::{Refusal, cutback};
use crate::fit::Chosen;
use crate::form::Complaint;
use crate::job::{End, Job, JointKind, Leg, Order, PartNames};
use crate::limit::{Datum, Outcome, Reach, Ruling};
use crate::pressure::{self, EndPressure, press};
use crate::study::{self, PlugStudy, Study, study, study_plug};
use crate::survey::{EndSurvey, survey};
use crate::warm::{LegSubject, Warm, warm};
use std::collections::BTreeMap;

/// Everything said about one joint.
#[derive(Clone, Debug)]
pub struct Judged<'o> {
    /// What was compared.
    pub inputs: Inputs<'o>,
    /// Rulings, in the order of checks, legs and phases.
    pub rulings: Vec<Ruling>,
    /// Words of named engineers on questions that are judged now, a sentence each: they close nothing.
    pub idle_closings: Vec<String>,
    /// Parts that would fit where one is left open.
    pub proposals: Vec<Proposal>,
}

/// For one open part of one leg: what fits, and why the rest does not.
#[derive(Clone, Debug, PartialEq)]
pub struct Proposal {
    /// Leg.
    pub leg: String,
    /// Other legs that take the same one part and have it open too.
    pub shared_with: Vec<String>,
    /// Kind of part.
    pub part: PartKind,
    /// Parts against which no check fails; with each the number of questions that stay unjudged.
    pub fits: Vec<(String, usize)>,
    /// Parts that fail, each with the first reason.
    pub does_not_fit: Vec<(String, String)>,
}

/// Judges a joint, its fields and pressures included.
///
/// # Errors
/// Rows that contradict each other, as complaints at the rows.
pub fn judge(order: &Order) -> Result<Judged<'_>, Vec<Complaint>> {
    judged(order, Depth::Whole)
}

/// Judges a joint with its pressures and temperatures, and no field: the checks that rest on a field say nothing.
///
/// # Errors
/// As [`judge()`].
pub fn judge_without_fields(order: &Order) -> Result<Judged<'_>, Vec<Complaint>> {
    judged(order, Depth::WithoutFields)
}

/// Judges a joint without solving any field or pressure: what takes microseconds; the checks that rest on one say nothing.
///
/// # Errors
/// As [`judge()`].
pub fn judge_unsolved(order: &Order) -> Result<Judged<'_>, Vec<Complaint>> {
    judged(order, Depth::Unsolved)
}

/// How much is computed before the checks are asked.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Depth {
    Unsolved,
    WithoutFields,
    Whole,
}

fn judged(order: &Order, depth: Depth) -> Result<Judged<'_>, Vec<Complaint>> {
    if order.job.kind == JointKind::Cable {
        return Err(order.job.legs.iter().map(no_joint).collect());
    }
    let mut legs = Vec::new();
    let mut refusals = Vec::new();
    for leg in &order.job.legs {
        match leg_inputs(
            &order.job,
            leg,
            Chosen::from_names(&order.catalogue, &leg.parts, leg.cable.conductor),
        ) {
            Ok(leg) => legs.push(leg),
            Err(wrong) => refusals.extend(wrong),
        }
    }
    if !refusals.is_empty() {
        let mut complaints: Vec<Complaint> = refusals.iter().map(complaint).collect();
        complaints.sort();
        complaints.dedup();
        return Err(complaints);
    }
    if depth == Depth::Whole {
        solve_all_fields(&order.job, &mut legs);
    }
    if depth >= Depth::WithoutFields {
        press_all(&order.job, &mut legs);
    }
    let warm = if depth >= Depth::WithoutFields {
        warm_all(order, &legs)
    } else {
        Warm::NotAsked
    };
    let inputs = Inputs { order, legs, warm };
    let rulings = CHECKS.iter().flat_map(|check| inputs.ask(check));
    let rulings: Vec<Ruling> = rulings
        .map(|ruling| closing::closed(&order.job, ruling))
        .collect();
    let idle_closings = closing::idle(&order.job, &rulings, depth == Depth::Whole)?;
    let proposals = proposals(&inputs, &rulings);
    Ok(Judged {
        inputs,
        rulings,
        idle_closings,
        proposals,
    })
}

fn leg_inputs<'o>(
    job: &'o Job,
    leg: &'o Leg,
    chosen: Chosen<'o>,
) -> Result<LegInputs<'o>, Vec<Refusal>> {
    let cutback = cutback(job, leg, &chosen)?;
    let ends = (1..=job.phases)
        .map(|phase| EndInputs {
            phase,
            survey: survey(job, End { leg, phase }),
            pressure: EndPressure::NOT_ASKED,
        })
        .collect();
    Ok(LegInputs {
        leg,
        chosen,
        cutback,
        ends,
        study: Study::NotAsked,
        plug: PlugStudy::None,
    })
}

/// Fields of all legs; a plug is solved once for all legs with the same body.
fn solve_all_fields(job: &Job, legs: &mut [LegInputs<'_>]) {
    let mut plugs: BTreeMap<String, PlugStudy> = BTreeMap::new();
    for leg in legs {
        solve_fields(job, leg);
        let Some(body) = leg.chosen.body.filter(|_| job.kind == JointKind::Separable) else {
            continue;
        };
        let known = plugs
            .entry(body.head.id.clone())
            .or_insert_with(|| study_plug(body));
        leg.plug = known.clone();
    }
}

/// How warm the joint gets; one whose parts are left open is asked for elsewhere.
fn warm_all(order: &Order, legs: &[LegInputs<'_>]) -> Warm {
    if legs.iter().any(|leg| leg.chosen.body.is_none()) {
        return Warm::NotAsked;
    }
    let surveys: Vec<Vec<EndSurvey>> = legs
        .iter()
        .map(|leg| leg.ends.iter().map(|end| end.survey.clone()).collect())
        .collect();
    let subjects = legs.iter().zip(&surveys).map(|(leg, surveys)| LegSubject {
        leg: leg.leg,
        chosen: &leg.chosen,
        cutback: &leg.cutback,
        surveys,
    });
    let bus = order.job.bus.as_deref();
    let bus = bus.and_then(|id| order.catalogue.bus(id));
    warm(&order.job, bus, &subjects.collect::<Vec<_>>())
}

/// How hard the parts of every end sit.
fn press_all(job: &Job, legs: &mut [LegInputs<'_>]) {
    for leg in legs {
        for end in &mut leg.ends {
            end.pressure = press(&pressure::Subject {
                job,
                leg: leg.leg,
                phase: end.phase,
                chosen: &leg.chosen,
                cutback: &leg.cutback,
                survey: &end.survey,
            });
        }
    }
}

/// Fields of a leg whose body is chosen; one that is left open is asked for elsewhere.
fn solve_fields(job: &Job, leg: &mut LegInputs<'_>) {
    if leg.chosen.body.is_none() {
        return;
    }
    let surveys: Vec<EndSurvey> = leg.ends.iter().map(|end| end.survey.clone()).collect();
    leg.study = study(&study::Subject {
        job,
        leg: leg.leg,
        chosen: &leg.chosen,
        cutback: &leg.cutback,
        surveys: &surveys,
    });
}

fn complaint(refusal: &Refusal) -> Complaint {
    let hint = "One of the rows was copied wrongly, or two papers are for different parts: look both up again.";
    complaint_at(&refusal.place, refusal.message.clone(), hint.to_owned())
}

/// A run of cable without a joint.
fn no_joint(leg: &Leg) -> Complaint {
    let message = "This job is a run of cable: it has no joint that could be planned or drawn.";
    let hint = "`jointwright rate` says what the cable carries in its surroundings, what is missing for it, who can answer that and where it goes; letters (`plan --ask`) are written for joints only. For a joint change the kind of job.";
    complaint_at(&leg.place, message.to_owned(), hint.to_owned())
}

/// A complaint at a place that was written as `file:line:column`.
fn complaint_at(place: &str, message: String, hint: String) -> Complaint {
    let mut parts = place.rsplitn(3, ':');
    let column = parts.next().and_then(|c| c.parse().ok()).unwrap_or(1);
    let line = parts.next().and_then(|l| l.parse().ok()).unwrap_or(1);
    Complaint {
        path: parts.next().unwrap_or_default().to_owned(),
        line,
        column,
        message,
        hint,
    }
}

/// Worst outcome of a list of rulings; an empty list is not judged.
pub fn worst(rulings: &[Ruling]) -> Outcome {
    rulings
        .iter()
        .map(|r| r.outcome)
        .max()
        .unwrap_or(Outcome::NotJudged)
}

/// Whether work stops: a ruling fails, or one stops it and nobody with the authority has said what it is.
pub fn stops(rulings: &[Ruling]) -> bool {
    let is_stop = |r: &Ruling| r.outcome == Outcome::Fail || (r.stops && r.closed_by.is_none());
    rulings.iter().any(is_stop)
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

/// Passing ruling of what is computed in another unit than millimetres whose margin is the least part of its limit.
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

fn proposals(inputs: &Inputs<'_>, rulings: &[Ruling]) -> Vec<Proposal> {
    let mut proposals: Vec<Proposal> = Vec::new();
    for leg in &inputs.legs {
        for kind in PartKind::ALL {
            if !is_open(leg, kind, rulings) {
                continue;
            }
            // One part for all legs is asked for once.
            let mut known = proposals.iter_mut().filter(|p| p.part == kind);
            match known.find(|_| is_shared(&inputs.order.job, kind)) {
                Some(known) => known.shared_with.push(leg.leg.id.clone()),
                None => proposals.push(proposal(inputs, leg, kind)),
            }
        }
    }
    proposals
}

/// Whether a part is asked for: left open, or an adapter where the bare leg is outside the body's range.
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
    // A part that other legs take with this one has to fit them all.
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
                    .map(|r| r.message.clone())
                    .unwrap_or_default(),
            )),
            Ok(tried) => {
                let rulings = ask(&tried);
                let fail = rulings
                    .iter()
                    .find(|r| r.outcome == Outcome::Fail && !before.contains(r));
                match fail {
                    Some(fail) => proposal
                        .does_not_fit
                        .push((id, fail.why.clone().unwrap_or_default())),
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

/// Whether all legs of a joint take one part of this kind together.
fn is_shared(job: &Job, kind: PartKind) -> bool {
    match kind {
        PartKind::Body => job.kind != JointKind::Separable,
        PartKind::Connector => job.kind == JointKind::Straight,
        _ => false,
    }
}

/// The joint with one more part chosen: on one leg, and on every other leg that shares it and has it open too.
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
        legs.push(leg_inputs(&order.job, each.leg, chosen)?);
    }
    Ok(Inputs {
        order,
        legs,
        warm: Warm::NotAsked,
    })
}
