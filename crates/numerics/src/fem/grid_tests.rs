//! A structured mesh for the tests: a rectangle of parameters, mapped into the section.
//!
//! ```text
//!  v
//!  o---o---o---o---o      each cell of 2 × 2 steps is two triangles;
//!  | \ |   | \ |   |      the lattice points between are their mid-nodes
//!  o---o---o---o---o
//!  |   | \ |   | \ |
//!  o---o---o---o---o u
//! ```

use super::triangle;
use crate::outline::Point;

/// Position of the mid-nodes.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Mids {
    /// Mapped like the corners: curved everywhere.
    Mapped,
    /// Mapped on the first and the last u, and in the middle of straight edges elsewhere.
    MappedOnRims,
    /// In the middle of straight edges.
    Straight,
}

pub(super) struct Grid {
    pub nodes: Vec<Point>,
    pub triangles: Vec<[u32; 6]>,
    /// Cells along u and v.
    pub n_cells: [usize; 2],
    /// Cell (along u, along v) of each triangle.
    pub cells: Vec<[usize; 2]>,
}

impl Grid {
    /// `map` takes shares (u, v) from 0 to 1 and preserves orientation.
    pub fn new(n_cells: [usize; 2], mids: Mids, map: impl Fn(f64, f64) -> Point) -> Self {
        let [n_u, n_v] = n_cells;
        let number = |i: usize, j: usize| (i * (2 * n_v + 1) + j) as u32;
        let mut nodes = Vec::new();
        for i in 0..=2 * n_u {
            for j in 0..=2 * n_v {
                nodes.push(map(
                    i as f64 / (2 * n_u) as f64,
                    j as f64 / (2 * n_v) as f64,
                ));
            }
        }
        let mut triangles = Vec::new();
        let mut cells = Vec::new();
        for i in (0..2 * n_u).step_by(2) {
            for j in (0..2 * n_v).step_by(2) {
                let corner = |a: usize, b: usize| (i + 2 * a, j + 2 * b);
                let mut add = |corners: [(usize, usize); 3]| {
                    let [first, second, third] = corners;
                    let mid = |one: (usize, usize), other: (usize, usize)| {
                        number((one.0 + other.0) / 2, (one.1 + other.1) / 2)
                    };
                    let corner_numbers = corners.map(|at| number(at.0, at.1));
                    let [one, two, three] = corner_numbers;
                    let mid_numbers = [mid(first, second), mid(second, third), mid(third, first)];
                    let [four, five, six] = mid_numbers;
                    triangles.push([one, two, three, four, five, six]);
                    cells.push([i / 2, j / 2]);
                };
                add([corner(0, 0), corner(1, 0), corner(0, 1)]);
                add([corner(1, 0), corner(1, 1), corner(0, 1)]);
            }
        }
        let mut grid = Self {
            nodes,
            triangles,
            n_cells,
            cells,
        };
        if mids != Mids::Mapped {
            grid.straighten(mids);
        }
        grid
    }

    fn straighten(&mut self, mids: Mids) {
        let rims = [self.column(0), self.column(2 * self.n_cells[0])].concat();
        for nodes in &self.triangles {
            let [one, two, three, ..] = nodes.map(|node| self.nodes[node as usize]);
            let straight = triangle::straight(one, two, three);
            for (&node, point) in nodes[3..].iter().zip(&straight[3..]) {
                if mids == Mids::Straight || !rims.contains(&node) {
                    self.nodes[node as usize] = *point;
                }
            }
        }
    }

    /// Nodes at a step of u, from 0 to twice the cells.
    pub fn column(&self, step: usize) -> Vec<u32> {
        let height = 2 * self.n_cells[1] + 1;
        (step * height..(step + 1) * height)
            .map(|node| node as u32)
            .collect()
    }

    /// Nodes at a step of u, each with one value.
    pub fn fixed(&self, step: usize, value: f64) -> Vec<(u32, f64)> {
        self.column(step)
            .into_iter()
            .map(|node| (node, value))
            .collect()
    }

    pub fn matrices(&self) -> Vec<[f64; 21]> {
        self.triangles
            .iter()
            .map(|nodes| triangle::stiffness(&nodes.map(|node| self.nodes[node as usize])))
            .collect()
    }
}
