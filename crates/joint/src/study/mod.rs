//! Study: the fields of one leg at the worst that its windows allow, beside the worst that the instructions allow; solved once for all checks.
//!
//! Why its own room: a solution costs milliseconds, a comparison nothing; checks compare and never solve.
//!
//! Invariants: everything is per volt between conductor and earth, solved at the voltage that counts; the worst is one that was solved, never one that was extrapolated; a number that did not settle says so; one thread, the same order, the same bits.
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
pub use input::{Input, Spread, read};
pub use plug::{PlugStudy, PlugWorst, study_plug};
pub use shown::Shown;
pub use solver::{Outcome, Point, Solver, Value};

/// Rounding of whole nanometres, m.
const ROUNDING: f64 = 2e-9;

use crate::cutback::Cutback;
use crate::fit::Chosen;
use crate::job::{Job, Leg};
use crate::said::{Said, StudySaid};
use crate::section::{Drawn, Drive, NotDrawn, Unknown};
use crate::survey::EndSurvey;
use explore::{Filler, explore};
use jointwright_numerics::field::Solved;

/// Everything that a study is made from.
#[derive(Clone, Copy, Debug)]
pub struct Subject<'a> {
    /// Job.
    pub job: &'a Job,
    /// Leg.
    pub leg: &'a Leg,
    /// Its parts.
    pub chosen: &'a Chosen<'a>,
    /// Its cutbacks.
    pub cutback: &'a Cutback,
    /// What was measured on its ends.
    pub surveys: &'a [EndSurvey],
}

/// What came of a study.
#[derive(Clone, Debug)]
pub enum Study {
    /// Nobody asked for it.
    NotAsked,
    /// Something is not known.
    Unknown(Unknown),
    /// What is known does not make a section, or the section could not be solved.
    Refused(Said),
    /// Solved.
    Done(Box<Done>),
}

/// A solved study.
#[derive(Clone, Debug)]
pub struct Done {
    /// What it was made from.
    pub input: Input,
    /// The worst over the windows of this leg.
    pub here: Worst,
    /// The worst that the instructions allow, or why it cannot be said.
    pub allowed: Result<Worst, Said>,
    /// Both at the trial, where some material conducts, so that its field is another.
    pub trial: Option<AtTrial>,
}

/// A study at the trial.
#[derive(Clone, Debug)]
pub struct AtTrial {
    /// What is put on the conductor.
    pub drive: Drive,
    /// The worst over the windows of this leg.
    pub here: Worst,
    /// The worst that the instructions allow, or why it cannot be said.
    pub allowed: Result<Worst, Said>,
}

/// Studies one leg.
pub fn study(subject: &Subject<'_>) -> Study {
    let input = match read(subject) {
        Ok(input) => input,
        Err(NotDrawn::Unknown(unknown)) => return Study::Unknown(unknown),
        Err(NotDrawn::Refused(why)) => return Study::Refused(why),
    };
    let step = &input.profile.step;
    let filler = match &step.filler {
        None => Filler::None,
        Some(filler) if filler.is_permanent => Filler::Permanent,
        Some(_) => Filler::Passing,
    };
    let at = |drive: Drive| -> Result<(Worst, Result<Worst, Said>), Said> {
        let mut solver = Solver::new(&input, drive);
        let here = explore(&mut solver, &input.here, filler)?;
        let mut allowed = match &input.allowed {
            Ok(spread) => explore(&mut solver, spread, filler),
            Err(why) => Err(why.into()),
        };
        if let (true, Ok(allowed)) = (input.is_within(), &mut allowed) {
            allowed.take_in(&here);
        }
        Ok((here, allowed))
    };
    let (here, allowed) = match at(input.service) {
        Ok(both) => both,
        Err(why) => return Study::Refused(why),
    };
    let trial = match input.trial.map(|drive| (drive, at(drive))) {
        None => None,
        Some((drive, Ok((here, allowed)))) => Some(AtTrial {
            drive,
            here,
            allowed,
        }),
        Some((_, Err(why))) => return Study::Refused(Said::of(StudySaid::AtTrial, why)),
    };
    Study::Done(Box::new(Done {
        input,
        here,
        allowed,
        trial,
    }))
}

impl Input {
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

impl Done {
    /// Whether everything that the windows of this leg leave open lies within what the instructions allow, and so is one of the things they allow.
    pub fn is_within(&self) -> bool {
        self.input.is_within()
    }

    /// Whether some material inside the body conducts, so that its field depends on the frequency.
    pub fn conducts(&self) -> bool {
        self.input.service.frequency_hz.is_some()
    }

    /// One state solved again, for its picture.
    ///
    /// # Errors
    /// The reason.
    fn solved(&self, point: &Point) -> Result<(Drawn, Solved), Said> {
        Solver::new(&self.input, self.input.service).solved(point)
    }
}

#[cfg(test)]
mod tests;
