//! Line: what the parts' own papers say of a stage, and what the programme says of its own.

use super::adapter;
use super::coming::comings;
use super::edge::shield_edge;
use super::{COMMON_PRACTICE, bridge, square};
use crate::cable::{Layer, Words};
use crate::catalogue::{Consumable, Head, MayMove, PartKind, Step as OwnStep};
use crate::checks::{Inputs, LegInputs};
use crate::cutback::Growth;
use crate::stage::Stage;
use jointwright_units::Length;
use std::collections::BTreeMap;

/// A sentence with its source.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// What it says.
    pub say: String,
    /// On whose word.
    pub source: String,
}

/// A step of a part's own row, with the stage at which it stands.
#[derive(Clone, Debug)]
pub(super) struct StagedLine {
    /// Row and number of the step in it.
    pub row: (String, usize),
    /// Stage.
    pub stage: Stage,
    /// Numbers, in the same row, of the steps before it.
    pub after: Vec<usize>,
    pub line: Line,
    pub caution: Option<Line>,
    pub hold: bool,
    /// Whether it is for the conductor of its leg.
    pub applies: bool,
}

/// What a stage is called before a crew.
pub(super) fn title(stage: Stage, legs: &[&LegInputs<'_>], words: Words) -> String {
    let name = |layer: Layer| layer.name(words);
    match stage {
        Stage::HandOver => "Hand-over of the place and the cables".to_owned(),
        Stage::Measure => "Measure the cable and compare it with the ranges".to_owned(),
        Stage::Square => "Straighten, rack, and cut the conductor end square".to_owned(),
        Stage::MarkOut => "Set off every mark from the square-cut conductor end".to_owned(),
        Stage::SlideOn => "Slide on and park all that must go over this end".to_owned(),
        Stage::Jacket => format!("Cut the {}", name(Layer::Jacket)),
        Stage::Bridge => format!("Bridge the {}", name(Layer::MetallicShield)),
        Stage::Shield => {
            let act = legs
                .first()
                .map_or("cut or lay back", |leg| shield_edge(leg).act());
            capital(&format!("{act} the {}", name(Layer::MetallicShield)))
        }
        Stage::Screen => format!("Cut and take off the {}", name(Layer::InsulationScreen)),
        Stage::Insulation => "Cut and take off the insulation".to_owned(),
        Stage::Phasing => "Check each phase against the far end".to_owned(),
        Stage::Connect => "Make the connector".to_owned(),
        Stage::Clean => "Smooth and clean the insulation".to_owned(),
        Stage::PushOn => "Push onto the clean end what cannot be parked over the jacket".to_owned(),
        Stage::Place => "Bring the body to its place".to_owned(),
        Stage::Mate => "Plug the leg to its port".to_owned(),
        Stage::Bond => format!("Restore and bond the {}", name(Layer::MetallicShield)),
        Stage::BondCheck => format!(
            "Measure the permanent bond of the {}",
            name(Layer::MetallicShield)
        ),
        Stage::BridgeOff => format!("Take off the bridge of the {}", name(Layer::MetallicShield)),
        Stage::Seal => format!("Restore the {} and seal", name(Layer::Jacket)),
        Stage::HandBack => "Support, trials, hand-back and record".to_owned(),
    }
}

/// A length as a crew reads it: inches where it is a whole number of sixty-fourths and the page has inches, with millimetres to hundredths.
pub(super) fn length_text(length: Length, words: Words) -> String {
    let mm = format!("{:.2}", length.mm());
    let mm = format!("{} mm", mm.trim_end_matches('0').trim_end_matches('.'));
    match length.exact_inch().filter(|_| words == Words::Us) {
        Some(inch) if length > Length::ZERO => format!("{inch} ({mm})"),
        _ => mm,
    }
}

/// Text with its first letter large.
pub(super) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters
        .next()
        .map(|first| first.to_uppercase().chain(letters).collect())
        .unwrap_or_default()
}

