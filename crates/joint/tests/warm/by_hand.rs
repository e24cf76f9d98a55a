//! Numbers found in another way: closed forms, finite elements, volumes.

use super::{CHECKS, DOCK, leg, order, planned, with_done};
use crate::cases::{accepted, named, read};
use jointwright_joint::cable::Layer;
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::judge::{judge, judge_without_fields};
use jointwright_joint::warm::Warm;
use jointwright_numerics::heat::{Ask, HeatOptions, What, When, solve_on};
use jointwright_numerics::ladder::{Ladder, Star, elements};
use jointwright_numerics::outline::Point;
use jointwright_wording::plan;
use std::f64::consts::PI;

/// No current in the shields, so that the far cable is a core, two layers and its surroundings.
const NO_SHIELD_LOAD: (&str, &str) = ("shield_load = \"12 A\"", "shield_load = \"0 A\"");

/// T = T0 + I² R (1 + α (T − 20)) · Σ R_th, with R by hand: 17.241 Ω mm²/km, 2 % of lay, 177.35 mm², skin and proximity of three that touch.
#[test]
fn the_far_cable_has_the_temperature_of_its_layers() {
    let order = order(DOCK, &[NO_SHIELD_LOAD], &[]);
    let direct = 17.241e-3 * 1.02 / 177.35;
    let x4 = (8.0 * PI * 60.0 / direct * 1e-7).powi(2);
    let share = x4 / (192.0 + 0.8 * x4);
    let close = (15.65_f64 / 34.9).powi(2);
    let near = share * close * (0.312 * close + 1.18 / (share + 0.27));
    let (at20, alpha) = (direct * (1.0 + share + near), 1.0 / (234.5 + 20.0));
    // Middles of the readings of leg A: 15.65, 28.15, 30.15 and 34.90 mm.
    let tape = order.job.legs[0].cable.thickness_of(Layer::MetallicShield);
    let shield = 30.15 + 2.0 * tape.unwrap().nominal.mm();
    let layer = |inside: f64, outside: f64| 3.5 * (outside / inside).ln() / (2.0 * PI);
    let across = layer(15.65, 30.15) + layer(shield, 34.90) + 0.9;
    let cold = 320.0_f64 * 320.0 * at20;
    let heat = cold * (1.0 - 20.0 * alpha);
    let expected = (25.0 + across * heat) / (1.0 - across * cold * alpha);
    let far = with_done(&order, |done| {
        let along = done.model.along(1.0).unwrap().expect("a state");
        along[0].core_degc.last().copied().expect("a far end")
    });
    assert!((far.1 - expected).abs() < 0.03, "{far:?} {expected}");
    assert!(far.0 > 3.0);
}

/// Arm of each leg by finite elements of its slices: metal in the middle and outside of the body.
#[test]
fn the_joint_agrees_with_finite_elements() {
    let stars = |example| {
        with_done(&order(example, &[], &[]), |done| {
            (done.model.bare_star(), done.model.loads_a.clone())
        })
    };
    for example in [DOCK, "larkspur-three-way"] {
        let (star, loads) = stars(example);
        for (arm, load) in star.arms.into_iter().zip(loads) {
            let ambient = arm.slices[0].ambient_degc;
            let (section, mesh) = elements(&arm, load, When::Steady, 1).unwrap();
            let places = [Point::new(0.0, 0.0), Point::new(0.0, 0.15)];
            let asks = places.map(|place| Ask {
                what: What::TemperatureAt(place),
                time_s: 0.0,
            });
            let options = HeatOptions::default();
            let exact = solve_on(&section, mesh, &asks, &options).unwrap();
            let alone = Star {
                arms: vec![arm],
                ..star_hub()
            };
            let mut ladder = Ladder::new(alone).unwrap();
            let found = ladder.steady(&[load]).unwrap();
            let along = ladder.along_core(&found, 0);
            let at = |z: f64| {
                let after = along
                    .iter()
                    .position(|(place, _)| *place > z)
                    .unwrap()
                    .max(1);
                let ((z0, t0), (z1, t1)) = (along[after - 1], along[after]);
                t0 + (t1 - t0) * (z - z0) / (z1 - z0)
            };
            for (place, answer) in places.iter().zip(&exact.answers) {
                let rise = answer.value - ambient;
                let by = (at(place.z) - answer.value).abs();
                assert!(
                    by < 0.02 * rise,
                    "{example} {place:?}: {} and {}",
                    at(place.z),
                    answer.value
                );
            }
        }
    }
}

