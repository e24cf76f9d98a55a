//! Is every part pressed on the cable at least as hard as the worst that its instructions allow?
//!
//! It compares the pressure on the least diameter read, over all temperatures, with that on the least permitted diameter with the oldest permitted kit.
//! Then it compares the pressure with a least pressure from the row or the owner.
//!
//! Source: `docs/theory/pressure.md`.

use super::{EndInputs, Inputs, LegInputs, asking_of_rubber, slug};
use crate::limit::Ruling;
use crate::pressure::Sitting;
use crate::said::{PartKind, Pressing, PressureHint};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let rule = |(kind, pressed)| {
        let sitting = Sitting {
            check: CHECK,
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
    [
        (PartKind::Adapter, &end.pressure.adapter),
        (PartKind::Body, &end.pressure.body),
    ]
    .into_iter()
    .flat_map(rule)
    .collect()
}
