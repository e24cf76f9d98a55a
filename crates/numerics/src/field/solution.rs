//! A solved potential on a mesh, with its values at places.

use super::recovery::{Recovery, Rings, Slope};
use crate::fem::triangle;
use crate::mesh::Mesh;
use crate::outline::Point;

/// Index for "no triangle".
pub(super) const NONE: u32 = u32::MAX;
/// Distance outside a triangle, as a share of its height, up to which a place still counts as inside.
const INSIDE_RATIO: f64 = 1e-7;
/// Distance inside a triangle at which its own slope is taken, as a share of the way to its centroid.
const INWARD_RATIO: f64 = 0.2;
/// Error of a triangle's potential, as a share of its size times the error of its slope.
const POTENTIAL_RATIO: f64 = 0.3;
/// The three points at which the slopes of a triangle are taken, in area coordinates.
const SAMPLES: [[f64; 3]; 3] = [
    [2.0 / 3.0, 1.0 / 6.0, 1.0 / 6.0],
    [1.0 / 6.0, 2.0 / 3.0, 1.0 / 6.0],
    [1.0 / 6.0, 1.0 / 6.0, 2.0 / 3.0],
];

/// Neighbourhood of a mesh, independent of the potential.
#[derive(Clone, Debug)]
pub(super) struct Neighbours {
    pub rings: Rings,
    /// Triangles on the two sides of an edge, by the number of its mid-node less the number of corners.
    pub beside: Vec<[u32; 2]>,
    /// Least and greatest r, least and greatest z of the places that may lie in a triangle, m.
    pub boxes: Vec<[f64; 4]>,
}

impl Neighbours {
    pub fn new(mesh: &Mesh) -> Self {
        let mut beside = vec![[NONE; 2]; mesh.nodes.len() - mesh.n_corners];
        for (index, triangle) in mesh.triangles.iter().enumerate() {
            for &middle in &triangle[3..] {
                let pair = &mut beside[middle as usize - mesh.n_corners];
                pair[usize::from(pair[0] != NONE)] = index as u32;
            }
        }
        let mut neighbours = Self {
            rings: Rings::new(mesh),
            beside,
            boxes: Vec::new(),
        };
        neighbours.measure(mesh);
        neighbours
    }

    /// Recomputes the boxes of the triangles after nodes were moved.
    pub fn measure(&mut self, mesh: &Mesh) {
        self.boxes = mesh
            .triangles
            .iter()
            .map(|triangle| bounds(&triangle.map(|node| mesh.nodes[node as usize])))
            .collect();
    }
}

/// A solved potential.
pub(super) struct Solution<'m> {
    pub mesh: &'m Mesh,
    pub neighbours: &'m Neighbours,
    pub potential: &'m [[f64; 2]],
    /// Slopes of the triangles themselves at their three sample points.
    pub raw: Vec<[Slope; 3]>,
    /// Slopes at the corners of each triangle, averaged over the triangles of its region about the corner.
    pub averaged: Vec<[Slope; 3]>,
    pub recovery: Recovery<'m>,
}

impl<'m> Solution<'m> {
    pub fn new(
        mesh: &'m Mesh,
        neighbours: &'m Neighbours,
        potential: &'m [[f64; 2]],
        n_regions: usize,
    ) -> Self {
        let raw: Vec<[Slope; 3]> = mesh
            .triangles
            .iter()
            .map(|nodes| raw_slopes(mesh, potential, nodes))
            .collect();
        let averaged = averages(mesh, &raw, n_regions);
        let recovery = Recovery::new(mesh, &neighbours.rings, &neighbours.beside, potential);
        Self {
            mesh,
            neighbours,
            potential,
            raw,
            averaged,
            recovery,
        }
    }

