//! Dimension chains: planes on one axis, joined by links that have a nominal and a window.
//!
//! **What.** Finds the position of every plane, the bounds of the distance between any two, and the spread of that distance.
//!
//! ```text
//!          link 0            link 1              planes are numbered from 0
//!     0 ----------> 1 -----------------> 2       a link points from `from` to `to`
//!     |                                  ^       position(to) - position(from) = nominal + d
//!     +----------------------------------+       d is any value in [-minus, +plus]
//!                   link 2
//! ```
//!
//! Links 0 and 1 alone form a tree: one path leads from any plane to any other.
//! Link 2 closes a loop: its nominal must agree with the others, and its window narrows them.
//!
//! **Why separate.** Every position that is cut or marked rests on this sum, so it stands where it can be proved.
//!
//! **Invariants.**
//! Positions are whole counts (`i64`).
//! The caller chooses the unit: half a nanometre, so that half of a
//! whole number of nanometres is still exact.
//! [`Solution::nominal`] and [`Solution::bounds`] are exact: they do not round.
//! The order of the given links changes nothing: every choice follows an order of the links' own contents
//! (planes, nominal, window, shared part).
//! Two links that are equal in all of these are interchangeable, and the
//! first one given is preferred.
//! Sums cannot overflow, because [`Chain::new`] refuses links whose sizes add up to more than [`REACH_MOST`].
//!
//! **Not here.** The meaning of a plane, the origin of a window, the limit that judges a distance.
//!
//! **Source.** Formulas, sources and an example worked by hand: `docs/theory/chain.md`.

mod bounds;
mod error;
mod graph;
mod path;
mod sampler;
mod solution;
mod spread;

pub use bounds::Bounds;
pub use error::ChainError;
pub use path::{DirectedLink, Path};
pub use solution::Solution;
pub use spread::{QUANTILES_PERMILLE, SAMPLES_NEEDED, Spread, SpreadOptions, TRIES_PER_SAMPLE};

use graph::Forest;

/// Greatest total size of all links of one chain, in counts: Σ (|nominal| + minus + plus).
///
/// A quarter of the range of `i64`, so that the sum of two distances, and their difference, still fit.
/// In half nanometres this is more than a million kilometres.
pub const REACH_MOST: i64 = i64::MAX / 4;

/// Greatest number of samples that one call draws.
pub const SAMPLES_MOST: u32 = 1 << 20;

/// One million: the whole, for a part given in parts per million.
pub(crate) const PPM: u32 = 1_000_000;

/// Distance from plane `from` to plane `to`: position(to) − position(from) = nominal + d,
/// with d in [−minus, +plus].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Link {
    /// Plane that the distance is measured from.
    pub from: usize,
    /// Plane that the distance is measured to.
    pub to: usize,
    /// Signed distance without deviation, in counts.
    pub nominal: i64,
    /// Greatest decrease of the distance, in counts; not negative.
    pub minus: i64,
    /// Greatest increase of the distance, in counts; not negative.
    pub plus: i64,
    /// Part of the deviation that this link shares with others.
    pub shared: Option<Shared>,
}

/// The part of a link's deviation that all links with the same source share.
///
/// The common part has one sign for all of them, each in its own direction `from` → `to`:
/// a rule that is slightly long makes every distance set with it slightly long.
/// It affects [`Solution::spread`] only; [`Solution::bounds`] holds for any deviations.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Shared {
    /// Number of the source; links with equal numbers share one draw in each sample.
    pub source: usize,
    /// Common part of the half-width of the window, parts per million; 0 to 1 000 000.
    pub fraction_ppm: u32,
}

/// Sort key of a link, independent of the order of the caller's list.
type LinkKey = (usize, usize, i64, i64, i64, Option<(usize, i64)>, bool);

impl Link {
    /// Width of the window, in counts.
    pub(crate) fn width(&self) -> i64 {
        self.minus + self.plus
    }

