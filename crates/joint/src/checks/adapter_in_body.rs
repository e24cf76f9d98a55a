//! Does the adapter on this leg belong in its body?
//!
//! The body's instructions must name the adapter, and the adapter's outside must lie in the body's bore range.
//!
//! Source: the instructions of both.

use super::{Inputs, LegInputs, slug};
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Word, fact_table as fact};
use crate::said::{AdapterSaid, Said};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(_: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let (Some(adapter), Some(body)) = (leg.chosen.adapter, leg.chosen.body) else {
        return Vec::new();
    };
    let subject = leg.subject();
    let permitted = if body.adapters.is_empty() {
        AdapterSaid::NoneNamed.into()
    } else {
        Said::listed(body.adapters.iter().map(Said::from))
    };
    let named = Ruling::on_words(
        CHECK,
        subject.clone(),
        &adapter.head.id,
        permitted,
        Word::Instructions(body.head.source().into()),
    );
    if !body.fits_adapter || !body.adapters.contains(&adapter.head.id) {
        let why = AdapterSaid::NotNamed {
            body: body.head.id.clone(),
            adapter: adapter.head.id.clone(),
        };
        return vec![named.failing(why, AdapterSaid::UseNamed)];
    }
    let bore = body.fits.iter().find(|f| f.is_bore());
    let Some(bore) = bore else {
        let row = body.head.id.clone();
        let ruling = Ruling::not_judged(CHECK, subject, AdapterSaid::NoBoreRange { row });
        return vec![named, ruling.asking(fact::RANGE.of(&body.head.id))];
    };
    let outside = Question {
        check: CHECK,
        what: AdapterSaid::OutsideIn {
            adapter: adapter.head.id.clone(),
            body: body.head.id.clone(),
        }
        .into(),
        subject,
        value: Known::exact(adapter.outside),
        limit: &Limit {
            bound: Bound::Within(bore.range),
            word: Word::Instructions(body.head.source().into()),
        },
        reach: Reach::Instructions,
        hint: AdapterSaid::UseAnother.into(),
    };
    vec![named, outside.rule()]
}
