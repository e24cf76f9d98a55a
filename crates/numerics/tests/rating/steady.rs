//! Laws of steady states, and refusals.

use std::f64::consts::PI;

use jointwright_numerics::rating::shield::{Shield, reactance_ohm_per_m};
use jointwright_numerics::rating::thermal::{
    Filling, Hanging, StillAir, buried_k_m_per_w, group_diameter_m,
};
use jointwright_numerics::rating::{Bond, Circuit, Conductor, Metal, Outside, RatingError};
use proptest::prelude::*;

use super::{apart, close};

const NEHER_MCGRATH: StillAir = StillAir::NeherMcGrath {
    emissivity_ratio: 0.95,
};

fn outside(kind: usize, size: f64) -> Outside {
    match kind {
        0 => Outside::Soil {
            resistance_k_m_per_w: 0.5 + size,
        },
        1 => Outside::Duct {
            filling: Filling::AIR_IN_PLASTIC,
            n_cables: 3,
            group_m: group_diameter_m(3, 0.03 + 0.02 * size).expect("three cables"),
            beyond_k_m_per_w: 0.3 + 0.4 * size,
        },
        2 => Outside::Conduit {
            filling: Filling::AIR_IN_METAL,
            n_cables: 3,
            group_m: group_diameter_m(3, 0.03 + 0.02 * size).expect("three cables"),
            film: NEHER_MCGRATH,
            outside_m: 0.1 + 0.06 * size,
        },
        3 => Outside::Air {
            film: NEHER_MCGRATH,
            outside_m: 0.02 + 0.03 * size,
        },
        4 => Outside::DryingSoil {
            moist_k_m_per_w: 0.5 + size,
            dry_ratio: 2.5,
            critical_rise_k: 25.0,
        },
        _ => Outside::Air {
            film: StillAir::Coefficient(Hanging::ALONE),
            outside_m: 0.02 + 0.03 * size,
        },
    }
}

fn circuit(area_mm2: f64, shield_ohm_per_m: f64, kind: usize, size: f64) -> Circuit {
    Circuit {
        frequency_hz: 60.0,
        conductor: Conductor {
            resistance_20_ohm_per_m: Metal::ALUMINIUM.resistance_ohm_per_m(
                area_mm2 * 1e-6,
                1.02,
                20.0,
            ),
            coefficient_20_per_k: Metal::ALUMINIUM.coefficient_20_per_k,
            skin_ratio: 1.0,
            proximity: None,
        },
        shield: Some(Shield {
            resistance_20_ohm_per_m: shield_ohm_per_m,
            coefficient_20_per_k: Metal::COPPER.coefficient_20_per_k,
            bond: Bond::BothEnds {
                reactance_ohm_per_m: reactance_ohm_per_m(60.0, 0.2, 0.03),
            },
        }),
        dielectric_w_per_m: 0.05,
        inner_k_m_per_w: vec![0.05, 0.35],
        outer_k_m_per_w: vec![0.1],
        outside: outside(kind, size),
        ambient_degc: 25.0,
    }
}

proptest! {
    // Law: the current for a temperature brings the conductor to that temperature.
    #[test]
    fn forth_and_back(
        area_mm2 in 30.0..1000.0_f64,
        shield in 5e-5..2e-3_f64,
        kind in 0..6_usize,
        size in 0.0..1.0_f64,
        degc in 60.0..130.0_f64,
    ) {
        let circuit = circuit(area_mm2, shield, kind, size);
        let there = circuit.at_temperature(degc).expect("a rating");
        let back = circuit.at_current(there.current_a).expect("a state");
        prop_assert!((back.conductor_degc() - degc).abs() < 1e-8, "{}", back.conductor_degc());
        prop_assert!((back.surface_degc() - there.surface_degc()).abs() < 1e-8);
        // Each layer is cooler than the one inside it.
        let warm: Vec<f64> = there.inner_degc.iter().chain(&there.outer_degc).copied().collect();
        prop_assert!(warm.windows(2).all(|pair| pair[0] > pair[1]), "{warm:?}");
        prop_assert!(there.surface_degc() > circuit.ambient_degc);
    }

    // Law: more current is warmer; a hotter limit and cooler surroundings permit more; a loss in the shield permits less.
    #[test]
    fn more_current_is_never_cooler(
        area_mm2 in 30.0..1000.0_f64,
        shield in 5e-5..2e-3_f64,
        kind in 0..6_usize,
        size in 0.0..1.0_f64,
    ) {
        let circuit = circuit(area_mm2, shield, kind, size);
        let rated = |circuit: &Circuit, degc| circuit.at_temperature(degc).expect("a rating").current_a;
        let at_90 = rated(&circuit, 90.0);
        prop_assert!(rated(&circuit, 105.0) > at_90);
        let cooler = Circuit { ambient_degc: 15.0, ..circuit.clone() };
        prop_assert!(rated(&cooler, 90.0) > at_90);
        let bare = Circuit { shield: None, ..circuit.clone() };
        prop_assert!(rated(&bare, 90.0) > at_90);
        let mut last = f64::NEG_INFINITY;
        for step in 0..12 {
            let current = at_90 * f64::from(step) / 10.0;
            let degc = circuit.at_current(current).expect("a state").conductor_degc();
            prop_assert!(degc > last, "{current} A: {degc} after {last}");
            last = degc;
        }
    }

    #[test]
    fn hostile_numbers_never_panic_and_never_give_a_number_that_is_none(
        numbers in prop::collection::vec(
            prop::sample::select(vec![0.0, -1.0, 1e308, -1e308, 1e-308, f64::NAN, f64::INFINITY, 1.0, 50.0]),
            12,
        ),
        kind in 0..6_usize,
    ) {
        let mut circuit = circuit(240.0, 2e-4, kind, 0.5);
        circuit.frequency_hz = numbers[0];
        circuit.conductor.resistance_20_ohm_per_m = numbers[1];
        circuit.conductor.coefficient_20_per_k = numbers[2];
        circuit.dielectric_w_per_m = numbers[3];
        circuit.inner_k_m_per_w = vec![numbers[4], numbers[5]];
        circuit.outer_k_m_per_w = vec![numbers[6]];
        circuit.ambient_degc = numbers[7];
        circuit.shield = Some(Shield {
            resistance_20_ohm_per_m: numbers[8],
            coefficient_20_per_k: numbers[9],
            bond: Bond::BothEnds { reactance_ohm_per_m: numbers[10] },
        });
        for steady in [circuit.at_temperature(numbers[11]), circuit.at_current(numbers[11])].into_iter().flatten() {
            prop_assert!(steady.current_a.is_finite() && steady.current_a >= 0.0);
            prop_assert!(steady.conductor_degc().is_finite() && steady.surface_degc().is_finite());
            prop_assert!(steady.shield_w_per_m.is_finite() && steady.conductor_w_per_m.is_finite());
        }
    }
}

