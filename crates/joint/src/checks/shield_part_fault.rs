//! Does what carries or bonds the shield carry the short circuit that the job states for it?
//!
//! The whole stated current, unless the job states that of the leg; its square times the time of all shots, for its heat.
//!
//! Source: the part's own instructions.

use super::{Check, Inputs, Judge, LegInputs};
use crate::fault::{Fault, Withstood};
use crate::limit::{Ruling, fact_table as fact};
use crate::said::ShieldFaultSaid;

pub(super) const CHECK: Check = Check {
    slug: "shield_part_fault",
    judge: Judge::Leg(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let Some(part) = leg.chosen.shield_part else {
        return Vec::new();
    };
    let fault = match Fault::of_shield(&inputs.order.job, leg.leg) {
        Ok(fault) => fault,
        Err(why) => {
            // Whatever is missing is asked for at once.
            let asks = leg.missing(inputs).shield_fault();
            let withstands = part.withstands.is_none();
            let withstands = withstands.then(|| fact::WITHSTANDS.of(&part.head.id));
            let asks = asks.into_iter().chain(withstands);
            return vec![Ruling::not_judged(CHECK.slug, leg.subject(), why).asking_all(asks)];
        }
    };
    Withstood {
        check: CHECK.slug,
        subject: leg.subject(),
        part: &part.head,
        withstands: part.withstands,
        fault: &fault,
        hint: ShieldFaultSaid::ShieldPartDoesNotCarry.into(),
    }
    .rule()
}
