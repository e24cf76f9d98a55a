//! Voltages along shields that are open at one end, against published numbers and by hand, and the plan's sentences about them.

use super::{LARKSPUR, near, order};
use crate::cases::plan_of;
use jointwright_joint::job::Formation;
use jointwright_joint::plan::ShieldDoc;
use jointwright_joint::shielding::Standing;
use std::f64::consts::PI;

#[test]
fn published_voltages_are_met() {
    // A worked example: 2.28 cm over a sheath of 0.152 cm, 5.08 cm apart, 400 A, 2 km, omega 314.
    let hz = 314.0 / (2.0 * PI);
    let worked = Standing::of(Formation::Trefoil, hz, 50.8e-3, 21.28e-3, 2000.0);
    near(worked.voltage_v(400.0), 78.538_98, 1e-6);
    // Over the sheath instead of in its middle, it would be 4 % less.
    let outside = Standing::of(Formation::Trefoil, hz, 50.8e-3, 22.8e-3, 2000.0);
    assert!(outside.voltage_v(400.0) < 0.96 * 78.54);
    // A kilometre at 100 A and 50 Hz, 67.7 mm: trefoil 75.5 mm apart, and the outer of three flat 200 mm apart.
    let trefoil = Standing::of(Formation::Trefoil, 50.0, 75.5e-3, 67.7e-3, 1000.0);
    near(trefoil.voltage_v(100.0), 5.040_331, 1e-6);
    let flat = Standing::of(Formation::Flat, 50.0, 0.2, 67.7e-3, 1000.0);
    near(flat.voltage_v(100.0), 13.861_89, 1e-6);
    // The middle cable has 11.16 V.
    assert!(flat.voltage_v(100.0) > 1.2 * 11.161_31);
}

fn shield(edits: &[(&str, &str)], leg: &str) -> ShieldDoc {
    let plan = plan_of(&order(LARKSPUR, edits), LARKSPUR);
    let found = plan.legs.into_iter().find(|doc| doc.mark == leg);
    found.expect("the example has this leg").shield
}

/// Other papers of leg C, which was read: 30.05 mm at the least, give or take 0.05, and 20 mil more in the middle of its shield.
const PAPERS: (&str, &str) = (
    "insulation = \"xlpe\"",
    "insulation = \"xlpe\"\npapers = [{ over = \"insulation-screen\", least = \"29.0 mm\", greatest = \"30.0 mm\" }]",
);

#[test]
fn the_plan_says_what_stands_at_the_load_and_in_a_balanced_fault() {
    let found = shield(&[PAPERS], "C");
    // Outer of three flat: omega 2e-7 · |sum of a^k ln(1/d)|, 203.2 mm apart, mean 30.508 mm, 274.32 m, this leg's own 120 A and 10 kA, 60 Hz.
    near(found.standing_v.unwrap(), 7.437_681, 1e-6);
    near(found.standing_in_fault_v.unwrap(), 619.806_74, 1e-6);
    assert_eq!(found.current_a, Some([0.0, 0.0]));
    assert!(found.never.contains("No voltage here is called harmless."));
    assert!(found.not_known.is_empty(), "{found:?}");
}

#[test]
fn what_stands_in_a_fault_to_earth_is_said_not_to_be_computed() {
    let to_earth = shield(
        &[("fault_kind = \"three-phase\"", "fault_kind = \"to-earth\"")],
        "C",
    );
    assert_eq!(to_earth.standing_in_fault_v, None);
    assert!(to_earth.standing_v.is_some());
    assert!(
        to_earth
            .lines
            .iter()
            .any(|line| line.contains("not computed"))
    );
    let open = shield(&[("fault_kind = \"three-phase\"\n", "")], "C");
    assert_eq!(open.standing_in_fault_v, None);
    assert!(open.questions.iter().any(|q| q.contains("to earth?")));
}

#[test]
fn the_plan_says_what_flows_round_and_what_it_loses() {
    let found = shield(&[], "B");
    let [least, greatest] = found.current_a.expect("bonded at both ends");
    let loss = found.loss_w_per_m.unwrap();
    // Eleven wires, 0.7528 ohm/km at 20 degC; from 5 to 130 degC 0.7085 to 1.0784. Far above the reactance, the greatest loss comes from the greatest current in the least resistance.
    near(loss, greatest * greatest * 0.708_450e-3, 1e-5);
    assert!(least < 0.7 * greatest && loss > 0.1, "{found:?}");
    assert_eq!(found.standing_v, None);
    for (line, word) in [
        ("load = \"320 A\"\n", "duty.load"),
        (
            "conductor_greatest = \"130 degC\"\n",
            "duty.conductor_greatest",
        ),
    ] {
        let open = shield(&[(line, "")], "A");
        assert_eq!((open.current_a, open.loss_w_per_m), (None, None));
        assert!(
            open.not_known.iter().any(|why| why.contains(word)),
            "{open:?}"
        );
    }
}

#[test]
fn a_shield_that_is_earthed_nowhere_is_asked_about() {
    let open = (
        "bonding = \"solid\"\nformation = \"flat\"",
        "bonding = \"open\"\nformation = \"flat\"",
    );
    let found = shield(&[open], "C");
    assert_eq!(found.standing_v, None);
    assert!(
        found
            .questions
            .iter()
            .any(|q| q.contains("Where is the shield")),
        "{found:?}"
    );
}

#[test]
fn what_the_job_states_goes_before_what_balanced_phases_would_drive() {
    let of_leg_b = "load = \"200 A\"\n";
    let stated = format!("{of_leg_b}shield_load = \"30 A\"\n");
    let found = shield(&[(of_leg_b, &stated)], "B");
    assert_eq!(found.current_a, Some([30.0, 30.0]));
    // 30 A in its wires at 130 degC: 17.241/22.901 mohm/m by (234.5 + 130)/(234.5 + 20).
    near(
        found.loss_w_per_m.unwrap(),
        900.0 * 17.241e-3 / 22.901 * 364.5 / 254.5,
        1e-4,
    );
    assert!(
        found
            .lines
            .iter()
            .any(|line| line.contains("states 30.0 A")),
        "{found:?}"
    );
}
