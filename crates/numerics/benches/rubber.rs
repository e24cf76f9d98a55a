//! One slice of a body: fixed length and free ends, the lower pressure of the two, for each law and for two rings.
#![allow(missing_docs, reason = "a benchmark has no reader of docs")]

use criterion::{Criterion, criterion_group, criterion_main};
use jointwright_numerics::rubber::{Law, Ring, Tube};
use std::hint::black_box;

/// The largest usual stretch of the bore, and the wall of a body.
const STRETCH: f64 = 1.9;

fn slices(criterion: &mut Criterion) {
    let neo = Law::NeoHookean { modulus_pa: 0.4e6 };
    let mooney = Law::MooneyRivlin {
        c1_pa: 0.16e6,
        c2_pa: 0.04e6,
    };
    let gent = Law::Gent {
        modulus_pa: 0.4e6,
        limit: 30.0,
    };
    let ring = |outside_mm: f64, law: Law| Ring {
        outside_m: outside_mm * 1e-3,
        law,
    };
    for (name, rings) in [
        ("neo-hookean", vec![ring(30.0, neo)]),
        ("mooney-rivlin", vec![ring(30.0, mooney)]),
        ("gent", vec![ring(30.0, gent)]),
        (
            "gent, two rings",
            vec![ring(11.0, gent.times(2.0)), ring(30.0, gent)],
        ),
    ] {
        let tube = Tube::new(7.5e-3, rings).unwrap_or_else(|why| panic!("{name}: {why}"));
        // A refusal would be quick.
        let pressed = tube.pressed_least(7.5e-3 * STRETCH);
        assert!(pressed.is_ok(), "{name}: {pressed:?}");
        criterion.bench_function(&format!("slice, {name}"), |bencher| {
            bencher.iter(|| tube.pressed_least(black_box(7.5e-3 * STRETCH)));
        });
    }
}

criterion_group!(benches, slices);
criterion_main!(benches);
