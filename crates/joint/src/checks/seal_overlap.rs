//! Does the seal lap far enough onto the jacket, for every place that the windows allow, also after the jacket has shrunk back?
//!
//! Source: the seal's own instructions, else the owner's limit.

use super::{Check, Inputs, Judge, LegInputs};
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Word, fact_table as fact};
use crate::plane::Plane;

pub(super) const CHECK: Check = Check {
    slug: "seal_overlap",
    question: "Does the seal lap far enough onto the jacket?",
    judge: Judge::Leg(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let Some(seal) = leg.chosen.seal else {
        return Vec::new();
    };
    let subject = leg.subject();
    let stated = seal.overlap_least.map(|overlap| Limit {
        bound: Bound::AtLeast(overlap),
        word: Word::Instructions(seal.head.source().into()),
    });
    let limits = inputs.limits(CHECK.slug, stated);
    if limits.is_empty() {
        let why = "neither the instructions nor the owner say how far it must lap onto the jacket";
        let ruling = Ruling::not_judged(CHECK.slug, subject, why);
        return vec![ruling.asking(fact::OVERLAP.of(&seal.head.id))];
    }
    let edge = leg.cutback.in_service(Plane::JacketEdge);
    let dimension = leg
        .cutback
        .dimension(edge, Plane::SealEnd, inputs.order.job.words);
    let dimension = match dimension {
        Err(why) => {
            let asks = leg.missing(inputs).places(&[edge, Plane::SealEnd]);
            return vec![Ruling::not_judged(CHECK.slug, subject, why).asking_all(asks)];
        }
        Ok(dimension) => dimension,
    };
    let rule = |limit: &Limit| {
        Question {
            check: CHECK.slug,
            what: format!(
                "{}, overlap of {} on the jacket, at the worst of the windows",
                subject.words(),
                seal.head.id
            )
            .into(),
            subject: subject.clone(),
            value: Known::exact(dimension.interval()),
            limit,
            reach: Reach::Computed,
            hint: "Stop. Use a longer seal, or have the owner's engineer look at the windows."
                .into(),
        }
        .rule()
    };
    let mut rulings: Vec<Ruling> = limits.iter().map(rule).collect();
    if edge == Plane::JacketEdge {
        let why = "how far the jacket shrinks back after it is cut is not stated, so the overlap that is left then cannot be said";
        let ruling = Ruling::not_judged(CHECK.slug, leg.subject(), why);
        let ruling = ruling.asking(fact::JACKET_SHRINKS.of(&leg.leg.id));
        rulings.push(ruling.with_hint("Ask: How far does the jacket of this cable shrink back? The owner sets it as a distance from jacket-edge to jacket-edge-shrunk-back."));
    }
    rulings
}
