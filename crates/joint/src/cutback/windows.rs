//! Windows: how far each plane may lie from its planned place, when every mark is set off from the conductor end.
//!
//! Instructions measure from many datums; the crew measures from one.
//! Planes that are held together exactly form one group.
//! A link with a tolerance between two groups that the crew places is shared out between them, so that any mixture of marks inside their windows keeps every link inside its own tolerance.
//! What is computed here can only be tighter than what the instructions allow, never wider.

use super::links::{Joined, Tolerance};
use crate::plane::{Holder, Plane};
use jointwright_units::Station;
use std::collections::BTreeMap;

/// Deviation of a group from its planned place, least and greatest, and whose word each end is.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Freedom {
    pub least: Station,
    pub greatest: Station,
    pub whose: Vec<String>,
}

/// What is known of a group's deviation.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Deviation {
    /// It lies in these bounds.
    Within(Freedom),
    /// Nobody sets a window.
    Unset,
    /// The parts' own play uses up the tolerance; names the sources.
    UsedUp(Vec<String>),
}

/// Groups of planes and their deviations.
#[derive(Clone, Debug)]
pub(super) struct Groups {
    group_of: BTreeMap<Plane, usize>,
    deviations: Vec<Deviation>,
}

/// A bound that somebody sets on the deviation of a plane about its planned place.
pub(super) struct OwnBound {
    pub plane: Plane,
    pub minus: Station,
    pub plus: Station,
    pub source: String,
}

impl Groups {
    /// Groups of the planes, from the links between them and the bounds of the owner.
    pub fn new(planes: &[Plane], links: &[Joined], bounds: &[OwnBound]) -> Groups {
        let group_of = rigid_groups(planes, links);
        let n_groups = group_of.values().max().map_or(0, |g| g + 1);
        let mut freedoms = Freedoms::new(n_groups, &group_of);
        freedoms.place_given(&group_of, links);
        let own = freedoms.own_windows(&group_of, links, bounds);
        let deviations = freedoms.allocate(own, &group_of, links);
        Groups {
            group_of,
            deviations,
        }
    }

    /// Deviation of a plane.
    pub fn deviation(&self, plane: Plane) -> &Deviation {
        self.group_of
            .get(&plane)
            .map_or(&Deviation::Unset, |g| &self.deviations[*g])
    }

    /// How far a plane's planned place must move to lie inside its window; nothing where it does or has none.
    pub fn shift_into_window(&self, plane: Plane) -> Station {
        self.group(plane)
            .map_or(Station::ZERO, |group| shift(&self.deviations[group]))
    }

    /// Counts the deviations from the shifted places.
    pub fn centre_on_shift(&mut self) {
        for deviation in &mut self.deviations {
            let shift = shift(deviation);
            if let Deviation::Within(freedom) = deviation {
                freedom.least = freedom.least - shift;
                freedom.greatest = freedom.greatest - shift;
            }
        }
    }

    /// Group of a plane.
    pub fn group(&self, plane: Plane) -> Option<usize> {
        self.group_of.get(&plane).copied()
    }
}

/// The deviation nearest to none that a window holds.
fn shift(deviation: &Deviation) -> Station {
    match deviation {
        Deviation::Within(freedom) => Station::ZERO.max(freedom.least).min(freedom.greatest),
        _ => Station::ZERO,
    }
}

/// Planes held together exactly, numbered in the order of their first plane; the conductor end's is 0.
fn rigid_groups(planes: &[Plane], links: &[Joined]) -> BTreeMap<Plane, usize> {
    let mut root: BTreeMap<Plane, Plane> = planes.iter().map(|p| (*p, *p)).collect();
    let find = |root: &BTreeMap<Plane, Plane>, plane: Plane| {
        let mut plane = plane;
        while root[&plane] != plane {
            plane = root[&plane];
        }
        plane
    };
    for link in links {
        let exact = match link.tolerance {
            Tolerance::Exact => true,
            Tolerance::Window(minus, plus) => {
                minus == Station::ZERO
                    && plus == Station::ZERO
                    && link.from.holder() == link.to.holder()
            }
            Tolerance::Unstated => false,
        };
        if exact && root.contains_key(&link.from) && root.contains_key(&link.to) {
            let (a, b) = (find(&root, link.from), find(&root, link.to));
            // The plane nearer the datum is the root, so that the numbering does not depend on the order of links.
            root.insert(a.max(b), a.min(b));
        }
    }
    let mut numbers: BTreeMap<Plane, usize> = BTreeMap::new();
    let roots: Vec<(Plane, Plane)> = root.keys().map(|p| (*p, find(&root, *p))).collect();
    for (_, r) in &roots {
        let next = numbers.len();
        numbers.entry(*r).or_insert(next);
    }
    roots
        .into_iter()
        .map(|(plane, r)| (plane, numbers[&r]))
        .collect()
}

