//! Breakdown of air across a gap: the shortest straight ways between the rims of a region.
//!
//! ```text
//!        -----P-------     a way runs from a place P on one group of curves to the nearest place Q of another;
//!             |            of length d it carries |φ(P) − φ(Q)|, and air withstands U(d);
//!        -----Q-------     wanted is the largest |φ(P) − φ(Q)| / U(d) of all P
//! ```
//!
//! **What.** [`Search::greatest`]: branch and bound over stretches of the curves on which ways begin.
//! No way from a stretch is shorter than the distance to the target curve, and no way carries more voltage than the greatest difference of the potentials
//! at both ends.
//! Since U rises with d, this bounds all ways of the stretch.
//! A stretch whose bound exceeds the best way found is halved, until no bound exceeds it by more than [`SEARCH_RATIO`].
//! The search therefore misses nothing between samples, and its error is known.
//!
//! **Why separate.** `peak` searches for a field within one triangle; here two distant places belong together.
//!
//! **Invariants.** Potentials come from the mesh, as parabolas along its edges; places lie on the outline.
//!
//! **Not here.** Ways along a rim or aslant, fields that vary along a way, ways round a corner.
//!
//! **Source.** `docs/theory/gap.md`.

use super::solution::{NONE, Solution};
use super::ways::{Rim, Target, greatest_ratio};
use crate::gas::{self, breakdown_crest_v};
use crate::outline::{Outline, Point};
use std::cmp::Ordering;
use std::collections::BinaryHeap;

/// Greatest shortfall of the maximum found, as a share of the true maximum.
const SEARCH_RATIO: f64 = 1e-4;
/// Greatest number of halved stretches; stretches still open then count as error.
const HALVED_MOST: usize = 20_000;
/// A place is nearest if no other is nearer by more than this share.
const NEAREST_RATIO: f64 = 1e-9;
/// Share of the greatest voltage ratio from which ways are rivals: their triangles are examined too.
const RIVAL_RATIO: f64 = 0.9;
const RIVALS_MOST: usize = 12;

/// The way nearest to breakdown.
#[derive(Clone, Debug, Default)]
pub(super) struct Nearest {
    /// Voltage along it, divided by the voltage that the air withstands.
    pub value: f64,
    /// Both ends; `None` if there is no voltage at all.
    pub ends: Option<[Point; 2]>,
    /// Triangles of the nearest way and of its rivals, each with the greatest ratio that its way may have.
    pub seen: Vec<(u32, f64)>,
    /// Greatest possible excess of a way between the examined ones.
    pub search_error: f64,
}

/// Searches for the way nearest to breakdown in one solution.
pub(super) struct Search<'s, 'm> {
    pub outline: &'s Outline,
    pub solution: &'s mut Solution<'m>,
    pub region_index: usize,
    pub curve: gas::Curve,
    pub pressure_pa: f64,
    /// Whether a tag belongs to a conductor, whose potential has no error of its own.
    pub is_held: &'s dyn Fn(&str) -> bool,
}

/// A stretch of a rim, the curve on which its ways end, and an upper bound of their ratios.
#[derive(Clone, Copy)]
struct Stretch {
    rim: usize,
    range: [f64; 2],
    group: usize,
    target: usize,
    most: f64,
}

impl PartialEq for Stretch {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}
impl Eq for Stretch {}
impl PartialOrd for Stretch {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}
impl Ord for Stretch {
    fn cmp(&self, other: &Self) -> Ordering {
        self.most.total_cmp(&other.most)
    }
}

/// A way that has been examined.
#[derive(Clone, Copy)]
struct Way {
    value: f64,
    ends: [Point; 2],
    /// The edges that contain its ends.
    rims: [usize; 2],
}

/// State of the search: edges, the groups of curves on which ways end, and the ways found so far.
struct Board {
    rims: Vec<Rim>,
    groups: Vec<Vec<Target>>,
    best: Way,
    /// The best way from each edge.
    rivals: Vec<f64>,
    rival_ways: Vec<Option<Way>>,
    open: BinaryHeap<Stretch>,
}

