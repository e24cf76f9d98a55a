//! Deletions that once helped, one by one: each now asks for exactly the fact that was deleted.

use super::bench::{Bench, Depth, Line, Segment};
use super::worse::worse;
use crate::cases::named;
use crate::laws::toml_text::rows;
use jointwright_joint::limit::{Outcome, Ruling};
use toml::Value;

#[track_caller]
fn bench(name: &str) -> Bench {
    worse()
        .find(|bench| bench.name == name)
        .unwrap_or_else(|| panic!("no example {name}"))
}

#[track_caller]
fn without(bench: &Bench, keys: &str) -> Vec<Ruling> {
    let lines = bench.job_lines().into_iter().chain(bench.row_lines());
    let lines: Vec<Line> = lines.filter(|line| line.keys() == keys).collect();
    assert!(!lines.is_empty(), "{} has no {keys}", bench.name);
    let without = bench.without(&lines);
    without
        .rulings(Depth::WithoutFields)
        .unwrap_or_else(|| panic!("{} is refused without {keys}", bench.name))
}

/// Checks that without these lines a check rules "not judged" on every subject, in these words.
#[track_caller]
fn asks(name: &str, keys: &str, check: &str, words: &str) {
    let rulings = without(&bench(name), keys);
    let of_check = rulings.iter().filter(|r| r.check == check);
    let asked: Vec<&Ruling> = of_check
        .filter(|r| {
            let why = crate::cases::english(&r.why);
            r.outcome == Outcome::NotJudged && why.contains(words)
        })
        .collect();
    assert!(
        !asked.is_empty(),
        "{name} without {keys}: {check} does not ask: {rulings:#?}"
    );
}

#[test]
fn a_reading_without_its_temperature_is_of_no_known_size() {
    for check in [
        "range_today",
        "rubber_stretch",
        "interface_pressure",
        "screen_edge_pressure",
    ] {
        asks(
            "read hot",
            "reading.temperature",
            check,
            "has no temperature",
        );
        asks(
            "read hot",
            "place.ambient_least",
            check,
            "lowest temperature",
        );
        asks(
            "read hot",
            "place.ambient_greatest",
            check,
            "highest temperature",
        );
    }
    let cold = "a place colder than the readings";
    asks(
        cold,
        "reading.temperature",
        "seal_squeeze",
        "has no temperature",
    );
}

/// An impossible reading leaves the heat open; if it is left out, the papers' diameter does not take its place.
#[test]
fn heat_is_not_judged_on_a_diameter_that_nobody_read() {
    let bench = Bench::of(named("dock-straight-pressed"));
    for (over, place) in [
        ("insulation", "B1 over the insulation"),
        (
            "insulation-screen",
            "B1 over the insulation shield (black semicon)",
        ),
        ("jacket", "B1 over the jacket"),
    ] {
        let readings = rows_of(&bench, "reading");
        let is_it =
            |row: &Value| row["over"].as_str() == Some(over) && row["leg"].as_str() == Some("B");
        let at = readings.iter().position(is_it).expect("the reading");
        let line = Line {
            file: None,
            path: vec![Segment::Key("reading".to_owned()), Segment::Row(at)],
        };
        let rulings = bench.without(&[line]).rulings(Depth::WithoutFields);
        let rulings = rulings.expect("it is read");
        for check in [
            "joint_load_heat",
            "joint_emergency_heat",
            "service_temperature",
        ] {
            let of_check: Vec<&Ruling> = rulings.iter().filter(|r| r.check == check).collect();
            // Both legs share their heat.
            assert!(of_check.len() >= 2, "{check}");
            for ruling in of_check {
                let asks = ruling
                    .asks
                    .iter()
                    .map(|ask| (ask.fact.key, crate::cases::of_words(ask)));
                let asks: Vec<(&str, String)> = asks.collect();
                assert!(
                    ruling.outcome == Outcome::NotJudged && asks == [("reading", place.to_owned())],
                    "{over}, {check}: {ruling:#?}"
                );
            }
        }
    }
    // The twin: with all of them the check rules.
    let whole = bench.rulings(Depth::WithoutFields).expect("it is read");
    let loads = whole.iter().filter(|r| r.check == "joint_load_heat");
    assert!(loads.clone().count() == 2 && loads.clone().all(|r| r.outcome == Outcome::Pass));
}

fn rows_of(bench: &Bench, key: &str) -> Vec<Value> {
    let rows = bench.job.get(key).and_then(Value::as_array);
    rows.cloned().unwrap_or_default()
}

#[test]
fn a_shield_whose_fault_may_be_cleared_late_is_not_judged() {
    for check in ["shield_fault_heat", "shield_part_fault"] {
        asks(
            "long clearing",
            "system.clearing_time",
            check,
            "system.clearing_time",
        );
    }
}

#[test]
fn a_row_that_does_not_say_how_warm_it_may_lie_is_asked() {
    asks(
        "lots that lay hot",
        "body.shelf.store_greatest",
        "kit_age",
        "how warm it may lie",
    );
    asks(
        "lots that lay cold",
        "body.shelf.store_least",
        "kit_age",
        "how cold it may lie",
    );
}

#[test]
fn a_label_that_nobody_read_may_be_past_its_date() {
    for check in ["kit_age", "range_today", "seal_squeeze"] {
        asks(
            "labels past their date",
            "lot.expires",
            check,
            "prints an expiry date",
        );
    }
    asks(
        "lots older than their months",
        "lot.no_expiry",
        "kit_age",
        "prints an expiry date",
    );
}

#[test]
fn a_leg_without_a_brush_is_asked_for_one() {
    let name = "brushes of the other metal";
    asks(
        name,
        "leg.consumables",
        "consumable_metal",
        "cleans the conductor",
    );
    asks(
        name,
        "consumable.metals",
        "consumable_metal",
        "which conductor metals",
    );
}

/// Outcomes of the layer check if the instrument of every reading has this error.
#[track_caller]
fn layer_with_error(error: &str) -> Vec<Outcome> {
    let mut bench = Bench::of(named("branch-straps-screen-read-as-insulation"));
    for row in rows(&mut bench.job, "reading") {
        row.insert("error".to_owned(), Value::String(error.to_owned()));
    }
    let rulings = bench.rulings(Depth::Unsolved).expect("it is read");
    let of_layer = rulings.iter().filter(|r| r.check == "reading_layer");
    of_layer.map(|r| r.outcome).collect()
}

#[test]
fn a_wider_error_hides_the_layer_and_does_not_excuse_it() {
    assert!(layer_with_error("0.05 mm").contains(&Outcome::Fail));
    for error in ["0.5 mm", "1 mm", "2 mm", "4 mm"] {
        let outcomes = layer_with_error(error);
        assert!(!outcomes.is_empty(), "{error}");
    }
    assert!(layer_with_error("4 mm").contains(&Outcome::NotJudged));
}
