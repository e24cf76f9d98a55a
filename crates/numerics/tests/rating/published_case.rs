//! A complete published case: 132 kV, 630 mm² copper, touching trefoil 1 m deep, shields bonded at both ends.
//!
//! Source: cigre_tb880, case 0-1, pp. 63–76; inputs and results read in a public data file, ys, yp and X derived from them.

use std::f64::consts::PI;

use jointwright_numerics::rating::conductor::{
    dielectric_loss_w_per_m, proximity_share, rounded_capacitance_f_per_m, skin_share,
};
use jointwright_numerics::rating::shield::{Shield, reactance_ohm_per_m};
use jointwright_numerics::rating::thermal::{
    TOUCHING_TREFOIL_RATIO, layer_k_m_per_w, touching_trefoil_k_m_per_w,
};
use jointwright_numerics::rating::{
    Bond, Circuit, Conductor, Metal, Neighbours, Outside, Proximity, Steady,
    conductor::at_temperature,
};

use super::{apart, close};

/// tb880.0-1.I, A.
const CURRENT_A: f64 = 821.776_333_4;

/// Inputs that a mistake may change.
#[derive(Clone, Copy)]
struct Input {
    shield_area_mm2: f64,
    jacket_ratio: f64,
    capacitance_inside_m: f64,
    is_bonded: bool,
}

/// The area of a tube of 0.8 mm at 67.7 mm: 170.15 mm².
const INPUT: Input = Input {
    shield_area_mm2: PI * 67.7 * 0.8,
    jacket_ratio: TOUCHING_TREFOIL_RATIO,
    capacitance_inside_m: 33.3e-3,
    is_bonded: true,
};

const CONDUCTOR: Conductor = Conductor {
    resistance_20_ohm_per_m: 2.83e-5,
    coefficient_20_per_k: Metal::COPPER.coefficient_20_per_k,
    skin_ratio: 1.0,
    proximity: Some(PROXIMITY),
};
const PROXIMITY: Proximity = Proximity {
    strand_ratio: 1.0,
    diameter_m: 30.3e-3,
    spacing_m: 75.5e-3,
    neighbours: Neighbours::Two,
};

fn circuit(input: Input) -> Circuit {
    let bond = if input.is_bonded {
        Bond::BothEnds {
            reactance_ohm_per_m: reactance_ohm_per_m(50.0, 75.5e-3, 67.7e-3),
        }
    } else {
        Bond::OneEnd
    };
    let capacitance = rounded_capacitance_f_per_m(2.5, input.capacitance_inside_m, 64.3e-3);
    let phase_v = 132e3 / 3.0_f64.sqrt();
    Circuit {
        frequency_hz: 50.0,
        conductor: CONDUCTOR,
        shield: Some(Shield {
            resistance_20_ohm_per_m: 2.84e-8 / (input.shield_area_mm2 * 1e-6),
            coefficient_20_per_k: 0.00403,
            bond,
        }),
        dielectric_w_per_m: dielectric_loss_w_per_m(50.0, capacitance, phase_v, 0.001),
        inner_k_m_per_w: vec![
            layer_k_m_per_w(2.5, 30.3e-3, 33.3e-3),
            layer_k_m_per_w(3.5, 33.3e-3, 64.3e-3),
            layer_k_m_per_w(2.5, 64.3e-3, 66.9e-3),
        ],
        outer_k_m_per_w: vec![input.jacket_ratio * layer_k_m_per_w(3.5, 68.5e-3, 75.5e-3)],
        outside: Outside::Soil {
            resistance_k_m_per_w: touching_trefoil_k_m_per_w(1.0, 1.0, 75.5e-3).expect("covered"),
        },
        ambient_degc: 20.0,
    }
}

fn rated(input: Input) -> Steady {
    circuit(input).at_temperature(90.0).expect("a rating")
}

// Oracle: tb880.0-1.ys, .yp, .R.
#[test]
fn resistance_of_the_conductor() {
    let direct = at_temperature(2.83e-5, 0.00393, 90.0);
    close(skin_share(direct, 50.0, 1.0), 0.060_124_126_84, 1e-6);
    let proximity = |spacing_m| {
        let proximity = Proximity {
            spacing_m,
            ..PROXIMITY
        };
        proximity_share(direct, 50.0, &proximity).expect("a share")
    };
    close(proximity(75.5e-3), 0.035_100_064_81, 1e-6);
    let found = CONDUCTOR.resistance_ohm_per_m(90.0, 50.0);
    close(found.expect("a resistance"), 3.952_152_638e-5, 1e-6);
    // Twins: the skin effect at the cold resistance; cables a millimetre apart.
    apart(skin_share(2.83e-5, 50.0, 1.0), 0.060_124_126_84, 1e-6);
    apart(proximity(76.5e-3), 0.035_100_064_81, 1e-6);
}

