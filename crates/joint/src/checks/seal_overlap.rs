//! Does the seal lap far enough onto the jacket, for every place that the windows allow?
//!
//! Source: the seal's own instructions, else the owner's limit.

use super::{Check, Inputs, Judge, LegInputs, PartKind};
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Word};
use crate::plane::Plane;

pub(super) const CHECK: Check = Check {
    slug: "seal_overlap",
    question: "Does the seal lap far enough onto the jacket?",
    parts: &[PartKind::Seal],
    judge: Judge::Leg(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let Some(seal) = leg.chosen.seal else {
        return Vec::new();
    };
    let subject = leg.subject();
    let limit = seal
        .overlap_least
        .map(|overlap| Limit {
            bound: Bound::AtLeast(overlap),
            word: Word::Instructions(seal.head.source()),
        })
        .or_else(|| inputs.owner_limit(CHECK.slug));
    let Some(limit) = limit else {
        return vec![Ruling::not_judged(
            CHECK.slug,
            subject,
            "neither the instructions nor the owner say how far it must lap onto the jacket",
        )];
    };
    match leg
        .cutback
        .dimension(Plane::JacketEdge, Plane::SealEnd, inputs.order.job.words)
    {
        Err(why) => vec![Ruling::not_judged(CHECK.slug, subject, why)],
        Ok(dimension) => {
            let question = Question {
                check: CHECK.slug,
                what: format!(
                    "{}, overlap of {} on the jacket, at the worst of the windows",
                    subject.words(),
                    seal.head.id
                ),
                subject,
                value: Known::exact(dimension.interval()),
                limit: &limit,
                reach: Reach::Computed,
                hint: "Stop. Use a longer seal, or have the owner's engineer look at the windows.",
            };
            vec![question.rule()]
        }
    }
}
