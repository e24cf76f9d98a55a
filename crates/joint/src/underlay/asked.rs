//! Asked: whether a stretch of a part lies only on layers that its row allows.

use super::{LAYERS, Lap, Stretch, edges, lap};
use crate::cable::Layer;
use crate::cutback::{Cutback, Growth};
use crate::limit::{Ask, Bound, Datum, Outcome, Reach, Ruling, Subject, Word, fact_table};
use crate::plane::Plane;
use crate::said::{CutSaid, EdgeAt, LayerSaid, Of, Said, Spot, WindowOf, WindowSaid};
use jointwright_units::{Length, Station, Toward};

/// Question about one stretch of one part on one leg.
pub(crate) struct Asked<'a> {
    /// Check.
    pub check: &'static str,
    /// Leg.
    pub subject: Subject,
    /// Short name of the part.
    pub part: &'a str,
    /// Source: its paper, or somebody's word.
    pub word: Word,
    /// The stretch.
    pub stretch: Stretch<'a>,
    /// Layers on which it may lie.
    pub may_lie_on: Vec<Layer>,
    /// Ask for the place of the stretch, if no row states it.
    pub ends: Ask,
}

/// A layer on which the stretch may not lie, and the length by which it can reach onto it.
struct Reached {
    layer: Layer,
    most: Length,
}

