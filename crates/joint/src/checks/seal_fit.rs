//! Does the seal close on this leg?
//!
//! Source: the seal's own instructions.

use super::{Check, EndInputs, Inputs, Judge, LegInputs, RangedPart};
use crate::limit::{Ruling, fact_table as fact};
use crate::said::SealSaid;

pub(super) const CHECK: Check = Check {
    slug: "seal_fit",
    judge: Judge::End(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let Some(seal) = leg.chosen.seal else {
        return Vec::new();
    };
    let source = seal.head.source();
    let part = RangedPart {
        id: &seal.head.id,
        fits: &seal.fits,
        source: &source,
    };
    let mut rulings = inputs.ranges(CHECK.slug, false, &part, leg, end);
    rulings.extend(inputs.ranges(CHECK.slug, true, &part, leg, end));
    if rulings.is_empty() {
        let row = seal.head.id.clone();
        let why = SealSaid::NoRange { row };
        let ruling = Ruling::not_judged(CHECK.slug, leg.subject_of(end), why);
        rulings.push(ruling.asking(fact::RANGE.of(&seal.head.id)));
    }
    rulings
}
