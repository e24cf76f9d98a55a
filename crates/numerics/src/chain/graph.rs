//! The canonical path to every plane, and the links that disagree with it.
//!
//! **What.** One tree for each set of connected planes, built breadth first.
//! The canonical path to a plane has the fewest links; of those paths it has the least total width;
//! of those it is
//! the first by the plane numbers that it passes, compared from the start.
//! Between links that join the same
//! two planes, it takes the first in the order of the links' contents.
//!
//! **Invariants.** The depths of the two ends of any link differ by at most one, so the path to the shallower end never
//! passes the deeper one.

use super::{Chain, ChainError, DirectedLink, Path};

/// Last step of the canonical path to one plane, with the sums along the path.
#[derive(Clone, Copy, Debug)]
struct Reach {
    root: usize,
    depth: usize,
    /// Sum of the widths along the path, in counts.
    width: i64,
    /// Sum of the nominals along the path, in counts.
    position: i64,
    /// Link and plane before this one; `None` at the root.
    arrival: Option<(usize, usize)>,
}

/// The canonical paths to all planes.
/// The datum is the first root; every other set of planes has its least plane as root.
#[derive(Clone, Debug)]
pub(super) struct Forest {
    reaches: Vec<Reach>,
}

/// A link that disagrees with the canonical paths to its ends.
pub(super) struct Contradiction {
    pub error: ChainError,
    /// The loop that the link closes.
    pub around: Path,
}

impl Forest {
    pub(super) fn new(chain: &Chain, datum: usize) -> Forest {
        let neighbours = neighbours(chain);
        let mut reaches: Vec<Option<Reach>> = vec![None; chain.n_planes];
        for root in std::iter::once(datum).chain(0..chain.n_planes) {
            if reaches[root].is_none() {
                grow(chain, &neighbours, root, &mut reaches);
            }
        }
        Forest {
            reaches: reaches
                .into_iter()
                .map(|reach| reach.expect("every plane is a root or reached"))
                .collect(),
        }
    }

    /// Nominal position of a plane from its root, in counts.
    pub(super) fn position(&self, plane: usize) -> i64 {
        self.reaches[plane].position
    }

    /// Planes that no path joins to the datum, in order.
    pub(super) fn open_planes(&self, datum: usize) -> Vec<ChainError> {
        let open = |&plane: &usize| self.reaches[plane].root != datum;
        (0..self.reaches.len())
            .filter(open)
            .map(|plane| ChainError::Open { plane })
            .collect()
    }

    /// Every link that disagrees with the canonical paths, in the order of the links' contents.
    pub(super) fn contradictions(&self, chain: &Chain) -> Vec<Contradiction> {
        let disagrees = |&&index: &&usize| {
            let link = &chain.links[index];
            self.position(link.to) - self.position(link.from) != link.nominal
        };
        chain
            .order
            .iter()
            .filter(disagrees)
            .map(|&index| self.contradiction(chain, index))
            .collect()
    }

    fn contradiction(&self, chain: &Chain, index: usize) -> Contradiction {
        let link = &chain.links[index];
        // The position at the deeper end is in doubt; at equal depth, the position at the greater number.
        let rank = |plane: usize| (self.reaches[plane].depth, plane);
        let forward = rank(link.to) > rank(link.from);
        let (other, plane) = if forward {
            (link.from, link.to)
        } else {
            (link.to, link.from)
        };
        let root = self.reaches[plane].root;
        let closing = DirectedLink {
            link: index,
            forward,
            plane,
        };
        let mut second = self.path(chain, root, other);
        second.steps.push(closing);
        let mut around = self.path(chain, plane, other);
        around.steps.push(closing);
        let error = ChainError::Contradiction {
            plane,
            first: self.path(chain, root, plane),
            first_value: self.position(plane),
            second,
            second_value: self.position(other) + if forward { link.nominal } else { -link.nominal },
        };
        Contradiction { error, around }
    }

    /// The path from `a` to `b` over links of canonical paths only.
    pub(super) fn path(&self, chain: &Chain, a: usize, b: usize) -> Path {
        assert_eq!(
            self.reaches[a].root, self.reaches[b].root,
            "planes {a} and {b} are not connected"
        );
        let (mut from_a, mut from_b) = (a, b);
        let (mut up, mut down) = (Vec::new(), Vec::new());
        while from_a != from_b {
            if self.reaches[from_a].depth >= self.reaches[from_b].depth {
                let (link, parent) = self.reaches[from_a]
                    .arrival
                    .expect("only the root has no arrival");
                up.push(DirectedLink {
                    link,
                    forward: chain.links[link].to == parent,
                    plane: parent,
                });
                from_a = parent;
            } else {
                let (link, parent) = self.reaches[from_b]
                    .arrival
                    .expect("only the root has no arrival");
                down.push(DirectedLink {
                    link,
                    forward: chain.links[link].to == from_b,
                    plane: from_b,
                });
                from_b = parent;
            }
        }
        up.extend(down.into_iter().rev());
        Path {
            start: a,
            steps: up,
        }
    }
}

/// For each plane, its neighbours and the links to them, in the order of the links' contents.
fn neighbours(chain: &Chain) -> Vec<Vec<(usize, usize)>> {
    let mut neighbours = vec![Vec::new(); chain.n_planes];
    for &index in &chain.order {
        let link = &chain.links[index];
        neighbours[link.from].push((link.to, index));
        neighbours[link.to].push((link.from, index));
    }
    neighbours
}

/// Finds the canonical path from `root` to every plane connected with it, depth by depth.
fn grow(
    chain: &Chain,
    neighbours: &[Vec<(usize, usize)>],
    root: usize,
    reaches: &mut [Option<Reach>],
) {
    reaches[root] = Some(Reach {
        root,
        depth: 0,
        width: 0,
        position: 0,
        arrival: None,
    });
    let mut frontier = vec![root];
    while !frontier.is_empty() {
        let mut next = Vec::new();
        for &parent in &frontier {
            let before = reaches[parent].expect("the frontier has been reached");
            for &(plane, index) in &neighbours[parent] {
                let link = &chain.links[index];
                let found = Reach {
                    root,
                    depth: before.depth + 1,
                    width: before.width + link.width(),
                    position: before.position
                        + if link.to == plane {
                            link.nominal
                        } else {
                            -link.nominal
                        },
                    arrival: Some((index, parent)),
                };
                match &reaches[plane] {
                    None => next.push(plane),
                    Some(held) if is_better(&found, held, reaches) => {}
                    Some(_) => continue,
                }
                reaches[plane] = Some(found);
            }
        }
        frontier = next;
    }
}

/// Whether the new path comes before the held path.
/// At a full tie the held path stays, because links are
/// visited in the order of their contents.
fn is_better(found: &Reach, held: &Reach, reaches: &[Option<Reach>]) -> bool {
    if (found.depth, found.width) != (held.depth, held.width) {
        return (found.depth, found.width) < (held.depth, held.width);
    }
    planes_before(found, reaches) < planes_before(held, reaches)
}

/// The planes of a path from the root to the last but one.
fn planes_before(reach: &Reach, reaches: &[Option<Reach>]) -> Vec<usize> {
    let mut planes = Vec::with_capacity(reach.depth);
    let mut arrival = reach.arrival;
    while let Some((_, plane)) = arrival {
        planes.push(plane);
        arrival = reaches[plane]
            .expect("a plane on a path has been reached")
            .arrival;
    }
    planes.reverse();
    planes
}
