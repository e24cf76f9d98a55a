//! Hostile input: every case file comes out as a case or as complaints with their places, whatever it holds.
//!
//! `JOINTWRIGHT_HOSTILE_CASES` sets the number of cases of each property, else `PROPTEST_CASES`, else 300.
//! `JOINTWRIGHT_HOSTILE_SEED` sets the seed, which is fixed so that two runs say the same.

use super::{PUBLISHED, SLICE};
use jointwright_numerics::case::{Complaint, read};
use jointwright_numerics::outline::check;
use proptest::prelude::*;
use proptest::sample::Index;
use proptest::test_runner::{Config, RngSeed, TestRunner};
use serde_json::Value;
use std::cell::Cell;

const CASES: u32 = 300;
const SEED: u64 = 20_260_309;

#[allow(
    clippy::disallowed_methods,
    reason = "tests are no part of the core; --long asks for more cases"
)]
fn number<N: std::str::FromStr>(name: &str) -> Option<N> {
    std::env::var(name).ok()?.parse().ok()
}

fn config() -> Config {
    Config {
        cases: number("JOINTWRIGHT_HOSTILE_CASES")
            .or_else(|| number("PROPTEST_CASES"))
            .unwrap_or(CASES),
        rng_seed: RngSeed::Fixed(number("JOINTWRIGHT_HOSTILE_SEED").unwrap_or(SEED)),
        failure_persistence: None,
        ..Config::default()
    }
}

fn texts() -> Vec<&'static str> {
    let published = PUBLISHED.iter().map(|(_, text)| *text);
    published.chain([SLICE]).collect()
}

/// Reads a text and checks the promises about the result; returns whether it was a case.
fn run(text: &str) -> Result<bool, TestCaseError> {
    match read(text) {
        Ok(case) => {
            prop_assert_eq!(check(&case.section.outline), vec![]);
            prop_assert_eq!(
                case.section.materials.len(),
                case.section.outline.regions.len()
            );
            prop_assert!(
                case.section
                    .potentials
                    .iter()
                    .all(|(_, volts)| volts.is_finite())
            );
            prop_assert!(!case.wanted.is_empty());
            Ok(true)
        }
        Err(complaints) => {
            prop_assert!(!complaints.is_empty());
            for complaint in &complaints {
                of_complaint(complaint, text)?;
            }
            Ok(false)
        }
    }
}

fn of_complaint(complaint: &Complaint, text: &str) -> Result<(), TestCaseError> {
    let lines: Vec<&str> = text.split('\n').collect();
    prop_assert!(
        complaint.line >= 1 && complaint.line <= lines.len(),
        "{complaint}"
    );
    let length = lines[complaint.line - 1].chars().count();
    prop_assert!(
        complaint.column >= 1 && complaint.column <= length + 1,
        "{complaint}"
    );
    prop_assert!(!complaint.message.is_empty(), "{complaint}");
    let shown = complaint.to_string();
    prop_assert!(!shown.chars().any(char::is_control), "{shown}");
    prop_assert!(shown.chars().count() < 2_000, "{shown}");
    Ok(())
}

#[derive(Clone, Debug)]
enum Harm {
    Cut(Index, Index),
    Byte(Index, u8),
    Insert(Index, String),
    Double(Index, Index),
}

fn harms() -> impl Strategy<Value = Harm> {
    prop_oneof![
        (any::<Index>(), any::<Index>()).prop_map(|(a, b)| Harm::Cut(a, b)),
        (any::<Index>(), any::<u8>()).prop_map(|(a, b)| Harm::Byte(a, b)),
        (any::<Index>(), "[-0-9.e\\[\\]{}\",:\\\\½\\n]{1,3}").prop_map(|(a, b)| Harm::Insert(a, b)),
        (any::<Index>(), any::<Index>()).prop_map(|(a, b)| Harm::Double(a, b)),
    ]
}

fn harmed(text: &str, harms: &[Harm]) -> String {
    let mut bytes = text.as_bytes().to_vec();
    for harm in harms {
        if bytes.is_empty() {
            break;
        }
        let n = bytes.len();
        match harm {
            Harm::Cut(from, length) => {
                let from = from.index(n);
                bytes.drain(from..(from + length.index(40)).min(n));
            }
            Harm::Byte(at, byte) => bytes[at.index(n)] = *byte,
            Harm::Insert(at, text) => {
                let at = at.index(n);
                bytes.splice(at..at, text.bytes());
            }
            Harm::Double(from, length) => {
                let from = from.index(n);
                let part = bytes[from..(from + length.index(60)).min(n)].to_vec();
                bytes.splice(from..from, part);
            }
        }
    }
    String::from_utf8_lossy(&bytes).into_owned()
}

/// Values that a number, a word or a list may be exchanged for.
fn values() -> impl Strategy<Value = Value> {
    let numbers = prop_oneof![
        (-3_i64..20).prop_map(Value::from),
        (-50.0_f64..50.0).prop_map(Value::from),
        prop::num::f64::NORMAL.prop_map(Value::from),
        Just(Value::from(u64::MAX)),
        Just(Value::from(1e308)),
        Just(Value::from(5e-324)),
        Just(Value::from(-0.0)),
    ];
    let words = [
        "",
        "interior",
        "cond",
        "ins",
        "capacitance",
        "field-at",
        "\u{0}\n\u{202e}",
    ];
    prop_oneof![
        4 => numbers,
        2 => prop::sample::select(words.to_vec()).prop_map(Value::from),
        1 => prop_oneof![
            Just(Value::Null),
            Just(Value::Bool(true)),
            Just(serde_json::json!([])),
            Just(serde_json::json!({})),
            Just(serde_json::json!([1, 2])),
        ],
    ]
}

