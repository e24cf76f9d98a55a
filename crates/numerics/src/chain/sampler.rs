//! Random positions of all planes that keep every window.
//!
//! **What.** A link's width is divided into a common part C (its shared fraction, rounded down to a count) and an own
//! part O.
//! Its deviation is −minus + c + o.
//! For each link, o is a whole number drawn uniformly from 0 to O; c
//! follows one uniform draw for each source: the same quantile of 0 to C for every link of that source.
//!
//! Links of a spanning tree are drawn.
//! The others determine a link that closes a loop, and the sample is kept only
//! if that link's own part lies between 0 and O.
//! The tree takes the links with the narrowest own parts, so that
//! the widest close the loops and the fewest samples are lost.
//! The distribution of the kept samples does not depend on the tree: it is uniform over all positions and common draws
//! that keep every window.
//!
//! **Invariants.** Only integer arithmetic: the same seed gives the same positions on every machine.
//! Draws are taken in the order of sources by number, then of tree links by their contents.

use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::collections::BTreeSet;

use super::{Chain, Link};

/// A link to be drawn or checked.
#[derive(Clone, Copy, Debug)]
pub(super) struct Drawn {
    /// Index in the caller's list.
    pub link: usize,
    from: usize,
    to: usize,
    /// nominal − minus, in counts.
    least: i64,
    /// Width of the own part, in counts.
    pub own_width: i64,
    /// Index of the common draw, and the width of the common part in counts.
    pub common: Option<(usize, i64)>,
    is_mirrored: bool,
}

/// One step of the walk from plane 0 over the tree.
#[derive(Clone, Copy, Debug)]
struct Stride {
    plane: usize,
    before: usize,
    /// Index among the links of the tree.
    drawn: usize,
    /// +1 along the link, −1 against it.
    sign: i64,
}

/// Draws positions of all planes of a chain.
pub(super) struct Sampler {
    random: ChaCha8Rng,
    n_planes: usize,
    tree: Vec<Drawn>,
    closing: Vec<Drawn>,
    walk: Vec<Stride>,
    common_draws: Vec<u64>,
    distances: Vec<i64>,
    /// Position of every plane from plane 0 in the last sample, in counts.
    pub positions: Vec<i64>,
}

impl Sampler {
    pub(super) fn new(chain: &Chain, seed: u64) -> Sampler {
        let sources: BTreeSet<usize> = chain
            .links
            .iter()
            .filter_map(Link::common)
            .map(|(source, _)| source)
            .collect();
        let sources: Vec<usize> = sources.into_iter().collect();
        let (tree, closing) = narrowest_tree(chain, &sources);
        // The seed stands in the first eight bytes of the key, low byte first, so the draws do not depend on how a library
        // expands a short seed.
        let mut key = [0; 32];
        key[..8].copy_from_slice(&seed.to_le_bytes());
        Sampler {
            random: ChaCha8Rng::from_seed(key),
            n_planes: chain.n_planes,
            walk: walk(chain.n_planes, &tree),
            common_draws: vec![0; sources.len()],
            distances: vec![0; tree.len()],
            positions: vec![0; chain.n_planes],
            tree,
            closing,
        }
    }

    /// Links that are drawn, in the order of their contents.
    pub(super) fn tree(&self) -> &[Drawn] {
        &self.tree
    }

    /// Number of sources that links share.
    pub(super) fn n_sources(&self) -> usize {
        self.common_draws.len()
    }

    /// Draws once; returns whether the sample keeps the window of every link that closes a loop.
    pub(super) fn draw(&mut self) -> bool {
        for draw in &mut self.common_draws {
            *draw = self.random.next_u64();
        }
        for (drawn, distance) in self.tree.iter().zip(&mut self.distances) {
            let own = part(self.random.next_u64(), drawn.own_width);
            let own = if drawn.is_mirrored {
                drawn.own_width - own
            } else {
                own
            };
            *distance = drawn.least + drawn.common_part(&self.common_draws) + own;
        }
        for stride in &self.walk {
            self.positions[stride.plane] =
                self.positions[stride.before] + stride.sign * self.distances[stride.drawn];
        }
        self.closing.iter().all(|link| {
            let distance = self.positions[link.to] - self.positions[link.from];
            let own = distance - link.least - link.common_part(&self.common_draws);
            (0..=link.own_width).contains(&own)
        })
    }

