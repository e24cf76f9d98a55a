//! Does this leg lie in the range that this very kit can take today?
//!
//! The range of the instructions, cut down where storage has used it up: the least diameter on which the kit presses as hard as the oldest permitted one on the least permitted.
//! Past its date a kit has no range.
//!
//! Source: the parts' own instructions; `docs/theory/pressure.md`.

use super::{Check, EndInputs, Inputs, Judge, LegInputs, Sitting};
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Word};
use crate::pressure::{Pressed, Sit, Today};
use jointwright_units::{Interval, Length};

pub(super) const CHECK: Check = Check {
    slug: "range_today",
    question: "Does this leg lie in the range that this very kit can take today?",
    judge: Judge::End(judge),
};

/// Of a kit that the store has used up.
const HINT: &str = "Stop. Do not use it on this leg. Set it aside, marked, and take another.";
/// Of a kit that takes all that its paper allows.
const NOT_THIS_LEG: &str =
    "Stop. Do not use it on this leg. Measure again; if it stands, this leg needs another part.";

fn judge(_: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let pressure = &end.pressure;
    [&pressure.adapter, &pressure.body, &pressure.seal]
        .into_iter()
        .flat_map(|pressed| {
            let sitting = Sitting {
                check: CHECK.slug,
                what: "range today",
                subject: leg.subject_of(end),
                pressed,
                hint: HINT,
            };
            on_part(&sitting)
        })
        .collect()
}

fn on_part(sitting: &Sitting<'_>) -> Vec<Ruling> {
    if let Pressed::Past(why) = sitting.pressed {
        let source = "its date".to_owned();
        let (check, subject) = (CHECK.slug, sitting.subject.clone());
        let ruling = Ruling::on_words(check, subject, "past its date", "within its date", source);
        return vec![ruling.failing(format!("no range: {why}"), HINT)];
    }
    let sit = match sitting.sit() {
        Ok(sit) => sit,
        Err(rulings) => return rulings,
    };
    match &sit.today {
        Err(why) => vec![sitting.not_judged(format!("{}: {why}", sitting.what))],
        Ok(today) => vec![in_range(sitting, sit, today)],
    }
}

fn in_range(sitting: &Sitting<'_>, sit: &Sit, today: &Today) -> Ruling {
    let (least, greatest) = (
        diameter(today.least_m, f64::ceil),
        diameter(today.greatest_m, f64::floor),
    );
    let what = format!(
        "{}, {} on the {}, range that this kit can take today",
        sitting.subject.words(),
        sit.id,
        sit.seat.on
    );
    let range = least.zip(greatest).and_then(|(a, b)| Interval::new(a, b));
    let here = diameter(sit.seat.here_m.0, f64::round).zip(diameter(sit.seat.here_m.1, f64::round));
    let read = here.and_then(|(a, b)| Interval::new(a, b));
    let (Some(range), Some(read)) = (range, read) else {
        let ruling = sitting.not_judged(String::new());
        return Ruling {
            source: Some(today.word.source()),
            reach: Reach::Computed,
            ..ruling.failing(format!("{what}: nothing is left of it"), HINT)
        };
    };
    let ruling = Question {
        check: CHECK.slug,
        subject: sitting.subject.clone(),
        value: Known {
            read,
            error: diameter(sit.seat.error_m, f64::ceil).unwrap_or(Length::ZERO),
        },
        limit: &Limit {
            bound: Bound::Within(range),
            word: today.word.clone(),
        },
        reach: Reach::Computed,
        what,
        hint: match today.word {
            Word::Instructions(_) => NOT_THIS_LEG,
            _ => HINT,
        },
    }
    .rule();
    sitting.unless_not_read_around(ruling, &sit.seat)
}

/// Diameter of a radius, in whole micrometres; nothing where it has no end.
fn diameter(radius_m: f64, round: fn(f64) -> f64) -> Option<Length> {
    // A millionth of a micrometre on either side is only the last digit of the computation.
    let um = 2e6 * radius_m;
    let near = um.round();
    let um = if (um - near).abs() < 1e-6 {
        near
    } else {
        round(um)
    };
    (um.is_finite() && um < 1e9).then(|| Length::from_nm(um as i64 * 1000))
}
