//! Divides curves into edges: by the wanted sizes, and at equal distances from corners with a small angle.
//!
//! ```text
//!              B2 ____           two curves that leave P at a small or no angle
//!         B1 __/                 are divided at the same distances from P,
//!       _/   |      |            so that their chords cannot cross,
//!     P------A1-----A2---        however near the curves lie together
//! ```

use super::size::Sizes;
use crate::outline::{Outline, Point};

/// Angle below which curves that leave a point are divided alike, rad.
const SMALL_ANGLE: f64 = 0.7;
/// Ratio of successive distances from such a corner.
const SHELL_RATIO: f64 = 1.6;
/// First distance from a corner, as a share of the radius.
const FIRST_RATIO: f64 = 0.3;

/// Division of a curve: the shares of its length at its divisions, from 0 to 1.
#[derive(Clone, Debug)]
pub(super) struct Division {
    pub shares: Vec<f64>,
    /// Edges before the first of these shares and after the second match edges of another curve.
    pub matched: [f64; 2],
}

impl Division {
    /// Whether the edge that begins at a position of `shares` matches an edge of another curve.
    pub fn is_matched(&self, position: usize) -> bool {
        self.shares[position + 1] <= self.matched[0] || self.shares[position] >= self.matched[1]
    }
}

/// Divides every curve of an outline.
pub(super) fn divide(outline: &Outline, sizes: &Sizes) -> Vec<Division> {
    let shells = shells(outline, sizes);
    (0..outline.curves.len())
        .map(|curve_index| divide_curve(outline, sizes, &shells, curve_index))
        .collect()
}

fn divide_curve(
    outline: &Outline,
    sizes: &Sizes,
    shells: &[Vec<f64>],
    curve_index: usize,
) -> Division {
    let curve = &outline.curves[curve_index];
    let ends = [&shells[curve.from], &shells[curve.to]];
    let reach = match (ends[0].is_empty(), ends[1].is_empty()) {
        (false, false) => 0.45,
        _ => 0.9,
    };
    let mut head = shares_at(outline, curve_index, ends[0], false, reach);
    let mut tail = shares_at(outline, curve_index, ends[1], true, reach);
    tail.reverse();
    let from = head.last().copied().unwrap_or(0.0);
    let to = tail.first().copied().unwrap_or(1.0);
    let between = even_shares(outline, sizes, curve_index, from, to);
    let mut shares = vec![0.0];
    shares.append(&mut head);
    shares.extend(between);
    shares.append(&mut tail);
    shares.push(1.0);
    Division {
        shares,
        matched: [from, to],
    }
}

/// Shares strictly between `from` and `to` that make edges of the wanted length.
fn even_shares(
    outline: &Outline,
    sizes: &Sizes,
    curve_index: usize,
    from: f64,
    to: f64,
) -> Vec<f64> {
    let length = outline.length(curve_index);
    let stretch = (to - from) * length;
    // Steps of half the size at their beginning are fine enough to miss no source of size.
    let mut sums = vec![(from, 0.0)];
    let mut share = from;
    let mut sum = 0.0;
    while share < to && sums.len() < 4000 {
        let size = sizes.at(outline.place(curve_index, share));
        let step = (0.5 * size / length).min((to - from) / 8.0).min(to - share);
        let middle = sizes.at(outline.place(curve_index, share + 0.5 * step));
        sum += step * length / middle;
        share = if to - share <= step * (1.0 + 1e-9) {
            to
        } else {
            share + step
        };
        sums.push((share, sum));
    }
    if stretch <= 0.0 {
        return Vec::new();
    }
    let n_edges = (sum - 0.2).ceil().max(1.0) as usize;
    let mut shares = Vec::with_capacity(n_edges);
    let mut position = 0;
    for edge in 1..n_edges {
        let goal = sum * edge as f64 / n_edges as f64;
        while sums[position + 1].1 < goal {
            position += 1;
        }
        let (a, b) = (sums[position], sums[position + 1]);
        shares.push(a.0 + (b.0 - a.0) * (goal - a.1) / (b.1 - a.1));
    }
    shares
}

