//! Adds mid-nodes to triangles that have only corners: each in the middle of its edge, or on the arc of the edge.

use super::triangulation::{area2, key};
use super::{Mesh, Rim};
use crate::fem::{quadrature, triangle};
use crate::outline::{Outline, Point};

/// An edge on a curve: the curve, its two corners, and the shares of the curve's length there.
#[derive(Clone, Copy, Debug)]
pub(super) struct RimEdge {
    pub curve_index: u32,
    pub corners: [u32; 2],
    pub shares: [f64; 2],
}

/// Adds mid-nodes to triangles.
///
/// # Shapes
/// `corners` `[n_corners]`; `triangles` [n_triangles, 3], counter-clockwise; `region` `[n_triangles]`.
pub(super) fn quadratic(
    outline: &Outline,
    corners: Vec<Point>,
    triangles: &[[u32; 3]],
    region: Vec<u32>,
    mut rims: Vec<RimEdge>,
) -> Mesh {
    let mut edges: Vec<(u64, u32)> = Vec::with_capacity(3 * triangles.len());
    for (index, triangle) in triangles.iter().enumerate() {
        for side in 0..3 {
            let ends = key(triangle[side], triangle[(side + 1) % 3]);
            edges.push((ends, (3 * index + side) as u32));
        }
    }
    edges.sort_unstable();
    rims.sort_unstable_by_key(|rim| key(rim.corners[0], rim.corners[1]));
    let n_corners = corners.len();
    let mut nodes = corners;
    let mut six: Vec<[u32; 6]> = triangles
        .iter()
        .map(|&[a, b, c]| [a, b, c, 0, 0, 0])
        .collect();
    let mut mesh_rims = Vec::with_capacity(rims.len());
    let mut next_rim = rims.iter().peekable();
    let mut position = 0;
    while position < edges.len() {
        let ends = edges[position].0;
        let (a, b) = ((ends >> 32) as u32, (ends & 0xffff_ffff) as u32);
        let middle = nodes.len() as u32;
        while next_rim
            .peek()
            .is_some_and(|rim| key(rim.corners[0], rim.corners[1]) < ends)
        {
            next_rim.next();
        }
        let rim = next_rim.next_if(|rim| key(rim.corners[0], rim.corners[1]) == ends);
        nodes.push(match rim {
            Some(rim) => {
                mesh_rims.push(Rim {
                    curve_index: rim.curve_index,
                    nodes: [rim.corners[0], rim.corners[1], middle],
                    shares: rim.shares,
                });
                let share = 0.5 * (rim.shares[0] + rim.shares[1]);
                outline.place(rim.curve_index as usize, share)
            }
            None => nodes[a as usize].towards(nodes[b as usize], 0.5),
        });
        while position < edges.len() && edges[position].0 == ends {
            let (index, side) = (edges[position].1 / 3, edges[position].1 % 3);
            six[index as usize][3 + side as usize] = middle;
            position += 1;
        }
    }
    Mesh {
        nodes,
        n_corners,
        triangles: six,
        region,
        rims: mesh_rims,
    }
}

/// Least determinant of a triangle at its integration points, relative to that of its corners.
const DETERMINANT_RATIO: f64 = 0.05;
/// Tolerance below zero for the determinant at a cusp (a corner of zero angle), relative to that of its corners.
///
/// The determinant is zero there, and the ends of arcs lie on their circles only as exactly as the file states.
const CUSP_RATIO: f64 = 0.02;

/// The triangles of a mesh that are folded or nearly folded when its nodes lie at the given places.
///
/// # Shapes
/// `nodes` `[n_nodes]`.
pub(super) fn folded<'m>(mesh: &'m Mesh, nodes: &'m [Point]) -> impl Iterator<Item = usize> + 'm {
    let mut is_on_rim = vec![false; mesh.nodes.len()];
    for rim in &mesh.rims {
        is_on_rim[rim.nodes[2] as usize] = true;
    }
    (0..mesh.triangles.len()).filter(move |&index| {
        let triangle = mesh.triangles[index];
        let n_rims = (3..6)
            .filter(|&side| is_on_rim[triangle[side] as usize])
            .count();
        // Only two given curves can form a zero angle.
        !is_sound(triangle.map(|node| nodes[node as usize]), n_rims > 1)
    })
}

/// Whether a quadratic triangle is counter-clockwise and nowhere folded, apart from rounding at a cusp.
fn is_sound(nodes: [Point; 6], may_have_cusp: bool) -> bool {
    let straight = area2(nodes[0], nodes[1], nodes[2]);
    if straight <= 0.0 || triangle::is_straight(&nodes) {
        return straight > 0.0;
    }
    let least = if may_have_cusp { -CUSP_RATIO } else { 0.0 };
    triangle::determinant_ratio(&nodes) > least
        && quadrature::DEGREE_4.iter().all(|point| {
            triangle::mapping(&nodes, point.place).determinant > DETERMINANT_RATIO * straight
        })
}
