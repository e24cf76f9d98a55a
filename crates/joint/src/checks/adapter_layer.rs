//! Does the adapter lie only on layers for which its paper gives it a range, for every place that the windows allow?
//!
//! What is compared: how far the adapter can reach, at either end, onto a layer that its row does not name, against nothing.
//!
//! Source: the ranges of the adapter's own instructions.

use super::{Check, Inputs, Judge, LegInputs};
use crate::limit::{Ruling, Word, fact_table};
use crate::plane::Plane;
use crate::underlay::{Asked, Stretch};

pub(super) const CHECK: Check = Check {
    slug: "adapter_layer",
    question: "Does the adapter lie only on layers for which its paper gives it a range?",
    judge: Judge::Leg(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let Some(adapter) = leg.chosen.adapter else {
        return Vec::new();
    };
    let mut may_lie_on = adapter.may_lie_on.clone();
    may_lie_on.extend(adapter.fits.iter().map(|f| f.over));
    let asked = Asked {
        check: CHECK.slug,
        subject: leg.subject(),
        part: &adapter.head.id,
        word: Word::Instructions(adapter.head.source()),
        stretch: Stretch {
            begins: &[Plane::AdapterNear],
            ends: Plane::AdapterFar,
        },
        may_lie_on,
        ends: fact_table::ADAPTER_ENDS.of(adapter.head.id.clone()),
    };
    vec![asked.rule(&leg.cutback, inputs.order.job.words)]
}
