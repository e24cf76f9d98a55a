//! Spread of the distance between two planes over random deviations.
//!
//! **What.** Samples are drawn (`sampler`), sorted, and read at stated quantiles; the shares of the links in the
//! variance are computed, not counted.
//!
//! **Not here.** The use of a spread: only [`super::Bounds`] excludes a distance.

use super::sampler::Sampler;
use super::{Chain, ChainError, SAMPLES_MOST};

/// Quantiles at which a [`Spread`] is read, in thousandths.
pub const QUANTILES_PERMILLE: [u32; 5] = [5, 25, 500, 975, 995];

/// Samples that must be accepted (or all requested ones, if fewer): at 1000 the outer quantiles still have five
/// samples beyond them.
pub const SAMPLES_NEEDED: u32 = 1000;

/// Draws for each requested sample, if links that close loops reject some.
pub const TRIES_PER_SAMPLE: u32 = 64;

/// Options for sampling a spread.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SpreadOptions {
    /// Start of the random draws; the same seed gives the same samples on every machine.
    pub seed: u64,
    /// Number of samples to accept, 1 to [`SAMPLES_MOST`].
    pub n_samples: u32,
}

/// Spread of one distance, in counts.
///
/// # Assumes
/// Every link's deviation is uniform over its window.
/// With a shared part it is the sum of a common part and an
/// own part, each uniform over its part of the width.
/// That sum stays inside the window, and its middle is
/// likelier than its ends.
/// Own parts are independent of each other and of the sources; sources are independent of each other.
/// Samples that break the window of a link that closes a loop are rejected.
/// A closing link without an own part is
/// kept only if the others give it to the count, so loops made of shared parts alone are mostly rejected.
///
/// # Accuracy
/// The fraction of all distances below the quantile p differs from p by about √(p (1 − p) / n_accepted), one standard
/// deviation.
/// Widths are whole counts; the shares are those of continuous windows.
#[derive(Clone, Debug, PartialEq)]
pub struct Spread {
    /// Least distance among the samples; the least possible is [`super::Bounds::least`].
    pub least_seen: i64,
    /// Greatest distance among the samples; the greatest possible is [`super::Bounds::greatest`].
    pub greatest_seen: i64,
    /// Distances at [`QUANTILES_PERMILLE`]: at p, the least sample that is not less than a fraction p of all samples.
    pub quantiles: [i64; 5],
    /// Index of each link that counts in this distance, with its share in the variance; greatest first.
    ///
    /// share_i = Cov(e_i, Σ e) / Var(Σ e), with e_i the signed deviation of link i on the path from a to b over the
    /// tree that is sampled.
    /// The shares add up to 1, or are all 0 if nothing varies.
    /// A common part that opposes the others of its source gives a negative share.
    pub share: Vec<(usize, f64)>,
    /// Whether a link of this distance lies on a loop: the shares then ignore how the closing links narrow it.
    pub is_on_loop: bool,
    /// Number of samples that kept every window; all numbers above except the shares rest on them.
    pub n_accepted: u32,
    /// Number of samples drawn.
    pub n_tried: u64,
}

impl Spread {
    /// Range of the middle 95 % of the samples, in counts.
    ///
    /// ```
    /// use jointwright_numerics::chain::Spread;
    ///
    /// let spread = Spread {
    ///     least_seen: 0, greatest_seen: 9, quantiles: [1, 2, 5, 7, 8], share: vec![],
    ///     is_on_loop: false, n_accepted: 1000, n_tried: 1000,
    /// };
    /// assert_eq!(spread.middle_95(), (2, 7));
    /// ```
    pub fn middle_95(&self) -> (i64, i64) {
        (self.quantiles[1], self.quantiles[3])
    }

    /// Range of the middle 99 % of the samples, in counts.
    ///
    /// ```
    /// use jointwright_numerics::chain::Spread;
    ///
    /// let spread = Spread {
    ///     least_seen: 0, greatest_seen: 9, quantiles: [1, 2, 5, 7, 8], share: vec![],
    ///     is_on_loop: false, n_accepted: 1000, n_tried: 1000,
    /// };
    /// assert_eq!(spread.middle_99(), (1, 8));
    /// ```
    pub fn middle_99(&self) -> (i64, i64) {
        (self.quantiles[0], self.quantiles[4])
    }
}

