//! Sections that conduct heat as cases: published ones and closed forms come out, and each fault is reported with its place.
//!
//! Sources: `tests/published/heat-sections/SOURCE.md`; steady conduction in layers and a lumped body from any textbook of heat transfer.

use super::check_says;
use jointwright_numerics::case::{HeatCase, Question, SecondsDoc, read_question};
use jointwright_numerics::heat::{HeatError, HeatOptions, HeatSolved, solve};
use serde_json::{Value, json};
use std::f64::consts::PI;

const STEADY: [&str; 2] = [
    include_str!("../../../../tests/published/heat-sections/B-steady-250.case.json"),
    include_str!("../../../../tests/published/heat-sections/B-steady-250.answers.json"),
];
const STEP: [&str; 2] = [
    include_str!("../../../../tests/published/heat-sections/B-step-250.case.json"),
    include_str!("../../../../tests/published/heat-sections/B-step-250.answers.json"),
];

#[track_caller]
fn case(value: &Value) -> HeatCase {
    match read_question(&value.to_string()) {
        Ok(Question::Heat(case)) => *case,
        other => panic!("{other:?}"),
    }
}

fn solved(value: &Value) -> Result<HeatSolved, HeatError> {
    let case = case(value);
    solve(&case.section, &case.asks, &HeatOptions::default())
}

#[track_caller]
fn answers(value: &Value) -> Vec<(f64, f64)> {
    let solved = solved(value).unwrap_or_else(|why| panic!("{why}"));
    let pairs = solved.answers.iter();
    pairs.map(|a| (a.value, a.error_estimate)).collect()
}

#[track_caller]
fn check_published([case, answers_text]: [&str; 2], within_k: f64) {
    let (mut case, reference): (Value, Value) = (
        serde_json::from_str(case).expect("JSON"),
        serde_json::from_str(answers_text).expect("JSON"),
    );
    let reference = reference["answers"].as_array().expect("a list");
    let found = answers(&case);
    assert_eq!(found.len(), reference.len());
    for ((value, error), expected) in found.iter().zip(reference) {
        let number = |name: &str| expected[name].as_f64().expect("a number");
        let off = (value - number("value")).abs();
        assert!(off < within_k, "{expected} and {value}");
        assert!(
            off < error + number("error_estimate"),
            "{expected} and {value}, {error}"
        );
    }
    // A current larger by a twentieth is detected wherever it matters.
    for joule in case["joule"].as_array_mut().expect("a list") {
        joule["amperes"] = json!(1.05 * joule["amperes"].as_f64().expect("a number"));
    }
    let other = answers(&case);
    let apart = other
        .iter()
        .zip(reference)
        .filter(|((value, _), expected)| {
            (value - expected["value"].as_f64().expect("a number")).abs() > 2.0 * within_k
        });
    assert!(apart.count() * 10 >= 9 * reference.len());
}

#[test]
fn the_published_steady_joint_comes_out() {
    // Tolerance 0.1 K; seen 0.0015 K.
    check_published(STEADY, 0.01);
}

#[test]
fn the_published_joint_after_a_step_comes_out() {
    // Tolerance 0.3 K; seen 0.001 K.
    check_published(STEP, 0.01);
}

/// A length of infinite cable: conductor to 5 mm, wall to 10 mm, film outside.
///
/// ```text
///   3 o--2--o 2--6--o 5
///     3     1       5
///   0 o--0--o 1--4--o 4
/// ```
fn slice(amperes: f64, alpha: f64) -> Value {
    let curve = |from: usize, to: usize, tag: &str| json!({"from": from, "to": to, "tag": tag});
    json!({
        "case": "slice", "about": "invented", "physics": "heat",
        "points": [[0, 0], [5, 0], [5, 4], [0, 4], [10, 0], [10, 4]],
        "curves": [curve(0, 1, "interior"), curve(1, 2, "interior"), curve(2, 3, "interior"), curve(3, 0, "interior"),
                   curve(1, 4, "interior"), curve(4, 5, "outside"), curve(5, 2, "interior")],
        "regions": [{"name": "conductor", "material": "cu", "boundary": [1, 2, 3, 4]},
                    {"name": "wall", "material": "pe", "boundary": [5, 6, 7, -2]}],
        "materials": {"cu": {"k_w_per_mk": 385, "rho_c_j_per_m3k": 3.45e6}, "pe": {"k_w_per_mk": 0.3, "rho_c_j_per_m3k": 2e6}},
        "joule": [{"regions": ["conductor"], "amperes": amperes, "r20_ohm_per_m": 2e-4, "alpha_per_k": alpha}],
        "convection": {"outside": {"h_w_per_m2k": 10, "ambient_c": 30}},
        "wanted": [{"name": "middle", "kind": "temperature-at", "at": [0, 2]},
                   {"name": "surface", "kind": "temperature-at", "at": [10, 2]},
                   {"name": "loss", "kind": "total-loss"}],
    })
}

