//! Published unit facts: each row of `tests/published/unit_facts`, and for each a wrong input that must disagree.
//!
//! Why one binary: all tests from outside share one link step.
//! Source: `tests/published/unit_facts/SOURCE.md`; each row names its own.

use jointwright_units::{Area, Length, ResistancePerLength, Station, Tick, Toward, mark};

const VALUES: &str = include_str!("../../../tests/published/unit_facts/values.csv");
const HEADER: &str = "key,input,expected,unit,tolerance,twin,confidence,source";

/// Every key that a test below checks.
const CHECKED: [&str; 10] = [
    "unit.in",
    "unit.frac.1_16",
    "unit.frac.3_32",
    "unit.frac.1_8",
    "unit.frac.3_16",
    "unit.round16",
    "unit.round16b",
    "unit.mil",
    "unit.kft_km",
    "cond.kcmil_mm2",
];

/// One published fact.
struct Fact {
    input: &'static str,
    expected: &'static str,
    tolerance: &'static str,
    twin: &'static str,
    confidence: &'static str,
    source: &'static str,
}

fn fact(key: &str) -> Fact {
    let row = VALUES
        .lines()
        .find(|row| row.split(',').next() == Some(key))
        .expect(key);
    let cells: Vec<&str> = row.split(',').collect();
    let [_, input, expected, _, tolerance, twin, confidence, source] = cells[..] else {
        panic!("{} cells in row `{row}`, 8 expected", cells.len());
    };
    Fact {
        input,
        expected,
        tolerance,
        twin,
        confidence,
        source,
    }
}

/// Checks that the row agrees and its twin does not; `agrees` takes input, expected value and tolerance.
#[track_caller]
fn check(key: &str, agrees: fn(&str, &str, &str) -> bool) {
    let fact = fact(key);
    assert!(
        CHECKED.contains(&key),
        "`{key}` is missing from the list of checked keys"
    );
    assert!(
        agrees(fact.input, fact.expected, fact.tolerance),
        "{key}: {} is not {} ({}, {})",
        fact.input,
        fact.expected,
        fact.source,
        fact.confidence
    );
    assert_ne!(fact.input, fact.twin);
    assert!(
        !agrees(fact.twin, fact.expected, fact.tolerance),
        "{key}: the twin {} agrees with {} too, so that the check cannot fail",
        fact.twin,
        fact.expected
    );
}

/// Whether both are the same whole number of nanometres.
fn is_length_in_mm(input: &str, expected: &str, tolerance: &str) -> bool {
    assert_eq!(tolerance, "exact");
    let expected = Length::parse_cut(&format!("{expected} mm")).expect("a published length");
    Length::parse_cut(input).expect("a length") == expected
}

/// Whether the mark nearest at a sixteenth is the published one, in value and in print.
fn is_rounded_to_a_sixteenth(input: &str, expected: &str, tolerance: &str) -> bool {
    assert_eq!(tolerance, "exact");
    let nominal = Station::from(Length::parse_diameter(input).expect("decimal inches"));
    let mark = mark(nominal, None, Tick::SIXTEENTH, Toward::Nearest).expect("a mark");
    let value = Length::parse_cut(&format!("{expected} in")).expect("a published mark");
    mark.value == value && mark.inch == Some(expected.replace('-', " "))
}

fn is_near(value: f64, expected: &str, tolerance: &str) -> bool {
    let expected: f64 = expected.parse().expect("a published number");
    let tolerance: f64 = tolerance.parse().expect("a tolerance");
    assert!(tolerance > 0.0 && tolerance < 1.0e-6 * expected);
    (value - expected).abs() <= tolerance
}

fn is_ohm_per_km(input: &str, expected: &str, tolerance: &str) -> bool {
    let resistance = ResistancePerLength::parse(input).expect("a resistance per length");
    is_near(resistance.ohm_per_km(), expected, tolerance)
}

fn is_mm2(input: &str, expected: &str, tolerance: &str) -> bool {
    is_near(
        Area::parse(input).expect("an area").mm2(),
        expected,
        tolerance,
    )
}

#[test]
fn an_inch_is_25_4_millimetres() {
    check("unit.in", is_length_in_mm);
}

#[test]
fn a_sixteenth_of_an_inch_is_1_5875_millimetres() {
    check("unit.frac.1_16", is_length_in_mm);
}

#[test]
fn three_thirty_seconds_of_an_inch_are_2_38125_millimetres() {
    check("unit.frac.3_32", is_length_in_mm);
}

#[test]
fn an_eighth_of_an_inch_is_3_175_millimetres() {
    check("unit.frac.1_8", is_length_in_mm);
}

#[test]
fn three_sixteenths_of_an_inch_are_4_7625_millimetres() {
    check("unit.frac.3_16", is_length_in_mm);
}

#[test]
fn two_point_four_inches_are_marked_at_two_and_three_eighths() {
    check("unit.round16", is_rounded_to_a_sixteenth);
}

#[test]
fn a_fraction_that_rounds_to_one_carries_into_the_whole_inch() {
    check("unit.round16b", is_rounded_to_a_sixteenth);
}

#[test]
fn two_hundred_and_twenty_mils_are_5_588_millimetres() {
    check("unit.mil", is_length_in_mm);
}

#[test]
fn an_ohm_per_thousand_feet_is_3_280839895_ohms_per_kilometre() {
    check("unit.kft_km", is_ohm_per_km);
}

#[test]
fn a_thousand_circular_mils_are_0_5067075_square_millimetres() {
    check("cond.kcmil_mm2", is_mm2);
}

#[test]
fn every_row_is_checked_and_names_its_source() {
    let mut rows = VALUES.lines();
    assert_eq!(rows.next(), Some(HEADER));
    let keys: Vec<&str> = rows
        .map(|row| row.split(',').next().unwrap_or_default())
        .collect();
    assert_eq!(keys, CHECKED);
    for key in keys {
        let fact = fact(key);
        assert!(!fact.source.is_empty(), "{key}");
        assert_eq!(fact.confidence, "CF", "{key}");
    }
}
