//! Is the insulation round enough for the part on it?
//!
//! It takes the greatest difference between diameters read at one place; a tape cannot read a difference.
//!
//! Source: the part's own instructions, else the owner's limit.

use super::{EndInputs, Inputs, LegInputs, slug};
use crate::cable::Layer;
use crate::catalogue::Fits;
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Word, fact_table as fact};
use crate::said::{DiameterSaid, RangeSaid};
use jointwright_units::Interval;

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let Some((head, fits)) = leg.chosen.on_insulation() else {
        return Vec::new();
    };
    let subject = leg.subject_of(end);
    let stated = Fits::bore_over(fits, Layer::Insulation).and_then(|f| f.ovality);
    let stated = stated.map(|ovality| Limit {
        bound: Bound::AtMost(ovality),
        word: Word::Instructions(head.source().into()),
    });
    let limits = inputs.limits(CHECK, stated);
    if limits.is_empty() {
        let ruling = Ruling::not_judged(CHECK, subject, RangeSaid::OvalityNotLimited);
        return vec![ruling.asking(fact::LIMIT.of(CHECK))];
    }
    let reading = || leg.missing(inputs).reading(end.id.phase, Layer::Insulation);
    let Some(diameter) = end.survey.diameters.get(&Layer::Insulation) else {
        let layer = Layer::Insulation;
        let why = DiameterSaid::NotMeasuredOver { layer };
        return vec![Ruling::not_judged(CHECK, subject, why).asking(reading())];
    };
    let Some(ovality) = diameter.ovality else {
        return vec![
            Ruling::not_judged(CHECK, subject, RangeSaid::OvalityNotRead)
                .with_hint(RangeSaid::ReadFour)
                .asking(reading()),
        ];
    };
    let rule = |limit: &Limit| {
        Question {
            check: CHECK,
            what: RangeSaid::Ovality {
                subject: subject.clone(),
            }
            .into(),
            subject: subject.clone(),
            // The value is the difference of two readings, so their errors add up.
            value: Known {
                read: Interval::point(ovality),
                error: diameter.known.error * 2,
            },
            limit,
            reach: Reach::Instructions,
            hint: RangeSaid::OutOfRound.into(),
        }
        .rule()
    };
    limits.iter().map(rule).collect()
}