// Oracle: tb880.0-1.T1, .T3, .T4, .Wd.
#[test]
fn resistances_to_heat_and_dielectric_loss() {
    let circuit = circuit(INPUT);
    close(circuit.inner_k_m_per_w.iter().sum(), 0.419_871_489, 1e-6);
    close(circuit.outer_k_m_per_w[0], 0.086_719_374_79, 1e-6);
    let Outside::Soil {
        resistance_k_m_per_w,
    } = circuit.outside
    else {
        unreachable!("the case lies in soil")
    };
    close(resistance_k_m_per_w, 1.594_692_892, 1e-6);
    close(circuit.dielectric_w_per_m, 0.385_138_217_2, 1e-6);
    // Twins: one layer for three; no factor of the trefoil; the bare soil of one cable; the capacitance from the conductor outward.
    apart(layer_k_m_per_w(3.5, 30.3e-3, 66.9e-3), 0.419_871_489, 1e-6);
    let plain = super::published_case::circuit(Input {
        jacket_ratio: 1.0,
        ..INPUT
    });
    apart(plain.outer_k_m_per_w[0], 0.086_719_374_79, 1e-6);
    apart(1.5 / PI * (2.0_f64 / 0.0755).ln(), 1.594_692_892, 1e-6);
    let wide = super::published_case::circuit(Input {
        capacitance_inside_m: 30.3e-3,
        ..INPUT
    });
    apart(wide.dielectric_w_per_m, 0.385_138_217_2, 1e-6);
}

// Oracle: tb880.0-1.Rs, .X, .l1, at the 80 °C of the first guess.
#[test]
fn shield_at_the_first_guess_of_its_temperature() {
    let shield = circuit(INPUT).shield.expect("a shield");
    let own = at_temperature(
        shield.resistance_20_ohm_per_m,
        shield.coefficient_20_per_k,
        80.0,
    );
    close(own, 2.072_723_957e-4, 1e-6);
    close(
        reactance_ohm_per_m(50.0, 75.5e-3, 67.7e-3),
        5.040_331_399e-5,
        1e-6,
    );
    close(
        shield.loss_ratio(3.952_152_638e-5, 80.0),
        0.292_814_251,
        1e-6,
    );
    // Twins: a rounded area; the outer for the mean diameter; a shield as hot as the conductor.
    apart(own * (PI * 67.7 * 0.8) / 170.0, 2.072_723_957e-4, 1e-6);
    apart(
        reactance_ohm_per_m(50.0, 75.5e-3, 68.5e-3),
        5.040_331_399e-5,
        1e-6,
    );
    apart(
        shield.loss_ratio(3.952_152_638e-5, 90.0),
        0.292_814_251,
        1e-6,
    );
}

// Oracle: tb880.0-1.I, .Wc, .Ws, .ts, .te.
#[test]
fn current_losses_and_temperatures() {
    let steady = rated(INPUT);
    close(steady.current_a, CURRENT_A, 1e-6);
    close(steady.conductor_w_per_m, 26.6895, 1e-4);
    close(steady.shield_w_per_m, 7.8442, 1e-4);
    close(steady.shield_degc(), 78.713, 1e-4);
    close(steady.surface_degc(), 75.68, 1e-4);
    close(steady.conductor_degc(), 90.0, 1e-12);
}

// Each of these is a known mistake with this case.
#[test]
fn mistakes_do_not_pass_for_the_case() {
    let rounded = rated(Input {
        shield_area_mm2: 170.0,
        ..INPUT
    });
    apart(rounded.current_a, CURRENT_A, 1e-6);
    close(rounded.current_a, 821.84, 1e-5);
    let plain = rated(Input {
        jacket_ratio: 1.0,
        ..INPUT
    });
    apart(plain.current_a, CURRENT_A, 1e-4);
    apart(plain.surface_degc(), 75.68, 1e-4);
    let wide = rated(Input {
        capacitance_inside_m: 30.3e-3,
        ..INPUT
    });
    apart(wide.current_a, CURRENT_A, 1e-6);
}

// Oracle: tb880.0-1.nocirc, a variation that was not published.
#[test]
fn without_a_current_around_the_shields() {
    let steady = rated(Input {
        is_bonded: false,
        ..INPUT
    });
    close(steady.current_a, 913.310_199_7, 1e-6);
    assert!(steady.shield_w_per_m == 0.0);
    apart(rated(INPUT).current_a, 913.310_199_7, 1e-6);
}

// Oracle: the case solved backwards.
#[test]
fn the_published_current_heats_the_conductor_to_90_degrees() {
    let at = |current_a| {
        let steady = circuit(INPUT).at_current(current_a);
        steady.expect("a state").conductor_degc()
    };
    close(at(CURRENT_A), 90.0, 1e-8);
    apart(at(CURRENT_A * 1.0001), 90.0, 1e-8);
}
