//! Order: which step waits for which, and one order that keeps to all of it.
//!
//! Three kinds of edges, in this rank: preconditions, which always hold; the order of steps that a part's own row gives; the usual order of the stages of a leg, where nothing else speaks against it.

use super::Step;
use super::line::StagedLine;
use crate::stage::Stage;

/// Preconditions between stages of one leg: stage, stages that come before it.
const WAITS_FOR: &[(Stage, &[Stage])] = &[
    (Stage::Measure, &[Stage::HandOver]),
    (Stage::Square, &[Stage::Measure]),
    (Stage::MarkOut, &[Stage::Square]),
    (Stage::SlideOn, &[Stage::Square]),
    (Stage::Jacket, &[Stage::MarkOut]),
    (Stage::Bridge, &[Stage::Jacket]),
    (Stage::Shield, &[Stage::Bridge]),
    (Stage::Screen, &[Stage::Shield]),
    (Stage::Insulation, &[Stage::Shield]),
    (Stage::Connect, &[Stage::SlideOn, Stage::Insulation]),
    (
        Stage::Clean,
        &[Stage::Screen, Stage::Insulation, Stage::SlideOn],
    ),
    (Stage::Place, &[Stage::Connect, Stage::Clean]),
    (Stage::Mate, &[Stage::Place]),
    (Stage::Bond, &[Stage::Place, Stage::Mate]),
    (Stage::Seal, &[Stage::Bond]),
    (Stage::HandBack, &[Stage::Seal]),
];

/// Edges between steps by their places in the list: before, after.
pub(super) fn edges(
    steps: &[Step],
    own: &[(StagedLine, String)],
    unsettled: &mut Vec<String>,
) -> Vec<(usize, usize)> {
    let mut edges = preconditions(steps);
    for (before, after, line) in own_edges(steps, own) {
        if before == after || edges.contains(&(before, after)) {
            continue;
        }
        if reaches(&edges, after, before) {
            let sentence = format!(
                "{} wants `{}` before `{}`, against the order that joints need; settle it with its instructions in hand.",
                line.row.0, steps[before].title, steps[after].title
            );
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

/// Whether two steps have a leg in common, or one is for the whole joint.
fn share_a_leg(one: &Step, other: &Step) -> bool {
    one.legs.is_empty() || other.legs.is_empty() || one.legs.iter().any(|l| other.legs.contains(l))
}

fn preconditions(steps: &[Step]) -> Vec<(usize, usize)> {
    let mut edges = Vec::new();
    for (after, step) in steps.iter().enumerate() {
        for (before, earlier) in steps.iter().enumerate() {
            let waits = WAITS_FOR
                .iter()
                .any(|(stage, first)| *stage == step.stage && first.contains(&earlier.stage));
            // Every leg is compared with its ranges before the first is cut, and all is slid on before
            // a joint of one body is closed anywhere.
            let for_all = (step.stage == Stage::Jacket && earlier.stage == Stage::Measure)
                || (step.stage == Stage::Connect
                    && earlier.stage == Stage::SlideOn
                    && steps.iter().all(|s| s.stage != Stage::Mate));
            if (waits && share_a_leg(step, earlier)) || for_all {
                edges.push((before, after));
            }
        }
    }
    edges
}

/// Step of a stage on a leg; where a joint has no such stage, the one that comes next before it.
pub(super) fn node_of(steps: &[Step], stage: Stage, leg: &str) -> Option<usize> {
    let on_leg =
        |at: &usize| steps[*at].legs.is_empty() || steps[*at].legs.iter().any(|l| l == leg);
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

/// The usual order: each step of a leg after the step of that leg whose stage comes next before its own.
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

/// Whether a way of edges leads from one step to another.
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
        // Edges never close a ring: each is added only where no way leads back.
        assert!(next.is_some(), "some step is always ready");
        done.extend(next);
    }
    done
}
