//! General steps: the programme's own sentences at a stage, and the paper to read if a part's row has no step.

use super::adapter;
use super::coming::comings;
use super::edge::shield_edge;
use super::line::{Line, common, paper};
use super::part_steps::{applies, heads};
use super::{bridge, square_cut};
use crate::catalogue::{Consumable, Head, MayMove};
use crate::checks::{Inputs, LegInputs};
use crate::cutback::Growth;
use crate::plane::Plane;
use crate::said::StepSaid;
use crate::stage::Stage;

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
                .flat_map(|leg| square_cut::lines(inputs, leg))
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
