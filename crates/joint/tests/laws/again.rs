//! Again: a model of a changed order keeps a solved result only if none of its inputs changed, so it gives the same rulings as a fresh model.

use super::tries;
use crate::cases::{accepted, named};
use jointwright_joint::cable::Layer;
use jointwright_joint::end::EndId;
use jointwright_joint::job::{Order, Reading};
use jointwright_joint::judge::{judge, judge_model};
use jointwright_joint::limit::Ruling;
use jointwright_joint::model::{Depth, Model};
use jointwright_units::{Interval, Length};
use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use std::ops::ControlFlow;
use std::sync::Arc;

const CASE: &str = "dock-straight-pressed";

#[allow(
    clippy::disallowed_methods,
    reason = "tests are no part of the core; --long asks for more cases"
)]
fn n_changes() -> u32 {
    if std::env::var_os("JOINTWRIGHT_LONG").is_some() {
        1000
    } else {
        100
    }
}

fn solved(order: Order) -> Model {
    let mut model = accepted(Model::new(order), CASE);
    assert!(model.solve(Depth::Whole, &mut |_| ControlFlow::Continue(())));
    model
}

/// One changed value, error or temperature of one reading; sometimes the reading is gone.
fn changed(mut order: Order, which: prop::sample::Index, what: u8, by_nm: i64) -> Order {
    let ends: Vec<EndId> = order
        .job
        .readings
        .iter()
        .map(|(end, _)| end.clone())
        .collect();
    let end = which.get(&ends);
    let readings = order.job.readings.of_mut(end);
    let at = which.index(readings.len());
    let reading = &mut readings[at];
    match what {
        0 | 1 => {
            let value = which.index(reading.values.len());
            reading.values[value] += Length::from_nm(by_nm);
        }
        2 => reading.error += Length::from_nm(by_nm.abs()),
        3 => reading.degc = reading.degc.map(|degc| degc + by_nm as f64 * 1e-5),
        _ => drop(readings.remove(at)),
    }
    order
}

fn fresh(order: &Order) -> Vec<Ruling> {
    accepted(judge(order), CASE).rulings
}

#[test]
fn one_end_judged_again_says_what_a_fresh_judgement_says() {
    let before = solved(named(CASE).order());
    let change = (any::<prop::sample::Index>(), 0_u8..5, -400_000_i64..400_000);
    let ran = TestRunner::new(tries(n_changes())).run(&change, |(which, what, by_nm)| {
        let order = changed(named(CASE).order(), which, what, by_nm);
        let mut again = accepted(before.again(order.clone()), CASE);
        again.solve(Depth::Whole, &mut |_| ControlFlow::Continue(()));
        prop_assert_eq!(accepted(judge_model(&again), CASE).rulings, fresh(&order));
        Ok(())
    });
    if let Err(broken) = ran {
        panic!("{broken}");
    }
}

/// The order with the first reading over a layer larger by so much.
fn larger(over: Layer, by_nm: i64) -> Order {
    let mut order = named(CASE).order();
    let is_over = |reading: &&mut Reading| reading.over == over;
    let ends: Vec<EndId> = order.job.ends().map(|end| end.id()).collect();
    let is_read = |end: &&EndId| order.job.readings.of(end).iter().any(|r| r.over == over);
    let first = ends.iter().find(is_read).expect("it was read");
    let reading = order.job.readings.of_mut(first).iter_mut().find(is_over);
    for value in &mut reading.expect("it was read").values {
        *value += Length::from_nm(by_nm);
    }
    order
}

#[test]
fn what_was_solved_of_one_insulation_is_not_what_is_ruled_on_another() {
    // The twin of the law: the rulings of a model that kept everything.
    let before = solved(named(CASE).order());
    let kept = accepted(judge_model(&before), CASE).rulings;
    assert_ne!(kept, fresh(&larger(Layer::Insulation, 200_000)));
}