impl Search<'_, '_> {
    /// Finds the greatest ratio of voltage to withstand voltage, over all ways from the curves of a group's first tags to the nearest place on those of its second.
    pub fn greatest(&mut self, ways: &[[Vec<String>; 2]]) -> Nearest {
        let mut board = self.board(ways);
        for (group, [from, _]) in ways.iter().enumerate() {
            for rim in 0..board.rims.len() {
                let tag = &self.outline.curves[board.rims[rim].curve_index].tag;
                if !from.contains(tag) {
                    continue;
                }
                for target in 0..board.groups[group].len() {
                    let whole = Stretch {
                        rim,
                        range: [0.0, 1.0],
                        group,
                        target,
                        most: f64::INFINITY,
                    };
                    self.take(&mut board, whole);
                }
            }
        }
        let mut left_open = 0.0;
        let mut n_halved = 0;
        while let Some(stretch) = board.open.pop() {
            if stretch.most <= board.best.value * (1.0 + SEARCH_RATIO) {
                break;
            }
            if n_halved >= HALVED_MOST {
                left_open = stretch.most - board.best.value;
                break;
            }
            n_halved += 1;
            let middle = 0.5 * (stretch.range[0] + stretch.range[1]);
            for range in [[stretch.range[0], middle], [middle, stretch.range[1]]] {
                self.take(&mut board, Stretch { range, ..stretch });
            }
        }
        self.nearest(board, left_open)
    }

    /// Examines the way from the middle of a stretch, and keeps the stretch if another of its ways may have a greater ratio.
    fn take(&self, board: &mut Board, mut stretch: Stretch) {
        let rim = &board.rims[stretch.rim];
        let share = stretch.range[1] - stretch.range[0];
        let half = 0.5 * share * rim.length;
        let middle_t = 0.5 * (stretch.range[0] + stretch.range[1]);
        let group = &board.groups[stretch.group];
        let target = &group[stretch.target];
        let middle = rim.place(middle_t);
        let (on, distance) = target.piece.nearest(middle);
        let others = group.iter().map(|other| other.piece.nearest(middle).1);
        let nearest = others.fold(f64::INFINITY, f64::min);
        if distance - nearest > 2.0 * half {
            // This curve is not the nearest from any place on this stretch.
            return;
        }
        if distance <= nearest * (1.0 + NEAREST_RATIO) {
            self.look(board, &stretch, middle_t, on);
        }
        let (rim, target) = (
            &board.rims[stretch.rim],
            &board.groups[stretch.group][stretch.target],
        );
        let enough = board.best.value * (1.0 + SEARCH_RATIO);
        let from = rim.controls(stretch.range);
        let least = (distance - half).max(0.0);
        if target.differs_at_most(from) <= enough * self.withstood(least) {
            return;
        }
        let ends = stretch.range.map(|t| target.piece.nearest(rim.place(t)));
        stretch.most = greatest_ratio(
            &board.rims,
            (rim, stretch.range),
            (target, on, ends),
            [least, half, gas::slower_from_m(self.pressure_pa)],
            |length| self.withstood(length),
        );
        if stretch.most > enough {
            board.open.push(stretch);
        }
    }

    /// Examines the way from a place of a stretch to a share of its target.
    fn look(&self, board: &mut Board, stretch: &Stretch, t: f64, on: f64) {
        let target = &board.groups[stretch.group][stretch.target];
        let Some(other) = target.within(&board.rims, [on; 2]).next() else {
            return;
        };
        let (from, to) = (&board.rims[stretch.rim], &board.rims[other]);
        let (a, b) = (from.value(t), to.value(to.own(on)));
        let differs = (a[0] - b[0]).hypot(a[1] - b[1]);
        if differs <= board.rivals[stretch.rim] * gas::LEAST_V {
            return;
        }
        let ends = [from.place(t), target.piece.place(on)];
        let value = differs / self.withstood(ends[0].distance(ends[1]));
        let way = Way {
            value,
            ends,
            rims: [stretch.rim, other],
        };
        if value > board.rivals[stretch.rim] {
            board.rivals[stretch.rim] = value;
            board.rival_ways[stretch.rim] = Some(way);
        }
        if value > board.best.value {
            board.best = way;
        }
    }

