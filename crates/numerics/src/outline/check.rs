//! Check: is a drawing a section?
//!
//! **What.** [`check`] compares every curve with every other and every region with every other, and names the flaws.
//!
//! **Why separate.** A region that is not glued to its neighbour is meshed and solved without complaint, and its field is zero: only the drawing can reveal it.
//!
//! **Invariants.** It never fails, whatever the outline contains.
//! A curve with a flaw of its own is not compared with others, and a region whose loop has a flaw is not compared with regions: one mistake is one flaw.
//! Tangential contact at a shared point is legal.
//! A loop may visit a point twice if it does not pass through itself there: a body is pinched where two electrodes touch.
//!
//! **Not here.** Whether separate parts of a section are connected, and how they are treated (`case`, `field`).

use super::contact::{Contact, TOUCH, contacts};
use super::flaw::{Flaw, curve_name};
use super::piece::{Extent, Piece};
use super::places::Places;
use super::regions;
use super::{Outline, Point, Shape};
use std::collections::BTreeSet;

/// Greatest amount by which rounding may make r negative, m.
const AXIS: f64 = 1e-12;
/// Number of contacts after which the search ends.
const CONTACTS_MOST: usize = 1000;

/// All flaws that keep an outline from being a section, ordered by the curve that each names first.
///
/// # Accuracy
/// Places within 1e-9 m are the same place.
///
/// ```
/// use jointwright_numerics::outline::{Curve, Outline, Point, Region, Shape, Side, check};
/// let curve = |from, to| Curve { from, to, shape: Shape::Line, tag: "rim".to_owned() };
/// let side = |curve_index| Side { curve_index, is_reversed: false };
/// let mut outline = Outline {
///     points: vec![Point::new(0.01, 0.0), Point::new(0.02, 0.0), Point::new(0.02, 0.01)],
///     curves: vec![curve(0, 1), curve(1, 2), curve(2, 0)],
///     regions: vec![Region { name: "wall".to_owned(), boundary: vec![side(0), side(1), side(2)] }],
/// };
/// assert!(check(&outline).is_empty());
/// outline.regions[0].boundary.pop();
/// let said: Vec<String> = check(&outline).iter().map(ToString::to_string).collect();
/// assert_eq!(said.len(), 2);
/// assert!(said[0].contains("curve 2 (rim) ends at (20, 10) mm, but curve 1 (rim), which is next, begins at (10, 0) mm"));
/// assert_eq!(said[1], "curve 3 (rim) belongs to no region");
/// ```
pub fn check(outline: &Outline) -> Vec<Flaw> {
    let mut flaws = not_finite(outline);
    let pieces = pieces(outline, &mut flaws);
    let places = Places::new(outline, &pieces, &mut flaws);
    let touched = compare(outline, &pieces, &places, &mut flaws);
    regions::check(outline, &pieces, &places, &touched, &mut flaws);
    flaws.sort_by_key(|flaw| flaw.curve_index().unwrap_or(usize::MAX));
    flaws
}

fn is_finite(place: Point) -> bool {
    // Beyond this, squares of lengths overflow.
    const LENGTH_MOST: f64 = 1e100;
    place.r.abs() <= LENGTH_MOST && place.z.abs() <= LENGTH_MOST
}

fn not_finite(outline: &Outline) -> Vec<Flaw> {
    let points = outline.points.iter().enumerate();
    points
        .filter(|(_, point)| !is_finite(**point))
        .map(|(index, _)| Flaw::NotFinite { index })
        .collect()
}

/// The curves without a flaw of their own; `None` for the others.
fn pieces(outline: &Outline, flaws: &mut Vec<Flaw>) -> Vec<Option<Piece>> {
    (0..outline.curves.len())
        .map(|index| match piece(outline, index) {
            Ok(piece) => {
                flaws.extend(beyond_axis(outline, index, &piece));
                Some(piece)
            }
            Err(flaw) => {
                flaws.extend(flaw.map(|flaw| *flaw));
                None
            }
        })
        .collect()
}

/// A flaw on the heap, so that the result without a flaw stays small.
fn boxed(flaw: Flaw) -> Option<Box<Flaw>> {
    Some(Box::new(flaw))
}

