//! Does the resistance read along a shield agree with what its papers let expect, and with the owner's greatest?
//!
//! The papers' is an interval, which nobody states as a limit: a reading outside it is a question, and inside it passes only where the owner sets a greatest resistance.
//! With the ends bonded a reading is of other shields and the earth too; with two wires it holds the test leads; neither says anything of the shield alone.
//!
//! Source: the owner's limit; the cable's papers.

use super::{Check, EndInputs, Inputs, Judge, LegInputs};
use crate::job::Continuity;
use crate::limit::{AmountQuestion, Ruling, Word, fact_table as fact, shown, word_on};
use crate::said::Said;
use crate::shielding::{Agreed, Agreement, agreement};

pub(super) const CHECK: Check = Check {
    slug: "shield_continuity",
    question: "Does the resistance read along a shield agree with what its papers let expect, and with the owner's greatest?",
    judge: Judge::End(judge),
};

const HINT: &str = "Stop and call: this shield has more resistance than the owner allows. Read it again, then look for what interrupts it.";
const ABOVE: &str = "Ask: Are wires broken or corroded? Do the turns of an old tape no longer touch? Do the clips bite on bare metal? Is the length right, and that of every joint between?";
const BELOW: &str = "Ask: Is there another path beside this shield, an end that is bonded, a shorter length, or more metal than the papers state?";

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let rows = inputs.order.job.continuities.iter();
    let rows = rows.filter(|row| row.leg == leg.leg.id && row.phase == end.phase);
    let rulings: Vec<Ruling> = rows.flat_map(|row| on_row(inputs, leg, end, row)).collect();
    let owners = &inputs.order.job.owner_limits;
    if rulings.is_empty() && owners.iter().any(|limit| limit.check == CHECK.slug) {
        let subject = leg.subject_of(end);
        let why = "the owner limits the resistance along this shield, and nobody has read it";
        let ask = format!(
            "Ask: What resistance is read along the shield of {}?",
            subject.words()
        );
        let of = subject.clone();
        let ruling = Ruling::not_judged(CHECK.slug, subject, why).with_hint(ask);
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
    let not_judged = |why: Said| Ruling::not_judged(CHECK.slug, leg.subject_of(end), why);
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
    let said = said(row, &read);
    let mut rulings = Vec::new();
    let owners = inputs.order.job.owner_limits.iter();
    for limit in owners.filter(|limit| limit.check == CHECK.slug) {
        let Some(greatest) = limit.greatest_ohm_per_km else {
            continue;
        };
        let question = AmountQuestion {
            check: CHECK.slug,
            subject: leg.subject_of(end),
            what: format!(
                "{}, resistance along the shield at 20 degC",
                leg.subject_of(end).words()
            )
            .into(),
            value: read.at_20_ohm_per_km,
            error: read.error_ohm_per_km,
            least: None,
            greatest: Some(greatest),
            unit: "ohm/km",
            word: &Word::Owner(limit.source.clone().into()),
            hint: HINT.into(),
        };
        rulings.push(question.rule());
    }
    let word = || word_on(CHECK.slug, &leg.subject_of(end));
    match read.stands {
        Agreement::Above => rulings.push(
            not_judged(format!("above: {said}").into())
                .with_hint(ABOVE)
                .asking(word()),
        ),
        Agreement::Below => rulings.push(
            not_judged(format!("below: {said}").into())
                .with_hint(BELOW)
                .asking(word()),
        ),
        Agreement::Within if rulings.is_empty() => {
            let ask =
                "Ask: What is the greatest resistance along this shield that the owner takes?";
            let why = format!("as expected, but nobody with the authority sets a limit: {said}");
            rulings.push(
                not_judged(why.into())
                    .with_hint(ask)
                    .asking(fact::LIMIT.of(CHECK.slug)),
            );
        }
        Agreement::Within => {}
    }
    rulings
}

/// A reading that cannot be compared asks for what the papers lack; where they lack nothing, to be read again.
fn missing(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs, ruling: Ruling) -> Ruling {
    let metal = leg.leg.shield_metal.is_none();
    let metal = metal.then(|| fact::SHIELD_PAPERS.of(&leg.leg.id));
    let asks = leg.missing(inputs).shield_area();
    let ruling = ruling.asking_all(metal).asking_all(asks);
    let again = ruling.asks.is_empty();
    let again = again.then(|| fact::CONTINUITY.of(leg.subject_of(end)));
    ruling.asking_all(again)
}

/// What was read, and what is expected there.
fn said(row: &Continuity, read: &Agreed) -> String {
    format!(
        "{} mohm read by {} on {}; {} to {} mohm are expected over {} m at {} degC ({})",
        shown(1e3 * read.read_ohm),
        row.by,
        row.date,
        shown(1e3 * read.expected_ohm.0),
        shown(1e3 * read.expected_ohm.1),
        shown(read.length_m),
        shown(read.degc),
        read.of
    )
}
