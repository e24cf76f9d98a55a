//! Outlines: a plane section as points, lines and arcs, and the regions that they bound.
//!
//! **What.** The shapes of a section, from which it is meshed and solved.
//!
//! ```text
//!      z                     curve 2, from 2 to 3
//!      ^          3 o<---------------o 2         a region's loop goes once round it, either way:
//!      |            |     region     |            +0 +1 +2 +3
//!      |    curve 3 |                | curve 1   a curve run from `to` to `from` is `is_reversed`
//!      |          0 o--------------->o 1
//!      +----> r              curve 0, from 0 to 1
//! ```
//!
//! **Why separate.** Whether a drawing is a section is checked once, before meshing, and the answer names curves and places.
//!
//! **Invariants.** Lengths are metres, r ≥ 0 is the distance from the axis of rotation and z runs along it.
//! An arc is shorter than half a turn, so its centre tells which of the two arcs is meant.
//! Nothing here moves, rounds or repairs the drawing.
//!
//! **Not here.** Files and units (`case`), sizes and triangles (`mesh`), materials and potentials (`field`).

mod check;
mod contact;
mod curve;
mod flaw;
mod piece;
mod place;
mod places;
mod regions;
mod stretch;
mod winding;

pub use check::check;
pub use curve::{Curve, Shape};
pub use flaw::{CurveName, Entity, Flaw, RegionName, mm, place_mm};
pub(crate) use piece::Piece;
pub use place::CurveAt;

/// A point of the half plane of a section, in metres.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Point {
    /// Distance from the axis of rotation, m.
    pub r: f64,
    /// Place along the axis, m.
    pub z: f64,
}

impl Point {
    /// Makes a point from its radius and its place along the axis, m.
    pub const fn new(r: f64, z: f64) -> Self {
        Self { r, z }
    }

    /// Distance to another point, m.
    pub fn distance(self, other: Self) -> f64 {
        (self.r - other.r).hypot(self.z - other.z)
    }

    /// The point a share `t` of the way from this one to another; `t` = 0 is this one exactly.
    pub fn towards(self, other: Self, t: f64) -> Self {
        Self::new(
            self.r + t * (other.r - self.r),
            self.z + t * (other.z - self.z),
        )
    }
}

/// A curve of a region's loop, with the direction in which the loop runs along it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Side {
    /// Index into [`Outline::curves`], from 0.
    pub curve_index: usize,
    /// Whether the loop runs it from `to` to `from`.
    pub is_reversed: bool,
}

/// A region: the area inside one closed loop of curves.
/// It has no holes of its own.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Region {
    /// Its name in the section.
    pub name: String,
    /// The loop, in order; either direction.
    pub boundary: Vec<Side>,
}

/// A section: points, the curves between them, and the regions that the curves bound.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Outline {
    /// Places, m.
    pub points: Vec<Point>,
    /// Lines and arcs between points.
    pub curves: Vec<Curve>,
    /// Parts that carry field; neighbours share their curves.
    pub regions: Vec<Region>,
}

impl Outline {
    /// The point of a curve at a share `t` of its length, from 0 at `from` to 1 at `to`.
    ///
    /// The ends are exactly the points of the outline.
    ///
    /// # Panics
    /// If the curve or its points are not in the outline.
    pub fn place(&self, curve_index: usize, t: f64) -> Point {
        let curve = &self.curves[curve_index];
        curve.place(self.points[curve.from], self.points[curve.to], t)
    }

    /// Length of a curve, m.
    ///
    /// # Panics
    /// If the curve or its points are not in the outline.
    pub fn length(&self, curve_index: usize) -> f64 {
        let curve = &self.curves[curve_index];
        curve.length(self.points[curve.from], self.points[curve.to])
    }
}
