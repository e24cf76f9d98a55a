//! Region of each triangle, from the sides of the curves, with a check that it is unique.

use super::triangulation::{NONE, Triangulation};
use crate::outline::{Outline, Shape};

/// Region index on each of the two sides of a curve, seen from its beginning, or [`OUTSIDE`].
#[derive(Clone, Copy, Debug)]
pub(super) struct Sides {
    pub left: u32,
    pub right: u32,
}

/// Index of the outside, which carries no field.
pub(super) const OUTSIDE: u32 = NONE - 1;

/// Regions on both sides of every curve.
pub(super) fn sides(outline: &Outline) -> Vec<Sides> {
    let nothing = Sides {
        left: OUTSIDE,
        right: OUTSIDE,
    };
    let mut sides = vec![nothing; outline.curves.len()];
    for (index, region) in outline.regions.iter().enumerate() {
        let is_left_handed = signed_area(outline, index) > 0.0;
        for side in &region.boundary {
            let entry = &mut sides[side.curve_index];
            if side.is_reversed == is_left_handed {
                entry.right = index as u32;
            } else {
                entry.left = index as u32;
            }
        }
    }
    sides
}

/// Area inside a region's loop, m²; negative if the loop runs clockwise.
pub(super) fn signed_area(outline: &Outline, region_index: usize) -> f64 {
    outline.regions[region_index]
        .boundary
        .iter()
        .map(|side| {
            let curve = &outline.curves[side.curve_index];
            let (from, to) = (outline.points[curve.from], outline.points[curve.to]);
            let mut area = 0.5 * (from.r * to.z - from.z * to.r);
            if let Shape::Arc { .. } = curve.shape {
                let (turn, radius) = (curve.turn(from, to), curve.radius(from, to));
                // Area between the chord and the arc.
                area += 0.5 * radius * radius * (turn - turn.sin());
            }
            if side.is_reversed { -area } else { area }
        })
        .sum()
}

/// Assigns a region to every triangle; fails with a triangle that would lie in two.
///
/// `curve_of` is the curve of each given edge; `starts` is its first corner, nearer the beginning of the curve.
pub(super) fn mark(
    mesh: &mut Triangulation,
    sides: &[Sides],
    curve_of: &[u32],
    starts: &[u32],
) -> Result<(), u32> {
    let mut queue = Vec::new();
    for index in 0..mesh.triangles.len() {
        for side in 0..3 {
            let triangle = &mut mesh.triangles[index];
            let rim = triangle.rims[side];
            if rim == NONE {
                continue;
            }
            let curve = curve_of[rim as usize];
            let found = if triangle.corners[side] == starts[rim as usize] {
                sides[curve as usize].left
            } else {
                sides[curve as usize].right
            };
            if triangle.region == NONE {
                triangle.region = found;
                queue.push(index as u32);
            } else if triangle.region != found {
                return Err(index as u32);
            }
        }
    }
    while let Some(index) = queue.pop() {
        let triangle = mesh.triangles[index as usize];
        for side in 0..3 {
            if triangle.rims[side] != NONE {
                continue;
            }
            let other = triangle.across[side];
            if other == NONE {
                // The hull is reached without crossing a curve, so this must be outside.
                if triangle.region != OUTSIDE {
                    return Err(index);
                }
                continue;
            }
            let neighbour = &mut mesh.triangles[other as usize];
            if neighbour.region == NONE {
                neighbour.region = triangle.region;
                queue.push(other);
            } else if neighbour.region != triangle.region {
                return Err(other);
            }
        }
    }
    for triangle in &mut mesh.triangles {
        if triangle.region == OUTSIDE {
            triangle.region = NONE;
        }
    }
    Ok(())
}