    /// Source and width of the common part; `None` if it is smaller than one count.
    pub(crate) fn common(&self) -> Option<(usize, i64)> {
        let shared = self.shared?;
        let part = i128::from(self.width()) * i128::from(shared.fraction_ppm) / i128::from(PPM);
        let width = i64::try_from(part).expect("a part of a width fits where the width fits");
        (width > 0).then_some((shared.source, width))
    }

    /// Width of this link's own part, in counts.
    pub(crate) fn own_width(&self) -> i64 {
        self.width() - self.common().map_or(0, |(_, width)| width)
    }

    /// Least and greatest distance when the link is walked forward or backward, in counts.
    pub(crate) fn window(&self, forward: bool) -> (i64, i64) {
        let (least, greatest) = (self.nominal - self.minus, self.nominal + self.plus);
        if forward {
            (least, greatest)
        } else {
            (-greatest, -least)
        }
    }

    /// Whether the draws of this link are mirrored, so that reversing a link without a shared part changes
    /// nothing.
    /// A link with a shared part keeps its direction, because the sign of the common part depends on it.
    pub(crate) fn is_mirrored(&self) -> bool {
        self.common().is_none() && self.from > self.to
    }

    fn key(&self) -> LinkKey {
        let common = self.common();
        let turned = common.is_some() && self.from > self.to;
        if self.from < self.to {
            (
                self.from,
                self.to,
                self.nominal,
                self.minus,
                self.plus,
                common,
                turned,
            )
        } else {
            (
                self.to,
                self.from,
                -self.nominal,
                self.plus,
                self.minus,
                common,
                turned,
            )
        }
    }
}

/// A number of planes and the links between them, with each link checked alone.
///
/// [`Chain::solve`] finds out whether they agree with each other.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Chain {
    n_planes: usize,
    links: Vec<Link>,
    /// Indexes into `links`, sorted by the links' contents.
    order: Vec<usize>,
}

impl Chain {
    /// Checks each link and sorts the links by their contents.
    ///
    /// ```
    /// use jointwright_numerics::chain::{Chain, Link};
    ///
    /// let link = Link { from: 0, to: 1, nominal: 500, minus: 10, plus: 20, shared: None };
    /// assert!(Chain::new(2, vec![link]).is_ok());
    /// assert!(Chain::new(2, vec![Link { minus: -1, ..link }]).is_err());
    /// ```
    ///
    /// # Errors
    /// The first of the given links that names no plane of the chain, joins a plane to itself, has a
    /// negative `minus` or `plus` or a shared part above the whole, or at which the sizes pass [`REACH_MOST`].
    pub fn new(n_planes: usize, links: Vec<Link>) -> Result<Chain, ChainError> {
        let mut reach: i128 = 0;
        for (index, link) in links.iter().enumerate() {
            check_link(index, link, n_planes)?;
            // Three numbers below 2^63 for each link: the sum is refused before it can overflow.
            reach +=
                i128::from(link.nominal).abs() + i128::from(link.minus) + i128::from(link.plus);
            if reach > i128::from(REACH_MOST) {
                return Err(ChainError::Overflow { link: index });
            }
        }
        let mut order: Vec<usize> = (0..links.len()).collect();
        order.sort_by_cached_key(|&index| links[index].key());
        Ok(Chain {
            n_planes,
            links,
            order,
        })
    }

    /// Number of planes.
    ///
    /// ```
    /// use jointwright_numerics::chain::Chain;
    ///
    /// assert_eq!(Chain::new(7, vec![]).unwrap().n_planes(), 7);
    /// ```
    pub fn n_planes(&self) -> usize {
        self.n_planes
    }

    /// The links in the given order.
    ///
    /// ```
    /// use jointwright_numerics::chain::{Chain, Link};
    ///
    /// let link = Link { from: 0, to: 1, nominal: 500, minus: 10, plus: 20, shared: None };
    /// assert_eq!(Chain::new(2, vec![link]).unwrap().links(), [link]);
    /// ```
    pub fn links(&self) -> &[Link] {
        &self.links
    }

