//! The projected star compared with the full ladder.

use super::joints::joint;
use jointwright_numerics::ladder::{Hub, Ladder, Projected, Rises, Star, Temperatures};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// One to three joints that meet in a hub, the load of each, and another load.
struct Case {
    star: Star,
    loads_a: Vec<f64>,
    emergency_a: Vec<f64>,
    rng: ChaCha8Rng,
}

fn case(seed: u64) -> Case {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    let n_arms = 1 + seed % 3;
    let joints: Vec<_> = (0..n_arms).map(|arm| joint(3 * seed + arm)).collect();
    let hub = Hub {
        capacity_j_per_k: rng.random_range(0.0..200.0),
        at20_ohm: rng.random_range(0.0..4e-5),
        alpha_per_k: 4e-3,
        ..Hub::default()
    };
    let loads_a: Vec<f64> = joints
        .iter()
        .map(|joint| rng.random_range(0.5..1.0) * joint.current_a)
        .collect();
    let emergency_a = loads_a
        .iter()
        .map(|load| rng.random_range(1.0..2.5) * load)
        .collect();
    let arms = joints.into_iter().map(|joint| joint.arm).collect();
    Case {
        star: Star { arms, hub },
        loads_a,
        emergency_a,
        rng,
    }
}

/// Greatest difference of any core or watched place, and the greatest rise above the coldest surroundings.
fn apart(ladder: &Ladder, projected: &Projected, full: &Temperatures, rises: &Rises) -> [f64; 2] {
    let slices = ladder.star().arms.iter().flat_map(|arm| &arm.slices);
    let coldest = slices.fold(f64::INFINITY, |least, of| least.min(of.ambient_degc));
    let mut found: [f64; 2] = [0.0; 2];
    for arm in 0..ladder.star().arms.len() {
        let core = ladder.along_core(full, arm);
        let own = projected.along_core(rises, arm);
        for ((_, full), (_, own)) in core.iter().zip(&own) {
            found[0] = found[0].max((full - own).abs());
            found[1] = found[1].max(full - coldest);
        }
        let watched = ladder.hottest_watched_of(full, arm).unwrap().1;
        let own = projected.hottest_watched_of(rises, arm).unwrap().1;
        found[0] = found[0].max((watched - own).abs());
        // A state that has run away beyond all numbers is hot, too.
        let hotter = own.max(if watched.is_finite() && watched > coldest - 1.0 {
            watched
        } else {
            f64::INFINITY
        });
        found[1] = found[1].max(hotter - coldest);
    }
    found
}

/// Differences of one case: two loads at rest, two in time; each with the rise, the difference and the states' own estimate.
fn compared(seed: u64) -> Vec<[f64; 3]> {
    let mut case = case(seed);
    let mut ladder = Ladder::new(case.star).unwrap();
    let start = ladder.steady(&case.loads_a).unwrap();
    let still = ladder.steady(&vec![0.0; case.loads_a.len()]).unwrap();
    let probe = &case.emergency_a;
    let projected = Projected::new(&mut ladder, &case.loads_a, &start, &[&still], probe).unwrap();
    let mut found = Vec::new();
    let mut add = |ladder: &Ladder, currents: &[f64], full: &Temperatures, rises: &Rises| {
        let [apart, rise] = apart(ladder, &projected, full, rises);
        found.push([rise, apart, projected.error_k(currents)]);
    };
    for most in [0.9, 1.3] {
        let ratio = case.rng.random_range(0.3..most);
        let loads: Vec<f64> = case.loads_a.iter().map(|load| ratio * load).collect();
        if let (Ok(full), Ok(rises)) = (ladder.steady(&loads), projected.at_rest(&loads)) {
            add(&ladder, &loads, &full, &rises);
        }
    }
    for _ in 0..2 {
        let time = 60.0 * case.rng.random_range(0.0_f64..8.0).exp();
        let full = ladder.after(&start, probe, &[time]).unwrap().remove(0);
        add(
            &ladder,
            probe,
            &full,
            &projected.course(probe).unwrap().after(time),
        );
    }
    found
}

/// Number of stars: enough to notice, and a thousand in `./test --long`.
#[expect(
    clippy::disallowed_methods,
    reason = "`./test --long` tells the tests by it to try many"
)]
fn n_stars() -> u64 {
    if std::env::var_os("JOINTWRIGHT_LONG").is_some() {
        1000
    } else {
        30
    }
}

#[test]
fn a_projected_star_follows_the_full_ladder_and_says_its_error() {
    let n = n_stars();
    let (mut n_all, mut n_within) = (0, 0);
    let mut estimates_k: Vec<f64> = Vec::new();
    let mut worst: f64 = 0.0;
    for seed in 0..n {
        for [rise, apart, estimate] in compared(seed) {
            // A state that has run away is no state of a joint.
            if rise > 400.0 {
                continue;
            }
            assert!(
                apart <= f64::max(0.2, 0.01 * rise),
                "{seed}: {apart} of {rise}"
            );
            n_all += 1;
            n_within += usize::from(apart <= estimate.max(1e-3));
            worst = worst.max(apart);
            estimates_k.push(estimate);
        }
    }
    assert!(n_all > 3 * n as usize, "{n_all}");
    assert!(20 * n_within >= 19 * n_all, "{n_within} of {n_all}");
    // An estimate that holds because it is large says nothing: nineteen of twenty are below 1 K.
    estimates_k.sort_by(f64::total_cmp);
    let most = estimates_k[n_all * 19 / 20];
    assert!(worst > 0.0 && most < 1.0, "{worst} {most}");
}
