//! Tubes of rubber as cases: published ones come out, and each fault is reported with its place.
//!
//! Sources: `tests/published/rubber-tube/SOURCE.md`; Rivlin (1949) and Green & Zerna, section 3.10, for the closed form of a neo-Hookean tube.

use super::check_says;
use jointwright_numerics::case::{Question, SecondsDoc, TubeCase, read, read_question};
use serde_json::{Value, json};

const REFERENCE: &str = include_str!("../../../../tests/published/rubber-tube/reference.json");
const BY_ELEMENTS: &str = include_str!("../../../../tests/published/rubber-tube/tubes.json");

#[track_caller]
fn tube(case: &Value) -> TubeCase {
    match read_question(&case.to_string()) {
        Ok(Question::Tube(case)) => case,
        other => panic!("{case}: {other:?}"),
    }
}

/// Pressure, MPa, and axial stretch, as the document says them.
#[track_caller]
fn solved(case: &Value) -> (f64, f64) {
    let case = tube(case);
    let pressed = case
        .pressed()
        .unwrap_or_else(|why| panic!("{case:?}: {why}"));
    let document = case.document(&pressed, SecondsDoc::default());
    let json = serde_json::to_value(&document).expect("it is JSON");
    assert_eq!(json["answers"][0]["name"], "pressure_mpa");
    assert_eq!(json["answers"][0]["value"], json["pressure_mpa"]);
    let number = |value: &Value| value.as_f64().expect("a number");
    (
        number(&json["pressure_mpa"]),
        number(&json["answers"][1]["value"]),
    )
}

fn list(text: &str) -> Vec<Value> {
    serde_json::from_str(text).expect("a list")
}

fn off(found: f64, expected: &Value) -> f64 {
    (found / expected.as_f64().expect("a number") - 1.0).abs()
}

#[test]
fn the_reference_tubes_come_out() {
    let cases = list(REFERENCE);
    assert_eq!(cases.len(), 7);
    for case in &cases {
        let (pressure, _) = solved(case);
        // Tolerance 1e-4; their own errors are 1e-9 of the value at most.
        assert!(off(pressure, &case["pressure_mpa"]) < 1e-8, "{case}");
        // A stretch larger by a hundredth is detected.
        let mut other = case.clone();
        other["stretch"] = json!(case["stretch"].as_f64().expect("a number") * 1.01);
        let (pressure, _) = solved(&other);
        assert!(off(pressure, &case["pressure_mpa"]) > 1e-3, "{case}");
    }
}

/// A published tube as a case.
fn as_case(published: &Value) -> Value {
    json!({
        "case": published["case"],
        "physics": "rubber-tube",
        "bore_mm": published["bore_mm"],
        "rings": published["rings"],
        "ends": published["ends"],
        "stretch": published["stretch"],
    })
}

#[test]
fn tubes_by_finite_elements_come_out() {
    let published = list(BY_ELEMENTS);
    assert_eq!(published.len(), 182);
    let mut most = (0.0_f64, 0.0_f64);
    for one in &published {
        let (pressure, axial) = solved(&as_case(one));
        let here = (
            off(pressure, &one["pressure_mpa"]),
            off(axial, &one["axial_stretch"]),
        );
        // Elements and quadrature of the source differ by 3e-10 at most.
        assert!(here.0 < 1e-9 && here.1 < 1e-9, "{}: {here:?}", one["case"]);
        most = (most.0.max(here.0), most.1.max(here.1));
    }
    assert!(most.0 > 0.0, "nothing was compared");
}

#[test]
fn what_is_not_the_tube_is_told_apart_from_it() {
    for one in list(BY_ELEMENTS) {
        let mut other = as_case(&one);
        let ends = if one["ends"] == "free" {
            "fixed-length"
        } else {
            "free"
        };
        other["ends"] = json!(ends);
        let (pressure, axial) = solved(&other);
        // The other ends change the length in every tube; the pressure may cross.
        assert!(off(axial, &one["axial_stretch"]) > 1e-6, "{}", one["case"]);
        let rings = one["rings"].as_array().expect("a list");
        if rings.len() > 1 && rings[0]["law"] != rings[1]["law"] {
            let mut other = as_case(&one);
            let (inner, outer) = (rings[0]["law"].clone(), rings[1]["law"].clone());
            other["rings"][0]["law"] = outer;
            other["rings"][1]["law"] = inner;
            let (swapped, _) = solved(&other);
            assert!(off(swapped, &one["pressure_mpa"]) > 1e-3, "{}", one["case"]);
        }
        assert!(pressure > 0.0);
    }
}

/// Bore 10 mm, outer radius 20 mm, μ = 0.5 MPa.
fn rivlin(stretch: f64) -> Value {
    json!({"case": "rivlin", "physics": "rubber-tube", "bore_mm": 10.0, "outer_mm": 20.0,
        "law": {"kind": "neo-hookean", "mu_mpa": 0.5}, "ends": "fixed-length", "stretch": stretch})
}