    /// Sign of each tree link in position(b) − position(a): +1, −1 or 0.
    pub(super) fn signs(&self, a: usize, b: usize) -> Vec<i64> {
        let mut strides = vec![None; self.n_planes];
        for stride in &self.walk {
            strides[stride.plane] = Some(*stride);
        }
        let mut signs = vec![0; self.tree.len()];
        // Steps before the point where the two paths part count once in each sense and cancel.
        for (end, weight) in [(b, 1), (a, -1)] {
            let mut plane = end;
            while let Some(stride) = strides[plane] {
                signs[stride.drawn] += weight * stride.sign;
                plane = stride.before;
            }
        }
        signs
    }

    /// Whether each tree link lies on a loop.
    pub(super) fn on_loops(&self) -> Vec<bool> {
        let mut on_loops = vec![false; self.tree.len()];
        for link in &self.closing {
            for (on_loop, sign) in on_loops.iter_mut().zip(self.signs(link.from, link.to)) {
                *on_loop |= sign != 0;
            }
        }
        on_loops
    }
}

impl Drawn {
    fn new(chain: &Chain, index: usize, sources: &[usize]) -> Drawn {
        let link = &chain.links[index];
        let slot = |source| {
            sources
                .binary_search(&source)
                .expect("every source of a link is listed")
        };
        Drawn {
            link: index,
            from: link.from,
            to: link.to,
            least: link.nominal - link.minus,
            own_width: link.own_width(),
            common: link.common().map(|(source, width)| (slot(source), width)),
            is_mirrored: link.is_mirrored(),
        }
    }

    fn common_part(&self, draws: &[u64]) -> i64 {
        self.common
            .map_or(0, |(slot, width)| part(draws[slot], width))
    }
}

/// A whole number from 0 to `width`, both included, for a uniform draw; it is monotonic in the draw.
///
/// The probability of each value is off by less than 2^−64, too little to be seen in any sample.
fn part(draw: u64, width: i64) -> i64 {
    let n_values = width.unsigned_abs() + 1;
    let value = (u128::from(draw) * u128::from(n_values)) >> 64;
    i64::try_from(value).expect("at most the width")
}

/// The spanning tree with the narrowest own parts (Kruskal), and the remaining links; both in order of contents.
fn narrowest_tree(chain: &Chain, sources: &[usize]) -> (Vec<Drawn>, Vec<Drawn>) {
    let mut by_width = chain.order.clone();
    // A stable sort: links of equal width stay in the order of their contents.
    by_width.sort_by_key(|&index| (chain.links[index].own_width(), chain.links[index].width()));
    let mut set: Vec<usize> = (0..chain.n_planes).collect();
    let mut in_tree = vec![false; chain.links.len()];
    for index in by_width {
        let (a, b) = (set[chain.links[index].from], set[chain.links[index].to]);
        if a != b {
            in_tree[index] = true;
            set.iter_mut().filter(|of| **of == b).for_each(|of| *of = a);
        }
    }
    let drawn = |&index: &usize| Drawn::new(chain, index, sources);
    let tree = chain
        .order
        .iter()
        .filter(|&&index| in_tree[index])
        .map(drawn)
        .collect();
    let closing = chain
        .order
        .iter()
        .filter(|&&index| !in_tree[index])
        .map(drawn)
        .collect();
    (tree, closing)
}

/// The order in which the tree reaches the planes, from plane 0.
fn walk(n_planes: usize, tree: &[Drawn]) -> Vec<Stride> {
    let mut neighbours = vec![Vec::new(); n_planes];
    for (drawn, link) in tree.iter().enumerate() {
        neighbours[link.from].push(Stride {
            plane: link.to,
            before: link.from,
            drawn,
            sign: 1,
        });
        neighbours[link.to].push(Stride {
            plane: link.from,
            before: link.to,
            drawn,
            sign: -1,
        });
    }
    let mut is_placed = vec![false; n_planes];
    is_placed[0] = true;
    let mut walk: Vec<Stride> = neighbours[0].clone();
    let mut at = 0;
    while at < walk.len() {
        is_placed[walk[at].plane] = true;
        let onward = neighbours[walk[at].plane]
            .iter()
            .filter(|stride| !is_placed[stride.plane]);
        walk.extend(onward);
        at += 1;
    }
    assert_eq!(
        walk.len() + 1,
        n_planes,
        "a spanning tree reaches every plane once"
    );
    walk
}
