use super::*;
use crate::catalogue::Catalogue;
use crate::form::{Complaints, Source};
use jointwright_numerics::field::{Options, Unwatched, solve};
use std::collections::BTreeMap;

const BODY: &str = include_str!("../../../../tests/field/reference-body.toml");

fn profile(bridging: &str) -> Profile {
    let text = BODY.replace("BRIDGING", bridging);
    let mut complaints = Complaints::default();
    let source = Source::new("reference-body.toml", text);
    let catalogue = Catalogue::read(&[source], true, &mut complaints);
    let body = catalogue
        .body("reference-half-joint")
        .unwrap_or_else(|| panic!("{:?}", complaints.into_sorted()));
    Profile::read(body).expect("its inside is known")
}

fn end(profile: &Profile, screen_edge_mm: f64) -> End<'_> {
    End {
        profile,
        cable: CableShape {
            conductor_radius_m: 6.65e-3,
            insulation_radius_m: 11.1e-3,
            screen_thickness_m: 1e-3,
            relative_permittivity: 2.3,
        },
        sleeve: None,
        is_junction: false,
        drive: Drive {
            voltage: VoltageRms::from_kv(8.7),
            frequency_hz: None,
        },
        state: State {
            screen_edge_m: screen_edge_mm * 1e-3,
            insulation_end_m: 50e-3,
            edge_radius_m: 0.25e-3,
            is_empty: false,
        },
    }
}

/// Greatest value of each quantity at 8.7 kV, kV/mm.
fn fields(end: &End<'_>) -> BTreeMap<Quantity, f64> {
    let drawn = draw(end).unwrap_or_else(|why| panic!("{why:?}"));
    let options = Options {
        tolerance: 5e-3,
        n_unknowns_most: 60_000,
        ..Options::default()
    };
    let solved = solve(&drawn.section, &drawn.wanted, &options, &mut Unwatched)
        .unwrap_or_else(|error| panic!("{error}"));
    let mut fields = BTreeMap::new();
    for (answer, quantity) in solved.answers.iter().zip(&drawn.quantities) {
        if let Some(quantity) = quantity {
            let value = answer.value.abs() * 1e-6;
            let greatest = fields.entry(*quantity).or_insert(0.0_f64);
            *greatest = greatest.max(value);
        }
    }
    fields
}

#[track_caller]
fn close(found: f64, expected: f64, ratio: f64) {
    assert!(
        (found / expected - 1.0).abs() < ratio,
        "{found}, expected {expected}"
    );
}

fn published(case: &str, name: &str) -> f64 {
    let text = match case {
        "A4-15" => include_str!("../../../../tests/published/field-sections/A4-15.answers.json"),
        _ => include_str!("../../../../tests/published/field-sections/A5-15-long5.answers.json"),
    };
    let document: serde_json::Value = serde_json::from_str(text).expect("answers");
    let answers = document["answers"].as_array().expect("a list");
    let answer = answers.iter().find(|answer| answer["name"] == name);
    answer.expect("it is there")["value"]
        .as_f64()
        .expect("a number")
}

// Oracle: tests/published/field-sections, solved with NGSolve; the same shapes, drawn there by hand.
#[test]
fn the_half_joint_as_meant_agrees_with_its_published_section() {
    let profile = profile("0 mm");
    let found = fields(&end(&profile, 140.0));
    close(
        found[&Quantity::Interface],
        published("A4-15", "Et_max"),
        1e-2,
    );
    close(
        found[&Quantity::ElectrodeEnd],
        published("A4-15", "Emax_electrode_end"),
        1e-2,
    );
    close(
        found[&Quantity::DeflectorTip],
        published("A4-15", "Emax_tip"),
        1e-2,
    );
    assert!(!found.contains_key(&Quantity::ScreenEdge));
    // A twin: a diameter larger by a millimetre gives a visible difference.
    let mut other = end(&profile, 140.0);
    other.cable.insulation_radius_m += 1e-3;
    other.cable.conductor_radius_m += 1e-3;
    let other = fields(&other);
    assert!((other[&Quantity::ElectrodeEnd] / found[&Quantity::ElectrodeEnd] - 1.0).abs() > 1e-2);
}