/// An interval of deviation open on either side.
#[derive(Clone, Debug, Default)]
struct Open {
    least: Option<Edge>,
    greatest: Option<Edge>,
}

/// One side of a window, and whose word it is.
#[derive(Clone, Debug)]
struct Edge {
    at: Station,
    /// Whether it is a share of a link between two placed groups; a word of one's own is named first.
    share: bool,
    source: String,
}

impl Edge {
    /// Whether this edge is named rather than the other when both stand at the same place.
    fn is_named_before(&self, other: &Edge) -> bool {
        (self.share, &self.source) < (other.share, &other.source)
    }
}

impl Open {
    fn raise_least(&mut self, at: Station, share: bool, source: &str) {
        let edge = Edge {
            at,
            share,
            source: source.to_owned(),
        };
        if self
            .least
            .as_ref()
            .is_none_or(|e| at > e.at || (at == e.at && edge.is_named_before(e)))
        {
            self.least = Some(edge);
        }
    }

    fn lower_greatest(&mut self, at: Station, share: bool, source: &str) {
        let edge = Edge {
            at,
            share,
            source: source.to_owned(),
        };
        if self
            .greatest
            .as_ref()
            .is_none_or(|e| at < e.at || (at == e.at && edge.is_named_before(e)))
        {
            self.greatest = Some(edge);
        }
    }
}

struct Freedoms {
    /// Whether the crew places the group (as against the parts' own play).
    placed: Vec<bool>,
    /// Play of the groups that the crew does not place.
    given: Vec<Option<(Station, Station)>>,
}

impl Freedoms {
    fn new(n_groups: usize, group_of: &BTreeMap<Plane, usize>) -> Freedoms {
        let mut placed = vec![false; n_groups];
        for (plane, group) in group_of {
            placed[*group] |= plane.holder() != Holder::Connector;
        }
        let mut given = vec![None; n_groups];
        if let Some(datum) = group_of.get(&Plane::ConductorEnd) {
            placed[*datum] = false;
            given[*datum] = Some((Station::ZERO, Station::ZERO));
        }
        Freedoms { placed, given }
    }

    /// Play of the connector's planes: their links added up from the datum.
    fn place_given(&mut self, group_of: &BTreeMap<Plane, usize>, links: &[Joined]) {
        for _ in 0..self.placed.len() {
            for link in links {
                let (Some(&a), Some(&b)) = (group_of.get(&link.from), group_of.get(&link.to))
                else {
                    continue;
                };
                let Tolerance::Window(minus, plus) = link.tolerance else {
                    continue;
                };
                if a == b || self.placed[a] || self.placed[b] {
                    continue;
                }
                if let (Some((least, greatest)), None) = (self.given[a], self.given[b]) {
                    self.given[b] = Some((least - minus, greatest + plus));
                } else if let (None, Some((least, greatest))) = (self.given[a], self.given[b]) {
                    self.given[a] = Some((least - plus, greatest + minus));
                }
            }
        }
    }

    /// Windows that placed groups have against the datum, the connector and the owner's word.
    fn own_windows(
        &self,
        group_of: &BTreeMap<Plane, usize>,
        links: &[Joined],
        bounds: &[OwnBound],
    ) -> Vec<Open> {
        let mut own = vec![Open::default(); self.placed.len()];
        for link in links {
            let (Some(&a), Some(&b)) = (group_of.get(&link.from), group_of.get(&link.to)) else {
                continue;
            };
            let Tolerance::Window(minus, plus) = link.tolerance else {
                continue;
            };
            if a == b {
                continue;
            }
            match (self.given[a], self.given[b]) {
                (Some((least, greatest)), None) if self.placed[b] => {
                    own[b].lower_greatest(plus + least, false, &link.source);
                    own[b].raise_least(greatest - minus, false, &link.source);
                }
                (None, Some((least, greatest))) if self.placed[a] => {
                    own[a].lower_greatest(minus + least, false, &link.source);
                    own[a].raise_least(greatest - plus, false, &link.source);
                }
                _ => {}
            }
        }
        for bound in bounds {
            if let Some(&group) = group_of.get(&bound.plane)
                && self.placed[group]
            {
                own[group].lower_greatest(bound.plus, false, &bound.source);
                own[group].raise_least(-bound.minus, false, &bound.source);
            }
        }
        own
    }

