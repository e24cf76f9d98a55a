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
use crate::gas::{self, breakdown_crest_v};
use crate::outline::{Outline, Piece, Point};
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

/// An edge of the mesh on a curve of the region.
struct Rim {
    curve_index: usize,
    piece: Piece,
    shares: [f64; 2],
    /// Potential at its beginning, its middle and its end.
    values: [[f64; 2]; 3],
    triangle: u32,
    /// Length along the curve, m.
    length: f64,
}

/// A curve on which ways end, with its rims in the order of their shares.
struct Target {
    piece: Piece,
    rims: Vec<usize>,
    /// Least and greatest potential on it, real and imaginary part.
    box_v: [[f64; 2]; 2],
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

impl Rim {
    /// Potential at a share of the edge: a parabola through three values.
    fn value(&self, t: f64) -> [f64; 2] {
        let weights = [
            (1.0 - t) * (1.0 - 2.0 * t),
            4.0 * t * (1.0 - t),
            t * (2.0 * t - 1.0),
        ];
        [0, 1].map(|part| (0..3).map(|k| weights[k] * self.values[k][part]).sum())
    }

    /// Three values in whose triangle the potential of a stretch lies.
    fn controls(&self, range: [f64; 2]) -> [[f64; 2]; 3] {
        let [a, b] = range.map(|t| self.value(t));
        let middle = self.value(0.5 * (range[0] + range[1]));
        let control = [0, 1].map(|part| 2.0 * middle[part] - 0.5 * (a[part] + b[part]));
        [a, control, b]
    }

    /// Share of its curve at a share of the edge.
    fn share(&self, t: f64) -> f64 {
        self.shares[0] + t * (self.shares[1] - self.shares[0])
    }

    /// Share of the edge at a share of its curve.
    fn own(&self, share: f64) -> f64 {
        ((share - self.shares[0]) / (self.shares[1] - self.shares[0])).clamp(0.0, 1.0)
    }

    /// Least and greatest share of its curve.
    fn span(&self) -> [f64; 2] {
        let [a, b] = self.shares;
        [a.min(b), a.max(b)]
    }

    /// The place at a share of the edge.
    fn place(&self, t: f64) -> Point {
        self.piece.place(self.share(t))
    }
}

impl Target {
    /// Edges that have a share of the curve within a span.
    fn within<'b>(&'b self, rims: &'b [Rim], span: [f64; 2]) -> impl Iterator<Item = usize> + 'b {
        let first = self
            .rims
            .partition_point(|&rim| rims[rim].span()[1] < span[0]);
        let later = self.rims[first..].iter().copied();
        later.take_while(move |&rim| rims[rim].span()[0] <= span[1])
    }

    /// Bound of the difference between potentials and any potential of this curve.
    fn differs_at_most(&self, from: [[f64; 2]; 3]) -> f64 {
        let farthest = |value: f64, part: usize| {
            let [least, greatest] = self.box_v[part];
            (value - least).max(greatest - value)
        };
        let squares = from.map(|a| farthest(a[0], 0).powi(2) + farthest(a[1], 1).powi(2));
        squares.into_iter().fold(0.0, f64::max).sqrt()
    }
}

/// Bound of all ways of a stretch.
///
/// The voltage lies below the straight line between two values, V, and the length above the straight line between two lengths, m.
struct Bound {
    differs: [f64; 2],
    least: [f64; 2],
}

impl Bound {
    /// Values at both ends, with the control of a parabola between them, whose lengths run evenly but for a sag, m.
    fn even([first, control, last]: [f64; 3], lengths: [f64; 2], sag: f64) -> Bound {
        // A parabola exceeds its chord by at most a quarter of what its control does.
        let more = (0.25 * (2.0 * control - first - last)).max(0.0);
        Bound {
            differs: [first + more, last + more],
            least: lengths.map(|length| length - sag),
        }
    }
}

impl Board {
    /// Bounds for a straight stretch opposite straight edges, where no way ends at an end of the target: one for each edge.
    ///
    /// The nearest place then moves evenly with the place on the stretch, and so does the length of the way.
    /// The voltage along the way is a parabola before each edge: it lies within the triangle of its three controls.
    /// `None` for other stretches.
    fn opposite(
        &self,
        rim: &Rim,
        target: &Target,
        range: [f64; 2],
        ends: [(f64, f64); 2],
    ) -> Option<Vec<Bound>> {
        let [(first, from_m), (last, to_m)] = ends;
        let is_straight = rim.piece.is_straight() && target.piece.is_straight();
        if !is_straight || !is_inside(first) || !is_inside(last) || first == last {
            return None;
        }
        let edges = target.within(&self.rims, [first.min(last), first.max(last)]);
        let bounds = edges.map(|other| {
            let other = &self.rims[other];
            // The part of the stretch before this edge, from 0 to 1.
            let parts = other
                .span()
                .map(|share| ((share - first) / (last - first)).clamp(0.0, 1.0));
            let parts = [parts[0].min(parts[1]), parts[0].max(parts[1])];
            let voltage = |part: f64| {
                let a = rim.value(range[0] + part * (range[1] - range[0]));
                let b = other.value(other.own(first + part * (last - first)));
                [a[0] - b[0], a[1] - b[1]]
            };
            let outer = parts.map(voltage);
            let half_way = voltage(0.5 * (parts[0] + parts[1]));
            let control =
                [0, 1].map(|side| 2.0 * half_way[side] - 0.5 * (outer[0][side] + outer[1][side]));
            let sizes = [outer[0], control, outer[1]].map(|volts| volts[0].hypot(volts[1]));
            let lengths = parts.map(|part| from_m + part * (to_m - from_m));
            Bound::even(sizes, lengths, 0.0)
        });
        Some(bounds.collect())
    }

