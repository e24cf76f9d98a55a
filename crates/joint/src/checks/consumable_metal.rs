//! Is every consumable of this leg made for its conductor's metal?
//!
//! A brush serves one metal; inhibitor and abrasive may too.
//!
//! Source: the consumable's own row. That a brush serves one metal is common practice, no source.

use super::{Check, Inputs, Judge, LegInputs, Listed};
use crate::catalogue::Consumable;
use crate::limit::Ruling;

pub(super) const CHECK: Check = Check {
    slug: "consumable_metal",
    question: "Is every consumable of this leg made for its conductor's metal?",
    judge: Judge::Leg(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let words = inputs.order.job.words;
    let names = &leg.leg.parts.consumables;
    let used = names
        .iter()
        .filter_map(|id| inputs.order.catalogue.consumable(id));
    let rule = |part: &Consumable| {
        let permitted: Vec<String> = part
            .metals
            .iter()
            .map(|m| m.name(words).to_owned())
            .collect();
        Listed {
            check: CHECK.slug,
            subject: leg.subject(),
            part: &part.head,
            what: "conductors of",
            found: leg.leg.cable.conductor.metal.name(words),
            permitted: &permitted,
            hint: "Use one that has never touched another metal.",
        }
        .rule()
    };
    used.filter(|part| !part.metals.is_empty())
        .map(rule)
        .collect()
}
