//! Effect of the temperatures, with no sign assumed.

use super::{Edits, PUSHED_ON, body, kpa, planned};
use jointwright_joint::plan::Plan;
use jointwright_numerics::rubber::{Law, Ring, Tube};

const OF_CABLE: &str = "expansion_per_k_least = 1.5e-4\nexpansion_per_k_greatest = 2.5e-4\n";
const OF_RUBBER: &str = "expansion_per_k_least = 2.3e-4\nexpansion_per_k_greatest = 2.8e-4\n";
const SLOPE: &str = "modulus_per_k_least = -0.003\nmodulus_per_k_greatest = 0.003\n";
const RANGE: &str = "ambient_least = \"5 degC\"\n";

fn expands(per_k: &str) -> String {
    format!("expansion_per_k_least = {per_k}\nexpansion_per_k_greatest = {per_k}\n")
}

fn stiffens(per_k: &str) -> String {
    format!("modulus_per_k_least = {per_k}\nmodulus_per_k_greatest = {per_k}\n")
}

/// One expansion of cable and of rubber, one slope of the moduli, and the range of temperature.
fn at(cable: &str, rubber: &str, slope: &str, (low, high): (i32, i32)) -> Plan {
    let (cable, rubber, slope) = (expands(cable), expands(rubber), stiffens(slope));
    let least = format!("ambient_least = \"{low} degC\"\n");
    let greatest = format!("conductor_greatest = \"{high} degC\"");
    let of_job: Edits<'_> = &[
        (OF_CABLE, &cable),
        (RANGE, &least),
        ("conductor_greatest = \"130 degC\"", &greatest),
    ];
    planned(of_job, &[(OF_RUBBER, &rubber), (SLOPE, &slope)])
}

#[test]
fn equal_expansions_and_a_constant_modulus_leave_nothing_to_the_temperature() {
    let first = at("2e-4", "2e-4", "0.0", (5, 130));
    for range in [(-30, 20), (5, 90), (11, 250)] {
        let other = at("2e-4", "2e-4", "0.0", range);
        assert!(
            (kpa(&other) / kpa(&first) - 1.0).abs() < 1e-12,
            "{range:?}: {} and {}",
            kpa(&other),
            kpa(&first)
        );
    }
    // Each of the three alone makes a difference.
    for (cable, rubber, slope) in [
        ("1e-4", "2e-4", "0.0"),
        ("2e-4", "3e-4", "0.0"),
        ("2e-4", "2e-4", "-0.001"),
    ] {
        let (cold, hot) = (
            at(cable, rubber, slope, (-30, 20)),
            at(cable, rubber, slope, (-30, 200)),
        );
        assert!(
            kpa(&hot) < 0.99 * kpa(&cold),
            "{cable} {rubber} {slope}: {} and {}",
            kpa(&hot),
            kpa(&cold)
        );
    }
}

#[test]
fn either_end_of_the_range_may_be_the_worst() {
    let worst = |plan: &Plan| body(plan).pressure_at.clone().expect("temperatures");
    // Rubber that softens is worst hot, rubber that stiffens is worst cold.
    assert_eq!(
        worst(&at("2e-4", "2e-4", "-0.002", (5, 130))),
        "all at 130 degC"
    );
    assert_eq!(
        worst(&at("2e-4", "2e-4", "0.002", (5, 130))),
        "all at 5 degC"
    );
    // A cable that shrinks away from the rubber is worst cold, rubber that grows away from the cable hot.
    assert_eq!(worst(&at("4e-4", "1e-4", "0.0", (5, 130))), "all at 5 degC");
    assert_eq!(
        worst(&at("1e-4", "4e-4", "0.0", (5, 130))),
        "all at 130 degC"
    );
}

#[test]
fn both_ends_of_what_is_stated_are_looked_at() {
    let wide = planned(&[], &[]);
    for cable in ["1.5e-4", "2.5e-4"] {
        for rubber in ["2.3e-4", "2.8e-4"] {
            for slope in ["-0.003", "0.003"] {
                let one = at(cable, rubber, slope, (5, 130));
                assert!(
                    kpa(&wide) <= kpa(&one) * (1.0 + 1e-12),
                    "{cable} {rubber} {slope}"
                );
                assert!(body(&wide).ratio <= body(&one).ratio * (1.0 + 1e-12));
            }
        }
    }
}

#[test]
fn the_pressure_of_a_part_that_is_not_held_open_is_that_of_its_tube() {
    let (expands, stiffens) = (expands("2e-4"), stiffens("0.0"));
    let own: Edits<'_> = &[(OF_RUBBER, &expands), (SLOPE, &stiffens)];
    let table = [own, PUSHED_ON].concat();
    let plan = planned(
        &[
            (OF_CABLE, &expands),
            (
                "lot = \"INV-BD-1\", expanded = 2025-09-20",
                "lot = \"INV-BD-1\", made = 2025-09-20",
            ),
            // Read at the temperature for which the rubber is stated.
            ("temperature = \"12 degC\"", "temperature = \"23 degC\""),
        ],
        &table,
    );
    let law = Law::NeoHookean { modulus_pa: 0.4e6 };
    let ring = Ring {
        outside_m: 0.030,
        law,
    };
    let tube = Tube::new(0.0075, vec![ring]).expect("a tube");
    // The thinnest of the readings.
    let by_hand = tube.pressed_least(0.01165).expect("it is pressed");
    let found = kpa(&plan);
    assert!(
        (found * 1e3 / by_hand.pressure_pa - 1.0).abs() < 1e-9,
        "{found} kPa and {} Pa",
        by_hand.pressure_pa
    );
}
