//! A steady joint by finite elements: to 0.1 K, to 0.01 K as `solve` requires, and after a step of current.
#![allow(missing_docs, reason = "a benchmark has no reader of docs")]

use criterion::{Criterion, criterion_group, criterion_main};
use jointwright_numerics::case::{HeatCase, Question, read_question};
use jointwright_numerics::heat::{HeatOptions, solve};
use std::hint::black_box;

const STEADY: &str = include_str!("../../../tests/published/heat-sections/B-steady-250.case.json");
const STEP: &str = include_str!("../../../tests/published/heat-sections/B-step-250.case.json");

fn case(text: &str) -> HeatCase {
    match read_question(text) {
        Ok(Question::Heat(case)) => *case,
        other => panic!("{other:?}"),
    }
}

fn joints(criterion: &mut Criterion) {
    for (name, text, tolerance_k) in [
        ("steady joint to 0.1 K", STEADY, 0.1),
        ("steady joint to 0.01 K", STEADY, 0.01),
        ("joint after a step to 0.1 K", STEP, 0.1),
    ] {
        let case = case(text);
        let options = HeatOptions {
            tolerance_k,
            loss_tolerance_ratio: 1e-2,
            ..HeatOptions::default()
        };
        let mut group = criterion.benchmark_group("heat");
        group.sample_size(10);
        group.bench_function(name, |bencher| {
            bencher.iter(|| {
                let solved = solve(black_box(&case.section), &case.asks, &options);
                solved.unwrap_or_else(|why| panic!("{why}"))
            });
        });
        group.finish();
    }
}

criterion_group!(benches, joints);
criterion_main!(benches);
