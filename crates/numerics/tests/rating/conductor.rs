//! Resistance of conductors, skin effect, dielectric loss.

use std::f64::consts::PI;

use jointwright_numerics::rating::conductor::{
    coaxial_capacitance_f_per_m, dielectric_loss_w_per_m, gauge_diameter_m,
    rounded_capacitance_f_per_m, skin_share,
};
use jointwright_numerics::rating::{Conductor, Metal, Neighbours, Proximity, RatingError};

use super::{CMIL_M2, apart, close};

/// Feet in a metre times a thousand: Ω/m to Ω per thousand feet.
const PER_KFT: f64 = 304.8;
/// Resistivities behind the rows: 10.371 and 17.002 Ω·cmil/ft are 100 % and 61.0 % of the standard copper; to 0.03 %.
const LAY: f64 = 1.02;

// Oracle: cond.rdc20.*, ASTM B8/B496 and B231/B400 with a lay of 2 %, recalled and recomputed elsewhere; tolerance of the rows.
#[test]
fn resistance_of_sizes_at_20_degrees() {
    let rows = [
        (Metal::COPPER, 66.36, 0.159_409_6),
        (Metal::ALUMINIUM, 66.36, 0.261_332_7),
        (Metal::COPPER, 105.6, 0.100_174_4),
        (Metal::ALUMINIUM, 105.6, 0.164_223_9),
        (Metal::COPPER, 211.6, 0.049_992_53),
        (Metal::ALUMINIUM, 211.6, 0.081_956_71),
        (Metal::COPPER, 350.0, 0.030_224_06),
        (Metal::ALUMINIUM, 350.0, 0.049_548_69),
        (Metal::COPPER, 500.0, 0.021_156_84),
        (Metal::ALUMINIUM, 500.0, 0.034_684_08),
        (Metal::COPPER, 750.0, 0.014_104_56),
        (Metal::ALUMINIUM, 750.0, 0.023_122_72),
        (Metal::COPPER, 1000.0, 0.010_578_42),
        (Metal::ALUMINIUM, 1000.0, 0.017_342_04),
    ];
    for (metal, kcmil, expected) in rows {
        let area = kcmil * 1e3 * CMIL_M2;
        let found = |lay| PER_KFT * metal.resistance_ohm_per_m(area, lay, 20.0);
        close(found(LAY), expected, 5e-3);
        // Twin: straight wires.
        apart(found(1.0), expected, 5e-3);
    }
}

// Oracle: 75 °C rows of NEC chapter 9 table 8, read in a public copy; the rule keeps within 0.65 % of them.
#[test]
fn resistance_of_sizes_at_75_degrees() {
    let rows = [
        (Metal::COPPER, 105.6, 0.122),
        (Metal::COPPER, 250.0, 0.0515),
        (Metal::COPPER, 500.0, 0.0258),
        (Metal::ALUMINIUM, 105.6, 0.201),
        (Metal::ALUMINIUM, 250.0, 0.0847),
        (Metal::ALUMINIUM, 500.0, 0.0424),
    ];
    for (metal, kcmil, expected) in rows {
        let area = kcmil * 1e3 * CMIL_M2;
        let found = |degc| PER_KFT * metal.resistance_ohm_per_m(area, LAY, degc);
        close(found(75.0), expected, 6.5e-3);
        // Twin: three degrees more.
        apart(found(78.0), expected, 6.5e-3);
    }
}

// Oracle: cond.alpha75.*: 1/(B + 75); cond.alpha20.*, cond.rho20.*: iec_60287_1_1 table 1.
#[test]
fn metals_are_those_of_the_table() {
    for (metal, resistivity, at_20, at_75) in [
        (Metal::COPPER, 1.7241e-8, 0.00393, 0.003_23),
        (Metal::ALUMINIUM, 2.8264e-8, 0.00403, 0.003_30),
    ] {
        close(metal.resistivity_20_ohm_m, resistivity, 1e-6);
        close(metal.coefficient_20_per_k, at_20, 1e-6);
        let coefficient = metal.coefficient_20_per_k;
        close(coefficient / (1.0 + coefficient * 55.0), at_75, 2e-3);
        apart(coefficient, at_75, 2e-3);
    }
}

// Oracle: cond.awg.*: diameters in inches, areas in circular mils, both as wire tables print them; tolerance of the rows.
#[test]
fn wires_of_the_gauge() {
    for (gauge, inches, cmil) in [
        (-3, 0.46, 211_600.0),
        (0, 0.3249, 105_500.0),
        (2, 0.2576, 66_370.0),
        (10, 0.1019, 10_380.0),
        (12, 0.080_81, 6530.0),
        (14, 0.064_08, 4107.0),
    ] {
        let found = |gauge| gauge_diameter_m(gauge) / 25.4e-3;
        close(found(gauge), inches, 5e-4);
        close(found(gauge).powi(2) * 1e6, cmil, 5e-4);
        // Twin: 4/0 counted as −4, and so on.
        apart(found(gauge - 1), inches, 5e-4);
    }
}

