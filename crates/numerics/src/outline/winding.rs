//! Winding: the area of a closed loop of lines and arcs, and its winding number about a place.
//!
//! **Source.** The area is the shoelace sum over the chords, and for each arc the segment between chord and arc, R²/2 (ψ − sin ψ).
//! The winding number is the sum of the angles that the chords subtend at the place, and a whole turn for each segment in which it lies.

use super::Point;
use super::piece::{Piece, cross, dot, less};
use std::f64::consts::TAU;

/// A curve of a loop, and whether it runs from `to` to `from`.
pub(super) type Run<'a> = (&'a Piece, bool);

/// Signed area of a closed loop, m²: positive counter-clockwise with r to the right and z up.
pub(super) fn area<'a>(runs: impl IntoIterator<Item = Run<'a>>) -> f64 {
    let mut origin: Option<Point> = None;
    let mut sum = 0.0;
    for (piece, is_reversed) in runs {
        // Relative to a place near the loop, the products stay as small as the loop.
        let origin = *origin.get_or_insert(piece.from);
        let mut part = 0.5 * cross(less(piece.from, origin), less(piece.to, origin));
        if let Some(circle) = &piece.circle {
            part += 0.5 * circle.radius * circle.radius * segment(circle.turn);
        }
        sum += if is_reversed { -part } else { part };
    }
    sum
}

/// ψ − sin ψ, at full precision also for a small ψ.
fn segment(turn: f64) -> f64 {
    if turn.abs() > 0.1 {
        return turn - turn.sin();
    }
    let squared = turn * turn;
    turn * squared / 6.0 * (1.0 - squared / 20.0 * (1.0 - squared / 42.0 * (1.0 - squared / 72.0)))
}

/// Winding number of a closed loop about a place that does not lie on it, counter-clockwise.
pub(super) fn winding<'a>(runs: impl IntoIterator<Item = Run<'a>>, place: Point) -> i64 {
    let mut sum = 0.0;
    for (piece, is_reversed) in runs {
        let (a, b) = (less(piece.from, place), less(piece.to, place));
        // Adding zero turns −0 into 0, so that a place on the chord is on its left whatever the sign.
        let left = cross(a, b) + 0.0;
        let mut angle = left.atan2(dot(a, b));
        if let Some(circle) = &piece.circle
            && place.distance(circle.center) < circle.radius
        {
            // An arc that runs counter-clockwise bulges to the right of its chord.
            if circle.turn > 0.0 && left < 0.0 {
                angle += TAU;
            } else if circle.turn < 0.0 && left >= 0.0 {
                angle -= TAU;
            }
        }
        sum += if is_reversed { -angle } else { angle };
    }
    let turns = (sum / TAU).round();
    // A loop from a file has far fewer curves than this cast can hold.
    turns as i64
}

#[cfg(test)]
mod tests {
    use super::super::Shape;
    use super::*;

    /// A disc of radius 2 about (5, 1), as four quarter arcs, counter-clockwise.
    fn disc() -> Vec<Piece> {
        let center = Point::new(5.0, 1.0);
        let corners = [(7.0, 1.0), (5.0, 3.0), (3.0, 1.0), (5.0, -1.0)];
        (0..4)
            .map(|i| {
                let (from, to) = (corners[i], corners[(i + 1) % 4]);
                Piece::new(
                    Point::new(from.0, from.1),
                    Point::new(to.0, to.1),
                    Shape::Arc { center },
                )
            })
            .collect()
    }

    #[test]
    fn area_of_a_disc_is_that_of_the_disc_either_way_round() {
        let disc = disc();
        let expected = std::f64::consts::PI * 4.0;
        let there = area(disc.iter().map(|p| (p, false)));
        let back = area(disc.iter().rev().map(|p| (p, true)));
        assert!((there - expected).abs() < 1e-12 && (back + expected).abs() < 1e-12);
    }

    #[test]
    fn small_segments_have_their_series() {
        for turn in [1e-6_f64, 0.0999, -0.05] {
            let terms = turn.powi(3) / 6.0 - turn.powi(5) / 120.0 + turn.powi(7) / 5040.0
                - turn.powi(9) / 362_880.0;
            assert!((segment(turn) - terms).abs() <= 1e-13 * terms.abs());
        }
        assert!((segment(0.100_000_1) - segment(0.099_999_9)).abs() < 2e-9);
    }

    #[test]
    fn a_disc_goes_once_round_what_is_in_it_and_not_round_the_rest() {
        let disc = disc();
        for (r, z, expected) in [
            (5.0, 1.0, 1),
            (6.999, 1.0, 1),
            (6.3, 2.3, 1),
            (6.5, 2.5, 0),
            (7.001, 1.0, 0),
            (3.5, -0.5, 0),
            (50.0, 1.0, 0),
            (6.0, 2.0, 1),
        ] {
            let place = Point::new(r, z);
            assert_eq!(winding(disc.iter().map(|p| (p, false)), place), expected);
            assert_eq!(winding(disc.iter().map(|p| (p, true)), place), -expected);
        }
    }
}
