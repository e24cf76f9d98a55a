//! A longer connector moves the places measured from its mouth, by exactly half of the difference if it has two ends, and nothing else.

use super::toml_text::{row, text, tree};
use super::tries;
use crate::cases::{Case, accepted, named, read};
use jointwright_joint::cutback::{Cut, cutback};
use jointwright_joint::fit::Chosen;
use jointwright_joint::job::Order;
use jointwright_units::Length;
use proptest::prelude::*;
use std::collections::BTreeMap;
use toml::{Table, Value};

/// Screen edge of the straight body measured from the insulation end, so that every cut behind depends on the connector too.
fn chained(catalogue: &mut Table) {
    let body = row(catalogue, "body", "demo-straight-15");
    let links = body["link"].as_array_mut().expect("links");
    let screen = links.last_mut().and_then(Value::as_table_mut);
    let screen = screen.expect("the link of the screen edge");
    assert_eq!(screen["to"].as_str(), Some("insulation-screen-edge"));
    screen.insert("from".to_owned(), "insulation-end".into());
    screen.insert("distance".to_owned(), "2 1/2 in".into());
}

fn order(case: Case, connector: &str, longer: Length, change: fn(&mut Table)) -> Order {
    let mut catalogues = case.catalogues();
    let mut catalogue = tree(&catalogues[0].1);
    change(&mut catalogue);
    let part = row(&mut catalogue, "connector", connector);
    let before = Length::parse_cut(part["length"].as_str().expect("a length"));
    let after = before.expect("a length") + longer;
    part.insert("length".to_owned(), after.exact_mm().into());
    catalogues[0].1 = text(&catalogue, None);
    accepted(read(case.job, &catalogues), case.slug)
}

/// Every place of a cut in half-nanometres: nominal, window and each rung of its ladder.
fn places(cut: &Cut) -> Vec<i64> {
    let nominal = cut.nominal.map(|s| s.half_nm());
    let window = cut
        .window
        .map(|w| [w.least().half_nm(), w.greatest().half_nm()]);
    let rungs = cut.ladder.iter().flat_map(|rung| {
        let window = rung
            .window
            .map(|w| [w.least().half_nm(), w.greatest().half_nm()]);
        std::iter::once(rung.nominal.half_nm()).chain(window.into_iter().flatten())
    });
    nominal
        .into_iter()
        .chain(window.into_iter().flatten())
        .chain(rungs)
        .collect()
}

/// Movement of each plane of one leg, half-nanometres.
///
/// A plane without a place is left out; the test panics if the places of one plane move by different amounts.
#[track_caller]
fn moved(before: &Order, after: &Order, leg_index: usize) -> BTreeMap<&'static str, i64> {
    let cuts = |order: &Order| {
        let leg = &order.job.legs[leg_index];
        let chosen = Chosen::from_names(&order.catalogue, &leg.parts, leg.cable.conductor);
        cutback(&order.job, leg, &chosen)
            .expect("the rows agree")
            .cuts
    };
    let (before, after) = (cuts(before), cuts(after));
    assert_eq!(before.len(), after.len());
    let mut moved = BTreeMap::new();
    for (before, after) in before.iter().zip(&after) {
        let (from, to) = (places(before), places(after));
        assert_eq!(from.len(), to.len());
        if from.is_empty() {
            // The part that places it is left open.
            continue;
        }
        let by: Vec<i64> = from.iter().zip(&to).map(|(a, b)| b - a).collect();
        assert!(by.iter().all(|b| *b == by[0]), "{:?}: {by:?}", before.plane);
        moved.insert(before.plane.name(), by[0]);
    }
    moved
}

/// Violations of the law on these planes: `dependent` planes move by this many half-nanometres, the others not at all.
fn broken(moved: &BTreeMap<&'static str, i64>, dependent: &[&str], by_half_nm: i64) -> Vec<String> {
    let wrong = moved.iter().filter(|(plane, by)| {
        let expected = if dependent.contains(plane) {
            by_half_nm
        } else {
            0
        };
        **by != expected
    });
    wrong
        .map(|(plane, by)| format!("{plane} moved by {by} half-nanometres"))
        .collect()
}