// Oracle: ac.skin.Cu.*, the classic ratios at 60 Hz and 65 °C, recalled and recomputed elsewhere.
#[test]
fn skin_effect_of_sizes() {
    for (kcmil, expected) in [
        (250.0, 1.005),
        (350.0, 1.009),
        (500.0, 1.018),
        (750.0, 1.039),
    ] {
        let direct = Metal::COPPER.resistance_ohm_per_m(kcmil * 1e3 * CMIL_M2, LAY, 65.0);
        close(1.0 + skin_share(direct, 60.0, 1.0), expected, 1.5e-3);
        // Twin: no effect at all; and 25 Hz.
        apart(1.0, expected, 1.5e-3);
        apart(1.0 + skin_share(direct, 25.0, 1.0), expected, 1.5e-3);
    }
}

/// Ratio of the resistance of a solid round wire to that for direct current, by the series of Kelvin's functions: Re of (z/2) J0(z)/J1(z), z² = −j x².
fn kelvin_ratio(argument: f64) -> f64 {
    // With w = −z²/4 = j x²/4: J0 = Σ wⁿ/(n!)², 2 J1/z = Σ wⁿ/(n! (n + 1)!).
    let step = argument * argument / 4.0;
    let (mut top, mut bottom) = ([0.0; 2], [0.0; 2]);
    let mut term = [1.0, 0.0];
    for n in 0..60 {
        let after = f64::from(n) + 1.0;
        top = [top[0] + term[0], top[1] + term[1]];
        bottom = [bottom[0] + term[0] / after, bottom[1] + term[1] / after];
        term = [
            -term[1] * step / (after * after),
            term[0] * step / (after * after),
        ];
    }
    (top[0] * bottom[0] + top[1] * bottom[1]) / (bottom[0] * bottom[0] + bottom[1] * bottom[1])
}

// Oracle: the exact field in a solid round wire, summed here. Seen: 0.08 % of R up to 2.8, 0.6 % in the upper branches up to 8.
#[test]
fn skin_effect_of_a_solid_wire() {
    let share = |argument: f64| {
        // x² = 8πf/R' · 10⁻⁷: R' that gives this value at 50 Hz.
        let direct = 8.0 * PI * 50.0 * 1e-7 / (argument * argument);
        skin_share(direct, 50.0, 1.0)
    };
    for step in 1..=28 {
        let argument = f64::from(step) * 0.1;
        close(1.0 + share(argument), kelvin_ratio(argument), 1e-3);
    }
    for step in 29..=80 {
        let argument = f64::from(step) * 0.1;
        close(1.0 + share(argument), kelvin_ratio(argument), 6e-3);
    }
    // Twins: the wire's diameter taken for its radius; the lowest branch carried on.
    apart(1.0 + share(2.0), kelvin_ratio(2.0 * 2.0_f64.sqrt()), 1e-3);
    let carried = 8.0_f64.powi(4) / (192.0 + 0.8 * 8.0_f64.powi(4));
    apart(1.0 + carried, kelvin_ratio(8.0), 6e-3);
}

#[test]
fn proximity_beyond_its_formula_is_refused() {
    let conductor = Conductor {
        resistance_20_ohm_per_m: 1e-5,
        coefficient_20_per_k: 0.00393,
        skin_ratio: 1.0,
        proximity: Some(Proximity {
            strand_ratio: 1.0,
            diameter_m: 0.05,
            spacing_m: 0.1,
            neighbours: Neighbours::Two,
        }),
    };
    let refused = conductor.resistance_ohm_per_m(20.0, 60.0);
    assert!(matches!(
        refused,
        Err(RatingError::BeyondProximity { argument }) if argument > 2.8
    ));
    assert!(conductor.resistance_ohm_per_m(20.0, 20.0).is_ok());
    let lone = Conductor {
        proximity: None,
        ..conductor
    };
    assert!(lone.resistance_ohm_per_m(20.0, 60.0).is_ok());
}

// Oracle: two conductors far apart do not affect each other, and the effect of three is more than that of two at the same distance, by less than 2:1.
#[test]
fn proximity_falls_with_the_square_of_the_distance() {
    let share = |neighbours, spacing_m| {
        let near = Proximity {
            strand_ratio: 1.0,
            diameter_m: 0.03,
            spacing_m,
            neighbours,
        };
        jointwright_numerics::rating::conductor::proximity_share(3.6e-5, 50.0, &near)
            .expect("a share")
    };
    for neighbours in [Neighbours::One, Neighbours::Two] {
        close(share(neighbours, 10.0) / share(neighbours, 20.0), 4.0, 1e-5);
    }
    let ratio = share(Neighbours::Two, 1.0) / share(Neighbours::One, 1.0);
    assert!((1.0..2.0).contains(&ratio), "{ratio}");
}

// Oracle: tb880.wd.33kV, cigre_tb880 p. 198.
#[test]
fn dielectric_loss_at_33_kilovolts() {
    let found = |phase_v| dielectric_loss_w_per_m(50.0, 0.237_683_304e-9, phase_v, 0.004);
    close(found(19_052.558_8), 0.108_421_437_5, 1e-9);
    // Twin: the voltage between phases.
    apart(found(33e3), 0.108_421_437_5, 1e-9);
}

// Oracle: the standard's factor 1/18 replaces 2π ε0 · 10⁹ = 1/17.975.
#[test]
fn the_rounded_capacitance_is_a_little_less() {
    let exact = coaxial_capacitance_f_per_m(2.5, 33.3e-3, 64.3e-3);
    let rounded = rounded_capacitance_f_per_m(2.5, 33.3e-3, 64.3e-3);
    close(exact / rounded, 1.001_39, 1e-5);
    apart(exact, rounded, 1e-3);
}
