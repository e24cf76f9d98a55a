//! Recovered gradients: the slope of a cubic fitted to the potential at the nodes about a corner.
//!
//! ```text
//!        o---o---o            o  nodes of the triangles about the corner ●, all in one region;
//!       / \ / \ / \           p(r, z) = the cubic that passes nearest to their potentials
//!      o---o---●---o---o      the slope of p is an order better than that of the triangles,
//!       \ / \ / \ / \ /       and it never looks across an interface, where the slope jumps
//!        o---o---o---o
//! ```
//!
//! At a place in a triangle, the area coordinates weight the slopes of the cubics of its three corners.
//!
//! **Source.** zhang_naga_ppr, memory; adapted here to a cubic for quadratic triangles, by region.

use crate::mesh::Mesh;
use crate::outline::Point;
use std::collections::BTreeMap;

/// Number of terms of a full cubic in two variables.
const N_TERMS: usize = 10;
/// Least number of nodes; a patch with fewer grows by a ring.
const N_NODES_LEAST: usize = 16;
/// Offset in the weight 1 / (offset + squared distance over that of the patch) of a node's row: near nodes count more.
const WEIGHT_FLOOR: f64 = 0.1;
/// Share of the greatest column below which a column is left out, because the patch cannot determine it.
const RANK_RATIO: f64 = 1e-9;

/// Slope of a potential: derivatives with respect to r and z of its real and imaginary part.
pub(super) type Slope = [[f64; 2]; 2];

/// Triangles about each corner.
#[derive(Clone, Debug)]
pub(super) struct Rings {
    starts: Vec<u32>,
    triangles: Vec<u32>,
}

impl Rings {
    pub fn new(mesh: &Mesh) -> Self {
        let mut starts = vec![0_u32; mesh.n_corners + 1];
        for triangle in &mesh.triangles {
            for &corner in &triangle[..3] {
                starts[corner as usize + 1] += 1;
            }
        }
        for corner in 0..mesh.n_corners {
            starts[corner + 1] += starts[corner];
        }
        let mut next = starts.clone();
        let mut triangles = vec![0; 3 * mesh.triangles.len()];
        for (index, triangle) in mesh.triangles.iter().enumerate() {
            for &corner in &triangle[..3] {
                triangles[next[corner as usize] as usize] = index as u32;
                next[corner as usize] += 1;
            }
        }
        Self { starts, triangles }
    }

    pub fn of(&self, corner: u32) -> &[u32] {
        let corner = corner as usize;
        &self.triangles[self.starts[corner] as usize..self.starts[corner + 1] as usize]
    }
}

/// A cubic about a corner, in coordinates scaled to the patch.
#[derive(Clone, Debug)]
struct Fit {
    center: Point,
    scales: [f64; 2],
    coefficients: [[f64; 2]; N_TERMS],
}

impl Fit {
    fn slope(&self, at: Point) -> Slope {
        let x = (at.r - self.center.r) / self.scales[0];
        let y = (at.z - self.center.z) / self.scales[1];
        let along_x = [
            0.0,
            1.0,
            0.0,
            2.0 * x,
            y,
            0.0,
            3.0 * x * x,
            2.0 * x * y,
            y * y,
            0.0,
        ];
        let along_y = [
            0.0,
            0.0,
            1.0,
            0.0,
            x,
            2.0 * y,
            0.0,
            x * x,
            2.0 * x * y,
            3.0 * y * y,
        ];
        let mut slope = [[0.0; 2]; 2];
        for term in 0..N_TERMS {
            for part in 0..2 {
                slope[0][part] += along_x[term] * self.coefficients[term][part];
                slope[1][part] += along_y[term] * self.coefficients[term][part];
            }
        }
        [
            slope[0].map(|value| value / self.scales[0]),
            slope[1].map(|value| value / self.scales[1]),
        ]
    }
}

/// Recovered slopes of one solved potential; each cubic is fitted at its first use.
pub(super) struct Recovery<'m> {
    mesh: &'m Mesh,
    rings: &'m Rings,
    /// Triangle on each side of an edge, by its mid-node.
    beside: &'m [[u32; 2]],
    potential: &'m [[f64; 2]],
    fits: BTreeMap<(u32, u32), Fit>,
}

impl<'m> Recovery<'m> {
    pub fn new(
        mesh: &'m Mesh,
        rings: &'m Rings,
        beside: &'m [[u32; 2]],
        potential: &'m [[f64; 2]],
    ) -> Self {
        Self {
            mesh,
            rings,
            beside,
            potential,
            fits: BTreeMap::new(),
        }
    }

    /// Slope at a place in a triangle.
    pub fn slope(&mut self, triangle: u32, at: Point) -> Slope {
        let corners = self.mesh.triangles[triangle as usize];
        let region = self.mesh.region[triangle as usize];
        let [a, b, c] = [0, 1, 2].map(|k| self.mesh.nodes[corners[k] as usize]);
        let double =
            |p: Point, q: Point, s: Point| (q.r - p.r) * (s.z - p.z) - (q.z - p.z) * (s.r - p.r);
        let whole = double(a, b, c);
        let weights = [double(at, b, c), double(a, at, c), double(a, b, at)]
            .map(|part| (part / whole).clamp(0.0, 1.0));
        let sum: f64 = weights.iter().sum();
        let mut slope = [[0.0; 2]; 2];
        for (corner, weight) in corners[..3].iter().zip(weights) {
            if weight == 0.0 {
                continue;
            }
            let part = self.fit(region, *corner, triangle).slope(at);
            for axis in 0..2 {
                for side in 0..2 {
                    slope[axis][side] += weight / sum * part[axis][side];
                }
            }
        }
        slope
    }