    /// Bound for a straight stretch before the outside of an arc at one potential.
    ///
    /// The length is the distance from the arc's centre less its radius: it lies below its chord by at most L²/8D,
    /// with the stretch's length L and the least distance D from the centre.
    /// `None` for other stretches.
    fn before_an_arc(
        &self,
        rim: &Rim,
        target: &Target,
        range: [f64; 2],
        ends: [(f64, f64); 2],
    ) -> Option<Bound> {
        let [real, imaginary] = target.box_v;
        let is_held = real[0] >= real[1] && imaginary[0] >= imaginary[1];
        let shares = ends.map(|end| end.0);
        if !rim.piece.is_straight() || !is_held || !shares.into_iter().all(is_inside) {
            return None;
        }
        let places = range.map(|t| rim.place(t));
        let radius = target.piece.radius_from_outside(places[0])?;
        target.piece.radius_from_outside(places[1])?;
        let long = places[0].distance(places[1]);
        let lengths = ends.map(|end| end.1);
        let least = (lengths[0].min(lengths[1]) - 0.5 * long).max(0.0);
        let sag = long * long / (8.0 * (radius + least));
        let sizes = rim
            .controls(range)
            .map(|a| (a[0] - real[0]).hypot(a[1] - imaginary[0]));
        Some(Bound::even(sizes, lengths, sag))
    }

    /// Bound for any stretch and target: the potentials of the stretch against all potentials between the ends of its ways.
    ///
    /// Both potentials lie in convex hulls, and the modulus is convex: it is greatest between corners of both.
    /// No length changes faster than the place on the stretch.
    fn apart(
        &self,
        target: &Target,
        from: [[f64; 2]; 3],
        on: f64,
        ends: [(f64, f64); 2],
        half: f64,
    ) -> Bound {
        let shares = ends.map(|end| end.0);
        let spread = [
            on.min(shares[0]).min(shares[1]),
            on.max(shares[0]).max(shares[1]),
        ];
        let mut most: f64 = 0.0;
        for other in target.within(&self.rims, spread) {
            let rim = &self.rims[other];
            for b in rim.controls(spread.map(|share| rim.own(share))) {
                for a in from {
                    most = most.max((a[0] - b[0]).powi(2) + (a[1] - b[1]).powi(2));
                }
            }
        }
        Bound {
            differs: [most.sqrt(); 2],
            least: [0.5 * (ends[0].1 + ends[1].1) - half; 2],
        }
    }
}

/// Whether a share lies between the ends of a curve.
fn is_inside(share: f64) -> bool {
    share > 0.0 && share < 1.0
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
        let bounds = board
            .opposite(rim, target, stretch.range, ends)
            .unwrap_or_else(|| {
                let bound = board.before_an_arc(rim, target, stretch.range, ends);
                vec![bound.unwrap_or_else(|| board.apart(target, from, on, ends, half))]
            });
        let mosts = bounds.iter().map(|bound| self.most(bound, least));
        stretch.most = mosts.fold(0.0, f64::max);
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

    /// Greatest ratio of any way within a bound, none of which is shorter than a length, m.
    fn most(&self, bound: &Bound, least: f64) -> f64 {
        let [a, b] = bound.least.map(|length| length.max(least));
        let differs = bound.differs;
        if a.min(b) < gas::slower_from_m(self.pressure_pa) {
            return differs[0].max(differs[1]) / self.withstood(a.min(b));
        }
        // A straight line over a curve that bends down is greatest at one of its ends.
        (differs[0] / self.withstood(a)).max(differs[1] / self.withstood(b))
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
