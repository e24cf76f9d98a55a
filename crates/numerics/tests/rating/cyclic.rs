//! Daily loads compared with sums over all days before, and with a finely divided cable in soil.

use std::f64::consts::PI;

use jointwright_numerics::rating::RatingError;
use jointwright_numerics::rating::cyclic::{Cycle, least_factor_ratio};
use jointwright_numerics::rating::transient::{Body, Ground, Transient, Wall};
use proptest::prelude::*;

use super::ladder::{Ladder, cable, wall};
use super::{apart, close};

/// Invented: a house-like day, a works-like day, an hour's peak.
const DAYS: [[f64; 24]; 3] = [
    [
        0.52, 0.48, 0.46, 0.45, 0.46, 0.50, 0.60, 0.70, 0.74, 0.75, 0.76, 0.77, 0.76, 0.75, 0.76,
        0.80, 0.87, 0.96, 1.00, 0.98, 0.92, 0.82, 0.70, 0.60,
    ],
    [
        0.3, 0.3, 0.3, 0.3, 0.3, 0.3, 0.5, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 0.5,
        0.3, 0.3, 0.3, 0.3, 0.3, 0.3,
    ],
    [
        0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 1.0, 0.1, 0.1, 0.1, 0.1, 0.1,
        0.1, 0.1, 0.1, 0.1, 0.1, 0.1,
    ],
];
const CABLES: [[f64; 4]; 2] = [[0.0208, 0.0335, 0.0410, 1.1], [0.0085, 0.0235, 0.0290, 1.0]];

fn buried(body: &Body, outside_m: f64) -> Transient {
    let ground = Ground {
        resistance_k_m_per_w: (4.0 / outside_m).ln() / (2.0 * PI),
        diffusivity_m2_per_s: 5e-7,
        outside_m,
        depth_m: 1.0,
        others: vec![],
    };
    Transient::of(body, Some(ground)).expect("a transient")
}

// Oracle: the sum over 200 days, with the same shares; six hours are within 0.3 % of it. And the finely divided cable: seen 0.1 % above it to 1 % below, and 1 to 3 % below for a peak of one hour, which the line of heat overrates.
#[test]
fn factors_of_days() {
    for (day, low) in DAYS.into_iter().zip([0.99, 0.995, 0.96]) {
        let cycle = Cycle::of(day).expect("a cycle");
        for [conductor, shield, outside, losses] in CABLES {
            let body = cable(conductor, shield, outside, losses);
            let transient = buried(&body, outside);
            let reached = |time_s| transient.reached_ratio(time_s);
            let found = cycle.factor_ratio(reached).expect("a factor");
            close(
                found,
                by_sum(&day, |time_s| reached(time_s).expect("a share")),
                3e-3,
            );
            let exact = by_ladder(&day, &body, outside);
            assert!(
                (low..1.002).contains(&(found / exact)),
                "{found} of {exact}"
            );
            // Law: a cable with heat capacity of its own is no worse.
            let without = cycle.factor_ratio(|time_s| transient.soil_reached_ratio(time_s));
            assert!(without.expect("a factor") <= found);
            // Twins: the steady current for the peak; the mean loss for the warmest hour.
            apart(1.0, exact, 3e-2);
            apart(cycle.loss_load_ratio().sqrt().recip(), exact, 3e-2);
        }
    }
}

// Law: a thick conductor, which itself warms for hours, gains by its own heat capacity.
#[test]
fn the_cables_own_heat_counts_where_it_is_large() {
    let body = cable(0.0303, 0.0669, 0.0755, 1.29);
    let transient = buried(&body, 0.0755);
    let factor = |reached: &dyn Fn(f64) -> Result<f64, RatingError>| {
        let cycle = Cycle::of(DAYS[2]).expect("a cycle");
        cycle.factor_ratio(reached).expect("a factor")
    };
    let with = factor(&|time_s| transient.reached_ratio(time_s));
    let without = factor(&|time_s| transient.soil_reached_ratio(time_s));
    assert!(with > 1.05 * without, "{with} {without}");
    let exact = by_ladder(&DAYS[2], &body, 0.0755);
    assert!((0.9..1.0).contains(&(with / exact)), "{with} {exact}");
}

#[test]
fn a_day_that_is_none_is_refused() {
    let mut day = DAYS[0];
    for wrong in [-0.1, f64::NAN, f64::INFINITY] {
        day[3] = wrong;
        assert_eq!(Cycle::of(day), Err(RatingError::NoNumber), "{wrong}");
    }
    assert_eq!(Cycle::of([0.0; 24]), Err(RatingError::NoNumber));
    let short = Err(RatingError::TooShort {
        time_s: 3600.0,
        least_s: 4000.0,
    });
    let cycle = Cycle::of(DAYS[0]).expect("a cycle");
    assert_eq!(cycle.factor_ratio(|_| short), short);
}

