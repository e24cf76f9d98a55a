//! Inputs: the facts and results that a check may read.
//!
//! Why its own file: the arguments of a check state its inputs, and it reads nothing else.
//!
//! Invariants: everything is borrowed or shared, and nothing is solved here.
//!
//! Not here: their making (`model`), the list of checks (`list`).

use crate::ask::Missing;
use crate::cutback::Cutback;
use crate::end::EndId;
use crate::fit::Chosen;
use crate::job::{JointKind, Leg, Order, OwnerLimit};
use crate::limit::{Bound, Limit, Subject, Word};
use crate::pressure::EndPressure;
use crate::study::{PlugStudy, Study};
use crate::survey::EndSurvey;
use crate::warm::Warm;
use std::sync::Arc;

/// Facts and results that the checks compare.
#[derive(Clone, Debug)]
pub struct Inputs<'o> {
    /// Job and catalogue.
    pub order: &'o Order,
    /// Legs, in the order of their names.
    pub legs: Vec<LegInputs<'o>>,
    /// Temperatures of the joint under load.
    pub warm: Arc<Warm>,
}

/// One leg, its parts and its cutbacks.
#[derive(Clone, Debug)]
pub struct LegInputs<'o> {
    /// The leg.
    pub leg: &'o Leg,
    /// Parts.
    pub chosen: Chosen<'o>,
    /// Cutbacks.
    pub cutback: Arc<Cutback>,
    /// Ends.
    pub ends: Vec<EndInputs>,
    /// Its fields.
    pub study: Arc<Study>,
    /// Fields of its tapered plug.
    pub plug: Arc<PlugStudy>,
}

/// One end and its measurements.
#[derive(Clone, Debug)]
pub struct EndInputs {
    /// Leg and phase.
    pub id: EndId,
    /// Readings.
    pub survey: Arc<EndSurvey>,
    /// Interface pressures of its parts.
    pub pressure: Arc<EndPressure>,
}

impl LegInputs<'_> {
    /// Subject of a ruling on the leg.
    pub(super) fn subject(&self) -> Subject {
        Subject::leg(&self.leg.id)
    }

    /// Subject of a ruling on an end of the leg.
    pub(super) fn subject_of(&self, end: &EndInputs) -> Subject {
        Subject::end(&end.id)
    }

    /// Source of the asks for facts that the leg may lack.
    pub(super) fn missing<'a>(&'a self, inputs: &'a Inputs<'_>) -> Missing<'a> {
        Missing {
            job: &inputs.order.job,
            leg: self.leg,
            chosen: &self.chosen,
            cutback: &self.cutback,
            surveys: self.ends.iter().map(|end| end.survey.as_ref()).collect(),
        }
    }
}

impl Inputs<'_> {
    /// Kind of the joint.
    pub(super) fn kind(&self) -> JointKind {
        self.order.job.kind
    }

    /// Limits for a check: the limit of the instructions, if they state one, and every limit of the owner.
    pub(super) fn limits(&self, check: &str, stated: Option<Limit>) -> Vec<Limit> {
        let owner = |row: &OwnerLimit| {
            let bounds = [
                row.least.map(Bound::AtLeast),
                row.greatest.map(Bound::AtMost),
            ];
            let word = Word::Owner(row.source.clone().into());
            bounds.into_iter().flatten().map(move |bound| Limit {
                bound,
                word: word.clone(),
            })
        };
        stated
            .into_iter()
            .chain(self.order.job.limits_of(check).flat_map(owner))
            .collect()
    }
}
