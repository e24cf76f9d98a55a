//! The exponential integral, and the warming of soil.

use jointwright_numerics::rating::RatingError;
use jointwright_numerics::rating::step::{attainment_ratio, exponential_integral};
use jointwright_numerics::rating::thermal::buried_k_m_per_w;

use super::{apart, close};

fn e1(argument: f64) -> f64 {
    exponential_integral(argument).expect("a value")
}

// Oracle: e1.0.1, .0.5, .2.0: abramowitz_stegun table 5.1, recalled and recomputed elsewhere.
#[test]
fn printed_values_of_the_integral() {
    for (argument, expected) in [
        (0.1, 1.822_923_958),
        (0.5, 0.559_773_594_8),
        (2.0, 0.048_900_510_7),
    ] {
        close(e1(argument), expected, 1e-8);
        apart(e1(argument * 1.000_001), expected, 1e-8);
    }
}

// Oracle: the integral itself, e⁻ˣ ∫ e⁻ᵘ/(x + u) du by Simpson's rule in ln(1 + u/x); and its slope.
#[test]
fn the_integral_is_the_integral() {
    for argument in [1e-6, 1e-3, 0.3, 0.999, 1.0, 1.001, 1.7, 5.0, 30.0] {
        let top = (1.0 + 60.0_f64 / argument).ln();
        let n = 20_000;
        let step = top / f64::from(n);
        let height = |at: f64| (-argument * at.exp_m1()).exp();
        let sum: f64 = (0..=n)
            .map(|index| {
                let weight = if index == 0 || index == n {
                    1.0
                } else if index % 2 == 1 {
                    4.0
                } else {
                    2.0
                };
                weight * height(f64::from(index) * step)
            })
            .sum();
        let expected = (-argument).exp() * sum * step / 3.0;
        close(e1(argument), expected, 1e-10);
    }
    // The series and the continued fraction agree where they meet.
    let (below, above) = (e1(1.0 - 1e-12), e1(1.0 + 1e-12));
    close(below - above, 2e-12 * (-1.0_f64).exp(), 1e-3);
    assert!(e1(800.0) == 0.0 && e1(f64::INFINITY) == 0.0);
}

#[test]
fn no_integral_without_an_argument_above_0() {
    for argument in [0.0, -1.0, f64::NAN, f64::NEG_INFINITY] {
        assert!(matches!(
            exponential_integral(argument),
            Err(RatingError::NoIntegral { .. })
        ));
    }
    for (time_s, diffusivity) in [(0.0, 5e-7), (-1.0, 5e-7), (1.0, 0.0), (f64::NAN, 5e-7)] {
        let refused = attainment_ratio(0.0755, 1.0, diffusivity, time_s);
        let is_refused = matches!(refused, Err(RatingError::NoIntegral { .. }));
        assert!(is_refused || refused == Ok(0.0), "{time_s}: {refused:?}");
    }
    assert!(matches!(
        attainment_ratio(0.3, 0.1, 5e-7, 1.0),
        Err(RatingError::NotBuried { .. })
    ));
}

// Oracle: iec60853.beta.6h, .24h: the formula from memory, evaluated elsewhere.
#[test]
fn attainment_after_hours() {
    for (hours, expected) in [(6.0, 0.361_106_625_7), (24.0, 0.532_622_401_7)] {
        let found = |depth| attainment_ratio(0.0755, depth, 5e-7, hours * 3600.0).expect("a share");
        close(found(1.0), expected, 1e-6);
        apart(found(1.01), expected, 1e-6);
    }
}

// Oracle: its limit is the steady resistance of the same soil: the share reached rises to 1, and never exceeds it.
#[test]
fn attainment_rises_to_the_steady_rise() {
    let mut last = 0.0;
    for step in 0..60 {
        let time_s = 60.0 * 1.4_f64.powi(step);
        let share = attainment_ratio(0.0755, 1.0, 5e-7, time_s).expect("a share");
        assert!(
            share >= last && share <= 1.0,
            "{time_s}: {share} after {last}"
        );
        last = share;
    }
    close(last, 1.0, 1e-3);
    // Its denominator is the steady resistance for a cable that is thin compared with its depth.
    let steady = buried_k_m_per_w(1.0, 1.0, 0.0755).expect("covered");
    close(
        (4.0_f64 / 0.0755).ln() / (2.0 * std::f64::consts::PI),
        steady,
        1e-3,
    );
}
