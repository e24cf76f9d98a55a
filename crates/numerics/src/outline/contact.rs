//! Contacts: the meetings of two curves, apart from their shared ends.
//!
//! **What.** Crossings, touches, ends that lie on the other curve, and stretches on which one curve lies on the other.
//!
//! **Why separate.** Curves of a section may meet tangentially at a shared end: near it their distance is below any tolerance, and they are legal.
//! Only this file tells that from a mistake.
//!
//! **Invariants.** Curves that share an end may come arbitrarily close on the stretch that begins there.
//! Elsewhere, any place within [`TOUCH`] of the other curve is a contact.
//! The ends of an arc may lie off its circle by [`TOUCH`], so two tangential curves may seem to cross near their shared end.
//! This is not a crossing as long as they stay within [`ATTACHED`] of each other from the end to there.

use super::Point;
use super::piece::Piece;
use super::stretch::Stretches;

/// Distance below which two places are the same place, m.
pub(super) const TOUCH: f64 = 1e-9;
/// Distance up to which curves that leave a shared end still count as attached, m: both ends off by [`TOUCH`], times two.
const ATTACHED: f64 = 5.0 * TOUCH;
/// Shortest length of a stretch, m; the discs about the ends of a single place are shorter.
const STRETCH: f64 = 20.0 * TOUCH;

/// One contact of two curves, the first and the second.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Contact {
    /// One curve passes through the other.
    Cross(Point),
    /// The curves touch and part again.
    Touch(Point),
    /// An end of the first lies on the second, or the other way round.
    End {
        /// Whether the end belongs to the first.
        is_of_first: bool,
        /// Place of the end.
        at: Point,
    },
    /// One curve lies on the other between two places.
    Overlap(Point, Point),
}

/// All contacts of two curves; `shared` states for the ends `from` and `to` of each whether it is also an end of the other.
pub(super) fn contacts(first: &Piece, second: &Piece, shared: [[bool; 2]; 2]) -> Vec<Contact> {
    let near = first.near(second, TOUCH);
    if near.is_empty() {
        return Vec::new();
    }
    let attached = attached(first, second, shared[0]);
    let ends = free_ends(first, second, shared);
    let mut found: Vec<Contact> = Vec::new();
    for stretch in &near {
        let limits = [first.place(stretch[0]), first.place(stretch[1])];
        found.extend(overlap(first, second, limits));
    }
    let is_limit = |at: Point| {
        found.iter().any(|contact| match contact {
            Contact::Overlap(a, b) => at.distance(*a).min(at.distance(*b)) < STRETCH,
            _ => false,
        })
    };
    let ends: Vec<Contact> = ends
        .into_iter()
        .filter(|end| !matches!(end, Contact::End { at, .. } if is_limit(*at)))
        .collect();
    found.extend(ends.iter().copied());
    for stretch in &near {
        let limits = [first.place(stretch[0]), first.place(stretch[1])];
        let middle = first.place(0.5 * (stretch[0] + stretch[1]));
        let half = 0.5 * first.length() * (stretch[1] - stretch[0]);
        let is_said = overlap(first, second, limits).is_some()
            || ends.iter().any(
                |end| matches!(end, Contact::End { at, .. } if at.distance(middle) <= half + ATTACHED),
            )
            || attached
                .iter()
                .any(|wide| wide[0] <= stretch[0] && stretch[1] <= wide[1]);
        if !is_said {
            found.push(if passes_through(first, second, *stretch) {
                Contact::Cross(middle)
            } else {
                Contact::Touch(middle)
            });
        }
    }
    found
}

/// The stretches of the first that begin at an end it shares, slightly wider than a touch.
fn attached(first: &Piece, second: &Piece, shared: [bool; 2]) -> Stretches {
    if shared == [false, false] {
        return Vec::new();
    }
    let mut wide = first.near(second, ATTACHED);
    wide.retain(|s| (shared[0] && s[0] <= 0.0) || (shared[1] && s[1] >= 1.0));
    wide
}

/// Ends of one curve that lie on the other without being its ends.
fn free_ends(first: &Piece, second: &Piece, shared: [[bool; 2]; 2]) -> Vec<Contact> {
    let mut ends = Vec::new();
    for (is_of_first, own, other, shared) in [
        (true, first, second, shared[0]),
        (false, second, first, shared[1]),
    ] {
        for (at, is_shared) in [(own.from, shared[0]), (own.to, shared[1])] {
            if !is_shared && other.nearest(at).1 <= TOUCH {
                ends.push(Contact::End { is_of_first, at });
            }
        }
    }
    ends
}