    fn withstood(&self, length: f64) -> f64 {
        breakdown_crest_v(length, self.pressure_pa, self.curve)
    }

    /// The edges of the region's curves, and the curves of each group on which ways end.
    fn board(&self, ways: &[[Vec<String>; 2]]) -> Board {
        let mesh = self.solution.mesh;
        let beside = &self.solution.neighbours.beside;
        let of = |rim: &crate::mesh::Rim| -> Option<Rim> {
            let sides = beside[rim.nodes[2] as usize - mesh.n_corners];
            let triangle = sides.into_iter().find(|&side| {
                side != NONE && mesh.region[side as usize] == self.region_index as u32
            })?;
            let [first, last, middle] = rim.nodes;
            let curve_index = rim.curve_index as usize;
            let piece = self.outline.piece(curve_index)?;
            Some(Rim {
                curve_index,
                piece,
                shares: rim.shares,
                values: [first, middle, last].map(|node| self.solution.potential[node as usize]),
                triangle,
                length: piece.length() * (rim.shares[1] - rim.shares[0]).abs(),
            })
        };
        let rims: Vec<Rim> = mesh.rims.iter().filter_map(of).collect();
        let target = |curve_index: usize| -> Option<Target> {
            let mut own: Vec<usize> = (0..rims.len())
                .filter(|&rim| rims[rim].curve_index == curve_index)
                .collect();
            own.sort_by(|&a, &b| rims[a].span()[0].total_cmp(&rims[b].span()[0]));
            let piece = rims[*own.first()?].piece;
            let mut box_v = [[f64::INFINITY, f64::NEG_INFINITY]; 2];
            for value in own.iter().flat_map(|&rim| rims[rim].controls([0.0, 1.0])) {
                for (bounds, part) in box_v.iter_mut().zip(value) {
                    *bounds = [bounds[0].min(part), bounds[1].max(part)];
                }
            }
            Some(Target {
                piece,
                rims: own,
                box_v,
            })
        };
        let groups = ways.iter().map(|[_, to]| {
            let curves = self.outline.curves.iter().enumerate();
            let named = curves.filter(|(_, curve)| to.contains(&curve.tag));
            named.filter_map(|(index, _)| target(index)).collect()
        });
        Board {
            groups: groups.collect(),
            best: Way {
                value: 0.0,
                ends: [Point::new(0.0, 0.0); 2],
                rims: [0; 2],
            },
            rivals: vec![0.0; rims.len()],
            rival_ways: vec![None; rims.len()],
            open: BinaryHeap::new(),
            rims,
        }
    }

    fn nearest(&mut self, board: Board, left_open: f64) -> Nearest {
        let best = board.best;
        if best.value <= 0.0 {
            return Nearest::default();
        }
        let mut rivals: Vec<Way> = board.rival_ways.into_iter().flatten().collect();
        rivals.retain(|rival| rival.value >= RIVAL_RATIO * best.value);
        rivals.sort_by(|a, b| b.value.total_cmp(&a.value));
        rivals.truncate(RIVALS_MOST);
        let mut seen = Vec::new();
        for way in rivals {
            let withstood = self.withstood(way.ends[0].distance(way.ends[1]));
            let mut error = 0.0;
            let mut triangles = Vec::new();
            for (end, rim) in way.ends.into_iter().zip(way.rims) {
                let rim = &board.rims[rim];
                if (self.is_held)(&self.outline.curves[rim.curve_index].tag) {
                    continue;
                }
                error += self.solution.potential_error(rim.triangle, end) / withstood;
                triangles.push(rim.triangle);
            }
            let most = way.value + error;
            seen.extend(triangles.into_iter().map(|triangle| (triangle, most)));
        }
        Nearest {
            value: best.value,
            ends: Some(best.ends),
            seen,
            search_error: left_open.max(SEARCH_RATIO * best.value),
        }
    }
}
