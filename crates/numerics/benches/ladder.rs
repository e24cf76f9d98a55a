//! One joint by finite elements on its slices, by the full ladder, and by the reduced one over a year of hours.
#![allow(missing_docs, reason = "a benchmark has no reader of docs")]

use criterion::{Criterion, criterion_group, criterion_main};
use jointwright_numerics::heat::{Ask, HeatOptions, Stuff, What, When, solve_on};
use jointwright_numerics::ladder::{Arm, Hub, Ladder, Loss, Reduced, Ring, Slice, Star, elements};
use jointwright_numerics::outline::Point;
use std::hint::black_box;

const AMPERES: f64 = 250.0;

fn ring(outside_m: f64, conductivity_w_per_mk: f64, capacity: f64, ohm: f64) -> Ring {
    Ring {
        outside_m,
        stuff: Stuff {
            conductivity_w_per_mk,
            capacity_j_per_m3k: capacity,
        },
        loss: (ohm > 0.0).then_some(Loss {
            at20_ohm_per_m: ohm,
            alpha_per_k: 0.00393,
            constant_w_per_m: 0.0,
        }),
        is_watched: conductivity_w_per_mk < 1.0,
    }
}

fn slice(length_m: f64, rings: Vec<Ring>) -> Slice {
    Slice {
        length_m,
        rings,
        film_w_per_m2k: 8.0,
        ambient_degc: 40.0,
    }
}

/// The published section of `tests/published/heat-sections`, as slices.
fn arm() -> Arm {
    let ohm = 1.7241e-4;
    let conductor = ring(0.00565, 385.0, 3.45e6, ohm);
    let insulation = ring(0.0111, 0.286, 2.16e6, 0.0);
    let jacket = ring(0.0151, 0.2857, 2.4e6, 0.0);
    let over = |mut rings: Vec<Ring>| {
        rings.push(ring(0.030, 0.27, 1.9e6, 0.0));
        rings.push(ring(0.033, 0.2857, 2.4e6, 0.0));
        rings
    };
    let slices = vec![
        slice(0.05, over(vec![ring(0.010, 385.0, 3.45e6, 1.5 * ohm)])),
        slice(0.10, over(vec![conductor, insulation])),
        slice(0.05, over(vec![conductor, insulation, jacket])),
        slice(2.80, vec![conductor, insulation, jacket]),
    ];
    Arm { slices }
}

fn joints(criterion: &mut Criterion) {
    let star = Star {
        arms: vec![arm()],
        hub: Hub::default(),
    };
    let mut group = criterion.benchmark_group("ladder");
    group.sample_size(20);
    group.bench_function("finite elements, steady to 0.1 K", |bencher| {
        let ask = Ask {
            what: What::TemperatureAt(Point::new(0.0, 0.0)),
            time_s: 0.0,
        };
        let options = HeatOptions {
            tolerance_k: 0.1,
            ..HeatOptions::default()
        };
        bencher.iter(|| {
            let (section, mesh) =
                elements(black_box(&star.arms[0]), AMPERES, When::Steady, 1).unwrap();
            solve_on(&section, mesh, &[ask], &options).unwrap()
        });
    });
    group.bench_function("full, cut and solved", |bencher| {
        bencher.iter(|| {
            let mut ladder = Ladder::new(black_box(star.clone())).unwrap();
            ladder.steady(&[AMPERES]).unwrap()
        });
    });
    let mut ladder = Ladder::new(star.clone()).unwrap();
    group.bench_function("full, solved", |bencher| {
        bencher.iter(|| ladder.steady(black_box(&[AMPERES])).unwrap());
    });
    group.bench_function("reduced, made and compared", |bencher| {
        bencher.iter(|| Reduced::new(&mut ladder, black_box(&[AMPERES])).unwrap());
    });
    let reduced = Reduced::new(&mut ladder, &[AMPERES]).unwrap();
    let loads: Vec<f64> = (0..8760)
        .map(|hour| 0.6 + 0.4 * (f64::from(hour) * 0.2618).sin())
        .collect();
    group.bench_function("reduced, a year of hours", |bencher| {
        bencher.iter(|| {
            let start = reduced.at_rest(0.6).unwrap();
            let mut hottest = f64::NEG_INFINITY;
            reduced.run(&start, 3600.0, black_box(&loads), |hour| {
                hottest = hottest.max(hour.middle_degc);
            });
            hottest
        });
    });
    group.finish();
}

criterion_group!(benches, joints);
criterion_main!(benches);
