//! Does the shield part take this leg's metallic shield, and make the bonding that the job asks for?
//!
//! Source: the instructions of the shield part and of the body.

use super::{Check, Inputs, Judge, LegInputs, Listed, RangedPart};
use crate::catalogue::{Body, Head, shield_word};
use crate::limit::{Ruling, fact_table as fact};
use crate::said::{BodySaid, Said, Served, ServesFor};

pub(super) const CHECK: Check = Check {
    slug: "bonding_part_fit",
    judge: Judge::Leg(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
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
            check: CHECK.slug,
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
        let source = part.head.source();
        let part = RangedPart {
            id: &part.head.id,
            fits: &part.fits,
            source: &source,
        };
        for end in &leg.ends {
            rulings.extend(inputs.ranges(CHECK.slug, false, &part, leg, end));
            rulings.extend(inputs.ranges(CHECK.slug, true, &part, leg, end));
        }
    }
    rulings
}

/// Of a body whose row names no way of bonding the shield across it.
fn bondings_unsaid(leg: &LegInputs<'_>, body: &Body) -> Ruling {
    let id = &body.head.id;
    let why = BodySaid::BondingsNotSaid { row: id.clone() };
    let ask = BodySaid::AskBondings { body: id.clone() };
    let ruling = Ruling::not_judged(CHECK.slug, leg.subject(), why)
        .with_hint(Said::Questions(vec![ask.into()]));
    ruling.asking(fact::BONDINGS.of(id))
}
