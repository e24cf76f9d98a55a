//! Warm: temperatures of joint and cable under load, the load that the joint can carry continuously, and the time for which it can carry more.
//!
//! Why its own room: a joint is thick rubber over a contact, so the rating of its cable does not cover it.
//! Checks compare and never solve; the legs of a joint form one star, which is solved once for all of them.
//!
//! Invariants: nothing is guessed.
//! The surroundings of a leg and the thermal properties of its parts are stated with their source, or asked for.
//! The limit comes from the body's own paper.
//! If a choice is left, the warmer one is taken.
//!
//! Assumes: one phase, with its cuts at their planned places; films that do not change with the temperature; no heat from rubber to rubber across the middle; no heat through the bus; a shield over the joint without metal and without a loss.
//!
//! Not here: the source of a limit (`checks`); heat in contacts of the shield.
//!
//! Source: `docs/theory/warm.md`, `docs/theory/ladder.md`.

mod around;
mod cable_run;
mod comparison;
mod course;
mod daily;
mod input;
mod leg;
mod model;
mod outside;
mod rating;
mod shape;
mod whence;

pub use crate::said::Share;
pub use cable_run::{CableRun, RunAt, Stretched, rate_run};
pub use daily::Cyclic;
pub use input::{LegSubject, unread};
pub use leg::{Lasts, LegAt, LegLimit, RATIO_MOST};
pub use model::{Model, TemperatureProfile};
pub use rating::{AtRatio, Emergency, Govern, Rating};
pub use whence::{OwnLoad, Whence, in_tenths};

pub(crate) use comparison::{Warmed, runs_away};

use crate::cable::Metal;
use crate::catalogue::{Ageing, Bus};
use crate::job::{Job, JointKind};
use crate::limit::Ask;
use crate::said::{HeatAsk, HeatLacks, HeatSaid, LoadCannot, PartKind, Said, Stated, WarmingSaid};
use crate::section::Unknown;
use course::Lean;
use input::Missing;
use jointwright_numerics::ladder::Hub;
use std::sync::Arc;

/// Greatest difference between a ladder's temperature rise and that of finite elements in steady state, as a share of the rise.
///
/// # Source
/// `docs/theory/ladder.md`: 400 joints, 0.85 %.
pub const ERROR_AT_REST_RATIO: f64 = 0.01;
/// The same difference in a transient.
///
/// # Source
/// `docs/theory/ladder.md`: 240 joints, 1.57 %.
pub const ERROR_IN_TIME_RATIO: f64 = 0.02;
/// Temperature above which nothing is computed, because no part of a joint is meant to reach it, °C.
pub const HOTTEST_DEGC: f64 = 500.0;
/// Longest time over which an emergency is computed, s.
pub const LONGEST_S: f64 = 72.0 * 3600.0;
/// Temperature at which a bus resistance counts as read if its row does not state one: no maker reads it colder, °C.
///
/// # Source
/// common practice, no source.
const BUS_COLD_DEGC: f64 = 0.0;
/// Molar gas constant by its definition, kJ/(mol K).
const GAS_KJ_PER_MOL_K: f64 = 8.314_462_618e-3;
/// 0 °C in kelvin.
const ZERO_DEGC_K: f64 = 273.15;

/// Outcome of the load of a joint.
#[derive(Clone, Debug)]
pub enum Warm {
    /// Nobody asked for it.
    NotAsked,
    /// The body of a leg is left open.
    BodyOpen,
    /// A fact is not known.
    Unknown(Unknown),
    /// Stated facts contradict each other; the reason.
    Refused(Said),
    /// It was solved.
    Done(Box<WarmJoint>),
}

/// A joint under load.
#[derive(Clone, Debug)]
pub struct WarmJoint {
    /// Inputs from which it was made.
    pub input: Input,
    /// Model for other loads.
    pub model: Model,
    /// Temperatures of each leg at the job's load; `None` if there is thermal runaway (the losses outgrow the cooling), or a leg gets hotter than [`HOTTEST_DEGC`].
    pub at_load: Option<Vec<LegAt>>,
    /// Temperatures at the end of the job's emergency, or the reason why there are none.
    pub at_emergency: Result<Option<Vec<LegAt>>, Said>,
    /// Estimated error by which the states of the emergency differ from the full ladder, K.
    pub error_in_time_k: f64,
    /// Temperatures along each leg at the job's load; empty without such a state.
    along: Vec<TemperatureProfile>,
    /// Projected stars for other loads and for times; `None` in thermal runaway at the job's load.
    lean: Option<Arc<Lean>>,
    /// Answers of each leg.
    pub legs: Vec<LegWarm>,
    /// Message with the resistance of the bus that is used; `None` without a bus.
    pub bus_says: Option<Said>,
    /// Keys of values from memory on which these temperatures rest, and which the owner has not confirmed.
    pub unconfirmed: Vec<&'static str>,
    /// Asks for the diameters that nobody read, and that the papers' replace.
    pub unread: Vec<Ask>,
}