// Oracle: a straight line: with a linear resistance and one resistance to heat, θ = (θa + T I² R0 (1 − 20 α)) / (1 − T I² R0 α).
#[test]
fn a_current_that_nothing_can_cool_is_refused() {
    let mut circuit = circuit(240.0, 2e-4, 0, 0.5);
    circuit.frequency_hz = 0.0;
    circuit.shield = None;
    circuit.dielectric_w_per_m = 0.0;
    let (r, alpha) = (
        circuit.conductor.resistance_20_ohm_per_m,
        circuit.conductor.coefficient_20_per_k,
    );
    let resistance = 0.05 + 0.35 + 0.1 + 1.0;
    let exact = |current: f64| {
        let gain = resistance * current * current * r;
        (25.0 + gain * (1.0 - 20.0 * alpha)) / (1.0 - gain * alpha)
    };
    let found = circuit.at_current(400.0).expect("a state").conductor_degc();
    close(found, exact(400.0), 1e-12);
    apart(found, exact(401.0), 1e-3);
    // Where the denominator vanishes, no temperature balances the current: thermal runaway.
    let most = (1.0 / (resistance * r * alpha)).sqrt();
    assert!(matches!(
        circuit.at_current(most * 1.01),
        Err(RatingError::Runaway { current_a, .. }) if current_a > most
    ));
    assert!(circuit.at_current(most * 0.8).is_ok());
}

#[test]
fn what_has_no_rating_says_why() {
    let plain = circuit(240.0, 2e-4, 0, 0.5);
    // Surroundings hotter than the limit.
    assert!(matches!(
        plain.at_temperature(20.0),
        Err(RatingError::NoRoom { .. })
    ));
    // The dielectric loss alone uses the whole difference: (0.2 + 1.1) K·m/W times 100 W/m are 130 K.
    let lossy = Circuit {
        dielectric_w_per_m: 100.0,
        ..plain.clone()
    };
    let Err(RatingError::NoRoom { conductor_degc }) = lossy.at_temperature(90.0) else {
        panic!("it has no room");
    };
    close(conductor_degc, 25.0 + 100.0 * (0.2 + 0.1 + 1.0), 1e-12);
    // There is no thermal resistance.
    let open = Circuit {
        inner_k_m_per_w: vec![],
        outer_k_m_per_w: vec![],
        dielectric_w_per_m: 0.0,
        outside: Outside::Soil {
            resistance_k_m_per_w: 0.0,
        },
        ..plain.clone()
    };
    assert!(matches!(
        open.at_temperature(90.0),
        Err(RatingError::NoResistance)
    ));
    assert!(matches!(plain.at_current(-1.0), Err(RatingError::NoNumber)));
    // Invalid surroundings.
    for number in [f64::NAN, f64::INFINITY, -1.0] {
        let nowhere = [
            Outside::Soil {
                resistance_k_m_per_w: number,
            },
            Outside::DryingSoil {
                moist_k_m_per_w: 1.0,
                dry_ratio: number,
                critical_rise_k: 25.0,
            },
            Outside::DryingSoil {
                moist_k_m_per_w: 1.0,
                dry_ratio: 2.5,
                critical_rise_k: number,
            },
            Outside::Duct {
                filling: Filling::AIR_IN_PLASTIC,
                n_cables: 3,
                group_m: 0.08,
                beyond_k_m_per_w: number,
            },
            Outside::Conduit {
                filling: Filling::AIR_IN_METAL,
                n_cables: 3,
                group_m: number,
                film: NEHER_MCGRATH,
                outside_m: 0.1,
            },
            Outside::Air {
                film: StillAir::NeherMcGrath {
                    emissivity_ratio: number,
                },
                outside_m: 0.04,
            },
            Outside::Air {
                film: StillAir::Coefficient(Hanging::ALONE),
                outside_m: number,
            },
        ];
        for outside in nowhere {
            let circuit = Circuit {
                outside,
                ..plain.clone()
            };
            assert_eq!(circuit.at_temperature(90.0), Err(RatingError::NoNumber));
            assert_eq!(circuit.at_current(100.0), Err(RatingError::NoNumber));
        }
    }
}

