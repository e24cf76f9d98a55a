//! Row chain: the links of one row as a chain, with the links that follow from a connector's own lengths.

use super::entry::{Entry, Kind};
use crate::cutback::{Growth, Joined, Tolerance, connector_links, from_row};
use crate::plane::Plane;
use jointwright_numerics::chain::{Chain, ChainError, Link, Solution};
use jointwright_units::Station;
use std::collections::BTreeSet;

/// Links of the row, and for a connector the links of its own lengths; growth is left out, because only a trial press gives it.
pub(super) fn ties(entry: &Entry<'_>) -> Vec<Joined> {
    let own = match entry.kind {
        Kind::Connector(row, end) => connector_links(row, end, &Growth::None, Station::ZERO)
            .into_iter()
            .filter(|link| !row.grows() || link.to != Plane::ConnectorMouth)
            .collect(),
        _ => Vec::new(),
    };
    own.into_iter()
        .chain(entry.all_links().map(from_row))
        .collect()
}

/// Planes that the links name.
pub(super) fn planes(ties: &[Joined]) -> Vec<Plane> {
    let named: BTreeSet<Plane> = ties.iter().flat_map(|t| [t.from, t.to]).collect();
    named.into_iter().collect()
}

/// Planes that the links join to given planes, including these.
pub(super) fn reached(given: &[Plane], pairs: &BTreeSet<(Plane, Plane)>) -> BTreeSet<Plane> {
    let mut reached: BTreeSet<Plane> = given.iter().copied().collect();
    loop {
        let before = reached.len();
        for (from, to) in pairs {
            if reached.contains(from) || reached.contains(to) {
                reached.extend([*from, *to]);
            }
        }
        if reached.len() == before {
            return reached;
        }
    }
}

/// Pairs of planes that the links tie.
pub(super) fn pairs(ties: &[Joined]) -> BTreeSet<(Plane, Plane)> {
    ties.iter().map(|t| (t.from, t.to)).collect()
}

/// Solves the links for the first of the planes.
///
/// # Errors
/// The chain's errors, among them planes that no way reaches.
pub(super) fn solve(planes: &[Plane], ties: &[Joined]) -> Result<Solution, Vec<ChainError>> {
    let index = |plane: Plane| planes.iter().position(|p| *p == plane);
    let links = ties
        .iter()
        .filter_map(|tie| {
            let (minus, plus) = match tie.tolerance {
                Tolerance::Window(minus, plus) => (minus.half_nm(), plus.half_nm()),
                _ => (0, 0),
            };
            Some(Link {
                from: index(tie.from)?,
                to: index(tie.to)?,
                nominal: tie.distance.half_nm(),
                minus,
                plus,
                shared: None,
            })
        })
        .collect();
    Chain::new(planes.len(), links)
        .map_err(|e| vec![e])?
        .solve_all_errors(0)
}

/// Planes that one plane reaches over the links, with their places.
pub(super) struct Solved {
    planes: Vec<Plane>,
    solution: Solution,
}

impl Solved {
    /// Solves the planes reached from a plane; `None` if the links contradict each other.
    pub fn from(datum: Plane, ties: &[Joined]) -> Option<Solved> {
        let mut planes = vec![datum];
        planes.extend(
            reached(&[datum], &pairs(ties))
                .into_iter()
                .filter(|p| *p != datum),
        );
        let solution = solve(&planes, ties).ok()?;
        Some(Solved { planes, solution })
    }

    /// Planes reached.
    pub fn planes(&self) -> &[Plane] {
        &self.planes
    }

    fn pair(&self, from: Plane, to: Plane) -> Option<(usize, usize)> {
        let index = |plane: Plane| self.planes.iter().position(|p| *p == plane);
        index(from).zip(index(to))
    }

    /// Distance as printed.
    pub fn nominal(&self, from: Plane, to: Plane) -> Option<Station> {
        let (a, b) = self.pair(from, to)?;
        Some(Station::from_half_nm(self.solution.nominal(a, b)))
    }

    /// Least and greatest distance over all tolerances.
    pub fn bounds(&self, from: Plane, to: Plane) -> Option<(Station, Station)> {
        let (a, b) = self.pair(from, to)?;
        let bounds = self.solution.bounds(a, b);
        Some((
            Station::from_half_nm(bounds.least),
            Station::from_half_nm(bounds.greatest),
        ))
    }
}
