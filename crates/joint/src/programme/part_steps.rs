//! Part steps: the steps of the parts' own rows, each at its stage and in the row's own order.

use super::coming::comings;
use super::line::{Line, paper};
use crate::catalogue::{Head, InstructionStep, PartKind};
use crate::checks::{Inputs, LegInputs};
use crate::stage::Stage;
use std::collections::BTreeMap;

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
    let before = |step: &InstructionStep| -> Vec<usize> {
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
    step: &InstructionStep,
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

/// Whether a step of a row is for the conductor of a leg.
pub(super) fn applies(step: &InstructionStep, leg: &LegInputs<'_>) -> bool {
    step.metals.is_empty() || step.metals.contains(&leg.leg.cable.conductor.metal)
}

/// Parts of a leg with the stage at which each comes on.
pub(super) fn heads<'i>(inputs: &'i Inputs<'_>, leg: &'i LegInputs<'_>) -> Vec<(&'i Head, Stage)> {
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
