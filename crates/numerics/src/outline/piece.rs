//! Piece: a curve with the places of its ends, and exact geometry on it.
//!
//! **What.** The stretches of one curve that lie within a distance of another: lines and arcs, all in closed form.
//!
//! **Why separate.** Crossings, touches, junctions and overlaps are all derived from these stretches, so that one tolerance has one meaning.
//!
//! **Invariants.** No finite input makes anything here fail; an undecidable case yields no stretch.

use super::stretch::{Stretches, WHOLE, clipped, complement, intersection, union};
use super::{Point, Shape};
use std::f64::consts::{PI, TAU};

/// Circle of an arc, with the direction of the arc.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Circle {
    pub(super) center: Point,
    /// Mean distance of the ends from the centre, m.
    pub(super) radius: f64,
    /// Angle of the first end about the centre, rad.
    start: f64,
    /// Angle turned through, rad, within (−π, π).
    pub(super) turn: f64,
}

/// A curve between two places.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Piece {
    pub(super) from: Point,
    pub(super) to: Point,
    pub(super) circle: Option<Circle>,
}

/// Least and greatest r and z, m.
#[derive(Clone, Copy, Debug)]
pub(super) struct Extent {
    pub(super) r: [f64; 2],
    pub(super) z: [f64; 2],
}

impl Extent {
    /// Whether two extents come within a distance of each other, m.
    pub(super) fn meets(&self, other: &Extent, distance: f64) -> bool {
        let meet = |a: [f64; 2], b: [f64; 2]| a[0] <= b[1] + distance && b[0] <= a[1] + distance;
        meet(self.r, other.r) && meet(self.z, other.z)
    }
}

impl Piece {
    pub(crate) fn new(from: Point, to: Point, shape: Shape) -> Self {
        let circle = match shape {
            Shape::Line => None,
            Shape::Arc { center } => {
                let (a, b) = (less(from, center), less(to, center));
                Some(Circle {
                    center,
                    radius: 0.5 * (length(a) + length(b)),
                    start: a[1].atan2(a[0]),
                    turn: cross(a, b).atan2(dot(a, b)),
                })
            }
        };
        Self { from, to, circle }
    }

    /// The place at a share of the length; 0 and 1 give the ends exactly.
    pub(crate) fn place(&self, t: f64) -> Point {
        if t <= 0.0 {
            return self.from;
        }
        if t >= 1.0 {
            return self.to;
        }
        match &self.circle {
            None => self.from.towards(self.to, t),
            Some(circle) => circle.at(circle.start + t * circle.turn),
        }
    }

    /// Whether it is a straight line.
    pub(crate) fn is_straight(&self) -> bool {
        self.circle.is_none()
    }

    /// Radius of its circle, m, if it is an arc and the place lies outside that circle.
    pub(crate) fn radius_from_outside(&self, place: Point) -> Option<f64> {
        let circle = self.circle.as_ref()?;
        let is_outside = length(less(place, circle.center)) > circle.radius;
        is_outside.then_some(circle.radius)
    }

    /// Unit vector along the curve at a share of its length.
    pub(super) fn tangent(&self, t: f64) -> [f64; 2] {
        match &self.circle {
            None => unit(less(self.to, self.from)),
            Some(circle) => {
                let (sine, cosine) = (circle.start + t * circle.turn).sin_cos();
                let sign = circle.turn.signum();
                [-sine * sign, cosine * sign]
            }
        }
    }

    pub(crate) fn length(&self) -> f64 {
        match &self.circle {
            None => self.from.distance(self.to),
            Some(circle) => circle.radius * circle.turn.abs(),
        }
    }

    pub(super) fn extent(&self) -> Extent {
        let span = |a: f64, b: f64| [a.min(b), a.max(b)];
        let mut extent = Extent {
            r: span(self.from.r, self.to.r),
            z: span(self.from.z, self.to.z),
        };
        if let Some(circle) = &self.circle {
            for quarter in 0..4 {
                let angle = f64::from(quarter) * 0.5 * PI;
                if !self.arc_near(circle, angle, 0.0, 1.0).is_empty() {
                    let place = circle.at(angle);
                    extent.r = [extent.r[0].min(place.r), extent.r[1].max(place.r)];
                    extent.z = [extent.z[0].min(place.z), extent.z[1].max(place.z)];
                }
            }
        }
        extent
    }