    /// Finds every plane from the datum, or returns the first obstacle.
    ///
    /// ```
    /// use jointwright_numerics::chain::{Chain, Link};
    ///
    /// let out = Link { from: 0, to: 1, nominal: 500, minus: 10, plus: 20, shared: None };
    /// let back = Link { from: 2, to: 1, nominal: 200, minus: 0, plus: 5, shared: None };
    /// let solution = Chain::new(3, vec![out, back]).unwrap().solve(0).unwrap();
    /// assert_eq!(solution.nominal(0, 2), 300);
    /// ```
    ///
    /// # Errors
    /// The first error that [`Chain::solve_all_errors`] lists.
    pub fn solve(&self, datum: usize) -> Result<Solution, ChainError> {
        self.solve_all_errors(datum)
            .map_err(|mut errors| errors.swap_remove(0))
    }

    /// Finds every plane from the datum, or lists all obstacles.
    ///
    /// The nominals must agree exactly around every loop, however wide the windows are: two numbers for one
    /// distance mean that one of them was misread, and no window corrects that.
    ///
    /// ```
    /// use jointwright_numerics::chain::{Chain, ChainError, Link};
    ///
    /// let link = Link { from: 0, to: 1, nominal: 500, minus: 10, plus: 20, shared: None };
    /// let other = Link { nominal: 510, ..link };
    /// let errors = Chain::new(3, vec![link, other]).unwrap().solve_all_errors(0).unwrap_err();
    /// assert_eq!(errors[0], ChainError::Open { plane: 2 });
    /// assert!(matches!(errors[1], ChainError::Contradiction { first_value: 500, second_value: 510, .. }));
    /// assert_eq!(errors.len(), 2); // the windows 490 to 520 and 500 to 530 meet
    /// ```
    ///
    /// # Errors
    /// The list is never empty.
    /// It holds, in this order: [`ChainError::Datum`] (then alone);
    /// [`ChainError::Open`] for every plane that no path from the datum reaches;
    /// [`ChainError::Contradiction`] for every link that closes a loop and disagrees with the canonical paths to its
    /// ends, one for each independent loop, also among planes that the datum does not reach;
    /// [`ChainError::WindowsExclude`] for every such loop whose windows cannot be kept together, or for one wider
    /// loop if only several closing links together exclude each other.
    pub fn solve_all_errors(&self, datum: usize) -> Result<Solution, Vec<ChainError>> {
        if datum >= self.n_planes {
            return Err(vec![ChainError::Datum {
                plane: datum,
                n_planes: self.n_planes,
            }]);
        }
        let forest = Forest::new(self, datum);
        let mut errors = forest.open_planes(datum);
        let contradictions = forest.contradictions(self);
        errors.extend(contradictions.iter().map(|found| found.error.clone()));
        errors.extend(bounds::excluded_windows(self, &contradictions));
        if errors.is_empty() {
            Ok(Solution::new(self.clone(), datum, forest))
        } else {
            Err(errors)
        }
    }

    /// Least and greatest sum of the links along a path, in counts.
    fn window(&self, path: &Path) -> (i64, i64) {
        path.steps.iter().fold((0, 0), |(least, greatest), step| {
            let (a, b) = self.links[step.link].window(step.forward);
            (least + a, greatest + b)
        })
    }
}

fn check_link(index: usize, link: &Link, n_planes: usize) -> Result<(), ChainError> {
    for plane in [link.from, link.to] {
        if plane >= n_planes {
            return Err(ChainError::NoSuchPlane {
                link: index,
                plane,
                n_planes,
            });
        }
    }
    if link.from == link.to {
        return Err(ChainError::SelfLink {
            link: index,
            plane: link.from,
        });
    }
    if link.minus < 0 || link.plus < 0 {
        return Err(ChainError::NegativeWindow {
            link: index,
            minus: link.minus,
            plus: link.plus,
        });
    }
    match link.shared {
        Some(Shared { fraction_ppm, .. }) if fraction_ppm > PPM => Err(ChainError::SharedPart {
            link: index,
            fraction_ppm,
        }),
        _ => Ok(()),
    }
}
