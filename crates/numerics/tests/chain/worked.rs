//! The example that `docs/theory/chain.md` works by hand, number by number.
//!
//! ```text
//!        A   E1              S1 S2              E2   B
//!        |gap|               |stop|             |gap|
//!            |<----- L/2 ----->M<----- L/2 ---->|
//! ```

use super::{link, shared, solved};
use jointwright_numerics::chain::{Bounds, Link, Solution, SpreadOptions};

const COUNTS_PER_MM: f64 = 2.0e6;

const A: usize = 0;
const E1: usize = 1;
const S1: usize = 2;
const M: usize = 3;
const S2: usize = 4;
const E2: usize = 5;
const B: usize = 6;

/// Whole counts of half a nanometre; the numbers here have at most two decimals of a millimetre.
fn counts(mm: f64) -> i64 {
    (mm * COUNTS_PER_MM).round() as i64
}

fn chain(total_mm: f64, stop_mm: f64, gap_mm: f64, gap_plus_mm: f64) -> Vec<Link> {
    let gap = |from, to| link(from, to, counts(gap_mm), 0, counts(gap_plus_mm));
    let half = |from, to, whole_mm: f64| link(from, to, counts(whole_mm) / 2, 0, 0);
    vec![
        gap(A, E1),
        half(E1, M, total_mm),
        half(S1, M, stop_mm),
        half(M, S2, stop_mm),
        half(M, E2, total_mm),
        gap(E2, B),
    ]
}

fn by_hand() -> Solution {
    solved(7, &chain(101.6, 1.6, 3.0, 2.0))
}

#[track_caller]
fn check(
    solution: &Solution,
    from: usize,
    to: usize,
    nominal_mm: f64,
    least_mm: f64,
    greatest_mm: f64,
) {
    assert_eq!(solution.nominal(from, to), counts(nominal_mm));
    let expected = Bounds {
        least: counts(least_mm),
        greatest: counts(greatest_mm),
    };
    assert_eq!(solution.bounds(from, to), expected);
}

#[test]
fn one_end_stands_at_53_mm_with_a_window_of_53_to_55() {
    check(&by_hand(), A, S1, 53.0, 53.0, 55.0);
    check(&by_hand(), S2, B, 53.0, 53.0, 55.0);
}

#[test]
fn both_ends_stand_107_6_mm_apart_with_a_window_of_107_6_to_111_6() {
    check(&by_hand(), A, B, 107.6, 107.6, 111.6);
}

#[test]
fn two_millimetres_more_of_length_move_each_end_by_one() {
    let longer = solved(7, &chain(103.6, 1.6, 3.0, 2.0));
    check(&longer, A, S1, 54.0, 54.0, 56.0);
    check(&longer, S2, B, 54.0, 54.0, 56.0);
}

#[test]
fn one_nanometre_more_of_length_moves_each_end_by_one_count() {
    let mut links = chain(101.6, 1.6, 3.0, 2.0);
    for half in [1, 4] {
        links[half].nominal = (counts(101.6) + 2) / 2;
    }
    assert_eq!(solved(7, &links).nominal(A, S1), counts(53.0) + 1);
}

/// Twin: dropping the stop from the sum gives another number.
#[test]
fn without_the_stop_the_end_stands_elsewhere() {
    assert_ne!(
        solved(7, &chain(101.6, 0.0, 3.0, 2.0)).nominal(A, S1),
        counts(53.0)
    );
}

/// The quantile at 2.5 % of both gaps together, in mm, and the share of the first gap.
fn low_quantile(links: &[Link]) -> (f64, Vec<(usize, f64)>) {
    let options = SpreadOptions {
        seed: 3,
        n_samples: 1 << 16,
    };
    let spread = solved(7, links)
        .spread(&[(A, B)], options)
        .unwrap()
        .remove(0);
    (spread.quantiles[1] as f64 / COUNTS_PER_MM, spread.share)
}

#[test]
fn independent_gaps_spread_as_a_triangle() {
    let (quantile_mm, share) = low_quantile(&chain(101.6, 1.6, 3.0, 2.0));
    // By hand 108.047; 4.5 standard deviations of the sample are 0.025 mm (see docs/theory/chain.md).
    assert!((quantile_mm - 108.047).abs() < 0.025, "{quantile_mm}");
    assert_eq!(share[..2], [(0, 0.5), (5, 0.5)]);
}

#[test]
fn gaps_with_one_source_spread_evenly() {
    let mut links = chain(101.6, 1.6, 3.0, 2.0);
    for gap in [0, 5] {
        links[gap] = shared(links[gap], 0, 1_000_000);
    }
    let (quantile_mm, share) = low_quantile(&links);
    // By hand 107.700; 4.5 standard deviations of the sample are 0.011 mm. The triangle's 108.047 is far outside.
    assert!((quantile_mm - 107.700).abs() < 0.011, "{quantile_mm}");
    assert_eq!(share[..2], [(0, 0.5), (5, 0.5)]);
}
