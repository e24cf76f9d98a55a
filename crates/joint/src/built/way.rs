//! Way: the ways back from a reading out of its window, as far as the rows name them and the stage allows them.
//!
//! Why its own file: a crew that hears "out of window" asks at once "what now?", and the person who decides needs the price of each answer.
//!
//! Invariants:
//! - A way that no row names is not offered; the reason is said.
//! - A way is offered only if no reading shows that its place is covered by now.
//! - What a way leaves is judged as any readings are: by the same windows and the same checks.
//!
//! Not here: the choice, which a named person makes.

use super::bounds::{Bounds, bounds};
use super::ends::Ends;
use super::finding::{Finding, FindingKind};
use super::reading::{Built, BuiltReading, Found};
use crate::catalogue::{MayMove, PartKind};
use crate::checks::LegInputs;
use crate::end::EndId;
use crate::form::Complaint;
use crate::job::JointKind;
use crate::judge::Judged;
use crate::plane::Plane;
use crate::programme::{Step, Wanted, programme};
use crate::said::{Said, WaySaid};
use crate::slot::{Measured, Slot};
use crate::stage::Stage;
use jointwright_units::{Length, Station};
use std::collections::BTreeMap;

/// A way back.
#[derive(Clone, Debug, PartialEq)]
pub struct WayBack {
    /// Work of the way.
    pub way: WaySaid,
    /// Row or person that names it.
    pub source: Said,
    /// Findings out of window that are left at this end and its leg after it.
    pub n_left: usize,
    /// Worst kind of what is left.
    pub left: FindingKind,
    /// Cable that it uses.
    pub cable: Length,
    /// Parts that it uses up, by row.
    pub uses_up: Vec<String>,
    /// Conditions.
    pub conditions: Vec<WaySaid>,
}

/// Ways back from one finding.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ways {
    /// Ways that are offered: by what they leave, then by cable, then by parts.
    pub offered: Vec<WayBack>,
    /// Ways that are not offered, each with its reason.
    pub not_offered: Vec<WaySaid>,
}

/// Joint, its readings and its steps, from which ways back are found.
pub(super) struct Seeker<'a> {
    ends: &'a Ends<'a>,
    judged: &'a Judged<'a>,
    built: &'a Built,
    steps: Vec<Step>,
}

/// A way before it is judged: the readings as they would be after it.
struct Draft {
    way: WaySaid,
    source: Said,
    after: Built,
    cable: Length,
    uses_up: Vec<String>,
    conditions: Vec<WaySaid>,
}

impl<'a> Seeker<'a> {
    pub(super) fn new(ends: &'a Ends<'a>, judged: &'a Judged<'a>, built: &'a Built) -> Seeker<'a> {
        Seeker {
            ends,
            judged,
            built,
            steps: programme(&judged.inputs).steps,
        }
    }

    /// Ways back from the readings of a slot.
    ///
    /// # Errors
    /// As for [`Ends::new`].
    pub(super) fn ways(&self, slot: &Slot) -> Result<Ways, Vec<Complaint>> {
        let mut ways = Ways::default();
        let Some(leg) = self.leg(&slot.end.leg) else {
            return Ok(ways);
        };
        let mut drafts: Vec<Draft> = Vec::new();
        let tried = [
            self.cut_on(leg, slot),
            self.move_part(leg, slot),
            self.finish(leg, slot),
            self.start_again(leg, slot),
        ];
        for draft in tried.into_iter().flatten() {
            match draft {
                Ok(draft) => drafts.push(draft),
                Err(why) => ways.not_offered.push(why),
            }
        }
        ways.not_offered.extend(self.unnamed(leg, slot));
        for draft in drafts {
            ways.offered.push(self.judged(draft, &slot.end)?);
        }
        let price = |way: &WayBack| (way.n_left, way.left, way.cable, way.uses_up.len());
        ways.offered.sort_by_key(price);
        Ok(ways)
    }

    fn leg(&self, id: &str) -> Option<&LegInputs<'a>> {
        let mut legs = self.judged.inputs.legs.iter();
        legs.find(|leg| leg.leg.id == *id)
    }

