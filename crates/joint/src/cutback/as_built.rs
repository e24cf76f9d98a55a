//! As built: places that were read on a finished end take the place of the windows in which they were planned.
//!
//! A plane that was read carries its whole part with it: the body's planes move as one piece, and a shrunk-back edge moves with its cut.
//! A plane that nobody read keeps its planned place and its window.
//!
//! Not here: the windows of the cuts, which no reading moves.
//!
//! Source: `docs/theory/cutback.md`.

use super::windows::Span;
use super::{Cutback, Growth};
use crate::job::LegAsBuilt;
use crate::plane::Plane;
use jointwright_units::Station;
use std::collections::BTreeMap;

impl Cutback {
    /// Replaces planned places by places that were read.
    pub(super) fn take(&mut self, built: &LegAsBuilt) {
        let mut by_anchor: BTreeMap<usize, Vec<Read>> = BTreeMap::new();
        for (plane, (least, greatest)) in &built.places {
            let place = Span {
                least: *least,
                greatest: *greatest,
            };
            self.sort_in(*plane, place, &mut by_anchor);
        }
        for (anchor, reads) in std::mem::take(&mut by_anchor) {
            self.settle(anchor, &reads);
        }
        for ((from, to), (least, greatest)) in &built.distances {
            let distance = Span {
                least: *least,
                greatest: *greatest,
            };
            self.measured.push(((*from, *to), distance));
            self.set_off(*from, *to, distance, &mut by_anchor);
        }
        // A place that was read says more of it than a distance from another place.
        let placed = built
            .places
            .keys()
            .map(|plane| self.groups.anchor_of(*plane));
        let placed: Vec<Option<usize>> = placed.collect();
        for (anchor, reads) in by_anchor {
            if !placed.contains(&Some(anchor)) {
                self.settle(anchor, &reads);
            }
        }
    }

    /// Sorts a place that was read by its anchor; a plane that hangs on the conductor end alone is placed at once.
    fn sort_in(&mut self, plane: Plane, place: Span, by_anchor: &mut BTreeMap<usize, Vec<Read>>) {
        let Some(nominal) = self.nominals.get(&plane).copied() else {
            // No row places it; the reading does.
            self.nominals.insert(plane, middle(place));
            self.groups.add(plane, about(place, middle(place)));
            return;
        };
        let read = Read {
            plane,
            off: about(place, nominal),
        };
        match self.groups.anchor_of(plane) {
            Some(anchor) if Some(anchor) != self.groups.anchor_of(Plane::ConductorEnd) => {
                by_anchor.entry(anchor).or_default().push(read);
            }
            _ => {
                self.moved_by_growth.remove(&plane);
                self.groups.set_play(plane, read.off);
            }
        }
    }

    /// Sets the deviation of an anchor from all places that were read on what it carries.
    fn settle(&mut self, anchor: usize, reads: &[Read]) {
        let Some(first) = reads.first() else {
            return;
        };
        let offs = reads
            .iter()
            .map(|read| self.groups.anchor_off(read.plane, read.off));
        let Some(off) = offs.reduce(|a, b| a.meet(b).unwrap_or(a.hull(b))) else {
            return;
        };
        let by = middle(off);
        self.groups.set(anchor, about(off, by));
        for (plane, nominal) in &mut self.nominals {
            if self.groups.anchor_of(*plane) == Some(anchor) {
                *nominal = *nominal + by;
            }
        }
        // The place that was read holds for whatever growth there was; the rest moves beside it as before.
        let way_of_read = self.moved_by_growth.get(&first.plane).copied().unwrap_or(0);
        if matches!(self.growth, Growth::Unknown(_)) && way_of_read != 0 {
            for plane in Plane::ALL.iter().copied() {
                if self.groups.anchor_of(plane) == Some(anchor) {
                    let way = self.moved_by_growth.remove(&plane).unwrap_or(0) - way_of_read;
                    if way != 0 {
                        self.moved_by_growth.insert(plane, way);
                    }
                }
            }
        }
    }

    /// Places one of two planes by its distance from the other: the end of an adapter, else the farther plane.
    fn set_off(
        &mut self,
        from: Plane,
        to: Plane,
        distance: Span,
        by_anchor: &mut BTreeMap<usize, Vec<Read>>,
    ) {
        let (base, plane, way) = if from.is_set_off_from(to) {
            (to, from, distance.reversed())
        } else {
            (from, to, distance)
        };
        let places = self.nominals.get(&base).zip(self.nominals.get(&plane));
        let Some(off) = places.map(|(base, at)| about(way, *at - *base)) else {
            return;
        };
        // Both deviations from the conductor end; about their common anchor if one carries both.
        let Ok((of_base, of_plane)) = self.groups.pair(base, plane) else {
            return;
        };
        let Some(anchor) = self.groups.anchor_of(plane) else {
            return;
        };
        if self.groups.anchor_of(base) == Some(anchor) {
            self.groups.set_play(plane, of_base.plus(off));
        } else if plane.is_set_off_from(base) {
            let of_anchor = of_plane.without(self.groups.play_of_plane(plane));
            self.groups
                .set_play(plane, of_base.plus(off).plus(of_anchor.reversed()));
        } else {
            let off = of_base.plus(off);
            by_anchor
                .entry(anchor)
                .or_default()
                .push(Read { plane, off });
        }
    }

    /// Distance that was read between two planes, or between planes that move with them.
    pub(super) fn measured(&self, from: Plane, to: Plane) -> Option<Span> {
        self.measured.iter().find_map(|((a, b), distance)| {
            let beside = |one: Plane, other: Plane| {
                if one == other {
                    return Some(Span::default());
                }
                let is_carried = self.groups.anchor_of(one).is_some()
                    && self.groups.anchor_of(one) == self.groups.anchor_of(other);
                if !is_carried {
                    return None;
                }
                let (near, far) = self.groups.pair(one, other).ok()?;
                let nominal = *self.nominals.get(&other)? - *self.nominals.get(&one)?;
                Some(Span {
                    least: nominal + far.least - near.greatest,
                    greatest: nominal + far.greatest - near.least,
                })
            };
            Some(beside(from, *a)?.plus(*distance).plus(beside(*b, to)?))
        })
    }
}

/// A plane and how far off its planned place it was read.
struct Read {
    plane: Plane,
    off: Span,
}

fn middle(span: Span) -> Station {
    Station::from_half_nm((span.least.half_nm() + span.greatest.half_nm()) / 2)
}

fn about(span: Span, nominal: Station) -> Span {
    Span {
        least: span.least - nominal,
        greatest: span.greatest - nominal,
    }
}