/// Every value of a tree that has none in it, and every list and table, in order.
fn places(value: &mut Value) -> Vec<&mut Value> {
    let mut found: Vec<&mut Value> = Vec::new();
    let mut open = vec![value];
    while let Some(next) = open.pop() {
        let is_deep = match &*next {
            Value::Array(items) => items.iter().any(|i| i.is_array() || i.is_object()),
            Value::Object(_) => true,
            _ => false,
        };
        if !is_deep {
            found.push(next);
            continue;
        }
        match next {
            Value::Array(items) => open.extend(items.iter_mut()),
            Value::Object(fields) => open.extend(fields.iter_mut().map(|(_, field)| field)),
            _ => {}
        }
    }
    found
}

#[track_caller]
fn finish<S: Strategy>(
    input: &S,
    n_read_least_percent: u32,
    test: impl Fn(S::Value) -> Result<bool, TestCaseError>,
) {
    let n_read = Cell::new(0_u32);
    let config = config();
    let n_cases = config.cases;
    let ran = TestRunner::new(config).run(input, |value| {
        if test(value)? {
            n_read.set(n_read.get() + 1);
        }
        Ok(())
    });
    if let Err(broken) = ran {
        panic!("{broken}");
    }
    let enough = n_read.get() * 100 >= n_cases * n_read_least_percent;
    assert!(enough, "{} of {n_cases} were read", n_read.get());
}

#[test]
fn hostile_bytes_in_a_case_are_read_or_refused_in_words() {
    let texts = texts();
    for (most, percent) in [(1, 5), (8, 0)] {
        let input = (0..texts.len(), prop::collection::vec(harms(), 0..=most));
        finish(&input, percent, |(which, harms)| {
            run(&harmed(texts[which], &harms))
        });
    }
}

#[test]
fn hostile_values_in_a_case_are_read_or_refused_in_words() {
    let texts = texts();
    for (most, percent) in [(1, 20), (6, 2)] {
        let exchange = (any::<Index>(), values());
        let input = (0..texts.len(), prop::collection::vec(exchange, 0..=most));
        finish(&input, percent, |(which, exchanges)| {
            let mut tree: Value = serde_json::from_str(texts[which]).expect("it is JSON");
            for (at, value) in exchanges {
                let mut places = places(&mut tree);
                let n = places.len();
                if n > 0 {
                    *places[at.index(n)] = value;
                }
            }
            run(&tree.to_string())
        });
    }
}

#[test]
fn hostile_places_of_a_case_are_read_or_refused_in_words() {
    let texts = texts();
    // Points moved onto, through and beside each other, and curves between any of them.
    let harm = (any::<Index>(), any::<Index>(), -3_i32..4, 0_u8..4);
    let input = (0..texts.len(), prop::collection::vec(harm, 1..=4));
    finish(&input, 0, |(which, harms)| {
        let mut tree: Value = serde_json::from_str(texts[which]).expect("it is JSON");
        for (one, other, step, what) in harms {
            let n = tree["points"].as_array().map_or(0, Vec::len);
            let n_curves = tree["curves"].as_array().map_or(0, Vec::len);
            match what {
                0 => tree["points"][one.index(n)] = tree["points"][other.index(n)].clone(),
                1 => {
                    let axis = usize::from(step > 0);
                    let old = tree["points"][one.index(n)][axis].as_f64().unwrap_or(0.0);
                    tree["points"][one.index(n)][axis] = Value::from(old + f64::from(step));
                }
                2 => tree["curves"][one.index(n_curves)]["to"] = Value::from(other.index(n)),
                _ => {
                    let center = tree["points"][other.index(n)].clone();
                    tree["curves"][one.index(n_curves)]["arc_center"] = center;
                }
            }
        }
        run(&tree.to_string())
    });
}

#[test]
fn hostile_text_that_never_was_a_case_is_refused_in_words() {
    let text = prop_oneof![".{0,200}", "[\\[\\]{}\",:0-9a-z\\\\ \\n-]{0,200}"];
    finish(&text, 0, |text| {
        prop_assert!(!run(&text)?);
        Ok(false)
    });
}

#[test]
fn hostile_sizes_are_refused_soon() {
    let many = |n: usize, item: &str| vec![item; n].join(",");
    // Five thousand curves on each other, and a flood of unknown words.
    let curves = many(5_000, "{\"from\": 0, \"to\": 1, \"tag\": \"t\"}");
    let text = SLICE.replacen("\"curves\": [", &format!("\"curves\": [{curves},"), 1);
    assert!(matches!(run(&text), Ok(false)));
    let words: Vec<String> = (0..50_000).map(|n| format!("\"word{n}\": {n}")).collect();
    assert!(matches!(
        run(&format!("{{{}}}", words.join(","))),
        Ok(false)
    ));
    let points: Vec<String> = (0..19_000).map(|n| format!("[{}, 0]", n % 7)).collect();
    let text = SLICE.replacen("[30, 0]]", &format!("[30, 0], {}]", points.join(",")), 1);
    assert!(matches!(run(&text), Ok(true)));
    assert!(matches!(run(&" ".repeat(5_000_000)), Ok(false)));
}
