//! Ways across a gap: edges on which they begin and end, and bounds of all ways of one stretch.
//!
//! **What.** [`greatest_ratio`]: a bound of voltage over withstand voltage, sharp to second order in the length of the stretch
//! between straight edges and before the outside of an arc at one potential, to first order elsewhere.
//!
//! **Invariants.** No way of a stretch exceeds its bound; the search drops a stretch by nothing else.
//!
//! **Not here.** The search (`breakdown`).
//!
//! **Source.** `docs/theory/gap.md`.

use crate::outline::{Piece, Point};

/// An edge of the mesh on a curve of the region.
pub(super) struct Rim {
    pub curve_index: usize,
    pub piece: Piece,
    pub shares: [f64; 2],
    /// Potential at its beginning, its middle and its end.
    pub values: [[f64; 2]; 3],
    pub triangle: u32,
    /// Length along the curve, m.
    pub length: f64,
}

/// A curve on which ways end, with its rims in the order of their shares.
pub(super) struct Target {
    pub piece: Piece,
    pub rims: Vec<usize>,
    /// Least and greatest potential on it, real and imaginary part.
    pub box_v: [[f64; 2]; 2],
}

impl Rim {
    /// Potential at a share of the edge: a parabola through three values.
    pub fn value(&self, t: f64) -> [f64; 2] {
        let weights = [
            (1.0 - t) * (1.0 - 2.0 * t),
            4.0 * t * (1.0 - t),
            t * (2.0 * t - 1.0),
        ];
        [0, 1].map(|part| (0..3).map(|k| weights[k] * self.values[k][part]).sum())
    }

    /// Three values in whose triangle the potential of a stretch lies.
    pub fn controls(&self, range: [f64; 2]) -> [[f64; 2]; 3] {
        let [a, b] = range.map(|t| self.value(t));
        let middle = self.value(0.5 * (range[0] + range[1]));
        let control = [0, 1].map(|part| 2.0 * middle[part] - 0.5 * (a[part] + b[part]));
        [a, control, b]
    }

    /// Share of its curve at a share of the edge.
    pub fn share(&self, t: f64) -> f64 {
        self.shares[0] + t * (self.shares[1] - self.shares[0])
    }

    /// Share of the edge at a share of its curve.
    pub fn own(&self, share: f64) -> f64 {
        ((share - self.shares[0]) / (self.shares[1] - self.shares[0])).clamp(0.0, 1.0)
    }

    /// Least and greatest share of its curve.
    pub fn span(&self) -> [f64; 2] {
        let [a, b] = self.shares;
        [a.min(b), a.max(b)]
    }

    /// The place at a share of the edge.
    pub fn place(&self, t: f64) -> Point {
        self.piece.place(self.share(t))
    }
}

impl Target {
    /// Edges that have a share of the curve within a span.
    pub fn within<'b>(
        &'b self,
        rims: &'b [Rim],
        span: [f64; 2],
    ) -> impl Iterator<Item = usize> + 'b {
        let first = self
            .rims
            .partition_point(|&rim| rims[rim].span()[1] < span[0]);
        let later = self.rims[first..].iter().copied();
        later.take_while(move |&rim| rims[rim].span()[0] <= span[1])
    }

    /// Bound of the difference between potentials and any potential of this curve.
    pub fn differs_at_most(&self, from: [[f64; 2]; 3]) -> f64 {
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
    /// Greatest ratio of any way, none of which is shorter than a length, m; from `slower_from` on, m, what air withstands bends down.
    fn ratio(&self, least: f64, slower_from: f64, withstood: impl Fn(f64) -> f64) -> f64 {
        let (differs, [a, b]) = (self.differs, self.least);
        if a.min(b) < least.max(slower_from) {
            return differs[0].max(differs[1]) / withstood(a.min(b).max(least));
        }
        // A straight line over a curve that bends down is greatest at one of its ends.
        (differs[0] / withstood(a)).max(differs[1] / withstood(b))
    }

    /// Values at both ends, with the control of a parabola between them, whose lengths run evenly but for a sag, m.
    fn even([first, control, last]: [f64; 3], lengths: [f64; 2], sag: f64) -> Bound {
        // A parabola exceeds its chord by at most half of what its control does, in its middle.
        let more = (0.25 * (2.0 * control - first - last)).max(0.0);
        Bound {
            differs: [first + more, last + more],
            least: lengths.map(|length| length - sag),
        }
    }
}

