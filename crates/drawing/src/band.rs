//! Band: the strength of the field at the corners of a mesh, and the outlines of its bands.

use crate::colour::BANDS;
use crate::frame::Frame;
use crate::level::finely_up;
use crate::trace::{Edges, Spot};
use jointwright_numerics::mesh::Mesh;
use jointwright_numerics::outline::Point;
use std::collections::BTreeMap;

/// Share of the area on which the field may be stronger than the beginning of the last band.
const BEYOND_SHARE: f64 = 0.002;

/// Strength of the field at the corners of each triangle.
#[derive(Debug)]
pub(crate) struct Strength {
    /// |E| at the three corners of each triangle, V/m.
    corners: Vec<[f64; 3]>,
    /// Corners of each triangle in the picture.
    spots: Vec<[Spot; 3]>,
    /// Area of each triangle, m².
    areas: Vec<f64>,
}

/// Derivatives of the six shape functions by the shares λ1 and λ2 at a place of the triangle.
///
/// Order: corners 0, 1, 2, then the middles of 0–1, 1–2 and 2–0.
fn slopes([a, b]: [f64; 2]) -> [[f64; 2]; 6] {
    let c = 1.0 - a - b;
    [
        [1.0 - 4.0 * c, 1.0 - 4.0 * c],
        [4.0 * a - 1.0, 0.0],
        [0.0, 4.0 * b - 1.0],
        [4.0 * (c - a), -4.0 * a],
        [4.0 * b, 4.0 * a],
        [-4.0 * b, 4.0 * (c - b)],
    ]
}

/// |E| at a place of a triangle, V/m.
fn strength(nodes: &[Point; 6], potential: &[[f64; 2]; 6], place: [f64; 2]) -> f64 {
    let slopes = slopes(place);
    // The map from shares to (r, z), and its inverse applied to the slopes of the potential.
    let mut map = [[0.0; 2]; 2];
    let mut slope = [[0.0; 2]; 2];
    for node in 0..6 {
        for by in 0..2 {
            map[by][0] += slopes[node][by] * nodes[node].r;
            map[by][1] += slopes[node][by] * nodes[node].z;
            slope[0][by] += slopes[node][by] * potential[node][0];
            slope[1][by] += slopes[node][by] * potential[node][1];
        }
    }
    let area = map[0][0] * map[1][1] - map[0][1] * map[1][0];
    let squared = slope.iter().map(|[by_a, by_b]| {
        let r = (by_a * map[1][1] - by_b * map[0][1]) / area;
        let z = (by_b * map[0][0] - by_a * map[1][0]) / area;
        r * r + z * z
    });
    squared.sum::<f64>().sqrt()
}

impl Strength {
    /// Strength at the corners of a mesh, averaged over the triangles of one region that meet at a corner.
    pub(crate) fn new(mesh: &Mesh, potential: &[[f64; 2]], frame: &Frame) -> Self {
        let mut corners = Vec::new();
        let mut spots = Vec::new();
        let mut areas = Vec::new();
        let mut even: BTreeMap<(u32, u32), (f64, f64)> = BTreeMap::new();
        let mut keys = Vec::new();
        for (triangle, region) in mesh.triangles.iter().zip(&mesh.region) {
            let Some((nodes, volts)) = gathered(mesh, potential, triangle) else {
                continue;
            };
            let mut own = [0.0; 3];
            for (corner, place) in [[0.0, 0.0], [1.0, 0.0], [0.0, 1.0]].into_iter().enumerate() {
                own[corner] = strength(&nodes, &volts, place);
                let (sum, n) = even.entry((*region, triangle[corner])).or_default();
                if own[corner].is_finite() {
                    *sum += own[corner];
                    *n += 1.0;
                }
            }
            keys.push([0, 1, 2].map(|corner| (*region, triangle[corner])));
            spots.push([0, 1, 2].map(|corner| frame.spot(nodes[corner])));
            let side = |to: usize| [nodes[to].r - nodes[0].r, nodes[to].z - nodes[0].z];
            let (one, other) = (side(1), side(2));
            areas.push(0.5 * (one[0] * other[1] - one[1] * other[0]).abs());
        }
        for key in keys {
            corners.push(key.map(|key| {
                let (sum, n) = even.get(&key).copied().unwrap_or_default();
                if n > 0.0 { sum / n } else { 0.0 }
            }));
        }
        Self {
            corners,
            spots,
            areas,
        }
    }