    /// Position of the last step with a reading at an end; `None` without one.
    fn reached(&self, end: &EndId) -> Option<usize> {
        let is_read = |slot: &&Slot| {
            let mut readings = self.built.readings.iter();
            slot.end == *end && readings.any(|reading| reading.slot == **slot)
        };
        let has_reading = |step: &Step| {
            let wanted = step.hold.iter().flat_map(|hold| &hold.readings);
            wanted
                .flat_map(|wanted| &wanted.slots)
                .any(|slot| is_read(&slot))
        };
        self.steps.iter().rposition(has_reading)
    }

    /// Whether the readings show that an end has come to a stage of its leg.
    fn is_past(&self, end: &EndId, stage: Stage) -> bool {
        let of_leg = |step: &Step| step.stage == stage && step.legs.contains(&end.leg);
        let at = self.steps.iter().position(of_leg);
        at.is_some_and(|at| self.reached(end).is_some_and(|reached| reached >= at))
    }

    /// Whether the place of the body was read at an end.
    fn is_placed(&self, end: &EndId) -> bool {
        let plane = Plane::BodyEnd;
        let place = Slot::new(end, Measured::Place { plane });
        let mut readings = self.built.readings.iter();
        readings.any(|reading| reading.slot == place)
    }

    /// Stage after which an edge of a layer is covered.
    fn covered_by(&self, leg: &LegInputs<'_>, plane: Plane) -> Option<Stage> {
        Some(match plane {
            Plane::InsulationEnd => Stage::Connect,
            Plane::ScreenEdge => {
                let pushed_on =
                    |step: &Step| step.stage == Stage::PushOn && step.legs.contains(&leg.leg.id);
                if self.steps.iter().any(pushed_on) {
                    Stage::PushOn
                } else {
                    Stage::Place
                }
            }
            Plane::ShieldEdge => Stage::Bond,
            Plane::JacketEdge => Stage::Seal,
            _ => return None,
        })
    }

    /// Readings and windows of a slot.
    fn read(&self, slot: &Slot) -> Option<(&BuiltReading, Bounds)> {
        let mut readings = self.built.readings.iter();
        let reading = readings.find(|reading| reading.slot == *slot)?;
        let wanted = self.wanted().find(|wanted| wanted.slots.contains(slot))?;
        Some((reading, bounds(&self.judged.inputs, &wanted.against)))
    }

    fn wanted(&self) -> impl Iterator<Item = &Wanted> {
        let holds = self.steps.iter().filter_map(|step| step.hold.as_ref());
        holds.flat_map(|hold| &hold.readings)
    }

    /// Readings with another value in the place of those of a slot.
    fn with(&self, slot: &Slot, found: Found) -> Built {
        let mut readings = self.built.readings.clone();
        let mut found = Some(found);
        readings.retain_mut(|reading| {
            if reading.slot != *slot {
                return true;
            }
            // The first row takes the new value, the others go.
            found.take().is_some_and(|found| {
                reading.found = found;
                true
            })
        });
        Built { readings }
    }

