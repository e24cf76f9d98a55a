//! Is the field before the edge of the insulation screen no stronger than the worst that the instructions allow?
//!
//! The radius of an edge cut by hand cannot be surveyed, so the field is judged half a millimetre before it; nought where the deflector covers the edge for every place that the windows allow.
//!
//! Source: `docs/theory/worst.md`.

use super::{Check, Inputs, Judge, LegInputs, Stress};
use crate::limit::Ruling;
use crate::section::Quantity;

pub(super) const CHECK: Check = Check {
    slug: "screen_edge_stress",
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
    [Quantity::ScreenEdge].into_iter().flat_map(rule).collect()
}