/// An overlap, if a stretch is long and runs from an end of one of the two to another end; else `None`.
fn overlap(first: &Piece, second: &Piece, limits: [Point; 2]) -> Option<Contact> {
    let end = |at: Point| {
        [first.from, first.to, second.from, second.to]
            .into_iter()
            .find(|end| end.distance(at) <= ATTACHED)
    };
    let (from, to) = (end(limits[0])?, end(limits[1])?);
    (from.distance(to) > STRETCH).then_some(Contact::Overlap(from, to))
}

/// Whether the first changes sides of the second over a stretch.
fn passes_through(first: &Piece, second: &Piece, stretch: [f64; 2]) -> bool {
    let margin = (stretch[1] - stretch[0]).max(1e-9);
    let before = second.side(first.place(stretch[0] - margin));
    let after = second.side(first.place(stretch[1] + margin));
    before * after < 0.0
}

#[cfg(test)]
mod tests {
    use super::super::Shape;
    use super::*;

    const MM: f64 = 1e-3;

    fn mm(r: f64, z: f64) -> Point {
        Point::new(r * MM, z * MM)
    }

    fn line(from: Point, to: Point) -> Piece {
        Piece::new(from, to, Shape::Line)
    }

    fn arc(from: Point, to: Point, center: Point) -> Piece {
        Piece::new(from, to, Shape::Arc { center })
    }

    fn shared(a: &Piece, b: &Piece) -> [[bool; 2]; 2] {
        let is_end = |p: Point, of: &Piece| p == of.from || p == of.to;
        [
            [is_end(a.from, b), is_end(a.to, b)],
            [is_end(b.from, a), is_end(b.to, a)],
        ]
    }

    /// Checks the contacts, which are the same whichever curve is first and whichever way each is run.
    #[track_caller]
    fn check(a: &Piece, b: &Piece, expected: &[&str]) {
        let turned = |p: &Piece| match p.circle {
            None => line(p.to, p.from),
            Some(circle) => arc(p.to, p.from, circle.center),
        };
        for a in [*a, turned(a)] {
            for b in [*b, turned(b)] {
                for (one, other) in [(&a, &b), (&b, &a)] {
                    let found = contacts(one, other, shared(one, other));
                    let mut words: Vec<&str> = found
                        .iter()
                        .map(|contact| match contact {
                            Contact::Cross(_) => "cross",
                            Contact::Touch(_) => "touch",
                            Contact::End { .. } => "end",
                            Contact::Overlap(..) => "overlap",
                        })
                        .collect();
                    words.sort_unstable();
                    assert_eq!(words, expected, "{one:?} {other:?} {found:?}");
                }
            }
        }
    }

    /// A place rounded as files are written, to 1e-9 mm.
    fn rounded(center: Point, radius_mm: f64, degrees: f64) -> Point {
        let angle = degrees.to_radians();
        let round = |x: f64| (x / MM * 1e9).round() / 1e9 * MM;
        Point::new(
            round(center.r + radius_mm * MM * angle.cos()),
            round(center.z + radius_mm * MM * angle.sin()),
        )
    }

    #[test]
    fn lines_cross_touch_end_and_overlap() {
        let base = line(mm(0.0, 0.0), mm(10.0, 1.0));
        check(&base, &line(mm(5.0, -3.0), mm(5.0, 3.0)), &["cross"]);
        check(&base, &line(mm(5.0, 0.5), mm(5.0, 3.0)), &["end"]);
        check(&base, &line(mm(10.0, 1.0), mm(5.0, 3.0)), &[]);
        check(&base, &line(mm(10.0, 1.0), mm(20.0, 2.0)), &[]);
        check(&base, &line(mm(5.0, 0.5), mm(20.0, 2.0)), &["overlap"]);
        check(&base, &line(mm(0.0, 0.0), mm(20.0, 2.0)), &["overlap"]);
        check(&base, &line(mm(0.0, 0.0), mm(10.0, 1.0)), &["overlap"]);
        check(&base, &line(mm(0.0, 1e-5), mm(10.0, 1.0 + 1e-5)), &[]);
        check(
            &base,
            &line(mm(0.0, 1e-7), mm(10.0, 1.0 + 1e-7)),
            &["overlap"],
        );
        // A crossing at so small an angle that the touching stretch is long.
        check(
            &line(mm(0.0, -1e-4), mm(10.0, 1e-4)),
            &line(mm(0.0, 0.0), mm(10.0, 0.0)),
            &["cross"],
        );
    }

