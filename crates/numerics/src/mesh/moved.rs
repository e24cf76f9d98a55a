//! Meshes carried along when their outline changes a little: same triangles, moved nodes.

use super::Mesh;
use super::quadratic;
use super::smooth::quality;
use crate::outline::{Outline, Point};

/// Least quality of a carried triangle as a share of its original quality.
const QUALITY_RATIO: f64 = 0.3;

/// Whether two outlines have the same curves between the same points, the same tags and the same regions, so that only places differ.
pub fn is_same_topology(one: &Outline, other: &Outline) -> bool {
    let is_same_curve = |(a, b): (&crate::outline::Curve, &crate::outline::Curve)| {
        a.from == b.from
            && a.to == b.to
            && a.tag == b.tag
            && std::mem::discriminant(&a.shape) == std::mem::discriminant(&b.shape)
    };
    one.points.len() == other.points.len()
        && one.curves.len() == other.curves.len()
        && one.curves.iter().zip(&other.curves).all(is_same_curve)
        && one.regions == other.regions
}

/// Place of each corner of a curve on another outline with the same topology; `None` for the other corners.
///
/// # Shapes
/// `[n_corners]`.
pub fn rim_places(outline: &Outline, mesh: &Mesh) -> Vec<Option<Point>> {
    let mut places = vec![None; mesh.n_corners];
    for rim in &mesh.rims {
        for (corner, share) in rim.nodes.iter().zip(rim.shares) {
            places[*corner as usize] = Some(outline.place(rim.curve_index as usize, share));
        }
    }
    places
}

/// All nodes for given corners: mid-nodes in the middle of their edges, or on the curves of the outline.
///
/// # Shapes
/// `corners` `[at least n_corners]`; the answer `[n_nodes]`.
pub fn nodes_between(outline: &Outline, mesh: &Mesh, corners: &[Point]) -> Vec<Point> {
    let mut nodes = mesh.nodes.clone();
    nodes[..mesh.n_corners].copy_from_slice(&corners[..mesh.n_corners]);
    for triangle in &mesh.triangles {
        for side in 0..3 {
            let (a, b) = (triangle[side], triangle[(side + 1) % 3]);
            let (a, b) = (a.min(b) as usize, a.max(b) as usize);
            nodes[triangle[3 + side] as usize] = corners[a].towards(corners[b], 0.5);
        }
    }
    for rim in &mesh.rims {
        let share = 0.5 * (rim.shares[0] + rim.shares[1]);
        nodes[rim.nodes[2] as usize] = outline.place(rim.curve_index as usize, share);
    }
    nodes
}

/// Whether the triangles of a mesh are still valid when its nodes are moved.
///
/// # Shapes
/// `nodes` `[n_nodes]`.
pub fn is_sound(mesh: &Mesh, nodes: &[Point]) -> bool {
    let is_good = |triangle: &[u32; 6]| {
        let corners = |places: &[Point]| [0, 1, 2].map(|k| places[triangle[k] as usize]);
        let [a, b, c] = corners(&mesh.nodes);
        let [p, q, s] = corners(nodes);
        quality(p, q, s) > QUALITY_RATIO * quality(a, b, c)
    };
    mesh.triangles.iter().all(is_good) && quadratic::folded(mesh, nodes).next().is_none()
}
