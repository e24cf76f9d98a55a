//! Slide: the parts that go over a cable, with step and end.

use super::coming::{Coming, comings};
use crate::catalogue::PartKind;
use crate::checks::{Inputs, LegInputs};
use crate::job::JointKind;
use crate::said::UnsettledSaid;
use crate::stage::Stage;

/// A part that is slid onto one end.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Slide {
    /// Kind of part.
    pub part: PartKind,
    /// Its row.
    pub id: String,
    /// Leg and phase of the part.
    pub of: String,
    /// End that it is slid onto, as leg and phase.
    pub onto: String,
}

/// Parts that come onto a leg at a stage, in order: of parked parts the farthest from the conductor end first, of parts pushed on later from the inside out.
pub(super) fn slides(inputs: &Inputs<'_>, leg: &LegInputs<'_>, stage: Stage) -> Vec<Slide> {
    let mut here: Vec<Coming<'_>> = comings(inputs, leg)
        .into_iter()
        .filter(|coming| coming.stage == stage)
        .collect();
    if stage != Stage::SlideOn {
        here.reverse();
    }
    let onto = |coming: &Coming<'_>| -> Vec<Slide> {
        leg.ends
            .iter()
            .map(|end| end.id.to_string())
            .map(|name| Slide {
                part: coming.part,
                id: coming.head.id.clone(),
                of: name.clone(),
                onto: name,
            })
            .collect()
    };
    here.iter().flat_map(onto).collect()
}

/// Questions about sliding on that cannot be settled here.
pub(super) fn unsettled(inputs: &Inputs<'_>) -> Vec<UnsettledSaid> {
    let mut said: Vec<UnsettledSaid> = inputs
        .legs
        .iter()
        .flat_map(|leg| comings(inputs, leg))
        .filter_map(|coming| coming.trouble)
        .collect();
    said.dedup();
    if inputs.order.job.kind == JointKind::Separable {
        return said;
    }
    match inputs.legs.iter().filter(|l| l.leg.parks).count() {
        1 => {}
        0 => said.push(UnsettledSaid::NobodyParks),
        n => said.push(UnsettledSaid::TooManyPark { n }),
    }
    said
}