    /// Strength that is exceeded on no more than a share of the area, V/m.
    pub(crate) fn passed_on(&self, share: f64) -> f64 {
        let mut means: Vec<(f64, f64)> = self
            .corners
            .iter()
            .zip(&self.areas)
            .map(|(corners, area)| (corners.iter().sum::<f64>() / 3.0, *area))
            .collect();
        means.sort_by(|a, b| b.0.total_cmp(&a.0));
        let whole: f64 = self.areas.iter().sum();
        let mut area = 0.0;
        for (mean, part) in &means {
            area += part;
            if area >= share * whole {
                return *mean;
            }
        }
        0.0
    }

    /// Step of the bands, V/m.
    pub(crate) fn step(&self) -> f64 {
        finely_up(self.passed_on(BEYOND_SHARE) / (BANDS.len() as f64 - 1.0))
    }

    /// Outlines of the part at or above a level; the whole section if there is no level.
    pub(crate) fn above(&self, level: Option<f64>) -> Vec<Vec<Spot>> {
        let mut edges = Edges::default();
        for (corners, spots) in self.corners.iter().zip(&self.spots) {
            let part = match level {
                None => spots.to_vec(),
                Some(level) => cut(corners, spots, level),
            };
            for at in 0..part.len() {
                edges.add(part[at], part[(at + 1) % part.len()]);
            }
        }
        edges.into_loops()
    }
}

fn gathered(
    mesh: &Mesh,
    potential: &[[f64; 2]],
    triangle: &[u32; 6],
) -> Option<([Point; 6], [[f64; 2]; 6])> {
    let mut nodes = [Point::default(); 6];
    let mut volts = [[0.0; 2]; 6];
    for at in 0..6 {
        let node = triangle[at] as usize;
        nodes[at] = *mesh.nodes.get(node)?;
        volts[at] = *potential.get(node)?;
    }
    Some((nodes, volts))
}

/// The part of a triangle at or above a level.
fn cut(corners: &[f64; 3], spots: &[Spot; 3], level: f64) -> Vec<Spot> {
    let mut part = Vec::new();
    for at in 0..3 {
        let next = (at + 1) % 3;
        if corners[at] >= level {
            part.push(spots[at]);
        }
        if (corners[at] >= level) != (corners[next] >= level) {
            part.push(crossing(
                [corners[at], corners[next]],
                [spots[at], spots[next]],
                level,
            ));
        }
    }
    part
}

/// Point at which a level is crossed between two corners; the order of the corners does not matter.
pub(crate) fn crossing(values: [f64; 2], spots: [Spot; 2], level: f64) -> Spot {
    let (values, spots) = if spots[0] <= spots[1] {
        (values, spots)
    } else {
        ([values[1], values[0]], [spots[1], spots[0]])
    };
    let share = ((level - values[0]) / (values[1] - values[0])).clamp(0.0, 1.0);
    [0, 1].map(|axis| {
        let (from, to) = (f64::from(spots[0][axis]), f64::from(spots[1][axis]));
        (from + share * (to - from)).round() as i32
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_field_of_a_quadratic_potential_is_its_slope() {
        let corners = [
            Point::new(1.0, 2.0),
            Point::new(3.0, 2.5),
            Point::new(1.5, 4.0),
        ];
        let middle = |a: usize, b: usize| corners[a].towards(corners[b], 0.5);
        let nodes = [
            corners[0],
            corners[1],
            corners[2],
            middle(0, 1),
            middle(1, 2),
            middle(2, 0),
        ];
        // φ = r² − 3 r z, with gradient (2 r − 3 z, −3 r).
        let potential = nodes.map(|p| [p.r * p.r - 3.0 * p.r * p.z, 0.0]);
        for (place, at) in [
            ([0.0, 0.0], 0),
            ([1.0, 0.0], 1),
            ([0.0, 1.0], 2),
            ([0.5, 0.5], 4),
        ] {
            let p = nodes[at];
            let expected = (2.0 * p.r - 3.0 * p.z).hypot(3.0 * p.r);
            assert!((strength(&nodes, &potential, place) - expected).abs() < 1e-12);
        }
    }

    #[test]
    fn a_triangle_is_cut_at_the_level() {
        let spots = [[0, 0], [100, 0], [0, 100]];
        assert_eq!(
            cut(&[0.0, 1.0, 0.0], &spots, 0.5),
            vec![[50, 0], [100, 0], [50, 50]]
        );
        assert_eq!(cut(&[1.0, 1.0, 1.0], &spots, 0.5), spots.to_vec());
        assert!(cut(&[0.0, 0.1, 0.2], &spots, 0.5).is_empty());
    }
}
