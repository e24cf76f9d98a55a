//! Underlay: which layer of the cable lies under each stretch of each part, at the worst of the windows.
//!
//! Why its own room: where a part ends and where a layer ends stand in the papers of different parts, and nobody but us lays one over the other.
//!
//! Invariants: every place that the windows allow counts, and of an edge that shrinks back both the cut and the shrunk edge; what has no place or no window is said to be unknown and is never clear.
//!
//! Not here: whether a diameter fits (`fit`), where the edges are (`cutback`), what a part's row allows (`checks`).
//!
//! Source: `docs/theory/underlay.md`.

mod asked;

pub(crate) use asked::Asked;

use crate::cable::Layer;
use crate::catalogue::Adapter;
use crate::cutback::Cutback;
use crate::plane::Plane;
use crate::said::CutSaid;
use jointwright_units::{Interval, Length, Station};

/// Layers that a part may come to lie on, from the conductor end outward.
///
/// ```text
///   conductor   insulation    insulation screen   metallic shield   jacket
///   ----------|#############|===================|~~~~~~~~~~~~~~~~~|MMMMMMMM
///             insulation    insulation screen   metallic shield   jacket
///             end           edge                edge              edge
/// ```
pub const LAYERS: [Layer; 5] = [
    Layer::Conductor,
    Layer::Insulation,
    Layer::InsulationScreen,
    Layer::MetallicShield,
    Layer::Jacket,
];

/// A stretch of a part along the leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stretch<'p> {
    /// Planes before which nothing of it lies on the cable; none where it begins inside the connector.
    pub begins: &'p [Plane],
    /// Plane at which it ends, farther from the conductor end.
    pub ends: Plane,
}

/// How far a stretch reaches onto a layer.
#[derive(Clone, Debug, PartialEq)]
pub enum Lap {
    /// Least and greatest over all windows; both zero or negative where it is always clear of the layer.
    Worst(Interval),
    /// As planned, where the plan itself lays it there and some window is missing, which is named.
    Planned(Length, CutSaid),
    /// What is missing.
    Unknown(CutSaid),
}

/// The planes at which a layer begins to lie bare, from the conductor end outward: the cut, and the edge shrunk back.
pub const fn edges(layer: Layer) -> &'static [Plane] {
    match layer {
        Layer::Insulation => &[Plane::InsulationEnd, Plane::InsulationEndShrunk],
        Layer::InsulationScreen => &[Plane::ScreenEdge],
        Layer::MetallicShield => &[Plane::ShieldEdge],
        Layer::Jacket => &[Plane::JacketEdge, Plane::JacketEdgeShrunk],
        Layer::Conductor | Layer::ConductorScreen => &[],
    }
}

/// How far a stretch reaches onto a layer, or onto a layer over it on which it may not lie either, over everything that the windows allow.
///
/// lap = min(end − inner edge, outer edge − begin, outer edge − inner edge), each at its own worst, for every outer edge at which a layer begins on which it may lie.
pub fn lap(cutback: &Cutback, stretch: Stretch<'_>, layer: Layer, may_lie_on: &[Layer]) -> Lap {
    let inner = edges(layer);
    let over = LAYERS.iter().skip_while(|l| **l != layer).skip(1);
    let over: Vec<&[Plane]> = over
        .filter(|l| may_lie_on.contains(l))
        .map(|l| edges(*l))
        .collect();
    let apart = |from: &[Plane], to: &[Plane]| farthest(cutback, from, to);
    let mut pairs = Vec::new();
    if !inner.is_empty() {
        pairs.push(apart(inner, &[stretch.ends]));
        pairs.extend(over.iter().map(|outer| apart(inner, outer)));
    }
    for begin in stretch.begins {
        pairs.extend(over.iter().map(|outer| apart(&[*begin], outer)));
    }
    least(&pairs)
}

