//! Times of fields: one state of a leg on the mesh of the last state, one state from a new mesh, one leg's whole study, the three-way example.
//!
//! The aims: one end judged again in 5 ms beside the checks; the three-way example with its fields in 0.5 s without its PDF.

use criterion::{Criterion, criterion_group, criterion_main};
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::form::Source;
use jointwright_joint::job::{Order, read_order};
use jointwright_joint::judge::judge;
use jointwright_joint::study::{Point, Solver, Study};
use jointwright_wording::plan;
use std::hint::black_box;

const THREE_WAY: &str = include_str!("../../../examples/larkspur-three-way/job.toml");

fn order(text: &str) -> Order {
    let job = Source::new("job.toml", text.to_owned());
    let catalogue = Source::new(DEMONSTRATION, DEMONSTRATION_TEXT.to_owned());
    read_order(&job, &[catalogue]).expect("the example reads")
}

fn three_way_from_text(c: &mut Criterion) {
    c.bench_function("three_way_with_fields_from_text", |b| {
        b.iter(|| {
            let order = order(black_box(THREE_WAY));
            plan(&judge(&order).expect("the example's rows agree"))
        });
    });
}

fn one_end(c: &mut Criterion) {
    let order = order(THREE_WAY);
    let judged = judge(&order).expect("the example's rows agree");
    for leg in &judged.inputs.legs {
        let Study::Done(done) = leg.study.as_ref() else {
            continue;
        };
        let input = &done.input;
        let state = |share: f64| Point {
            radius_m: input.here.radius.0 + share * (input.here.radius.1 - input.here.radius.0),
            screen_edge_m: input.here.screen_edge_m.0,
            edge_radius_m: input.here.edge_radius_m.0,
            is_empty: false,
        };
        let name = &leg.leg.id;
        c.bench_function(&format!("end_of_leg_{name}_from_nothing"), |b| {
            b.iter(|| {
                Solver::new(input, input.service)
                    .outcome(&state(0.5))
                    .expect("it is drawn")
            });
        });
        c.bench_function(&format!("end_of_leg_{name}_judged_again"), |b| {
            let mut solver = Solver::new(input, input.service);
            solver.outcome(&state(0.5)).expect("it is drawn");
            let mut n = 0_u32;
            b.iter(|| {
                n = (n + 1) % 7;
                solver
                    .outcome(&state(f64::from(n) / 7.0))
                    .expect("it is drawn")
            });
        });
    }
}

criterion_group!(benches, three_way_from_text, one_end);
criterion_main!(benches);
