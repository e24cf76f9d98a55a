//! Does the seal squeeze the jacket at least as much as at the worst that its instructions allow?
//!
//! It compares the squeeze of the jacket, over the bore that storage has left, with the squeeze on the least permitted diameter with the oldest permitted seal.
//!
//! Source: the seal's own instructions; `docs/theory/pressure.md`.

use super::{EndInputs, Inputs, LegInputs, asking_of_rubber, slug};
use crate::limit::{AmountQuestion, Ruling, Word};
use crate::pressure::Sitting;
use crate::said::{PartKind, Pressing, PressureHint, PressureRuled, Read, Said};
use jointwright_units::{Length, Toward};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    asking_of_rubber(inputs, leg, end, (PartKind::Seal, false), squeeze(leg, end))
}

fn squeeze(leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let sitting = Sitting {
        check: CHECK,
        what: Pressing::Squeeze,
        subject: leg.subject_of(end),
        pressed: &end.pressure.seal,
        hint: PressureHint::SealTooLarge,
    };
    let sit = match sitting.sit() {
        Ok(sit) => sit,
        Err(rulings) => return rulings,
    };
    let (here, allowed) = sit.squeeze_ratios();
    if allowed <= 0.0 {
        let least = Length::from_nm((2e9 * sit.seat.allowed_m.0).floor() as i64);
        let why = PressureRuled::SealWouldNotTouch {
            part: sit.id.clone(),
            least: Read::diameter(least, Toward::Shorter),
        };
        let why = Said::of(sitting.what, why);
        return vec![sitting.not_judged(why)];
    }
    let error = if sit.is_within() {
        0.0
    } else {
        sit.seat.error_m / sit.kit.today.bore_m
    };
    let ruling = AmountQuestion {
        check: CHECK,
        subject: sitting.subject.clone(),
        what: PressureRuled::LargerThanBore {
            subject: sitting.subject.clone(),
            part: sit.id.clone(),
        }
        .into(),
        value: 100.0 * here,
        error: 100.0 * error,
        least: Some(100.0 * allowed),
        greatest: None,
        unit: "%",
        word: &Word::WorstAllowed(Said::from(&sit.source)),
        hint: sitting.hint.into(),
    };
    vec![ruling.rule()]
}
