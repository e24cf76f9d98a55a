//! Model: one joint whose costly results are solved on demand, and kept.
//!
//! Why its own room: rulings, pictures, a rating and a single end all use the same solved parts, and no part is solved twice.
//!
//! Invariants:
//! - A model owns its order.
//! - A kept result equals the result of a fresh solve: it is kept only where all its inputs are equal.
//! - A solve that is stopped leaves the rest not asked, and says so.
//!
//! Not here: the rulings (`checks`, `judge`), the physics (`study`, `pressure`, `warm`).

use crate::catalogue::Body;
use crate::checks::{EndInputs, Inputs, LegInputs};
use crate::cutback::{Refusal, cutback};
use crate::end::EndId;
use crate::fit::Chosen;
use crate::form::{Complaint, Complaints};
use crate::job::{End, Job, JointKind, Leg, Order};
use crate::pressure::{self, EndPressure, press};
use crate::said::{NameHint, RunHint, RunSaid};
use crate::study::{self, PlugStudy, SolvedStudy, Study, study, study_plug};
use crate::survey::{EndSurvey, survey};
use crate::warm::{self, LegSubject, Warm};
use std::ops::ControlFlow;
use std::sync::Arc;

/// Extent of the solve.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Depth {
    /// Places and fits only, which takes microseconds.
    Unsolved,
    /// Pressures and temperatures also.
    WithoutFields,
    /// Everything.
    Whole,
}

/// Progress of a solve: steps done, and their total number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Progress {
    /// Steps done.
    pub n_done: usize,
    /// Total number of steps.
    pub n_steps: usize,
}

/// One joint: its order and its solved results.
#[derive(Clone, Debug)]
pub struct Model {
    order: Order,
    solved: Solved,
}

impl Model {
    /// Makes a model of an order; nothing is solved yet.
    ///
    /// # Errors
    /// Rows that contradict each other, as complaints at the rows.
    pub fn new(order: Order) -> Result<Model, Vec<Complaint>> {
        let solved = Solved::new(&order)?;
        Ok(Model { order, solved })
    }

    /// Makes a model of a changed order; it keeps every solved result of this one whose inputs are equal, and solves nothing else.
    ///
    /// # Errors
    /// As for [`Model::new`].
    pub fn again(&self, order: Order) -> Result<Model, Vec<Complaint>> {
        let mut solved = Solved::new(&order)?;
        solved.take_over(&order, &self.solved);
        Ok(Model { order, solved })
    }

    /// The order.
    pub fn order(&self) -> &Order {
        &self.order
    }

    /// Whether all results of a depth are solved.
    pub fn is_solved(&self, depth: Depth) -> bool {
        self.solved.problems(&self.order, depth).is_empty()
    }

    /// Solves the missing results of a depth step by step; `watch` hears the progress before each step, and may stop the solve.
    ///
    /// True if all of them are solved now.
    pub fn solve(
        &mut self,
        depth: Depth,
        watch: &mut dyn FnMut(Progress) -> ControlFlow<()>,
    ) -> bool {
        self.solved.solve(&self.order, depth, watch)
    }

    /// Inputs of the checks.
    pub fn inputs(&self) -> Inputs<'_> {
        self.solved.inputs(&self.order)
    }
}

/// Solved results of a joint; the order that they belong to is an argument.
#[derive(Clone, Debug)]
pub(crate) struct Solved {
    legs: Vec<LegSolved>,
    warm: Option<Arc<Warm>>,
    /// Studies of the order before this one.
    before: Vec<Arc<Study>>,
}

#[derive(Clone, Debug)]
struct LegSolved {
    cutback: Arc<crate::cutback::Cutback>,
    ends: Vec<EndSolved>,
    study: Option<Arc<Study>>,
    plug: Option<Arc<PlugStudy>>,
    /// Body whose plug that is.
    plug_of: Option<Body>,
}