#[test]
fn layers_with_a_current_have_their_textbook_temperatures() {
    // Loss per metre W: surface 30 + W/(2 pi r h); over the wall W ln 2/(2 pi k); in the conductor W/(4 pi k).
    let film = 1.0 / (2.0 * PI * 0.010 * 10.0);
    let wall = 2.0_f64.ln() / (2.0 * PI * 0.3);
    let inside = 1.0 / (4.0 * PI * 385.0);
    let watts = 300.0 * 300.0 * 2e-4;
    let found = answers(&slice(300.0, 0.0));
    let expected = [
        30.0 + watts * (film + wall + inside),
        30.0 + watts * film,
        watts * 0.004,
    ];
    for ((value, error), expected) in found.iter().zip(expected) {
        assert!(
            (value - expected).abs() < 1e-3 * expected.min(1.0),
            "{value} {expected}"
        );
        assert!(
            (value - expected).abs() <= error + 1e-9,
            "{value} {expected} {error}"
        );
    }
    // With a resistance that grows, and a conductor of one temperature except for the last term:
    // W = w (1 + a (T - 20)), T = 30 + W (film + wall).
    let (a, around) = (0.004, film + wall);
    let grown = watts * (1.0 + a * 10.0) / (1.0 - watts * a * around);
    let found = answers(&slice(300.0, a));
    assert!(
        (found[1].0 - (30.0 + grown * film)).abs() < 2e-3,
        "{found:?}"
    );
    assert!(found[1].0 > expected[1] + 5.0);
}

#[test]
fn a_current_that_nothing_can_cool_has_no_steady_temperature() {
    // w a (film + wall) = 1 at 469 A: below it there is a steady temperature, above it none.
    let around = 1.0 / (2.0 * PI * 0.010 * 10.0) + 2.0_f64.ln() / (2.0 * PI * 0.3);
    let most = (1.0 / (2e-4 * 0.004 * around)).sqrt();
    assert!(solved(&slice(0.99 * most, 0.004)).is_ok());
    let said = solved(&slice(1.01 * most, 0.004)).expect_err("it runs away");
    assert!(matches!(said, HeatError::Runaway), "{said:?}");
    let mut uncooled = slice(300.0, 0.0);
    uncooled["convection"]["outside"]["h_w_per_m2k"] = json!(0);
    let said = solved(&uncooled).expect_err("nothing cools it");
    assert!(matches!(said, HeatError::NoCooling), "{said:?}");
}

#[test]
fn a_body_of_one_temperature_cools_by_the_exponential() {
    // 90 degC at first, no current, infinite conductivity: rho c V dT/dt = - h A (T - 30).
    let mut case = slice(0.0, 0.0);
    for material in ["cu", "pe"] {
        case["materials"][material] = json!({"k_w_per_mk": 1e5, "rho_c_j_per_m3k": 2e6});
    }
    case["transient"] = json!({"start_c": 90, "hours": [0.1, 0.5, 2]});
    let hours: [f64; 4] = [0.0, 0.1, 0.5, 2.0];
    let wanted = hours.map(|hour| json!({"name": format!("at {hour}"), "kind": "temperature-at", "at": [3, 1], "hour": hour}));
    case["wanted"] = json!(wanted);
    let time_s = 2e6 * 0.010 / (2.0 * 10.0);
    for ((value, error), hour) in answers(&case).iter().zip(hours) {
        let expected = 30.0 + 60.0 * (-hour * 3600.0 / time_s).exp();
        assert!(
            (value - expected).abs() < 5e-3,
            "{hour} h: {value} {expected}"
        );
        assert!(
            (value - expected).abs() <= error + 1e-3,
            "{hour} h: {value} {expected} {error}"
        );
    }
}

