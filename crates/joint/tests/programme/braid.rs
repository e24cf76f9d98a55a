//! One piece that goes across the joint, such as a braid, is bonded once and counted once.

use super::joint::broken;
use super::{order_of, planned};
use jointwright_joint::job::Order;
use jointwright_joint::material::ItemKind;
use jointwright_joint::plan::Plan;
use jointwright_joint::stage::Stage;

fn with_braid(across_legs: bool) -> Order {
    let mut order = order_of("straight-wires-growth-measured");
    for part in &mut order.catalogue.shield_parts {
        part.across_legs = across_legs;
    }
    order
}

/// Names of the steps that bond, and pieces of the shield part.
fn bonds(plan: &Plan) -> (Vec<&str>, usize) {
    let steps = plan.make_up.steps.iter().filter(|s| s.stage == Stage::Bond);
    let parts = plan
        .make_up
        .material
        .iter()
        .filter(|m| m.kind == ItemKind::ShieldPart);
    let pieces = parts.map(|m| m.pieces.expect("pieces")).sum();
    (steps.map(|s| s.id.as_str()).collect(), pieces)
}

#[test]
fn a_braid_across_both_legs_is_one_step_and_one_piece_a_phase() {
    let plan = planned(&with_braid(true));
    let phases = usize::from(plan.job.phases);
    assert_eq!(bonds(&plan), (vec!["A+B bond"], phases));
    let step = plan
        .make_up
        .steps
        .iter()
        .find(|s| s.stage == Stage::Bond)
        .expect("a step");
    assert_eq!(step.hold.len(), 2, "a connection a leg: {:?}", step.hold);
    assert_eq!(broken(&plan.make_up.steps, with_braid(true).job.kind), None);
    assert_eq!(plan.make_up.unsettled, [""; 0]);
    let plan = planned(&with_braid(false));
    assert_eq!(bonds(&plan), (vec!["A bond", "B bond"], 2 * phases));
}

#[test]
fn a_braid_that_one_leg_alone_names_is_asked_of() {
    let mut order = with_braid(true);
    order.job.legs[1].parts.shield_part = None;
    let unsettled = planned(&order).make_up.unsettled;
    assert!(
        unsettled.iter().any(|s| s.contains("leg A alone names it")),
        "{unsettled:?}"
    );
}
