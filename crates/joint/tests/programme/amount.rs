//! Material: pieces, and the length of tape worked out by hand.

use crate::cases::{english, everything, named};
use jointwright_joint::cable::Layer;
use jointwright_joint::catalogue::{Means, Wrap};
use jointwright_joint::judge::judge_unsolved as judge;
use jointwright_joint::material::{ItemKind, items, tape_length_m, tools};
use jointwright_joint::stage::Stage;
use jointwright_units::Length;

fn wrap(layers: i64, lap_ratio: f64, drawn_ratio: f64) -> Wrap {
    Wrap {
        over: Layer::Jacket,
        length: Length::MM * 100,
        layers,
        lap_ratio,
        drawn_ratio,
    }
}

#[track_caller]
fn check(wrap: &Wrap, expected_m: f64) {
    let tape = (Length::MM * 50, Length::MM);
    let found_m = tape_length_m(wrap, tape, Length::MM * 40);
    assert!(
        (found_m - expected_m).abs() < 5.0e-7,
        "{found_m} m, {expected_m} m by hand"
    );
}

/// 50 mm wide, 1 mm thick, 100 mm of a cable of 40 mm: by hand in docs/theory/amount.md.
#[test]
fn a_tape_is_as_long_as_the_worked_example_says() {
    // Butt-lapped, one pass: 3 turns of √((π·41)² + 50²) = 138.1695 mm.
    check(&wrap(1, 0.0, 1.0), 0.414_508);
    // Half-lapped, one pass: 5 turns of √((π·42)² + 25²) = 134.2944 mm.
    check(&wrap(1, 0.5, 1.0), 0.671_472);
    // Half-lapped, two passes: and 5 turns of √((π·46)² + 25²) = 146.6598 mm.
    check(&wrap(2, 0.5, 1.0), 1.404_771);
    // Drawn to twice its length: half of it.
    check(&wrap(2, 0.5, 2.0), 0.702_385);
}

#[test]
fn more_laps_more_passes_and_a_thicker_cable_never_take_less() {
    let tape = (Length::MM * 50, Length::MM);
    let on = |mm: i64, wrap: &Wrap| tape_length_m(wrap, tape, Length::MM * mm);
    assert!(on(40, &wrap(1, 0.6, 1.0)) > on(40, &wrap(1, 0.5, 1.0)));
    assert!(on(40, &wrap(3, 0.5, 1.0)) > on(40, &wrap(2, 0.5, 1.0)));
    assert!(on(41, &wrap(1, 0.5, 1.0)) > on(40, &wrap(1, 0.5, 1.0)));
}

#[test]
fn what_legs_share_is_counted_once_a_phase() {
    let order = named("straight-wires-growth-measured").order();
    let judged = judge(&order).expect("the rows agree");
    let n = |kind: &str| -> usize {
        items(&judged.inputs)
            .iter()
            .filter(|i| i.kind.name() == kind)
            .filter_map(|i| i.pieces)
            .sum()
    };
    let phases = usize::from(order.job.phases);
    assert_eq!(n("body"), phases);
    assert_eq!(n("connector"), phases);
    assert_eq!(n("seal"), 2 * phases);
    assert_eq!(n("shield part"), 2 * phases);
}

#[test]
fn a_bus_is_counted_once_a_phase_and_a_leg_body_once_an_end() {
    let order = named("larkspur-three-way").order();
    let judged = judge(&order).expect("the rows agree");
    let found = items(&judged.inputs);
    let n = |kind: &str| {
        found
            .iter()
            .find(|i| i.kind.name() == kind)
            .and_then(|i| i.pieces)
    };
    assert_eq!((n("bus"), n("body")), (Some(3), Some(9)));
    let tape = found
        .iter()
        .find(|i| i.id == "demo-mastic-tape")
        .expect("it is listed");
    assert!(english(&tape.amount).contains("m of tape in all, 9 ends"));
}

#[test]
fn an_amount_that_nobody_states_is_not_guessed() {
    let order = named("larkspur-three-way").order();
    let judged = judge(&order).expect("the rows agree");
    let found = items(&judged.inputs);
    let brush = found
        .iter()
        .find(|i| i.id == "demo-brush-copper")
        .expect("it is listed");
    assert_eq!(brush.amount, None);
    assert!(brush.why.is_some());
}

#[test]
fn a_press_is_asked_for_with_its_die_only_where_something_is_pressed() {
    let (mut n_with, mut n_without) = (0, 0);
    for case in everything() {
        let order = case.order();
        let judged = judge(&order).expect("the rows agree");
        let pressed = judged
            .inputs
            .legs
            .iter()
            .filter_map(|leg| leg.chosen.connector)
            .any(|c| c.means == Means::Compression);
        let asked = tools(&judged.inputs)
            .iter()
            .map(|t| english(&Some(t.what.clone().into())))
            .any(|what| what.starts_with("press,") && what.contains("invented die"));
        assert_eq!(asked, pressed, "{}", case.slug);
        n_with += usize::from(pressed);
        n_without += usize::from(!pressed);
    }
    assert!(
        n_with > 0 && n_without > 0,
        "{n_with} with, {n_without} without"
    );
}

/// The sleeve that the trial press uses up was missing from every list of parts.
#[test]
fn a_connector_whose_growth_is_not_measured_is_counted_once_more_for_its_trial() {
    let of = |slug: &str| {
        let order = named(slug).order();
        let judged = judge(&order).expect("the rows agree");
        let all = items(&judged.inputs);
        let trials = all.into_iter().filter(|i| i.kind == ItemKind::Trial);
        trials.collect::<Vec<_>>()
    };
    // Both legs take one sleeve on one conductor: one trial serves both.
    let unknown = of("straight-tape-growth-unknown");
    assert_eq!(unknown.len(), 1, "{unknown:?}");
    assert_eq!(unknown[0].pieces, Some(1));
    let on = english(&Some(unknown[0].used_for[0].clone()));
    assert!(on.contains("trial press on a piece of"));
    assert_eq!(of("straight-wires-growth-measured"), []);
    assert_eq!(of("dock-straight-not-pressed").len(), 1);
    // A connector already pressed in a trial, and shear bolts, which do not grow.
    assert_eq!(of("larkspur-three-way"), []);
}

#[test]
fn issue_16_what_cleans_a_conductor_is_named_in_the_step_that_joins_it() {
    let mut n = 0;
    for case in everything() {
        let order = case.order();
        let plan = jointwright_wording::plan(&judge(&order).expect("the rows agree"));
        for leg in &order.job.legs {
            let metal = leg.cable.conductor.metal;
            let names = leg.parts.consumables.iter();
            let named = names.filter_map(|id| order.catalogue.consumable(id));
            for brush in named.filter(|part| part.metals.contains(&metal)) {
                let start = format!("Leg {}: for its conductor", leg.id);
                let steps = plan
                    .make_up
                    .steps
                    .iter()
                    .filter(|s| s.stage == Stage::Connect);
                let lines: Vec<&str> = steps
                    .flat_map(|step| step.lines.iter().map(|line| line.say.as_str()))
                    .collect();
                let says = |line: &&str| line.starts_with(&start) && line.contains(&brush.head.id);
                assert!(lines.iter().any(says), "{}: {lines:#?}", case.slug);
                n += 1;
            }
        }
    }
    assert!(n > 10, "{n} brushes");
}