#[test]
fn a_region_loses_what_its_length_loses_whatever_its_shape() {
    // A cone from 8 to 3 mm over 20 mm: I² r20 L in all, though the density changes along it.
    let curve = |from: usize, to: usize, tag: &str| json!({"from": from, "to": to, "tag": tag});
    let cone = json!({
        "case": "cone", "physics": "heat", "points": [[0, 0], [8, 0], [3, 20], [0, 20]],
        "curves": [curve(0, 1, "x"), curve(1, 2, "side"), curve(2, 3, "x"), curve(3, 0, "x")],
        "regions": [{"name": "cone", "material": "cu", "boundary": [1, 2, 3, 4]}],
        "materials": {"cu": {"k_w_per_mk": 385}},
        "joule": [{"regions": ["cone"], "amperes": 200, "r20_ohm_per_m": 1e-4}],
        "convection": {"side": {"h_w_per_m2k": 20, "ambient_c": 20}},
        "wanted": [{"name": "loss", "kind": "total-loss"}],
    });
    let (loss, _) = answers(&cone)[0];
    assert!((loss - 200.0 * 200.0 * 1e-4 * 0.020).abs() < 1e-6, "{loss}");
}

#[test]
fn documents_say_degrees_and_watts() {
    let case = case(&slice(300.0, 0.0));
    let solved = solve(&case.section, &case.asks, &HeatOptions::default());
    let document = case.document(&solved.expect("it is solved"), SecondsDoc::default());
    let units: Vec<&str> = document.answers.iter().map(|a| a.unit.as_str()).collect();
    assert_eq!(units, ["degC", "degC", "W"]);
    assert!(document.answers.iter().all(|a| a.settled));
}

#[track_caller]
fn check(pointer: &str, value: Value, expected: &[(&str, &str)]) {
    let mut case = slice(300.0, 0.004);
    let (table, field) = pointer.rsplit_once('/').expect("a pointer");
    let table = case.pointer_mut(table).expect("the table");
    match table {
        Value::Array(items) => items[field.parse::<usize>().expect("an index")] = value,
        _ => table[field] = value,
    }
    check_says(&case.to_string(), expected);
}

#[test]
fn what_is_wrong_with_heat_is_said_at_its_place() {
    check(
        "/materials/cu/k_w_per_mk",
        json!(0),
        &[("materials.cu.k_w_per_mk", "greater than 0")],
    );
    check(
        "/regions/1/material",
        json!("pex"),
        &[("regions[1].material", "No material has the name \"pex\"")],
    );
    check(
        "/joule/0/regions/0",
        json!("conductr"),
        &[("joule[0].regions[0]", "nearest known word is \"conductor\"")],
    );
    check(
        "/convection",
        json!({"outsde": {"h_w_per_m2k": 1, "ambient_c": 1}}),
        &[("convection.outsde", "outsde")],
    );
    check(
        "/curves/1/tag",
        json!("outside"),
        &[("convection.outside", "lies between two regions")],
    );
    check(
        "/wanted/0/at",
        json!([11, 2]),
        &[("wanted[0].at", "lies in no region")],
    );
    check(
        "/wanted/1/name",
        json!("middle"),
        &[("wanted[1].name", "stands twice")],
    );
    check(
        "/wanted/2",
        json!({"name": "loss", "kind": "total-loss", "hour": 1}),
        &[("wanted[2].hour", "A steady answer has no `hour`")],
    );
    check("/eps_r", json!(2), &[("eps_r", "is not known here")]);
    check(
        "/convection/outside/ambient_c",
        json!(-300),
        &[("convection.outside.ambient_c", "from -273.15")],
    );
    let mut case = slice(300.0, 0.0);
    case["transient"] = json!({"start_c": 20});
    case["materials"]["pe"] = json!({"k_w_per_mk": 0.3});
    check_says(
        &case.to_string(),
        &[
            ("regions[1].material", "has no `rho_c_j_per_m3k`"),
            ("wanted[0].name", "`hour` is missing"),
            ("wanted[1].name", "`hour` is missing"),
            ("wanted[2].name", "`hour` is missing"),
        ],
    );
}
