//! The full ladder compared with finite elements of the same slices, for random joints.
//!
//! The comparison covers the core at z = 0, the hottest inside of rubber or insulation within the body, and the cable far away,
//! each as a share of the finite elements' rise above the surroundings of the joint.
#![allow(
    clippy::disallowed_methods,
    reason = "the long tests ask the environment how many joints"
)]

use super::joints::{Joint, joint, star};
use jointwright_numerics::heat::{Ask, HeatOptions, What, When, solve_on};
use jointwright_numerics::ladder::{Arm, Ladder, Temperatures, elements};
use jointwright_numerics::outline::Point;

/// Greatest permitted difference of the ladder, as a share of the rise.
const APART: f64 = 0.02;

/// The ladder's hottest watched place, and one ring of the slice there that begins at it.
fn hottest(joint: &Joint, ladder: &Ladder, found: &Temperatures) -> (Point, f64) {
    let (_, place, degc) = ladder.hottest_watched(found).unwrap();
    (Point::new(inside_at(&joint.arm, place), place), degc)
}

/// Inside radius of the innermost watched ring at a place.
fn inside_at(arm: &Arm, place: f64) -> f64 {
    let mut start = 0.0;
    for slice in &arm.slices {
        if place < start + slice.length_m {
            let index = slice.rings.iter().position(|ring| ring.is_watched).unwrap();
            return slice.rings[index - 1].outside_m;
        }
        start += slice.length_m;
    }
    panic!("no slice at {place} m");
}

/// Temperatures by finite elements at these places, °C, each settled.
fn by_elements(joint: &Joint, arm: &Arm, when: When, places: &[Point], time_s: f64) -> Vec<f64> {
    let (section, mesh) = elements(arm, joint.current_a, when, 1).unwrap();
    let asks: Vec<Ask> = places
        .iter()
        .map(|place| Ask {
            what: What::TemperatureAt(*place),
            time_s,
        })
        .collect();
    let options = HeatOptions {
        tolerance_k: 0.06,
        ..HeatOptions::default()
    };
    let solved = solve_on(&section, mesh, &asks, &options).unwrap();
    let each = solved.answers.iter();
    each.map(|answer| {
        assert!(answer.is_settled, "{answer:?}");
        answer.value
    })
    .collect()
}

/// Greatest difference of a joint's ladder from finite elements of `arm`, as a share of the rise; after a time, or in the steady state.
fn apart(joint: &Joint, arm: &Arm, time_s: Option<f64>) -> f64 {
    let mut ladder = Ladder::new(star(joint)).unwrap();
    let start = ladder.even(joint.ambient_degc);
    let found = match time_s {
        None => ladder.steady(&[joint.current_a]).unwrap(),
        Some(time) => ladder
            .after(&start, &[joint.current_a], &[time])
            .unwrap()
            .remove(0),
    };
    let (place, hot) = hottest(joint, &ladder, &found);
    let far = ladder.along_core(&found, 0).pop().unwrap();
    let when = match time_s {
        None => When::Steady,
        Some(_) => When::Since {
            start_degc: joint.ambient_degc,
        },
    };
    let places = [Point::new(0.0, 0.0), place, Point::new(0.0, far.0)];
    let exact = by_elements(joint, arm, when, &places, time_s.unwrap_or_default());
    let here = [ladder.middle_degc(&found), hot, far.1];
    let each = here.iter().zip(&exact);
    // The cable far away may lie in other surroundings; the joint's rise is the measure for it, too.
    let rise = exact[0] - joint.ambient_degc;
    each.map(|(a, b)| (a - b).abs() / rise).fold(0.0, f64::max)
}

fn greatest(seeds: std::ops::Range<u64>, time_s: impl Fn(u64) -> Option<f64>) -> f64 {
    seeds
        .map(|seed| {
            let joint = joint(seed);
            let apart = apart(&joint, &joint.arm, time_s(seed));
            assert!(apart < APART, "joint {seed}: {apart} of its rise");
            apart
        })
        .fold(0.0, f64::max)
}

#[test]
fn at_rest_four_hundred_joints_agree() {
    // Measured: 0.0085; a ladder that used the elements themselves would show none.
    let found = greatest(0..400, |_| None);
    assert!(found > 1e-4, "{found}");
}

/// Ten minutes, forty minutes, two and three quarter hours, eleven hours after the current is switched on.
fn time_s(seed: u64) -> Option<f64> {
    Some(600.0 * 4_f64.powi((seed % 4) as i32))
}

/// Number of joints in each test: enough to notice, and several hundred in `./test --long`.
fn n_stepped() -> u64 {
    if std::env::var_os("JOINTWRIGHT_LONG").is_some() {
        120
    } else {
        16
    }
}

#[test]
fn after_a_step_joints_agree() {
    // Measured over 240 joints: 0.0157, ten minutes after the step.
    let found = greatest(1000..1000 + n_stepped(), time_s);
    assert!(found > 1e-4, "{found}");
}

#[test]
fn after_a_step_other_joints_agree() {
    let found = greatest(1120..1120 + n_stepped(), time_s);
    assert!(found > 1e-4, "{found}");
}

#[test]
fn a_connector_that_loses_half_as_much_again_is_told_apart() {
    let mut n_told = 0;
    for seed in 0..40 {
        let joint = joint(seed);
        let mut other = joint.arm.clone();
        let core = &mut other.slices[0].rings[0];
        if let Some(loss) = &mut core.loss {
            loss.at20_ohm_per_m *= 1.5;
        }
        n_told += u32::from(apart(&joint, &other, None) > APART);
    }
    // For a connector that hardly warms its joint, a loss half as large again goes unnoticed.
    assert!(n_told >= 20, "{n_told} of 40");
}
