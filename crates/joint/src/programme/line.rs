//! Line: sentences of a stage, from the parts' own papers and from the programme itself.

use super::adapter;
use super::coming::comings;
use super::edge::shield_edge;
use super::{bridge, practice, square};
use crate::catalogue::{Consumable, Head, MayMove, PartKind, Step as OwnStep};
use crate::checks::{Inputs, LegInputs};
use crate::cutback::Growth;
use crate::plane::Plane;
use crate::said::{Paper, Said, StepSaid};
use crate::stage::Stage;
use std::collections::BTreeMap;

/// A sentence with its source.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// Sentence.
    pub say: Said,
    /// Source of the sentence.
    pub source: Said,
}

/// A step of a part's own row, with the stage at which it stands.
#[derive(Clone, Debug)]
pub(super) struct StagedLine {
    /// Row, and number of the step in it.
    pub row: (String, usize),
    /// Stage.
    pub stage: Stage,
    /// Numbers of the earlier steps in the same row.
    pub after: Vec<usize>,
    pub line: Line,
    pub caution: Option<Line>,
    pub hold: bool,
    /// Whether the step is for the conductor of its leg.
    pub applies: bool,
}

/// Title of a stage for a crew.
pub(super) fn title(stage: Stage, legs: &[&LegInputs<'_>]) -> StepSaid {
    let edge = legs.first().map(|leg| shield_edge(leg).act);
    let edge = edge.filter(|_| stage == Stage::Shield);
    StepSaid::Title { stage, edge }
}

/// Lines of the programme itself at a stage; if a part comes on and its row has no step, the place to look.
pub(super) fn house(inputs: &Inputs<'_>, stage: Stage, legs: &[&LegInputs<'_>]) -> Vec<Line> {
    let usual = usual(inputs, stage, legs).into_iter();
    let mut lines: Vec<Line> = usual.map(common).collect();
    match stage {
        Stage::Square => lines.extend(
            legs.iter()
                .flat_map(|leg| square::lines(inputs, leg))
                .chain([common(StepSaid::TestMoisture)]),
        ),
        Stage::Shield => lines.extend(legs.iter().filter_map(|leg| kept(leg))),
        Stage::BondCheck => lines.extend(beside(inputs)),
        Stage::PushOn | Stage::Place => {
            lines.extend(legs.iter().flat_map(|leg| may_move(inputs, leg, stage)));
        }
        Stage::Connect => lines.extend(legs.iter().flat_map(|leg| brushes(inputs, leg))),
        Stage::Clean => lines.extend(legs.iter().filter_map(|leg| abrasive(leg))),
        Stage::BridgeOff => lines.push(bridge::line(inputs)),
        _ => {}
    }
    lines.extend(silent(inputs, stage, legs));
    lines
}

/// A line of common practice.
pub(super) fn common(say: impl Into<Said>) -> Line {
    Line {
        say: say.into(),
        source: practice(),
    }
}

/// Common practice at a stage, no source.
fn usual(inputs: &Inputs<'_>, stage: Stage, legs: &[&LegInputs<'_>]) -> Vec<StepSaid> {
    let grows = legs
        .iter()
        .any(|leg| leg.chosen.connector.is_none_or(|c| c.grows()));
    match stage {
        Stage::HandOver => vec![StepSaid::HandOver],
        Stage::Measure => vec![StepSaid::MeasureWhereBare, StepSaid::LookAtJacket],
        // Here before the first cut, and again at the stage of the cut itself.
        Stage::Square => legs
            .iter()
            .filter_map(|leg| growth(leg))
            .chain([StepSaid::WriteLegAndPhase])
            .collect(),
        Stage::MarkOut => vec![StepSaid::MarkOut { grows }],
        Stage::Phasing => vec![StepSaid::Phasing],
        Stage::SlideOn if inputs.legs.len() > 1 => vec![StepSaid::SlideOnNow],
        Stage::Insulation => legs.iter().filter_map(|leg| growth(leg)).collect(),
        Stage::Clean => vec![StepSaid::Wipes],
        Stage::PushOn => vec![StepSaid::PushOnInOrder],
        Stage::Place if is_cleaned_early(inputs, legs) => vec![StepSaid::LookAgain],
        Stage::HandBack => vec![StepSaid::HandBack],
        _ => Vec::new(),
    }
}

