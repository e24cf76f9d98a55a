//! Do the mouths of the body and of the adapter close on the layers that they sit on?
//!
//! Source: the parts' own instructions.

use super::{EndInputs, Inputs, LegInputs, RangedPart, slug};
use crate::catalogue::{Fits, Head};
use crate::limit::{Ruling, fact_table as fact};
use crate::said::RangeSaid;

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let ranges = |head: &Head, fits: &[Fits]| {
        let part = RangedPart {
            check: CHECK,
            head,
            fits,
        };
        part.mouths(inputs, leg, end)
    };
    let mut rulings = Vec::new();
    if let Some(adapter) = leg.chosen.adapter {
        rulings.extend(ranges(&adapter.head, &adapter.fits));
    }
    if let Some(body) = leg.chosen.body {
        let of_body = ranges(&body.head, &body.fits);
        if of_body.is_empty() {
            let row = body.head.id.clone();
            let why = RangeSaid::NoMouthRange { row };
            let ruling = Ruling::not_judged(CHECK, leg.subject_of(end), why);
            rulings.push(ruling.asking(fact::RANGE.of(&body.head.id)));
        }
        rulings.extend(of_body);
    }
    rulings
}
