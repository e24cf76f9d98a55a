//! Programme: the steps of a make-up, in an order that no precondition forbids.
//!
//! Why its own room: which step waits for which is knowledge of the trade; paper, terminal and browser only show it.
//!
//! Invariants: a step waits for all that it needs, so every order that keeps to `after` keeps to every precondition; the order belongs to the joint, so what crosses it waits for all its legs; what must go over a cable comes on once, on one named end, before the connector that would bar its way; a step of a part's own instructions keeps its order, and where that cannot be had with the preconditions both are named for a person to decide; a caution belongs to what is there, and stands once.
//!
//! Not here: numbers to cut to (`cutback`), what the page looks like (`plan`, the doors), and any word on whether a cable is dead or may be touched.
//!
//! Source: preconditions: common practice, no source; the rest: each part's own instructions.

mod adapter;
mod bridge;
mod caution;
mod coming;
mod edge;
mod hold;
mod line;
mod made;
mod order;
mod slide;
mod square;

pub use crate::said::EdgeAct;
pub use caution::said_once;
pub use edge::{ShieldEdge, shield_edge};
pub use hold::{Against, Hold, Wanted};
pub use line::Line;
pub use slide::Slide;

use crate::checks::{Inputs, LegInputs};
use crate::job::JointKind;
use crate::said::{Said, StepSaid, UnsettledSaid};
use crate::stage::Stage;

/// What stands as the source of a step or caution that no paper gives.
pub(crate) fn practice() -> Said {
    StepSaid::CommonPractice.into()
}

/// One step of the make-up of every phase.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// Name: legs and stage, `A jacket`; the whole joint has no leg.
    pub id: String,
    /// Moment of the make-up.
    pub stage: Stage,
    /// Legs that it concerns; empty for the whole joint.
    pub legs: Vec<String>,
    /// What is done, in one line.
    pub title: StepSaid,
    /// What the parts' own papers say of it, in order, or where to look.
    pub lines: Vec<Line>,
    /// What can hurt here, each with its source.
    pub cautions: Vec<Line>,
    /// Where work stops until it is measured.
    pub hold: Option<Hold>,
    /// What is slid on here, and onto which end.
    pub slides: Vec<Slide>,
    /// Names of the steps that come before it.
    pub after: Vec<String>,
}

/// The steps of one joint.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Programme {
    /// Steps, in an order that keeps to all of them.
    pub steps: Vec<Step>,
    /// What cannot be settled here: sentences for whom to call.
    pub unsettled: Vec<UnsettledSaid>,
}

/// The programme of a joint with these parts.
pub fn programme(inputs: &Inputs<'_>) -> Programme {
    let mut steps = nodes(inputs);
    let mut unsettled = slide::unsettled(inputs);
    unsettled.extend(inputs.legs.iter().filter_map(edge::unsettled));
    unsettled.extend(lonely_across(inputs));
    unsettled.extend(bridge::unsettled(inputs));
    let own = line::own_steps(inputs);
    for (staged, leg) in own.iter().filter(|(staged, _)| staged.applies) {
        let Some(at) = order::node_of(&steps, staged.stage, leg) else {
            continue;
        };
        let step = &mut steps[at];
        if !step.lines.contains(&staged.line) {
            step.lines.push(staged.line.clone());
            if let Some(caution) = &staged.caution
                && !step.cautions.contains(caution)
            {
                step.cautions.push(caution.clone());
            }
            if staged.hold {
                hold::add_own(step, &staged.line);
            }
        }
    }
    let edges = order::edges(&steps, &own, &bridge::word(inputs), &mut unsettled);
    let sorted = order::sorted(&steps, &edges);
    let names: Vec<String> = steps.iter().map(|s| s.id.clone()).collect();
    for (before, after) in &edges {
        steps[*after].after.push(names[*before].clone());
    }
    let steps: Vec<Step> = sorted.into_iter().map(|at| steps[at].clone()).collect();
    Programme { steps, unsettled }
}

