//! Does the seal close on this leg?
//!
//! Source: the seal's own instructions.

use super::{EndInputs, Inputs, LegInputs, RangedPart, slug};
use crate::limit::{Ruling, fact_table as fact};
use crate::said::SealSaid;

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let Some(seal) = leg.chosen.seal else {
        return Vec::new();
    };
    let part = RangedPart {
        check: CHECK,
        head: &seal.head,
        fits: &seal.fits,
    };
    let mut rulings = part.mouths(inputs, leg, end);
    rulings.extend(part.bore(inputs, leg, end));
    if rulings.is_empty() {
        let row = seal.head.id.clone();
        let why = SealSaid::NoRange { row };
        let ruling = Ruling::not_judged(CHECK, leg.subject_of(end), why);
        rulings.push(ruling.asking(fact::RANGE.of(&seal.head.id)));
    }
    rulings
}
