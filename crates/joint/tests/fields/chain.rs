//! The family of deviations, from the job to the ruling.

use super::{Edit, field, outcomes, planned, stress};
use jointwright_joint::plan::StateDoc;

const INTERFACE: &str = "field along the interface";
const BEFORE_EDGE: &str = "field along the cable before the screen edge";

fn deviated(edge_mm: f64) -> Edit {
    Edit {
        edge_mm,
        ..Edit::default()
    }
}

fn with_gap(filler: Option<(f64, bool)>) -> Edit {
    Edit {
        edge_mm: 130.0,
        bridging_mm: 3.0,
        filler,
        ..Edit::default()
    }
}

#[test]
fn deviations_come_out_in_their_order_through_the_whole_chain() {
    let family = [
        ("within the overlap", deviated(140.0)),
        ("flush with the heel", deviated(135.0)),
        (
            "5 mm beyond, grease that stays",
            with_gap(Some((4.5, true))),
        ),
        ("5 mm beyond, the rubber follows", deviated(130.0)),
        ("5 mm beyond, a triangle of air", with_gap(None)),
        ("10 mm beyond, the rubber follows", deviated(125.0)),
    ];
    let found: Vec<(&str, f64, f64)> = family
        .iter()
        .map(|(what, edit)| {
            let plan = planned(edit);
            (*what, stress(&plan, BEFORE_EDGE), stress(&plan, INTERFACE))
        })
        .collect();
    for pair in found.windows(2) {
        assert!(pair[0].1 < pair[1].1, "{:?} before {:?}", pair[0], pair[1]);
        // No field along the interface is less than before, except for the error of a percent.
        assert!(
            pair[0].2 < 1.01 * pair[1].2,
            "{:?} before {:?}",
            pair[0],
            pair[1]
        );
    }
    // Published with the reference sections: within the overlap the deviation has no effect, 10 mm beyond it the field is more than half as much again.
    assert_eq!(found[0].1, 0.0);
    assert!(found[5].2 > 1.5 * found[0].2, "{found:?}");
}

#[test]
fn an_edge_within_the_control_passes_and_one_beyond_fails() {
    let within = planned(&deviated(140.0));
    assert_eq!(outcomes(&within, "interface_stress"), ["pass"]);
    assert_eq!(outcomes(&within, "screen_edge_stress"), ["pass"]);
    assert_eq!(stress(&within, BEFORE_EDGE), 0.0);
    let beyond = planned(&deviated(130.0));
    assert_eq!(outcomes(&beyond, "interface_stress"), ["fail"]);
    assert_eq!(outcomes(&beyond, "screen_edge_stress"), ["fail"]);
    assert!(stress(&beyond, BEFORE_EDGE) > 0.3);
}

#[test]
fn a_cable_outside_the_range_is_held_against_the_worst_inside_it() {
    // 21 to 23 mm are permitted.
    let thick = planned(&Edit {
        diameter_mm: 24.4,
        ..Edit::default()
    });
    let thin = planned(&Edit {
        diameter_mm: 19.2,
        ..Edit::default()
    });
    let all: Vec<String> = ["electrode_end_stress", "deflector_stress"]
        .iter()
        .flat_map(|check| [outcomes(&thick, check), outcomes(&thin, check)])
        .flatten()
        .collect();
    for check in ["electrode_end_stress", "deflector_stress"] {
        let fails = |plan| outcomes(plan, check).contains(&"fail".to_owned());
        assert!(fails(&thick) || fails(&thin), "{check}: {all:?}");
    }
}

#[test]
fn an_owner_sets_a_greatest_field() {
    let more = "[[owner_limit]]\ncheck = \"interface_stress\"\ngreatest_kv_per_mm = LIMIT\nby = \"Ines Calloway\"\ndate = 2026-03-09\n";
    let with = |limit: &str| {
        let edit = Edit {
            more: more.replace("LIMIT", limit),
            ..Edit::default()
        };
        outcomes(&planned(&edit), "interface_stress")
    };
    assert_eq!(with("5.0"), ["pass", "pass"]);
    assert_eq!(with("0.1"), ["pass", "fail"]);
}

#[test]
fn the_voltage_is_the_highest_to_earth() {
    let of = |highest_kv: f64| {
        let plan = planned(&Edit {
            highest_kv,
            ..Edit::default()
        });
        (field(&plan).voltage_kv, stress(&plan, INTERFACE))
    };
    let ((low, weak), (high, strong)) = (of(12.0), of(15.0));
    assert!((low - 12.0 / 3.0_f64.sqrt()).abs() < 1e-12 && high > low);
    assert!((strong / weak - 15.0 / 12.0).abs() < 1e-9);
}

#[test]
fn an_edge_that_is_covered_on_the_middle_diameter_alone_lies_in_the_field() {
    // The heel moves with the cable's diameter; at 135.05 mm it covers the edge on 22.2 mm, and not on every one near it.
    let at = |spread_mm: f64| {
        let edit = Edit {
            edge_mm: 135.05,
            spread_mm,
            ..Edit::default()
        };
        stress(&planned(&edit), BEFORE_EDGE)
    };
    assert_eq!(at(0.0), 0.0);
    assert!(at(0.7) > 0.2);
}

#[test]
fn a_worst_state_that_cannot_be_drawn_refuses_the_leg() {
    // A gap as long as the way to the electrode.
    let plan = planned(&Edit {
        edge_mm: 130.0,
        bridging_mm: 90.0,
        ..Edit::default()
    });
    let field = plan.legs[0].field.as_ref().expect("it has a body");
    assert_eq!(field.state, StateDoc::NotComputed);
    assert_eq!(outcomes(&plan, "screen_edge_stress"), ["not-judged"]);
    assert_eq!(outcomes(&plan, "gap_discharge"), ["not-judged"]);
}

#[test]
fn a_deflector_that_does_not_conduct_is_refused() {
    let plan = planned(&Edit {
        shape: vec![("conductive = true", "conductive = false".to_owned())],
        ..Edit::default()
    });
    let field = plan.legs[0].field.as_ref().expect("it has a body");
    let why = field.why.as_deref().unwrap_or_default();
    assert!(why.contains("does not conduct"), "{why}");
}

#[test]
fn an_inside_for_quite_another_cable_says_nothing() {
    let plan = planned(&Edit {
        diameter_mm: 35.0,
        ..Edit::default()
    });
    let field = plan.legs[0].field.as_ref().expect("it has a body");
    let why = field.why.as_deref().unwrap_or_default();
    assert!(why.contains("too far to conclude"), "{why}");
}
