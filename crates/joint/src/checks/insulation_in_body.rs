//! Does this leg's insulation lie in the range of the body, or of the adapter that sits between them?
//!
//! Least and greatest reading against the range in the part's instructions; the instrument's error must fit inside too.
//!
//! Source: the part's own instructions.

use super::{Check, EndInputs, Inputs, Judge, LegInputs, RangedPart};
use crate::limit::{Ruling, fact_table as fact};
use crate::said::RangeSaid;

pub(super) const CHECK: Check = Check {
    slug: "insulation_in_body",
    judge: Judge::End(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    if let Some(body) = leg.chosen.body.filter(|body| !body.sides.is_empty()) {
        let why = RangeSaid::SidesDiffer {
            body: body.head.id.clone(),
            leg: leg.leg.id.clone(),
        };
        let sides = body.sides.iter().filter_map(|side| side.side.clone());
        let sides = sides.collect();
        let hint = RangeSaid::SaySide { sides };
        return vec![Ruling::not_judged(CHECK.slug, leg.subject_of(end), why).with_hint(hint)];
    }
    let Some(part) = leg.part_on_insulation() else {
        return Vec::new();
    };
    let source = part.0.source();
    let part = RangedPart {
        id: &part.0.id,
        fits: part.1,
        source: &source,
    };
    let rulings = inputs.ranges(CHECK.slug, true, &part, leg, end);
    if rulings.is_empty() {
        let row = part.id.to_owned();
        let why = RangeSaid::NoBoreRange { row };
        let ruling = Ruling::not_judged(CHECK.slug, leg.subject_of(end), why);
        return vec![ruling.asking(fact::RANGE.of(part.id))];
    }
    rulings
}