    /// Triangles that contain a place, in the order of the mesh; if there is none, the nearest triangle, so that rounding on a curved rim loses no place.
    pub fn holders(&self, at: Point, region: Option<usize>) -> Vec<u32> {
        let mut holders = Vec::new();
        let mut nearest = (f64::NEG_INFINITY, NONE);
        for (index, triangle) in self.mesh.triangles.iter().enumerate() {
            if region.is_some_and(|region| self.mesh.region[index] != region as u32) {
                continue;
            }
            let [r_least, r_most, z_least, z_most] = self.neighbours.boxes[index];
            if at.r < r_least || at.r > r_most || at.z < z_least || at.z > z_most {
                continue;
            }
            let nodes = triangle.map(|node| self.mesh.nodes[node as usize]);
            let Some([x, y]) = triangle::reference_place(&nodes, at) else {
                continue;
            };
            let least = x.min(y).min(1.0 - x - y);
            if least >= -INSIDE_RATIO {
                holders.push(index as u32);
            } else if least > nearest.0 {
                nearest = (least, index as u32);
            }
        }
        if holders.is_empty() && nearest.0 > -0.3 {
            holders.push(nearest.1);
        }
        holders
    }

    /// Potential at a place in a triangle.
    pub fn potential_at(&self, triangle: u32, at: Point) -> [f64; 2] {
        let numbers = self.mesh.triangles[triangle as usize];
        let nodes = numbers.map(|node| self.mesh.nodes[node as usize]);
        let place = triangle::reference_place(&nodes, at).unwrap_or([1.0 / 3.0, 1.0 / 3.0]);
        let shapes = triangle::shapes(place);
        let mut value = [0.0; 2];
        for (shape, node) in shapes.iter().zip(numbers) {
            for part in 0..2 {
                value[part] += shape * self.potential[node as usize][part];
            }
        }
        value
    }

    /// Distance of the recovered slope near a place in a triangle from the triangle's own slope, V/m.
    ///
    /// It is taken slightly inside, because at a corner with a small angle a triangle's own slope means nothing.
    pub fn gap(&mut self, triangle: u32, at: Point) -> f64 {
        let numbers = self.mesh.triangles[triangle as usize];
        let nodes = numbers.map(|node| self.mesh.nodes[node as usize]);
        let Some([x, y]) = triangle::reference_place(&nodes, at) else {
            return modulus(self.recovery.slope(triangle, at));
        };
        let inward = |share: f64| share + INWARD_RATIO * (1.0 / 3.0 - share);
        let mapping = triangle::mapping(&nodes, [inward(x), inward(y)]);
        let mut gap = self.recovery.slope(triangle, mapping.point);
        for (gradient, node) in mapping.gradients.iter().zip(numbers) {
            for axis in 0..2 {
                for part in 0..2 {
                    gap[axis][part] -= gradient[axis] * self.potential[node as usize][part];
                }
            }
        }
        modulus(gap)
    }

    /// Error of the potential at a place in a triangle, from the slopes there, V.
    pub fn potential_error(&mut self, triangle: u32, at: Point) -> f64 {
        POTENTIAL_RATIO * self.size(triangle) * self.gap(triangle, at)
    }

    /// Longest side of a triangle, m.
    fn size(&self, triangle: u32) -> f64 {
        let numbers = self.mesh.triangles[triangle as usize];
        let [a, b, c] = [0, 1, 2].map(|k| self.mesh.nodes[numbers[k] as usize]);
        a.distance(b).max(b.distance(c)).max(c.distance(a))
    }

    /// Largest modulus of the averaged slopes at a triangle's corners: quick, and accurate enough for a choice.
    pub fn quick(&self, triangle: u32) -> f64 {
        self.averaged[triangle as usize]
            .iter()
            .map(|slope| modulus(*slope))
            .fold(0.0, f64::max)
    }
}

/// sqrt(|E_r|² + |E_z|²).
pub(super) fn modulus(slope: Slope) -> f64 {
    slope
        .iter()
        .flatten()
        .map(|value| value * value)
        .sum::<f64>()
        .sqrt()
}

/// Box of a triangle with a small margin.
fn bounds(nodes: &[Point; 6]) -> [f64; 4] {
    let [mut low, mut high] = [nodes[0]; 2];
    for node in nodes {
        low = Point::new(low.r.min(node.r), low.z.min(node.z));
        high = Point::new(high.r.max(node.r), high.z.max(node.z));
    }
    let room = 0.05 * (high.r - low.r).max(high.z - low.z);
    [low.r - room, high.r + room, low.z - room, high.z + room]
}