    #[test]
    fn arcs_cross_touch_end_and_overlap() {
        let center = mm(20.0, 0.0);
        let base = arc(mm(10.0, 0.0), mm(20.0, 10.0), center);
        check(&base, &line(mm(0.0, 5.0), mm(20.0, 5.0)), &["cross"]);
        check(&base, &line(mm(10.0, 10.0), mm(20.0, 0.0)), &["cross"]);
        check(&base, &line(mm(10.0, -5.0), mm(10.0, 5.0)), &["end"]);
        let touching = rounded(center, 10.0, 135.0);
        let off = 3.0 * MM;
        let tangent = line(
            Point::new(touching.r - off, touching.z - off),
            Point::new(touching.r + off, touching.z + off),
        );
        check(&base, &tangent, &["touch"]);
        let deeper = Point::new(tangent.to.r + 1e-4 * MM, tangent.to.z - 1e-4 * MM);
        check(&base, &line(tangent.from, deeper), &["cross", "cross"]);
        check(&base, &arc(touching, mm(20.0, 10.0), center), &["overlap"]);
        let beyond = rounded(center, 10.0, 200.0);
        check(&base, &arc(touching, beyond, center), &["overlap"]);
        check(&base, &line(mm(10.0, 0.0), mm(20.0, 10.0)), &[]);
        check(
            &base,
            &arc(mm(10.0, 5.0), mm(15.0, 0.0), mm(10.0, 0.0)),
            &["cross"],
        );
    }

    #[test]
    fn curves_that_share_an_end_may_cross_once_more() {
        let base = arc(mm(10.0, 0.0), mm(20.0, 10.0), mm(20.0, 0.0));
        // From the shared end into the circle and out again.
        let end = rounded(mm(20.0, 0.0), 12.0, 120.0);
        check(&base, &line(mm(10.0, 0.0), end), &["cross"]);
        let end = rounded(mm(20.0, 0.0), 8.0, 120.0);
        check(&base, &line(mm(10.0, 0.0), end), &[]);
    }

    #[test]
    fn tangential_meetings_at_a_shared_end_are_legal_at_any_radius_and_angle() {
        for radius in [0.05, 0.25, 3.0, 40.0, 900.0] {
            for degrees in [0.0, 17.3, 90.0, 133.7, 211.1, 300.9] {
                let center = mm(11.1 + radius, 7.3);
                let at = |turn: f64| rounded(center, radius, degrees + turn);
                let (from, to) = (at(0.0), at(40.0));
                let base = arc(from, to, center);
                let angle = (degrees + 90.0_f64).to_radians();
                for length in [-30.0, -0.2, 0.2, 30.0] {
                    let end = Point::new(
                        from.r + length * MM * angle.cos(),
                        from.z + length * MM * angle.sin(),
                    );
                    check(&base, &line(from, end), &[]);
                }
                for other in [-2.0, -1.0, -0.1, 0.1, 0.7, 1.5] {
                    // Centre on the radius through the shared end: outer tangency below zero, inner above.
                    let share = 1.0 - other;
                    let middle = from.towards(center, 1.0 - share);
                    let tail = degrees + if other < 0.0 { 180.0 } else { 0.0 };
                    for turn in [-50.0, 50.0] {
                        let end = rounded(middle, radius * f64::abs(other), tail + turn);
                        check(&base, &arc(from, end, middle), &[]);
                    }
                }
            }
        }
    }

    #[test]
    fn an_arc_off_its_circle_by_the_tolerance_is_still_tangential() {
        let center = mm(51.1, 0.0);
        let off = 0.9e-6;
        for (dr, dz) in [(off, 0.0), (-off, 0.0), (0.0, off), (0.0, -off)] {
            let from = mm(11.1, 0.0);
            let to = rounded(center, 40.0, 150.0);
            let moved = Point::new(center.r + dr * MM, center.z + dz * MM);
            let base = arc(from, to, moved);
            check(&base, &line(from, mm(11.1, 100.0)), &[]);
            check(&base, &line(from, mm(11.1, -100.0)), &[]);
            let inner = rounded(mm(31.1, 0.0), 20.0, 120.0);
            check(&base, &arc(from, inner, mm(31.1, 0.0)), &[]);
        }
    }
}
