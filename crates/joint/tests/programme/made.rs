//! The marks that press, torque or shear bolt leave behind stand at the hold point of the connector, with their window or the reason why there is none.

use super::{order_of, planned};
use crate::cases::everything;
use jointwright_joint::catalogue::{AsMade, ConnectorEnd, Means};
use jointwright_joint::plan::WantedDoc;
use jointwright_joint::stage::Stage;
use jointwright_units::{Interval, Length};

/// Readings at the connector of a straight joint with this connector, as made with these windows.
fn readings(connector: &str, as_made: AsMade) -> Vec<WantedDoc> {
    let mut order = order_of("straight-wires-growth-measured");
    for leg in &mut order.job.legs {
        leg.parts.connector = Some(connector.to_owned());
    }
    for row in &mut order.catalogue.connectors {
        row.as_made = as_made.clone();
    }
    let steps = planned(&order).make_up.steps;
    steps
        .into_iter()
        .filter(|s| s.stage == Stage::Connect)
        .flat_map(|s| s.hold)
        .collect()
}

#[track_caller]
fn window(readings: &[WantedDoc], what: &str, expected: Option<&str>) {
    let found: Vec<&WantedDoc> = readings
        .iter()
        .filter(|w| w.what.starts_with(what))
        .collect();
    assert!(!found.is_empty(), "no reading of {what}");
    for wanted in found {
        assert_eq!(wanted.window.as_deref(), expected, "{wanted:?}");
        assert!(
            wanted.window.is_some() || wanted.whose.contains("states none"),
            "{wanted:?}"
        );
    }
}

fn mm(least: i64, greatest: i64) -> Option<Interval> {
    Interval::new(Length::MM * least, Length::MM * greatest)
}

#[test]
fn a_pressed_connector_is_read_across_and_along() {
    let read = readings(
        "demo-sleeve-pressed-350",
        AsMade {
            across: mm(21, 22),
            length: mm(102, 105),
            ..AsMade::default()
        },
    );
    window(&read, "die in the press", Some("invented die 26"));
    window(&read, "presses made", Some("4"));
    window(&read, "across the flats", Some("21 mm to 22 mm"));
    window(
        &read,
        "length of demo-sleeve-pressed-350 as made, by its own paper",
        Some("102 mm to 105 mm"),
    );
    let silent = readings("demo-sleeve-pressed-350", AsMade::default());
    window(&silent, "across the flats", None);
    window(
        &silent,
        "length of demo-sleeve-pressed-350 as made, by its own paper",
        None,
    );
}

#[test]
fn every_sheared_head_is_counted() {
    let bolts = AsMade {
        bolts: Some(4),
        ..AsMade::default()
    };
    window(
        &readings("demo-sleeve-bolt", bolts),
        "heads of",
        Some("all 4"),
    );
    let silent = readings("demo-sleeve-bolt", AsMade::default());
    window(
        &silent,
        "heads of",
        Some("every one; how many there are is not stated"),
    );
    assert!(!silent.iter().any(|w| w.what.starts_with("torque")));
    let torque = AsMade {
        torque_nm: Some((18.0, 22.0)),
        ..AsMade::default()
    };
    let read = readings("demo-sleeve-bolt", torque);
    window(
        &read,
        "torque at which",
        Some("13.3 to 16.2 ft·lbf (18 to 22 N·m)"),
    );
}

#[test]
fn a_screw_is_read_by_its_torque() {
    let screws = AsMade {
        torque_nm: Some((18.0, 22.0)),
        ..AsMade::default()
    };
    let read = readings("demo-sleeve-screw", screws);
    // 18 N·m are 13.276 ft·lbf, 22 are 16.226.
    window(
        &read,
        "torque of every screw",
        Some("13.3 to 16.2 ft·lbf (18 to 22 N·m)"),
    );
    window(
        &readings("demo-sleeve-screw", AsMade::default()),
        "torque of every screw",
        None,
    );
}

#[test]
fn every_connector_of_every_case_is_read_as_made() {
    for case in everything() {
        let order = case.order();
        let plan = planned(&order);
        for leg in &order.job.legs {
            let name = leg.parts.connector.as_deref();
            let Some(row) = name.and_then(|id| order.catalogue.connector(id)) else {
                continue;
            };
            let what = match row.means {
                Means::Compression => "across the flats",
                Means::ShearBolt => "heads of",
                Means::SetScrew => "torque of every screw",
            };
            let ends = format!("leg {}", leg.id);
            let steps = plan.make_up.steps.iter();
            let mut holds = steps
                .filter(|s| s.stage == Stage::Connect && s.legs.contains(&leg.id))
                .flat_map(|s| &s.hold);
            assert!(
                holds.any(|w| w.what.starts_with(what) && w.what.ends_with(&ends)),
                "{}: leg {}",
                case.slug,
                leg.id
            );
        }
    }
}

/// A row's statement for one end holds for that end; its statement for the whole part holds for an end without one.
#[test]
fn each_end_of_a_sleeve_is_read_as_made_by_its_own_window() {
    let mut order = order_of("straight-wires-growth-measured");
    let legs: Vec<String> = order.job.legs.iter().map(|leg| leg.id.clone()).collect();
    for leg in &mut order.job.legs {
        leg.parts.connector = Some("demo-sleeve-pressed-350".to_owned());
        leg.parts.connector_end = Some(leg.id.to_lowercase());
    }
    let mut rows = order.catalogue.connectors.iter_mut();
    let row = rows.find(|row| row.head.id == "demo-sleeve-pressed-350");
    let row = row.expect("a row");
    row.as_made = AsMade {
        across: mm(21, 22),
        length: mm(102, 105),
        ..AsMade::default()
    };
    let both = row.ends[0].clone();
    row.ends = legs
        .iter()
        .map(|leg| ConnectorEnd {
            name: Some(leg.to_lowercase()),
            as_made: (leg == "B").then(|| AsMade {
                across: mm(17, 18),
                ..AsMade::default()
            }),
            ..both.clone()
        })
        .collect();
    let plan = planned(&order);
    let holds: Vec<&WantedDoc> = plan
        .make_up
        .steps
        .iter()
        .filter(|s| s.stage == Stage::Connect)
        .flat_map(|s| &s.hold)
        .collect();
    let of = |what: &str, leg: &str| {
        let mut all = holds.iter();
        let is_it = |w: &&&WantedDoc| w.what.starts_with(what) && w.what.contains(leg);
        all.find(is_it).and_then(|w| w.window.clone())
    };
    let across = "across the flats";
    assert_eq!(of(across, "leg A").as_deref(), Some("21 mm to 22 mm"));
    assert_eq!(of(across, "leg B").as_deref(), Some("17 mm to 18 mm"));
    for leg in ["leg A", "leg B"] {
        let length = of("length of", leg);
        assert_eq!(length.as_deref(), Some("102 mm to 105 mm"), "{leg}");
    }
}
