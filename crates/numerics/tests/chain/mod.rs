//! Dimension chains compared with oracles that share no code with them.
//!
//! Random chains are made from hidden positions, so that their nominals agree by construction.

mod bounds;
mod errors;
mod order;
mod paths;
mod spread;
mod worked;

use jointwright_numerics::chain::{Chain, Link, Shared, Solution};
use proptest::prelude::*;
use proptest::sample::Index;

fn link(from: usize, to: usize, nominal: i64, minus: i64, plus: i64) -> Link {
    Link {
        from,
        to,
        nominal,
        minus,
        plus,
        shared: None,
    }
}

fn shared(link: Link, source: usize, fraction_ppm: u32) -> Link {
    Link {
        shared: Some(Shared {
            source,
            fraction_ppm,
        }),
        ..link
    }
}

#[track_caller]
fn solved(n_planes: usize, links: &[Link]) -> Solution {
    Chain::new(n_planes, links.to_vec())
        .expect("links are in order")
        .solve(0)
        .expect("the chain closes")
}

/// Hidden positions and links that agree with them; the first n − 1 links are a tree, the others close loops.
#[derive(Clone, Debug)]
struct Scene {
    positions: Vec<i64>,
    links: Vec<Link>,
}

impl Scene {
    fn n_planes(&self) -> usize {
        self.positions.len()
    }

    fn n_tree(&self) -> usize {
        self.n_planes() - 1
    }

    fn has_loop(&self) -> bool {
        self.links.len() > self.n_tree()
    }

    fn solve(&self) -> Solution {
        solved(self.n_planes(), &self.links)
    }

    /// Whether no two links join the same two planes.
    fn is_simple(&self) -> bool {
        let mut ends: Vec<_> = self
            .links
            .iter()
            .map(|l| (l.from.min(l.to), l.from.max(l.to)))
            .collect();
        ends.sort_unstable();
        ends.windows(2).all(|pair| pair[0] != pair[1])
    }
}

/// A scene of up to `n_planes` planes and `n_closing` links that close loops; windows reach from `window.0` to
/// `window.1` on each side; a link in three shares part of its window with one of two sources.
fn scenes(n_planes: usize, n_closing: usize, window: (i64, i64)) -> impl Strategy<Value = Scene> {
    let sides = window.0..=window.1;
    let ends = (
        any::<Index>(),
        any::<Index>(),
        any::<bool>(),
        sides.clone(),
        sides,
        any::<Index>(),
    );
    (2..=n_planes).prop_flat_map(move |n| {
        let positions = prop::collection::vec(-1000_i64..1000, n);
        let drawn = prop::collection::vec(ends.clone(), n - 1..=n - 1 + n_closing);
        (positions, drawn).prop_map(move |(positions, drawn)| {
            let mut links = Vec::new();
            for (at, (a, b, turned, minus, plus, common)) in drawn.into_iter().enumerate() {
                let (a, b) = if at + 1 < n {
                    (a.index(at + 1), at + 1)
                } else {
                    (a.index(n), b.index(n))
                };
                if a != b {
                    let (from, to) = if turned { (b, a) } else { (a, b) };
                    let plain = link(from, to, positions[to] - positions[from], minus, plus);
                    let kind = common.index(6);
                    links.push(if kind < 2 {
                        shared(plain, kind, 400_000)
                    } else {
                        plain
                    });
                }
            }
            Scene { positions, links }
        })
    })
}
