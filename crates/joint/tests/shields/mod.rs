//! Shields along the cable: resistance, current and loss round them, voltage along them, against hand calculation and published numbers.

mod along;
mod continuity;
mod loss;
mod standing;

use crate::cases::{accepted, named, read};
use jointwright_joint::job::{Leg, Order};

const LARKSPUR: &str = "larkspur-three-way";
const QUARRY: &str = "quarry-four-way";

/// Leg B of larkspur with a tape beside its wires.
const TAPE_WITH_WIRES: [(&str, &str); 2] = [
    (
        "shield = { kind = \"concentric-wires\", metal = \"copper\", fault_greatest = \"200 degC\", count = 11, diameter = \"64.1 mil\" }",
        "shield = { kind = \"tape-with-wires\", metal = \"copper\", fault_greatest = \"200 degC\", count = 11, diameter = \"64.1 mil\", width = \"1 1/2 in\", thickness = \"5 mil\", overlap_percent = 25 }",
    ),
    ("demo-bond-wires", "demo-bond-tape-wires"),
];

/// Order of an example with passages exchanged.
#[track_caller]
fn order(example: &str, edits: &[(&str, &str)]) -> Order {
    let case = named(example);
    let job = edits.iter().fold(case.job.to_owned(), |text, (from, to)| {
        assert!(text.contains(from), "{example} has no {from:?}");
        text.replace(from, to)
    });
    accepted(read(&job, &case.catalogues()), example)
}

#[track_caller]
fn leg<'o>(order: &'o Order, id: &str) -> &'o Leg {
    order
        .job
        .legs
        .iter()
        .find(|leg| leg.id == id)
        .expect("the example has this leg")
}

#[track_caller]
fn near(found: f64, expected: f64, share: f64) {
    assert!(
        (found / expected - 1.0).abs() < share,
        "{found} for {expected}"
    );
}
