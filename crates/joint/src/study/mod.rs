//! Study: the fields of one leg at the worst of its windows, and at the worst that the instructions allow; solved once for all checks.
//!
//! Why its own room: a solution costs milliseconds, a comparison nothing; checks compare and never solve.
//!
//! Invariants:
//! - Every field is per volt between conductor and earth, solved at the voltage that counts.
//! - The worst state was solved, never extrapolated.
//! - A number that did not settle says so.
//! - One thread and one order give the same bits.
//!
//! Assumes, for all fields: the leg's own wall at every diameter; one diameter over the whole end.
//!
//! Not here: outlines (`section`), voltages and limits (`checks`).
//!
//! Source: `docs/theory/worst.md`.

mod explore;
mod gap;
mod input;
mod plug;
mod shown;
mod solver;

pub use explore::{Seen, Worst};
pub use gap::{Across, inception};
pub use input::{DimensionRanges, Input, read};
pub use plug::{PlugStudy, PlugWorst, study_plug};
pub use shown::Shown;
use solver::Meshes;
pub use solver::{Outcome, Point, Solver, Value};

/// Error from rounding to whole nanometres, m.
const ROUNDING: f64 = 2e-9;

use crate::cutback::Cutback;
use crate::fit::Chosen;
use crate::job::{Job, Leg};
use crate::said::{Said, StudySaid};
use crate::section::{Drawn, Drive, NotDrawn, Unknown};
use crate::survey::EndSurvey;
use explore::{Filler, explore};
use jointwright_numerics::field::Solved;

/// Inputs of a study.
#[derive(Clone, Copy, Debug)]
pub struct FittedLeg<'a> {
    /// Job.
    pub job: &'a Job,
    /// Leg.
    pub leg: &'a Leg,
    /// Parts of the leg.
    pub chosen: &'a Chosen<'a>,
    /// Cutbacks of the leg.
    pub cutback: &'a Cutback,
    /// Readings of its ends.
    pub surveys: &'a [EndSurvey],
}

/// Result of a study.
#[derive(Clone, Debug)]
pub enum Study {
    /// Nobody asked for the study.
    NotAsked,
    /// A fact is missing.
    Unknown(Unknown),
    /// The known values make no section, or the section could not be solved.
    Refused(Said),
    /// Solved.
    Done(Box<SolvedStudy>),
}

/// A solved study.
#[derive(Clone, Debug)]
pub struct SolvedStudy {
    /// Inputs of the study.
    pub input: Input,
    /// Worst over the windows of this leg.
    pub here: Worst,
    /// Worst that the instructions allow, or the reason why it is not known.
    pub allowed: Result<Worst, Said>,
    /// States that the instructions allow, without the states of this leg.
    alone: Alone,
    /// Both worst cases at the trial, if a conducting material makes its field another.
    pub trial: Option<AtDrive>,
}

/// States that the instructions allow; legs, phases and readings with the same ones share them.
#[derive(Clone, Debug)]
struct Alone {
    /// Worst of them, or the reason why it is not known.
    worst: Result<Worst, Said>,
    /// Their meshes.
    meshes: Meshes,
}

/// A study at one drive of the conductor.
#[derive(Clone, Debug)]
pub struct AtDrive {
    /// Drive of the conductor.
    pub drive: Drive,
    /// Worst over the windows of this leg.
    pub here: Worst,
    /// Worst that the instructions allow, or the reason why it is not known.
    pub allowed: Result<Worst, Said>,
    /// States that the instructions allow, without the states of this leg.
    alone: Alone,
}

impl Study {
    /// The solved study, if it is solved.
    pub fn done(&self) -> Option<&SolvedStudy> {
        match self {
            Study::Done(done) => Some(done),
            _ => None,
        }
    }
}