    /// Shares out the links between two placed groups and closes the windows.
    fn allocate(
        &self,
        own: Vec<Open>,
        group_of: &BTreeMap<Plane, usize>,
        links: &[Joined],
    ) -> Vec<Deviation> {
        let mut shared = own.clone();
        for link in links {
            let (Some(&a), Some(&b)) = (group_of.get(&link.from), group_of.get(&link.to)) else {
                continue;
            };
            let Tolerance::Window(minus, plus) = link.tolerance else {
                continue;
            };
            if a == b || !self.placed[a] || !self.placed[b] {
                continue;
            }
            // deviation(b) - deviation(a) <= plus, and deviation(a) - deviation(b) <= minus.
            let (up_b, down_a) = split(
                plus,
                own[b].greatest.as_ref().map(|e| e.at),
                own[a].least.as_ref().map(|e| -e.at),
            );
            let (up_a, down_b) = split(
                minus,
                own[a].greatest.as_ref().map(|e| e.at),
                own[b].least.as_ref().map(|e| -e.at),
            );
            shared[b].lower_greatest(up_b, true, &link.source);
            shared[a].raise_least(-down_a, true, &link.source);
            shared[a].lower_greatest(up_a, true, &link.source);
            shared[b].raise_least(-down_b, true, &link.source);
        }
        shared
            .into_iter()
            .enumerate()
            .map(|(group, open)| self.close(group, open))
            .collect()
    }

    fn close(&self, group: usize, open: Open) -> Deviation {
        if !self.placed[group] {
            return match self.given[group] {
                Some((least, greatest)) => Deviation::Within(Freedom {
                    least,
                    greatest,
                    whose: Vec::new(),
                }),
                None => Deviation::Unset,
            };
        }
        let (Some(least), Some(greatest)) = (open.least, open.greatest) else {
            return Deviation::Unset;
        };
        let mut whose = vec![least.source, greatest.source];
        let (least, greatest) = (least.at, greatest.at);
        whose.sort();
        whose.dedup();
        if least > greatest {
            Deviation::UsedUp(whose)
        } else {
            Deviation::Within(Freedom {
                least,
                greatest,
                whose,
            })
        }
    }
}

/// Splits a budget between two deviations: each keeps what it has of its own where that leaves the other enough, and at least half otherwise.
fn split(budget: Station, first: Option<Station>, second: Option<Station>) -> (Station, Station) {
    // Floor of the half, so that both halves together never exceed the budget.
    let half = Station::from_half_nm(budget.half_nm().div_euclid(2));
    let part = |own: Option<Station>, other: Option<Station>| {
        let left = other.map_or(half, |other| half.max(budget - other));
        own.map_or(left, |own| own.min(left))
    };
    (part(first, second), part(second, first))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn s(x: i64) -> Station {
        Station::from_half_nm(x)
    }

    #[track_caller]
    fn check(budget: i64, first: Option<i64>, second: Option<i64>, expected: (i64, i64)) {
        let (a, b) = split(s(budget), first.map(s), second.map(s));
        assert_eq!((a.half_nm(), b.half_nm()), expected);
        assert!(a.half_nm() + b.half_nm() <= budget, "the budget is kept");
    }

    #[test]
    fn two_free_planes_share_a_tolerance_in_halves() {
        check(10, None, None, (5, 5));
        check(11, None, None, (5, 5));
    }

    #[test]
    fn a_plane_that_needs_little_leaves_the_rest() {
        check(10, Some(2), None, (2, 8));
        check(10, None, Some(2), (8, 2));
        check(10, Some(2), Some(3), (2, 3));
    }

    #[test]
    fn two_planes_that_want_too_much_get_half_each() {
        check(10, Some(9), Some(9), (5, 5));
        check(10, Some(9), None, (5, 5));
    }

    #[test]
    fn one_wide_and_one_narrow_get_the_whole_together() {
        check(10, Some(9), Some(3), (7, 3));
    }
}
