//! Is the field along the interfaces between cable, adapter and body no stronger than the worst that the instructions allow?
//!
//! The tangential field, up to half a millimetre before the edge of the screen.
//!
//! Source: `docs/theory/worst.md`.

use super::{Check, Inputs, Judge, LegInputs, Stress};
use crate::limit::Ruling;
use crate::section::Quantity;

pub(super) const CHECK: Check = Check {
    slug: "interface_stress",
    question: "Is the field along the interfaces between cable, adapter and body no stronger than the worst that the instructions allow?",
    judge: Judge::Leg(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let rule = |quantity: Quantity| {
        Stress {
            check: CHECK.slug,
            quantity,
            hint: "Stop and call: the engineer decides. Do not trim, grease or bind it to make it fit.",
        }
        .rule(inputs, leg)
    };
    [Quantity::Interface].into_iter().flat_map(rule).collect()
}
