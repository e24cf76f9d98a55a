//! How fine the curves are divided before anything is solved: from their own radii, and from the room beside them.

use crate::outline::{Outline, Point, Shape};

/// Share of an arc's radius that one edge may be long.
const ARC_RATIO: f64 = 0.2;
/// How fast an edge may grow with the distance from something fine.
const GROWTH_RATIO: f64 = 0.5;
/// Longest edge anywhere, as a share of the smaller side of the section's box.
const COARSEST_RATIO: f64 = 0.3;

/// Sizes wanted by geometry alone.
pub(super) struct Sizes {
    sources: Vec<(Point, f64)>,
    /// Longest edge anywhere, m.
    pub coarsest: f64,
    /// Smaller and greater side of the section's box, m.
    pub box_sides: [f64; 2],
}

impl Sizes {
    /// Takes the sizes from the arcs and the box of an outline.
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

    /// Edge length wanted at a place, m.
    pub fn at(&self, place: Point) -> f64 {
        let mut size = self.coarsest;
        for &(source, wanted) in &self.sources {
            // Most sources lie too far away to matter, and their distance need not be known.
            let reach = (size - wanted) / GROWTH_RATIO;
            let (r, z) = (source.r - place.r, source.z - place.z);
            if reach > 0.0 && r * r + z * z < reach * reach {
                size = size.min(wanted + GROWTH_RATIO * source.distance(place));
            }
        }
        size
    }

    /// How many times its height a triangle between two curves may be long.
    ///
    /// Thin layers bear long triangles, because across them the field hardly changes; wide ones do not.
    pub fn stretch(&self, height: f64) -> f64 {
        (0.05 * self.box_sides[0] / height).clamp(1.3, 5.0)
    }

    /// Edges are never split below this length, m.
    pub fn finest(&self) -> f64 {
        1e-5 * self.box_sides[1]
    }
}
