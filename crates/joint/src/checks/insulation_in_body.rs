//! Does this leg's insulation lie in the range of the body, or of the adapter that sits between them?
//!
//! It compares the least and greatest reading with the range in the part's instructions; the instrument's error must fit inside too.
//!
//! Source: the part's own instructions.

use super::{EndInputs, Inputs, LegInputs, RangedPart, slug};
use crate::limit::{Ruling, fact_table as fact};
use crate::said::RangeSaid;

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    if let Some(body) = leg.chosen.body.filter(|body| !body.sides.is_empty()) {
        let why = RangeSaid::SidesDiffer {
            body: body.head.id.clone(),
            leg: leg.leg.id.clone(),
        };
        let sides = body.sides.iter().filter_map(|side| side.side.clone());
        let sides = sides.collect();
        let hint = RangeSaid::SaySide { sides };
        return vec![Ruling::not_judged(CHECK, leg.subject_of(end), why).with_hint(hint)];
    }
    let Some((head, fits)) = leg.chosen.on_insulation() else {
        return Vec::new();
    };
    let part = RangedPart {
        check: CHECK,
        head,
        fits,
    };
    let rulings = part.bore(inputs, leg, end);
    if rulings.is_empty() {
        let row = head.id.clone();
        let why = RangeSaid::NoBoreRange { row };
        let ruling = Ruling::not_judged(CHECK, leg.subject_of(end), why);
        return vec![ruling.asking(fact::RANGE.of(&head.id))];
    }
    rulings
}
