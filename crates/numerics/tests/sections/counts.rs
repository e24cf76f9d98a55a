//! Features of a section that are hard to mesh, counted from its outline alone.

use super::sketch::{HIGH, Sample};
use jointwright_numerics::outline::{Outline, Point, Region, Shape};

/// Number of sections with each feature.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Kinds {
    /// Corners of regions with a zero angle (cusps).
    pub cusps: usize,
    /// Strips of at most 0.1 mm, at least ten times as long as thick.
    pub films: usize,
    /// Places at which the plane of one part ends and that of another begins.
    pub touching_planes: usize,
    /// Arcs with one radius and different centres, or an outer radius that equals another part's bore.
    pub equal_radii: usize,
    /// Sections that reach r = 0.
    pub on_axis: usize,
    /// Sections with a floating conductor.
    pub floating: usize,
    /// Lines of 1 to 50 µm.
    pub tiny_steps: usize,
    /// Sections of a joint or a similar shape: a conductor along r = const at 1 V.
    pub joint_like: usize,
}

impl Kinds {
    /// Kinds of one section: 0 or 1 each.
    pub fn of(sample: &Sample) -> Self {
        let outline = &sample.outline;
        let one = usize::from;
        let axial_high = |index: usize| {
            let curve = &outline.curves[index];
            curve.tag == HIGH && is_along(outline, index) == Some(0)
        };
        let n_curves = outline.curves.len();
        Self {
            cusps: one(outline
                .regions
                .iter()
                .any(|region| has_cusp(outline, region))),
            films: one(outline
                .regions
                .iter()
                .any(|region| has_film(outline, region))),
            touching_planes: one(has_touching_planes(outline)),
            equal_radii: one(has_equal_radii(outline)),
            on_axis: one(outline.points.iter().any(|point| point.r == 0.0)),
            floating: one(!sample.floating.is_empty()),
            tiny_steps: one((0..n_curves).any(|index| {
                outline.curves[index].shape == Shape::Line
                    && (0.9e-6..=50e-6).contains(&outline.length(index))
            })),
            joint_like: one((0..n_curves).any(axial_high)),
        }
    }

    pub fn add(&mut self, other: Self) {
        self.cusps += other.cusps;
        self.films += other.films;
        self.touching_planes += other.touching_planes;
        self.equal_radii += other.equal_radii;
        self.on_axis += other.on_axis;
        self.floating += other.floating;
        self.tiny_steps += other.tiny_steps;
        self.joint_like += other.joint_like;
    }
}

/// 0 for a line along z (constant r), 1 for one along r.
fn is_along(outline: &Outline, index: usize) -> Option<usize> {
    let curve = &outline.curves[index];
    let (a, b) = (outline.points[curve.from], outline.points[curve.to]);
    match curve.shape {
        Shape::Line if a.r == b.r => Some(0),
        Shape::Line if a.z == b.z => Some(1),
        _ => None,
    }
}

/// Direction of a side at its beginning or end, and its curvature there, 1/m: positive to the left.
fn way(outline: &Outline, curve_index: usize, is_reversed: bool, at_end: bool) -> ([f64; 2], f64) {
    let curve = &outline.curves[curve_index];
    let (from, to) = (outline.points[curve.from], outline.points[curve.to]);
    let t = f64::from(u8::from(at_end != is_reversed));
    let [r, z] = curve.tangent(from, to, t);
    let bend = curve.turn(from, to).signum() / curve.radius(from, to);
    if is_reversed {
        ([-r, -z], -bend)
    } else {
        ([r, z], bend)
    }
}

/// Exact area of a region, m²; negative if its loop runs clockwise.
pub(crate) fn area(outline: &Outline, region: &Region) -> f64 {
    let origin = outline.points[outline.curves[region.boundary[0].curve_index].from];
    let less = |p: Point| [p.r - origin.r, p.z - origin.z];
    region
        .boundary
        .iter()
        .map(|side| {
            let curve = &outline.curves[side.curve_index];
            let (from, to) = (outline.points[curve.from], outline.points[curve.to]);
            let (a, b) = (less(from), less(to));
            let mut own = 0.5 * (a[0] * b[1] - a[1] * b[0]);
            if curve.shape != Shape::Line {
                let (turn, radius) = (curve.turn(from, to), curve.radius(from, to));
                own += 0.5 * radius * radius * (turn - turn.sin());
            }
            if side.is_reversed { -own } else { own }
        })
        .sum()
}

