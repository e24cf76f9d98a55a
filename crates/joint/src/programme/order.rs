//! Order: which step waits for which, and one order that keeps to all of it.
//!
//! Three kinds of edges, in order of rank: preconditions, which always hold; the order of steps in a part's own row; the usual order of a leg's stages, unless another edge contradicts it.

use super::Step;
use super::bridge::BridgeWord;
use super::part_steps::StagedLine;
use crate::catalogue::BridgeMoment;
use crate::said::UnsettledSaid;
use crate::stage::Stage;

/// Legs over which a step waits for another.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Over {
    /// Its own legs.
    Own,
    /// All legs of the joint.
    All,
    /// All legs if one body holds the joint, else its own.
    Body,
}

/// Preconditions between stages: stage, legs, and the stages that come before it.
const WAITS_FOR: &[(Stage, Over, &[Stage])] = &[
    (Stage::Measure, Over::All, &[Stage::HandOver]),
    (Stage::Square, Over::Own, &[Stage::Measure]),
    (Stage::MarkOut, Over::Own, &[Stage::Square]),
    (Stage::SlideOn, Over::Own, &[Stage::Square]),
    (Stage::Jacket, Over::Own, &[Stage::MarkOut]),
    // Every leg is compared with its ranges before the first leg is cut.
    (Stage::Jacket, Over::All, &[Stage::Measure]),
    (Stage::Bridge, Over::Own, &[Stage::Jacket]),
    (Stage::Shield, Over::Own, &[Stage::Bridge]),
    (Stage::Screen, Over::Own, &[Stage::Shield]),
    (Stage::Insulation, Over::Own, &[Stage::Shield]),
    (Stage::Phasing, Over::Own, &[Stage::Measure]),
    (Stage::Connect, Over::Own, &[Stage::Insulation]),
    // All parts that go over are on, and every phase is known, before a joint of one body is closed anywhere.
    (
        Stage::Connect,
        Over::Body,
        &[Stage::SlideOn, Stage::PushOn, Stage::Phasing],
    ),
    (
        Stage::Clean,
        Over::Own,
        &[Stage::Screen, Stage::Insulation, Stage::SlideOn],
    ),
    (Stage::PushOn, Over::Own, &[Stage::Clean]),
    (
        Stage::Place,
        Over::Own,
        &[Stage::Connect, Stage::Clean, Stage::PushOn],
    ),
    (Stage::Mate, Over::Own, &[Stage::Place]),
    (Stage::Mate, Over::All, &[Stage::Phasing]),
    // Both sides are connected before the piece across the joint is bonded, measured or sealed.
    (
        Stage::Bond,
        Over::All,
        &[Stage::Connect, Stage::Place, Stage::Mate],
    ),
    (Stage::BondCheck, Over::All, &[Stage::Bond]),
    (Stage::BridgeOff, Over::All, &[Stage::Bond]),
    (
        Stage::Seal,
        Over::All,
        &[Stage::Bond, Stage::BondCheck, Stage::BridgeOff],
    ),
    (Stage::HandBack, Over::All, &[Stage::Seal]),
];

/// Edges between steps as pairs of their places in the list: before, after.
pub(super) fn edges(
    steps: &[Step],
    own: &[(StagedLine, String)],
    bridge: &BridgeWord,
    unsettled: &mut Vec<UnsettledSaid>,
) -> Vec<(usize, usize)> {
    let mut edges = preconditions(steps);
    edges.extend(bridge_edge(steps, bridge));
    for (before, after, line) in own_edges(steps, own) {
        if before == after || edges.contains(&(before, after)) {
            continue;
        }
        if reaches(&edges, after, before) {
            let sentence = UnsettledSaid::OwnOrder {
                row: line.row.0.clone(),
                before: steps[before].title.clone().into(),
                after: steps[after].title.clone().into(),
            };
            if !unsettled.contains(&sentence) {
                unsettled.push(sentence);
            }
        } else {
            edges.push((before, after));
        }
    }
    for (before, after) in usual(steps) {
        if !reaches(&edges, after, before) && !reaches(&edges, before, after) {
            edges.push((before, after));
        }
    }
    edges
}

/// Whether two steps have a leg in common, or one step is for the whole joint.
fn share_a_leg(one: &Step, other: &Step) -> bool {
    one.legs.is_empty() || other.legs.is_empty() || one.legs.iter().any(|l| other.legs.contains(l))
}

