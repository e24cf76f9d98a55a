//! A chain in which the position of every plane is known.
//!
//! **Invariants.** All planes are connected and the nominals agree around every loop; only [`Chain::solve`] constructs one.

use super::bounds::greatest_deviations;
use super::graph::Forest;
use super::{Bounds, Chain, ChainError, Path, Spread, SpreadOptions, spread};

/// Positions of all planes of a chain, with the bounds of all distances.
///
/// Holds one number for each pair of planes, found in n³ steps: suited to tens of planes, not to thousands.
#[derive(Clone, Debug)]
pub struct Solution {
    chain: Chain,
    datum: usize,
    forest: Forest,
    /// Greatest deviation from plane a to plane b at `a * n_planes + b`, in counts.
    greatest: Vec<i64>,
}

impl Solution {
    pub(super) fn new(chain: Chain, datum: usize, forest: Forest) -> Solution {
        let greatest = greatest_deviations(&chain);
        Solution {
            chain,
            datum,
            forest,
            greatest,
        }
    }

    /// The plane from which positions are counted.
    ///
    /// ```
    /// use jointwright_numerics::chain::Chain;
    ///
    /// assert_eq!(Chain::new(1, vec![]).unwrap().solve(0).unwrap().datum(), 0);
    /// ```
    pub fn datum(&self) -> usize {
        self.datum
    }

    /// Distance from plane `a` to plane `b` without deviations: position(b) − position(a), in counts.
    ///
    /// It is the same over every path.
    ///
    /// ```
    /// use jointwright_numerics::chain::{Chain, Link};
    ///
    /// let link = Link { from: 0, to: 1, nominal: 500, minus: 10, plus: 20, shared: None };
    /// let solution = Chain::new(2, vec![link]).unwrap().solve(0).unwrap();
    /// assert_eq!((solution.nominal(0, 1), solution.nominal(1, 0)), (500, -500));
    /// ```
    ///
    /// # Panics
    /// If `a` or `b` is not a plane of the chain.
    pub fn nominal(&self, a: usize, b: usize) -> i64 {
        self.forest.position(b) - self.forest.position(a)
    }

    /// The path from plane `a` to plane `b` along the canonical paths from the datum.
    ///
    /// The canonical path to a plane has the fewest links; of those the least total width; of those the least
    /// plane numbers, compared from the datum on.
    /// From the datum this is the canonical path itself; between other
    /// planes, the common part of both paths is left out.
    ///
    /// ```
    /// use jointwright_numerics::chain::{Chain, Link};
    ///
    /// let out = Link { from: 0, to: 1, nominal: 500, minus: 10, plus: 20, shared: None };
    /// let back = Link { from: 2, to: 1, nominal: 200, minus: 0, plus: 5, shared: None };
    /// let solution = Chain::new(3, vec![out, back]).unwrap().solve(0).unwrap();
    /// assert_eq!(solution.path(0, 2).to_string(), "0 -(link 0)-> 1 <-(link 1)- 2");
    /// ```
    ///
    /// # Panics
    /// If `a` or `b` is not a plane of the chain.
    pub fn path(&self, a: usize, b: usize) -> Path {
        self.forest.path(&self.chain, a, b)
    }

    /// Least and greatest distance from plane `a` to plane `b` when every link keeps its window.
    ///
    /// greatest(a, b) = nominal(a, b) + shortest path from a to b, with `plus` along a link and `minus` against it.
    ///
    /// Both bounds are attained, and no deviations that keep every window exceed them.
    /// Shared parts are not used.
    ///
    /// ```
    /// use jointwright_numerics::chain::{Bounds, Chain, Link};
    ///
    /// let out = Link { from: 0, to: 1, nominal: 500, minus: 10, plus: 20, shared: None };
    /// let back = Link { from: 2, to: 1, nominal: 200, minus: 0, plus: 5, shared: None };
    /// let solution = Chain::new(3, vec![out, back]).unwrap().solve(0).unwrap();
    /// assert_eq!(solution.bounds(0, 2), Bounds { least: 285, greatest: 320 });
    /// ```
    ///
    /// # Panics
    /// If `a` or `b` is not a plane of the chain.
    pub fn bounds(&self, a: usize, b: usize) -> Bounds {
        let n = self.chain.n_planes;
        assert!(a < n && b < n, "planes {a} and {b} of a chain of {n}");
        let nominal = self.nominal(a, b);
        Bounds {
            least: nominal - self.greatest[b * n + a],
            greatest: nominal + self.greatest[a * n + b],
        }
    }

    /// Spread of the distances from `a` to `b` of each pair, by seeded random samples.
    ///
    /// See [`Spread`] for the assumed distribution, and for which results are computed and which are counted.
    /// The result depends on the links' contents, the pairs and the options only; not on the datum.
    ///
    /// ```
    /// use jointwright_numerics::chain::{Chain, Link, SpreadOptions};
    ///
    /// let link = Link { from: 0, to: 1, nominal: 500, minus: 100, plus: 100, shared: None };
    /// let next = Link { from: 1, to: 2, ..link };
    /// let solution = Chain::new(3, vec![link, next]).unwrap().solve(0).unwrap();
    /// let spread = solution.spread(&[(0, 2)], SpreadOptions { seed: 7, n_samples: 4096 }).unwrap();
    /// assert!(spread[0].least_seen >= 800 && spread[0].greatest_seen <= 1200);
    /// assert_eq!(spread[0].share, [(0, 0.5), (1, 0.5)]);
    /// ```
    ///
    /// # Errors
    /// [`ChainError::SampleCount`] unless 1 ≤ `n_samples` ≤ [`super::SAMPLES_MOST`];
    /// [`ChainError::TooFewAccepted`] if the links that close loops reject nearly all samples.
    ///
    /// # Panics
    /// If a pair names a plane that the chain does not have.
    pub fn spread(
        &self,
        pairs: &[(usize, usize)],
        options: SpreadOptions,
    ) -> Result<Vec<Spread>, ChainError> {
        spread::spread(&self.chain, pairs, options)
    }
}