/// Whether a leg is cleaned before its connector is made, because a part is pushed onto it first.
fn is_cleaned_early(inputs: &Inputs<'_>, legs: &[&LegInputs<'_>]) -> bool {
    legs.iter()
        .flat_map(|leg| comings(inputs, leg))
        .any(|coming| coming.stage == Stage::PushOn)
}

/// Sentence that a cut waits for the growth of the sleeve; `None` unless its front page shows a growth ladder for it.
fn growth(leg: &LegInputs<'_>) -> Option<StepSaid> {
    let cuts = leg.cutback.cuts.iter();
    let waiting = cuts.filter(|cut| !cut.ladder.is_empty());
    let waiting: Vec<Plane> = waiting.map(|cut| cut.plane).collect();
    let is_unknown = matches!(leg.cutback.growth, Growth::Unknown(_));
    let leg = leg.leg.id.clone();
    (is_unknown && !waiting.is_empty()).then_some(StepSaid::GrowthNotMeasured { leg, waiting })
}

/// Sentence that a bond measured beside the bridge shows both.
fn beside(inputs: &Inputs<'_>) -> Option<Line> {
    let is_off = bridge::is_off_before_the_reading(inputs);
    (!is_off).then(|| common(StepSaid::BridgeBesideBond))
}

/// Time for which a part may still be moved, with room to write when it was placed.
fn may_move(inputs: &Inputs<'_>, leg: &LegInputs<'_>, stage: Stage) -> Vec<Line> {
    let chosen = &leg.chosen;
    let body = chosen.body.filter(|_| stage == Stage::Place);
    let body = body.map(|p| (&p.head, p.may_move.as_ref()));
    let is_here = adapter::placed_at(inputs, leg) == Some(stage);
    let adapter = chosen.adapter.filter(|_| is_here);
    let adapter = adapter.map(|p| (&p.head, p.may_move.as_ref()));
    let of = |(head, may_move): (&Head, Option<&MayMove>)| match may_move? {
        MayMove::WithinMinutes(minutes) => Some(Line {
            say: StepSaid::MayMove {
                leg: leg.leg.id.clone(),
                row: head.id.clone(),
                minutes: *minutes,
            }
            .into(),
            source: paper(head),
        }),
        _ => None,
    };
    adapter.into_iter().chain(body).filter_map(of).collect()
}

/// Kept length of a shield that is laid back.
fn kept(leg: &LegInputs<'_>) -> Option<Line> {
    let edge = shield_edge(leg);
    let said = edge.keeps()?.into();
    let leg = leg.leg.id.clone();
    Some(Line {
        say: StepSaid::OfLeg { leg, said }.into(),
        source: edge.source,
    })
}

/// Abrasive for the insulation: from the paper, else asked for.
fn abrasive(leg: &LegInputs<'_>) -> Option<Line> {
    let body = leg.chosen.body?;
    let row = body.head.id.clone();
    Some(match &body.abrasive {
        Some(what) => Line {
            say: StepSaid::Abrasive { what: what.clone() }.into(),
            source: paper(&body.head),
        },
        None => common(StepSaid::AbrasiveUnstated { row }),
    })
}

/// Tools named for cleaning the conductor of a leg, if no step of its row names them.
fn brushes(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Line> {
    let (id, metal) = (&leg.leg.id, leg.leg.cable.conductor.metal);
    let names = leg.leg.parts.consumables.iter();
    let named = names.filter_map(|name| inputs.order.catalogue.consumable(name));
    let is_brush = |part: &&Consumable| part.metals.contains(&metal) && part.head.steps.is_empty();
    let line = |part: &Consumable| Line {
        say: StepSaid::Brush {
            leg: id.clone(),
            metal,
            row: part.head.id.clone(),
        }
        .into(),
        source: paper(&part.head),
    };
    named.filter(is_brush).map(line).collect()
}

/// Places to look for parts that come on at this stage and whose rows have no step of it.
fn silent(inputs: &Inputs<'_>, stage: Stage, legs: &[&LegInputs<'_>]) -> Vec<Line> {
    let mut lines = Vec::new();
    for leg in legs {
        for (head, comes_on) in heads(inputs, leg) {
            let line = Line {
                say: StepSaid::SeeInstructions {
                    row: head.id.clone(),
                }
                .into(),
                source: paper(head),
            };
            let has_own = head
                .steps
                .iter()
                .any(|step| applies(step, leg) && step.stage.unwrap_or(comes_on) == stage);
            if comes_on == stage && !has_own && !lines.contains(&line) {
                lines.push(line);
            }
        }
    }
    lines
}

