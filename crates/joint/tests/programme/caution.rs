//! A caution belongs to a thing that is there, and stands once; steps name the inspections before anything covers a place.

use super::{order_of, planned};
use crate::cases::everything;
use jointwright_joint::catalogue::{GoesOn, MayMove, Means};
use jointwright_joint::plan::{Plan, StepDoc};
use jointwright_joint::stage::Stage;
use std::collections::BTreeSet;

fn cautions(step: &StepDoc) -> String {
    let said: Vec<&str> = step.cautions.iter().map(|c| c.say.as_str()).collect();
    said.join(" ")
}

fn steps<'p>(plan: &'p Plan, stage: &'p str) -> impl Iterator<Item = &'p StepDoc> {
    plan.make_up
        .steps
        .iter()
        .filter(move |s| s.stage.name() == stage)
}

#[test]
fn a_holdout_is_named_only_where_something_stands_on_one() {
    let (mut with, mut without) = (0, 0);
    for case in everything() {
        let order = case.order();
        let plan = planned(&order);
        for step in steps(&plan, "place") {
            let bodies = step.legs.iter().filter_map(|id| {
                let leg = order.job.legs.iter().find(|l| l.id == *id)?;
                order.catalogue.body(leg.parts.body.as_deref()?)
            });
            let is_held = bodies
                .into_iter()
                .any(|b| b.may_move == Some(MayMove::BeforeHoldoutIsOut));
            assert_eq!(
                cautions(step).contains("holdout"),
                is_held,
                "{}: {}",
                case.slug,
                step.id
            );
            *(if is_held { &mut with } else { &mut without }) += 1;
        }
    }
    assert!(with > 3 && without > 3, "{with} with, {without} without");
}

#[test]
fn a_torch_is_named_only_where_a_seal_wants_one_or_is_silent() {
    for (way, has_torch, has_holdout) in [
        (Some(GoesOn::Torch), true, false),
        (Some(GoesOn::Holdout), false, true),
        (Some(GoesOn::PushOn), false, false),
        (None, true, false),
    ] {
        let mut order = order_of("larkspur-three-way");
        for seal in &mut order.catalogue.seals {
            seal.goes_on = way;
            seal.may_move = None;
            seal.rubber = None;
            seal.head.shelf = None;
        }
        let plan = planned(&order);
        for step in steps(&plan, "seal") {
            let said = cautions(step);
            assert_eq!(
                said.to_lowercase().contains("torch"),
                has_torch,
                "{way:?}: {said}"
            );
            assert_eq!(said.contains("holdout"), has_holdout, "{way:?}: {said}");
            if way.is_none() {
                assert!(said.contains("Where the instructions ask for a torch"));
            }
        }
    }
}

#[test]
fn pressing_is_named_only_where_a_connector_is_pressed() {
    let mut seen = BTreeSet::new();
    for case in everything() {
        let order = case.order();
        let plan = planned(&order);
        for leg in &plan.legs {
            let name = order.job.legs.iter().find(|l| l.id == leg.mark);
            let name = name.and_then(|l| l.parts.connector.as_deref());
            let means = name
                .and_then(|id| order.catalogue.connector(id))
                .map(|c| c.means);
            let is_pressed = means == Some(Means::Compression);
            for cut in &leg.cuts {
                assert_eq!(
                    cut.from.contains("pressing"),
                    is_pressed,
                    "{}: {}",
                    case.slug,
                    cut.from
                );
            }
            for step in plan
                .make_up
                .steps
                .iter()
                .filter(|s| s.legs == [leg.mark.as_str()] && s.stage == Stage::MarkOut)
            {
                let says = step.lines.iter().any(|l| l.say.contains("pressing"));
                assert!(
                    says == is_pressed || means.is_none(),
                    "{}: {:?}",
                    case.slug,
                    step.lines
                );
            }
            seen.insert(is_pressed);
        }
    }
    assert_eq!(seen.len(), 2);
}

#[test]
fn a_step_for_another_metal_is_not_printed() {
    let order = order_of("larkspur-three-way");
    let plan = planned(&order);
    for step in steps(&plan, "connect") {
        let is_copper = step.legs != ["B"];
        let says = step.lines.iter().any(|l| l.say.contains("aluminium"));
        assert!(!(is_copper && says), "{}: {:?}", step.id, step.lines);
    }
    let mut order = order;
    for leg in &mut order.job.legs {
        leg.cable.conductor.metal = jointwright_joint::cable::Metal::Aluminium;
    }
    let plan = planned(&order);
    let mut all = steps(&plan, "connect").flat_map(|s| &s.lines);
    assert!(all.any(|l| l.say.contains("brushed aluminium at once")));
}

