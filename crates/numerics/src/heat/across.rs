//! Across: the area of a region's cross-section normal to the axis, at a height.

use crate::outline::{Outline, Point, Shape};
use std::f64::consts::PI;

/// Area in the plane at z of a region turned about the axis, m²; 0 if the plane misses the region.
///
/// Between crossings r1 < r2 of the boundary it is π (r2² − r1²).
pub(super) fn area_m2(outline: &Outline, region_index: usize, z: f64) -> f64 {
    let mut radii: Vec<f64> = Vec::new();
    for side in &outline.regions[region_index].boundary {
        let curve = &outline.curves[side.curve_index];
        let (from, to) = (outline.points[curve.from], outline.points[curve.to]);
        match curve.shape {
            Shape::Line => {
                if (from.z > z) != (to.z > z) {
                    radii.push(from.r + (to.r - from.r) * (z - from.z) / (to.z - from.z));
                }
            }
            Shape::Arc { center } => arc(&mut radii, from, to, center, z),
        }
    }
    radii.sort_by(f64::total_cmp);
    radii
        .chunks_exact(2)
        .map(|pair| PI * (pair[1] * pair[1] - pair[0] * pair[0]))
        .sum()
}

/// Crossings of the shorter arc with a height: the crossings of its circle that lie on the arc's side of the chord.
fn arc(radii: &mut Vec<f64>, from: Point, to: Point, center: Point, z: f64) {
    let radius = 0.5 * (center.distance(from) + center.distance(to));
    let up = z - center.z;
    let half_2 = radius * radius - up * up;
    if half_2 <= 0.0 {
        return;
    }
    // The arc is on the other side of its chord than the centre.
    let side = |r: f64, z: f64| (to.r - from.r) * (z - from.z) - (to.z - from.z) * (r - from.r);
    let middle = side(center.r, center.z);
    for r in [center.r - half_2.sqrt(), center.r + half_2.sqrt()] {
        if side(r, z) * middle < 0.0 {
            radii.push(r);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::outline::{Curve, Region, Side};

    fn outline(points: &[(f64, f64)], arc_center: Option<(f64, f64)>) -> Outline {
        let n = points.len();
        let curve = |index: usize| Curve {
            from: index,
            to: (index + 1) % n,
            shape: match arc_center {
                // The first curve alone is bent.
                Some((r, z)) if index == 0 => Shape::Arc {
                    center: Point::new(r, z),
                },
                _ => Shape::Line,
            },
            tag: "x".to_owned(),
        };
        let side = |curve_index| Side {
            curve_index,
            is_reversed: false,
        };
        Outline {
            points: points.iter().map(|(r, z)| Point::new(*r, *z)).collect(),
            curves: (0..n).map(curve).collect(),
            regions: vec![Region {
                name: "x".to_owned(),
                boundary: (0..n).map(side).collect(),
            }],
        }
    }

    #[test]
    fn a_ring_a_cone_and_a_ball_have_their_areas() {
        let ring = outline(&[(1.0, 0.0), (2.0, 0.0), (2.0, 3.0), (1.0, 3.0)], None);
        assert!((area_m2(&ring, 0, 1.0) - 3.0 * PI).abs() < 1e-12);
        assert_eq!(area_m2(&ring, 0, 3.5), 0.0);
        let cone = outline(&[(0.0, 0.0), (2.0, 0.0), (0.0, 2.0)], None);
        assert!((area_m2(&cone, 0, 1.5) - 0.25 * PI).abs() < 1e-12);
        // A quarter of a circle of radius 2 about the middle, and the axis.
        let ball = outline(&[(2.0, 0.0), (0.0, 2.0), (0.0, 0.0)], Some((0.0, 0.0)));
        assert!((area_m2(&ball, 0, 1.0) - 3.0 * PI).abs() < 1e-12);
    }
}
