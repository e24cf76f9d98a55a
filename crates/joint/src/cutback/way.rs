//! Way: the rows that place a plane, from the plane back to a plane with a place of its own.
//!
//! Why its own file: a plane's window and its place may have different sources, and a crew asks for both.
//!
//! Invariants: every row named lies on one way to the plane; where several ways lead there they agree exactly (`refusal`), and the way with the fewest rows is named.

use super::Placed;
use super::links::Joined;
use crate::plane::Plane;
use crate::said::Whose;
use std::collections::BTreeMap;

/// Sources of a plane's place, back to the nearest plane that is printed with its own rows, or to the conductor end; `None` if no way leads to it.
pub(super) fn placed(plane: Plane, printed: &[Plane], links: &[Joined]) -> Option<Placed> {
    let inward = nearest_ways(links);
    let (mut at, mut by) = (plane, Vec::new());
    loop {
        let (next, source) = inward.get(&at)?;
        if !by.contains(source) {
            by.push(source.clone());
        }
        at = *next;
        if at == Plane::ConductorEnd || printed.contains(&at) {
            return Some(Placed { by, from: at });
        }
    }
}

/// For each plane the next plane on the way of fewest links to the conductor end, with the row of that link.
fn nearest_ways(links: &[Joined]) -> BTreeMap<Plane, (Plane, Whose)> {
    let mut inward: BTreeMap<Plane, (Plane, Whose)> = BTreeMap::new();
    let mut edge = vec![Plane::ConductorEnd];
    while !edge.is_empty() {
        let mut found = Vec::new();
        for link in links {
            for (here, there) in [(link.from, link.to), (link.to, link.from)] {
                let is_new = there != Plane::ConductorEnd && !inward.contains_key(&there);
                if edge.contains(&here) && is_new {
                    inward.insert(there, (here, link.source.clone()));
                    found.push(there);
                }
            }
        }
        edge = found;
    }
    inward
}

#[cfg(test)]
mod tests {
    use super::super::Tolerance;
    use super::*;
    use jointwright_units::Station;

    fn link(from: Plane, to: Plane, source: &str) -> Joined {
        Joined {
            from,
            to,
            distance: Station::ZERO,
            tolerance: Tolerance::Exact,
            source: Whose::Person(source.to_owned()),
            place: crate::form::Span::default(),
        }
    }

    #[test]
    fn a_place_is_named_back_to_the_next_plane_that_has_its_own() {
        let links = [
            link(Plane::ConductorEnd, Plane::ConnectorMouth, "connector"),
            link(Plane::ConnectorMouth, Plane::InsulationEnd, "body, step 4"),
            link(Plane::ScreenEdge, Plane::InsulationEnd, "body, step 5"),
            link(Plane::ScreenEdge, Plane::ShieldEdge, "shield part"),
        ];
        let printed = [Plane::InsulationEnd, Plane::ScreenEdge, Plane::ShieldEdge];
        let of = |plane| placed(plane, &printed, &links);
        let expected = |by: &[&str], from| {
            let by = by.iter().map(|s| Whose::Person((*s).to_owned())).collect();
            Some(Placed { by, from })
        };
        assert_eq!(
            of(Plane::InsulationEnd),
            expected(&["body, step 4", "connector"], Plane::ConductorEnd)
        );
        assert_eq!(
            of(Plane::ShieldEdge),
            expected(&["shield part"], Plane::ScreenEdge)
        );
        assert_eq!(of(Plane::JacketEdge), None);
    }
}
