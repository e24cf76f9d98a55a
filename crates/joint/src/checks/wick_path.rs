//! Can water creep along a wire, strap, braid or lead under the seal?
//!
//! What passes out under the seal must carry a blocked stretch, and the seal must take it.
//!
//! Source: the instructions of the shield part and of the seal.

use super::{Check, Inputs, Judge, LegInputs};
use crate::limit::Ruling;

pub(super) const CHECK: Check = Check {
    slug: "wick_path",
    question: "Is every wire, strap, braid or lead that passes under the seal blocked against water?",
    judge: Judge::Leg(judge),
};

fn judge(_: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let (Some(seal), Some(part)) = (leg.chosen.seal, leg.chosen.shield_part) else {
        return Vec::new();
    };
    let (id, subject) = (&part.head.id, leg.subject());
    let ask = |why: String, question: String| {
        Ruling::not_judged(CHECK.slug, subject.clone(), why).with_hint(format!("Ask: {question}"))
    };
    let passes = match part.passes_seal {
        None => {
            return vec![ask(
                format!("whether anything of {id} passes out under the seal its row does not say"),
                format!(
                    "Does a wire, strap, braid or lead of {id} pass out under the seal, and is that stretch blocked against water?"
                ),
            )];
        }
        Some(passes) => passes,
    };
    let rule = |found: &str, permitted: &str, source: String| {
        Ruling::on_words(
            CHECK.slug,
            subject.clone(),
            found,
            permitted,
            format!("instructions: {source}"),
        )
    };
    if !passes && leg.leg.bonding == "linked" {
        return vec![ask(
            format!(
                "the shield is bonded over a link, and by its row nothing of {id} passes out under the seal"
            ),
            format!(
                "Where does the bonding lead of {id} come out, and is it blocked against water there?"
            ),
        )];
    }
    if !passes {
        return vec![rule(
            "nothing passes out under the seal",
            "blocked, where something does",
            part.head.source(),
        )];
    }
    let hint = "Stop: water creeps along it into the joint. Use a part with a blocked stretch, and a seal that takes it.";
    let blocked = match part.blocked {
        None => ask(
            format!(
                "whether the stretch of {id} under the seal is blocked against water its row does not say"
            ),
            format!("Is the stretch of {id} that lies under the seal blocked against water?"),
        ),
        Some(true) => rule("blocked", "blocked", part.head.source()),
        Some(false) => rule("not blocked", "blocked", part.head.source()).failing(
            format!("{id} passes out under the seal and carries no stretch blocked against water"),
            hint,
        ),
    };
    let taken = match seal.takes_lead {
        None => ask(
            format!(
                "whether {} takes a braid or lead under it its row does not say",
                seal.head.id
            ),
            format!("May a braid or lead come out under {}?", seal.head.id),
        ),
        Some(true) => rule("takes a lead", "takes a lead", seal.head.source()),
        Some(false) => rule("takes no lead", "takes a lead", seal.head.source()).failing(
            format!(
                "{id} passes out under {}, whose paper lets nothing out under it",
                seal.head.id
            ),
            hint,
        ),
    };
    vec![blocked, taken]
}
