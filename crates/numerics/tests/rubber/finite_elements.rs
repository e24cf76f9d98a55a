//! Pressure and length of random tubes compared with the finite elements of `oracle`.
//!
//! Tolerance 1e-4 of the pressure, which the program promises for a tube.
//! 48 random tubes kept to 1e-5, and the remaining difference shrinks with the elements.

use super::oracle;
use jointwright_numerics::rubber::{Ends, Law, Ring, Tube};
use proptest::prelude::*;

const CLOSE: f64 = 1e-4;

/// A law on both sides of the comparison.
fn both(law: oracle::Law) -> Law {
    match law {
        oracle::Law::MooneyRivlin { c1_mpa, c2_mpa } => Law::MooneyRivlin {
            c1_pa: c1_mpa * 1e6,
            c2_pa: c2_mpa * 1e6,
        },
        oracle::Law::Gent { mu_mpa, limit } => Law::Gent {
            modulus_pa: mu_mpa * 1e6,
            limit,
        },
    }
}

/// Error in pressure, as a share, and in axial stretch.
fn off(
    rings: &[oracle::Ring],
    ours: &[oracle::Ring],
    bore_mm: f64,
    stretch: f64,
    ends: Ends,
) -> (f64, f64) {
    let held = match ends {
        Ends::FixedLength => oracle::Ends::FixedLength,
        Ends::Free => oracle::Ends::Free,
    };
    let by_elements = oracle::contact_pressure(rings, bore_mm, stretch, held);
    let rings = ours.iter().map(|ring| Ring {
        outside_m: ring.outer_mm * 1e-3,
        law: both(ring.law),
    });
    let tube = Tube::new(bore_mm * 1e-3, rings.collect()).expect("a tube");
    let found = tube
        .pressed(bore_mm * 1e-3 * stretch, ends)
        .expect("it is pressed");
    (
        (found.pressure_pa * 1e-6 / by_elements.pressure_mpa - 1.0).abs(),
        (found.axial_stretch - by_elements.axial_stretch).abs(),
    )
}

fn law() -> impl Strategy<Value = oracle::Law> {
    prop_oneof![
        (0.05..0.5_f64, 0.0..0.2_f64)
            .prop_map(|(c1_mpa, c2_mpa)| oracle::Law::MooneyRivlin { c1_mpa, c2_mpa }),
        (0.1..1.0_f64, 12.0..60.0_f64)
            .prop_map(|(mu_mpa, limit)| oracle::Law::Gent { mu_mpa, limit }),
    ]
}

fn ends() -> impl Strategy<Value = Ends> {
    prop_oneof![Just(Ends::FixedLength), Just(Ends::Free)]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn one_ring(law in law(), bore_mm in 5.0..15.0_f64, wall in 1.2..3.0_f64, stretch in 1.02..2.2_f64, ends in ends()) {
        let rings = [oracle::Ring { outer_mm: bore_mm * wall, law }];
        let (pressure, axial) = off(&rings, &rings, bore_mm, stretch, ends);
        prop_assert!(pressure < CLOSE && axial < CLOSE, "{pressure:e} {axial:e}");
        // A stiffness larger by a hundredth is detected.
        let stiffer = match law {
            oracle::Law::MooneyRivlin { c1_mpa, c2_mpa } => oracle::Law::MooneyRivlin { c1_mpa: 1.01 * c1_mpa, c2_mpa: 1.01 * c2_mpa },
            oracle::Law::Gent { mu_mpa, limit } => oracle::Law::Gent { mu_mpa: 1.01 * mu_mpa, limit },
        };
        let other = [oracle::Ring { law: stiffer, ..rings[0] }];
        prop_assert!(off(&rings, &other, bore_mm, stretch, ends).0 > CLOSE);
    }

    #[test]
    fn two_rings(inner in law(), outer in law(), bore_mm in 5.0..15.0_f64, first in 1.1..1.6_f64, wall in 1.2..2.0_f64, stretch in 1.05..2.0_f64, ends in ends()) {
        let middle = bore_mm * first;
        let rings = [
            oracle::Ring { outer_mm: middle, law: inner },
            oracle::Ring { outer_mm: middle * wall, law: outer },
        ];
        let (pressure, axial) = off(&rings, &rings, bore_mm, stretch, ends);
        prop_assert!(pressure < CLOSE && axial < CLOSE, "{pressure:e} {axial:e}");
    }
}

#[test]
fn rings_in_the_other_order_are_told_apart() {
    let soft = oracle::Law::MooneyRivlin {
        c1_mpa: 0.1,
        c2_mpa: 0.02,
    };
    let stiff = oracle::Law::Gent {
        mu_mpa: 0.8,
        limit: 20.0,
    };
    let ring = |outer_mm, law| oracle::Ring { outer_mm, law };
    let rings = [ring(11.0, soft), ring(20.0, stiff)];
    let swapped = [ring(11.0, stiff), ring(20.0, soft)];
    assert!(off(&rings, &rings, 8.0, 1.5, Ends::Free).0 < CLOSE);
    assert!(off(&rings, &swapped, 8.0, 1.5, Ends::Free).0 > 100.0 * CLOSE);
    assert!(off(&rings, &rings, 8.0, 1.5, Ends::FixedLength).0 < CLOSE);
}

/// Finer elements come nearer, so the remaining difference is theirs.
#[test]
fn finer_elements_come_nearer() {
    let law = oracle::Law::Gent {
        mu_mpa: 0.5,
        limit: 15.0,
    };
    let rings = [oracle::Ring {
        outer_mm: 20.0,
        law,
    }];
    let ring = Ring {
        outside_m: 20e-3,
        law: both(law),
    };
    let tube = Tube::new(8e-3, vec![ring]).expect("a tube");
    let exact = tube.pressed(8e-3 * 1.8, Ends::Free).expect("it is pressed");
    let off = |n_across: usize| {
        let found = oracle::Mesh::new(&rings, 8.0, oracle::Ends::Free, n_across).pressed(1.8);
        (found.pressure_mpa * 1e6 / exact.pressure_pa - 1.0).abs()
    };
    let (coarse, middle, fine) = (off(2), off(4), off(8));
    assert!(middle < coarse / 4.0, "{coarse:e} {middle:e}");
    assert!(fine < middle / 4.0, "{middle:e} {fine:e}");
}
