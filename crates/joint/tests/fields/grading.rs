//! A layer that spreads the field in place of a deflector: by its permittivity alone, by conduction, in service and at the trial.

use super::{Edit, field, outcomes, planned, rulings, stress};
use jointwright_joint::plan::Plan;
use jointwright_joint::plan::StateDoc;

const INTERFACE: &str = "field along the interface";
const TRIAL: &str = "[trial]\nlevel = \"16 kV\"\nfrequency = \"0.1 Hz\"\nwaveform = \"sine\"\nfrom = \"invented\"\n";

/// The reference joint with a layer of 3 mm under its electrode and no deflector.
fn layered(layer: &str, trial: &str) -> Plan {
    planned(&Edit {
        edge_mm: 140.0,
        more: trial.to_owned(),
        shape: vec![
            (
                "on_diameter = \"22.2 mm\"",
                format!("on_diameter = ON\ngrading = {{ thickness = \"3 mm\", {layer} }}"),
            ),
            ("\"22.2 mm\"", "\"28.2 mm\"".to_owned()),
            ("= ON\n", "= \"22.2 mm\"\n".to_owned()),
            ("\"34.2 mm\"", "\"42.2 mm\"".to_owned()),
            ("serves = \"deflector\"\n", String::new()),
        ],
        ..Edit::default()
    })
}

fn at_trial(plan: &Plan) -> Option<f64> {
    let stresses = &field(plan).stresses_at_trial;
    let found = stresses.iter().find(|stress| stress.words == INTERFACE);
    found.map(|stress| stress.kv_per_mm)
}

fn close(found: f64, expected: f64, ratio: f64) {
    assert!(
        (found / expected - 1.0).abs() < ratio,
        "{found}, expected {expected}"
    );
}

#[test]
fn a_layer_of_high_permittivity_lowers_the_field_before_the_edge() {
    let weak = layered("relative_permittivity = 3", "");
    let strong = layered("relative_permittivity = 30", "");
    let before = "field along the cable before the screen edge";
    assert!(stress(&strong, before) < 0.8 * stress(&weak, before));
    // Without a deflector there is neither tip nor heel, and no ruling on one.
    assert!(outcomes(&strong, "deflector_stress").is_empty());
    assert_eq!(outcomes(&strong, "electrode_end_stress"), ["pass"]);
    // A layer that does not conduct has one field at every frequency.
    assert_eq!(
        at_trial(&layered("relative_permittivity = 30", TRIAL)),
        None
    );
}

#[test]
fn a_layer_that_conducts_has_another_field_at_the_trial() {
    let plan = layered(
        "relative_permittivity = 10, conductivity_s_per_m = 1e-9",
        TRIAL,
    );
    let (service, trial) = (stress(&plan, INTERFACE), at_trial(&plan));
    let trial = trial.expect("it conducts");
    // At 60 Hz the displacement in the layer is thirty times the conduction, at 0.1 Hz a twentieth.
    let per_kv = (service / field(&plan).voltage_kv, trial / 16.0);
    assert!(per_kv.1 < 0.9 * per_kv.0, "{per_kv:?}");
    let said: Vec<&str> = rulings(&plan, "interface_stress")
        .iter()
        .filter_map(|ruling| ruling.why.as_deref())
        .collect();
    assert!(
        said.iter().any(|why| why.starts_with("impulse:")),
        "{said:?}"
    );
    // Once in service, once at the trial.
    assert_eq!(outcomes(&plan, "electrode_end_stress").len(), 2);
}

// The limit of the complex problem without conduction is the capacitive one.
#[test]
fn faint_conduction_goes_over_into_none() {
    let capacitive = stress(&layered("relative_permittivity = 10", ""), INTERFACE);
    let faint = layered(
        "relative_permittivity = 10, conductivity_s_per_m = 1e-15",
        TRIAL,
    );
    close(stress(&faint, INTERFACE), capacitive, 0.02);
    close(
        at_trial(&faint).expect("it conducts") / 16.0,
        capacitive / field(&faint).voltage_kv,
        0.02,
    );
}

#[test]
fn a_conductivity_that_rises_with_the_field_is_not_judged() {
    let plan = layered(
        "relative_permittivity = 10, conductivity_s_per_m = 1e-9, knee_kv_per_mm = 0.5, power = 4",
        TRIAL,
    );
    let doc = plan.legs[0].field.as_ref().expect("it has a body");
    assert_eq!(doc.state, StateDoc::NotComputed);
    assert_eq!(outcomes(&plan, "interface_stress"), ["not-judged"]);
}

#[test]
fn the_crest_of_a_cosine_rectangular_trial_is_its_rms() {
    let of = |waveform: &str| {
        let trial = TRIAL.replace("sine", waveform);
        let plan = layered("relative_permittivity = 10", &trial);
        field(&plan).trial_kv.expect("a trial is named")
    };
    close(of("sine") / of("cosine-rectangular"), 2.0_f64.sqrt(), 1e-9);
}

#[test]
fn a_limit_on_a_part_that_is_not_there_is_not_passed_over() {
    let limit = "[[owner_limit]]\ncheck = \"deflector_stress\"\ngreatest_kv_per_mm = 0.01\nby = \"Ines Calloway\"\ndate = 2026-03-09\n";
    let plan = layered("relative_permittivity = 10", limit);
    assert_eq!(
        outcomes(&plan, "deflector_stress"),
        ["not-judged", "not-judged"]
    );
}
