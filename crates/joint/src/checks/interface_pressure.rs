//! Is every part pressed on the cable at least as hard as the worst that its instructions allow?
//!
//! The least diameter read, over all temperatures, against the least permitted diameter with the oldest permitted kit; then against a least pressure that the row or the owner asks for.
//!
//! Source: `docs/theory/pressure.md`.

use super::{ADAPTER, BODY, Check, EndInputs, Inputs, Judge, LegInputs, asking_of_rubber};
use crate::limit::Ruling;
use crate::pressure::Sitting;
use crate::said::{Pressing, PressureHint};

pub(super) const CHECK: Check = Check {
    slug: "interface_pressure",
    judge: Judge::End(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let rule = |(kind, pressed)| {
        let sitting = Sitting {
            check: CHECK.slug,
            what: Pressing::Pressure,
            subject: leg.subject_of(end),
            pressed,
            hint: PressureHint::PartTooLarge,
        };
        let rulings = match sitting.sit() {
            Ok(sit) => sitting.rule(sit, &sit.seat_least, &sit.asked_pa),
            Err(rulings) => rulings,
        };
        asking_of_rubber(inputs, leg, end, (kind, true), rulings)
    };
    [(ADAPTER, &end.pressure.adapter), (BODY, &end.pressure.body)]
        .into_iter()
        .flat_map(rule)
        .collect()
}