/// Steps without order: one for each stage of each leg, those that legs share once.
fn nodes(inputs: &Inputs<'_>) -> Vec<Step> {
    let kind = inputs.order.job.kind;
    let mut steps = Vec::new();
    for stage in Stage::all() {
        if stage == Stage::Mate && kind != JointKind::Separable {
            continue;
        }
        match scope(stage, kind) {
            Scope::Joint => steps.push(node(inputs, stage, &[])),
            Scope::Shared => {
                let all: Vec<&LegInputs<'_>> = inputs.legs.iter().collect();
                steps.push(node(inputs, stage, &all));
            }
            Scope::Leg if stage == Stage::Bond => {
                let groups = bonded_together(inputs);
                steps.extend(groups.iter().map(|legs| node(inputs, stage, legs)));
            }
            Scope::Leg => {
                let legs = inputs.legs.iter().filter(|leg| {
                    stage != Stage::PushOn || !slide::slides(inputs, leg, stage).is_empty()
                });
                steps.extend(legs.map(|leg| node(inputs, stage, &[leg])));
            }
        }
    }
    steps
}

/// Legs by what bonds them: those that one piece joins together, the others by themselves.
fn bonded_together<'i, 'o>(inputs: &'i Inputs<'o>) -> Vec<Vec<&'i LegInputs<'o>>> {
    let across = |leg: &LegInputs<'_>| {
        let part = leg.chosen.shield_part.filter(|part| part.across_legs);
        part.map(|part| part.head.id.clone())
    };
    let mut groups: Vec<Vec<&LegInputs<'o>>> = Vec::new();
    for leg in &inputs.legs {
        let id = across(leg);
        let same = |group: &&mut Vec<&LegInputs<'o>>| {
            id.is_some() && group.first().is_some_and(|first| across(first) == id)
        };
        match groups.iter_mut().find(same) {
            Some(group) => group.push(leg),
            None => groups.push(vec![leg]),
        }
    }
    groups
}

/// What of a piece that goes across is not settled: it joins two legs or more.
fn lonely_across(inputs: &Inputs<'_>) -> Vec<UnsettledSaid> {
    let groups = bonded_together(inputs);
    let lonely = groups.iter().filter(|legs| legs.len() == 1);
    lonely
        .filter_map(|legs| {
            let leg = legs.first()?;
            let part = leg.chosen.shield_part.filter(|part| part.across_legs)?;
            Some(UnsettledSaid::AloneAcross {
                row: part.head.id.clone(),
                leg: leg.leg.id.clone(),
            })
        })
        .collect()
}

/// What a step is made for.
enum Scope {
    /// The whole joint.
    Joint,
    /// All legs at once.
    Shared,
    /// Each leg by itself.
    Leg,
}

fn scope(stage: Stage, kind: JointKind) -> Scope {
    match (stage, kind) {
        (Stage::HandOver | Stage::HandBack, _) => Scope::Joint,
        // What crosses the joint is measured, and its bridge taken off, once.
        (Stage::BondCheck | Stage::BridgeOff, _)
        // One sleeve joins both legs; one body covers all.
        | (Stage::Connect, JointKind::Straight)
        | (Stage::Place, JointKind::Straight | JointKind::Branch) => Scope::Shared,
        _ => Scope::Leg,
    }
}

fn node(inputs: &Inputs<'_>, stage: Stage, legs: &[&LegInputs<'_>]) -> Step {
    let names: Vec<String> = legs.iter().map(|leg| leg.leg.id.clone()).collect();
    let id = if names.is_empty() {
        stage.name().to_owned()
    } else {
        format!("{} {}", names.join("+"), stage.name())
    };
    Step {
        id,
        stage,
        title: line::title(stage, legs),
        lines: line::house(inputs, stage, legs),
        cautions: caution::cautions(inputs, stage, legs),
        hold: hold::hold(inputs, stage, legs),
        slides: legs
            .iter()
            .flat_map(|leg| slide::slides(inputs, leg, stage))
            .collect(),
        legs: names,
        after: Vec::new(),
    }
}
