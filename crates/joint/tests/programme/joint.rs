//! The order belongs to the joint: joints of two to six legs, and the parts that cross them.
//!
//! All orders of six legs are too many to walk.
//! A step stands before another in every order exactly if a chain of `after` leads from one to the other; this is tried on small sets of steps, all of whose orders are walked.

use super::{explore, forbidden, order_of, planned};
use jointwright_joint::job::{JointKind, Leg, Order};
use jointwright_joint::plan::StepDoc;
use jointwright_joint::stage::Stage;
use proptest::prelude::*;
use std::collections::BTreeSet;

/// For each step, all steps from which a chain of `after` leads to it.
pub(super) fn ancestors(steps: &[StepDoc]) -> Vec<BTreeSet<usize>> {
    let place = |id: &String| steps.iter().position(|s| s.id == *id);
    let waits: Vec<Vec<usize>> = steps
        .iter()
        .map(|step| {
            let at = |id| place(id).unwrap_or_else(|| panic!("{id} is no step"));
            step.after.iter().map(at).collect()
        })
        .collect();
    ways(&waits)
}

fn ways(waits: &[Vec<usize>]) -> Vec<BTreeSet<usize>> {
    (0..waits.len())
        .map(|step| {
            let (mut seen, mut open) = (BTreeSet::new(), waits[step].clone());
            while let Some(at) = open.pop() {
                if seen.insert(at) {
                    open.extend(&waits[at]);
                }
            }
            seen
        })
        .collect()
}

/// First precondition that some order of these steps breaks, found by chains of `after` alone.
pub(super) fn broken(steps: &[StepDoc], kind: JointKind) -> Option<String> {
    let before = ancestors(steps);
    for (later, step) in steps.iter().enumerate() {
        assert!(
            !before[later].contains(&later),
            "{} waits for itself",
            step.id
        );
        for (earlier, other) in steps.iter().enumerate() {
            if earlier == later || before[later].contains(&earlier) {
                continue;
            }
            if let Some(why) = forbidden(kind, step, other) {
                return Some(format!("{} before {}: {why}", step.id, other.id));
            }
        }
    }
    None
}

/// A joint like this one with a given number of legs.
pub(super) fn with_legs(case: &str, n: usize) -> Order {
    let mut order = order_of(case);
    let first = order.job.legs[0].clone();
    let more = (order.job.legs.len()..n).map(|at| Leg {
        id: format!("L{at}"),
        port: first.port.map(|_| at as i64 + 1),
        parks: false,
        ..first.clone()
    });
    order.job.legs.extend(more.collect::<Vec<_>>());
    order.job.legs.truncate(n);
    order.job.blanks.clear();
    if order.job.kind != JointKind::Separable && order.job.legs.iter().all(|l| !l.parks) {
        order.job.legs[0].parks = true;
    }
    order
}

/// Joints of two to six legs, each with its number of legs.
fn joints() -> impl Iterator<Item = (usize, Order)> {
    let straight = [
        "straight-wires-growth-measured",
        "straight-tape-growth-unknown",
        "dock-straight-pressed",
    ];
    let branch = ["branch-wires-kit-past-its-date", "branch-tape-slack-short"];
    let separable = [
        "larkspur-three-way",
        "four-way-tape-confirmed-by-the-owner",
        "three-way-wires-adapter-on-two-legs",
    ];
    let many = |cases: &'static [&'static str], legs: std::ops::RangeInclusive<usize>| {
        cases
            .iter()
            .flat_map(move |case| legs.clone().map(move |n| (n, with_legs(case, n))))
    };
    let straight = straight.map(|case| (2, with_legs(case, 2)));
    straight
        .into_iter()
        .chain(many(branch.to_vec().leak(), 3..=6))
        .chain(many(separable.to_vec().leak(), 2..=6))
}

#[test]
fn no_order_of_joints_of_two_to_six_legs_breaks_a_precondition() {
    let mut n_legs = BTreeSet::new();
    for (n, order) in joints() {
        let plan = planned(&order);
        assert_eq!(plan.legs.len(), n);
        if let Some(why) = broken(&plan.make_up.steps, order.job.kind) {
            panic!("{} with {n} legs: {why}", order.job.id);
        }
        n_legs.insert((order.job.kind, n));
    }
    assert_eq!(n_legs.len(), 1 + 4 + 5, "{n_legs:?}");
}

