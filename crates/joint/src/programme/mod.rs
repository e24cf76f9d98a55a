//! Programme: the steps of a make-up, in an order that no precondition forbids.
//!
//! Why its own room: the order of steps is knowledge of the trade; paper, terminal and browser only show it.
//!
//! Invariants:
//! - A step waits for all that it needs, so every order that keeps to `after` keeps to every precondition.
//! - The order belongs to the joint, so a step that crosses the joint waits for all its legs.
//! - A part that must go over a cable comes on once, on one named end, before the connector that would bar its way.
//! - The steps of a part's own instructions keep their order; where this order and the preconditions clash, both are named for a person to decide.
//! - A caution belongs to a thing that is there, and stands once.
//!
//! Not here: numbers to cut to (`cutback`), the look of the page (`plan`, the doors), and any word on whether a cable is dead or may be touched.
//!
//! Source: preconditions: common practice, no source; the rest: each part's own instructions.

mod adapter;
mod bridge;
mod caution;
mod coming;
mod connector_marks;
mod edge;
mod general_steps;
mod hold;
mod line;
mod order;
mod part_steps;
mod slide;
mod square_cut;
mod wanted;

pub use crate::said::EdgeAct;
pub use caution::said_once;
pub use edge::{ShieldEdge, shield_edge};
pub use hold::Hold;
pub use line::Line;
pub use slide::Slide;
pub use wanted::{Against, Wanted};

use crate::checks::{Inputs, LegInputs};
use crate::job::JointKind;
use crate::said::{Said, StepSaid, UnsettledSaid};
use crate::stage::Stage;

/// Source of a step or caution that no paper states.
pub(crate) fn practice() -> Said {
    StepSaid::CommonPractice.into()
}

/// One step of the make-up of every phase.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// Name: legs and stage, as in `A jacket`; a step of the whole joint has no leg.
    pub id: String,
    /// Moment of the make-up.
    pub stage: Stage,
    /// Legs of the step; empty for the whole joint.
    pub legs: Vec<String>,
    /// Title, in one line.
    pub title: StepSaid,
    /// Sentences of the parts' own papers about it, in order, or the place to look.
    pub lines: Vec<Line>,
    /// Dangers of the step, each with its source.
    pub cautions: Vec<Line>,
    /// Point at which work stops for its readings.
    pub hold: Option<Hold>,
    /// Parts that are slid on here, each with its end.
    pub slides: Vec<Slide>,
    /// Names of the steps before it.
    pub after: Vec<String>,
}

/// Steps of one joint.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Programme {
    /// Steps, in an order that keeps to every `after`.
    pub steps: Vec<Step>,
    /// Questions that cannot be settled here: sentences for the person to call.
    pub unsettled: Vec<UnsettledSaid>,
}

/// Programme of a joint with these parts.
pub fn programme(inputs: &Inputs<'_>) -> Programme {
    let mut steps = nodes(inputs);
    let mut unsettled = slide::unsettled(inputs);
    unsettled.extend(inputs.legs.iter().filter_map(edge::unsettled));
    unsettled.extend(lonely_across(inputs));
    unsettled.extend(bridge::unsettled(inputs));
    let own = part_steps::own_steps(inputs);
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

/// Steps without order: one for each stage of each leg; a step that legs share stands once.
fn nodes(inputs: &Inputs<'_>) -> Vec<Step> {
    let kind = inputs.order.job.kind;
    let mut steps = Vec::new();
    for stage in Stage::ALL.iter().copied() {
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

/// Legs by their bond: legs that one piece joins stand together, each other leg by itself.
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

/// Question about a piece that goes across: it joins two legs or more.
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

/// Legs for which a step is made.
enum Scope {
    /// Whole joint.
    Joint,
    /// All legs at once.
    Shared,
    /// Each leg by itself.
    Leg,
}

fn scope(stage: Stage, kind: JointKind) -> Scope {
    match (stage, kind) {
        (Stage::HandOver | Stage::HandBack, _) => Scope::Joint,
        // The bond across the joint is measured once, and its bridge comes off once.
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
        title: general_steps::title(stage, legs),
        lines: general_steps::house(inputs, stage, legs),
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