// The published section moves the deflector outward by the screen's thickness. Here the rubber is stretched without change of
// volume, so the tip lies half a millimetre nearer: this changes the tip by a few percent and the electrode's end not at all.
#[test]
fn a_screen_that_is_too_long_comes_near_its_published_section() {
    let profile = profile("0 mm");
    let found = fields(&end(&profile, 130.0));
    close(
        found[&Quantity::ElectrodeEnd],
        published("A5-15-long5", "Emax_electrode_end"),
        1e-2,
    );
    close(
        found[&Quantity::DeflectorHeel],
        published("A5-15-long5", "Emax_profile"),
        3e-2,
    );
    close(
        found[&Quantity::DeflectorTip],
        published("A5-15-long5", "Emax_tip"),
        8e-2,
    );
    // At the stand-off: half of the field at the edge itself.
    let at_edge = published("A5-15-long5", "Et_max");
    let before = found[&Quantity::ScreenEdge];
    assert!(
        before > 0.4 * at_edge && before < 0.7 * at_edge,
        "{before} {at_edge}"
    );
}

#[test]
fn deviations_come_out_in_their_order() {
    let (follows, bridged) = (profile("0 mm"), profile("3 mm"));
    let of = |end: &End<'_>| fields(end)[&Quantity::Interface];
    let order = [
        of(&end(&follows, 140.0)),
        of(&end(&follows, 135.0)),
        of(&end(&follows, 130.0)),
        of(&end(&bridged, 130.0)),
        of(&end(&follows, 125.0)),
    ];
    assert!(order.is_sorted_by(|a, b| a < b), "{order:?}");
}

#[test]
fn what_is_not_stated_is_asked_for() {
    let ask = |passage: &str, with: &str| {
        let text = BODY.replace("BRIDGING", "0 mm");
        assert!(text.contains(passage), "{passage}");
        let mut complaints = Complaints::default();
        let source = Source::new("reference-body.toml", text.replace(passage, with));
        let catalogue = Catalogue::read(&[source], true, &mut complaints);
        let body = catalogue.body("reference-half-joint").expect("it reads");
        match Profile::read(body) {
            Err(NotDrawn::Unknown(unknown)) => format!("{:?}", unknown.questions),
            Err(NotDrawn::Refused(why)) => format!("{why:?}"),
            Ok(_) => String::new(),
        }
    };
    assert!(ask("on_diameter = \"22.2 mm\"\n", "").contains("OnWhatDiameter"));
    assert!(ask("serves = \"deflector\"\n", "").contains("duty: Deflector"));
    assert!(ask("relative_permittivity = 2.8\n", "").contains("Permittivity"));
    assert!(
        ask("radius = [\"0 mm\", \"2 mm\", \"4 mm\", \"0 mm\"]\n", "").contains("CornerRadius")
    );
    assert!(
        ask(
            "[\"200 mm\", \"122.388049 mm\"",
            "[\"200 mm\", \"122.388049 mm\""
        )
        .is_empty()
    );
    let moved = ask(
        "diameter = [\"22.2 mm\", \"22.2 mm\", \"34.2 mm\"",
        "diameter = [\"22.2 mm\", \"23 mm\", \"34.2 mm\"",
    );
    assert!(moved.contains("n_corners: 1"), "{moved}");
}

#[test]
fn nothing_is_drawn_near_a_junction() {
    let profile = profile("0 mm");
    // The outside has a radius of 30 mm and the electrode ends at 73 mm: two radii leave 13 mm.
    let mut near = end(&profile, 140.0);
    near.is_junction = true;
    let drawn = draw(&near).expect("it is drawn");
    let points = &drawn.section.outline.points;
    let nearest = points
        .iter()
        .map(|point| point.z)
        .fold(f64::INFINITY, f64::min);
    assert!((nearest - 60e-3).abs() < 1e-9, "{nearest}");
    let thick = Profile::read_outside(&profile, 37e-3);
    let mut refused = end(&thick, 140.0);
    refused.is_junction = true;
    let why = draw(&refused).expect_err("the electrode ends within two radii");
    assert!(
        matches!(why, NotDrawn::Refused(ref why) if format!("{why:?}").contains("NearJunction")),
        "{why:?}"
    );
}

#[test]
fn what_does_not_make_a_section_is_refused_with_its_place() {
    let profile = profile("0 mm");
    let refuse = |change: fn(&mut End<'_>)| {
        let mut end = end(&profile, 140.0);
        change(&mut end);
        match draw(&end) {
            Err(NotDrawn::Refused(why)) => format!("{why:?}"),
            other => panic!("{other:?}"),
        }
    };
    assert!(refuse(|end| end.cable.conductor_radius_m = 12e-3).contains("screen_mm: 24"));
    assert!(refuse(|end| end.state.insulation_end_m = 80e-3).contains("insulation_mm: 80"));
    assert!(refuse(|end| end.state.screen_edge_m = 72e-3).contains("ScreenAtElectrode"));
}
