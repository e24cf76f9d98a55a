//! Currents and losses round shields bonded at both ends, against published numbers and against the complex currents of three loops.

use super::{QUARRY, leg, near, order};
use crate::cases::{sentence, sentences};
use jointwright_joint::job::Formation;
use jointwright_joint::shielding::{Round, ShieldLoss, ShieldResistance, shield_loss};
use std::f64::consts::PI;

/// Three shields with an interval of resistance.
fn round(
    formation: Formation,
    frequency_hz: f64,
    spacing_m: f64,
    mean_m: f64,
    ohm_per_m: (f64, f64),
) -> Round {
    Round {
        along: ShieldResistance {
            at_20_ohm_per_m: ohm_per_m,
            coefficient_20_per_k: 0.00393,
            says: "".into(),
        },
        formation,
        spacing_m,
        mean_m: (mean_m, mean_m),
        frequency_hz,
    }
}

/// The published trefoil: 5.040331 V/km at 100 A, so X = 5.040331e-5 ohm/m.
const X: f64 = 5.040_331_4e-5;

fn trefoil(least: f64, greatest: f64) -> Round {
    round(
        Formation::Trefoil,
        50.0,
        75.5e-3,
        67.7e-3,
        (least, greatest),
    )
}

#[test]
fn a_worked_example_of_a_sheath_loss_is_met() {
    // Rs 4.28 over R 0.325 ohm, X = 314 · 0.0006268 ohm; here by the same ratios, a ten thousandth of each.
    let spacing_m = 0.5 * 0.3134_f64.exp();
    let shields = round(
        Formation::Trefoil,
        314.0 / (2.0 * PI),
        spacing_m,
        1.0,
        (4.28e-4, 4.28e-4),
    );
    let found = ShieldLoss::Round(shields).greatest_ratio(0.325e-4, 20.0);
    near(found, 0.027_788_99, 1e-4);
    // With a tenth more reactance it would be 21 % more.
    let more = round(
        Formation::Trefoil,
        345.4 / (2.0 * PI),
        spacing_m,
        1.0,
        (4.28e-4, 4.28e-4),
    );
    assert!(ShieldLoss::Round(more).greatest_ratio(0.325e-4, 20.0) > 1.2 * found);
}

#[test]
fn the_greatest_loss_is_where_resistance_and_reactance_are_equal() {
    // X/2 if it lies inside the interval; otherwise the interval's nearer end.
    near(
        trefoil(1e-5, 2e-4).greatest_loss_ohm_per_m((20.0, 20.0)),
        X / 2.0,
        1e-6,
    );
    let loss = |rs: f64| rs * X * X / (rs * rs + X * X);
    near(
        trefoil(1e-4, 2e-4).greatest_loss_ohm_per_m((20.0, 20.0)),
        loss(1e-4),
        1e-6,
    );
    near(
        trefoil(1e-5, 2e-5).greatest_loss_ohm_per_m((20.0, 20.0)),
        loss(2e-5),
        1e-6,
    );
    // Neither end of the first interval would have shown it.
    assert!(loss(1e-5).max(loss(2e-4)) < 0.5 * X / 2.0);
}

#[test]
fn currents_in_trefoil_are_those_of_one_loop() {
    let (least, greatest) = trefoil(1e-4, 2e-4).current_ratio((20.0, 20.0));
    near(greatest, X / 1e-4_f64.hypot(X), 1e-6);
    near(least, X / 2e-4_f64.hypot(X), 1e-6);
    // Warm shields carry less.
    assert!(trefoil(1e-4, 2e-4).current_ratio((20.0, 90.0)).0 < 0.85 * least);
}

#[test]
fn flat_shields_carry_what_the_three_complex_currents_give() {
    // Three loops with one common voltage and no other return, solved by elimination outside this program.
    let flat = |least, greatest| round(Formation::Flat, 50.0, 0.2, 67.7e-3, (least, greatest));
    near(
        flat(2e-4, 2e-4).greatest_loss_ohm_per_m((20.0, 20.0)),
        7.546_710_57e-5,
        1e-8,
    );
    let (least, greatest) = flat(2e-4, 2e-4).current_ratio((20.0, 20.0));
    near(greatest, 0.614_276_427, 1e-8);
    near(least, 0.436_733_075, 1e-8);
    // The greatest loss lies inside, at 1.384e-4 ohm/m, and so does the greatest current, at 2.41e-5.
    near(
        flat(1e-5, 1e-3).greatest_loss_ohm_per_m((20.0, 20.0)),
        8.096_609_96e-5,
        1e-5,
    );
    near(
        flat(1e-5, 1e-3).current_ratio((20.0, 20.0)).1,
        1.020_694_2,
        1e-5,
    );
    assert!(flat(1e-5, 1e-5).greatest_loss_ohm_per_m((20.0, 20.0)) < 2e-5);
}

