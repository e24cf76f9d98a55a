//! Does the body's electrode end on the insulation, before the edge of the insulation screen, for every place that the windows allow?
//!
//! An electrode at the conductor's potential that reaches the screen is a short circuit.
//! Common practice, no source: it may fail and never pass, so it speaks only when it fails.

use super::{Check, Inputs, Judge, LegInputs};
use crate::cable::Layer;
use crate::limit::{Outcome, Ruling, Word, fact_table};
use crate::plane::Plane;
use crate::said::{ElectrodeSaid, Of};
use crate::underlay::{Asked, Stretch};

pub(super) const CHECK: Check = Check {
    slug: "electrode_layer",
    judge: Judge::Leg(judge),
};

fn judge(_: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let Some(body) = leg.chosen.body else {
        return Vec::new();
    };
    let asked = Asked {
        check: CHECK.slug,
        subject: leg.subject(),
        part: &body.head.id,
        word: Word::CommonPractice(ElectrodeSaid::EndsOnInsulation.into()),
        stretch: Stretch {
            begins: &[],
            ends: Plane::ElectrodeEnd,
        },
        may_lie_on: vec![Layer::Conductor, Layer::Insulation],
        ends: fact_table::LINK.of(Of::plane(Plane::ElectrodeEnd, &body.head.id)),
    };
    let ruling = asked.rule(&leg.cutback);
    Some(ruling)
        .filter(|r| r.outcome == Outcome::Fail)
        .into_iter()
        .collect()
}
