//! Is the insulation round enough for the part on it?
//!
//! Greatest difference of the diameters read at one place; a tape reads none.
//!
//! Source: the part's own instructions, else the owner's limit.

use super::{Check, EndInputs, Inputs, Judge, LegInputs};
use crate::cable::Layer;
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Word, fact_table as fact};
use jointwright_units::Interval;

pub(super) const CHECK: Check = Check {
    slug: "insulation_ovality",
    judge: Judge::End(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let Some(part) = leg.part_on_insulation() else {
        return Vec::new();
    };
    let subject = leg.subject_of(end);
    let stated = part
        .1
        .iter()
        .find(|f| f.at == "bore" && f.over == Layer::Insulation)
        .and_then(|f| f.ovality);
    let stated = stated.map(|ovality| Limit {
        bound: Bound::AtMost(ovality),
        word: Word::Instructions(part.0.source().into()),
    });
    let limits = inputs.limits(CHECK.slug, stated);
    if limits.is_empty() {
        let why = "neither the instructions nor the owner limit how far out of round it may be";
        let ruling = Ruling::not_judged(CHECK.slug, subject, why);
        return vec![ruling.asking(fact::LIMIT.of(CHECK.slug))];
    }
    let reading = || leg.missing(inputs).reading(end.phase, Layer::Insulation);
    let Some(diameter) = end.survey.diameters.get(&Layer::Insulation) else {
        let why = "nobody has measured it over the insulation";
        return vec![Ruling::not_judged(CHECK.slug, subject, why).asking(reading())];
    };
    let Some(ovality) = diameter.ovality else {
        return vec![
            Ruling::not_judged(
                CHECK.slug,
                subject,
                "four diameters around the cable are needed; a tape or fewer say nothing of roundness",
            )
            .with_hint("Read four diameters around the cable with a calliper.")
            .asking(reading()),
        ];
    };
    let rule = |limit: &Limit| {
        Question {
            check: CHECK.slug,
            what: format!("{}, ovality of the insulation", subject.words()).into(),
            subject: subject.clone(),
            // Two readings are subtracted, so their errors add up.
            value: Known {
                read: Interval::point(ovality),
                error: diameter.known.error * 2,
            },
            limit,
            reach: Reach::Instructions,
            hint: "Stop and call: the cable is out of round.".into(),
        }
        .rule()
    };
    limits.iter().map(rule).collect()
}
