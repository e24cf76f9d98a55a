//! Refinement by bisection of longest edges; the mesh stays conforming and the old nodes stay in place.
//!
//! ```text
//!          2               2                2               2
//!         / \             /|\              /|\             /|\        the longest edge 0–1 is always split first,
//!        /   \    ->     / | \     or     5 | \    or     5 | 4       so angles never fall below half of what
//!       /     \         /  |  \          / \|  \         / \|/ \      they were in the first mesh
//!      0---3---1       0---3---1        0---3---1       0---3---1
//! ```
//!
//! Each new corner is an old mid-node, so on an arc it lies on the arc.
//! An arc that is bent beside a triangle is halved together with the triangle.
//! An unsplit arc beside half the triangle would be bent twice as much relative to it, and at a cusp this folds the triangle.

use super::quadratic::{RimEdge, folded, quadratic};
use super::triangulation::{NONE, area2};
use super::{Mesh, Rim};
use crate::outline::Outline;

/// Greatest sagitta of a side, as a share of the triangle's height, at which the side may stay whole when the triangle is divided.
///
/// The remaining part then has twice this share; a triangle folds at a half.
const BENT_RATIO: f64 = 0.05;
/// Greatest number of attempts to divide folding triangles differently, or to leave them whole.
const TRIES_MOST: usize = 24;

/// Refines marked triangles, and those that must follow to keep the mesh conforming.
///
/// All three edges of a marked triangle are halved, so its size is halved too.
/// A triangle that is not valid after any division stays whole: between two arcs that leave a corner side by side
/// with radii less than a third apart, the lines from the middle of one to the end of the other run outside.
///
/// # Shapes
/// `is_marked` `[n_triangles]`.
pub fn refine(outline: &Outline, mesh: &Mesh, is_marked: &[bool]) -> Mesh {
    let mut plan = Plan::new(mesh);
    for _ in 0..TRIES_MOST {
        let is_split = plan.split_edges(mesh, is_marked);
        let (finer, parents) = halve(outline, mesh, &plan, &is_split);
        let mut folded: Vec<usize> = folded(&finer, &finer.nodes)
            .map(|child| parents[child] as usize)
            .filter(|&parent| {
                mesh.triangles[parent][3..]
                    .iter()
                    .any(|&m| is_split[m as usize])
            })
            .collect();
        folded.dedup();
        if folded.is_empty() {
            return finer;
        }
        for parent in folded {
            plan.divide_otherwise(&mesh.triangles[parent], parent, &is_split);
        }
    }
    mesh.clone()
}

/// Division of each triangle, if it is divided.
struct Plan {
    /// Sides by length, longest first.
    order: Vec<[u8; 3]>,
    /// Number of split sides that have been tried as the first to be split.
    n_tried: Vec<u8>,
    bent: Vec<[bool; 3]>,
    /// Triangles that stay whole.
    is_whole: Vec<bool>,
}

impl Plan {
    fn new(mesh: &Mesh) -> Self {
        let triangles = &mesh.triangles;
        Self {
            order: triangles.iter().map(|t| sides_by_length(mesh, t)).collect(),
            n_tried: vec![0; triangles.len()],
            bent: triangles.iter().map(|t| bent_sides(mesh, t)).collect(),
            is_whole: vec![false; triangles.len()],
        }
    }

    /// The side from which a triangle is divided: the longest split side, or the next one if that failed.
    fn first_side(&self, triangle: &[u32; 6], index: usize, is_split: &[bool]) -> Option<usize> {
        let order = self.order[index].map(usize::from);
        let split = || {
            order
                .into_iter()
                .filter(|&side| is_split[triangle[3 + side] as usize])
        };
        split()
            .nth(usize::from(self.n_tried[index]))
            .or_else(|| split().next_back())
    }

    fn divide_otherwise(&mut self, triangle: &[u32; 6], index: usize, is_split: &[bool]) {
        let n_split = triangle[3..]
            .iter()
            .filter(|&&m| is_split[m as usize])
            .count();
        self.n_tried[index] += 1;
        self.is_whole[index] |= usize::from(self.n_tried[index]) >= n_split;
    }

    /// Edges to be split, by mid-node: all edges of marked triangles, and for each triangle with a split edge
    /// its longest edge and every bent one.
    fn split_edges(&mut self, mesh: &Mesh, is_marked: &[bool]) -> Vec<bool> {
        let mut is_kept = vec![false; mesh.nodes.len()];
        loop {
            for (triangle, _) in mesh
                .triangles
                .iter()
                .zip(&self.is_whole)
                .filter(|pair| *pair.1)
            {
                for &middle in &triangle[3..] {
                    is_kept[middle as usize] = true;
                }
            }
            let mut is_split = vec![false; mesh.nodes.len()];
            for (triangle, _) in mesh.triangles.iter().zip(is_marked).filter(|pair| *pair.1) {
                for &middle in &triangle[3..] {
                    is_split[middle as usize] = !is_kept[middle as usize];
                }
            }
            if self.follow(mesh, &is_kept, &mut is_split) {
                return is_split;
            }
        }
    }