fn star_hub() -> Star {
    Star {
        arms: Vec::new(),
        hub: jointwright_numerics::ladder::Hub::default(),
    }
}

/// The rubber of a body keeps its volume: stated from 25 to 58 mm, on leg A it sits on 28.15 mm, and 3 mm of cover lie on it.
#[test]
fn a_body_on_another_cable_keeps_its_rubber() {
    let star = with_done(&order(DOCK, &[], &[]), |done| done.model.bare_star());
    let outside = (29.0_f64.powi(2) + 14.075_f64.powi(2) - 12.5_f64.powi(2)).sqrt();
    let mut at = 0.0;
    let slice = star.arms[0].slices.iter().find(|slice| {
        at += slice.length_m;
        at > 0.09
    });
    let slice = slice.expect("a slice on the insulation");
    let radii: Vec<f64> = slice
        .rings
        .iter()
        .map(|ring| 1e3 * ring.outside_m)
        .collect();
    let body = radii[radii.len() - 2];
    assert!((body - outside).abs() < 1e-9, "{radii:?} {outside}");
    assert!(
        (radii[radii.len() - 1] - outside - 3.0).abs() < 1e-9,
        "{radii:?}"
    );
    assert!((radii[1] - 14.075).abs() < 1e-9, "{radii:?}");
    // Over the connector it closes: 26.0 mm outside, wider than the relaxed bore.
    let first = &star.arms[0].slices[0];
    let sleeve = 1e3 * first.rings[0].outside_m;
    let closed = (29.0_f64.powi(2) + sleeve.powi(2) - 12.5_f64.powi(2)).sqrt();
    let radii: Vec<f64> = first
        .rings
        .iter()
        .map(|ring| 1e3 * ring.outside_m)
        .collect();
    assert!(
        (radii[radii.len() - 2] - closed).abs() < 1e-9,
        "{radii:?} {closed}"
    );
}

/// Direct current, as with a micro-ohm meter: four inches of 17.241 Ω mm²/km with 2 % of lay on 177.35 mm², and seven tenths of it.
#[test]
fn the_connector_s_resistance_is_that_of_a_reading() {
    let plan = planned(&[], &[]);
    let equal = 17.241e3 * 1.02 / 177.35 * 0.1016;
    let leg = leg(&plan, "A");
    assert!(
        (leg.equal_length_uohm / equal - 1.0).abs() < 1e-4,
        "{}",
        leg.equal_length_uohm
    );
    assert!(
        (leg.connector_uohm / equal - 0.7).abs() < 1e-4,
        "{}",
        leg.connector_uohm
    );
}

/// exp(E/R (1/T0 − 1/T)) with 95 kJ/mol and 90 degC.
#[test]
fn loss_of_life_is_that_of_its_constants() {
    let plan = planned(&[], &[]);
    let leg = leg(&plan, "A");
    let rubber = leg.at_load.as_ref().expect("a state").rubber_degc + 273.15;
    let expected = (95.0e3 / 8.314_462_618 * (1.0 / 363.15 - 1.0 / rubber)).exp();
    let found = leg.ageing_ratio.expect("a row states it");
    assert!((found / expected - 1.0).abs() < 1e-9, "{found} {expected}");
    // Four hours between the load's rate and the rate at the emergency's end.
    let end = leg.at_emergency.as_ref().expect("a state").rubber_degc + 273.15;
    let most = (95.0e3 / 8.314_462_618 * (1.0 / 363.15 - 1.0 / end)).exp();
    let hours = leg.emergency_ageing_h.expect("an emergency");
    assert!(4.0 * expected < hours && hours < 4.0 * most, "{hours}");
}

/// Under a seal that lets no heat out, the cable is hottest between the body's end and the seal's: that place is examined.
#[test]
fn the_cable_under_the_seal_is_looked_at() {
    let cover = "covers_body = true, resistivity_k_m_per_w = 4.0";
    let felt = "covers_body = false, resistivity_k_m_per_w = 45.0";
    with_done(&order(DOCK, &[], &[(cover, felt)]), |done| {
        let along = &done.model.along(1.0).unwrap().expect("a state")[0];
        let beyond = along.core_degc.iter().filter(|(z, _)| *z >= along.ends_m.0);
        let (z, degc) = beyond
            .max_by(|a, b| a.1.total_cmp(&b.1))
            .expect("a hottest place");
        assert!(
            (along.ends_m.0..along.ends_m.1).contains(z),
            "{z} {:?}",
            along.ends_m
        );
        let said = done.at_load.as_ref().expect("a state")[0].cable_degc;
        assert!((said - degc).abs() < 1e-9, "{said} {degc}");
    });
}

