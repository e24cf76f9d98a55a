//! Triangles between given edges; the only module that names `spade`.

use crate::outline::Point;
use spade::{ConstrainedDelaunayTriangulation, Point2, Triangulation as _};

/// Index that stands for no triangle, or no rim.
pub(super) const NONE: u32 = u32::MAX;

/// A triangle with its neighbours.
///
/// Edge `i` runs from `corners[i]` to `corners[i + 1]`; corners are counter-clockwise.
#[derive(Clone, Copy, Debug)]
pub(super) struct Triangle {
    pub corners: [u32; 3],
    /// Triangle on the other side of each edge.
    pub across: [u32; 3],
    /// Index of the given edge that coincides with each edge, or [`NONE`].
    pub rims: [u32; 3],
    /// Region of the triangle.
    pub region: u32,
}

/// Triangles on points; every given edge is one of their edges.
#[derive(Clone, Debug)]
pub(super) struct Triangulation {
    pub places: Vec<Point>,
    pub triangles: Vec<Triangle>,
}

/// Reason why there are no triangles: other edges cross given edges, points lie on them, or points coincide.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Clash {
    /// Positions of the edges that could not be kept.
    Edges(Vec<usize>),
    /// Two points coincide.
    Points,
}

/// The constrained Delaunay triangulation of points with given edges, its convex hull filled.
pub(super) fn triangulate(places: &[Point], edges: &[[u32; 2]]) -> Result<Triangulation, Clash> {
    let points: Vec<Point2<f64>> = places.iter().map(|p| Point2::new(p.r, p.z)).collect();
    let pairs: Vec<[usize; 2]> = edges.iter().map(|e| e.map(|v| v as usize)).collect();
    // The check below finds the edges that were left out, together with those that a point divides.
    let Ok(cdt) =
        ConstrainedDelaunayTriangulation::<Point2<f64>>::try_bulk_load_cdt(points, pairs, |_| {})
    else {
        return Err(Clash::Points);
    };
    if cdt.num_vertices() != places.len() {
        return Err(Clash::Points);
    }
    let mut keys: Vec<(u64, u32)> = edges
        .iter()
        .enumerate()
        .map(|(position, &[a, b])| (key(a, b), position as u32))
        .collect();
    keys.sort_unstable();
    let mut is_kept = vec![false; edges.len()];
    let mut triangles = Vec::with_capacity(cdt.num_inner_faces());
    for face in cdt.inner_faces() {
        let mut triangle = Triangle {
            corners: [0; 3],
            across: [NONE; 3],
            rims: [NONE; 3],
            region: NONE,
        };
        for (side, edge) in face.adjacent_edges().into_iter().enumerate() {
            let [a, b] = [
                edge.from().fix().index() as u32,
                edge.to().fix().index() as u32,
            ];
            triangle.corners[side] = a;
            // Face 0 is the outer one.
            triangle.across[side] = (edge.rev().face().fix().index() as u32).wrapping_sub(1);
            if edge.is_constraint_edge()
                && let Ok(found) = keys.binary_search_by_key(&key(a, b), |entry| entry.0)
            {
                triangle.rims[side] = keys[found].1;
                is_kept[keys[found].1 as usize] = true;
            }
        }
        triangles.push(triangle);
    }
    let lost: Vec<usize> = (0..edges.len())
        .filter(|&position| !is_kept[position])
        .collect();
    if lost.is_empty() {
        Ok(Triangulation {
            places: places.to_vec(),
            triangles,
        })
    } else {
        Err(Clash::Edges(lost))
    }
}

/// One number for an edge, in either direction.
pub(super) fn key(a: u32, b: u32) -> u64 {
    (u64::from(a.min(b)) << 32) | u64::from(a.max(b))
}

impl Triangulation {
    /// Twice the signed area of three places, m²; positive counter-clockwise.
    pub fn area2(&self, a: u32, b: u32, c: u32) -> f64 {
        area2(
            self.places[a as usize],
            self.places[b as usize],
            self.places[c as usize],
        )
    }
}

/// Twice the signed area of three places, m²; positive counter-clockwise.
pub(super) fn area2(a: Point, b: Point, c: Point) -> f64 {
    (b.r - a.r) * (c.z - a.z) - (b.z - a.z) * (c.r - a.r)
}