fn raw_slopes(mesh: &Mesh, potential: &[[f64; 2]], numbers: &[u32; 6]) -> [Slope; 3] {
    let nodes = numbers.map(|node| mesh.nodes[node as usize]);
    let values = numbers.map(|node| potential[node as usize]);
    SAMPLES.map(|[_, x, y]| {
        let gradients = triangle::mapping(&nodes, [x, y]).gradients;
        let mut slope = [[0.0; 2]; 2];
        for (gradient, value) in gradients.iter().zip(values) {
            for axis in 0..2 {
                for part in 0..2 {
                    slope[axis][part] += gradient[axis] * value[part];
                }
            }
        }
        slope
    })
}

/// Carries slopes from the sample points to the corners; exact where the slope is linear.
fn at_corners(raw: &[Slope; 3]) -> [Slope; 3] {
    [0, 1, 2].map(|corner: usize| {
        let mut slope = [[0.0; 2]; 2];
        for axis in 0..2 {
            for part in 0..2 {
                let sum: f64 = raw.iter().map(|sample| sample[axis][part]).sum();
                slope[axis][part] = 2.0 * raw[corner][axis][part] - sum / 3.0;
            }
        }
        slope
    })
}

fn averages(mesh: &Mesh, raw: &[[Slope; 3]], n_regions: usize) -> Vec<[Slope; 3]> {
    let mut averaged = vec![[[[0.0; 2]; 2]; 3]; mesh.triangles.len()];
    let mut sums = vec![([[0.0; 2]; 2], 0.0); mesh.n_corners];
    for region in 0..n_regions as u32 {
        let inside = || {
            mesh.triangles
                .iter()
                .enumerate()
                .filter(|(index, _)| mesh.region[*index] == region)
        };
        for (_, triangle) in inside() {
            for &corner in &triangle[..3] {
                sums[corner as usize] = ([[0.0; 2]; 2], 0.0);
            }
        }
        for (index, triangle) in inside() {
            for (slope, &corner) in at_corners(&raw[index]).iter().zip(&triangle[..3]) {
                let entry = &mut sums[corner as usize];
                for axis in 0..2 {
                    for part in 0..2 {
                        entry.0[axis][part] += slope[axis][part];
                    }
                }
                entry.1 += 1.0;
            }
        }
        for (index, triangle) in inside() {
            for (slope, &corner) in averaged[index].iter_mut().zip(&triangle[..3]) {
                let (sum, count) = sums[corner as usize];
                *slope = sum.map(|axis| axis.map(|value| value / count));
            }
        }
    }
    averaged
}

/// Energy of the slopes' disagreement over the energy of the field: the error of the whole solution.
pub(super) fn energy_ratio(solution: &Solution<'_>, coefficient: impl Fn(usize) -> f64) -> f64 {
    let (mut jump, mut whole) = (0.0, 0.0);
    for index in 0..solution.mesh.triangles.len() {
        let (own, field) = unevenness(solution, index);
        let weight = coefficient(solution.mesh.region[index] as usize);
        jump += weight * own;
        whole += weight * field;
    }
    if whole > 0.0 { jump / whole } else { 0.0 }
}

/// ∫ |averaged − raw slope|² dA of each triangle times its mean 2πr, and ∫ |raw slope|² likewise.
pub(super) fn unevenness(solution: &Solution<'_>, index: usize) -> (f64, f64) {
    let numbers = solution.mesh.triangles[index];
    let [a, b, c] = [0, 1, 2].map(|k| solution.mesh.nodes[numbers[k] as usize]);
    let area = 0.5 * ((b.r - a.r) * (c.z - a.z) - (b.z - a.z) * (c.r - a.r));
    let radius = (a.r + b.r + c.r) / 3.0;
    let (mut jump, mut whole) = (0.0, 0.0);
    for (weights, raw) in SAMPLES.iter().zip(&solution.raw[index]) {
        for axis in 0..2 {
            for part in 0..2 {
                let smooth: f64 = weights
                    .iter()
                    .zip(&solution.averaged[index])
                    .map(|(weight, slope)| weight * slope[axis][part])
                    .sum();
                jump += (smooth - raw[axis][part]).powi(2);
                whole += raw[axis][part].powi(2);
            }
        }
    }
    let weight = 2.0 * std::f64::consts::PI * radius * area / 3.0;
    (weight * jump, weight * whole)
}