fn piece(outline: &Outline, index: usize) -> Result<Piece, Option<Box<Flaw>>> {
    let name = || curve_name(outline, index);
    let curve = &outline.curves[index];
    let mut ends = [Point::default(); 2];
    for (end, point) in ends.iter_mut().zip([curve.from, curve.to]) {
        let Some(place) = outline.points.get(point) else {
            return Err(boxed(Flaw::NoSuchPoint {
                curve: name(),
                point,
                n_points: outline.points.len(),
            }));
        };
        if !is_finite(*place) {
            // The point itself has this flaw.
            return Err(None);
        }
        *end = *place;
    }
    let [from, to] = ends;
    if curve.from == curve.to || from.distance(to) <= TOUCH {
        return Err(boxed(Flaw::NoLength {
            curve: name(),
            at: from,
        }));
    }
    if let Shape::Arc { center } = curve.shape {
        let radii = [center.distance(from), center.distance(to)];
        if !is_finite(center) || radii[0].min(radii[1]) <= TOUCH {
            return Err(boxed(Flaw::NoCircle {
                curve: name(),
                center,
            }));
        }
        // Each end is half of this from the circle between them; the last digits of large radii are rounding.
        let rounding = 4.0 * f64::EPSILON * radii[0];
        if (radii[0] - radii[1]).abs() > 2.0 * TOUCH + rounding {
            return Err(boxed(Flaw::OffCircle {
                curve: name(),
                center,
                radii,
            }));
        }
        if center.distance(from.towards(to, 0.5)) <= 2.0 * TOUCH + rounding {
            return Err(boxed(Flaw::HalfTurn {
                curve: name(),
                from,
                to,
                center,
            }));
        }
    }
    Ok(Piece::new(from, to, curve.shape))
}

fn beyond_axis(outline: &Outline, index: usize, piece: &Piece) -> Option<Flaw> {
    let mut least = if piece.from.r <= piece.to.r {
        piece.from
    } else {
        piece.to
    };
    let mut allowed = AXIS;
    let extent = piece.extent();
    if extent.r[0] < least.r
        && let Some(circle) = &piece.circle
    {
        least = Point::new(extent.r[0], circle.center.z);
        // An arc that touches the axis is as exact as its circle.
        allowed = TOUCH;
    }
    (least.r < -allowed).then(|| Flaw::BeyondAxis {
        curve: curve_name(outline, index),
        at: least,
    })
}

/// Compares every two curves; returns those that meet another away from shared ends.
fn compare(
    outline: &Outline,
    pieces: &[Option<Piece>],
    places: &Places,
    flaws: &mut Vec<Flaw>,
) -> BTreeSet<usize> {
    let mut extents: Vec<(usize, Piece, Extent)> = pieces
        .iter()
        .enumerate()
        .filter_map(|(index, piece)| piece.map(|piece| (index, piece, piece.extent())))
        .collect();
    extents.sort_by(|a, b| a.2.z[0].total_cmp(&b.2.z[0]));
    let mut touched = BTreeSet::new();
    let mut n_found = 0;
    for (at, one) in extents.iter().enumerate() {
        for other in &extents[at + 1..] {
            if other.2.z[0] > one.2.z[1] + TOUCH {
                break;
            }
            if !one.2.meets(&other.2, TOUCH) {
                continue;
            }
            // The lower index comes first, so that the message does not depend on where the curves lie.
            let (first, second) = if one.0 < other.0 {
                (one, other)
            } else {
                (other, one)
            };
            let shared = shared(outline, places, first.0, second.0);
            for contact in contacts(&first.1, &second.1, shared) {
                touched.extend([first.0, second.0]);
                flaws.push(flaw(outline, first.0, second.0, contact));
                n_found += 1;
            }
        }
        if n_found >= CONTACTS_MOST {
            flaws.push(Flaw::TooMany {
                curve: curve_name(outline, one.0),
                n_found,
            });
            break;
        }
    }
    touched
}

/// For the ends `from` and `to` of each of two curves: whether the other curve ends at the same place.
fn shared(outline: &Outline, places: &Places, first: usize, second: usize) -> [[bool; 2]; 2] {
    let ends = |index: usize| {
        let curve = &outline.curves[index];
        [places.of(curve.from), places.of(curve.to)]
    };
    let (first, second) = (ends(first), ends(second));
    [
        first.map(|end| second.contains(&end)),
        second.map(|end| first.contains(&end)),
    ]
}

fn flaw(outline: &Outline, first: usize, second: usize, contact: Contact) -> Flaw {
    let (one, other) = (curve_name(outline, first), curve_name(outline, second));
    match contact {
        Contact::Cross(at) => Flaw::Cross {
            first: one,
            second: other,
            at,
        },
        Contact::Touch(at) => Flaw::Touch {
            first: one,
            second: other,
            at,
        },
        Contact::End { is_of_first, at } => {
            let (curve, on) = if is_of_first {
                (one, other)
            } else {
                (other, one)
            };
            Flaw::EndsWithin { curve, on, at }
        }
        Contact::Overlap(from, to) => Flaw::Doubled {
            first: one,
            second: other,
            from,
            to,
        },
    }
}