#[test]
fn a_jacket_read_again_leaves_the_fields_as_they_were_solved() {
    let before = solved(named(CASE).order());
    let again = accepted(before.again(larger(Layer::Jacket, 100_000)), CASE);
    let other = accepted(before.again(larger(Layer::Insulation, 100_000)), CASE);
    let study = |model: &Model| model.inputs().legs[0].study.clone();
    assert!(Arc::ptr_eq(&study(&before), &study(&again)));
    assert!(!Arc::ptr_eq(&study(&before), &study(&other)));
}

#[test]
fn a_solve_that_is_stopped_rules_on_no_field_and_can_go_on() {
    let mut model = accepted(Model::new(named(CASE).order()), CASE);
    let mut seen = Vec::new();
    let is_whole = model.solve(Depth::Whole, &mut |progress| {
        seen.push(progress.n_done);
        if progress.n_done == 1 {
            ControlFlow::Break(())
        } else {
            ControlFlow::Continue(())
        }
    });
    assert!(!is_whole && !model.is_solved(Depth::Whole));
    assert_eq!(seen, [0, 1]);
    let stopped = accepted(judge_model(&model), CASE).rulings;
    assert!(model.solve(Depth::Whole, &mut |_| ControlFlow::Continue(())));
    let whole = accepted(judge_model(&model), CASE).rulings;
    let of_heat = |rulings: &[Ruling]| rulings.iter().any(|r| r.check == "joint_load_heat");
    assert!(!of_heat(&stopped) && of_heat(&whole));
    assert_eq!(whole, fresh(model.order()));
}

#[test]
fn what_no_solve_reads_leaves_everything_as_it_was_solved() {
    let before = solved(named(CASE).order());
    let mut order = named(CASE).order();
    order.job.title.push_str(", second thought");
    let again = accepted(before.again(order), CASE);
    assert!(again.is_solved(Depth::Whole));
    assert!(Arc::ptr_eq(&before.inputs().warm, &again.inputs().warm));
    let mut order = named(CASE).order();
    order.job.duty.load_a = order.job.duty.load_a.map(|load_a| 0.9 * load_a);
    let again = accepted(before.again(order), CASE);
    assert!(!Arc::ptr_eq(&before.inputs().warm, &again.inputs().warm));
}

#[test]
fn a_plug_is_kept_for_a_body_whose_row_is_equal_and_for_no_other() {
    const THREE: &str = "larkspur-three-way";
    let unsolved = |order: Order| accepted(Model::new(order), THREE);
    let mut before = unsolved(named(THREE).order());
    before.solve(Depth::Whole, &mut |_| ControlFlow::Continue(()));
    let plug = |model: &Model| model.inputs().legs[0].plug.clone();
    let mut order = named(THREE).order();
    order.job.title.push_str(", second thought");
    let again = accepted(before.again(order), THREE);
    assert!(Arc::ptr_eq(&plug(&before), &plug(&again)));
    let mut order = named(THREE).order();
    let film = Interval::new(Length::from_nm(20_000), Length::from_nm(40_000));
    for taper in order
        .catalogue
        .bodies
        .iter_mut()
        .filter_map(|body| body.taper.as_mut())
    {
        taper.film_thickness = film.expect("a range");
    }
    let other = accepted(before.again(order), THREE);
    assert!(!Arc::ptr_eq(&plug(&before), &plug(&other)));
}

#[test]
fn an_insulation_read_again_changes_the_pressures_of_its_own_end_alone() {
    let before = solved(named(CASE).order());
    let again = accepted(before.again(larger(Layer::Insulation, 100_000)), CASE);
    let mut again = again;
    again.solve(Depth::Whole, &mut |_| ControlFlow::Continue(()));
    let pressures = |model: &Model| -> Vec<_> {
        let inputs = model.inputs();
        let ends = inputs.legs.iter().flat_map(|leg| &leg.ends);
        ends.map(|end| end.pressure.clone()).collect()
    };
    let (old, new) = (pressures(&before), pressures(&again));
    let n_kept = old
        .iter()
        .zip(&new)
        .filter(|(old, new)| Arc::ptr_eq(old, new))
        .count();
    assert_eq!((n_kept, old.len()), (old.len() - 1, new.len()));
}
