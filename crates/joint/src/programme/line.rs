//! Line: what the parts' own papers say of a stage, and what the programme says of its own.

use super::COMMON_PRACTICE;
use crate::cable::{Layer, Words};
use crate::catalogue::{Head, Step as OwnStep};
use crate::checks::{Inputs, LegInputs};
use crate::cutback::Growth;
use crate::stage::Stage;
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
}

/// What a stage is called before a crew.
pub(super) fn title(stage: Stage, words: Words) -> String {
    let name = |layer: Layer| layer.name(words);
    match stage {
        Stage::HandOver => "Hand-over of the place and the cables".to_owned(),
        Stage::Measure => "Measure the cable and compare it with the ranges".to_owned(),
        Stage::Square => "Straighten, rack, and cut the conductor end square".to_owned(),
        Stage::MarkOut => "Set off every mark from the square-cut conductor end".to_owned(),
        Stage::SlideOn => "Slide on and park all that must go over this end".to_owned(),
        Stage::Jacket => format!("Cut the {}", name(Layer::Jacket)),
        Stage::Bridge => format!("Bridge the {}", name(Layer::MetallicShield)),
        Stage::Shield => format!("Cut or lay back the {}", name(Layer::MetallicShield)),
        Stage::Screen => format!("Cut and take off the {}", name(Layer::InsulationScreen)),
        Stage::Insulation => "Cut and take off the insulation".to_owned(),
        Stage::Connect => "Make the connector".to_owned(),
        Stage::Clean => "Smooth and clean the insulation".to_owned(),
        Stage::Place => "Bring the body to its place".to_owned(),
        Stage::Mate => "Plug the leg to its port".to_owned(),
        Stage::Bond => format!("Restore and bond the {}", name(Layer::MetallicShield)),
        Stage::Seal => format!("Restore the {} and seal", name(Layer::Jacket)),
        Stage::HandBack => "Support, trials, hand-back and record".to_owned(),
    }
}

/// What the programme says of its own at a stage; where a part comes on and its row has no step, where to look.
pub(super) fn house(inputs: &Inputs<'_>, stage: Stage, legs: &[&LegInputs<'_>]) -> Vec<Line> {
    let mut said: Vec<String> = match stage {
        Stage::HandOver => vec![
            "Isolation, identification, proving, grounding or earthing, air and access: by the persons named for it, under local codes and the owner's rules, and recorded by them. This paper says nothing about any of it.".to_owned(),
        ],
        Stage::Measure => vec![
            "Over each layer where it is bare: on a piece stripped from the end of this same cable, and again when the layer is bared.".to_owned(),
            format!(
                "Look at the {} all around where the seal will lie, and write down how it is.",
                Layer::Jacket.name(inputs.order.job.words)
            ),
        ],
        Stage::Square => vec![
            format!(
                "Test the strands for moisture, and under the {} once it is bare, as the owner's rules say; write down who found what. Wet: stop and call.",
                Layer::MetallicShield.name(inputs.order.job.words)
            ),
        ],
        Stage::MarkOut => vec![
            "From the front page or the marking strip: the outermost cut first, the others from the same end as each layer is bare, body and seal marks where they stay. All before the connector is made, for making it moves the end.".to_owned(),
        ],
        Stage::SlideOn if inputs.legs.len() > 1 => vec![
            "Now at the latest, in this order, each clean and the right way round; the second person reads the list back. What does not go over what lies under it is not forced: its instructions say when it comes on.".to_owned(),
        ],
        Stage::HandBack => vec![
            "Trials, switching in and the release of the place: decided and recorded by the persons named for it.".to_owned(),
        ],
        _ => Vec::new(),
    };
    if stage == Stage::Insulation {
        said.extend(legs.iter().filter_map(|leg| growth(leg)));
    }
    let mut lines: Vec<Line> = said
        .into_iter()
        .map(|say| Line {
            say,
            source: COMMON_PRACTICE.to_owned(),
        })
        .collect();
    lines.extend(silent(inputs, stage, legs));
    lines
}

/// That a cut waits for the growth of the sleeve.
fn growth(leg: &LegInputs<'_>) -> Option<String> {
    match leg.cutback.growth {
        Growth::Unknown(_) => Some(format!(
            "Leg {}: the growth of the connector is not measured. Press one trial connector with this tool and die first, and take the cut from the growth ladder.",
            leg.leg.id
        )),
        _ => None,
    }
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
                .any(|step| step.stage.unwrap_or(comes_on) == stage);
            if comes_on == stage && !has_own && !lines.contains(&line) {
                lines.push(line);
            }
        }
    }
    lines
}

/// Paper of a part.
fn paper(head: &Head) -> String {
    format!(
        "{} revision {}",
        head.instructions.paper, head.instructions.revision
    )
}

/// Parts of a leg with the stage at which each comes on.
fn heads<'i>(inputs: &'i Inputs<'_>, leg: &'i LegInputs<'_>) -> Vec<(&'i Head, Stage)> {
    let chosen = &leg.chosen;
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
        chosen.adapter.map(|p| (&p.head, Stage::Place)),
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
            let lines = row_lines(head, comes_on);
            own.extend(lines.into_iter().map(|line| (line, leg.leg.id.clone())));
        }
    }
    own
}

fn row_lines(head: &Head, comes_on: Stage) -> Vec<StagedLine> {
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
        lines.push(staged(head, at, step, before(step), comes_on));
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
        line: line(&step.say),
        caution: step.caution.as_deref().map(line),
        hold: step.hold,
    }
}
