//! Ends: every check asked again of the ends as built, and what became worse.
//!
//! Why its own file: a reading in its window says nothing of the other windows; only all checks on all readings together do.
//!
//! Invariants:
//! - The limits are those of the plan; the readings move values only.
//! - What is compared with is the plan's own ruling on the same question.
//!
//! Not here: how readings enter (`enter`), the windows of single readings (`finding`).

use super::enter::{entered, enters, phases};
use super::finding::FindingKind;
use super::reading::{Built, BuiltReading};
use crate::checks::CHECKS;
use crate::form::Complaint;
use crate::job::Order;
use crate::limit::{Datum, Outcome, Ruling};
use crate::model::{Depth, Model};
use crate::slot::{Measured, Slot};
use std::cell::OnceCell;
use std::collections::{BTreeMap, BTreeSet};
use std::ops::ControlFlow;

/// Least change of a margin that is named, as a share of the limit; smaller ones are rounding.
const NAMED_SHARE: f64 = 1e-6;

/// A question whose answer became worse by the readings.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// Ruling of the plan; `None` if it does not ask the question.
    pub was: Option<Ruling>,
    /// Ruling as built.
    pub is: Ruling,
    /// Effect on the work.
    pub kind: FindingKind,
}

/// All checks on one phase as built.
#[derive(Clone, Debug, PartialEq)]
pub struct PhaseAsBuilt {
    /// Phase.
    pub phase: u8,
    /// Number of rulings as built.
    pub n_rulings: usize,
    /// Number of questions that the plan left open and the readings answered with a pass.
    pub n_settled: usize,
    /// Questions whose answer became worse, worst first.
    pub changes: Vec<Change>,
    /// Quantities that were read and that no check computes with.
    pub beside: BTreeSet<Measured>,
}

/// The ends as built: for each phase with a reading the joint as planned, and as built.
///
/// Both are kept, so that another reading at one end solves that end alone.
pub struct Ends<'a> {
    model: &'a Model,
    /// Rulings of the plan.
    planned: &'a [Ruling],
    built: &'a Built,
    phases: BTreeMap<u8, Phase>,
}

struct Phase {
    /// As planned; solved when it is first asked for.
    as_planned: OnceCell<Model>,
    as_built: Model,
}

impl<'a> Ends<'a> {
    /// Solves each phase with a reading, as planned and as built.
    ///
    /// # Errors
    /// Rows that contradict each other once the connector is as made, as complaints at the rows.
    pub fn new(
        model: &'a Model,
        planned: &'a [Ruling],
        built: &'a Built,
    ) -> Result<Ends<'a>, Vec<Complaint>> {
        let phase = |phase: u8| -> Result<(u8, Phase), Vec<Complaint>> {
            let order = entered(model.order(), built, phase, |_| true);
            let of = Phase {
                as_planned: OnceCell::new(),
                as_built: solved(model, order)?,
            };
            Ok((phase, of))
        };
        let phases: Result<BTreeMap<u8, Phase>, Vec<Complaint>> =
            phases(built).into_iter().map(phase).collect();
        Ok(Ends {
            model,
            planned,
            built,
            phases: phases?,
        })
    }

    /// One phase without any reading.
    ///
    /// # Errors
    /// As for [`Ends::new`].
    fn as_planned<'p>(&self, of: &'p Phase, phase: u8) -> Result<&'p Model, Vec<Complaint>> {
        if let Some(known) = of.as_planned.get() {
            return Ok(known);
        }
        let order = entered(self.model.order(), self.built, phase, |_| false);
        let model = solved(&of.as_built, order)?;
        Ok(of.as_planned.get_or_init(|| model))
    }

    /// All checks on each phase as built.
    pub fn judged(&self) -> Vec<PhaseAsBuilt> {
        let phases = self.phases.iter();
        let phases = phases.map(|(phase, of)| {
            let rulings = rulings(&of.as_built);
            let (changes, n_settled) = changes(self.planned, &rulings);
            let read = self.built.readings.iter().map(|reading| &reading.slot);
            let read = read.filter(|slot| slot.end.phase == *phase);
            let read = read.map(|slot| slot.measured.clone());
            PhaseAsBuilt {
                phase: *phase,
                n_rulings: rulings.len(),
                n_settled,
                changes,
                beside: read.filter(|measured| !enters(measured)).collect(),
            }
        });
        phases.collect()
    }

    /// Questions that become worse by the readings of one slot alone, everything else as planned; `None` if no check computes with its quantity.
    ///
    /// # Errors
    /// As for [`Ends::new`].
    pub fn alone(&self, slot: &Slot) -> Result<Option<Vec<Change>>, Vec<Complaint>> {
        let Some(of) = self.phases.get(&slot.end.phase) else {
            return Ok(None);
        };
        if !enters(&slot.measured) {
            return Ok(None);
        }
        let alone = |reading: &BuiltReading| reading.slot == *slot;
        let model = self.as_planned(of, slot.end.phase)?;
        let order = entered(self.model.order(), self.built, slot.end.phase, alone);
        let rulings = rulings(&solved(model, order)?);
        Ok(Some(changes(self.planned, &rulings).0))
    }

    /// Questions of one phase that become worse by other readings of it.
    ///
    /// # Errors
    /// As for [`Ends::new`].
    pub fn after(&self, built: &Built, phase: u8) -> Result<Vec<Change>, Vec<Complaint>> {
        let Some(of) = self.phases.get(&phase) else {
            return Ok(Vec::new());
        };
        let order = entered(self.model.order(), built, phase, |_| true);
        let rulings = rulings(&solved(&of.as_built, order)?);
        Ok(changes(self.planned, &rulings).0)
    }
}

