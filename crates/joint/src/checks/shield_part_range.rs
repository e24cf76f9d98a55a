//! Do the layers on which the shield part sits lie in the ranges that its paper gives?
//!
//! Source: the shield part's own instructions; if they give no range, nothing is checked.

use super::{EndInputs, Inputs, LegInputs, RangedPart, slug};
use crate::limit::Ruling;

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let Some(part) = leg.chosen.shield_part else {
        return Vec::new();
    };
    let part = RangedPart {
        check: CHECK,
        head: &part.head,
        fits: &part.fits,
    };
    let mut rulings = part.bore(inputs, leg, end);
    rulings.extend(part.mouths(inputs, leg, end));
    rulings
}