    /// Share of the length at which the curve is nearest to a place, and that distance, m.
    pub(crate) fn nearest(&self, place: Point) -> (f64, f64) {
        let along = match &self.circle {
            None => {
                let d = less(self.to, self.from);
                dot(less(place, self.from), d) / dot(d, d)
            }
            Some(circle) => {
                let p = less(place, circle.center);
                let from = less(self.from, circle.center);
                let angle = cross(from, p).atan2(dot(from, p));
                angle / circle.turn
            }
        };
        let mut best = (0.0, place.distance(self.from));
        let to = place.distance(self.to);
        if to < best.1 {
            best = (1.0, to);
        }
        if along > 0.0 && along < 1.0 {
            let distance = place.distance(self.place(along));
            if distance < best.1 {
                best = (along, distance);
            }
        }
        best
    }

    /// Signed distance from the line or circle that contains the curve, m.
    pub(super) fn side(&self, place: Point) -> f64 {
        match &self.circle {
            None => cross(unit(less(self.to, self.from)), less(place, self.from)),
            Some(circle) => length(less(place, circle.center)) - circle.radius,
        }
    }

    /// The stretches that lie within a distance `reach` (m) of another curve.
    pub(super) fn near(&self, other: &Piece, reach: f64) -> Stretches {
        let body = match &other.circle {
            None => {
                let along = unit(less(other.to, other.from));
                let across = [-along[1], along[0]];
                let strip = intersection(
                    &self.beyond(other.from, across, reach),
                    &self.beyond(other.from, [-across[0], -across[1]], reach),
                );
                let between = intersection(
                    &self.beyond(other.from, along, 0.0),
                    &self.beyond(other.to, [-along[0], -along[1]], 0.0),
                );
                intersection(&strip, &between)
            }
            Some(circle) => {
                let (inner, outer) = (circle.radius - reach, circle.radius + reach);
                let mut ring = self.within(circle.center, outer);
                if inner > 0.0 {
                    ring = intersection(&ring, &complement(&self.within(circle.center, inner)));
                }
                let sign = circle.turn.signum();
                let from = unit(less(other.from, circle.center));
                let to = unit(less(other.to, circle.center));
                let wedge = intersection(
                    &self.beyond(circle.center, [-from[1] * sign, from[0] * sign], 0.0),
                    &self.beyond(circle.center, [to[1] * sign, -to[0] * sign], 0.0),
                );
                intersection(&ring, &wedge)
            }
        };
        let ends = union(self.within(other.from, reach), self.within(other.to, reach));
        union(body, ends)
    }

    /// The stretches within a distance of a place.
    fn within(&self, place: Point, reach: f64) -> Stretches {
        match &self.circle {
            None => {
                let d = less(self.to, self.from);
                let squared = dot(d, d);
                let middle = dot(less(place, self.from), d) / squared;
                let off = cross(unit(d), less(place, self.from));
                let half_squared = (reach - off) * (reach + off) / squared;
                if half_squared < 0.0 {
                    return Vec::new();
                }
                let half = half_squared.sqrt();
                clipped(middle - half, middle + half)
            }
            Some(circle) => {
                // |P − place|² = (R − d)² + 4 R d sin²(y/2), y the angle from the nearest point.
                let towards = less(place, circle.center);
                let (d, radius) = (length(towards), circle.radius);
                let most = 4.0 * radius * d;
                if most <= 0.0 {
                    return if radius <= reach {
                        vec![WHOLE]
                    } else {
                        Vec::new()
                    };
                }
                let part = (reach - (radius - d)) * (reach + (radius - d)) / most;
                let rest = (radius + d - reach) * (radius + d + reach) / most;
                self.arc_near(circle, towards[1].atan2(towards[0]), part, rest)
            }
        }
    }

    /// The stretches with n·(P − place) ≥ −slack, n a unit vector.
    fn beyond(&self, place: Point, n: [f64; 2], slack: f64) -> Stretches {
        match &self.circle {
            None => {
                let from = dot(n, less(self.from, place)) + slack;
                let to = dot(n, less(self.to, place)) + slack;
                match (from >= 0.0, to >= 0.0) {
                    (true, true) => vec![WHOLE],
                    (false, false) => Vec::new(),
                    (true, false) => clipped(0.0, from / (from - to)),
                    (false, true) => clipped(from / (from - to), 1.0),
                }
            }
            Some(circle) => {
                let middle = dot(n, less(circle.center, place));
                let most = 2.0 * circle.radius;
                let part = (middle + circle.radius + slack) / most;
                let rest = (circle.radius - middle - slack) / most;
                self.arc_near(circle, n[1].atan2(n[0]), part, rest)
            }
        }
    }

