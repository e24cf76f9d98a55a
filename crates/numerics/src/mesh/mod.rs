//! Meshes of quadratic triangles on an outline, curved along its arcs.
//!
//! ```text
//!            2                 corners 0 1 2 counter-clockwise (r to the right, z up),
//!           / \                mid-nodes 3 on 0–1, 4 on 1–2, 5 on 2–0;
//!          5   4               a mid-node of an edge on an arc lies on the arc itself,
//!         /     \              every other mid-node is the middle of its edge
//!        0---3---1
//! ```

#![allow(
    clippy::needless_range_loop,
    reason = "several lists are walked by one number of a corner or an edge"
)]

mod build;
mod divide;
mod error;
mod insert;
mod moved;
mod quadratic;
mod refine;
mod regions;
mod size;
mod smooth;
mod triangulation;

pub use build::{MeshOptions, build};
pub use error::MeshError;
pub use moved::{is_same_topology, is_sound, nodes_between, rim_places};
pub use refine::refine;

use crate::outline::Point;

/// A conforming mesh of quadratic triangles.
///
/// # Shapes
/// `nodes` `[n_nodes]`, corners first, then mid-nodes; `triangles` [n_triangles, 6]; `region` `[n_triangles]`.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Mesh {
    /// Places of the nodes, m: `n_corners` corners, then the mid-nodes.
    pub nodes: Vec<Point>,
    /// Number of corners among the nodes.
    pub n_corners: usize,
    /// Nodes of each triangle: three corners counter-clockwise, then the mid-nodes of edges 01, 12, 20.
    pub triangles: Vec<[u32; 6]>,
    /// Index of the region of each triangle.
    pub region: Vec<u32>,
    /// Edges that lie on curves of the outline.
    pub rims: Vec<Rim>,
}

/// An edge of a mesh that lies on a curve of its outline.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rim {
    /// Index of the curve.
    pub curve_index: u32,
    /// Nodes: the corner nearer the curve's beginning, the corner nearer its end, and the mid-node.
    pub nodes: [u32; 3],
    /// Shares of the curve's length at the two corners; the mid-node lies half way between.
    pub shares: [f64; 2],
}
