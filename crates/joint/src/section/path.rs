//! Path: an open chain of corners, rounded, and cut off at a plane.
//!
//! Source: a circle of radius ρ between two lines that meet at the angle θ touches each line at ρ / tan(θ/2) from their corner (plane geometry).

use crate::said::{Contour, SectionShape};
use jointwright_numerics::outline::{Point, Shape};

/// Length below which a line is left out, m.
const SHORTEST: f64 = 1.0e-9;
/// Least share of a stated radius to which it is shortened if a side is too short for it.
const RADIUS_SHARE_LEAST: f64 = 0.9;

/// One line or arc of a path.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Piece {
    pub from: Point,
    pub to: Point,
    pub shape: Shape,
}

impl Piece {
    pub fn line(from: Point, to: Point) -> Piece {
        Piece {
            from,
            to,
            shape: Shape::Line,
        }
    }

    pub fn arc(from: Point, to: Point, center: Point) -> Piece {
        Piece {
            from,
            to,
            shape: Shape::Arc { center },
        }
    }

    pub fn is_arc(&self) -> bool {
        matches!(self.shape, Shape::Arc { .. })
    }
}

/// Joins the corners by lines and rounds each corner but the first and the last with its radius, m.
///
/// A radius that is a little too large for a side is shortened, by at most a tenth.
///
/// # Errors
/// The corner that cannot be rounded so, and the reason.
pub(super) fn rounded(corners: &[Point], radii: &[f64]) -> Result<Vec<Piece>, SectionShape> {
    let mut pieces: Vec<Piece> = Vec::new();
    let (Some(&first), Some(&last)) = (corners.first(), corners.last()) else {
        return Ok(pieces);
    };
    let mut at = first;
    for index in 1..corners.len().saturating_sub(1) {
        let (before, corner, after) = (corners[index - 1], corners[index], corners[index + 1]);
        let Some(mut bend) = Bend::new(before, corner, after, radii[index]) else {
            join(&mut pieces, &mut at, corner);
            continue;
        };
        let room = at.distance(corner).min(after.distance(corner));
        if bend.reach > room && bend.reach * RADIUS_SHARE_LEAST < room {
            let radius = radii[index] * room / bend.reach;
            bend = Bend::new(before, corner, after, radius).unwrap_or(bend);
        }
        if bend.reach > room + SHORTEST {
            return Err(SectionShape::CornerNotRounded {
                along_mm: corner.z * 1e3,
                diameter_mm: 2e3 * corner.r,
                radius_mm: radii[index] * 1e3,
                takes_mm: bend.reach * 1e3,
                there_mm: room * 1e3,
            });
        }
        join(&mut pieces, &mut at, bend.from);
        pieces.push(Piece::arc(at, bend.to, bend.center));
        at = bend.to;
    }
    join(&mut pieces, &mut at, last);
    Ok(pieces)
}

/// Adds a line, unless it is too short.
fn join(pieces: &mut Vec<Piece>, at: &mut Point, to: Point) {
    if at.distance(to) > SHORTEST {
        pieces.push(Piece::line(*at, to));
        *at = to;
    }
}

/// Arc that rounds one corner.
struct Bend {
    from: Point,
    to: Point,
    center: Point,
    /// Length of each side that the arc takes, m.
    reach: f64,
}

impl Bend {
    /// `None` for a corner that is sharp or straight.
    fn new(before: Point, corner: Point, after: Point, radius: f64) -> Option<Bend> {
        let unit = |to: Point| {
            let length = corner.distance(to);
            [(to.r - corner.r) / length, (to.z - corner.z) / length]
        };
        let (u, v) = (unit(before), unit(after));
        let sum = [u[0] + v[0], u[1] + v[1]];
        let (cosine, half) = (u[0] * v[0] + u[1] * v[1], sum[0].hypot(sum[1]));
        // |u + v| = 2 cos(θ/2): zero where the path goes straight on.
        if radius <= 0.0 || half < 1.0e-6 {
            return None;
        }
        let sine = ((1.0 - cosine) / 2.0).sqrt();
        let reach = radius * (half / 2.0) / sine;
        let along = |unit: [f64; 2], length: f64| {
            Point::new(corner.r + length * unit[0], corner.z + length * unit[1])
        };
        Some(Bend {
            from: along(u, reach),
            to: along(v, reach),
            center: along([sum[0] / half, sum[1] / half], radius / sine),
            reach,
        })
    }
}