/// Messages about one leg.
#[derive(Clone, Debug, PartialEq)]
pub struct LegWarm {
    /// Leg.
    pub leg: String,
    /// Body that holds its conductor.
    pub body: String,
    /// Highest temperatures of that conductor by the body's paper: continuous, and in an emergency, °C.
    pub limits_degc: (Option<f64>, Option<f64>),
    /// Ratio to the job's load of the load that brings it to the continuous limit; `None` without a limit, or if no load reaches it.
    pub load_to_limit_ratio: Option<f64>,
    /// Loads of this leg that bring it there while the others do not rise in proportion; `None` if the joint has two legs, or without a limit.
    pub own_load: Option<OwnLoad>,
    /// Origins of its heat at the load, compared with its cable without a joint.
    pub whence: Option<Whence>,
    /// Effect of one worse connector on it.
    pub contacts: Contacts,
    /// Ratio to the job's load of the load that brings its cable without a joint to `duty.conductor_greatest`.
    pub cable_load_to_limit_ratio: Option<f64>,
    /// Time for which the emergency load may flow, from the job's load in steady state, until the emergency limit is reached; `None` without a limit or an emergency.
    pub emergency_lasts: Option<Lasts>,
    /// Greatest resistance of the connector by its row, and the resistance of the same length of conductor, Ω at 20 °C.
    pub connector_ohm: (f64, f64),
    /// Computed heat flow into the surroundings, stretch by stretch.
    pub outside: Vec<Said>,
    /// Message about the origin of its shield's diameter, if a loss follows from it.
    pub shield_says: Option<Said>,
    /// Ageing of the body's rubber, if its row states constants for it.
    pub aged: Option<Aged>,
}

/// Effect of doubling the resistance of one connector, with the others unchanged.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Contacts {
    /// Effect of the leg's own connector, K hotter; `None` in thermal runaway.
    pub own_k: Option<f64>,
    /// Temperature of the leg's joint with its own connector doubled, °C.
    pub own_degc: Option<f64>,
    /// Connector with the greatest effect on this leg: index of its leg, and K hotter.
    pub worst_k: Option<(usize, f64)>,
}

/// Thermal ageing of a leg's rubber.
#[derive(Clone, Debug, PartialEq)]
pub struct Aged {
    /// Constants of the row.
    pub constants: Ageing,
    /// Ratio of the ageing rate at the load to the rate at the reference.
    pub at_load_ratio: f64,
    /// Ageing by the job's emergency, in hours at the reference; `None` without an emergency.
    pub emergency_h: Option<f64>,
}

/// All inputs of the temperatures of a joint, and nothing else.
#[derive(Clone, Debug, PartialEq)]
pub struct Input {
    shapes: Vec<shape::Shape>,
    said: Vec<input::Said>,
    hub: Hub,
    bus_says: Option<Said>,
    loads_a: Vec<f64>,
    emergency_a_s: Result<(Vec<f64>, f64), Said>,
    rows: Vec<LegRow>,
    cable_greatest_degc: Option<f64>,
    unconfirmed: Vec<&'static str>,
    unread: Vec<Ask>,
}

/// Entries of a body's row about one leg's temperatures.
#[derive(Clone, Debug, PartialEq)]
struct LegRow {
    leg: String,
    body: String,
    /// Continuous limit and emergency limit, °C.
    limits_degc: (Option<f64>, Option<f64>),
    ageing: Option<Ageing>,
}

impl LegRow {
    fn read(subject: &LegSubject<'_>) -> Result<LegRow, Said> {
        let leg = subject.leg.id.clone();
        let Some(body) = subject.chosen.body else {
            let part = PartKind::Body;
            return Err(HeatLacks::LeftOpen { leg, part }.into());
        };
        Ok(LegRow {
            leg,
            body: body.head.id.clone(),
            limits_degc: (
                body.conductor_greatest_degc,
                body.conductor_emergency_greatest_degc,
            ),
            ageing: body.ageing.clone(),
        })
    }
}

