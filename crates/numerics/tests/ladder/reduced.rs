//! The reduced ladder compared with the full one.

use super::joints::{joint, star};
use jointwright_numerics::ladder::{Ladder, N_STATES_MOST, Reduced};

/// A load that swings by the day and by the week, as shares of full load.
fn loads(n: usize) -> Vec<f64> {
    let of = |hour: usize| {
        let day = (hour as f64 * std::f64::consts::TAU / 24.0).sin();
        let week = (hour as f64 * std::f64::consts::TAU / 168.0).sin();
        0.65 + 0.25 * day + 0.1 * week
    };
    (0..n).map(of).collect()
}

#[test]
fn it_says_its_error_and_keeps_it_small() {
    let mut n_large = 0;
    for seed in 0..300 {
        let joint = joint(seed);
        let mut ladder = Ladder::new(star(&joint)).unwrap();
        let reduced = Reduced::new(&mut ladder, &[joint.current_a]).unwrap();
        let full = ladder.steady(&[joint.current_a]).unwrap();
        let rise = ladder.middle_degc(&full) - joint.ambient_degc;
        assert!(reduced.n_states() <= N_STATES_MOST && N_STATES_MOST == 8);
        assert!(
            reduced.error_k() > 0.0 && reduced.error_k() < 0.035 * rise,
            "{seed}: {} of {rise}",
            reduced.error_k()
        );
        n_large += usize::from(reduced.error_k() > 0.02 * rise);
    }
    assert!(n_large < 30, "{n_large}");
}

#[test]
fn hour_by_hour_it_follows_the_full_ladder() {
    for seed in 300..312 {
        let joint = joint(seed);
        let mut ladder = Ladder::new(star(&joint)).unwrap();
        let reduced = Reduced::new(&mut ladder, &[joint.current_a]).unwrap();
        let loads = loads(96);
        let mut hours = Vec::new();
        let start = reduced.at_rest(loads[0]).unwrap();
        reduced.run(&start, 3600.0, &loads, |hour| hours.push(hour));
        let mut here = ladder.steady(&[loads[0] * joint.current_a]).unwrap();
        let rise = {
            let full = ladder.steady(&[joint.current_a]).unwrap();
            ladder.middle_degc(&full) - joint.ambient_degc
        };
        let mut swing = (f64::INFINITY, f64::NEG_INFINITY);
        for (hour, load) in hours.iter().zip(&loads) {
            let currents = [load * joint.current_a];
            here = ladder.after(&here, &currents, &[3600.0]).unwrap().remove(0);
            let exact = ladder.middle_degc(&here);
            let apart = (exact - hour.middle_degc).abs();
            assert!(apart < 0.01 * rise, "{seed}: {apart} of {rise}");
            swing = (swing.0.min(exact), swing.1.max(exact));
        }
        // The temperature that it follows moves by far more than the permitted difference.
        assert!(swing.1 - swing.0 > 0.2 * rise, "{seed}: {swing:?}");
    }
}

#[test]
fn at_rest_without_a_change_of_resistance_it_is_the_ladder() {
    for seed in 0..20 {
        let mut joint = joint(seed);
        for slice in &mut joint.arm.slices {
            for loss in slice.rings.iter_mut().filter_map(|ring| ring.loss.as_mut()) {
                loss.alpha_per_k = 0.0;
            }
        }
        let mut ladder = Ladder::new(star(&joint)).unwrap();
        let reduced = Reduced::new(&mut ladder, &[joint.current_a]).unwrap();
        for load in [0.3, 1.0, 1.5] {
            let full = ladder.steady(&[load * joint.current_a]).unwrap();
            let state = reduced.at_rest(load).unwrap();
            let apart = reduced.hour(&state).middle_degc - ladder.middle_degc(&full);
            assert!(apart.abs() < 1e-5, "{seed}: {apart}");
        }
    }
}

#[test]
fn a_load_that_runs_away_is_an_error() {
    let joint = joint(5);
    let mut ladder = Ladder::new(star(&joint)).unwrap();
    let reduced = Reduced::new(&mut ladder, &[joint.current_a]).unwrap();
    assert!(reduced.at_rest(1.2).is_ok());
    assert!(reduced.at_rest(50.0).is_err());
}