// Oracle: the standard's formula for soil that dries, [Δθ − Wd (T1/2 + T3 + v T4) + (v − 1) Δθx] / [R (T1 + (1 + λ1)(T3 + v T4))], with R and λ1 from the state itself.
#[test]
fn soil_that_dries_by_its_formula() {
    for (size, ratio, critical) in [(0.5, 2.5, 25.0), (0.2, 3.0, 15.0), (0.9, 1.5, 35.0)] {
        let mut circuit = circuit(240.0, 2e-4, 0, size);
        let moist = 0.5 + size;
        let moist_state = circuit.at_temperature(90.0).expect("a rating");
        let with = |dry_ratio, critical_rise_k| Outside::DryingSoil {
            moist_k_m_per_w: moist,
            dry_ratio,
            critical_rise_k,
        };
        circuit.outside = with(ratio, critical);
        let state = circuit.at_temperature(90.0).expect("a rating");
        let dielectric = 0.05;
        let (inner, outer) = (0.4, 0.1);
        let room = 65.0 - dielectric * (inner / 2.0 + outer + ratio * moist);
        let resists = |soil: f64| {
            state.resistance_ohm_per_m * (inner + (1.0 + state.shield_ratio) * (outer + soil))
        };
        let expected = ((room + (ratio - 1.0) * critical) / resists(ratio * moist)).sqrt();
        close(state.current_a, expected, 1e-12);
        assert!(state.current_a < moist_state.current_a);
        assert!(state.surface_degc() - 25.0 > critical);
        // Twins: all soil dry; all moist.
        apart((room / resists(ratio * moist)).sqrt(), expected, 2e-2);
        apart(moist_state.current_a, expected, 2e-2);
        // Law: soil that is no drier, or a limit that is not reached, equals moist soil.
        for outside in [with(1.0, critical), with(ratio, 65.0)] {
            circuit.outside = outside;
            assert_eq!(circuit.at_temperature(90.0), Ok(moist_state.clone()));
        }
    }
}

// Oracle: about one cable the limit of the dry zone is a circle, as every line of one temperature is: resistance within and without, each by its own circle.
#[test]
fn the_dry_zone_is_a_circle() {
    let (moist_soil, dry_soil, depth, outside_m, critical) = (0.9, 2.5, 0.8, 0.06, 20.0);
    let moist = buried_k_m_per_w(moist_soil, depth, outside_m).expect("covered");
    let mut circuit = circuit(240.0, 2e-4, 0, 0.5);
    circuit.outside = Outside::DryingSoil {
        moist_k_m_per_w: moist,
        dry_ratio: dry_soil / moist_soil,
        critical_rise_k: critical,
    };
    let state = circuit.at_temperature(90.0).expect("a rating");
    let heat = state.conductor_w_per_m + state.shield_w_per_m + 0.05;
    // The line's depth stays; the circle of Δθx has the radius a/sinh(2π Δθx/(ρ q)) and its centre a/tanh of it deep, a the line's depth.
    let line = (depth * depth - outside_m * outside_m / 4.0_f64).sqrt();
    let angle = 2.0 * PI * critical / (moist_soil * heat);
    let (radius, centre) = (line / angle.sinh(), line / angle.tanh());
    assert!(radius > outside_m / 2.0);
    let without = buried_k_m_per_w(moist_soil, centre, 2.0 * radius).expect("covered");
    close(without * heat, critical, 1e-12);
    // Between two circles whose axes are apart: ρ/2π · acosh((r1² + r2² − e²)/(2 r1 r2)).
    let (small, apart_m) = (outside_m / 2.0, centre - depth);
    let shape = (small * small + radius * radius - apart_m * apart_m) / (2.0 * small * radius);
    let within = dry_soil / (2.0 * PI) * shape.acosh();
    close(state.surface_degc() - 25.0, critical + within * heat, 1e-9);
    // Twin: the zone as a ring about the cable's own axis.
    let ring = dry_soil / (2.0 * PI) * (radius / small).ln();
    apart(critical + ring * heat, critical + within * heat, 1e-6);
}