/// What the programme says of its own at a stage; where a part comes on and its row has no step, where to look.
pub(super) fn house(inputs: &Inputs<'_>, stage: Stage, legs: &[&LegInputs<'_>]) -> Vec<Line> {
    let words = inputs.order.job.words;
    let mut lines: Vec<Line> = usual(inputs, stage, legs)
        .into_iter()
        .map(|say| Line {
            say,
            source: COMMON_PRACTICE.to_owned(),
        })
        .collect();
    match stage {
        Stage::Square => lines.extend(
            legs.iter()
                .flat_map(|leg| square::lines(inputs, leg, Layer::MetallicShield.name(words)))
                .chain([moisture(words)]),
        ),
        Stage::Shield => lines.extend(legs.iter().filter_map(|leg| kept(leg, words))),
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

/// What is common practice at a stage, no source.
fn usual(inputs: &Inputs<'_>, stage: Stage, legs: &[&LegInputs<'_>]) -> Vec<String> {
    let words = inputs.order.job.words;
    let grows = legs
        .iter()
        .any(|leg| leg.chosen.connector.is_none_or(|c| c.grows()));
    let own = |texts: &[&str]| texts.iter().map(|s| (*s).to_owned()).collect();
    match stage {
        Stage::HandOver => own(&[
            "Isolation, identification, proving, grounding or earthing, air and access: by the persons named for it, under local codes and the owner's rules, and recorded by them. This paper says nothing about any of it.",
        ]),
        Stage::Measure => vec![
            "Over each layer where it is bare: on a piece stripped from the end of this same cable, and again when the layer is bared.".to_owned(),
            format!(
                "Look at the {} all around where the seal will lie, and write down how it is.",
                Layer::Jacket.name(words)
            ),
        ],
        // Here, before the first cut, and again where the cut itself stands.
        Stage::Square => legs
            .iter()
            .filter_map(|leg| growth(leg, words))
            .chain([format!(
                "Before the cut: write leg and phase on the {} that stays, beyond where the seal will end; the second person reads it back.",
                Layer::Jacket.name(words)
            )])
            .collect(),
        Stage::MarkOut => vec![format!(
            "From the front page or the marking strip: the outermost cut first, the others from the same end as each layer is bare, body and seal marks where they stay. All before the connector is made{}.",
            if grows { ", for pressing moves the end" } else { "" }
        )],
        Stage::Phasing => own(&[
            "By the persons and the method that the owner names; this paper says nothing about which cable is which. Write down, phase by phase, what is found here and at the far end. Unlike or in doubt: join nothing, stop and call.",
        ]),
        Stage::SlideOn if inputs.legs.len() > 1 => own(&[
            "Now at the latest, in this order, each clean and the right way round; the second person reads the list back. What does not go over what lies under it is not forced: its instructions say when it comes on.",
        ]),
        Stage::Insulation => legs.iter().filter_map(|leg| growth(leg, words)).collect(),
        Stage::Clean => vec![format!(
            "Each wipe from the conductor end toward the {}, never back; one wipe a stroke, with a clean face of the cloth. Abrasive that does not conduct, never emery, and none on the {0}.",
            Layer::InsulationScreen.name(words)
        )],
        Stage::PushOn => own(&["In this order, each clean and the right way round, greased as its instructions say."]),
        Stage::Place if is_cleaned_early(inputs, legs) => own(&[
            "Cleaned before the connector was made: look at the insulation again, and wipe it again as the instructions say, before anything closes over it.",
        ]),
        Stage::HandBack => own(&[
            "Trials, switching in and the release of the place: decided and recorded by the persons named for it.",
        ]),
        _ => Vec::new(),
    }
}

/// Whether a leg is cleaned before its connector is made, for something is pushed onto it first.
fn is_cleaned_early(inputs: &Inputs<'_>, legs: &[&LegInputs<'_>]) -> bool {
    legs.iter()
        .flat_map(|leg| comings(inputs, leg))
        .any(|coming| coming.stage == Stage::PushOn)
}

/// That a cut waits for the growth of the sleeve: only where its front page shows a growth ladder for it.
fn growth(leg: &LegInputs<'_>, words: Words) -> Option<String> {
    let waiting: Vec<String> = leg
        .cutback
        .cuts
        .iter()
        .filter(|cut| !cut.ladder.is_empty())
        .map(|cut| cut.plane.words(words))
        .collect();
    let is_unknown = matches!(leg.cutback.growth, Growth::Unknown(_));
    (is_unknown && !waiting.is_empty()).then(|| {
        format!(
            "Leg {}: the growth of the connector is not measured, so the {} has no place yet. Before anything is cut, press one trial connector with this tool and die, write its growth into the job and plan again; the growth ladder on the front page shows where each growth would put it, and between two of its lines nothing is known.",
            leg.leg.id,
            waiting.join(" and the ")
        )
    })
}

/// The tests for moisture, after the cut.
fn moisture(words: Words) -> Line {
    Line {
        say: format!(
            "After the cut: test the strands for moisture, and under the {} once it is bare, as the owner's rules say; write down who found what. Wet: stop and call.",
            Layer::MetallicShield.name(words)
        ),
        source: COMMON_PRACTICE.to_owned(),
    }
}