#[test]
fn no_caution_stands_twice_in_a_step_or_in_the_next_of_its_leg() {
    for case in everything() {
        let steps = planned(&case.order()).make_up.steps;
        for leg in case.order().job.legs.iter().map(|l| l.id.clone()) {
            let of_leg: Vec<&StepDoc> = steps.iter().filter(|s| s.legs.contains(&leg)).collect();
            for pair in of_leg.windows(2) {
                let said: Vec<&str> = pair
                    .iter()
                    .flat_map(|s| s.cautions.iter().map(|c| c.say.as_str()))
                    .collect();
                let distinct: BTreeSet<&str> = said.iter().copied().collect();
                assert_eq!(said.len(), distinct.len(), "{}: {said:?}", case.slug);
            }
        }
    }
}

#[test]
fn an_open_shield_is_named_once_between_bridge_and_shield_with_all_who_say_it() {
    let plan = planned(&order_of("larkspur-three-way"));
    let near: Vec<&StepDoc> = plan
        .make_up
        .steps
        .iter()
        .filter(|s| s.legs == ["A"] && ["bridge", "shield"].contains(&s.stage.name()))
        .collect();
    let all: Vec<_> = near.iter().flat_map(|s| &s.cautions).collect();
    let said: Vec<_> = all
        .iter()
        .filter(|c| c.say.contains("stays bridged"))
        .collect();
    assert_eq!(said.len(), 1, "{all:?}");
    assert!(
        said[0].source.contains("common practice") && said[0].source.contains("DM-1"),
        "{said:?}"
    );
    assert_eq!(near[0].stage, Stage::Bridge);
    assert!(
        near[1]
            .hold
            .iter()
            .any(|w| w.what.starts_with("bridge of the metallic shield"))
    );
}

#[test]
fn the_insulation_is_wiped_one_way_and_looked_at_before_anything_covers_it() {
    for case in everything() {
        let order = case.order();
        let plan = planned(&order);
        for step in steps(&plan, "clean") {
            let said: Vec<&str> = step.lines.iter().map(|l| l.say.as_str()).collect();
            let said = said.join(" ");
            for words in [
                "Each wipe from the conductor end toward the",
                "one wipe a stroke",
                "never emery",
            ] {
                assert!(said.contains(words), "{}: {said}", case.slug);
            }
            let leg = order
                .job
                .legs
                .iter()
                .find(|l| step.legs.contains(&l.id))
                .expect("a leg");
            if let Some(body) = leg
                .parts
                .body
                .as_deref()
                .and_then(|id| order.catalogue.body(id))
            {
                let grit = body.abrasive.as_deref().unwrap_or("states none");
                assert!(said.contains(grit), "{}: {said}", case.slug);
            }
        }
        for stage in ["screen", "insulation", "clean"] {
            for step in steps(&plan, stage) {
                let looks = step
                    .hold
                    .iter()
                    .filter(|w| w.what.starts_with("nicks, ring cuts and specks"));
                let windows: Vec<_> = looks.map(|w| w.window.as_deref()).collect();
                assert_eq!(
                    windows,
                    [Some("none seen or felt")],
                    "{}: {}",
                    case.slug,
                    step.id
                );
            }
        }
    }
}

#[test]
fn the_square_cut_has_a_reference_and_a_place() {
    for case in everything() {
        let order = case.order();
        let plan = planned(&order);
        for step in steps(&plan, "square") {
            let leg = order
                .job
                .legs
                .iter()
                .find(|l| step.legs.contains(&l.id))
                .expect("a leg");
            let connector = leg
                .parts
                .connector
                .as_deref()
                .and_then(|id| order.catalogue.connector(id));
            let says = |words: &str| step.lines.iter().any(|l| l.say.contains(words));
            match connector {
                Some(connector) => {
                    assert!(
                        says("set the cut out from"),
                        "{}: {:?}",
                        case.slug,
                        step.lines
                    );
                    assert!(says(&connector.head.id));
                    let gap = connector.ends[0].gap_greatest.is_some();
                    assert_eq!(
                        step.hold[0].window.is_some(),
                        gap,
                        "{}: {:?}",
                        case.slug,
                        step.hold
                    );
                }
                None => assert!(
                    says("ask before this cut"),
                    "{}: {:?}",
                    case.slug,
                    step.lines
                ),
            }
        }
    }
    // A sleeve with a stop of 2 mm and a gap of 1 mm: 1 mm from the centre line, 2 mm at most.
    let mut order = order_of("straight-wires-growth-measured");
    for leg in &mut order.job.legs {
        leg.parts.connector = Some("demo-sleeve-bolt".to_owned());
    }
    let plan = planned(&order);
    for step in steps(&plan, "square") {
        assert_eq!(step.hold[0].window.as_deref(), Some("1 mm to 2 mm"));
        assert!(
            step.lines
                .iter()
                .any(|l| l.say.contains("centre line of the joint"))
        );
    }
}
