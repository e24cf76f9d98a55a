//! Does the shield part take this leg's metallic shield, and make the bonding that the job asks for?
//!
//! Source: the instructions of the shield part and of the body.

use super::{Inputs, LegInputs, Listed, RangedPart, slug};
use crate::catalogue::{Body, Head, shield_word};
use crate::limit::{Ruling, fact_table as fact};
use crate::said::{BodySaid, Said, Served, ServesFor};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let shield = shield_word(leg.leg.cable.shield.kind());
    let bonding = leg.leg.bonding.as_str();
    let mut asked: Vec<(&Head, &str, &[String], ServesFor)> = Vec::new();
    if let Some(part) = leg.chosen.shield_part {
        asked.push((&part.head, shield, &part.shields, ServesFor::Shield));
        asked.push((&part.head, bonding, &part.bondings, ServesFor::Bonding));
    }
    if let Some(body) = leg.chosen.body.filter(|b| !b.bondings.is_empty()) {
        asked.push((&body.head, bonding, &body.bondings, ServesFor::Bonding));
    }
    let unsaid = leg.chosen.body.filter(|body| body.bondings.is_empty());
    let rule = |(part, found, permitted, what): (&Head, &str, &[String], ServesFor)| {
        Listed {
            check: CHECK,
            subject: leg.subject(),
            part,
            what,
            found: Served::Word(found.to_owned()),
            permitted: Served::words(permitted),
            hint: BodySaid::UseForBonding.into(),
        }
        .rule()
    };
    let mut rulings: Vec<Ruling> = asked.into_iter().map(rule).collect();
    rulings.extend(unsaid.map(|body| bondings_unsaid(leg, body)));
    if let Some(part) = leg.chosen.shield_part {
        let part = RangedPart {
            check: CHECK,
            head: &part.head,
            fits: &part.fits,
        };
        for end in &leg.ends {
            rulings.extend(part.mouths(inputs, leg, end));
            rulings.extend(part.bore(inputs, leg, end));
        }
    }
    rulings
}

/// Ruling on a body whose row names no way of bonding the shield across it.
fn bondings_unsaid(leg: &LegInputs<'_>, body: &Body) -> Ruling {
    let id = &body.head.id;
    let why = BodySaid::BondingsNotSaid { row: id.clone() };
    let ask = BodySaid::AskBondings { body: id.clone() };
    let ruling =
        Ruling::not_judged(CHECK, leg.subject(), why).with_hint(Said::Questions(vec![ask.into()]));
    ruling.asking(fact::BONDINGS.of(id))
}