/// Reads and solves a joint under load.
pub fn warm(job: &Job, bus: Option<&Bus>, subjects: &[LegSubject<'_>]) -> Warm {
    match read(job, bus, subjects) {
        Ok(input) => solve(input),
        Err(unsolved) => unsolved,
    }
}

/// Solves a joint from its inputs.
pub fn solve(input: Input) -> Warm {
    let model = Model::new(
        input.shapes.clone(),
        input.hub,
        input.loads_a.clone(),
        input.emergency_a_s.clone(),
    );
    match model.and_then(|(model, ladders)| model.answer(ladders, input)) {
        Ok(done) => Warm::Done(Box::new(done)),
        Err(why) => Warm::Refused(why),
    }
}

/// Reads the inputs of a joint's temperatures.
///
/// # Errors
/// The missing facts, or the contradiction, as the outcome of the joint.
pub fn read(job: &Job, bus: Option<&Bus>, subjects: &[LegSubject<'_>]) -> Result<Input, Warm> {
    let duty = &job.duty;
    let mut why: Vec<Said> = Vec::new();
    let mut questions: Vec<Said> = Vec::new();
    let mut add = |unknown: Unknown| {
        why.push(unknown.why);
        for question in unknown.questions {
            if !questions.contains(&question) {
                questions.push(question);
            }
        }
    };
    let mut inputs = Vec::new();
    for subject in subjects {
        match input::read(job, subject) {
            Ok(input) => inputs.push(input),
            Err(Missing::Unknown(unknown)) => add(unknown),
            Err(Missing::Refused(why)) => return Err(Warm::Refused(why)),
        }
    }
    let (hub, bus_says) = match hub(job, bus, subjects.len()) {
        Ok(hub) => hub,
        Err(unknown) => {
            add(unknown);
            (Hub::default(), None)
        }
    };
    let loads = subjects.iter().map(|subject| job.load_of_a(subject.leg));
    let Some(loads_a) = loads.collect::<Option<Vec<f64>>>() else {
        add(Unknown::new(
            WarmingSaid::not_stated("duty.load"),
            [HeatAsk::LoadOfEachLeg],
        ));
        return Err(Warm::Unknown(joined(why, questions)));
    };
    if !why.is_empty() {
        return Err(Warm::Unknown(joined(why, questions)));
    }
    if loads_a.iter().all(|load| *load <= 0.0) {
        return Err(Warm::Refused(LoadCannot::LoadIsNought.into()));
    }
    let emergency_a_s = emergency(job, subjects, &loads_a);
    if let Err(why) = balance(subjects, &loads_a, duty.load_a, Stated::Load) {
        return Err(Warm::Refused(why));
    }
    let (unconfirmed, unread) = (unconfirmed(job, &inputs), all_unread(&inputs));
    let (shapes, said) = inputs
        .into_iter()
        .map(|input| (input.shape, input.said))
        .unzip();
    let rows = subjects.iter().map(LegRow::read);
    Ok(Input {
        shapes,
        said,
        hub,
        bus_says,
        loads_a,
        emergency_a_s,
        rows: rows.collect::<Result<_, _>>().map_err(Warm::Refused)?,
        cable_greatest_degc: duty.conductor_greatest_degc,
        unconfirmed,
        unread,
    })
}

/// Loads of the job's emergency, A, and its duration, s.
fn emergency(
    job: &Job,
    subjects: &[LegSubject<'_>],
    loads_a: &[f64],
) -> Result<(Vec<f64>, f64), Said> {
    let each = subjects
        .iter()
        .map(|subject| job.emergency_of_a(subject.leg));
    let currents_a = each.collect::<Option<Vec<f64>>>();
    let Some((currents_a, time_s)) = currents_a.zip(job.duty.emergency_s) else {
        return Err(LoadCannot::EmergencyNotStated.into());
    };
    balance(
        subjects,
        &currents_a,
        job.duty.emergency_a,
        Stated::Emergency,
    )?;
    above_load(subjects, loads_a, currents_a, time_s)
}

/// Asks for the diameters that nobody read, leg by leg.
fn all_unread(inputs: &[input::LegInput]) -> Vec<Ask> {
    let each = inputs.iter().flat_map(|input| input.said.unread.clone());
    each.collect()
}

/// Keys of values from memory that the owner has not confirmed, each once.
fn unconfirmed(job: &Job, inputs: &[input::LegInput]) -> Vec<&'static str> {
    let mut open: Vec<&'static str> = Vec::new();
    for key in inputs.iter().flat_map(|input| &input.said.memory) {
        let is_confirmed = job.confirmations.iter().any(|row| row.key == *key);
        if !is_confirmed && !open.contains(key) {
            open.push(key);
        }
    }
    open
}

/// Refuses currents that cannot balance in one joint: the other legs take the current that one leg brings, and the largest current of a leg is the one that the job states.
fn balance(
    subjects: &[LegSubject<'_>],
    currents_a: &[f64],
    whole_a: Option<f64>,
    of: Stated,
) -> Result<(), Said> {
    let largest_a = currents_a.iter().copied().fold(0.0, f64::max);
    let others_a = currents_a.iter().sum::<f64>() - largest_a;
    let close = 1.0 + 1e-9;
    if let Some(whole_a) = whole_a {
        if largest_a > whole_a * close {
            return Err(LoadCannot::LegCarriesMore {
                of,
                largest_a,
                whole_a,
            }
            .into());
        }
        if largest_a * close < whole_a {
            return Err(LoadCannot::NoLegCarriesWhole {
                of,
                largest_a,
                whole_a,
            }
            .into());
        }
    }
    if largest_a > others_a * close {
        return Err(LoadCannot::OneAgainstAll {
            of,
            n_legs: u32::try_from(subjects.len()).unwrap_or(u32::MAX),
            largest_a,
            others_a,
        }
        .into());
    }
    Ok(())
}

/// Refuses an emergency without duration, or with a current below the load.
fn above_load(
    subjects: &[LegSubject<'_>],
    loads_a: &[f64],
    currents_a: Vec<f64>,
    time_s: f64,
) -> Result<(Vec<f64>, f64), Said> {
    if time_s <= 0.0 {
        return Err(LoadCannot::EmergencyTakesNoTime.into());
    }
    let each = subjects.iter().zip(loads_a).zip(&currents_a);
    for ((subject, load_a), emergency_a) in each {
        if emergency_a < load_a {
            return Err(LoadCannot::EmergencyBelowLoad {
                leg: subject.leg.id.clone(),
                emergency_a: *emergency_a,
                load_a: *load_a,
            }
            .into());
        }
    }
    Ok((currents_a, time_s))
}

fn joined(why: Vec<Said>, questions: Vec<Said>) -> Unknown {
    let mut why = why;
    why.retain(|why| *why != Said::all([]));
    why.dedup();
    Unknown {
        why: Said::all(why),
        questions,
    }
}

/// Hub in which the legs meet: for a bus, half its resistance for each arm; without a bus, no resistance.
///
/// Returns also the message about the resistance of the bus.
fn hub(job: &Job, bus: Option<&Bus>, n_legs: usize) -> Result<(Hub, Option<Said>), Unknown> {
    if job.kind != JointKind::Separable {
        return Ok((Hub::default(), None));
    }
    let Some(bus) = bus else {
        return Err(Unknown::new(HeatLacks::Bus, [HeatAsk::Bus]));
    };
    let id = &bus.head.id;
    let Some(between_ports) = bus.resistance_ohm else {
        let (part, end) = (id.clone(), None);
        let ask = HeatAsk::BusResistance { bus: id.clone() };
        return Err(Unknown::new(HeatLacks::ResistanceOf { part, end }, [ask]));
    };
    // The row does not state the metal: take the one whose resistance grows more with temperature.
    let metals = [Metal::Copper, Metal::Aluminium];
    let coefficients = metals.map(|metal| metal.coefficient_at_per_k(20.0));
    let alpha_per_k = coefficients.into_iter().fold(0.0, f64::max);
    let read_degc = bus.resistance_at_degc.unwrap_or(BUS_COLD_DEGC);
    let says = HeatSaid::Bus {
        bus: id.clone(),
        micro_ohm: between_ports * 1e6,
        at_degc: bus.resistance_at_degc,
        cold_degc: BUS_COLD_DEGC,
        percent_per_k: alpha_per_k * 1e2,
    };
    let at20 = 1.0 / (1.0 + alpha_per_k * (read_degc - 20.0));
    let hub = Hub {
        at20_ohm: 0.5 * between_ports * n_legs as f64 * at20,
        alpha_per_k,
        ..Hub::default()
    };
    Ok((hub, Some(says.into())))
}

/// Ratio of the ageing rate of a part at a temperature to the rate at its reference temperature (Arrhenius law).
///
/// exp(E/R (1/T0 − 1/T)), temperatures in K.
///
/// # Source
/// closed form; the row states the source of its constants.
pub fn ageing_ratio(ageing: &Ageing, degc: f64) -> f64 {
    let (reference, here) = (ageing.reference_degc + ZERO_DEGC_K, degc + ZERO_DEGC_K);
    (ageing.activation_kj_per_mol / GAS_KJ_PER_MOL_K * (1.0 / reference - 1.0 / here)).exp()
}
