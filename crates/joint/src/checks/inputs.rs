//! Inputs: what a check may read.
//!
//! Why its own file: a check says by its arguments what it reads, and reads nothing else.
//!
//! Invariants: everything is borrowed or shared, and nothing is solved here.
//!
//! Not here: who makes them (`model`), the list of checks (`list`).

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
    /// How warm the joint gets under load.
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
    /// Those of its tapered plug.
    pub plug: Arc<PlugStudy>,
}

/// One end and what was measured on it.
#[derive(Clone, Debug)]
pub struct EndInputs {
    /// Leg and phase.
    pub id: EndId,
    /// Readings.
    pub survey: Arc<EndSurvey>,
    /// How hard its parts sit.
    pub pressure: Arc<EndPressure>,
}

impl LegInputs<'_> {
    /// Whom a ruling on the leg concerns.
    pub(super) fn subject(&self) -> Subject {
        Subject::leg(&self.leg.id)
    }

    /// Whom a ruling on an end of the leg concerns.
    pub(super) fn subject_of(&self, end: &EndInputs) -> Subject {
        Subject::end(&end.id)
    }

    /// Facts that may be missing of the leg.
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

    /// Limits for a check: the instructions' where they state one, and every one of the owner's.
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
