//! Greatest fields on curves, in regions and along lines.
//!
//! The modulus of the gradient of a source-free potential grows toward the rim of a region, never inside it
//! (|∇φ|² is subharmonic), so the greatest field of a region lies on its curves or on the rim of a disc left out.
//! Each family is a set of stretches with one parameter.
//! Promising stretches are sampled, and a search closes in on the best sample.

use super::section::Disc;
use super::solution::{NONE, Solution, modulus};
use crate::outline::{Outline, Point};

/// Share of the best value found below which the quick value of a stretch excludes it.
const PROMISING_RATIO: f64 = 0.9;
/// Greatest number of stretches that are examined in full.
const STRETCHES_MOST: usize = 80;
/// Parameters sampled on each stretch.
const SAMPLES: [f64; 5] = [0.0, 0.25, 0.5, 0.75, 1.0];

/// A greatest field and the places examined for it.
#[derive(Clone, Debug, Default)]
pub(super) struct Peak {
    pub value: f64,
    pub at: Option<Point>,
    /// Greatest possible value in each examined triangle: the value found plus the difference of its slope from the triangle's own.
    pub seen: Vec<(u32, f64)>,
}

/// A parameter from 0 to 1 along which a field is examined, in one triangle or on both sides of an edge.
#[derive(Clone, Debug)]
struct Stretch {
    quick: f64,
    triangles: [u32; 2],
    way: Way,
}

#[derive(Clone, Copy, Debug)]
enum Way {
    Curve {
        curve_index: usize,
        shares: [f64; 2],
    },
    Line {
        from: Point,
        to: Point,
    },
    Circle {
        center: Point,
        radius: f64,
        angles: [f64; 2],
    },
}

impl Way {
    fn place(&self, outline: &Outline, t: f64) -> Point {
        match *self {
            Self::Curve {
                curve_index,
                shares,
            } => outline.place(curve_index, shares[0] + t * (shares[1] - shares[0])),
            Self::Line { from, to } => from.towards(to, t),
            Self::Circle {
                center,
                radius,
                angles,
            } => {
                let (sine, cosine) = (angles[0] + t * (angles[1] - angles[0])).sin_cos();
                Point::new(center.r + radius * cosine, center.z + radius * sine)
            }
        }
    }
}

/// Searches for greatest fields in one solution.
pub(super) struct Search<'s, 'm> {
    pub outline: &'s Outline,
    pub leave_out: &'s [Disc],
    pub solution: &'s mut Solution<'m>,
}

impl Search<'_, '_> {
    /// Greatest |E| on curves, seen from the regions that `counts` accepts.
    pub fn on_curves(&mut self, is_wanted: impl Fn(usize) -> bool, region: Option<usize>) -> Peak {
        let mesh = self.solution.mesh;
        let mut stretches = Vec::new();
        for rim in &mesh.rims {
            let curve_index = rim.curve_index as usize;
            if !is_wanted(curve_index) {
                continue;
            }
            let middle = rim.nodes[2] as usize - mesh.n_corners;
            for triangle in self.solution.neighbours.beside[middle] {
                let counts = triangle != NONE
                    && region.is_none_or(|r| mesh.region[triangle as usize] == r as u32);
                if counts {
                    stretches.push(Stretch {
                        quick: self.quick_beside(triangle, [rim.nodes[0], rim.nodes[1]]),
                        triangles: [triangle, NONE],
                        way: Way::Curve {
                            curve_index,
                            shares: rim.shares,
                        },
                    });
                }
            }
        }
        if let Some(region) = region {
            self.add_circles(region, &mut stretches);
        }
        self.best(stretches, None)
    }

    /// Greatest |E·t| along the straight line from one place to another.
    pub fn tangential_on_line(&mut self, from: Point, to: Point) -> Peak {
        let length = from.distance(to);
        let along = [(to.r - from.r) / length, (to.z - from.z) / length];
        let mesh = self.solution.mesh;
        let mut cuts: Vec<(f64, f64, u32)> = Vec::new();
        let (r_least, r_most) = (from.r.min(to.r), from.r.max(to.r));
        let (z_least, z_most) = (from.z.min(to.z), from.z.max(to.z));
        for (index, triangle) in mesh.triangles.iter().enumerate() {
            let [r_low, r_high, z_low, z_high] = self.solution.neighbours.boxes[index];
            if r_high < r_least || r_low > r_most || z_high < z_least || z_low > z_most {
                continue;
            }
            let corners = [0, 1, 2].map(|k| mesh.nodes[triangle[k] as usize]);
            if let Some([a, b]) = clip(corners, from, to) {
                cuts.push((a, b, index as u32));
            }
        }
        cuts.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
        let mut stretches: Vec<Stretch> = Vec::new();
        for (a, b, triangle) in cuts {
            // The two triangles of an edge on the line are examined together.
            let twin = stretches.iter_mut().rev().take(6).find(|stretch| {
                let Way::Line { from: p, to: q } = stretch.way else {
                    return false;
                };
                let near = 1e-6 * (b - a) * length;
                stretch.triangles[1] == NONE
                    && p.distance(from.towards(to, a)) < near
                    && q.distance(from.towards(to, b)) < near
            });
            match twin {
                Some(stretch) => stretch.triangles[1] = triangle,
                None => stretches.push(Stretch {
                    quick: 0.0,
                    triangles: [triangle, NONE],
                    way: Way::Line {
                        from: from.towards(to, a),
                        to: from.towards(to, b),
                    },
                }),
            }
        }
        for stretch in &mut stretches {
            stretch.quick = stretch
                .triangles
                .iter()
                .filter(|&&t| t != NONE)
                .flat_map(|&t| self.solution.averaged[t as usize])
                .map(|slope| component(slope, along))
                .fold(0.0, f64::max);
        }
        self.best(stretches, Some(along))
    }

