//! Tests of a conducting layer, at power frequency and at a trial's frequency, against sections solved elsewhere.

use super::*;
use crate::catalogue::Catalogue;
use crate::form::{Complaints, Source};
use crate::said::Between;
use jointwright_numerics::field::{Options, Unwatched, Wanted, solve};
use jointwright_numerics::outline::Point;

const BODY: &str = include_str!("../../../../tests/field/reference-body.toml");
const AT_50_HZ: &str =
    include_str!("../../../../tests/published/field-sections/S23-layer-50hz.answers.json");
const STRONG: &str =
    include_str!("../../../../tests/published/field-sections/S24-layer-60hz-strong.answers.json");
const AT_TRIAL: &str =
    include_str!("../../../../tests/published/field-sections/S25-layer-0.1hz.answers.json");
/// Places on the cable at which the published answers have a potential, mm along.
const PLACES: [u32; 4] = [80, 100, 120, 135];

/// The half joint with a layer of 3 mm under its electrode and no deflector.
fn profile() -> Profile {
    let text = BODY
        .replace("BRIDGING", "0 mm")
        .replace("on_diameter = \"22.2 mm\"", "on_diameter = ON\ngrading = { thickness = \"3 mm\", relative_permittivity = 10, conductivity_s_per_m = 1e-9 }")
        .replace("\"22.2 mm\"", "\"28.2 mm\"")
        .replace("= ON\n", "= \"22.2 mm\"\n")
        .replace("\"34.2 mm\"", "\"42.2 mm\"")
        .replace("serves = \"deflector\"\n", "");
    let mut complaints = Complaints::default();
    let source = Source::new("reference-body.toml", text);
    let catalogue = Catalogue::read(&[source], true, &mut complaints);
    let body = catalogue
        .body("reference-half-joint")
        .unwrap_or_else(|| panic!("{:?}", complaints.into_sorted()));
    Profile::read(body).expect("its inside is known")
}

fn published(text: &str, name: &str) -> (f64, Option<f64>) {
    let document: serde_json::Value = serde_json::from_str(text).expect("answers");
    let answers = document["answers"].as_array().expect("a list");
    let answer = answers.iter().find(|answer| answer["name"] == name);
    let answer = answer.expect("it is there");
    (
        answer["value"].as_f64().expect("a number"),
        answer["phase_deg"].as_f64(),
    )
}

/// The end with its layer, at the voltage of the published answers.
fn end(profile: &Profile, sigma: f64, hertz: f64) -> End<'_> {
    End {
        profile,
        cable: CableShape {
            conductor_radius_m: 6.65e-3,
            insulation_radius_m: 11.1e-3,
            screen_thickness_m: 1e-3,
            relative_permittivity: 2.3,
        },
        sleeve: Some(Sleeve {
            between: Between::SpreadsTheField,
            outside_radius_m: profile.grading_outside_m(11.1e-3),
            relative_permittivity: 10.0,
            conductivity: Conductivity::Constant(sigma),
        }),
        is_junction: false,
        drive: Drive {
            voltage: VoltageRms::from_kv(8.7),
            frequency_hz: Some(hertz),
        },
        state: State {
            screen_edge_m: 140e-3,
            insulation_end_m: 50e-3,
            edge_radius_m: 0.25e-3,
            is_empty: false,
        },
    }
}

/// Solves the layer and compares both peaks along it, the field before the edge, and potentials with their phases.
///
/// Returns the deviation of the first peak, as a share.
#[track_caller]
fn off(text: &str, sigma: f64, hertz: f64) -> f64 {
    let profile = profile();
    let end = end(&profile, sigma, hertz);
    let drawn = draw(&end).unwrap_or_else(|why| panic!("{why:?}"));
    let mut wanted = drawn.wanted.clone();
    let at = |z: u32| Point::new(11.1e-3, f64::from(z) * 1e-3);
    wanted.extend(PLACES.map(|z| Wanted::PotentialAt { at: at(z) }));
    let options = Options {
        tolerance: 3e-3,
        n_unknowns_most: 60_000,
        ..Options::default()
    };
    let solved = solve(&drawn.section, &wanted, &options, &mut Unwatched)
        .unwrap_or_else(|error| panic!("{error}"));
    let close = |index: usize, name: &str, scale: f64| {
        let answer = &solved.answers[index];
        let (expected, phase) = published(text, name);
        let found = answer.value.abs() * scale;
        assert!(
            (found - expected).abs() <= 3.0 * answer.error_estimate * scale + 2e-3 * expected,
            "{name}: {found}, published {expected}, {answer:?}"
        );
        if let (Some(phase), Some(found)) = (phase, answer.phase) {
            let turned = (found.to_degrees() - phase).rem_euclid(360.0);
            assert!(turned.min(360.0 - turned) < 0.5, "{name}: {found} {phase}");
        }
    };
    // In the order in which the section asks: interface, outside of the layer, electrode's end, before the edge.
    let quantities: Vec<Option<Quantity>> = drawn.quantities.clone();
    assert_eq!(
        quantities,
        [
            Some(Quantity::Interface),
            Some(Quantity::Interface),
            Some(Quantity::ElectrodeEnd),
            Some(Quantity::ScreenEdge)
        ]
    );
    close(1, "Et_layer_out", 1e-6);
    close(2, "Emax_on_electrode_end", 1e-6);
    let (edge, _) = published(text, "Ez_before_edge");
    assert!((solved.answers[3].value.abs() * 1e-6 / edge.abs() - 1.0).abs() < 1e-2);
    for (index, z) in PLACES.iter().enumerate() {
        close(
            wanted.len() - PLACES.len() + index,
            &format!("phi_iface_z{z}"),
            1e-3,
        );
    }
    solved.answers[0].value * 1e-6 / published(text, "Et_iface").0 - 1.0
}

// Oracle: tests/published/field-sections S23 to S25, complex, solved with NGSolve; the same shapes, drawn there by hand.
#[test]
fn a_layer_that_conducts_has_its_published_fields_at_power_frequency() {
    assert!(off(AT_50_HZ, 1e-9, 50.0).abs() < 5e-3);
    assert!(off(STRONG, 1e-7, 60.0).abs() < 5e-3);
}

#[test]
fn a_layer_that_conducts_has_its_published_fields_at_the_frequency_of_a_trial() {
    assert!(off(AT_TRIAL, 1e-9, 0.1).abs() < 5e-3);
    // A twin: the published fields of another frequency do not fit this one.
    let (here, there) = (
        published(AT_TRIAL, "Et_iface").0,
        published(AT_50_HZ, "Et_iface").0,
    );
    assert!((here / there - 1.0).abs() > 0.05, "{here} {there}");
}
