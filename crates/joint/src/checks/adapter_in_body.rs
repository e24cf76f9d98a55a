//! Does the adapter on this leg belong in its body?
//!
//! The body's instructions must name the adapter, and the adapter's outside must lie in the body's bore range.
//!
//! Source: the instructions of both.

use super::{Check, Inputs, Judge, LegInputs};
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Word, fact_table as fact};

pub(super) const CHECK: Check = Check {
    slug: "adapter_in_body",
    question: "Does the adapter on this leg belong in its body?",
    judge: Judge::Leg(judge),
};

fn judge(_: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let (Some(adapter), Some(body)) = (leg.chosen.adapter, leg.chosen.body) else {
        return Vec::new();
    };
    let subject = leg.subject();
    let permitted = if body.adapters.is_empty() {
        "none".to_owned()
    } else {
        body.adapters.join(", ")
    };
    let named = Ruling::on_words(
        CHECK.slug,
        subject.clone(),
        &adapter.head.id,
        permitted,
        Word::Instructions(body.head.source().into()),
    );
    if !body.fits_adapter || !body.adapters.contains(&adapter.head.id) {
        let why = format!(
            "the instructions of {} do not name the adapter {}",
            body.head.id, adapter.head.id
        );
        return vec![named.failing(
            why,
            "Use an adapter that the body's instructions name, or a body that fits the leg.",
        )];
    }
    let bore = body.fits.iter().find(|f| f.at == "bore");
    let Some(bore) = bore else {
        return vec![
            named,
            Ruling::not_judged(
                CHECK.slug,
                subject,
                format!("the row {} gives no range for its bore", body.head.id),
            )
            .asking(fact::RANGE.of(&body.head.id)),
        ];
    };
    let outside = Question {
        check: CHECK.slug,
        what: format!("outside of {} in {}", adapter.head.id, body.head.id).into(),
        subject,
        value: Known::exact(adapter.outside),
        limit: &Limit {
            bound: Bound::Within(bore.range),
            word: Word::Instructions(body.head.source().into()),
        },
        reach: Reach::Instructions,
        hint: "Use another adapter or another body.".into(),
    };
    vec![named, outside.rule()]
}