/// Paper of a part, without the doubts about its row.
pub(super) fn paper(head: &Head) -> Said {
    let doubts = Vec::new();
    Paper {
        doubts,
        ..head.paper()
    }
    .into()
}

/// Whether a step of a row is for the conductor of a leg.
fn applies(step: &OwnStep, leg: &LegInputs<'_>) -> bool {
    step.metals.is_empty() || step.metals.contains(&leg.leg.cable.conductor.metal)
}

/// Parts of a leg with the stage at which each comes on.
fn heads<'i>(inputs: &'i Inputs<'_>, leg: &'i LegInputs<'_>) -> Vec<(&'i Head, Stage)> {
    let chosen = &leg.chosen;
    let pushed = comings(inputs, leg)
        .into_iter()
        .find(|coming| coming.part == PartKind::Adapter && coming.stage == Stage::PushOn);
    let of_adapter = pushed.map_or(Stage::Place, |coming| coming.stage);
    let order = inputs.order;
    let bus = order
        .job
        .bus
        .as_deref()
        .and_then(|id| order.catalogue.bus(id));
    let consumables = leg
        .leg
        .parts
        .consumables
        .iter()
        .filter_map(|id| order.catalogue.consumable(id));
    [
        chosen.body.map(|p| (&p.head, Stage::Place)),
        chosen.adapter.map(|p| (&p.head, of_adapter)),
        chosen.connector.map(|p| (&p.head, Stage::Connect)),
        chosen.shield_part.map(|p| (&p.head, Stage::Bond)),
        chosen.seal.map(|p| (&p.head, Stage::Seal)),
        bus.map(|p| (&p.head, Stage::Mate)),
    ]
    .into_iter()
    .flatten()
    // A consumable is used where other papers say so; without steps of its own it has no stage.
    .chain(
        consumables
            .filter(|c| !c.head.steps.is_empty())
            .map(|c| (&c.head, Stage::Clean)),
    )
    .collect()
}

/// Steps of all rows, each with its leg: rows in order, and the steps of a row in the row's own order.
pub(super) fn own_steps(inputs: &Inputs<'_>) -> Vec<(StagedLine, String)> {
    let mut own = Vec::new();
    for leg in &inputs.legs {
        for (head, comes_on) in heads(inputs, leg) {
            let lines = row_lines(head, comes_on, leg);
            own.extend(lines.into_iter().map(|line| (line, leg.leg.id.clone())));
        }
    }
    own
}

fn row_lines(head: &Head, comes_on: Stage, leg: &LegInputs<'_>) -> Vec<StagedLine> {
    let numbers: BTreeMap<&str, usize> = head
        .steps
        .iter()
        .enumerate()
        .filter_map(|(at, step)| Some((step.id.as_deref()?, at)))
        .collect();
    let before = |step: &OwnStep| -> Vec<usize> {
        step.after
            .iter()
            .filter_map(|id| numbers.get(id.as_str()).copied())
            .collect()
    };
    let mut lines: Vec<StagedLine> = Vec::new();
    while lines.len() < head.steps.len() {
        let is_done = |at: usize| lines.iter().any(|l| l.row.1 == at);
        let next = head
            .steps
            .iter()
            .enumerate()
            .find(|(at, step)| !is_done(*at) && before(step).into_iter().all(is_done));
        // Steps of a row that wait for each other are complained of where the row is read.
        let Some((at, step)) = next else { break };
        lines.push(StagedLine {
            applies: applies(step, leg),
            ..staged(head, at, step, before(step), comes_on)
        });
    }
    lines
}

fn staged(
    head: &Head,
    at: usize,
    step: &OwnStep,
    after: Vec<usize>,
    comes_on: Stage,
) -> StagedLine {
    let line = |say: &str| Line {
        say: say.into(),
        source: paper(head),
    };
    StagedLine {
        row: (head.id.clone(), at),
        stage: step.stage.unwrap_or(comes_on),
        after,
        // The paper's own words, kept apart from ours.
        line: line(&step.say),
        caution: step.caution.as_deref().map(line),
        hold: step.hold,
        applies: true,
    }
}
