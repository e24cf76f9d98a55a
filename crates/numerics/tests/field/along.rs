//! The sampled field along a line, compared with closed forms and with a section solved elsewhere.
#![allow(
    clippy::disallowed_methods,
    reason = "the published section and its answers are read from files"
)]

use super::{coaxial, conductor, insulator, is_near};
use jointwright_numerics::case;
use jointwright_numerics::field::{
    LineSample, Options, Regime, Section, Solved, Unwatched, Wanted, along, solve,
};
use jointwright_numerics::outline::Point;
use std::path::Path;

const VOLTS: f64 = 8.7e3;
const RADII: [f64; 2] = [6.65e-3, 11.1e-3];
const SLICE: f64 = 4e-3;

fn slice() -> (Section, Solved) {
    let section = coaxial(&RADII, SLICE, &[insulator(2.3)], VOLTS);
    let solved = solved(&section, 1e-4);
    (section, solved)
}

fn solved(section: &Section, tolerance: f64) -> Solved {
    let options = Options {
        tolerance,
        capacitance_tolerance: tolerance,
        n_unknowns_most: 60_000,
        work_most: usize::MAX,
    };
    let wanted = [Wanted::PeakInRegion { region_index: 0 }];
    solve(section, &wanted, &options, &mut Unwatched).unwrap_or_else(|error| panic!("{error}"))
}

/// V / (r ln(b/a)).
fn radial(r: f64) -> f64 {
    VOLTS / (r * (RADII[1] / RADII[0]).ln())
}

#[test]
fn on_a_cylinder_nothing_is_tangential_along_the_axis() {
    let (section, solved) = slice();
    let at = |z: f64| Point::new(9e-3, z);
    let places = along(&section, &solved, at(0.0), at(SLICE), 50);
    assert_eq!(places.len(), 50);
    for place in &places {
        // As a share of the field there, within the tolerance of the peak.
        assert!(place.tangential.abs() < 1e-4 * radial(9e-3), "{place:?}");
        assert!(is_near(place.magnitude, radial(9e-3), 1e-3), "{place:?}");
    }
    // The twin: a line that leaves the cylinder by a degree does not agree.
    let leaning = along(&section, &solved, at(0.0), Point::new(9.07e-3, SLICE), 50);
    assert!(
        leaning
            .iter()
            .all(|place| place.tangential > 1e-3 * radial(9e-3))
    );
}

#[test]
fn along_a_radius_all_of_the_field_is_tangential_with_its_sign() {
    let (section, solved) = slice();
    let (inner, outer) = (Point::new(RADII[0], 1.7e-3), Point::new(RADII[1], 1.7e-3));
    let outward = along(&section, &solved, inner, outer, 40);
    let inward = along(&section, &solved, outer, inner, 40);
    assert_eq!((outward.len(), inward.len()), (40, 40));
    for place in &outward {
        assert!(
            is_near(place.tangential, radial(place.at.r), 1e-3),
            "{place:?}"
        );
        // The twin: the field a tenth of a millimetre farther out differs.
        assert!(!is_near(place.tangential, radial(place.at.r + 1e-4), 1e-3));
        let volts = VOLTS * (RADII[1] / place.at.r).ln() / (RADII[1] / RADII[0]).ln();
        assert!(
            (place.potential[0] - volts).abs() < 1e-4 * VOLTS,
            "{place:?}"
        );
    }
    for (out, back) in outward.iter().rev().zip(&inward) {
        assert!((out.tangential + back.tangential).abs() < 1e-6 * out.magnitude);
    }
}

#[test]
fn places_in_conductors_and_outside_are_left_out_and_a_line_without_length_is_empty() {
    let (section, solved) = slice();
    let at = |r: f64| Point::new(r, 2e-3);
    // From the axis to 22.2 mm in steps of 0.1 mm: of 223 places those from 6.7 to 11.1 mm lie in the wall.
    let places = along(&section, &solved, at(0.0), at(22.2e-3), 223);
    assert_eq!(places.len(), 45);
    assert!(
        places
            .iter()
            .all(|place| place.at.r > 6.65e-3 && place.at.r < 11.1001e-3)
    );
    assert_eq!(along(&section, &solved, at(9e-3), at(9e-3), 10), []);
    assert_eq!(along(&section, &solved, at(9e-3), at(10e-3), 0), []);
    let one = along(&section, &solved, at(9e-3), at(10e-3), 1);
    assert!(one.len() == 1 && one[0].share == 0.0 && one[0].at == at(9e-3));
}

#[test]
fn complex_amplitudes_are_given_by_their_modulus() {
    let mut section = coaxial(
        &[6.65e-3, 9e-3, 11.1e-3],
        SLICE,
        &[insulator(2.3), conductor(2.8, 1e-9)],
        VOLTS,
    );
    section.regime = Regime::Complex { frequency_hz: 10.0 };
    let solved = solved(&section, 1e-3);
    let (outer, inner) = (Point::new(11.1e-3, 2e-3), Point::new(6.65e-3, 2e-3));
    // Inward, against the field: a signed number would be negative.
    for place in along(&section, &solved, outer, inner, 31) {
        assert!(place.tangential > 0.0, "{place:?}");
        let is_all = is_near(place.tangential, place.magnitude, 1e-3);
        // At 9 mm two fields of different strength meet; none of the 31 places lies there.
        assert!(is_all, "{place:?}");
        assert!(place.potential[1].is_finite());
    }
    assert!(solved.potential.iter().any(|volts| volts[1].abs() > 1.0));
}

fn read(name: &str) -> String {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/published/field-sections");
    let path = folder.join(name);
    std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// Largest |E·t| of the places, and its place.
fn greatest(places: &[LineSample]) -> (f64, Point) {
    places
        .iter()
        .map(|place| (place.tangential.abs(), place.at))
        .fold(
            (0.0, Point::default()),
            |a, b| if b.0 > a.0 { b } else { a },
        )
}

#[test]
fn the_greatest_of_400_places_of_an_interface_is_the_published_one() {
    let case = case::read(&read("A4-15.case.json")).unwrap_or_else(|found| panic!("{found:?}"));
    let answers: serde_json::Value =
        serde_json::from_str(&read("A4-15.answers.json")).unwrap_or_else(|error| panic!("{error}"));
    let stored = answers["answers"]
        .as_array()
        .and_then(|list| list.iter().find(|answer| answer["name"] == "Et_max"))
        .and_then(|answer| answer["value"].as_f64())
        .unwrap_or_else(|| panic!("no Et_max in {answers}"));
    let solved = solved(&case.section, 1e-2);
    let largest = |r: f64| {
        let (from, to) = (Point::new(r, 73.01e-3), Point::new(r, 135e-3));
        greatest(&along(&case.section, &solved, from, to, 400))
    };
    let (value, at) = largest(11.1e-3);
    let stored = 1e6 * stored;
    assert!(
        is_near(value, stored, 1e-2),
        "{value} at {at:?}, not {stored}"
    );
    // The twin: on a cylinder half a millimetre wider it differs.
    let (value, at) = largest(11.6e-3);
    assert!(!is_near(value, stored, 1e-2), "{value} at {at:?}");
}