#[test]
fn the_shield_that_a_rating_takes_has_the_greatest_loss() {
    for formation in [Formation::Trefoil, Formation::Flat] {
        for degc in [20.0, 70.0] {
            let shields = round(formation, 60.0, 0.2, 0.03, (1e-5, 5e-3));
            let loss = ShieldLoss::Round(shields);
            let shield = loss.warmest(degc).expect("bonded at both ends");
            near(
                shield.loss_ratio(4e-5, degc),
                loss.greatest_ratio(4e-5, degc),
                1e-12,
            );
        }
    }
}

/// The leg's run, as edits of the example: the lines in each of its legs.
fn run(bonding: &str, more: &str) -> Vec<(String, String)> {
    vec![(
        "bonding = \"solid\"".to_owned(),
        format!("bonding = \"{bonding}\"\n{more}"),
    )]
}

#[track_caller]
fn found(bonding: &str, more: &str) -> Result<ShieldLoss, String> {
    let edits = run(bonding, more);
    let edits: Vec<(&str, &str)> = edits
        .iter()
        .map(|(a, b)| (a.as_str(), b.as_str()))
        .collect();
    let order = order(QUARRY, &edits);
    shield_loss(&order.job, leg(&order, "B")).map_err(|open| {
        assert!(
            !open.questions.is_empty() && open.questions.iter().all(|q| sentence(q).ends_with('?')),
            "{open:?}"
        );
        format!("{}: {}", sentence(&open.why), sentences(&open.questions))
    })
}

const PLACED: &str = "formation = \"trefoil\"\nspacing = \"40 mm\"\n";

#[test]
fn only_a_loop_that_is_closed_carries_a_current() {
    let both = format!("{PLACED}far_end_bonded = true");
    let one = format!("{PLACED}far_end_bonded = false");
    assert!(matches!(found("solid", &both), Ok(ShieldLoss::Round(_))));
    for (bonding, run) in [
        ("solid", &one),
        ("linked", &one),
        ("open", &one),
        ("open", &both),
    ] {
        let Ok(ShieldLoss::Nothing(why)) = found(bonding, run) else {
            panic!("{bonding} {run}");
        };
        let why = sentence(&why);
        assert!(why.contains("open at"), "{why}");
    }
    let nothing = found("solid", &one).unwrap();
    assert_eq!(nothing.greatest_ratio(1e-4, 20.0), 0.0);
    assert_eq!(nothing.warmest(20.0), None);
}

#[test]
fn what_closes_the_loop_and_how_the_cables_lie_is_asked_for() {
    for (bonding, run, word) in [
        ("solid", PLACED, "earthed at the far end"),
        ("linked", "far_end_bonded = true", "link"),
        ("linked", PLACED, "link"),
        ("solid", "far_end_bonded = true", "trefoil or flat"),
        (
            "solid",
            "far_end_bonded = true\nformation = \"flat\"",
            "How far apart",
        ),
        (
            "solid",
            "far_end_bonded = true\nspacing = \"2 in\"",
            "trefoil or flat",
        ),
        (
            "solid",
            "far_end_bonded = true\nformation = \"flat\"\nspacing = \"20 mm\"",
            "cannot be",
        ),
    ] {
        let why = found(bonding, run).expect_err(run);
        assert!(why.contains(word), "{bonding} {run}: {why}");
    }
}

#[test]
fn a_run_of_kilometres_is_read() {
    for (text, metres) in [
        ("4.2 km", None),
        ("4200 m", Some(4200.0)),
        ("1350 ft", Some(411.48)),
    ] {
        let case = crate::cases::named(QUARRY);
        let job = case.job.replace(
            "bonding = \"solid\"",
            &format!("bonding = \"solid\"\nrun_length = \"{text}\""),
        );
        let read = crate::cases::read(&job, &case.catalogues());
        match metres {
            None => assert!(read.is_err(), "{text}"),
            Some(metres) => {
                let order = crate::cases::accepted(read, text);
                let length = leg(&order, "B").shield_run.length.expect("stated");
                near(length.mm(), metres * 1e3, 1e-12);
            }
        }
    }
}
