//! The search for the worst over the windows, against a grid over all of them.
#![allow(
    clippy::disallowed_methods,
    reason = "the environment says whether the run is a long one"
)]

use super::{Edit, order_of};
use crate::cases::{accepted, named, read};
use jointwright_joint::job::Order;
use jointwright_joint::judge::judge;
use jointwright_joint::section::Quantity;
use jointwright_joint::study::{Outcome, Point, SolvedStudy, Solver, Study, Worst, inception};
use jointwright_numerics::gas::Curve;
use std::collections::BTreeMap;

/// Places on each range, ends included: of the short run and of the long one.
const N_SHORT: [usize; 3] = [2, 3, 3];
const N_LONG: [usize; 3] = [5, 7, 9];
/// Greatest share by which a state of the grid may be worse than the report, beside the errors of both: the search is good to 1 %.
const CLOSE: f64 = 1e-2;

fn places(range: (f64, f64), n: usize) -> Vec<f64> {
    let step = (range.1 - range.0) / (n - 1) as f64;
    let mut places: Vec<f64> = (0..n).map(|index| range.0 + step * index as f64).collect();
    places.dedup_by(|a, b| (*a - *b).abs() < 1e-9);
    places
}

/// Least inception voltage of an outcome, V; `None` without a gap in the field.
fn onset(outcome: &Outcome) -> Option<f64> {
    inception(&outcome.gap, Curve::LowerOfBoth).map(|volts| volts.v())
}

fn reported(worst: &Worst, is_empty: bool) -> Option<f64> {
    let gap = if is_empty {
        &worst.gap_empty
    } else {
        &worst.gap_filled
    };
    let (gap, _) = gap.as_ref()?;
    inception(gap, Curve::LowerOfBoth).map(|volts| volts.v())
}

/// The worst of a grid, each field with its error, and the least inception filled and empty.
#[derive(Default)]
struct Grid {
    fields: BTreeMap<Quantity, (f64, f64)>,
    onsets: [Option<f64>; 2],
}

fn grid(done: &SolvedStudy, n: [usize; 3]) -> Grid {
    let mut solver = Solver::new(&done.input, done.input.service);
    let spread = &done.input.here;
    let mut grid = Grid::default();
    // Without filler there is nothing to lose.
    let is_filled = done.input.profile.step.filler.is_some();
    let states: &[bool] = if is_filled { &[false, true] } else { &[true] };
    for &is_empty in states {
        for radius_m in places(spread.radius, n[0]) {
            for screen_edge_m in places(spread.screen_edge_m, n[1]) {
                for edge_radius_m in places(spread.edge_radius_m, n[2]) {
                    let point = Point {
                        radius_m,
                        screen_edge_m,
                        edge_radius_m,
                        is_empty,
                    };
                    let outcome = solver.outcome(&point).expect("it is drawn and solved");
                    grid.take(&outcome, is_empty);
                }
            }
        }
    }
    grid
}

impl Grid {
    fn take(&mut self, outcome: &Outcome, is_empty: bool) {
        for (quantity, value) in &outcome.values {
            let worst = self.fields.entry(*quantity).or_insert((0.0, 0.0));
            if value.per_volt_per_m > worst.0 {
                *worst = (value.per_volt_per_m, value.error_per_m);
            }
        }
        if let Some(volts) = onset(outcome) {
            let least = &mut self.onsets[usize::from(is_empty)];
            *least = Some(least.map_or(volts, |least| least.min(volts)));
        }
    }
}

fn n() -> [usize; 3] {
    let is_long = std::env::var("JOINTWRIGHT_LONG").is_ok_and(|value| value == "1");
    if is_long { N_LONG } else { N_SHORT }
}

#[track_caller]
fn study_of(order: &Order, leg: usize) -> SolvedStudy {
    let judged = accepted(judge(order), "the joint");
    match judged.inputs.legs[leg].study.as_ref() {
        Study::Done(done) => (**done).clone(),
        other => panic!("{other:?}"),
    }
}

/// Checks that no state on the grid is worse than the report; a report from half of the windows would not pass.
#[track_caller]
fn check(done: &SolvedStudy) {
    let grid = grid(done, n());
    let mut n_compared = 0;
    for (quantity, (field, error)) in &grid.fields {
        if *field <= 0.0 {
            continue;
        }
        let seen = &done.here.seen[quantity].value;
        assert!(
            *field <= seen.per_volt_per_m * (1.0 + CLOSE) + seen.error_per_m + error,
            "{quantity:?}: {field} ± {error} per m on the grid, {seen:?} reported"
        );
        n_compared += 1;
    }
    assert!(n_compared >= 4, "{n_compared} fields");
    for (index, is_empty) in [(0, false), (1, true)] {
        let Some(least) = grid.onsets[index] else {
            continue;
        };
        let told = reported(&done.here, is_empty).expect("what the grid has is reported");
        assert!(
            told <= least * (1.0 + CLOSE),
            "empty {is_empty}: {least} V on the grid, {told} V reported"
        );
    }
    assert!(
        grid.onsets.iter().any(Option::is_some),
        "no gap in the field"
    );
}

#[test]
fn the_worst_of_a_leg_of_the_example_is_the_worst_of_a_grid() {
    let case = named("larkspur-three-way");
    let order = accepted(read(case.job, &case.catalogues()), "the three-way example");
    check(&study_of(&order, 1));
}

#[test]
fn the_worst_of_the_reference_joint_is_the_worst_of_a_grid() {
    let edge = "edge_radius_least = \"0.25 mm\", edge_radius_greatest = \"0.25 mm\"";
    let wide = "edge_radius_least = \"0.02 mm\", edge_radius_greatest = \"0.4 mm\"";
    let order = order_of(&Edit {
        edge_mm: 128.0,
        bridging_mm: 2.0,
        filler: Some((3.0, false)),
        spread_mm: 0.3,
        shape: vec![(edge, wide.to_owned())],
        ..Edit::default()
    });
    let done = study_of(&order, 0);
    check(&done);
    // A twin: a report from the roundest edge alone is refuted by the same grid.
    let told = reported(&done.here, true).expect("a gap");
    let roundest = Point {
        edge_radius_m: done.input.here.edge_radius_m.1,
        ..done.here.gap_empty.as_ref().expect("a gap").1
    };
    let outcome = Solver::new(&done.input, done.input.service)
        .outcome(&roundest)
        .expect("it is drawn and solved");
    assert!(onset(&outcome).expect("a gap") > 1.03 * told);
}
