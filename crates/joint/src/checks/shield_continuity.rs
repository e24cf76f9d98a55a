//! Does the resistance read along a shield agree with what its papers let expect, and with the owner's greatest?
//!
//! The papers give an expected interval, which nobody states as a limit: a reading outside it raises a question.
//! A reading inside it passes only if the owner sets a greatest resistance.
//! With bonded ends, a reading includes other shields and the earth; with two wires, it includes the test leads.
//! Neither reading describes the shield alone.
//!
//! Source: the owner's limit; the cable's papers.

use super::{EndInputs, Inputs, LegInputs, slug};
use crate::job::Continuity;
use crate::limit::{AmountQuestion, Ruling, Word, fact_table as fact, word_on};
use crate::said::{ReadingAsk, ReadingSaid, Said};
use crate::shielding::{Agreed, Agreement, agreement};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let rows = inputs.order.job.continuities.of(&end.id).iter();
    let rulings: Vec<Ruling> = rows.flat_map(|row| on_row(inputs, leg, end, row)).collect();
    let is_limited = inputs.order.job.limits_of(CHECK).next().is_some();
    if rulings.is_empty() && is_limited {
        let subject = leg.subject_of(end);
        let of = subject.clone();
        let ask = ReadingAsk::Reading {
            subject: subject.clone(),
        };
        let why = ReadingSaid::OwnerLimitsUnread;
        let ruling = Ruling::not_judged(CHECK, subject, why);
        let ruling = ruling.with_hint(Said::Questions(vec![ask.into()]));
        return vec![ruling.asking(fact::CONTINUITY.of(of))];
    }
    rulings
}

fn on_row(
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
    end: &EndInputs,
    row: &Continuity,
) -> Vec<Ruling> {
    let not_judged = |why: Said| Ruling::not_judged(CHECK, leg.subject_of(end), why);
    let read = match agreement(leg.leg, row) {
        Ok(read) => read,
        Err(unknown) => {
            let ask = Said::Questions(unknown.questions);
            return vec![missing(
                inputs,
                leg,
                end,
                not_judged(unknown.why).with_hint(ask),
            )];
        }
    };
    let mut rulings = Vec::new();
    for limit in inputs.order.job.limits_of(CHECK) {
        let Some(greatest) = limit.greatest_ohm_per_km else {
            continue;
        };
        let question = AmountQuestion {
            check: CHECK,
            subject: leg.subject_of(end),
            what: ReadingSaid::ResistanceAt20 {
                subject: leg.subject_of(end),
            }
            .into(),
            value: read.at_20_ohm_per_km,
            error: read.error_ohm_per_km,
            least: None,
            greatest: Some(greatest),
            unit: "ohm/km",
            word: &Word::Owner(limit.source.clone().into()),
            hint: ReadingSaid::TooMuch.into(),
        };
        rulings.push(question.rule());
    }
    let word = || word_on(CHECK, &leg.subject_of(end));
    let stands = |how: ReadingSaid, ask: ReadingAsk| {
        let ruling = not_judged(Said::of(how, said(row, &read)));
        ruling.with_hint(Said::Questions(vec![ask.into()]))
    };
    match read.stands {
        Agreement::Above => {
            let ruling = stands(ReadingSaid::Above, ReadingAsk::WhyAbove);
            rulings.push(ruling.asking(word()));
        }
        Agreement::Below => {
            let ruling = stands(ReadingSaid::Below, ReadingAsk::WhyBelow);
            rulings.push(ruling.asking(word()));
        }
        Agreement::Within if rulings.is_empty() => {
            let ruling = stands(ReadingSaid::AsExpected, ReadingAsk::Greatest);
            rulings.push(ruling.asking(fact::LIMIT.of(CHECK)));
        }
        Agreement::Within => {}
    }
    rulings
}

/// Adds asks to a ruling on a reading that cannot be compared: for the facts that the papers lack, or for a new reading if they lack none.
fn missing(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs, ruling: Ruling) -> Ruling {
    let metal = leg.leg.shield_metal.is_none();
    let metal = metal.then(|| fact::SHIELD_PAPERS.of(&leg.leg.id));
    let asks = leg.missing(inputs).shield_area();
    let ruling = ruling.asking_all(metal).asking_all(asks);
    let again = ruling.asks.is_empty();
    let again = again.then(|| fact::CONTINUITY.of(leg.subject_of(end)));
    ruling.asking_all(again)
}

/// Message with the reading and the expected interval.
fn said(row: &Continuity, read: &Agreed) -> ReadingSaid {
    ReadingSaid::Read {
        read_ohm: read.read_ohm,
        by: row.by.clone(),
        date: row.date.to_string(),
        least_ohm: read.expected_ohm.0,
        greatest_ohm: read.expected_ohm.1,
        length_m: read.length_m,
        degc: read.degc,
        of: read.of.clone(),
    }
}