/// A solved model of another order.
fn solved(model: &Model, order: Order) -> Result<Model, Vec<Complaint>> {
    let mut model = model.again(order)?;
    model.solve(Depth::Whole, &mut |_| ControlFlow::Continue(()));
    Ok(model)
}

fn rulings(model: &Model) -> Vec<Ruling> {
    let inputs = model.inputs();
    CHECKS.iter().flat_map(|check| inputs.ask(check)).collect()
}

/// Questions whose answer became worse, worst first, and the number of open ones that now pass.
fn changes(planned: &[Ruling], built: &[Ruling]) -> (Vec<Change>, usize) {
    let mut changes = Vec::new();
    let mut n_settled = 0;
    let mut groups: Vec<Vec<&Ruling>> = Vec::new();
    for ruling in built {
        let same = |group: &&mut Vec<&Ruling>| {
            let first = group.first();
            first.is_some_and(|first| is_one_question(first, ruling))
        };
        match groups.iter_mut().find(same) {
            Some(group) => group.push(ruling),
            None => groups.push(vec![ruling]),
        }
    }
    for group in groups {
        let was = planned.iter();
        let was: Vec<&Ruling> = was.filter(|was| is_one_question(was, group[0])).collect();
        for (index, is) in group.iter().enumerate() {
            let twin = twin(&was, index, is, group.len());
            if twin.is_some_and(|was| was.outcome == Outcome::NotJudged)
                && is.outcome == Outcome::Pass
            {
                n_settled += 1;
            }
            if let Some(kind) = effect(twin, is, &was) {
                changes.push(Change {
                    was: twin.cloned(),
                    is: (*is).clone(),
                    kind,
                });
            }
        }
    }
    changes.sort_by(|a, b| {
        let worse = b.kind.cmp(&a.kind);
        worse.then(room(&a.is).total_cmp(&room(&b.is)))
    });
    (changes, n_settled)
}

/// Whether two rulings answer one check on one leg, end or joint.
fn is_one_question(a: &Ruling, b: &Ruling) -> bool {
    a.check == b.check && a.subject == b.subject
}

/// The plan's ruling with the same limit: by its place if nothing was added or left out, else by its source.
fn twin<'r>(was: &[&'r Ruling], index: usize, is: &Ruling, n_built: usize) -> Option<&'r Ruling> {
    if was.len() == n_built {
        return was.get(index).copied();
    }
    let same = |was: &&&Ruling| was.source == is.source && was.unit == is.unit;
    was.iter().find(same).copied()
}

/// Effect of a ruling as built; `None` if it is no worse than the plan.
fn effect(was: Option<&Ruling>, is: &Ruling, group: &[&Ruling]) -> Option<FindingKind> {
    let before = was.map(|was| was.outcome);
    let stopped = was.is_some_and(|was| was.stops);
    match is.outcome {
        Outcome::Fail if before != Some(Outcome::Fail) => Some(FindingKind::StopAndAsk),
        Outcome::NotJudged if is.stops && !stopped => Some(FindingKind::StopAndAsk),
        Outcome::NotJudged => {
            let was_open = group.iter().any(|was| was.outcome == Outcome::NotJudged);
            (!was_open).then_some(FindingKind::CannotTell)
        }
        Outcome::Pass => {
            let was = was.filter(|was| was.outcome == Outcome::Pass && was.unit == is.unit)?;
            let lost = was.margin? - is.margin?;
            let error = was.error.unwrap_or(0.0).max(is.error.unwrap_or(0.0));
            let rounding = NAMED_SHARE * size(is);
            (lost > error.max(rounding)).then_some(FindingKind::InWindow)
        }
        Outcome::Fail => None,
    }
}

/// Size of a ruling's limit, in its unit.
fn size(ruling: &Ruling) -> f64 {
    match &ruling.limit {
        Some(Datum::Number(limit)) => limit.abs(),
        Some(Datum::Range { min, max }) => min.abs().max(max.abs()),
        _ => 1.0,
    }
}

/// Room that is left, as a share of the limit.
fn room(ruling: &Ruling) -> f64 {
    let margin = ruling.margin.unwrap_or(f64::INFINITY);
    margin / size(ruling).max(f64::MIN_POSITIVE)
}
