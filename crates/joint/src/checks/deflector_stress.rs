//! Is the field at the tip and the heel of the deflector no stronger than the worst that the instructions allow?
//!
//! The greatest field on the rounded tip, and on the first arc from the heel.
//!
//! Source: `docs/theory/worst.md`.

use super::{Check, Inputs, Judge, LegInputs, Stress};
use crate::limit::Ruling;
use crate::section::Quantity;

pub(super) const CHECK: Check = Check {
    slug: "deflector_stress",
    judge: Judge::Leg(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let rule = |quantity: Quantity| {
        Stress {
            check: CHECK.slug,
            quantity,
        }
        .rule(inputs, leg)
    };
    [Quantity::DeflectorTip, Quantity::DeflectorHeel]
        .into_iter()
        .flat_map(rule)
        .collect()
}