/// The path in reverse order.
pub(super) fn reversed(pieces: &[Piece]) -> Vec<Piece> {
    let turn = |piece: &Piece| Piece {
        from: piece.to,
        to: piece.from,
        shape: piece.shape,
    };
    pieces.iter().rev().map(turn).collect()
}

/// The path up to its first crossing of a plane square to the axis.
///
/// # Errors
/// The path does not cross the plane, or is an arc there.
pub(super) fn cut_at(
    pieces: &[Piece],
    z: f64,
    contour: Contour,
) -> Result<Vec<Piece>, SectionShape> {
    let mut kept = Vec::new();
    for piece in pieces {
        let (a, b) = (piece.from.z - z, piece.to.z - z);
        if a == 0.0 || a * b > 0.0 {
            kept.push(*piece);
            continue;
        }
        if piece.is_arc() {
            return Err(SectionShape::RoundedAtEnd {
                contour,
                at_mm: z * 1e3,
            });
        }
        let share = a / (a - b);
        let mut end = piece.from.towards(piece.to, share);
        end.z = z;
        kept.push(Piece::line(piece.from, end));
        return Ok(kept);
    }
    Err(SectionShape::NotReachingEnd {
        contour,
        at_mm: z * 1e3,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(r: f64, z: f64) -> Point {
        Point::new(r * 1e-3, z * 1e-3)
    }

    #[test]
    fn a_square_corner_is_rounded_by_a_quarter_turn() {
        let pieces = rounded(
            &[mm(0.0, 0.0), mm(0.0, 10.0), mm(10.0, 10.0)],
            &[0.0, 2e-3, 0.0],
        )
        .expect("there is room");
        assert_eq!(pieces.len(), 3);
        assert!(pieces[0].to.distance(mm(0.0, 8.0)) < 1e-12);
        assert!(pieces[1].is_arc() && pieces[1].to.distance(mm(2.0, 10.0)) < 1e-12);
        let Shape::Arc { center } = pieces[1].shape else {
            panic!("the second piece is an arc")
        };
        assert!(center.distance(mm(2.0, 8.0)) < 1e-12);
    }

    #[test]
    fn two_arcs_that_meet_leave_no_line_between_them() {
        let corners = [mm(0.0, 0.0), mm(0.0, 10.0), mm(4.0, 10.0), mm(4.0, 0.0)];
        let pieces = rounded(&corners, &[0.0, 2e-3, 2e-3, 0.0]).expect("there is just room");
        let arcs = pieces.iter().filter(|piece| piece.is_arc()).count();
        assert_eq!((pieces.len(), arcs), (4, 2));
    }

    #[test]
    fn a_radius_without_room_is_named() {
        let corners = [mm(0.0, 0.0), mm(0.0, 1.0), mm(4.0, 1.0)];
        let said = rounded(&corners, &[0.0, 2e-3, 0.0]).expect_err("there is no room");
        let SectionShape::CornerNotRounded {
            along_mm,
            radius_mm,
            ..
        } = said
        else {
            panic!("{said:?}")
        };
        assert!((along_mm - 1.0).abs() < 1e-9 && (radius_mm - 2.0).abs() < 1e-9);
    }

    #[test]
    fn a_path_is_cut_where_it_crosses_a_plane() {
        let pieces = [Piece::line(mm(1.0, 0.0), mm(3.0, 10.0))];
        let kept = cut_at(&pieces, 5e-3, Contour::Outside).expect("it crosses");
        assert!(kept[0].to.distance(mm(2.0, 5.0)) < 1e-12);
        assert!(cut_at(&pieces, 11e-3, Contour::Outside).is_err());
    }
}