impl Asked<'_> {
    /// Judges the stretch at the worst of the windows, or as planned where the plan itself breaks the limit.
    pub fn rule(self, cutback: &Cutback) -> Ruling {
        let mut reached: Vec<Reached> = Vec::new();
        let (mut unknown, mut nearest) = (None, None::<jointwright_units::Interval>);
        for layer in LAYERS {
            if self.may_lie_on.contains(&layer) {
                continue;
            }
            match lap(cutback, self.stretch, layer, &self.may_lie_on) {
                Lap::Planned(most, _) => reached.push(Reached { layer, most }),
                Lap::Worst(lap) => {
                    if lap.greatest() > Length::ZERO {
                        let most = lap.greatest();
                        reached.push(Reached { layer, most });
                    }
                    if nearest.is_none_or(|n| lap.greatest() > n.greatest()) {
                        nearest = Some(lap);
                    }
                }
                Lap::Unknown(why) => unknown = unknown.or(Some(why)),
            }
        }
        let ruling = |outcome| self.ruling(nearest.map(|n| (Datum::of(n), n.greatest())), outcome);
        if let Some(most) = reached.iter().map(|r| r.most).max() {
            let why = Said::of(&self.subject, self.lies_over(cutback, &reached));
            let hint = self.hint(cutback, &reached);
            let value = Datum::Number(most.mm());
            let value = nearest.map_or((value, most), |n| (Datum::of(n), n.greatest()));
            return self.ruling(Some(value), Outcome::Fail).failing(why, hint);
        }
        match unknown {
            Some(why) => {
                let plane = self.stretch.ends;
                let why = Said::of(CutSaid::WherePlaneLies { plane }, why);
                let ask = self.missing(cutback);
                Ruling::not_judged(self.check, self.subject.clone(), why).asking(ask)
            }
            None => ruling(Outcome::Pass),
        }
    }

    /// The one missing fact: the place of the stretch, else the place of an edge, else a window.
    fn missing(&self, cutback: &Cutback) -> Ask {
        let own = self.stretch.begins.iter().chain([&self.stretch.ends]);
        if own.clone().any(|plane| !cutback.places(*plane)) {
            return self.ends.clone();
        }
        let of = |plane: &Plane| Of::plane(*plane, self.subject.clone());
        let edges: Vec<&Plane> = LAYERS.iter().filter_map(|l| edges(*l).first()).collect();
        if let Some(edge) = edges.iter().find(|edge| !cutback.places(***edge)) {
            return fact_table::LINK.of(of(edge));
        }
        if let Growth::Unknown(_) = cutback.growth {
            return fact_table::TRIAL_PRESS.of(self.subject.clone());
        }
        let has_none = |plane: &&Plane| {
            let cut = cutback.cuts.iter().find(|c| c.plane == **plane);
            cut.is_some_and(|c| c.window.is_none())
        };
        let plane = own.chain(edges).find(has_none);
        fact_table::WINDOW.of(of(plane.unwrap_or(&self.stretch.ends)))
    }

    fn ruling(&self, value: Option<(Datum, Length)>, outcome: Outcome) -> Ruling {
        let Some((value, most)) = value else {
            let (found, permitted) = (LayerSaid::EveryLayerAllowed, LayerSaid::LayersOfItsRow);
            let source = self.word.clone();
            return Ruling::on_words(self.check, self.subject.clone(), found, permitted, source);
        };
        Ruling {
            value: Some(value),
            limit: Some(Bound::AtMost(Length::ZERO).datum()),
            unit: Some("mm"),
            margin: Some((-most).mm()),
            source: Some(self.word.clone().into()),
            outcome,
            reach: Reach::Computed,
            ..Ruling::passing(self.check, self.subject.clone())
        }
    }

    /// Layers under the stretch, as a crew lead reads them.
    fn lies_over(&self, cutback: &Cutback, reached: &[Reached]) -> LayerSaid {
        let inward = |layer: Layer| self.may_lie_on.iter().all(|l| *l > layer);
        // A crew sees the farthest layer on which the plan itself lays the stretch; else name the farthest that the windows let it reach.
        let is_planned = |r: &&Reached| {
            let edge = edge_of(r.layer).and_then(|edge| cutback.nominal(edge));
            let end = cutback.nominal(self.stretch.ends);
            end.zip(edge).is_some_and(|(end, edge)| end > edge)
        };
        let all = || reached.iter().rev().filter(|r| !inward(r.layer));
        let outer = all().find(is_planned).or(all().next());
        let (far, planes) = match outer {
            Some(far) => {
                let edge = edge_of(far.layer).unwrap_or(Plane::ConductorEnd);
                (far, [self.stretch.ends, edge])
            }
            None => {
                let over = LAYERS.iter().find(|l| self.may_lie_on.contains(l));
                let edge = over.and_then(|l| edge_of(*l));
                let edge = edge.unwrap_or(Plane::InsulationEnd);
                let begin = self.stretch.begins.first().copied();
                (&reached[0], [begin.unwrap_or(self.stretch.ends), edge])
            }
        };
        let [plane, edge] = planes;
        let at = |plane: Plane| {
            let at = cutback.nominal(plane);
            let at = at.map(|at| Spot::new(at, Toward::Nearest));
            EdgeAt { plane, at }
        };
        let planned = match (cutback.nominal(plane), cutback.nominal(edge)) {
            (Some(plane), Some(edge)) if outer.is_some() => plane - edge,
            (Some(plane), Some(edge)) => edge - plane,
            _ => Station::ZERO,
        };
        let is_planned = planned > Station::ZERO;
        let by = if is_planned { planned.ceil() } else { far.most };
        let edges = LAYERS
            .iter()
            .filter_map(|l| edges(*l).first())
            .filter(|p| reached.iter().any(|r| edges(r.layer).contains(p)) || **p == edge)
            .map(|p| at(*p));
        LayerSaid::LiesOver {
            end: at(plane),
            by: Spot::new(Station::from(by), Toward::Longer),
            is_planned,
            layer: far.layer,
            row: self.part.to_owned(),
            edges: edges.collect(),
        }
    }

    /// Advice, and the windows that let it happen.
    fn hint(&self, cutback: &Cutback, reached: &[Reached]) -> WindowSaid {
        let mut planes = vec![self.stretch.ends];
        planes.extend(reached.iter().filter_map(|r| edges(r.layer).first()));
        let windows = planes.iter().filter_map(|plane| {
            let cut = cutback.cuts.iter().find(|c| c.plane == *plane)?;
            let whose = cut.whose.clone();
            (!whose.is_empty()).then_some(WindowOf {
                plane: *plane,
                whose,
            })
        });
        WindowSaid::CutsAndPartApart {
            part: self.part.to_owned(),
            windows: windows.collect(),
        }
    }
}

/// Cut at which a layer becomes bare; `None` for the conductor.
fn edge_of(layer: Layer) -> Option<Plane> {
    edges(layer).first().copied()
}
