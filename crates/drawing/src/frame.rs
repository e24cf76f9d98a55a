//! Frame: the mapping from places of the section to places in the picture.
//!
//! ```text
//!   r ^    z runs to the right, as joints are drawn, and r upwards from the axis
//!     |
//!     +----> z
//! ```

use crate::trace::Spot;
use jointwright_numerics::outline::{Outline, Point};

/// Greatest factor by which r is stretched.
const STRETCH_MOST: f64 = 10.0;

/// Room for a drawing, picture points.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Room {
    /// Width.
    pub(crate) width: f64,
    /// Greatest height.
    pub(crate) height_most: f64,
    /// Height below which r is stretched.
    pub(crate) height_least: f64,
}

impl Room {
    /// Room of a picture with a page of its own.
    pub(crate) const PICTURE: Self = Self {
        width: 1040.0,
        height_most: 560.0,
        height_least: 180.0,
    };
}

/// Mapping of the section to the picture.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Frame {
    /// Left and upper edge of the drawing, picture points.
    pub(crate) origin: [f64; 2],
    /// Width and height of the drawing, picture points.
    pub(crate) size: [f64; 2],
    /// Least and greatest z, m.
    pub(crate) z: [f64; 2],
    /// Least and greatest r, m.
    pub(crate) r: [f64; 2],
    /// Picture points per metre along z.
    pub(crate) scale: f64,
    /// Factor by which r is drawn larger than z.
    pub(crate) stretch: f64,
}

impl Frame {
    /// Frame of an outline; `None` if it has no place that is a number.
    pub(crate) fn new(outline: &Outline, origin: [f64; 2], room: Room) -> Option<Self> {
        let mut places = Vec::new();
        for curve in curves(outline) {
            places.extend(curve);
        }
        places.retain(|place| place.r.is_finite() && place.z.is_finite());
        let span = |of: fn(&Point) -> f64| {
            places
                .iter()
                .map(of)
                .fold([f64::INFINITY, f64::NEG_INFINITY], |[low, high], x| {
                    [low.min(x), high.max(x)]
                })
        };
        let (z, mut r) = (span(|p| p.z), span(|p| p.r));
        if places.is_empty() || z[1] - z[0] <= 0.0 || r[1] - r[0] <= 0.0 {
            return None;
        }
        // The axis is drawn unless the section is a thin ring far from it.
        if r[0] < 2.0 * (r[1] - r[0]) {
            r[0] = r[0].min(0.0);
        }
        let (length, height) = (z[1] - z[0], r[1] - r[0]);
        let scale = (room.width / length).min(room.height_most / height);
        let stretch = (room.height_least / (height * scale))
            .floor()
            .clamp(1.0, STRETCH_MOST);
        Some(Self {
            origin,
            size: [length * scale, height * scale * stretch],
            z,
            r,
            scale,
            stretch,
        })
    }

    /// Place in the picture, picture points.
    pub(crate) fn at(&self, place: Point) -> [f64; 2] {
        [
            self.origin[0] + (place.z - self.z[0]) * self.scale,
            self.origin[1] + (self.r[1] - place.r) * self.scale * self.stretch,
        ]
    }

    /// Place in the picture, tenths of a picture point.
    pub(crate) fn spot(&self, place: Point) -> Spot {
        self.at(place).map(|x| (10.0 * x).round() as i32)
    }
}

/// Places along each curve of an outline, dense enough for a picture.
pub(crate) fn curves(outline: &Outline) -> Vec<Vec<Point>> {
    outline
        .curves
        .iter()
        .map(|curve| {
            let ends = (outline.points.get(curve.from), outline.points.get(curve.to));
            let (Some(&from), Some(&to)) = ends else {
                return Vec::new();
            };
            let turn = curve.turn(from, to).abs();
            // Every three degrees.
            let n = 1 + (turn / 0.05).min(100.0) as u32;
            let share = |at: u32| f64::from(at) / f64::from(n);
            (0..=n).map(|at| curve.place(from, to, share(at))).collect()
        })
        .collect()
}