#[derive(Clone, Debug)]
struct EndSolved {
    id: EndId,
    survey: Arc<EndSurvey>,
    pressure: Option<Arc<EndPressure>>,
    /// Facts from which those pressures were computed.
    pressed_from: Option<pressure::Input>,
}

/// One result to solve.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Problem {
    /// Fields of a leg.
    Study(usize),
    /// Tapered plug of a leg.
    Plug(usize),
    /// Pressures of an end.
    Press(usize, usize),
    /// Temperatures of the joint.
    Warm,
}

impl Solved {
    /// Places and readings of an order.
    ///
    /// # Errors
    /// Rows that contradict each other, as complaints at the rows.
    pub(crate) fn new(order: &Order) -> Result<Solved, Vec<Complaint>> {
        if order.job.kind == JointKind::Cable {
            return Err(order.job.legs.iter().map(no_joint).collect());
        }
        let mut legs = Vec::new();
        let mut refusals = Vec::new();
        for leg in &order.job.legs {
            match LegSolved::new(&order.job, leg, &chosen(order, leg)) {
                Ok(leg) => legs.push(leg),
                Err(wrong) => refusals.extend(wrong),
            }
        }
        if refusals.is_empty() {
            return Ok(Solved {
                legs,
                warm: None,
                before: Vec::new(),
            });
        }
        let mut complaints = Complaints::default();
        for refusal in &refusals {
            complaints.add(complaint(refusal));
        }
        Err(complaints.into_sorted())
    }

    /// Problems that a depth still needs solved, in their order.
    fn problems(&self, order: &Order, depth: Depth) -> Vec<Problem> {
        let has_plug = order.job.kind == JointKind::Separable;
        let mut problems = Vec::new();
        if depth == Depth::Whole {
            for (at, (leg, row)) in self.legs.iter().zip(&order.job.legs).enumerate() {
                let has_body = chosen(order, row).body.is_some();
                if has_body && leg.study.is_none() {
                    problems.push(Problem::Study(at));
                }
                if has_body && has_plug && leg.plug.is_none() {
                    problems.push(Problem::Plug(at));
                }
            }
        }
        if depth >= Depth::WithoutFields {
            for (at, leg) in self.legs.iter().enumerate() {
                let open = |(_, end): &(usize, &EndSolved)| end.pressure.is_none();
                let ends = leg.ends.iter().enumerate().filter(open);
                problems.extend(ends.map(|(end, _)| Problem::Press(at, end)));
            }
            if self.warm.is_none() {
                problems.push(Problem::Warm);
            }
        }
        problems
    }

    /// As for [`Model::solve`].
    pub(crate) fn solve(
        &mut self,
        order: &Order,
        depth: Depth,
        watch: &mut dyn FnMut(Progress) -> ControlFlow<()>,
    ) -> bool {
        let problems = self.problems(order, depth);
        let n_steps = problems.len();
        for (n_done, problem) in problems.into_iter().enumerate() {
            if watch(Progress { n_done, n_steps }).is_break() {
                return false;
            }
            self.take(order, problem);
        }
        true
    }

    fn take(&mut self, order: &Order, problem: Problem) {
        match problem {
            Problem::Study(at) => {
                let known: Vec<Arc<Study>> = self.studies();
                let known: Vec<&SolvedStudy> = known.iter().filter_map(|of| of.done()).collect();
                let study = self.with_subject(order, at, |subject| study(subject, &known));
                self.legs[at].study = Some(Arc::new(study));
            }
            Problem::Plug(at) => {
                self.legs[at].plug = Some(self.plug_of(order, at));
                self.legs[at].plug_of = chosen(order, &order.job.legs[at]).body.cloned();
            }
            Problem::Press(at, end) => {
                let input = self.pressure_input(order, at, end);
                let end = &mut self.legs[at].ends[end];
                end.pressure = Some(Arc::new(press(&input)));
                end.pressed_from = Some(input);
            }
            Problem::Warm => self.warm = Some(Arc::new(self.warm_of(order))),
        }
    }

