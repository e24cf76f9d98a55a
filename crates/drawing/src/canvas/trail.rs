//! Trail: lines from place to place, written with the digits of their page.

use super::bounds::Place;
use std::fmt::Write;

/// A step of the pen.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Step {
    /// Lifts the pen, and sets it down at a place.
    From(Place),
    /// Draws a straight line to a place.
    To(Place),
    /// Draws a level line to an x.
    ToX(f64),
    /// Draws an upright line to a y.
    ToY(f64),
    /// Draws a curve with two guides to a place.
    Bend([Place; 3]),
    /// Draws a straight line back to where the pen was set down.
    Close,
}

/// Straight and bent lines.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Trail {
    steps: Vec<Step>,
}

impl Trail {
    /// Trail that begins at a place.
    pub(crate) fn from(place: Place) -> Self {
        Self::default().with(Step::From(place))
    }

    /// Lines through places in their order.
    pub(crate) fn through(places: &[Place]) -> Self {
        let mut trail = Self::default();
        for (n, place) in places.iter().enumerate() {
            trail.add(if n == 0 {
                Step::From(*place)
            } else {
                Step::To(*place)
            });
        }
        trail
    }

    /// Lines that begin at a corner of a rectangle and go around it.
    pub(crate) fn around([left, top]: Place, [right, bottom]: Place) -> Self {
        let start = Self::from([left, top]).level_to(right).upright_to(bottom);
        start.level_to(left).close()
    }

    pub(crate) fn to(self, place: Place) -> Self {
        self.with(Step::To(place))
    }

    pub(crate) fn level_to(self, x: f64) -> Self {
        self.with(Step::ToX(x))
    }

    pub(crate) fn upright_to(self, y: f64) -> Self {
        self.with(Step::ToY(y))
    }

    /// The same with a curve that leaves toward the first guide and comes in from the second.
    pub(crate) fn bend(self, first: Place, second: Place, to: Place) -> Self {
        self.with(Step::Bend([first, second, to]))
    }

    pub(crate) fn close(self) -> Self {
        self.with(Step::Close)
    }

    /// Adds the lines of another trail.
    pub(crate) fn join(&mut self, other: Trail) {
        self.steps.extend(other.steps);
    }

    pub(crate) fn is_empty(&self) -> bool {
        self.steps.is_empty()
    }

    fn add(&mut self, step: Step) {
        self.steps.push(step);
    }

    fn with(mut self, step: Step) -> Self {
        self.add(step);
        self
    }

    /// The trail as SVG writes it.
    pub(super) fn d(&self, digits: usize) -> String {
        let mut d = String::new();
        for step in &self.steps {
            // Writing to a text cannot fail.
            let _ = match step {
                Step::From([x, y]) => write!(d, "M{x:.digits$} {y:.digits$}"),
                Step::To([x, y]) => write!(d, "L{x:.digits$} {y:.digits$}"),
                Step::ToX(x) => write!(d, "H{x:.digits$}"),
                Step::ToY(y) => write!(d, "V{y:.digits$}"),
                Step::Bend([[a, b], [e, f], [x, y]]) => write!(
                    d,
                    "C{a:.digits$} {b:.digits$} {e:.digits$} {f:.digits$} {x:.digits$} {y:.digits$}"
                ),
                Step::Close => write!(d, "Z"),
            };
        }
        d
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_trail_is_written_with_the_digits_of_its_page() {
        let trail = Trail::from([1.0, 2.05])
            .to([3.0, 4.0])
            .level_to(5.26)
            .upright_to(6.0);
        assert_eq!(trail.d(1), "M1.0 2.0L3.0 4.0H5.3V6.0");
        assert_eq!(trail.close().d(2), "M1.00 2.05L3.00 4.00H5.26V6.00Z");
        assert!(Trail::default().is_empty() && Trail::default().d(1).is_empty());
        let round = Trail::around([0.0, 1.0], [2.0, 3.0]);
        assert_eq!(round.d(0), "M0 1H2V3H0Z");
    }
}