/// A plan's emergency, the loads to a limit and a rating's table come from the projected star; the full ladder has the same temperatures.
#[test]
fn states_of_a_plan_and_a_rating_are_those_of_the_full_ladder() {
    for example in [DOCK, "larkspur-three-way"] {
        let order = order(example, &[], &[]);
        let judged = accepted(judge(&order), example);
        let Warm::Done(done) = judged.inputs.warm.as_ref() else {
            panic!("{example} is not solved");
        };
        let rating = judged.inputs.warm.rating().unwrap().expect("a rating");
        assert!(rating.loads.len() > 3);
        for row in &rating.loads {
            let full = done.model.at_rest(row.ratio).unwrap().expect("a state");
            for (own, full) in row.legs.as_ref().expect("a state").iter().zip(&full) {
                let pairs = [
                    (own.joint_degc, full.joint_degc),
                    (own.rubber_degc, full.rubber_degc),
                    (own.cable_degc, full.cable_degc),
                    (own.alone_degc, full.alone_degc),
                ];
                for (own, full) in pairs {
                    assert!(
                        (own - full).abs() < 0.02,
                        "{example} {}: {own} {full}",
                        row.ratio
                    );
                }
            }
        }
        let (currents, time_s) = done.model.emergency_a_s.clone().expect("an emergency");
        let mut ladder = Ladder::new(done.model.bare_star()).unwrap();
        let start = ladder.steady(&done.model.loads_a).unwrap();
        let found = ladder
            .after(&start, &currents, &[time_s])
            .unwrap()
            .remove(0);
        let at = done.at_emergency.as_ref().ok().and_then(Option::as_ref);
        let error_k = done.error_in_time_k;
        assert!(error_k > 0.0 && error_k < 0.5, "{example}: {error_k}");
        for (leg, at) in at.expect("a state").iter().enumerate() {
            let core = ladder.along_core(&found, leg);
            let hottest = core
                .iter()
                .fold(f64::NEG_INFINITY, |most, (_, degc)| most.max(*degc));
            let own = at.joint_degc.max(at.cable_degc);
            // The steps of the full ladder have an error of their own, some millikelvins.
            assert!(
                (own - hottest).abs() < error_k.max(0.01),
                "{example}: {own} {hottest}"
            );
        }
        // A row of emergencies, run through the full ladder, ends at the first limit.
        for row in [&rating.emergencies[3], &rating.emergencies[11]] {
            let (limit, s) = row.first_s.expect("an end");
            let found = ladder.after(&start, &row.loads_a, &[s]).unwrap().remove(0);
            let core = ladder.along_core(&found, limit.leg);
            let body_m = rating.along.as_ref().expect("a state")[limit.leg].ends_m.0;
            let inside = core.iter().filter(|(z, _)| limit.is_cable || *z < body_m);
            let hottest = inside.fold(f64::NEG_INFINITY, |most, (_, degc)| most.max(*degc));
            assert!(
                (hottest - limit.degc).abs() < 0.3,
                "{example} {s}: {hottest} {limit:?}"
            );
        }
    }
}

/// All legs share one path of heat: where one body is left open, the temperatures of the others are asked for, and not left out.
#[test]
fn a_body_left_open_leaves_the_temperatures_of_the_other_legs_open() {
    let (before, from) = named("larkspur-three-way")
        .job
        .split_once("body = \"demo-leg-body-15\"\n")
        .expect("a body");
    let catalogues = [(DEMONSTRATION.to_owned(), DEMONSTRATION_TEXT.to_owned())];
    let order = accepted(read(&format!("{before}{from}"), &catalogues), "open");
    let plan = plan(&accepted(judge_without_fields(&order), "open"));
    for check in CHECKS {
        let of_check = plan.rulings.iter().filter(|r| r.check == check);
        let asked: Vec<(Option<String>, &str)> = of_check
            .map(|ruling| {
                let why = ruling.why.clone().unwrap_or_default();
                assert!(why.contains("a body is left open"), "{check}: {why}");
                (ruling.leg.clone(), ruling.ruling.name())
            })
            .collect();
        let open = |leg: &str| (Some(leg.to_owned()), "not-judged");
        assert_eq!(asked, [open("B"), open("C")], "{check}");
    }
    let asks = plan.asks.iter().find(|ask| ask.key() == "part");
    assert!(asks.is_some());
}
