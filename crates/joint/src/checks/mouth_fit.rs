//! Does the mouth of the body close on the layer that it sits on?
//!
//! Source: the body's own instructions.

use super::{Check, EndInputs, Inputs, Judge, LegInputs, PartKind, RangedPart};
use crate::limit::Ruling;

pub(super) const CHECK: Check = Check {
    slug: "mouth_fit",
    question: "Does the mouth of the body close on the layer that it sits on?",
    parts: &[PartKind::Body],
    judge: Judge::End(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let Some(body) = leg.chosen.body else {
        return Vec::new();
    };
    let source = body.head.source();
    inputs.ranges(
        CHECK.slug,
        "mouth",
        &RangedPart {
            id: &body.head.id,
            fits: &body.fits,
            source: &source,
        },
        leg,
        end,
    )
}
