//! Cone: the line along which a tapered plug and its body meet, in the plane of the section.
//!
//! Source: a line r = a − s z is square to the unit vector (1, s) / √(1 + s²); moving the line by t along that vector adds t √(1 + s²) to r (plane geometry).

use crate::catalogue::Taper;
use crate::said::PlugShape;
use jointwright_numerics::outline::Point;

/// A cone round the axis that narrows from z = 0 on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Cone {
    /// Radius at the large end, z = 0, m.
    pub(super) large: f64,
    /// Fall of the radius along the axis, m/m.
    pub(super) slope: f64,
    /// Position of the small end, m.
    pub(super) length: f64,
}

impl Cone {
    /// The plug's own cone.
    ///
    /// # Errors
    /// The reason why its dimensions make no cone.
    pub(super) fn of(taper: &Taper) -> Result<Cone, PlugShape> {
        let (large, small) = (taper.large_diameter, taper.small_diameter);
        let (stud, length) = (taper.stud_diameter, taper.length);
        if length.mm() <= 0.0 {
            return Err(PlugShape::Length {
                length: length.to_string(),
            });
        }
        if small >= large {
            return Err(PlugShape::NotTapered {
                small: small.to_string(),
                large: large.to_string(),
            });
        }
        if stud >= small || stud.mm() <= 0.0 {
            return Err(PlugShape::StudOutside {
                stud: stud.to_string(),
                small: small.to_string(),
            });
        }
        Ok(Cone {
            large: large.m() / 2.0,
            slope: (large.m() - small.m()) / 2.0 / length.m(),
            length: length.m(),
        })
    }

    /// Radius at a place along the axis, m.
    pub(super) fn radius(&self, z: f64) -> f64 {
        self.large - self.slope * z
    }

    /// Point on the cone at a place along the axis, m.
    pub(super) fn at(&self, z: f64) -> Point {
        Point::new(self.radius(z), z)
    }

    /// Point of the cone at its small end, m.
    pub(super) fn small_end(&self) -> Point {
        self.at(self.length)
    }

    /// √(1 + s²), the ratio of a distance along r to the distance square to the cone.
    fn stretch(&self) -> f64 {
        self.slope.hypot(1.0)
    }

    /// The cone moved outward by a thickness square to itself, m.
    pub(super) fn lifted(&self, thickness: f64) -> Cone {
        Cone {
            large: self.large + thickness * self.stretch(),
            ..*self
        }
    }

    /// Distance of a place from the line of the cone, m.
    pub(super) fn distance(&self, at: Point) -> f64 {
        (at.r - self.radius(at.z)).abs() / self.stretch()
    }

    /// A place moved square to the cone, away from the axis, m.
    pub(super) fn moved(&self, at: Point, by: f64) -> Point {
        let by = by / self.stretch();
        Point::new(at.r + by, at.z + by * self.slope)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // Oracle: the points of tests/published/field-sections/S21-plug-grease-film.case.json, in millimetres there.
    #[test]
    fn a_lifted_cone_lies_a_thickness_away() {
        let cone = Cone {
            large: 24e-3,
            slope: 9.0 / 80.0,
            length: 80e-3,
        };
        let lifted = cone.lifted(0.15e-3);
        let corner = Point::new(24.150_946_234_219_34e-3, 0.0);
        assert!(lifted.at(0.0).distance(corner) < 1e-15);
        assert!((cone.distance(lifted.at(30e-3)) - 0.15e-3).abs() < 1e-15);
        let moved = cone.moved(cone.at(30e-3), 0.15e-3);
        assert!(lifted.distance(moved) < 1e-15);
        assert!((moved.distance(cone.at(30e-3)) - 0.15e-3).abs() < 1e-15);
    }
}
