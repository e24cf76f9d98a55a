//! Is no part stretched farther than its instructions allow?
//!
//! It compares the ratio of the greatest diameter read to the relaxed bore with the ratio of the greatest permitted diameter to it.
//! Then it compares the ratio with a greatest stretch from the row or the owner.
//!
//! Source: the parts' own instructions; `docs/theory/pressure.md`.

use super::{EndInputs, Inputs, LegInputs, asking_of_rubber, slug};
use crate::limit::{AmountQuestion, Ruling, Word};
use crate::pressure::{Sit, Sitting};
use crate::said::{PartKind, Pressing, PressureHint, PressureRuled, Said};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let rule = |(kind, pressed)| {
        let sitting = Sitting {
            check: CHECK,
            what: Pressing::Stretch,
            subject: leg.subject_of(end),
            pressed,
            hint: PressureHint::PartTooSmall,
        };
        let rulings = match sitting.sit() {
            Ok(sit) => on_part(inputs, &sitting, sit),
            Err(rulings) => rulings,
        };
        asking_of_rubber(inputs, leg, end, (kind, false), rulings)
    };
    [
        (PartKind::Adapter, &end.pressure.adapter),
        (PartKind::Body, &end.pressure.body),
    ]
    .into_iter()
    .flat_map(rule)
    .collect()
}

fn on_part(inputs: &Inputs<'_>, sitting: &Sitting<'_>, sit: &Sit) -> Vec<Ruling> {
    let (here, allowed) = sit.stretch_ratios();
    let error = sit.seat.error_m / sit.bore_m;
    // A limit from the paper's range rests on the same bore, so the bore's error cancels; a stated number does not.
    let absolute = error + here * sit.bore_error_m / sit.bore_m;
    let is_within = sit.seat.here_m.1 + sit.seat.error_m <= sit.seat.allowed_m.1;
    let owners = inputs.order.job.limits_of(CHECK);
    let owners = owners.filter_map(|row| {
        let word = Word::Owner(row.source.clone().into());
        Some((row.greatest_stretch_ratio?, absolute, word))
    });
    let row = sit
        .stretch_greatest_ratio
        .map(|most| (most, absolute, Word::Instructions(Said::from(&sit.source))));
    let worst = (
        allowed,
        if is_within { 0.0 } else { error },
        Word::WorstAllowed(Said::from(&sit.source)),
    );
    std::iter::once(worst)
        .chain(row)
        .chain(owners)
        .map(|(most, error, word)| {
            let ruling = AmountQuestion {
                check: CHECK,
                subject: sitting.subject.clone(),
                what: PressureRuled::OverRelaxed(sitting.sits(sit)).into(),
                value: here,
                error,
                least: None,
                greatest: Some(most),
                unit: "times",
                word: &word,
                hint: sitting.hint.into(),
            }
            .rule();
            sitting.unless_not_read_around(ruling, &sit.seat)
        })
        .collect()
}
