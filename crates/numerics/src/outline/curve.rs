//! One curve: a line, or an arc shorter than half a turn.

use super::Point;

/// Shape of a curve between its ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shape {
    /// Straight line.
    Line,
    /// The shorter arc about a centre; both ends must lie on its circle.
    Arc {
        /// Centre of the circle, m.
        center: Point,
    },
}

/// A curve between two points of an outline.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// Index of the point where it begins.
    pub from: usize,
    /// Index of the point where it ends.
    pub to: usize,
    /// Line or arc.
    pub shape: Shape,
    /// Its name; several curves may share a tag.
    pub tag: String,
}

impl Curve {
    /// The point at a share `t` of the length, between the ends `from` and `to`; `t` = 0 and 1 give the ends exactly.
    pub fn place(&self, from: Point, to: Point, t: f64) -> Point {
        if t <= 0.0 {
            return from;
        }
        if t >= 1.0 {
            return to;
        }
        match self.shape {
            Shape::Line => from.towards(to, t),
            Shape::Arc { center } => {
                let radius = radius(center, from, to);
                let (start, turn) = (angle(center, from), turn(center, from, to));
                let (sine, cosine) = (start + t * turn).sin_cos();
                Point::new(center.r + radius * cosine, center.z + radius * sine)
            }
        }
    }

    /// Unit vector (r, z) along the curve at a share `t` of its length, in the sense from → to.
    pub fn tangent(&self, from: Point, to: Point, t: f64) -> [f64; 2] {
        match self.shape {
            Shape::Line => {
                let length = from.distance(to);
                [(to.r - from.r) / length, (to.z - from.z) / length]
            }
            Shape::Arc { center } => {
                let turn = turn(center, from, to);
                let (sine, cosine) = (angle(center, from) + t * turn).sin_cos();
                [-sine * turn.signum(), cosine * turn.signum()]
            }
        }
    }

    /// Length between the ends `from` and `to`, m.
    pub fn length(&self, from: Point, to: Point) -> f64 {
        match self.shape {
            Shape::Line => from.distance(to),
            Shape::Arc { center } => radius(center, from, to) * turn(center, from, to).abs(),
        }
    }

    /// Radius of curvature, m; infinite for a line.
    pub fn radius(&self, from: Point, to: Point) -> f64 {
        match self.shape {
            Shape::Line => f64::INFINITY,
            Shape::Arc { center } => radius(center, from, to),
        }
    }

    /// Angle through which the curve turns, rad: positive counter-clockwise with r to the right and z up; 0 for a line.
    pub fn turn(&self, from: Point, to: Point) -> f64 {
        match self.shape {
            Shape::Line => 0.0,
            Shape::Arc { center } => turn(center, from, to),
        }
    }
}

fn radius(center: Point, from: Point, to: Point) -> f64 {
    0.5 * (center.distance(from) + center.distance(to))
}

fn angle(center: Point, place: Point) -> f64 {
    (place.z - center.z).atan2(place.r - center.r)
}

/// Angle of the shorter way round from one end to the other, in (−π, π].
fn turn(center: Point, from: Point, to: Point) -> f64 {
    let (a, b) = (
        [from.r - center.r, from.z - center.z],
        [to.r - center.r, to.z - center.z],
    );
    (a[0] * b[1] - a[1] * b[0]).atan2(a[0] * b[0] + a[1] * b[1])
}