    fn fit(&mut self, region: u32, corner: u32, seed: u32) -> &Fit {
        let (mesh, rings, beside, potential) = (self.mesh, self.rings, self.beside, self.potential);
        self.fits
            .entry((region, corner))
            .or_insert_with(|| fit(mesh, rings, beside, potential, region, corner, seed))
    }
}

fn fit(
    mesh: &Mesh,
    rings: &Rings,
    beside: &[[u32; 2]],
    potential: &[[f64; 2]],
    region: u32,
    corner: u32,
    seed: u32,
) -> Fit {
    let nodes = patch(mesh, rings, beside, region, corner, seed);
    let center = mesh.nodes[corner as usize];
    let mut scales = [0.0_f64; 2];
    for &node in &nodes {
        let place = mesh.nodes[node as usize];
        scales[0] = scales[0].max((place.r - center.r).abs());
        scales[1] = scales[1].max((place.z - center.z).abs());
    }
    let base = potential[corner as usize];
    let mut rows = Vec::with_capacity(nodes.len());
    let mut sides = Vec::with_capacity(nodes.len());
    for &node in &nodes {
        let place = mesh.nodes[node as usize];
        let x = (place.r - center.r) / scales[0];
        let y = (place.z - center.z) / scales[1];
        let weight = 1.0 / (WEIGHT_FLOOR + x * x + y * y);
        let terms = [
            1.0,
            x,
            y,
            x * x,
            x * y,
            y * y,
            x * x * x,
            x * x * y,
            x * y * y,
            y * y * y,
        ];
        rows.push(terms.map(|term| weight * term));
        let value = potential[node as usize];
        sides.push([weight * (value[0] - base[0]), weight * (value[1] - base[1])]);
    }
    Fit {
        center,
        scales,
        coefficients: least_squares(rows, sides),
    }
}

/// Nodes of the triangles about a corner in one region, with as many rings as necessary.
fn patch(
    mesh: &Mesh,
    rings: &Rings,
    beside: &[[u32; 2]],
    region: u32,
    corner: u32,
    seed: u32,
) -> Vec<u32> {
    let mut triangles: Vec<u32> = rings
        .of(corner)
        .iter()
        .copied()
        .filter(|&t| mesh.region[t as usize] == region)
        .collect();
    if !triangles.contains(&seed) {
        triangles.push(seed);
    }
    loop {
        let mut nodes: Vec<u32> = triangles
            .iter()
            .flat_map(|&t| mesh.triangles[t as usize])
            .collect();
        nodes.sort_unstable();
        nodes.dedup();
        if nodes.len() >= N_NODES_LEAST {
            return nodes;
        }
        let n_before = triangles.len();
        for position in 0..n_before {
            for &middle in &mesh.triangles[triangles[position] as usize][3..] {
                for other in beside[middle as usize - mesh.n_corners] {
                    let is_new = other != u32::MAX
                        && mesh.region[other as usize] == region
                        && !triangles.contains(&other);
                    if is_new {
                        triangles.push(other);
                    }
                }
            }
        }
        if triangles.len() == n_before {
            return nodes;
        }
    }
}

/// Least-squares coefficients, by Householder reflections with the greatest column first.
///
/// Columns that the rows cannot distinguish from earlier ones get the coefficient 0.
fn least_squares(mut rows: Vec<[f64; N_TERMS]>, mut sides: Vec<[f64; 2]>) -> [[f64; 2]; N_TERMS] {
    let n_rows = rows.len();
    let mut order: [usize; N_TERMS] = std::array::from_fn(|term| term);
    let mut rank = 0;
    let mut first = 0.0;
    for step in 0..N_TERMS.min(n_rows) {
        let norm2 = |column: usize| {
            rows[step..]
                .iter()
                .map(|row| row[column].powi(2))
                .sum::<f64>()
        };
        let (best, size) = (step..N_TERMS)
            .map(|position| (position, norm2(order[position])))
            .fold((step, -1.0), |a, b| if b.1 > a.1 { b } else { a });
        let size = size.sqrt();
        if step == 0 {
            first = size;
        }
        if size <= RANK_RATIO * first || size.is_nan() {
            break;
        }
        order.swap(step, best);
        rank = step + 1;
        let column = order[step];
        let head = rows[step][column];
        let alpha = if head > 0.0 { -size } else { size };
        let mut reflector: Vec<f64> = rows[step..].iter().map(|row| row[column]).collect();
        reflector[0] -= alpha;
        let length2: f64 = reflector.iter().map(|value| value * value).sum();
        for &column in &order[step..] {
            let dot: f64 = reflector
                .iter()
                .zip(&rows[step..])
                .map(|(v, row)| v * row[column])
                .sum();
            for (v, row) in reflector.iter().zip(&mut rows[step..]) {
                row[column] -= 2.0 * dot / length2 * v;
            }
        }
        for part in 0..2 {
            let dot: f64 = reflector
                .iter()
                .zip(&sides[step..])
                .map(|(v, side)| v * side[part])
                .sum();
            for (v, side) in reflector.iter().zip(&mut sides[step..]) {
                side[part] -= 2.0 * dot / length2 * v;
            }
        }
    }
    let mut coefficients = [[0.0; 2]; N_TERMS];
    for step in (0..rank).rev() {
        for part in 0..2 {
            let known: f64 = (step + 1..rank)
                .map(|later| rows[step][order[later]] * coefficients[order[later]][part])
                .sum();
            coefficients[order[step]][part] = (sides[step][part] - known) / rows[step][order[step]];
        }
    }
    coefficients
}
