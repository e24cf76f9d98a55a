//! The samples compared with bounds, closed forms and an independent sampler.

use super::{link, scenes, shared, solved};
use jointwright_numerics::chain::{
    ChainError, Link, QUANTILES_PERMILLE, SAMPLES_MOST, Spread, SpreadOptions, TRIES_PER_SAMPLE,
};
use proptest::prelude::*;

/// Permitted error of a sampled number in standard deviations: exceeded by chance once in 150 000 times, and the seeds are
/// fixed, so a test that passes once passes always.
const SIGMAS: f64 = 4.5;

const MANY: u32 = 1 << 16;

fn spread_of(
    n_planes: usize,
    links: &[Link],
    pair: (usize, usize),
    seed: u64,
    n_samples: u32,
) -> Spread {
    solved(n_planes, links)
        .spread(&[pair], SpreadOptions { seed, n_samples })
        .unwrap()
        .remove(0)
}

proptest! {
    #[test]
    fn all_samples_lie_inside_the_bounds(scene in scenes(6, 2, (5, 60)), seed in any::<u64>()) {
        let (solution, n) = (scene.solve(), scene.n_planes());
        let pairs: Vec<_> = (0..n * n).map(|at| (at / n, at % n)).collect();
        let spreads = match solution.spread(&pairs, SpreadOptions { seed, n_samples: 100 }) {
            Ok(spreads) => spreads,
            // Narrow loops may reject nearly all; a tree never does.
            Err(error) => return { prop_assert!(scene.has_loop(), "{error}"); Ok(()) },
        };
        for (spread, &(a, b)) in spreads.iter().zip(&pairs) {
            let bounds = solution.bounds(a, b);
            let mut seen = vec![bounds.least, spread.least_seen];
            seen.extend(spread.quantiles);
            seen.extend([spread.greatest_seen, bounds.greatest]);
            prop_assert!(seen.is_sorted(), "{seen:?}");
            let total: f64 = spread.share.iter().map(|(_, share)| share).sum();
            let varies = bounds.least < bounds.greatest;
            // Rounding of at most ten terms that may cancel each other's common parts.
            prop_assert!((total - f64::from(u8::from(varies))).abs() < 1e-9 || a == b, "{total}");
        }
    }

    /// Twin: bounds of a chain whose windows are a third as wide do not hold all samples.
    #[test]
    fn samples_leave_bounds_that_are_too_narrow(scene in scenes(6, 0, (30, 60)), seed in any::<u64>()) {
        let mut narrow = scene.clone();
        narrow.links.iter_mut().for_each(|l| (l.minus, l.plus) = (l.minus / 3, l.plus / 3));
        let l = scene.links[0];
        let spread = spread_of(scene.n_planes(), &scene.links, (l.from, l.to), seed, 1000);
        let bounds = narrow.solve().bounds(l.from, l.to);
        prop_assert!(spread.least_seen < bounds.least && spread.greatest_seen > bounds.greatest);
    }
}

// ---- closed forms ---------------------------------------------------------------------------------------------

/// Quantile and density there of the sum of n even spreads over 0 to 1, for the low quantiles that the power law
/// F(x) = xⁿ / n!, 0 ≤ x ≤ 1 covers (Irwin and Hall).
fn irwin_hall_low(n: u32, p: f64) -> (f64, f64) {
    let factorial = f64::from((1..=n).product::<u32>());
    let x = (factorial * p).powf(1.0 / f64::from(n));
    assert!(x <= 1.0, "beyond the power law");
    (x, x.powi(n as i32 - 1) * f64::from(n) / factorial)
}

/// Whether the quantiles of n equal links agree with the closed form for links of `assumed` counts of width.
fn agrees_with_irwin_hall(n: usize, width: i64, assumed: f64) -> bool {
    let links: Vec<Link> = (0..n).map(|at| link(at, at + 1, 0, 0, width)).collect();
    let spread = spread_of(n + 1, &links, (0, n), 11, MANY);
    let median_density = [1.0, 1.0, 0.75][n - 1];
    QUANTILES_PERMILLE
        .iter()
        .zip(spread.quantiles)
        .all(|(&permille, found)| {
            let p = f64::from(permille) / 1000.0;
            let (x, density) = match permille {
                500 => (n as f64 / 2.0, median_density),
                0..500 => irwin_hall_low(n as u32, p),
                _ => {
                    let (x, density) = irwin_hall_low(n as u32, 1.0 - p);
                    (n as f64 - x, density)
                }
            };
            let sigma = (p * (1.0 - p) / f64::from(MANY)).sqrt() / density;
            (found as f64 / assumed - x).abs() < SIGMAS * sigma
        })
}