    /// Studies with allowed states that another leg, phase or reading may share.
    fn studies(&self) -> Vec<Arc<Study>> {
        let own = self.legs.iter().filter_map(|leg| leg.study.clone());
        own.chain(self.before.iter().cloned()).collect()
    }

    /// Inputs of a leg's study.
    fn with_subject<T>(
        &self,
        order: &Order,
        at: usize,
        then: impl FnOnce(&study::FittedLeg<'_>) -> T,
    ) -> T {
        let leg = &order.job.legs[at];
        then(&study::FittedLeg {
            job: &order.job,
            leg,
            chosen: &chosen(order, leg),
            cutback: &self.legs[at].cutback,
            surveys: &self.legs[at].surveys(),
        })
    }

    /// Study of a plug; it depends on the body's row alone, so legs with the same body share it.
    fn plug_of(&self, order: &Order, at: usize) -> Arc<PlugStudy> {
        let Some(body) = chosen(order, &order.job.legs[at]).body else {
            return Arc::new(PlugStudy::None);
        };
        self.known_plug(body)
            .unwrap_or_else(|| Arc::new(study_plug(body)))
    }

    /// The plug of an equal body, if one is solved.
    fn known_plug(&self, body: &Body) -> Option<Arc<PlugStudy>> {
        let same = |leg: &&LegSolved| leg.plug_of.as_ref() == Some(body);
        self.legs.iter().find(same)?.plug.clone()
    }

    fn pressure_input(&self, order: &Order, at: usize, end: usize) -> pressure::Input {
        let leg = &order.job.legs[at];
        let end = &self.legs[at].ends[end];
        pressure::read(&pressure::FittedEnd {
            job: &order.job,
            leg,
            end: &end.id,
            chosen: &chosen(order, leg),
            cutback: &self.legs[at].cutback,
            survey: &end.survey,
        })
    }

    /// Inputs of the temperatures; an order whose parts are left open asks for them elsewhere.
    fn warm_input(&self, order: &Order) -> Result<warm::Input, Warm> {
        let chosen: Vec<Chosen<'_>> = order.job.legs.iter().map(|l| chosen(order, l)).collect();
        if chosen.iter().any(|chosen| chosen.body.is_none()) {
            return Err(Warm::BodyOpen);
        }
        let surveys: Vec<Vec<EndSurvey>> = self.legs.iter().map(LegSolved::surveys).collect();
        let subjects: Vec<LegSubject<'_>> = (0..self.legs.len())
            .map(|at| LegSubject {
                leg: &order.job.legs[at],
                chosen: &chosen[at],
                cutback: &self.legs[at].cutback,
                surveys: &surveys[at],
            })
            .collect();
        let bus = order.job.bus.as_deref();
        let bus = bus.and_then(|id| order.catalogue.bus(id));
        warm::read(&order.job, bus, &subjects)
    }

    fn warm_of(&self, order: &Order) -> Warm {
        self.warm_input(order).map_or_else(|open| open, warm::solve)
    }

    /// Takes over the results of another order that were solved from equal inputs: fields, plugs, pressures and temperatures depend on their inputs alone.
    fn take_over(&mut self, order: &Order, before: &Solved) {
        self.before = before.studies();
        for at in 0..self.legs.len() {
            let Some(known) = before.legs.get(at).and_then(|leg| leg.study.clone()) else {
                continue;
            };
            if let Study::Done(done) = known.as_ref()
                && self
                    .with_subject(order, at, study::read)
                    .is_ok_and(|input| input == done.input)
            {
                self.legs[at].study = Some(known);
            }
        }
        self.take_over_pressures(order, before);
        for (leg, row) in self.legs.iter_mut().zip(&order.job.legs) {
            if let Some(body) = chosen(order, row).body
                && let Some(plug) = before.known_plug(body)
            {
                leg.plug = Some(plug);
                leg.plug_of = Some(body.clone());
            }
        }
        if let Some(known) = &before.warm
            && let Warm::Done(done) = known.as_ref()
            && self
                .warm_input(order)
                .is_ok_and(|input| input == done.input)
        {
            self.warm = Some(known.clone());
        }
    }

    fn take_over_pressures(&mut self, order: &Order, before: &Solved) {
        for at in 0..self.legs.len() {
            for end in 0..self.legs[at].ends.len() {
                let known = before.legs.get(at).and_then(|leg| leg.ends.get(end));
                let Some(known) = known.filter(|known| known.pressed_from.is_some()) else {
                    continue;
                };
                let input = self.pressure_input(order, at, end);
                if known.pressed_from.as_ref() == Some(&input) {
                    let end = &mut self.legs[at].ends[end];
                    end.pressure = known.pressure.clone();
                    end.pressed_from = Some(input);
                }
            }
        }
    }

    /// Inputs of the checks.
    pub(crate) fn inputs<'o>(&self, order: &'o Order) -> Inputs<'o> {
        let legs = self.legs.iter().zip(&order.job.legs);
        Inputs {
            order,
            legs: legs
                .map(|(solved, leg)| solved.inputs(leg, chosen(order, leg)))
                .collect(),
            warm: self.warm.clone().unwrap_or(Arc::new(Warm::NotAsked)),
        }
    }
}

