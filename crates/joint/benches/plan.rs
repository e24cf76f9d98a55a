//! Times of a plan: reading, judging and planning the four-way example from its text, and the cutback of one leg alone.
//!
//! The aim is 10 ms for a four-way job; what is measured is the whole way from text to document, without files.

use criterion::{Criterion, criterion_group, criterion_main};
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::cutback::cutback;
use jointwright_joint::fit::Chosen;
use jointwright_joint::form::Source;
use jointwright_joint::job::{Order, read_order};
use jointwright_joint::judge::judge_unsolved as judge;
use jointwright_wording::plan;
use std::hint::black_box;

const FOUR_WAY: &str = include_str!("../../../examples/quarry-four-way/job.toml");

fn order(text: &str) -> Order {
    let job = Source::new("job.toml", text.to_owned());
    let catalogue = Source::new(DEMONSTRATION, DEMONSTRATION_TEXT.to_owned());
    read_order(&job, &[catalogue]).expect("the example reads")
}

fn four_way_from_text(c: &mut Criterion) {
    c.bench_function("four_way_from_text", |b| {
        b.iter(|| {
            let order = order(black_box(FOUR_WAY));
            let judged = judge(&order).expect("the example's rows agree");
            plan(&judged)
        });
    });
}

fn four_way_reading_alone(c: &mut Criterion) {
    c.bench_function("four_way_reading_alone", |b| {
        b.iter(|| order(black_box(FOUR_WAY)));
    });
}

fn cutback_of_one_leg(c: &mut Criterion) {
    let order = order(FOUR_WAY);
    let leg = &order.job.legs[1];
    let chosen = Chosen::from_names(&order.catalogue, &leg.parts, leg.cable.conductor);
    c.bench_function("cutback_of_one_leg", |b| {
        b.iter(|| cutback(black_box(&order.job), leg, &chosen));
    });
}

criterion_group!(
    benches,
    four_way_from_text,
    four_way_reading_alone,
    cutback_of_one_leg
);
criterion_main!(benches);
