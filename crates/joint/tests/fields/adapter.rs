//! An adapter that ends before the edge of the insulation screen: the body's bore beyond it is neither drawn nor pressed, and nothing that rests on it passes.

use crate::warm::order;
use jointwright_joint::judge::judge;
use jointwright_joint::limit::{Outcome, Ruling};

const LARKSPUR: &str = "larkspur-three-way";
const FIELDS: [&str; 5] = [
    "interface_stress",
    "screen_edge_stress",
    "electrode_end_stress",
    "deflector_stress",
    "gap_discharge",
];
const LONG: &str = "to = \"adapter-far\", distance = \"85 mm\"";

/// Rulings on leg B, with another length of its adapter and more lines in that row.
#[track_caller]
fn of_leg_b(length_mm: f64, more: &str) -> Vec<Ruling> {
    let length = format!("to = \"adapter-far\", distance = \"{length_mm} mm\"");
    let id = "id = \"demo-adapter-24\"\n";
    let (with, is_known) = (format!("{id}{more}"), !more.is_empty());
    let mut edits = vec![(LONG, length.as_str())];
    edits.extend(is_known.then_some((id, with.as_str())));
    let order = order(LARKSPUR, &[], &edits);
    let judged = judge(&order).unwrap_or_else(|why| panic!("{why:?}"));
    let of_b = |r: &&Ruling| r.subject.leg.as_deref() == Some("B");
    judged.rulings.iter().filter(of_b).cloned().collect()
}

fn outcomes(rulings: &[Ruling], check: &str) -> Vec<Outcome> {
    let of_check = rulings.iter().filter(|r| r.check == check);
    of_check.map(|r| r.outcome).collect()
}

/// Number of a check's passes, and the facts that the rulings not judged ask for.
fn passed(rulings: &[Ruling], check: &str) -> (usize, Vec<&'static str>) {
    let outcomes = outcomes(rulings, check);
    let n_passed = outcomes.iter().filter(|o| **o == Outcome::Pass).count();
    let open = rulings
        .iter()
        .filter(|r| r.check == check && r.outcome == Outcome::NotJudged);
    let mut asks: Vec<&str> = open.flat_map(|r| &r.asks).map(|a| a.fact.key).collect();
    asks.dedup();
    (n_passed, asks)
}

/// Checks that no ruling of leg B that rests on the bore's content passes, whatever the adapter's paper says.
#[track_caller]
fn check_short(length_mm: f64, more: &str, is_pressed: bool) {
    let rulings = of_leg_b(length_mm, more);
    for check in FIELDS {
        assert!(
            !outcomes(&rulings, check).is_empty(),
            "{check} says nothing"
        );
        assert_eq!(
            passed(&rulings, check),
            (0, vec!["adapter-reach"]),
            "{check} {length_mm} {more}"
        );
    }
    let open = if is_pressed {
        vec![]
    } else {
        vec!["adapter-reach"]
    };
    // Three ends; the adapter itself is pressed on its own insulation.
    let n_body = if is_pressed { 3 } else { 0 };
    for (check, n_adapter) in [
        ("interface_pressure", 3),
        ("screen_edge_pressure", 0),
        ("rubber_stretch", 3),
    ] {
        assert_eq!(
            passed(&rulings, check),
            (n_adapter + n_body, open.clone()),
            "{check} {length_mm} {more}"
        );
    }
}

#[test]
fn an_adapter_that_can_end_before_the_screen_edge_leaves_field_and_pressure_open() {
    // Insulation end at 53.8 mm at least, the adapter 4 - 2 mm beyond it, the screen edge at 127.0 mm at most: 71.2 mm reach it.
    for more in ["", "leaves_bare = true\n", "leaves_bare = false\n"] {
        check_short(55.0, more, false);
    }
    check_short(71.1, "", false);
}

#[test]
fn one_that_passes_the_edge_by_less_than_its_thickness_leaves_the_field_open() {
    // Half of 32.0 less 23.5 mm: 4.25 mm past the edge.
    check_short(71.2, "", true);
    check_short(75.4, "", true);
}

#[test]
fn one_that_reaches_past_the_edge_in_every_window_is_drawn_and_pressed() {
    for length_mm in [75.5, 85.0] {
        let rulings = of_leg_b(length_mm, "");
        for check in FIELDS {
            let all = outcomes(&rulings, check);
            assert!(!all.is_empty(), "{check}");
            assert!(all.iter().all(|o| *o == Outcome::Pass), "{check} {all:?}");
        }
        for check in [
            "adapter_layer",
            "interface_pressure",
            "screen_edge_pressure",
            "rubber_stretch",
        ] {
            let all = outcomes(&rulings, check);
            assert!(all.iter().all(|o| *o == Outcome::Pass), "{check} {all:?}");
        }
    }
}

#[test]
fn its_paper_settles_whether_it_may_and_not_what_the_field_is() {
    for (more, expected) in [
        ("", Outcome::NotJudged),
        ("leaves_bare = true\n", Outcome::Pass),
        ("leaves_bare = false\n", Outcome::Fail),
    ] {
        let rulings = of_leg_b(55.0, more);
        let worst = outcomes(&rulings, "adapter_layer").into_iter().max();
        assert_eq!(worst, Some(expected), "{more}");
    }
}

#[test]
fn an_adapter_that_no_row_places_has_no_field() {
    let link = "  { from = \"insulation-end\", to = \"adapter-near\", distance = \"4 mm\", minus = \"2 mm\", plus = \"2 mm\", place = \"step 2\" },\n";
    let order = order(LARKSPUR, &[], &[(link, "")]);
    let judged = judge(&order).unwrap_or_else(|why| panic!("{why:?}"));
    let of_b = |r: &&Ruling| r.subject.leg.as_deref() == Some("B");
    let rulings: Vec<Ruling> = judged.rulings.iter().filter(of_b).cloned().collect();
    for check in FIELDS {
        assert_eq!(
            passed(&rulings, check),
            (0, vec!["adapter-ends"]),
            "{check}"
        );
    }
    assert_eq!(
        passed(&rulings, "joint_load_heat"),
        (0, vec!["adapter-ends"])
    );
}