impl LegSolved {
    fn new(job: &Job, leg: &Leg, chosen: &Chosen<'_>) -> Result<LegSolved, Vec<Refusal>> {
        let cutback = Arc::new(cutback(job, leg, chosen)?);
        let end = |phase| EndSolved {
            id: EndId::new(&leg.id, phase),
            survey: Arc::new(survey(job, End { leg, phase })),
            pressure: None,
            pressed_from: None,
        };
        Ok(LegSolved {
            cutback,
            ends: job.phase_numbers().map(end).collect(),
            study: None,
            plug: None,
            plug_of: None,
        })
    }

    fn surveys(&self) -> Vec<EndSurvey> {
        let each = self.ends.iter().map(|end| end.survey.as_ref().clone());
        each.collect()
    }

    fn inputs<'o>(&self, leg: &'o Leg, chosen: Chosen<'o>) -> LegInputs<'o> {
        let end = |end: &EndSolved| EndInputs {
            id: end.id.clone(),
            survey: end.survey.clone(),
            pressure: end
                .pressure
                .clone()
                .unwrap_or(Arc::new(EndPressure::NOT_ASKED)),
        };
        LegInputs {
            leg,
            chosen,
            cutback: self.cutback.clone(),
            ends: self.ends.iter().map(end).collect(),
            study: self.study.clone().unwrap_or(Arc::new(Study::NotAsked)),
            plug: self.plug.clone().unwrap_or(Arc::new(PlugStudy::None)),
        }
    }
}

/// One leg with other parts, without its fields and pressures.
///
/// # Errors
/// Rows that contradict each other.
pub(crate) fn with_parts<'o>(
    job: &Job,
    leg: &'o Leg,
    chosen: Chosen<'o>,
) -> Result<LegInputs<'o>, Vec<Refusal>> {
    Ok(LegSolved::new(job, leg, &chosen)?.inputs(leg, chosen))
}

fn chosen<'o>(order: &'o Order, leg: &'o Leg) -> Chosen<'o> {
    Chosen::from_names(&order.catalogue, &leg.parts, leg.cable.conductor)
}

/// Complaint that the job has a run of cable without a joint.
fn no_joint(leg: &Leg) -> Complaint {
    Complaint::at(&leg.place, RunSaid::HasNoJoint, RunHint::RateSaysIt)
}

fn complaint(refusal: &Refusal) -> Complaint {
    Complaint::at(
        &refusal.place,
        refusal.message.clone(),
        NameHint::LookBothUp,
    )
}
