//! Does each connection of the shield have no more resistance than the paper of its part allows, in which a short circuit makes heat?
//!
//! W = I² R t of all shots; a reading above the paper's greatest resistance fails, whatever its error.
//!
//! Source: the part's own instructions.

use super::{EndInputs, Inputs, LegInputs, slug};
use crate::fault::Fault;
use crate::job::Contact;
use crate::limit::{AmountQuestion, Reach, Ruling, Word, fact_table as fact};
use crate::said::{ContactSaid, PartKind, Said};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let rows = inputs.order.job.contacts.of(&end.id).iter();
    let rulings: Vec<Ruling> = rows.map(|row| on_row(inputs, leg, end, row)).collect();
    if rulings.is_empty() {
        return unread(leg, end).into_iter().collect();
    }
    rulings
}

/// Ruling on a connection with a greatest resistance in its paper and no reading.
fn unread(leg: &LegInputs<'_>, end: &EndInputs) -> Option<Ruling> {
    let part = leg.chosen.shield_part?;
    let greatest_ohm = part.contact_greatest_ohm?;
    let (id, subject) = (&part.head.id, leg.subject_of(end));
    let why = ContactSaid::NotRead {
        part: id.clone(),
        greatest_ohm,
    };
    let ask = ContactSaid::AskRead {
        part: id.clone(),
        subject: subject.clone(),
    };
    let of = subject.clone();
    let ruling = Ruling::not_judged(CHECK, subject, why);
    let ruling = ruling.with_hint(Said::Questions(vec![ask.into()]));
    Some(ruling.asking(fact::CONTACT.of(of)))
}

fn on_row(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs, row: &Contact) -> Ruling {
    let subject = leg.subject_of(end);
    let heat = match Fault::of_shield(&inputs.order.job, leg.leg) {
        Ok(fault) => ContactSaid::Makes {
            fault: fault.shots(),
            heat_kj: fault.heat_kj(row.ohm),
        }
        .into(),
        Err(why) => Said::of(ContactSaid::HeatNotKnown, why),
    };
    let read = ContactSaid::Read {
        subject: subject.clone(),
        at: row.at.clone(),
        ohm: row.ohm,
    };
    let what = Said::all([read.into(), heat]);
    let Some(part) = leg.chosen.shield_part else {
        let why = Said::all([what, ContactSaid::NoPart.into()]);
        let ask = leg.missing(inputs).part(PartKind::ShieldPart);
        return Ruling::not_judged(CHECK, subject, why).asking(ask);
    };
    let id = &part.head.id;
    let Some(greatest_ohm) = part.contact_greatest_ohm else {
        let (row, part) = (id.clone(), id.clone());
        let why = Said::all([what, ContactSaid::RowSaysNoGreatest { row }.into()]);
        let ask = Said::Questions(vec![ContactSaid::AskGreatest { part }.into()]);
        let ruling = Ruling::not_judged(CHECK, subject, why).with_hint(ask);
        return ruling.asking(fact::CONTACT_GREATEST.of(id));
    };
    let is_above = row.ohm > greatest_ohm;
    let mut ruling = AmountQuestion {
        check: CHECK,
        subject,
        what,
        value: 1e3 * row.ohm,
        error: if is_above { 0.0 } else { 1e3 * row.error_ohm },
        least: None,
        greatest: Some(1e3 * greatest_ohm),
        unit: "mohm",
        word: &Word::Instructions(part.head.source().into()),
        hint: ContactSaid::MakesTooMuch.into(),
    }
    .rule();
    ruling.reach = Reach::Instructions;
    ruling
}
