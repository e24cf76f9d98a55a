//! Underlay: which layer of the cable lies under each stretch of each part, at the worst of the windows.
//!
//! Why its own room: the papers of different parts state the ends of parts and of layers; only this program lays one over the other.
//!
//! Invariants:
//! - Every place that the windows allow counts; of an edge that shrinks back, both the cut and the shrunk edge count.
//! - A stretch or an edge without a place or a window is unknown, never clear.
//!
//! Not here: fit of diameters (`fit`), places of the edges (`cutback`), layers that a part's row allows (`checks`).
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

/// Layers on which a part may lie, from the conductor end outward.
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
    /// Planes before which nothing of it lies on the cable; empty if it begins inside the connector.
    pub begins: &'p [Plane],
    /// Plane at which it ends, farther from the conductor end.
    pub ends: Plane,
}

/// Length by which a stretch reaches onto a layer.
#[derive(Clone, Debug, PartialEq)]
pub enum Lap {
    /// Least and greatest length over all windows; both zero or negative if it is always clear of the layer.
    Worst(Interval),
    /// Planned length, if the plan itself lays the stretch there and some window is missing; names that window.
    Planned(Length, CutSaid),
    /// Not known; names the missing fact.
    Unknown(CutSaid),
}

/// Planes at which a layer becomes bare, from the conductor end outward: the cut, and the edge shrunk back.
pub const fn edges(layer: Layer) -> &'static [Plane] {
    match layer {
        Layer::Insulation => &[Plane::InsulationEnd, Plane::InsulationEndShrunk],
        Layer::InsulationScreen => &[Plane::ScreenEdge],
        Layer::MetallicShield => &[Plane::ShieldEdge],
        Layer::Jacket => &[Plane::JacketEdge, Plane::JacketEdgeShrunk],
        Layer::Conductor | Layer::ConductorScreen => &[],
    }
}

/// Length by which a stretch reaches onto a layer, or onto a forbidden layer over it, over all places that the windows allow.
///
/// lap = min(end − inner edge, outer edge − begin, outer edge − inner edge), each at its own worst, for every outer edge at which an allowed layer begins.
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

/// Greatest distance between two planes, each of which may be any of several.
fn farthest(cutback: &Cutback, from: &[Plane], to: &[Plane]) -> Lap {
    // An edge that no row shrinks back has no second plane; the cut itself always counts.
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

/// Length by which an adapter passes the edge of the insulation screen, at the least of all windows; negative if it can end before the edge.
///
/// # Errors
/// A plane without a place or a window.
pub fn past_edge(cutback: &Cutback) -> Result<Station, CutSaid> {
    let past = cutback.dimension(Plane::ScreenEdge, Plane::AdapterFar)?;
    Ok(past.least)
}

/// Least length by which an adapter must pass that edge, so that a field may be drawn as if the adapter never ended: its greatest thickness.
///
/// `None` if its row gives no range over the insulation.
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

/// Least of the distances; the stretch reaches the layer only if all are positive.
fn least(pairs: &[Lap]) -> Lap {
    let worst = || pairs.iter().filter_map(Lap::worst);
    // One distance that is never positive settles it, whatever the others are.
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
    // If some window is missing, the plan itself must lay the stretch there, wherever the other windows let it lie.
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