    /// Takes more off at an edge that lies too near the conductor end.
    fn cut_on(&self, leg: &LegInputs<'_>, slot: &Slot) -> Option<Result<Draft, WaySaid>> {
        let Measured::Place { plane } = slot.measured else {
            return None;
        };
        let covered_by = self.covered_by(leg, plane)?;
        let cut = leg.cutback.cuts.iter().find(|cut| cut.plane == plane)?;
        let (reading, Bounds::Lengths(_, greatest)) = self.read(slot)? else {
            return None;
        };
        let Found::Lengths(values, error) = &reading.found else {
            return None;
        };
        let farthest = values.iter().max().map(|value| Station::from(*value))?;
        if greatest.is_some_and(|greatest| farthest - Station::from(*error) > greatest) {
            return Some(Err(WaySaid::TooMuchIsOff { plane }));
        }
        if self.is_past(&slot.end, covered_by) {
            return Some(Err(WaySaid::Covered { plane }));
        }
        let (Some(to), Some(placed)) = (cut.nominal, cut.placed.as_ref()) else {
            return Some(Err(WaySaid::NoRowPlaces { plane }));
        };
        Some(Ok(Draft {
            way: WaySaid::CutOn {
                plane,
                to: to.into(),
            },
            source: Said::all(placed.by.iter().take(1).map(Said::from)),
            after: self.with(slot, Found::Lengths(vec![to.floor()], *error)),
            cable: Length::ZERO,
            uses_up: Vec::new(),
            conditions: Vec::new(),
        }))
    }

    /// Moves a part to its planned place, if its row says until when it may be moved.
    fn move_part(&self, leg: &LegInputs<'_>, slot: &Slot) -> Option<Result<Draft, WaySaid>> {
        let chosen = &leg.chosen;
        let is_adapter = |plane| matches!(plane, Plane::AdapterNear | Plane::AdapterFar);
        let (part, plane, head, may_move) = match slot.measured {
            Measured::Distance { from, to } if is_adapter(from) || is_adapter(to) => {
                let row = chosen.adapter?;
                let plane = if is_adapter(to) { to } else { from };
                (PartKind::Adapter, plane, &row.head, row.may_move.as_ref())
            }
            Measured::Place {
                plane: plane @ Plane::BodyEnd,
            } => {
                let row = chosen.body?;
                (PartKind::Body, plane, &row.head, row.may_move.as_ref())
            }
            Measured::Place {
                plane: plane @ Plane::SealEnd,
            } => {
                let row = chosen.seal?;
                (PartKind::Seal, plane, &row.head, row.may_move.as_ref())
            }
            _ => return None,
        };
        let row = head.id.clone();
        let covered_by = match part {
            PartKind::Adapter => Stage::Place,
            PartKind::Body => Stage::Bond,
            _ => Stage::HandBack,
        };
        // The body and its adapter come to their places in one step.
        let is_covered = self.is_past(&slot.end, covered_by)
            && (part != PartKind::Adapter || self.is_placed(&slot.end));
        if is_covered {
            return Some(Err(WaySaid::PartCovered { part }));
        }
        let condition = match may_move {
            None => return Some(Err(WaySaid::MoveNotSaid { part, row })),
            Some(MayMove::Never) => return Some(Err(WaySaid::NeverMoves { part, row })),
            Some(MayMove::BeforeHoldoutIsOut) => WaySaid::UntilHoldoutIsOut,
            Some(MayMove::WithinMinutes(minutes)) => WaySaid::WithinMinutes { minutes: *minutes },
        };
        let (reading, bounds) = self.read(slot)?;
        let Found::Lengths(_, error) = &reading.found else {
            return None;
        };
        let Some(to) = belongs(leg, plane, &bounds) else {
            return Some(Err(WaySaid::NoRowPlaces { plane }));
        };
        Some(Ok(Draft {
            way: WaySaid::MoveTo {
                part,
                plane,
                to: to.into(),
            },
            source: head.source().into(),
            after: self.with(slot, Found::Lengths(vec![to.floor()], *error)),
            cable: Length::ZERO,
            uses_up: Vec::new(),
            conditions: vec![condition],
        }))
    }