/// Greatest ratio that any way of a stretch may have, with the places of its target nearest to its middle and to its ends.
///
/// No way is shorter than `least`, m; `half` is half the stretch's length, m; air withstands `withstood` over a length.
pub(super) fn greatest_ratio(
    rims: &[Rim],
    (rim, range): (&Rim, [f64; 2]),
    (target, on, ends): (&Target, f64, [(f64, f64); 2]),
    [least, half, slower_from]: [f64; 3],
    withstood: impl Fn(f64) -> f64,
) -> f64 {
    let ratio = |bound: &Bound| bound.ratio(least, slower_from, &withstood);
    if let Some(bounds) = opposite(rims, rim, target, range, ends) {
        return bounds.iter().map(ratio).fold(0.0, f64::max);
    }
    let bound = before_an_arc(rim, target, range, ends);
    ratio(&bound.unwrap_or_else(|| apart(rims, target, rim.controls(range), on, ends, half)))
}

/// Bounds for a straight stretch opposite straight edges, where no way ends at an end of the target: one for each edge.
///
/// The nearest place then moves evenly with the place on the stretch, and so does the length of the way.
/// The voltage along the way is a parabola before each edge: it lies within the triangle of its three controls.
/// `None` for other stretches.
fn opposite(
    rims: &[Rim],
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
    let edges = target.within(rims, [first.min(last), first.max(last)]);
    let bounds = edges.map(|other| {
        let other = &rims[other];
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
    rims: &[Rim],
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
    for other in target.within(rims, spread) {
        let rim = &rims[other];
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

/// Whether a share lies between the ends of a curve.
fn is_inside(share: f64) -> bool {
    share > 0.0 && share < 1.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gas::{Curve, breakdown_crest_v, slower_from_m};
    use crate::outline::Shape;
    use rand::{RngExt, SeedableRng};
    use rand_chacha::ChaCha8Rng;

    const PRESSURE: f64 = 101_325.0;
    const N_CASES: u64 = 3_000;
    const N_SAMPLES: usize = 200;

    fn withstood(length: f64) -> f64 {
        breakdown_crest_v(length, PRESSURE, Curve::LowerOfBoth)
    }

    fn rim(piece: Piece, shares: [f64; 2], values: [[f64; 2]; 3]) -> Rim {
        Rim {
            curve_index: 0,
            piece,
            shares,
            values,
            triangle: 0,
            length: piece.length() * (shares[1] - shares[0]).abs(),
        }
    }

    /// A target with random potentials that agree where its edges meet, or with one potential.
    fn target(
        random: &mut ChaCha8Rng,
        piece: Piece,
        held: Option<[f64; 2]>,
        n_rims: usize,
    ) -> (Target, Vec<Rim>) {
        let mut volts = || {
            [
                random.random_range(-1e3..1e3),
                random.random_range(-1e2..1e2),
            ]
        };
        let mut first = volts();
        let mut rims = Vec::new();
        for index in 0..n_rims {
            let shares = [index, index + 1].map(|at| at as f64 / n_rims as f64);
            let mut values = [first, volts(), volts()];
            first = values[2];
            if let Some(held) = held {
                values = [held; 3];
            }
            rims.push(rim(piece, shares, values));
        }
        let mut box_v = [[f64::INFINITY, f64::NEG_INFINITY]; 2];
        for value in rims.iter().flat_map(|rim| rim.controls([0.0, 1.0])) {
            for (bounds, part) in box_v.iter_mut().zip(value) {
                *bounds = [bounds[0].min(part), bounds[1].max(part)];
            }
        }
        let own = (0..n_rims).collect();
        let target = Target {
            piece,
            rims: own,
            box_v,
        };
        (target, rims)
    }

    /// Bound of a stretch, and the greatest ratio of many of its ways.
    fn bound_and_sampled(rims: &[Rim], from: &Rim, target: &Target, range: [f64; 2]) -> (f64, f64) {
        let half = 0.5 * (range[1] - range[0]) * from.length;
        let (on, distance) = target
            .piece
            .nearest(from.place(0.5 * (range[0] + range[1])));
        let ends = range.map(|t| target.piece.nearest(from.place(t)));
        let lengths = [(distance - half).max(0.0), half, slower_from_m(PRESSURE)];
        let ways = (target, on, ends);
        let bound = greatest_ratio(rims, (from, range), ways, lengths, withstood);
        let sampled = (0..=N_SAMPLES).map(|k| {
            let t = range[0] + (range[1] - range[0]) * k as f64 / N_SAMPLES as f64;
            let (on, distance) = target.piece.nearest(from.place(t));
            let other = target.within(rims, [on; 2]).next().map(|k| &rims[k]);
            let b = other.map_or([f64::NAN; 2], |other| other.value(other.own(on)));
            let a = from.value(t);
            (a[0] - b[0]).hypot(a[1] - b[1]) / withstood(distance)
        });
        (bound, sampled.fold(0.0, f64::max))
    }

    /// A stretch before a target, of the size of gaps, turned anyhow.
    fn case(seed: u64) -> (Rim, Target, Vec<Rim>, [f64; 2]) {
        let mut random = ChaCha8Rng::seed_from_u64(seed);
        let size = 10_f64.powf(random.random_range(-6.5..-2.5));
        let mut at = |r: f64, z: f64| {
            let (dr, dz) = (
                random.random_range(-1.0..1.0),
                random.random_range(-1.0..1.0),
            );
            Point::new(0.02 + size * (r + dr), size * (z + dz))
        };
        let (a, b, c, d) = (at(-3.0, -3.0), at(-3.0, 3.0), at(1.5, -6.0), at(1.5, 6.0));
        let arc = |from: Point, to: Point, far: f64| {
            let middle = from.towards(to, 0.5);
            // The centre on the right bisector.
            let center = Point::new(
                middle.r + far * (to.z - from.z),
                middle.z - far * (to.r - from.r),
            );
            Piece::new(from, to, Shape::Arc { center })
        };
        let line = |from: Point, to: Point| Piece::new(from, to, Shape::Line);
        let kind = seed % 6;
        let far = [0.6, -0.6][(seed / 6 % 2) as usize];
        let own = if kind == 5 {
            arc(a, b, far)
        } else {
            line(a, b)
        };
        let other = if (1..=3).contains(&kind) {
            arc(c, d, far)
        } else {
            line(c, d)
        };
        let held = (kind == 1 || kind == 2).then(|| {
            [
                random.random_range(-1e3..1e3),
                random.random_range(-1e2..1e2),
            ]
        });
        let n_rims = random.random_range(1..5);
        let (target, rims) = target(&mut random, other, held, n_rims);
        let mut volts = || {
            [
                random.random_range(-1e3..1e3),
                random.random_range(-1e2..1e2),
            ]
        };
        let values = [volts(), volts(), volts()];
        let low: f64 = random.random_range(0.0..0.9);
        let range = [
            low,
            low + (1.0 - low) * 10_f64.powf(random.random_range(-3.0..0.0)),
        ];
        (rim(own, [0.0, 1.0], values), target, rims, range)
    }

    #[test]
    fn no_way_of_a_stretch_exceeds_its_bound() {
        for seed in 0..N_CASES {
            let (from, target, rims, range) = case(seed);
            let (bound, sampled) = bound_and_sampled(&rims, &from, &target, range);
            assert!(
                sampled <= bound * (1.0 + 1e-9),
                "case {seed}: {sampled} above its bound {bound}"
            );
        }
    }

    #[test]
    fn a_narrow_wedge_may_be_worst_between_the_ends_of_a_stretch() {
        // 5 to 30 µm: what air withstands bends up there, and a voltage that rises evenly exceeds it between the ends.
        let at = |r: f64, z: f64| Point::new(r * 1e-3, z * 1e-3);
        let line = Piece::new(at(10.0, 0.0), at(10.0, 1.0), Shape::Line);
        let wedge = Piece::new(at(9.98, -1.0), at(10.055, 2.0), Shape::Line);
        let ends = [0.005e-3, 0.030e-3].map(withstood);
        let values = [ends[0], 0.5 * (ends[0] + ends[1]), ends[1]].map(|volts| [volts, 0.0]);
        let from = rim(line, [0.0, 1.0], values);
        let mut random = ChaCha8Rng::seed_from_u64(1);
        let (target, rims) = target(&mut random, wedge, Some([0.0; 2]), 1);
        let (bound, sampled) = bound_and_sampled(&rims, &from, &target, [0.0, 1.0]);
        assert!(sampled > 1.02 && bound >= sampled, "{bound} {sampled}");
    }

    #[test]
    fn a_bound_between_straight_edges_closes_in_with_the_square_of_the_stretch() {
        // Two lines at an angle, and a line before the outside of an arc at one potential.
        let at = |r: f64, z: f64| Point::new(r * 1e-3, z * 1e-3);
        let line = Piece::new(at(9.0, -1.0), at(9.2, 1.0), Shape::Line);
        let center = at(15.0, 0.0);
        let arc = Piece::new(at(12.0, -4.0), at(12.0, 4.0), Shape::Arc { center });
        let straight = Piece::new(at(11.0, -4.0), at(11.0, 4.0), Shape::Line);
        let values = [[900.0, 0.0], [1000.0, 50.0], [1050.0, 20.0]];
        let from = rim(line, [0.0, 1.0], values);
        for piece in [arc, straight] {
            let mut random = ChaCha8Rng::seed_from_u64(1);
            let (target, rims) = target(&mut random, piece, Some([0.0; 2]), 3);
            let excess = |size: f64| {
                let (bound, sampled) = bound_and_sampled(&rims, &from, &target, [0.5, 0.5 + size]);
                bound / sampled - 1.0
            };
            let (wide, narrow) = (excess(0.1), excess(0.01));
            assert!(wide < 0.01 && narrow < 0.03 * wide, "{wide} {narrow}");
        }
    }
}