fn preconditions(steps: &[Step]) -> Vec<(usize, usize)> {
    let is_separable = steps.iter().any(|s| s.stage == Stage::Mate);
    let mut edges = Vec::new();
    for (after, step) in steps.iter().enumerate() {
        for (before, earlier) in steps.iter().enumerate() {
            let is_over = |over: Over| match over {
                Over::All => true,
                Over::Body if !is_separable => true,
                Over::Body | Over::Own => share_a_leg(step, earlier),
            };
            let waits = WAITS_FOR.iter().any(|(stage, over, first)| {
                *stage == step.stage && first.contains(&earlier.stage) && is_over(*over)
            });
            if waits {
                edges.push((before, after));
            }
        }
    }
    edges
}

/// Edge between the measured bond and the removed bridge; `None` if nobody states their order.
fn bridge_edge(steps: &[Step], bridge: &BridgeWord) -> Option<(usize, usize)> {
    let place = |stage: Stage| steps.iter().position(|s| s.stage == stage);
    let (check, off) = (place(Stage::BondCheck)?, place(Stage::BridgeOff)?);
    match bridge {
        BridgeWord::Said(BridgeMoment::AfterBondIsMeasured, _) => Some((check, off)),
        BridgeWord::Said(BridgeMoment::BeforeBondIsMeasured, _) => Some((off, check)),
        // The usual order keeps the bridge on; the step asks.
        BridgeWord::Ask(_) => None,
    }
}

/// Step of a stage on a leg; if a joint has no such stage, the next step before it, and for a pushed-on part the placing of the body.
pub(super) fn node_of(steps: &[Step], stage: Stage, leg: &str) -> Option<usize> {
    let on_leg =
        |at: &usize| steps[*at].legs.is_empty() || steps[*at].legs.iter().any(|l| l == leg);
    let has = |stage: Stage| (0..steps.len()).any(|at| on_leg(&at) && steps[at].stage == stage);
    let stage = match stage {
        Stage::PushOn if !has(Stage::PushOn) => Stage::Place,
        stage => stage,
    };
    (0..steps.len())
        .filter(on_leg)
        .filter(|at| steps[*at].stage <= stage)
        .max_by_key(|at| steps[*at].stage)
}

/// Edges that the rows' own steps ask for, each with the step that asks.
fn own_edges<'o>(
    steps: &[Step],
    own: &'o [(StagedLine, String)],
) -> Vec<(usize, usize, &'o StagedLine)> {
    let mut edges = Vec::new();
    for (line, leg) in own {
        let earlier = own.iter().filter(|(other, of)| {
            of == leg && other.row.0 == line.row.0 && line.after.contains(&other.row.1)
        });
        for (other, _) in earlier {
            if let (Some(before), Some(after)) = (
                node_of(steps, other.stage, leg),
                node_of(steps, line.stage, leg),
            ) {
                edges.push((before, after, line));
            }
        }
    }
    edges
}

/// Usual order: each step of a leg after the step with the next earlier stage of that leg.
fn usual(steps: &[Step]) -> Vec<(usize, usize)> {
    let mut edges = Vec::new();
    for (after, step) in steps.iter().enumerate() {
        for leg in &step.legs {
            let earlier = (0..steps.len())
                .filter(|at| steps[*at].legs.contains(leg) && steps[*at].stage < step.stage)
                .max_by_key(|at| steps[*at].stage);
            edges.extend(earlier.map(|before| (before, after)));
        }
    }
    edges
}

/// Whether a chain of edges leads from one step to another.
fn reaches(edges: &[(usize, usize)], from: usize, to: usize) -> bool {
    let mut seen = vec![from];
    let mut open = vec![from];
    while let Some(at) = open.pop() {
        for (before, after) in edges {
            if *before == at && !seen.contains(after) {
                seen.push(*after);
                open.push(*after);
            }
        }
    }
    from != to && seen.contains(&to)
}

/// One order that keeps to all edges: the whole joint and every measuring first, then leg by leg.
pub(super) fn sorted(steps: &[Step], edges: &[(usize, usize)]) -> Vec<usize> {
    let rank = |at: usize| {
        let step = &steps[at];
        let part = match step.stage {
            Stage::HandOver | Stage::Measure => 0,
            Stage::HandBack => 2,
            _ => 1,
        };
        // A step of several legs belongs to the last of them.
        (part, step.legs.last().cloned(), step.stage, at)
    };
    let mut done: Vec<usize> = Vec::new();
    while done.len() < steps.len() {
        let ready = (0..steps.len()).filter(|at| {
            !done.contains(at)
                && edges
                    .iter()
                    .all(|(before, after)| after != at || done.contains(before))
        });
        let next = ready.min_by_key(|at| rank(*at));
        // Edges never form a cycle: an edge is added only if no chain leads back.
        assert!(next.is_some(), "some step is always ready");
        done.extend(next);
    }
    done
}