const STRAIGHT: &[(&str, &str)] = &[
    ("straight-wires-growth-measured", "demo-sleeve-pressed-1-0"),
    ("straight-tape-growth-unknown", "demo-sleeve-pressed-350"),
    (
        "straight-straps-owner-tightens-the-screen-window",
        "demo-sleeve-bolt",
    ),
    ("straight-corrugated-isolated-earthing", "demo-sleeve-screw"),
    ("dock-straight-pressed", "demo-sleeve-pressed-350"),
    ("tannery-change", "demo-sleeve-pressed-1-0"),
];
const ONE_ENDED: &[(&str, &str)] = &[
    (
        "three-way-wires-adapter-on-two-legs",
        "demo-contact-pressed",
    ),
    ("branch-tape-slack-short", "demo-contact-bolt"),
    ("quarry-four-way", "demo-contact-bolt"),
];
const MM: i64 = 2_000_000;

fn unchanged(_: &mut Table) {}

#[track_caller]
fn check(
    slug: &str,
    connector: &str,
    longer: Length,
    change: fn(&mut Table),
    dependent: &[&str],
    by_half_nm: i64,
) {
    let case = named(slug);
    let before = order(case, connector, Length::ZERO, change);
    let after = order(case, connector, longer, change);
    for (index, leg) in before.job.legs.iter().enumerate() {
        if leg.parts.connector.as_deref() == Some(connector) {
            let moved = moved(&before, &after, index);
            assert!(dependent.iter().all(|plane| moved.contains_key(plane)));
            let broken = broken(&moved, dependent, by_half_nm);
            assert!(broken.is_empty(), "{slug} leg {}: {broken:?}", leg.id);
        }
    }
}

#[test]
fn two_millimetres_on_a_sleeve_move_the_insulation_end_by_one() {
    for (slug, connector) in STRAIGHT {
        check(
            slug,
            connector,
            Length::MM * 2,
            unchanged,
            &["insulation-end"],
            MM,
        );
    }
}

#[test]
fn two_millimetres_on_a_contact_with_one_end_move_the_insulation_end_by_two() {
    for (slug, connector) in ONE_ENDED {
        check(
            slug,
            connector,
            Length::MM * 2,
            unchanged,
            &["insulation-end"],
            2 * MM,
        );
    }
}

/// Cuts that depend on the connector if the screen edge is measured from the insulation end; the body is not among them.
const BEHIND: &[&str] = &[
    "insulation-end",
    "insulation-screen-edge",
    "metallic-shield-edge",
    "jacket-edge",
    "seal-end",
];

#[test]
fn every_cut_that_is_measured_through_the_mouth_moves_and_the_body_does_not() {
    for (slug, connector) in STRAIGHT
        .iter()
        .filter(|(slug, _)| *slug != "tannery-change")
    {
        check(slug, connector, Length::MM * 2, chained, BEHIND, MM);
    }
}

#[test]
fn a_micrometre_more_breaks_the_law() {
    for (slug, connector) in STRAIGHT {
        let case = named(slug);
        let before = order(case, connector, Length::ZERO, unchanged);
        let after = order(case, connector, Length::from_nm(2_001_000), unchanged);
        let moved = moved(&before, &after, 0);
        assert_eq!(
            broken(&moved, &["insulation-end"], MM).len(),
            1,
            "{moved:?}"
        );
        assert_eq!(broken(&moved, &["insulation-end"], MM + 1_000), [""; 0]);
    }
}

proptest! {
    #![proptest_config(tries(64))]

    #[test]
    fn any_length_moves_it_by_half_of_it_to_the_half_nanometre(
        pick in 0..STRAIGHT.len(),
        nm in -3_000_000_i64..3_000_000,
    ) {
        let (slug, connector) = STRAIGHT[pick];
        // A nanometre on the whole sleeve is a half-nanometre at each mouth.
        check(slug, connector, Length::from_nm(nm), unchanged, &["insulation-end"], nm);
    }
}
