//! Sizes of the edges on curves before the first solution: from the curves' own radii, and from the room beside them.

use crate::outline::{Outline, Point, Shape};

/// Greatest length of an edge on an arc, as a share of the radius.
const ARC_RATIO: f64 = 0.2;
/// Greatest growth of the edge length with the distance from a fine spot.
const GROWTH_RATIO: f64 = 0.5;
/// Longest edge anywhere, as a share of the smaller side of the section's box.
const COARSEST_RATIO: f64 = 0.3;

/// Wanted sizes from geometry alone.
pub(super) struct Sizes {
    sources: Vec<(Point, f64)>,
    /// Longest edge anywhere, m.
    pub coarsest: f64,
    /// Smaller and greater side of the section's box, m.
    pub box_sides: [f64; 2],
}

impl Sizes {
    /// Computes the sizes from the arcs and the bounding box of an outline.
    pub fn new(outline: &Outline, fineness: f64, fine: &[(Point, f64)]) -> Self {
        let used = outline
            .curves
            .iter()
            .flat_map(|curve| [curve.from, curve.to]);
        let mut low = Point::new(f64::INFINITY, f64::INFINITY);
        let mut high = Point::new(f64::NEG_INFINITY, f64::NEG_INFINITY);
        for place in used.map(|index| outline.points[index]) {
            low = Point::new(low.r.min(place.r), low.z.min(place.z));
            high = Point::new(high.r.max(place.r), high.z.max(place.z));
        }
        let sides = [high.r - low.r, high.z - low.z];
        let box_sides = [sides[0].min(sides[1]), sides[0].max(sides[1])];
        let coarsest = COARSEST_RATIO * box_sides[0] * fineness;
        let mut sources: Vec<(Point, f64)> = fine
            .iter()
            .map(|&(place, size)| (place, size * fineness))
            .collect();
        for (curve_index, curve) in outline.curves.iter().enumerate() {
            if !matches!(curve.shape, Shape::Arc { .. }) {
                continue;
            }
            let radius = curve.radius(outline.points[curve.from], outline.points[curve.to]);
            let size = ARC_RATIO * radius * fineness;
            let length = outline.length(curve_index);
            if size < coarsest {
                let n_pieces = (length / (2.0 * size)).ceil().clamp(1.0, 64.0) as usize;
                for piece in 0..=n_pieces {
                    let share = piece as f64 / n_pieces as f64;
                    sources.push((outline.place(curve_index, share), size));
                }
            }
        }
        Self {
            sources,
            coarsest,
            box_sides,
        }
    }

    /// Wanted edge length at a place, m.
    pub fn at(&self, place: Point) -> f64 {
        let mut size = self.coarsest;
        for &(source, wanted) in &self.sources {
            // Most sources are too far away to matter, and their exact distance is not needed.
            let reach = (size - wanted) / GROWTH_RATIO;
            let (r, z) = (source.r - place.r, source.z - place.z);
            if reach > 0.0 && r * r + z * z < reach * reach {
                size = size.min(wanted + GROWTH_RATIO * source.distance(place));
            }
        }
        size
    }

    /// Greatest ratio of length to height of a triangle between two curves.
    ///
    /// Thin layers permit long triangles, because the field hardly changes across them; wide layers do not.
    pub fn stretch(&self, height: f64) -> f64 {
        (0.05 * self.box_sides[0] / height).clamp(1.3, 5.0)
    }

    /// Length below which edges are never split, m.
    pub fn finest(&self) -> f64 {
        1e-5 * self.box_sides[1]
    }
}
