//! Do the layers on which the shield part sits lie in the ranges that its paper gives?
//!
//! Source: the shield part's own instructions; where they give no range nothing is asked.

use super::{Check, EndInputs, Inputs, Judge, LegInputs, RangedPart};
use crate::limit::Ruling;

pub(super) const CHECK: Check = Check {
    slug: "shield_part_range",
    judge: Judge::End(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let Some(part) = leg.chosen.shield_part else {
        return Vec::new();
    };
    let source = part.head.source();
    let ranged = RangedPart {
        id: &part.head.id,
        fits: &part.fits,
        source: &source,
    };
    let ranges = |is_bore| inputs.ranges(CHECK.slug, is_bore, &ranged, leg, end);
    ranges(true).into_iter().chain(ranges(false)).collect()
}
