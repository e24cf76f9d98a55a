//! Is the field at the end of the electrode no stronger than the worst that the instructions allow?
//!
//! The greatest field on the rounded end, on the side of the body's insulation.
//!
//! Source: `docs/theory/worst.md`.

use super::{Check, Inputs, Judge, LegInputs, Stress};
use crate::limit::Ruling;
use crate::section::Quantity;

pub(super) const CHECK: Check = Check {
    slug: "electrode_end_stress",
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
    [Quantity::ElectrodeEnd]
        .into_iter()
        .flat_map(rule)
        .collect()
}