/// The distance between two planes for each of which several may stand: the greatest.
fn farthest(cutback: &Cutback, from: &[Plane], to: &[Plane]) -> Lap {
    // An edge that no row lets shrink back has no second plane; the cut itself always counts.
    let placed = |planes: &[Plane]| -> Vec<Plane> {
        let also = planes[1..].iter().filter(|p| cutback.places(**p));
        std::iter::once(planes[0]).chain(also.copied()).collect()
    };
    let to = placed(to);
    let all: Vec<Lap> = placed(from)
        .into_iter()
        .flat_map(|from| to.iter().map(move |to| (from, *to)))
        .map(|(from, to)| apart(cutback, from, to))
        .collect();
    let by_greatest = |lap: &&Lap| lap.worst().map(|i| i.greatest());
    let most = all.iter().max_by_key(by_greatest);
    let reaches = |lap: &&Lap| lap.worst().is_some_and(|i| i.greatest() > Length::ZERO);
    let open = all.iter().find(|lap| lap.worst().is_none());
    let lap = most.filter(reaches).or(open).or(most);
    lap.cloned()
        .unwrap_or(Lap::Unknown(CutSaid::NothingPlacesIt))
}

/// How far an adapter lies past the edge of the insulation screen, at the least of all windows; below zero where it can end before it.
///
/// # Errors
/// What is not placed or has no window.
pub fn past_edge(cutback: &Cutback) -> Result<Station, CutSaid> {
    let past = cutback.dimension(Plane::ScreenEdge, Plane::AdapterFar)?;
    Ok(past.least)
}

/// How far past that edge an adapter must lie for a field to be drawn as if it never ended: as far as it can be thick.
///
/// None where its row gives no range over the insulation.
pub fn past_edge_least(adapter: &Adapter) -> Option<Length> {
    let mut ranges = adapter.fits.iter();
    let over = ranges.find(|fits| fits.over == Layer::Insulation)?;
    let twice = adapter.outside.greatest() - over.range.least();
    Some(Length::from_nm(twice.nm() / 2))
}

fn apart(cutback: &Cutback, from: Plane, to: Plane) -> Lap {
    match cutback.dimension(from, to) {
        Ok(dimension) => Lap::Worst(dimension.interval()),
        Err(why) => match (cutback.nominal(from), cutback.nominal(to)) {
            (Some(from), Some(to)) if to > from => Lap::Planned((to - from).ceil(), why),
            _ => Lap::Unknown(why),
        },
    }
}

/// The least of distances all of which must be more than nothing.
fn least(pairs: &[Lap]) -> Lap {
    let worst = || pairs.iter().filter_map(Lap::worst);
    // One distance that is never more than nothing settles it, whatever the others are.
    let clear = worst().filter(|i| i.greatest() <= Length::ZERO);
    if let Some(clear) = clear.min_by_key(|i| i.greatest()) {
        return Lap::Worst(clear);
    }
    if let Some(unknown) = pairs.iter().find(|lap| matches!(lap, Lap::Unknown(_))) {
        return unknown.clone();
    }
    let planned = pairs.iter().find_map(|lap| match lap {
        Lap::Planned(_, why) => Some(why.clone()),
        _ => None,
    });
    let bounds = worst().reduce(|a, b| {
        let least = a.least().min(b.least());
        let greatest = a.greatest().min(b.greatest());
        Interval::new(least, greatest).expect("the less of two ends keeps their order")
    });
    let Some(why) = planned else {
        let clear_of_all = || Lap::Unknown(CutSaid::NothingPlacesIt);
        return bounds.map_or_else(clear_of_all, Lap::Worst);
    };
    // Where some window is missing the plan itself must lay it there, whatever the other windows do.
    if bounds.is_some_and(|b| b.least() <= Length::ZERO) {
        return Lap::Unknown(why);
    }
    let planned = pairs.iter().filter_map(|lap| match lap {
        Lap::Planned(length, _) => Some(*length),
        Lap::Worst(interval) => Some(interval.least()),
        Lap::Unknown(_) => None,
    });
    Lap::Planned(planned.min().unwrap_or(Length::ZERO), why)
}

impl Lap {
    fn worst(&self) -> Option<Interval> {
        match self {
            Lap::Worst(interval) => Some(*interval),
            _ => None,
        }
    }
}