/// Computes the study of one leg; the states that the instructions allow are taken from a known study with the same ones.
pub fn study(subject: &FittedLeg<'_>, known: &[&SolvedStudy]) -> Study {
    let input = match read(subject) {
        Ok(input) => input,
        Err(NotDrawn::Unknown(unknown)) => return Study::Unknown(unknown),
        Err(NotDrawn::Refused(why)) => return Study::Refused(why),
    };
    let known = known.iter().find(|known| known.input.allows_as(&input));
    let service = known.map(|known| known.alone.clone());
    let at_trial = known.and_then(|known| known.trial.as_ref());
    let at_trial = at_trial.map(|trial| trial.alone.clone());
    let service = match AtDrive::solve(&input, input.service, service) {
        Ok(service) => service,
        Err(why) => return Study::Refused(why),
    };
    let trial = match input.trial {
        None => None,
        Some(drive) => match AtDrive::solve(&input, drive, at_trial) {
            Ok(trial) => Some(trial),
            Err(why) => return Study::Refused(Said::of(StudySaid::AtTrial, why)),
        },
    };
    Study::Done(Box::new(SolvedStudy {
        here: service.here,
        allowed: service.allowed,
        alone: service.alone,
        trial,
        input,
    }))
}

impl AtDrive {
    /// Solves both worst cases at one drive.
    ///
    /// The allowed states come first, so that they are the same whatever the windows of this leg are; the states of this leg begin with their meshes.
    ///
    /// # Errors
    /// The first state of this leg that could not be solved, and the reason.
    fn solve(input: &Input, drive: Drive, known: Option<Alone>) -> Result<AtDrive, Said> {
        let filler = match &input.profile.step.filler {
            None => Filler::None,
            Some(filler) if filler.is_permanent => Filler::Permanent,
            Some(_) => Filler::Passing,
        };
        let alone = known.unwrap_or_else(|| Alone::solve(input, drive, filler));
        let mut solver = Solver::with(input, drive, alone.meshes.clone());
        let here = explore(&mut solver, &input.here, filler)?;
        let mut allowed = alone.worst.clone();
        if let (true, Ok(allowed)) = (input.is_within(), &mut allowed) {
            allowed.take_in(&here);
        }
        Ok(AtDrive {
            drive,
            here,
            allowed,
            alone,
        })
    }
}

impl Alone {
    /// Solves the states that the instructions allow.
    fn solve(input: &Input, drive: Drive, filler: Filler) -> Alone {
        let mut solver = Solver::of_allowed(input, drive);
        let worst = match &input.allowed {
            Ok(ranges) => explore(&mut solver, ranges, filler),
            Err(why) => Err(why.into()),
        };
        Alone {
            worst,
            meshes: solver.meshes(),
        }
    }
}

impl Input {
    /// Whether the instructions allow the same states for both.
    fn allows_as(&self, other: &Input) -> bool {
        let alike = Input {
            here: other.here,
            insulation_end_m: other.insulation_end_m,
            ..self.clone()
        };
        alike == *other
    }

    fn is_within(&self) -> bool {
        let Ok(allowed) = &self.allowed else {
            return false;
        };
        let inside = |here: (f64, f64), there: (f64, f64)| {
            here.0 >= there.0 - ROUNDING && here.1 <= there.1 + ROUNDING
        };
        let here = &self.here;
        inside(here.radius, allowed.radius)
            && inside(here.screen_edge_m, allowed.screen_edge_m)
            && inside(here.edge_radius_m, allowed.edge_radius_m)
    }
}

impl SolvedStudy {
    /// Whether all dimensions that the windows of this leg leave open lie within the dimensions that the instructions allow.
    pub fn is_within(&self) -> bool {
        self.input.is_within()
    }

    /// Whether some material inside the body conducts, so that the field depends on the frequency.
    pub fn conducts(&self) -> bool {
        self.input.service.frequency_hz.is_some()
    }

    /// Solves one state again, for its picture.
    ///
    /// # Errors
    /// The reason why there is no solution.
    fn solved(&self, point: &Point) -> Result<(Drawn, Solved), Said> {
        Solver::new(&self.input, self.input.service).solved(point)
    }
}

#[cfg(test)]
mod tests;