/// A bond that is measured with the bridge beside it shows both.
fn beside(inputs: &Inputs<'_>) -> Option<Line> {
    (!bridge::is_off_before_the_reading(inputs)).then(|| Line {
        say: "The bridge lies beside the bond: a reading across both does not show the bond alone, and an open bond reads as good. Leave the bridge's path out of the reading, as the owner's rules say; where that cannot be done, write \"bridge on\" and call.".to_owned(),
        source: COMMON_PRACTICE.to_owned(),
    })
}

/// For how long a part may still be moved, with room to write when it was placed.
fn may_move(inputs: &Inputs<'_>, leg: &LegInputs<'_>, stage: Stage) -> Vec<Line> {
    let chosen = &leg.chosen;
    let body = chosen.body.filter(|_| stage == Stage::Place);
    let body = body.map(|p| (&p.head, p.may_move.as_ref()));
    let is_here = adapter::placed_at(inputs, leg) == Some(stage);
    let adapter = chosen.adapter.filter(|_| is_here);
    let adapter = adapter.map(|p| (&p.head, p.may_move.as_ref()));
    let of = |(head, may_move): (&Head, Option<&MayMove>)| match may_move? {
        MayMove::WithinMinutes(minutes) => Some(Line {
            say: format!(
                "Leg {}: {} may be moved for {minutes} minutes once it is placed, then no more. Placed at ____:____",
                leg.leg.id, head.id
            ),
            source: paper(head),
        }),
        _ => None,
    };
    adapter.into_iter().chain(body).filter_map(of).collect()
}

/// How much of a shield that is laid back is kept.
fn kept(leg: &LegInputs<'_>, words: Words) -> Option<Line> {
    let edge = shield_edge(leg);
    Some(Line {
        say: format!("Leg {}: {}.", leg.leg.id, edge.keeps(words)?),
        source: edge.source,
    })
}

/// With what the insulation is smoothed: as the paper has it, else asked for.
fn abrasive(leg: &LegInputs<'_>) -> Option<Line> {
    let body = leg.chosen.body?;
    Some(match &body.abrasive {
        Some(abrasive) => Line {
            say: format!("Abrasive: {abrasive}."),
            source: paper(&body.head),
        },
        None => Line {
            say: format!(
                "Abrasive and grit: the row {} states none; look it up in its paper, or ask, before any is used.",
                body.head.id
            ),
            source: COMMON_PRACTICE.to_owned(),
        },
    })
}

/// What is named to clean the conductor of a leg, where its row has no step that says so.
fn brushes(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Line> {
    let (id, metal) = (&leg.leg.id, leg.leg.cable.conductor.metal);
    let names = leg.leg.parts.consumables.iter();
    let named = names.filter_map(|name| inputs.order.catalogue.consumable(name));
    let is_brush = |part: &&Consumable| part.metals.contains(&metal) && part.head.steps.is_empty();
    let line = |part: &Consumable| Line {
        say: format!(
            "Leg {id}: for its conductor, which is {}, {} is named, one that has touched no other metal; when and how, as the connector's instructions say.",
            metal.name(inputs.order.job.words),
            part.head.id
        ),
        source: paper(&part.head),
    };
    named.filter(is_brush).map(line).collect()
}

/// For parts that come on at this stage and whose rows have no step of it: where to look.
fn silent(inputs: &Inputs<'_>, stage: Stage, legs: &[&LegInputs<'_>]) -> Vec<Line> {
    let mut lines = Vec::new();
    for leg in legs {
        for (head, comes_on) in heads(inputs, leg) {
            let line = Line {
                say: format!("{}: see the instructions.", head.id),
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

/// Paper of a part.
pub(super) fn paper(head: &Head) -> String {
    format!(
        "{} revision {}",
        head.instructions.paper, head.instructions.revision
    )
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
    // A consumable is used where other papers say; without steps of its own it has no stage.
    .chain(
        consumables
            .filter(|c| !c.head.steps.is_empty())
            .map(|c| (&c.head, Stage::Clean)),
    )
    .collect()
}

/// The steps of all rows with the leg whose part it is, rows in order and steps of a row in an order that keeps to its own.
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
        // A row whose steps wait for each other is complained of where it is read.
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
        say: say.to_owned(),
        source: paper(head),
    };
    StagedLine {
        row: (head.id.clone(), at),
        stage: step.stage.unwrap_or(comes_on),
        after,
        // The paper's own words, told apart from ours.
        line: line(&step.say),
        caution: step.caution.as_deref().map(line),
        hold: step.hold,
        applies: true,
    }
}