/// Shares of a curve at given distances from one of its ends, in the order of the distances, up to `reach` of its length.
fn shares_at(
    outline: &Outline,
    curve_index: usize,
    distances: &[f64],
    from_end: bool,
    reach: f64,
) -> Vec<f64> {
    let curve = &outline.curves[curve_index];
    let length = outline.length(curve_index);
    let radius = curve.radius(outline.points[curve.from], outline.points[curve.to]);
    distances
        .iter()
        .map(|&distance| {
            if radius.is_finite() {
                2.0 * radius * (0.5 * distance / radius).min(1.0).asin() / length
            } else {
                distance / length
            }
        })
        .take_while(|&share| share <= reach)
        .map(|share| if from_end { 1.0 - share } else { share })
        .collect()
}

/// Distances from each point at which the curves that leave it are divided; empty if no two leave at a small angle.
fn shells(outline: &Outline, sizes: &Sizes) -> Vec<Vec<f64>> {
    let mut leaving: Vec<Vec<(usize, [f64; 2], f64)>> = vec![Vec::new(); outline.points.len()];
    for (curve_index, curve) in outline.curves.iter().enumerate() {
        let (from, to) = (outline.points[curve.from], outline.points[curve.to]);
        let bend = curve.turn(from, to).signum() / curve.radius(from, to);
        let (head, tail) = (curve.tangent(from, to, 0.0), curve.tangent(from, to, 1.0));
        leaving[curve.from].push((curve_index, head, bend));
        leaving[curve.to].push((curve_index, [-tail[0], -tail[1]], -bend));
    }
    leaving
        .iter()
        .enumerate()
        .map(|(point_index, curves)| {
            let place = outline.points[point_index];
            let mut reach: f64 = 0.0;
            let mut first = f64::INFINITY;
            for (position, a) in curves.iter().enumerate() {
                for b in &curves[position + 1..] {
                    let angle = (a.1[0] * b.1[1] - a.1[1] * b.1[0])
                        .atan2(a.1[0] * b.1[0] + a.1[1] * b.1[1])
                        .abs();
                    if angle < SMALL_ANGLE {
                        let pair = [a.0, b.0];
                        let span = reach_of(outline, sizes, place, pair, angle, a.2 - b.2);
                        reach = reach.max(span);
                        first = first.min(first_of(outline, sizes, place, pair));
                    }
                }
            }
            distances(sizes, place, first, reach)
        })
        .collect()
}

/// Distance from a corner up to which two curves are closer together than the wanted edge length.
fn reach_of(
    outline: &Outline,
    sizes: &Sizes,
    place: Point,
    pair: [usize; 2],
    angle: f64,
    bend: f64,
) -> f64 {
    let most = 0.9 * outline.length(pair[0]).min(outline.length(pair[1]));
    let size = sizes.at(place);
    let mut distance = 0.25 * size;
    while distance < most {
        let gap = angle * distance + 0.5 * bend.abs() * distance * distance;
        if gap > 0.7 * (size + 0.5 * distance).min(sizes.coarsest) {
            break;
        }
        distance *= 1.3;
    }
    distance.min(most)
}

fn first_of(outline: &Outline, sizes: &Sizes, place: Point, pair: [usize; 2]) -> f64 {
    pair.iter().fold(sizes.at(place), |first, &curve_index| {
        let curve = &outline.curves[curve_index];
        let radius = curve.radius(outline.points[curve.from], outline.points[curve.to]);
        first
            .min(FIRST_RATIO * radius)
            .min(FIRST_RATIO * outline.length(curve_index))
    })
}

fn distances(sizes: &Sizes, place: Point, first: f64, reach: f64) -> Vec<f64> {
    let mut distances = Vec::new();
    let mut distance = first;
    while distance <= reach {
        distances.push(distance);
        let step = ((SHELL_RATIO - 1.0) * distance).min(sizes.at(place) + 0.5 * distance);
        distance += step;
    }
    distances
}