fn has_cusp(outline: &Outline, region: &Region) -> bool {
    let is_left = area(outline, region) > 0.0;
    let n_sides = region.boundary.len();
    (0..n_sides).any(|at| {
        let [one, next] = [at, (at + 1) % n_sides].map(|at| region.boundary[at]);
        let (arriving, bend_in) = way(outline, one.curve_index, one.is_reversed, true);
        let (leaving, bend_out) = way(outline, next.curve_index, next.is_reversed, false);
        let folds = arriving[0] * leaving[0] + arriving[1] * leaving[1] < -1.0 + 1e-12;
        // Seen from the corner, the way back curves by −bend_in; the region is the sliver between, or everything else.
        let is_sliver = (-bend_in > bend_out) == is_left;
        folds && is_sliver
    })
}

fn has_film(outline: &Outline, region: &Region) -> bool {
    let lines: Vec<(usize, [Point; 2])> = region
        .boundary
        .iter()
        .filter_map(|side| {
            let axis = is_along(outline, side.curve_index)?;
            let curve = &outline.curves[side.curve_index];
            Some((axis, [outline.points[curve.from], outline.points[curve.to]]))
        })
        .collect();
    let of = |p: Point, axis: usize| [p.r, p.z][axis];
    lines.iter().any(|(axis, a)| {
        lines.iter().any(|(other, b)| {
            let gap = (of(a[0], *axis) - of(b[0], *axis)).abs();
            let span = |p: &[Point; 2]| {
                let (x, y) = (of(p[0], 1 - axis), of(p[1], 1 - axis));
                [x.min(y), x.max(y)]
            };
            let (s, t) = (span(a), span(b));
            let common = s[1].min(t[1]) - s[0].max(t[0]);
            axis == other && gap > 0.0 && gap <= 0.100_001e-3 && common >= 10.0 * gap
        })
    })
}

/// Regions on both sides of each curve.
fn beside(outline: &Outline) -> Vec<Vec<usize>> {
    let mut beside = vec![Vec::new(); outline.curves.len()];
    for (index, region) in outline.regions.iter().enumerate() {
        for side in &region.boundary {
            beside[side.curve_index].push(index);
        }
    }
    beside
}

fn has_touching_planes(outline: &Outline) -> bool {
    let beside = beside(outline);
    let planes: Vec<usize> = (0..outline.curves.len())
        .filter(|&index| is_along(outline, index) == Some(1))
        .collect();
    planes.iter().enumerate().any(|(at, &one)| {
        planes[at + 1..].iter().any(|&other| {
            let ends = |index: usize| [outline.curves[index].from, outline.curves[index].to];
            let meet = ends(one).iter().any(|end| ends(other).contains(end));
            meet && beside[one] != beside[other]
        })
    })
}

fn has_equal_radii(outline: &Outline) -> bool {
    let beside = beside(outline);
    let n_curves = outline.curves.len();
    (0..n_curves).any(|one| {
        (one + 1..n_curves).any(|other| {
            match (outline.curves[one].shape, outline.curves[other].shape) {
                (Shape::Arc { center: a }, Shape::Arc { center: b }) => {
                    let radius = |index: usize| {
                        let curve = &outline.curves[index];
                        curve.radius(outline.points[curve.from], outline.points[curve.to])
                    };
                    a.distance(b) > 1e-8 && (radius(one) - radius(other)).abs() < 1e-9
                }
                (Shape::Line, Shape::Line) => {
                    let r = |index: usize| outline.points[outline.curves[index].from].r;
                    is_along(outline, one) == Some(0)
                        && is_along(outline, other) == Some(0)
                        && r(one) == r(other)
                        && r(one) > 0.0
                        && beside[one]
                            .iter()
                            .all(|region| !beside[other].contains(region))
                }
                _ => false,
            }
        })
    })
}
