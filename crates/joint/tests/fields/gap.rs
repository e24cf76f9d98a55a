//! The gap before the screen edge: crest against crest, the voltage that rules, filled and empty; each with the mistake that would turn the ruling.

use super::{Edit, field, outcomes, planned, rulings};
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::Plan;

const SQRT_2: f64 = std::f64::consts::SQRT_2;

/// 5 mm beyond the heel with a gap of 3 mm: in the field for certain.
fn edit(filler: Option<(f64, bool)>) -> Edit {
    Edit {
        edge_mm: 130.0,
        bridging_mm: 3.0,
        filler,
        ..Edit::default()
    }
}

fn inception_kv(plan: &Plan, state: &str) -> f64 {
    let gaps = &field(plan).gaps;
    let gap = gaps.iter().find(|gap| gap.state.word() == state);
    gap.unwrap_or_else(|| panic!("no {state} gap: {gaps:?}"))
        .inception_kv
}

/// The ruling on inception in service, at a highest voltage to earth that is this share of the inception voltage.
fn at_share(share: f64, earthing: &'static str) -> Vec<String> {
    let inception = inception_kv(&planned(&edit(None)), "empty");
    let plan = planned(&Edit {
        highest_kv: share * inception * 3.0_f64.sqrt(),
        earthing,
        ..edit(None)
    });
    rulings(&plan, "gap_discharge")
        .iter()
        .filter(|r| r.ruling == Outcome::Fail)
        .filter_map(|r| r.why.clone())
        .collect()
}

fn says(fails: &[String], what: &str) -> bool {
    fails.iter().any(|why| why.contains(what))
}

// At a share s of the inception voltage the multiple is 1/s; if √2 is dropped it is √2/s, and if rms and crest are
// exchanged 1/(√2 s). Each share is one at which that mistake turns the ruling.
#[test]
fn the_gas_breaks_down_at_the_crest() {
    let (dropped, swapped) = (|s: f64| SQRT_2 / s, |s: f64| 1.0 / (SQRT_2 * s));
    let (above, below) = (1.2, 0.8);
    assert!(dropped(above) > 1.0 && swapped(below) < 1.0);
    let what = "inception at the highest voltage";
    assert!(says(&at_share(above, "solid"), what));
    assert!(!says(&at_share(below, "solid"), what));
}

#[test]
fn the_voltage_that_rules_is_to_earth() {
    // A share of 0.65 of inception between conductor and earth; taken for the voltage between phases it would be 1.13.
    let share = 0.65;
    assert!(share * 3.0_f64.sqrt() > 1.0);
    let solid = at_share(share, "solid");
    assert!(
        solid.iter().all(|why| !why.contains("inception")),
        "{solid:?}"
    );
    // If earthing is not solid, the voltage between phases counts while the fault is cleared.
    assert!(says(
        &at_share(share, "isolated"),
        "while an earth fault is cleared"
    ));
}

#[test]
fn a_discharge_that_would_not_go_out_fails_too() {
    // 0.75 of inception is taken for extinction: a share of 0.9 lies between.
    let fails = at_share(0.9, "solid");
    assert!(
        says(&fails, "extinction") && !says(&fails, "inception at"),
        "{fails:?}"
    );
    assert!(!says(&at_share(0.7, "solid"), "extinction"));
}

#[test]
fn grease_is_emptied_unless_its_row_calls_it_permanent() {
    let passing = planned(&edit(Some((4.5, false))));
    let (filled, empty) = (
        inception_kv(&passing, "filled"),
        inception_kv(&passing, "empty"),
    );
    assert!(filled > 1.1 * empty, "{filled} {empty}");
    // A voltage at which the filled gap would hold and the empty gap does not.
    let highest_kv = (filled * empty).sqrt() * 3.0_f64.sqrt() * 0.75;
    let with = |filler| {
        let plan = planned(&Edit {
            highest_kv,
            ..edit(filler)
        });
        rulings(&plan, "gap_discharge")
            .iter()
            .filter(|r| r.ruling == Outcome::Fail && r.unit.as_deref() == Some("times"))
            .filter_map(|r| r.why.clone())
            .filter(|why| why.contains("extinction"))
            .count()
    };
    assert_eq!(with(Some((4.5, false))), 1, "emptied");
    assert_eq!(with(Some((4.5, true))), 0, "permanent");
}

#[test]
fn an_edge_under_the_deflector_has_no_gap_in_the_field() {
    let plan = planned(&Edit {
        bridging_mm: 3.0,
        ..Edit::default()
    });
    assert!(field(&plan).gaps.is_empty());
    assert_eq!(outcomes(&plan, "gap_discharge"), ["pass"]);
}