    /// Finishes a step of the connector's own paper that was begun: presses or bolts that are still to be made.
    fn finish(&self, leg: &LegInputs<'_>, slot: &Slot) -> Option<Result<Draft, WaySaid>> {
        if !matches!(slot.measured, Measured::Presses | Measured::Bolts) {
            return None;
        }
        let connector = leg.chosen.connector?;
        let (reading, Bounds::Count(wanted)) = self.read(slot)? else {
            return None;
        };
        if !matches!(reading.found, Found::Count(n) if n < wanted) {
            return Some(Err(WaySaid::CannotUndo));
        }
        if self.is_past(&slot.end, Stage::Place) {
            return Some(Err(WaySaid::ConnectorCovered));
        }
        Some(Ok(Draft {
            way: WaySaid::Finish {
                measured: slot.measured.clone(),
            },
            source: connector.head.source().into(),
            after: self.with(slot, Found::Count(wanted)),
            cable: Length::ZERO,
            uses_up: Vec::new(),
            conditions: Vec::new(),
        }))
    }

    /// Cuts the end back and starts it again, with every other end that its connector or body holds.
    fn start_again(&self, leg: &LegInputs<'_>, slot: &Slot) -> Option<Result<Draft, WaySaid>> {
        if !is_put_right(&slot.measured)? {
            return Some(Err(WaySaid::SameCable));
        }
        let end = &slot.end;
        let is_joined = self.judged.inputs.order.job.kind != JointKind::Separable
            && self.is_past(end, Stage::Connect);
        let legs = self.judged.inputs.legs.iter();
        let legs: Vec<&LegInputs<'_>> = legs
            .filter(|other| is_joined || other.leg.id == leg.leg.id)
            .collect();
        let mut cable = Length::ZERO;
        let mut conditions = Vec::new();
        let (mut ends, mut uses_up) = (Vec::new(), Vec::new());
        for leg in legs {
            let (id, of) = (leg.leg.id.clone(), EndId::new(&leg.leg.id, end.phase));
            let Some(farthest) = leg.cutback.farthest(Plane::JacketEdge) else {
                return Some(Err(WaySaid::JacketEdgeOpen { leg: id }));
            };
            let Some(slack) = leg.leg.room.slack else {
                return Some(Err(WaySaid::SlackNotMeasured { leg: id }));
            };
            let needs = farthest.ceil();
            let (leg_id, each) = (id, |length: Length| Station::from(length).into());
            if slack < needs {
                return Some(Err(WaySaid::SlackTooShort {
                    leg: leg_id,
                    needs: each(needs),
                    slack: each(slack),
                }));
            }
            conditions.push(WaySaid::Slack {
                leg: leg_id,
                needs: each(needs),
                slack: each(slack),
            });
            cable += needs;
            uses_up.extend(self.placed(leg, &of));
            ends.push(of);
        }
        uses_up.sort();
        uses_up.dedup();
        if !uses_up.is_empty() {
            let rows = uses_up.clone();
            conditions.push(WaySaid::UsesUp { rows });
        }
        conditions.push(WaySaid::ReadAnew);
        let mut readings = self.built.readings.clone();
        readings.retain(|reading| !ends.contains(&reading.slot.end));
        let body = leg.chosen.body.map(|body| &body.head);
        let connector = leg.chosen.connector.map(|connector| &connector.head);
        let source = body.or(connector).map(|head| head.source().into());
        Some(Ok(Draft {
            way: WaySaid::StartAgain { ends },
            source: source.unwrap_or_else(|| Said::all([])),
            after: Built { readings },
            cable,
            uses_up,
            conditions,
        }))
    }

    /// Rows of the parts that the readings show to be on an end; none says that it may be used again.
    fn placed(&self, leg: &LegInputs<'_>, end: &EndId) -> Vec<String> {
        let chosen = &leg.chosen;
        let adapter = if self.covered_by(leg, Plane::ScreenEdge) == Some(Stage::PushOn) {
            Stage::PushOn
        } else {
            Stage::Place
        };
        let parts = [
            (chosen.connector.map(|part| &part.head), Stage::Connect),
            (chosen.adapter.map(|part| &part.head), adapter),
            (chosen.body.map(|part| &part.head), Stage::Place),
            (chosen.shield_part.map(|part| &part.head), Stage::Bond),
            (chosen.seal.map(|part| &part.head), Stage::Seal),
        ];
        let on = |(head, stage): (Option<&crate::catalogue::Head>, Stage)| {
            head.filter(|_| self.is_past(end, stage))
                .map(|head| head.id.clone())
        };
        parts.into_iter().filter_map(on).collect()
    }