/// A block of hours at the peak is the worst day with its mean loss, and attains the bound; a day with the same mean in two blocks does not.
#[test]
fn a_block_of_hours_is_the_worst_day_with_its_mean_loss() {
    let [conductor, shield, outside, losses] = CABLES[0];
    let transient = buried(&cable(conductor, shield, outside, losses), outside);
    let reached = |time_s| transient.reached_ratio(time_s);
    let factor = |day: [f64; 24]| {
        let cycle = Cycle::of(day).expect("a cycle");
        cycle.factor_ratio(reached).expect("a factor")
    };
    for n_hours in [1, 2, 4, 6, 9, 24] {
        let least = least_factor_ratio(n_hours as f64 / 24.0, reached).expect("a factor");
        let block = std::array::from_fn(|hour| f64::from(u8::from(hour < n_hours)));
        close(least, factor(block), 1e-12);
        if (2..6).contains(&n_hours) {
            let two = std::array::from_fn(|hour| f64::from(u8::from(hour % 12 < n_hours / 2)));
            assert!(factor(two) > 1.02 * least, "{n_hours}");
        }
    }
    for none in [0.0, 0.04, 1.01, f64::NAN] {
        assert_eq!(
            least_factor_ratio(none, reached),
            Err(RatingError::NoNumber)
        );
    }
}

proptest! {
    // Law: a flat day gains nothing; no day loses; the hour of the peak and the unit of the load do not matter; a higher trough gains less.
    #[test]
    fn laws_of_days(
        loads in prop::array::uniform24(0.0..1.0_f64),
        peak_index in 0..24_usize,
        turn in 0..24_usize,
        which in 0..2_usize,
    ) {
        let [conductor, shield, outside, losses] = CABLES[which];
        let transient = buried(&cable(conductor, shield, outside, losses), outside);
        let factor = |day: [f64; 24]| {
            let cycle = Cycle::of(day).expect("a cycle");
            cycle.factor_ratio(|time_s| transient.reached_ratio(time_s)).expect("a factor")
        };
        prop_assert!((factor([0.7; 24]) - 1.0).abs() < 1e-14);
        let mut day = loads;
        day[peak_index] = 1.0;
        let found = factor(day);
        prop_assert!(found >= 1.0 - 1e-14, "{}", found);
        let mut other = day.map(|load| 450.0 * load);
        other.rotate_left(turn);
        prop_assert!((factor(other) - found).abs() < 1e-12);
        let higher = day.map(|load| load + 0.5 * (1.0 - load));
        prop_assert!(factor(higher) <= found + 1e-14);
        let least = Cycle::of(day).expect("a cycle").loss_load_ratio();
        prop_assert!(found <= least.sqrt().recip() + 1e-14);
        // The mean loss alone promises no more than the day has.
        let promised = least_factor_ratio(least, |time_s| transient.reached_ratio(time_s));
        prop_assert!(promised.expect("a factor") <= found + 1e-14);
    }
}

/// The same factor from the hours of 200 days before and the mean before those, at the warmest hour.
fn by_sum(day: &[f64; 24], reached: impl Fn(f64) -> f64) -> f64 {
    let n = 24 * 200;
    let shares: Vec<f64> = std::iter::once(0.0)
        .chain((1..=n).map(|hours| reached(f64::from(hours) * 3600.0)))
        .collect();
    let mean = day.iter().map(|load| load * load).sum::<f64>() / 24.0;
    let warmest = (0..24)
        .map(|last| {
            let hours = shares.windows(2).enumerate();
            let sum: f64 = hours
                .map(|(before, pair)| {
                    let load = day[(last + 24 * 200 - before) % 24];
                    load * load * (pair[1] - pair[0])
                })
                .sum();
            sum + mean * (1.0 - shares[shares.len() - 1])
        })
        .fold(0.0, f64::max);
    warmest.sqrt().recip()
}

/// The same factor from a finely divided cable in soil whose temperature is fixed at twice its depth, after three days from the mean.
fn by_ladder(day: &[f64; 24], body: &Body, outside_m: f64) -> f64 {
    let soil = Wall {
        heat_j_per_m3_k: 1.0 / 5e-7,
        ..wall(outside_m, 4.0, 1.0)
    };
    let ladder = Ladder::of(body, Some((soil, 100)));
    let mean = day.iter().map(|load| load * load).sum::<f64>() / 24.0;
    let mut rises = ladder.steady(mean);
    let mut warmest = 0.0_f64;
    for hour in 0..72 {
        let loss = day[hour % 24] * day[hour % 24];
        for _ in 0..60 {
            ladder.step(&mut rises, loss, 60.0);
            if hour >= 48 {
                warmest = warmest.max(rises[0]);
            }
        }
    }
    (ladder.steady(1.0)[0] / warmest).sqrt()
}