    /// The stretches of an arc with sin²(y/2) ≤ part, y the angle from `middle`; `rest` is 1 − part, passed separately so that neither is rounded away.
    fn arc_near(&self, circle: &Circle, middle: f64, part: f64, rest: f64) -> Stretches {
        if part < 0.0 {
            return Vec::new();
        }
        if rest < 0.0 {
            return vec![WHOLE];
        }
        if part <= 0.5 {
            let half = 2.0 * part.sqrt().asin();
            return circle.shares(middle - half, middle + half);
        }
        let half = 2.0 * rest.min(1.0).sqrt().asin();
        let far = middle + PI;
        complement(&circle.shares(far - half, far + half))
    }
}

impl Circle {
    fn at(&self, angle: f64) -> Point {
        let (sine, cosine) = angle.sin_cos();
        Point::new(
            self.center.r + self.radius * cosine,
            self.center.z + self.radius * sine,
        )
    }

    /// Shares of the arc whose angle lies between two angles, modulo whole turns.
    fn shares(&self, low: f64, high: f64) -> Stretches {
        let mut found = Vec::new();
        for whole in -2..=2 {
            let shift = f64::from(whole) * TAU - self.start;
            let (a, b) = ((low + shift) / self.turn, (high + shift) / self.turn);
            found = union(found, clipped(a.min(b), a.max(b)));
        }
        found
    }
}

pub(super) fn less(a: Point, b: Point) -> [f64; 2] {
    [a.r - b.r, a.z - b.z]
}

pub(super) fn dot(a: [f64; 2], b: [f64; 2]) -> f64 {
    a[0] * b[0] + a[1] * b[1]
}

pub(super) fn cross(a: [f64; 2], b: [f64; 2]) -> f64 {
    a[0] * b[1] - a[1] * b[0]
}

fn length(a: [f64; 2]) -> f64 {
    a[0].hypot(a[1])
}

fn unit(a: [f64; 2]) -> [f64; 2] {
    let length = length(a);
    [a[0] / length, a[1] / length]
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(from: [f64; 2], to: [f64; 2]) -> Piece {
        let point = |p: [f64; 2]| Point::new(p[0], p[1]);
        Piece::new(point(from), point(to), Shape::Line)
    }

    fn arc(center: [f64; 2], radius: f64, start: f64, turn: f64) -> Piece {
        let center = Point::new(center[0], center[1]);
        let at = |angle: f64| {
            Point::new(
                center.r + radius * angle.cos(),
                center.z + radius * angle.sin(),
            )
        };
        Piece::new(at(start), at(start + turn), Shape::Arc { center })
    }

    /// Compares the stretches with distances at many places.
    #[track_caller]
    fn check(a: &Piece, b: &Piece, reach: f64) {
        let near = a.near(b, reach);
        for step in 0..=1000 {
            let t = f64::from(step) / 1000.0;
            let distance = b.nearest(a.place(t)).1;
            let inside = near.iter().any(|s| s[0] <= t && t <= s[1]);
            if (distance - reach).abs() > 1e-12 {
                assert_eq!(inside, distance < reach, "t {t}, distance {distance}");
            }
        }
    }

    #[test]
    fn stretches_near_another_curve_agree_with_distances_at_places() {
        let pieces = [
            line([0.0, 0.0], [1.0, 0.2]),
            line([0.3, -0.5], [0.4, 0.8]),
            line([0.0, 0.1], [1.0, 0.3]),
            arc([0.0, 0.0], 1.0, 0.0, 1.57),
            arc([0.0, 0.0], 1.0, 1.6, -1.6),
            arc([0.2, 0.1], 0.7, 0.1, 3.0),
            arc([0.1, -0.9], 0.9, 3.0, -3.1),
            arc([0.0, 0.0], 0.5, 2.0, 2.9),
            arc([0.0, 0.0], 0.999, -2.0, 3.1),
        ];
        for a in &pieces {
            for b in &pieces {
                for reach in [1e-3, 0.05, 0.3, 2.0] {
                    check(a, b, reach);
                }
            }
        }
    }
}