    /// Ways that a person would ask for and that no row has a field for.
    fn unnamed(&self, leg: &LegInputs<'_>, slot: &Slot) -> Vec<WaySaid> {
        let Some(row) = leg.chosen.body.map(|body| body.head.id.clone()) else {
            return Vec::new();
        };
        match slot.measured {
            Measured::Surface { .. } => vec![WaySaid::NotToDress { row }],
            Measured::Place {
                plane: Plane::ScreenEdge,
            } => vec![WaySaid::NotToWind { row }],
            _ => Vec::new(),
        }
    }

    /// A way with what it leaves: findings of its end that are out, and checks on its leg or the joint that are.
    fn judged(&self, draft: Draft, end: &EndId) -> Result<WayBack, Vec<Complaint>> {
        let mut by_slot: BTreeMap<&Slot, FindingKind> = BTreeMap::new();
        let of_end = draft.after.readings.iter();
        for reading in of_end.filter(|reading| reading.slot.end == *end) {
            let fills = |wanted: &&Wanted| wanted.slots.contains(&reading.slot);
            for wanted in self.wanted().filter(fills) {
                let bounds = bounds(&self.judged.inputs, &wanted.against);
                let kind = Finding::of(&reading.found, &bounds).kind;
                let known = by_slot.entry(&reading.slot).or_insert(kind);
                *known = (*known).max(kind);
            }
        }
        let mut left: Vec<FindingKind> = by_slot.into_values().collect();
        let changes = self.ends.after(&draft.after, end.phase)?;
        let of_leg = changes.iter().filter(|change| {
            let leg = change.is.subject.leg.as_ref();
            leg.is_none_or(|leg| *leg == end.leg)
        });
        left.extend(of_leg.map(|change| change.kind));
        let is_out = |kind: &&FindingKind| **kind >= FindingKind::StopAndAsk;
        Ok(WayBack {
            way: draft.way,
            source: draft.source,
            n_left: left.iter().filter(is_out).count(),
            left: left.into_iter().max().unwrap_or(FindingKind::InWindow),
            cable: draft.cable,
            uses_up: draft.uses_up,
            conditions: draft.conditions,
        })
    }
}

/// Place to which a part belongs: its mark, else the middle of what its row allows.
fn belongs(leg: &LegInputs<'_>, plane: Plane, bounds: &Bounds) -> Option<Station> {
    let mut cuts = leg.cutback.cuts.iter();
    let planned = cuts.find(|cut| cut.plane == plane);
    match (planned.and_then(|cut| cut.nominal), bounds) {
        (Some(to), _) => Some(to),
        (None, Bounds::Lengths(Some(least), Some(greatest))) => Some(Station::from_half_nm(
            (least.half_nm() + greatest.half_nm()) / 2,
        )),
        _ => None,
    }
}

/// Whether a fresh end puts a quantity right; `None` if nothing that is cut again has to do with it.
const fn is_put_right(measured: &Measured) -> Option<bool> {
    match measured {
        // A fresh end of the same cable has the same size.
        Measured::Diameter { .. }
        | Measured::ShieldElements
        | Measured::Strands
        | Measured::ConductorMetal
        | Measured::ShieldForm
        | Measured::ShieldResistance => Some(false),
        Measured::Phase
        | Measured::Bridge
        | Measured::ShieldOpen
        | Measured::BondResistance { .. }
        | Measured::WiresBesideTape => None,
        _ => Some(true),
    }
}