    /// Splits the edges that must follow.
    /// If one of them must be kept, the triangle stays whole too, and the result is `false`.
    fn follow(&mut self, mesh: &Mesh, is_kept: &[bool], is_split: &mut [bool]) -> bool {
        let mut is_new = false;
        loop {
            let mut is_changed = false;
            for (index, triangle) in mesh.triangles.iter().enumerate() {
                let middles = &triangle[3..];
                if !middles.iter().any(|&m| is_split[m as usize]) {
                    continue;
                }
                for (side, &middle) in middles.iter().enumerate() {
                    let follows =
                        usize::from(self.order[index][0]) == side || self.bent[index][side];
                    if !follows || is_split[middle as usize] {
                        continue;
                    }
                    if is_kept[middle as usize] {
                        is_new |= !self.is_whole[index];
                        self.is_whole[index] = true;
                    } else {
                        is_split[middle as usize] = true;
                        is_changed = true;
                    }
                }
            }
            if !is_changed {
                return !is_new;
            }
        }
    }
}

/// Halves the edges given by their mid-nodes; returns the mesh and, for each of its triangles, the old triangle that contains it.
fn halve(outline: &Outline, mesh: &Mesh, plan: &Plan, is_split: &[bool]) -> (Mesh, Vec<u32>) {
    // New corners get numbers after the old ones, in the order of the old mid-nodes.
    let mut number = vec![NONE; mesh.nodes.len()];
    let mut corners = mesh.nodes[..mesh.n_corners].to_vec();
    for middle in mesh.n_corners..mesh.nodes.len() {
        if is_split[middle] {
            number[middle] = corners.len() as u32;
            corners.push(mesh.nodes[middle]);
        }
    }
    let mut triangles = Vec::with_capacity(2 * mesh.triangles.len());
    let mut parents = Vec::with_capacity(2 * mesh.triangles.len());
    for (index, triangle) in mesh.triangles.iter().enumerate() {
        match plan.first_side(triangle, index, is_split) {
            None => triangles.push([triangle[0], triangle[1], triangle[2]]),
            Some(side) => divide(triangle, side, &number, &mut triangles),
        }
        parents.resize(triangles.len(), index as u32);
    }
    let region = parents
        .iter()
        .map(|&parent| mesh.region[parent as usize])
        .collect();
    let mut rims = Vec::with_capacity(mesh.rims.len());
    for rim in &mesh.rims {
        divide_rim(rim, &number, &mut rims);
    }
    (
        quadratic(outline, corners, &triangles, region, rims),
        parents,
    )
}

/// Sides of a triangle, longest first; of equal sides, the one with the greater mid-node first.
///
/// They are measured through their mid-nodes, so that of two sides that leave a cusp the arc is the longer one.
/// A line from the middle of the other side to the far end of the arc would run along the arc's tangent there.
fn sides_by_length(mesh: &Mesh, triangle: &[u32; 6]) -> [u8; 3] {
    let measures = [0, 1, 2].map(|side| {
        let [a, b, middle] = [side, (side + 1) % 3, 3 + side]
            .map(|position| mesh.nodes[triangle[position] as usize]);
        a.distance(middle) + b.distance(middle)
    });
    let mut order = [0, 1, 2];
    order.sort_unstable_by(|&one, &other| {
        let [one, other] = [usize::from(one), usize::from(other)];
        let by_number = triangle[3 + other].cmp(&triangle[3 + one]);
        measures[other].total_cmp(&measures[one]).then(by_number)
    });
    order
}

/// Whether each side lies so far off its chord that the triangle is not divided without it.
fn bent_sides(mesh: &Mesh, triangle: &[u32; 6]) -> [bool; 3] {
    let place = |position: usize| mesh.nodes[triangle[position] as usize];
    let height = area2(place(0), place(1), place(2));
    [0, 1, 2].map(|side| {
        // Both are heights over the chord times its length.
        let sagitta = area2(place(side), place((side + 1) % 3), place(3 + side));
        sagitta.abs() > BENT_RATIO * height
    })
}

/// The parts of a triangle after its division, with its side `first` split first.
fn divide(triangle: &[u32; 6], first: usize, number: &[u32], triangles: &mut Vec<[u32; 3]>) {
    let [a, b, c] = [0, 1, 2].map(|k| triangle[(first + k) % 3]);
    let [ab, bc, ca] = [0, 1, 2].map(|k| number[triangle[3 + (first + k) % 3] as usize]);
    if ca == NONE {
        triangles.push([a, ab, c]);
    } else {
        triangles.push([a, ab, ca]);
        triangles.push([ca, ab, c]);
    }
    if bc == NONE {
        triangles.push([ab, b, c]);
    } else {
        triangles.push([ab, b, bc]);
        triangles.push([ab, bc, c]);
    }
}

fn divide_rim(rim: &Rim, number: &[u32], rims: &mut Vec<RimEdge>) {
    let [a, b, middle] = rim.nodes;
    let [from, to] = rim.shares;
    let middle = number[middle as usize];
    let mut add = |corners: [u32; 2], shares: [f64; 2]| {
        rims.push(RimEdge {
            curve_index: rim.curve_index,
            corners,
            shares,
        });
    };
    if middle == NONE {
        add([a, b], rim.shares);
    } else {
        let half = 0.5 * (from + to);
        add([a, middle], [from, half]);
        add([middle, b], [half, to]);
    }
}