    /// Greatest averaged modulus at two corners of a triangle.
    fn quick_beside(&self, triangle: u32, corners: [u32; 2]) -> f64 {
        let numbers = self.solution.mesh.triangles[triangle as usize];
        (0..3)
            .filter(|&k| corners.contains(&numbers[k]))
            .map(|k| modulus(self.solution.averaged[triangle as usize][k]))
            .fold(0.0, f64::max)
    }

    /// Rims of excluded discs, where they pass through triangles of a region.
    fn add_circles(&self, region: usize, stretches: &mut Vec<Stretch>) {
        let mesh = self.solution.mesh;
        for disc in self.leave_out {
            for (index, triangle) in mesh.triangles.iter().enumerate() {
                if mesh.region[index] != region as u32 {
                    continue;
                }
                let corners = [0, 1, 2].map(|k| mesh.nodes[triangle[k] as usize]);
                for angles in arcs_inside(corners, disc) {
                    stretches.push(Stretch {
                        quick: self.solution.quick(index as u32),
                        triangles: [index as u32, NONE],
                        way: Way::Circle {
                            center: disc.at,
                            radius: disc.radius,
                            angles,
                        },
                    });
                }
            }
        }
    }

    fn best(&mut self, mut stretches: Vec<Stretch>, along: Option<[f64; 2]>) -> Peak {
        stretches.sort_by(|a, b| b.quick.total_cmp(&a.quick));
        let mut peak = Peak::default();
        let mut best: Option<(Stretch, f64)> = None;
        let mut n_looked = 0;
        for stretch in &stretches {
            if n_looked >= STRETCHES_MOST
                || (n_looked > 4 && stretch.quick < PROMISING_RATIO * peak.value)
            {
                break;
            }
            let mut greatest = (-1.0, 0.0);
            for t in self.parameters(stretch) {
                let Some(value) = self.value(stretch, t, along) else {
                    continue;
                };
                if value > greatest.0 {
                    greatest = (value, t);
                }
                if value > peak.value || best.is_none() {
                    peak.value = value;
                    best = Some((stretch.clone(), t));
                }
            }
            if greatest.0 >= 0.0 {
                n_looked += 1;
                let at = stretch.way.place(self.outline, greatest.1);
                for triangle in stretch.triangles.into_iter().filter(|&t| t != NONE) {
                    let gap = self.solution.gap(triangle, at);
                    peak.seen.push((triangle, greatest.0 + gap));
                }
            }
        }
        if let Some((stretch, t)) = best {
            let (t, value) = self.close_in(&stretch, t, peak.value, along);
            peak.value = value;
            peak.at = Some(stretch.way.place(self.outline, t));
        }
        peak
    }

    /// Parameters to sample: the usual ones, and those at which an excluded disc begins or ends.
    fn parameters(&self, stretch: &Stretch) -> Vec<f64> {
        let mut parameters = SAMPLES.to_vec();
        let is_out = |t: f64| is_left_out(self.leave_out, stretch.way.place(self.outline, t));
        for pair in SAMPLES.windows(2) {
            if is_out(pair[0]) == is_out(pair[1]) {
                continue;
            }
            let (mut inside, mut outside) = if is_out(pair[0]) {
                (pair[0], pair[1])
            } else {
                (pair[1], pair[0])
            };
            for _ in 0..40 {
                let middle = 0.5 * (inside + outside);
                if is_out(middle) {
                    inside = middle;
                } else {
                    outside = middle;
                }
            }
            parameters.push(outside);
        }
        parameters
    }

    /// |E|, or |E·t|, at a parameter of a stretch; `None` in an excluded disc.
    fn value(&mut self, stretch: &Stretch, t: f64, along: Option<[f64; 2]>) -> Option<f64> {
        let at = stretch.way.place(self.outline, t);
        if is_left_out(self.leave_out, at) {
            return None;
        }
        let first = self.solution.recovery.slope(stretch.triangles[0], at);
        let slope = if stretch.triangles[1] == NONE {
            first
        } else {
            let second = self.solution.recovery.slope(stretch.triangles[1], at);
            let mut mean = first;
            for axis in 0..2 {
                for part in 0..2 {
                    mean[axis][part] = 0.5 * (first[axis][part] + second[axis][part]);
                }
            }
            mean
        };
        Some(match along {
            Some(along) => component(slope, along),
            None => modulus(slope),
        })
    }

