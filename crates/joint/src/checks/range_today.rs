//! Does this leg lie in the range that this very kit can take today?
//!
//! Storage narrows the range of the instructions.
//! Its least diameter today is the one on which this kit presses as hard as the oldest permitted kit on the least permitted diameter.
//! A kit past its date has no range.
//!
//! Source: the parts' own instructions; `docs/theory/pressure.md`.

use super::{EndInputs, Inputs, LegInputs, asking_of_rubber, slug};
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Word};
use crate::pressure::{Pressed, Sit, Sitting, Today};
use crate::said::{PartKind, Pressing, PressureHint, PressureRuled, Said};
use jointwright_units::{Interval, Length};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let pressure = &end.pressure;
    let parts = [
        (PartKind::Adapter, &pressure.adapter),
        (PartKind::Body, &pressure.body),
        (PartKind::Seal, &pressure.seal),
    ];
    parts
        .into_iter()
        .flat_map(|(kind, pressed)| {
            let sitting = Sitting {
                check: CHECK,
                what: Pressing::RangeToday,
                subject: leg.subject_of(end),
                pressed,
                hint: PressureHint::UsedUp,
            };
            // Temperatures count if the row or the owner asks for a least pressure.
            let heat = matches!(pressed, Pressed::Done(sit) if sit.today.is_err());
            asking_of_rubber(inputs, leg, end, (kind, heat), on_part(&sitting))
        })
        .collect()
}

fn on_part(sitting: &Sitting<'_>) -> Vec<Ruling> {
    if let Pressed::Past(why) = sitting.pressed {
        let ruling = Ruling::on_words(
            CHECK,
            sitting.subject.clone(),
            PressureRuled::PastItsDate,
            PressureRuled::WithinItsDate,
            PressureRuled::ItsDate,
        );
        let why = Said::of(PressureRuled::NoRange, why);
        return vec![ruling.failing(why, PressureHint::UsedUp)];
    }
    let sit = match sitting.sit() {
        Ok(sit) => sit,
        Err(rulings) => return rulings,
    };
    match &sit.today {
        Err(why) => vec![sitting.not_judged(Said::of(sitting.what, why))],
        Ok(today) => vec![in_range(sitting, sit, today)],
    }
}

fn in_range(sitting: &Sitting<'_>, sit: &Sit, today: &Today) -> Ruling {
    // A computed diameter is rounded to the resolution of an instrument, and never to a wider range.
    let step_um = match today.word {
        Word::Instructions(_) => 1.0,
        _ => 100.0,
    };
    let (least, greatest) = (
        diameter(today.least_m, step_um, f64::ceil),
        diameter(today.greatest_m, 1.0, f64::floor),
    );
    let what = Said::from(PressureRuled::RangeToday {
        subject: sitting.subject.clone(),
        part: sit.id.clone(),
        on: sit.seat.on.clone(),
    });
    let range = least.zip(greatest).and_then(|(a, b)| Interval::new(a, b));
    let here = diameter(sit.seat.here_m.0, 1.0, f64::round).zip(diameter(
        sit.seat.here_m.1,
        1.0,
        f64::round,
    ));
    let read = here.and_then(|(a, b)| Interval::new(a, b));
    let (Some(range), Some(read)) = (range, read) else {
        let ruling = sitting.not_judged(Said::all([]));
        return Ruling {
            source: Some(today.word.clone().into()),
            reach: Reach::Computed,
            ..ruling.failing(
                Said::of(what, PressureRuled::NothingIsLeft),
                PressureHint::UsedUp,
            )
        };
    };
    let ruling = Question {
        check: CHECK,
        subject: sitting.subject.clone(),
        value: Known {
            read,
            error: diameter(sit.seat.error_m, 1.0, f64::ceil).unwrap_or(Length::ZERO),
        },
        limit: &Limit {
            bound: Bound::Within(range),
            word: today.word.clone(),
        },
        reach: Reach::Computed,
        what,
        hint: match today.word {
            Word::Instructions(_) => PressureHint::NotThisLeg.into(),
            _ => PressureHint::UsedUp.into(),
        },
    }
    .rule();
    sitting.unless_not_read_around(ruling, &sit.seat)
}

/// Diameter of a radius, rounded to whole steps, µm; `None` if it is not finite.
fn diameter(radius_m: f64, step_um: f64, round: fn(f64) -> f64) -> Option<Length> {
    // A difference of a millionth of a micrometre comes from floating-point rounding only.
    let steps = 2e6 * radius_m / step_um;
    let near = steps.round();
    let steps = if (steps - near).abs() * step_um < 1e-6 {
        near
    } else {
        round(steps)
    };
    let um = steps * step_um;
    (um.is_finite() && um < 1e9).then(|| Length::from_nm(um as i64 * 1000))
}
