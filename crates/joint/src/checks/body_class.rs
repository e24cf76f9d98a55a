//! Are the parts rated for this system: its highest voltage, its earthing, and this kind of joint?
//!
//! Source: the parts' own instructions.

use super::{Check, Inputs, Judge, LegInputs, Listed, PartKind, Rated};
use crate::catalogue::Head;
use crate::limit::Ruling;

pub(super) const CHECK: Check = Check {
    slug: "body_class",
    question: "Are the parts rated for this system and this kind of joint?",
    parts: &[PartKind::Body, PartKind::Adapter],
    judge: Judge::Leg(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let highest_kv = inputs.order.job.system.highest_kv;
    let mut rulings = Vec::new();
    if let Some(adapter) = leg.chosen.adapter {
        rulings.push(rated(
            leg,
            &adapter.head,
            adapter.system_greatest_kv,
            highest_kv,
        ));
    }
    let Some(body) = leg.chosen.body else {
        return rulings;
    };
    rulings.push(rated(leg, &body.head, body.system_greatest_kv, highest_kv));
    let earthing = inputs.order.job.system.earthing.as_str();
    let asked = [
        (earthing, &body.earthings, "systems with earthing"),
        (inputs.kind().name(), &body.kinds, "joints of kind"),
    ];
    rulings.extend(asked.into_iter().map(|(found, permitted, what)| {
        Listed {
            check: CHECK.slug,
            subject: leg.subject(),
            part: &body.head,
            what,
            found,
            permitted,
            hint: "Stop. Use a part that its instructions rate for this system and this joint.",
        }
        .rule()
    }));
    rulings
}

fn rated(leg: &LegInputs<'_>, part: &Head, rated_kv: f64, highest_kv: f64) -> Ruling {
    Rated {
        check: CHECK.slug,
        subject: leg.subject(),
        part,
        rated_kv,
        highest_kv,
    }
    .rule()
}