#[test]
fn both_sides_are_connected_before_what_crosses_the_joint_is_bonded_measured_or_sealed() {
    for (n, order) in joints() {
        let steps = planned(&order).make_up.steps;
        let before = ancestors(&steps);
        let connects: Vec<usize> = (0..steps.len())
            .filter(|at| ["connect", "mate"].contains(&steps[*at].stage.name()))
            .collect();
        assert!(!connects.is_empty());
        for (at, step) in steps.iter().enumerate() {
            let measures_across = step
                .hold
                .iter()
                .any(|wanted| wanted.what.contains("across the joint"));
            if measures_across || ["bond", "seal"].contains(&step.stage.name()) {
                for connect in &connects {
                    assert!(
                        before[at].contains(connect),
                        "{n} legs: {} before {}",
                        step.id,
                        steps[*connect].id
                    );
                }
            }
        }
    }
}

#[test]
fn what_is_bridged_is_unbridged_once_before_a_seal_closes_over_it() {
    for (n, order) in joints() {
        let steps = planned(&order).make_up.steps;
        let before = ancestors(&steps);
        let off: Vec<usize> = (0..steps.len())
            .filter(|at| steps[*at].stage == Stage::BridgeOff)
            .collect();
        assert_eq!(off.len(), 1, "{n} legs");
        for (at, step) in steps.iter().enumerate() {
            match step.stage.name() {
                "bridge" | "bond" => assert!(before[off[0]].contains(&at), "{}", step.id),
                "seal" => assert!(before[at].contains(&off[0]), "{}", step.id),
                _ => {}
            }
        }
    }
}

#[test]
fn every_leg_has_its_phases_checked_before_any_conductor_is_joined() {
    for (n, order) in joints() {
        let steps = planned(&order).make_up.steps;
        let before = ancestors(&steps);
        let checks: Vec<usize> = (0..steps.len())
            .filter(|at| steps[*at].stage == Stage::Phasing)
            .collect();
        assert_eq!(checks.len(), n);
        let joins = if order.job.kind == JointKind::Separable {
            Stage::Mate
        } else {
            Stage::Connect
        };
        for (at, _) in steps.iter().enumerate().filter(|(_, s)| s.stage == joins) {
            assert!(checks.iter().all(|check| before[at].contains(check)));
        }
        for check in &checks {
            assert!(!steps[*check].hold.is_empty());
        }
    }
}

#[test]
fn a_loose_step_of_six_legs_is_found_out() {
    let order = with_legs("larkspur-three-way", 6);
    let steps = planned(&order).make_up.steps;
    assert_eq!(broken(&steps, order.job.kind), None);
    for stage in ["mate", "bond", "bond-check", "bridge-off", "seal", "place"] {
        let mut loose = steps.clone();
        // One of the six waits for nothing but the hand-over.
        let step = loose
            .iter_mut()
            .find(|s| s.stage.name() == stage)
            .unwrap_or_else(|| panic!("no {stage}"));
        step.after = vec!["hand-over".to_owned()];
        assert!(broken(&loose, order.job.kind).is_some(), "{stage}");
    }
}

/// Whether `first` stands before `second` in every order that keeps to `waits`, by walking all orders.
fn always_before(waits: &[Vec<usize>], first: usize, second: usize) -> bool {
    let mut seen: BTreeSet<BTreeSet<usize>> = BTreeSet::new();
    let mut open = vec![BTreeSet::new()];
    while let Some(done) = open.pop() {
        for (next, first_come) in waits.iter().enumerate() {
            if done.contains(&next) || !first_come.iter().all(|w| done.contains(w)) {
                continue;
            }
            if next == second && !done.contains(&first) {
                return false;
            }
            let mut more = done.clone();
            more.insert(next);
            if seen.insert(more.clone()) {
                open.push(more);
            }
        }
    }
    true
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, ..ProptestConfig::default() })]

    #[test]
    fn before_in_every_order_is_a_way_of_waits(
        edges in prop::collection::vec((0_usize..7, 0_usize..7), 0..14)
    ) {
        let mut waits: Vec<Vec<usize>> = vec![Vec::new(); 7];
        for (one, other) in edges {
            if one != other {
                // Smaller numbers come first, so that nothing waits for itself.
                waits[one.max(other)].push(one.min(other));
            }
        }
        let before = ways(&waits);
        for first in 0..7 {
            for (second, come) in before.iter().enumerate() {
                if first != second {
                    prop_assert_eq!(come.contains(&first), always_before(&waits, first, second));
                }
            }
        }
    }
}

#[test]
fn walking_every_order_and_ways_of_waits_agree_on_the_cases() {
    for case in ["straight-wires-growth-measured", "larkspur-three-way"] {
        let order = order_of(case);
        let steps = planned(&order).make_up.steps;
        for at in 0..steps.len() {
            let mut loose = steps.clone();
            loose[at].after.clear();
            let (walked, by_ways) = (
                explore(&loose, order.job.kind).is_err(),
                broken(&loose, order.job.kind).is_some(),
            );
            assert_eq!(walked, by_ways, "{case}: {}", loose[at].id);
        }
    }
}
