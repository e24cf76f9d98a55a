//! Does the seal close on this leg?
//!
//! Source: the seal's own instructions.

use super::{Check, EndInputs, Inputs, Judge, LegInputs, PartKind, RangedPart};
use crate::limit::Ruling;

pub(super) const CHECK: Check = Check {
    slug: "seal_fit",
    question: "Does the seal close on this leg?",
    parts: &[PartKind::Seal],
    judge: Judge::End(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let Some(seal) = leg.chosen.seal else {
        return Vec::new();
    };
    let source = seal.head.source();
    let rulings = inputs.ranges(
        CHECK.slug,
        "seal",
        &RangedPart {
            id: &seal.head.id,
            fits: &seal.fits,
            source: &source,
        },
        leg,
        end,
    );
    if rulings.is_empty() {
        return vec![Ruling::not_judged(
            CHECK.slug,
            leg.subject_of(end),
            format!("the row {} gives no range", seal.head.id),
        )];
    }
    rulings
}
