//! Conductivity that rises with the field, compared with a closed form and with its linear limit.

use super::{answers, coaxial, conductor, is_near};
use jointwright_numerics::field::{
    Conductivity, Material, Options, Regime, Section, Unwatched, Wanted, solve,
};
use jointwright_numerics::outline::Point;

const KNEE: f64 = 1e5;
const POWER: f64 = 2.0;
const VOLTS: f64 = 8.7e3;

fn rising(power: f64, knee: f64) -> Material {
    Material {
        relative_permittivity: 2.3,
        conductivity: Conductivity::Rising {
            at_rest: 1e-9,
            knee,
            power,
        },
    }
}

fn section(power: f64, regime: Regime) -> Section {
    let mut section = coaxial(&[6.65e-3, 11.1e-3], 1e-3, &[rising(power, KNEE)], VOLTS);
    section.regime = regime;
    section
}

fn field_at_9() -> Vec<Wanted> {
    vec![Wanted::FieldAt {
        at: Point::new(9e-3, 0.5e-3),
        side: None,
    }]
}

/// Conduction at rest between cylinders: r σ(E) E is the same everywhere, so E(r) solves r (1 + E²/E₁²) E = k for
/// power 2, and k follows from ∫ E dr = U; both by bisection, the integral by Simpson's rule.
fn exact(volts: f64) -> f64 {
    let field = |k: f64, r: f64| bisect(0.0, 1e8, |e| r * (1.0 + (e / KNEE).powi(2)) * e - k);
    let drop = |k: f64| {
        let n = 2000;
        let (a, b) = (6.65e-3, 11.1e-3);
        let step = (b - a) / f64::from(n);
        (0..=n)
            .map(|i| {
                let weight = if i == 0 || i == n {
                    1.0
                } else if i % 2 == 1 {
                    4.0
                } else {
                    2.0
                };
                weight * field(k, a + step * f64::from(i))
            })
            .sum::<f64>()
            * step
            / 3.0
    };
    let k = bisect(0.0, 1e10, |k| drop(k) - volts);
    field(k, 9e-3)
}

fn bisect(mut low: f64, mut high: f64, f: impl Fn(f64) -> f64) -> f64 {
    for _ in 0..80 {
        let middle = 0.5 * (low + high);
        if f(middle) < 0.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    0.5 * (low + high)
}

#[test]
fn conduction_at_rest_with_a_rising_law_agrees_with_quadrature() {
    let found = answers(&section(POWER, Regime::Resistive), &field_at_9(), 1e-5)[0];
    let expected = exact(VOLTS);
    assert!(
        is_near(found.value, expected, 3e-5),
        "{} {expected}",
        found.value
    );
    assert!(!is_near(found.value, exact(1.001 * VOLTS), 3e-5));
    // The law matters: without it the field differs.
    let plain = answers(&section(0.0, Regime::Resistive), &field_at_9(), 1e-5)[0];
    assert!(!is_near(plain.value, expected, 3e-3));
}

#[test]
fn power_0_is_the_linear_law() {
    let regime = Regime::Complex { frequency_hz: 60.0 };
    let rising = answers(&section(0.0, regime), &field_at_9(), 1e-4)[0];
    let mut linear = section(0.0, regime);
    linear.materials[0] = conductor(2.3, 1e-9);
    let linear = answers(&linear, &field_at_9(), 1e-4)[0];
    assert!(is_near(rising.value, linear.value, 1e-10));
}

/// Two layers, the inner one with a steep law: the residuals are reported, they fall, and the last one is small.
#[test]
fn residuals_fall_to_nothing_at_60_hz_with_a_steep_law() {
    let mut section = coaxial(
        &[6.65e-3, 8e-3, 11.1e-3],
        1e-3,
        &[rising(6.0, 2e5), conductor(2.3, 0.0)],
        VOLTS,
    );
    section.regime = Regime::Complex { frequency_hz: 60.0 };
    let solved = solve(&section, &field_at_9(), &Options::default(), &mut Unwatched)
        .unwrap_or_else(|error| panic!("{error}"));
    let residuals = &solved.newton_residuals;
    assert!(residuals.len() > 2, "{residuals:?}");
    assert!(
        residuals.windows(2).all(|pair| pair[1] < pair[0]),
        "{residuals:?}"
    );
    assert!(residuals[residuals.len() - 1] < 1e-7, "{residuals:?}");
    assert!(residuals[0] > 1e-4, "{residuals:?}");
}