#[track_caller]
fn check_irwin_hall(n: usize) {
    let width = 4_000_000;
    assert!(
        agrees_with_irwin_hall(n, width, width as f64),
        "{n} even spreads"
    );
    assert!(
        !agrees_with_irwin_hall(n, width, 1.05 * width as f64),
        "a width 5 % off must be seen with {n}"
    );
}

#[test]
fn one_link_spreads_evenly() {
    check_irwin_hall(1);
}

#[test]
fn two_equal_links_spread_as_a_triangle() {
    check_irwin_hall(2);
}

#[test]
fn three_equal_links_spread_as_irwin_and_hall() {
    check_irwin_hall(3);
}

// ---- shared parts ---------------------------------------------------------------------------------------------

/// Quantiles of the sum of two links, and the sum of their quantiles.
fn added(fraction_ppm: u32, sources: [usize; 2]) -> ([i64; 5], [i64; 5]) {
    let links = [
        shared(link(0, 1, 100, 1_000_000, 0), sources[0], fraction_ppm),
        shared(link(1, 2, 700, 0, 3_000_000), sources[1], fraction_ppm),
    ];
    let options = SpreadOptions {
        seed: 5,
        n_samples: 4096,
    };
    let spreads = solved(3, &links)
        .spread(&[(0, 1), (1, 2), (0, 2)], options)
        .unwrap();
    let sum = std::array::from_fn(|at| spreads[0].quantiles[at] + spreads[1].quantiles[at]);
    (spreads[2].quantiles, sum)
}

#[test]
fn fully_correlated_links_add_linearly() {
    let (found, sum) = added(1_000_000, [4, 4]);
    assert_eq!(found, sum);
}

/// Twin: with two sources, or with a part that is not shared, the outer quantiles do not add.
#[test]
fn other_links_do_not_add_linearly() {
    for (found, sum) in [
        added(1_000_000, [4, 9]),
        added(900_000, [4, 4]),
        added(0, [4, 4]),
    ] {
        assert!(found[0] > sum[0] && found[4] < sum[4], "{found:?} {sum:?}");
    }
}

#[test]
fn common_parts_against_each_other_cancel() {
    let links = [
        shared(link(0, 1, 100, 50, 50), 0, 1_000_000),
        shared(link(2, 1, 100, 50, 50), 0, 1_000_000),
    ];
    let spread = spread_of(3, &links, (0, 2), 5, 1000);
    assert_eq!((spread.least_seen, spread.greatest_seen), (0, 0));
    assert_eq!(spread.share, [(0, 0.0), (1, 0.0)]);
}

#[track_caller]
fn check_share(links: &[Link], expected: &[(usize, f64)]) {
    let n_planes = links.len() + 1;
    let spread = spread_of(n_planes, links, (0, n_planes - 1), 1, 1000);
    assert_eq!(spread.share.len(), expected.len());
    for (found, expected) in spread.share.iter().zip(expected) {
        assert_eq!(found.0, expected.0);
        assert!(
            (found.1 - expected.1).abs() < 1e-12,
            "{:?}, expected {expected:?}",
            spread.share
        );
    }
    assert!(!spread.is_on_loop);
}

#[test]
fn shares_go_by_the_square_of_the_width() {
    check_share(
        &[
            link(0, 1, 0, 10, 10),
            link(1, 2, 0, 30, 0),
            link(2, 3, 5, 0, 0),
        ],
        &[(1, 900.0 / 1300.0), (0, 400.0 / 1300.0), (2, 0.0)],
    );
}

#[test]
fn shares_of_fully_correlated_links_go_by_the_width() {
    let common = |l| shared(l, 3, 1_000_000);
    check_share(
        &[common(link(0, 1, 0, 10, 10)), common(link(1, 2, 0, 30, 0))],
        &[(1, 0.6), (0, 0.4)],
    );
}

