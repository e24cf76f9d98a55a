//! Places: which points of an outline lie at one place.

use super::Outline;
use super::contact::TOUCH;
use super::flaw::{Flaw, curve_name};
use super::piece::Piece;
use std::collections::BTreeSet;

/// Numbers of points by place: points at one place have one number.
pub(super) struct Places {
    of_point: Vec<usize>,
}

impl Places {
    pub(super) fn new(outline: &Outline, pieces: &[Option<Piece>], flaws: &mut Vec<Flaw>) -> Self {
        let mut of_point: Vec<usize> = (0..outline.points.len()).collect();
        let mut user: Vec<Option<usize>> = vec![None; outline.points.len()];
        for (index, curve) in outline.curves.iter().enumerate() {
            if pieces[index].is_some() {
                for point in [curve.from, curve.to] {
                    user[point].get_or_insert(index);
                }
            }
        }
        // If both are ends of one curve, the flaw "no length" already names it.
        let short: BTreeSet<[usize; 2]> = outline
            .curves
            .iter()
            .map(|curve| [curve.from.min(curve.to), curve.from.max(curve.to)])
            .collect();
        let mut used: Vec<usize> = (0..user.len()).filter(|p| user[*p].is_some()).collect();
        used.sort_by(|a, b| outline.points[*a].z.total_cmp(&outline.points[*b].z));
        for (at, &one) in used.iter().enumerate() {
            let place = outline.points[one];
            for &other in &used[at + 1..] {
                if outline.points[other].z > place.z + TOUCH {
                    break;
                }
                let is_new = of_point[one] != of_point[other];
                if is_new && place.distance(outline.points[other]) <= TOUCH {
                    let pair = [one.min(other), one.max(other)];
                    if !short.contains(&pair) {
                        flaws.extend(unglued(outline, &user, pair));
                    }
                    let (kept, gone) = (of_point[one], of_point[other]);
                    for number in &mut of_point {
                        if *number == gone {
                            *number = kept;
                        }
                    }
                }
            }
        }
        Self { of_point }
    }

    /// Number of the place of a point.
    pub(super) fn of(&self, point: usize) -> usize {
        self.of_point.get(point).copied().unwrap_or(point)
    }
}

fn unglued(outline: &Outline, user: &[Option<usize>], points: [usize; 2]) -> Option<Flaw> {
    let (one, other) = (user[points[0]]?, user[points[1]]?);
    Some(Flaw::Unglued {
        first: curve_name(outline, one.min(other)),
        second: curve_name(outline, one.max(other)),
        points: if one <= other {
            points
        } else {
            [points[1], points[0]]
        },
        at: outline.points[points[0]],
    })
}