/// Samples the chain and reads the spread of each pair; see [`super::Solution::spread`].
pub(super) fn spread(
    chain: &Chain,
    pairs: &[(usize, usize)],
    options: SpreadOptions,
) -> Result<Vec<Spread>, ChainError> {
    let SpreadOptions { seed, n_samples } = options;
    if !(1..=SAMPLES_MOST).contains(&n_samples) {
        return Err(ChainError::SampleCount { n_samples });
    }
    for &(a, b) in pairs {
        assert!(
            a < chain.n_planes && b < chain.n_planes,
            "planes {a} and {b} of a chain of {}",
            chain.n_planes
        );
    }
    let mut sampler = Sampler::new(chain, seed);
    let mut distances = vec![Vec::with_capacity(n_samples as usize); pairs.len()];
    let n_tried_most = u64::from(n_samples) * u64::from(TRIES_PER_SAMPLE);
    let (mut n_accepted, mut n_tried) = (0, 0);
    while n_accepted < n_samples && n_tried < n_tried_most {
        n_tried += 1;
        if sampler.draw() {
            n_accepted += 1;
            for (values, &(a, b)) in distances.iter_mut().zip(pairs) {
                values.push(sampler.positions[b] - sampler.positions[a]);
            }
        }
    }
    let n_needed = n_samples.min(SAMPLES_NEEDED);
    if n_accepted < n_needed {
        return Err(ChainError::TooFewAccepted {
            n_accepted,
            n_tried,
            n_needed,
        });
    }
    let on_loops = sampler.on_loops();
    let spreads = pairs.iter().zip(distances).map(|(&(a, b), mut values)| {
        let signs = sampler.signs(a, b);
        Spread {
            least_seen: *values
                .iter()
                .min()
                .expect("at least one sample was accepted"),
            greatest_seen: *values
                .iter()
                .max()
                .expect("at least one sample was accepted"),
            quantiles: quantiles(&mut values),
            share: shares(&sampler, &signs),
            is_on_loop: signs
                .iter()
                .zip(&on_loops)
                .any(|(&sign, &on_loop)| sign != 0 && on_loop),
            n_accepted,
            n_tried,
        }
    });
    Ok(spreads.collect())
}

/// The values at [`QUANTILES_PERMILLE`], by the nearest rank: number ⌈p n⌉ of n in order.
fn quantiles(values: &mut [i64]) -> [i64; 5] {
    let n = values.len();
    let mut quantiles = [0; 5];
    let mut below = values;
    // From the greatest down, each search continues in the part below the previous one.
    for (quantile, permille) in quantiles.iter_mut().zip(QUANTILES_PERMILLE).rev() {
        let rank = (permille as usize * n).div_ceil(1000).max(1);
        *quantile = *below.select_nth_unstable(rank - 1).1;
        below = &mut below[..rank];
    }
    quantiles
}

/// Shares in the variance of Σ sign (common + own), by covariance with the sum.
///
/// 12 Var = Σ_i O_i² + Σ_s (Σ_{i of s} sign_i C_i)², because a uniform spread of width w has the variance w²/12;
/// 12 Cov_i = O_i² + sign_i C_i Σ_{j of s(i)} sign_j C_j, which adds up to the same.
fn shares(sampler: &Sampler, signs: &[i64]) -> Vec<(usize, f64)> {
    let links = || {
        sampler
            .tree()
            .iter()
            .zip(signs)
            .filter(|(_, sign)| **sign != 0)
    };
    let mut by_source = vec![0.0; sampler.n_sources()];
    for (link, &sign) in links() {
        if let Some((slot, width)) = link.common {
            by_source[slot] += (sign * width) as f64;
        }
    }
    let covariances: Vec<(usize, f64)> = links()
        .map(|(link, &sign)| {
            let own = link.own_width as f64;
            let common = link
                .common
                .map_or(0.0, |(slot, width)| (sign * width) as f64 * by_source[slot]);
            (link.link, own * own + common)
        })
        .collect();
    let total: f64 = covariances.iter().map(|(_, covariance)| covariance).sum();
    let mut shares: Vec<(usize, f64)> = covariances
        .into_iter()
        .map(|(link, covariance)| (link, if total > 0.0 { covariance / total } else { 0.0 }))
        .collect();
    // A stable sort: equal shares stay in the order of the links' contents.
    shares.sort_by(|(_, a), (_, b)| b.total_cmp(a));
    shares
}