#[test]
fn a_common_part_that_works_against_its_source_has_a_negative_share() {
    // Widths 20 and 40, half of each common, the second backward: 12 Var = 10² + 20² + (10 − 20)² = 600,
    // 12 Cov = 10² + 10 (10 − 20) = 0 and 20² − 20 (10 − 20) = 600.
    let half = |l| shared(l, 3, 500_000);
    check_share(
        &[half(link(0, 1, 0, 10, 10)), half(link(2, 1, 0, 20, 20))],
        &[(1, 1.0), (0, 0.0)],
    );
    // Without an own part to make up for it, the lesser link takes away: 30 of −10 + 40 is 40/30 and −10/30.
    let whole = |l| shared(l, 3, 1_000_000);
    check_share(
        &[whole(link(0, 1, 0, 5, 5)), whole(link(2, 1, 0, 20, 20))],
        &[(1, 4.0 / 3.0), (0, -1.0 / 3.0)],
    );
}

// ---- coverage, by a naive sampler -----------------------------------------------------------------------------

/// Uniform numbers in 0 to 1 from a 64-bit mixer; nothing here is shared with the crate.
struct Naive(u64);

impl Naive {
    fn even(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Positions of a chain in which link k brings in plane k + 1 and later links close loops; shared parts only in
    /// the tree. None when a closing link is broken.
    fn positions(&mut self, n_planes: usize, links: &[Link]) -> Option<Vec<f64>> {
        let common: [f64; 2] = [self.even(), self.even()];
        let mut positions = vec![0.0; n_planes];
        for (at, l) in links.iter().enumerate() {
            let (least, width) = ((l.nominal - l.minus) as f64, (l.minus + l.plus) as f64);
            if at + 1 < n_planes {
                let fraction = l.shared.map_or(0.0, |s| f64::from(s.fraction_ppm) / 1e6);
                let drawn = fraction * common[l.shared.map_or(0, |s| s.source)]
                    + (1.0 - fraction) * self.even();
                let distance = least + width * drawn;
                positions[at + 1] = if l.to == at + 1 {
                    positions[l.from] + distance
                } else {
                    positions[l.to] - distance
                };
            } else if !(least..=least + width).contains(&(positions[l.to] - positions[l.from])) {
                return None;
            }
        }
        Some(positions)
    }
}

/// Part of `n` naive samples of the distance from plane 0 to the last plane that lie in `within`.
fn coverage(n_planes: usize, links: &[Link], within: (i64, i64), n: u32) -> f64 {
    let mut naive = Naive(77);
    let (mut n_inside, mut n_seen) = (0, 0);
    while n_seen < n {
        if let Some(positions) = naive.positions(n_planes, links) {
            let value = positions[n_planes - 1] - positions[0];
            n_seen += 1;
            n_inside += u32::from(within.0 as f64 <= value && value <= within.1 as f64);
        }
    }
    f64::from(n_inside) / f64::from(n)
}

/// Whether the middle 95 % and 99 % of `links` cover the expected share of the naive samples of `naive`.
fn covers_as_stated(n_planes: usize, links: &[Link], naive: &[Link]) -> bool {
    let spread = spread_of(n_planes, links, (0, n_planes - 1), 42, MANY);
    let n = 100_000;
    [(0.95, spread.middle_95()), (0.99, spread.middle_99())]
        .into_iter()
        .all(|(stated, within)| {
            // The variances of both samples add: the true coverage of the quantiles' interval, and its count.
            let sigma =
                (stated * (1.0 - stated) * (1.0 / f64::from(MANY) + 1.0 / f64::from(n))).sqrt();
            (coverage(n_planes, naive, within, n) - stated).abs() < SIGMAS * sigma
        })
}

#[track_caller]
fn check_coverage(n_planes: usize, links: &[Link]) {
    assert!(covers_as_stated(n_planes, links, links));
    let wider: Vec<Link> = links
        .iter()
        .map(|l| Link {
            minus: l.minus * 11 / 10,
            plus: l.plus * 11 / 10,
            ..*l
        })
        .collect();
    assert!(
        !covers_as_stated(n_planes, links, &wider),
        "windows 10 % wider must be seen"
    );
}

#[test]
fn the_intervals_of_independent_links_cover_what_they_state() {
    check_coverage(
        5,
        &[
            link(0, 1, 40_000, 3_000, 1_000),
            link(2, 1, 5_000, 0, 4_000),
            link(2, 3, 9_000, 2_500, 2_500),
            link(3, 4, 1_000, 500, 500),
        ],
    );
}

#[test]
fn the_intervals_of_links_with_common_parts_cover_what_they_state() {
    let links = [
        shared(link(0, 1, 40_000, 3_000, 1_000), 0, 700_000),
        shared(link(2, 1, 5_000, 0, 4_000), 1, 500_000),
        shared(link(2, 3, 9_000, 2_500, 2_500), 0, 600_000),
        shared(link(3, 4, 1_000, 1_500, 500), 1, 1_000_000),
    ];
    check_coverage(5, &links);
    let alone: Vec<Link> = links.iter().map(|l| Link { shared: None, ..*l }).collect();
    assert!(
        !covers_as_stated(5, &links, &alone),
        "common parts left out must be seen"
    );
}

#[test]
fn the_intervals_of_links_in_loops_cover_what_they_state() {
    let tree = [
        shared(link(0, 1, 40_000, 3_000, 1_000), 0, 300_000),
        link(2, 1, 5_000, 0, 4_000),
        shared(link(2, 3, 9_000, 2_500, 2_500), 0, 600_000),
    ];
    let mut links = tree.to_vec();
    // Narrow enough to matter and wide enough to be last in the tree; 0 to 3 is 44 000.
    links.push(link(0, 3, 44_000, 2_000, 2_100));
    links.push(link(3, 1, -4_000, 2_500, 2_600));
    check_coverage(4, &links);
    assert!(
        !covers_as_stated(4, &links, &tree),
        "closing links left out must be seen"
    );
    let spread = spread_of(4, &links, (0, 3), 42, 1000);
    assert!(spread.is_on_loop && spread.n_tried > 1000 && spread.n_accepted == 1000);
}

#[test]
fn only_links_on_a_loop_are_called_so() {
    let links = [
        link(0, 1, 5, 9, 9),
        link(1, 2, 5, 1, 1),
        link(2, 1, -5, 1, 1),
    ];
    let options = SpreadOptions {
        seed: 1,
        n_samples: 1000,
    };
    let spreads = solved(3, &links)
        .spread(&[(0, 1), (1, 2), (0, 2)], options)
        .unwrap();
    assert_eq!(
        spreads
            .iter()
            .map(|spread| spread.is_on_loop)
            .collect::<Vec<_>>(),
        [false, true, true]
    );
}

// ---- what is refused ------------------------------------------------------------------------------------------

#[track_caller]
fn check_refused(links: &[Link], n_samples: u32, expected: ChainError) {
    let refused = solved(3, links)
        .spread(&[(0, 2)], SpreadOptions { seed: 1, n_samples })
        .unwrap_err();
    assert_eq!(refused, expected);
}

#[test]
fn numbers_of_samples_out_of_range_are_refused() {
    let links = [link(0, 1, 0, 1, 1), link(1, 2, 0, 1, 1)];
    for n_samples in [0, SAMPLES_MOST + 1] {
        check_refused(&links, n_samples, ChainError::SampleCount { n_samples });
    }
}

#[test]
fn a_loop_of_common_parts_that_cannot_close_is_refused() {
    // The common parts of links 0 and 2 are drawn separately, so their difference seldom equals a whole count of link 1.
    let wide = 1_000_000_000_000;
    let links = [
        shared(link(0, 1, 0, wide, wide), 0, 1_000_000),
        shared(link(1, 2, 0, wide, wide), 1, 1_000_000),
        shared(link(0, 2, 0, wide, wide), 2, 1_000_000),
    ];
    let n_tried = 2000 * u64::from(TRIES_PER_SAMPLE);
    check_refused(
        &links,
        2000,
        ChainError::TooFewAccepted {
            n_accepted: 0,
            n_tried,
            n_needed: 1000,
        },
    );
}

#[test]
fn one_sample_has_all_its_quantiles_at_one_place() {
    let spread = spread_of(2, &[link(0, 1, 9, 5, 5)], (0, 1), 1, 1);
    assert_eq!(spread.quantiles, [spread.least_seen; 5]);
    assert_eq!(spread.least_seen, spread.greatest_seen);
}

/// The samples are the same on every machine: a change of this number is a change of every spread ever printed.
/// Its origin is this crate itself; it shows that nothing changed, not that it is right.
#[test]
fn a_seed_gives_the_same_samples_as_ever() {
    let links = [
        shared(link(0, 1, 40_000, 3_000, 1_000), 0, 700_000),
        link(2, 1, 5_000, 0, 4_000),
        shared(link(2, 0, -35_000, 6_000, 6_000), 1, 500_000),
    ];
    let spread = spread_of(3, &links, (0, 2), 2024, 1000);
    assert_eq!(spread.quantiles, [29_497, 30_115, 32_794, 35_026, 35_516]);
}