    /// Golden-section search about the best sample, never beyond the next sample.
    fn close_in(
        &mut self,
        stretch: &Stretch,
        t: f64,
        value: f64,
        along: Option<[f64; 2]>,
    ) -> (f64, f64) {
        let golden = 0.5 * (5.0_f64.sqrt() - 1.0);
        let (mut low, mut high) = ((t - 0.25).max(0.0), (t + 0.25).min(1.0));
        let mut best = (t, value);
        for _ in 0..14 {
            let (a, b) = (high - golden * (high - low), low + golden * (high - low));
            let (Some(fa), Some(fb)) =
                (self.value(stretch, a, along), self.value(stretch, b, along))
            else {
                return best;
            };
            for (t, value) in [(a, fa), (b, fb)] {
                if value > best.1 {
                    best = (t, value);
                }
            }
            if fa > fb {
                high = b;
            } else {
                low = a;
            }
        }
        best
    }
}

/// Whether a place lies in an open excluded disc.
pub(super) fn is_left_out(leave_out: &[Disc], at: Point) -> bool {
    leave_out
        .iter()
        .any(|disc| disc.at.distance(at) < disc.radius * (1.0 - 1e-9))
}

/// Modulus of the component of a slope along a direction.
pub(super) fn component(slope: super::recovery::Slope, along: [f64; 2]) -> f64 {
    let part = |side: usize| slope[0][side] * along[0] + slope[1][side] * along[1];
    part(0).hypot(part(1))
}

/// The shares between which a line lies in a triangle or on its edge; `None` if it only touches a corner.
fn clip(corners: [Point; 3], from: Point, to: Point) -> Option<[f64; 2]> {
    let (mut low, mut high) = (0.0_f64, 1.0_f64);
    for side in 0..3 {
        let (a, b) = (corners[side], corners[(side + 1) % 3]);
        let height = |p: Point| (b.r - a.r) * (p.z - a.z) - (b.z - a.z) * (p.r - a.r);
        let opposite = height(corners[(side + 2) % 3]);
        let (start, end) = (height(from) / opposite, height(to) / opposite);
        // Points outside by no more than this lie on the edge.
        let slack = 1e-9;
        if start < -slack && end < -slack {
            return None;
        }
        if (start < -slack) != (end < -slack) {
            let crossing = (start + slack) / (start - end);
            if start < end {
                low = low.max(crossing);
            } else {
                high = high.min(crossing);
            }
        }
    }
    (high - low > 1e-12).then_some([low, high])
}

/// Angles between which a circle lies in a triangle.
fn arcs_inside(corners: [Point; 3], disc: &Disc) -> Vec<[f64; 2]> {
    let (mut nearest, mut farthest) = (f64::INFINITY, 0.0_f64);
    for side in 0..3 {
        let (a, b) = (corners[side], corners[(side + 1) % 3]);
        farthest = farthest.max(disc.at.distance(a));
        let length2 = a.distance(b).powi(2);
        let share = ((disc.at.r - a.r) * (b.r - a.r) + (disc.at.z - a.z) * (b.z - a.z)) / length2;
        nearest = nearest.min(disc.at.distance(a.towards(b, share.clamp(0.0, 1.0))));
    }
    if farthest < disc.radius || nearest > disc.radius {
        // A circle wholly inside one triangle is too small for the mesh to distinguish from a point.
        return Vec::new();
    }
    let mut angles = Vec::new();
    for side in 0..3 {
        let (a, b) = (corners[side], corners[(side + 1) % 3]);
        let (u, v) = ([a.r - disc.at.r, a.z - disc.at.z], [b.r - a.r, b.z - a.z]);
        let (p, q) = (v[0] * v[0] + v[1] * v[1], u[0] * v[0] + u[1] * v[1]);
        let root = q * q - p * (u[0] * u[0] + u[1] * u[1] - disc.radius * disc.radius);
        if root <= 0.0 {
            continue;
        }
        for sign in [-1.0, 1.0] {
            let share = (-q + sign * root.sqrt()) / p;
            if (-1e-12..=1.0 + 1e-12).contains(&share) {
                let at = a.towards(b, share);
                angles.push((at.z - disc.at.z).atan2(at.r - disc.at.r));
            }
        }
    }
    angles.sort_by(f64::total_cmp);
    let n = angles.len();
    let mut arcs = Vec::new();
    for position in 0..n {
        let from = angles[position];
        let to = if position + 1 < n {
            angles[position + 1]
        } else {
            angles[0] + 2.0 * std::f64::consts::PI
        };
        let (sine, cosine) = (0.5 * (from + to)).sin_cos();
        let middle = Point::new(
            disc.at.r + disc.radius * cosine,
            disc.at.z + disc.radius * sine,
        );
        let is_inside = (0..3).all(|side| {
            let (a, b) = (corners[side], corners[(side + 1) % 3]);
            (b.r - a.r) * (middle.z - a.z) - (b.z - a.z) * (middle.r - a.r) > 0.0
        });
        if is_inside && to > from {
            arcs.push([from, to]);
        }
    }
    arcs
}