#[test]
fn the_closed_form_of_rivlin_comes_out() {
    for (radius_mm, axial, expected) in [
        (15.0, 1.0, 0.214_114_2),
        (12.0, 1.0, 0.116_684_9),
        (15.0, 1.1, 0.208_839_9),
    ] {
        let mut case = rivlin(radius_mm / 10.0);
        case["axial_stretch"] = json!(axial);
        let (pressure, said) = solved(&case);
        // The values are printed to seven figures.
        assert!(
            (pressure - expected).abs() < 0.6e-7,
            "{pressure} {expected}"
        );
        assert!((said - axial).abs() < 1e-15);
    }
    // Lamé: 2 μ (u/A) (1 − A²/B²), within the effect of the stretch of 0.1 %.
    let (pressure, _) = solved(&rivlin(1.001));
    assert!((pressure / 0.000_75 - 1.0).abs() < 3e-3, "{pressure}");
    // It levels off at μ ln(B/A).
    let (pressure, _) = solved(&rivlin(1e6));
    assert!((pressure / 0.346_573_6 - 1.0).abs() < 1e-6, "{pressure}");
}

#[test]
fn one_law_written_in_two_ways_is_one_law() {
    let mut other = rivlin(1.5);
    other["law"] = json!({"kind": "mooney-rivlin", "c1_mpa": 0.2, "c2_mpa": 0.05});
    // At fixed length only 2 (C1 + C2) matters.
    let (one, two) = (solved(&rivlin(1.5)).0, solved(&other).0);
    assert!((one / two - 1.0).abs() < 1e-12);
    // A law that stiffens late equals the plain one; a law that stiffens early does not.
    for (limit, is_plain) in [(1e8, true), (20.0, false)] {
        other["law"] = json!({"kind": "gent", "mu_mpa": 0.5, "limit": limit});
        let is_near = (solved(&other).0 / one - 1.0).abs() < 1e-6;
        assert_eq!(is_near, is_plain, "{limit}");
    }
}

#[track_caller]
fn check(change: &[(&str, Value)], expected: &[(&str, &str)]) {
    let mut case = rivlin(1.5);
    for (field, value) in change {
        let fields = case.as_object_mut().expect("a table");
        if value.is_null() {
            fields.remove(*field);
        } else {
            fields.insert((*field).to_owned(), value.clone());
        }
    }
    check_says(&case.to_string(), expected);
}

#[test]
fn what_is_wrong_with_a_tube_is_said_at_its_place() {
    check(
        &[("bore_mm", json!(-8))],
        &[("bore_mm", "expected a number greater than 0")],
    );
    check(
        &[("outer_mm", json!(9.0))],
        &[("", "the radii of the tube do not grow from 10 mm outward")],
    );
    check(
        &[("stretch", json!(0.9))],
        &[("stretch", "expected a number from 1")],
    );
    check(
        &[("ends", json!("open"))],
        &[(
            "ends",
            "Found \"open\"; expected \"fixed-length\" or \"free\"",
        )],
    );
    check(
        &[("law", json!({"kind": "neo-hookian", "mu_mpa": 0.5}))],
        &[("law.kind", "neo-hookian")],
    );
    check(
        &[(
            "law",
            json!({"kind": "mooney-rivlin", "c1_mpa": 0, "c2_mpa": 0}),
        )],
        &[("", "no stiffness")],
    );
    check(
        &[("ends", json!("free")), ("axial_stretch", json!(1.1))],
        &[("axial_stretch", "Free ends find their own length")],
    );
    check(
        &[(
            "rings",
            json!([{"outer_mm": 20, "law": {"kind": "neo-hookean", "mu_mpa": 1}}]),
        )],
        &[
            ("outer_mm", "say the same thing twice"),
            ("law", "say the same thing twice"),
        ],
    );
    check(
        &[("outer_mm", Value::Null)],
        &[("", "The field `outer_mm` is missing")],
    );
    check(
        &[("stretsh", json!(2))],
        &[("stretsh", "is not known here")],
    );
    // Several at once.
    check(
        &[("bore_mm", json!("8")), ("stretch", json!(1e9))],
        &[("bore_mm", "expected a number"), ("stretch", "to 1000000")],
    );
}

#[test]
fn a_law_that_cannot_follow_the_stretch_is_no_answer() {
    let mut case = rivlin(3.0);
    case["law"] = json!({"kind": "gent", "mu_mpa": 0.5, "limit": 2.0});
    let said = tube(&case)
        .pressed()
        .expect_err("it cannot follow")
        .to_string();
    assert!(said.contains("beyond the limit of its law"), "{said}");
}

#[test]
fn extreme_tubes_have_an_answer_or_a_reason() {
    let extremes = [1e-30, 1e-6, 1.0, 1e3, 1e6];
    let mut n_answers = 0;
    for bore in extremes {
        for outer in extremes {
            for stretch in [1.0, 1.0 + 1e-15, 2.0, 1e6] {
                for ends in ["free", "fixed-length"] {
                    let mut case = rivlin(stretch);
                    case["bore_mm"] = json!(bore);
                    case["outer_mm"] = json!(outer);
                    case["ends"] = json!(ends);
                    let Ok(Question::Tube(case)) = read_question(&case.to_string()) else {
                        continue;
                    };
                    if let Ok(pressed) = case.pressed() {
                        n_answers += 1;
                        assert!(pressed.pressure_pa >= 0.0, "{case:?} {pressed:?}");
                        assert!(pressed.pressure_pa.is_finite(), "{case:?} {pressed:?}");
                    }
                }
            }
        }
    }
    assert!(n_answers > 20, "{n_answers}");
}

#[test]
fn a_tube_is_no_section() {
    let said = read(&rivlin(1.5).to_string()).expect_err("it is a tube");
    assert!(
        said[0]
            .message
            .contains("a section with a field was expected")
    );
}
