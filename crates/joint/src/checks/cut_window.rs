//! Does every cut and mark of this leg have a place and a window in which a crew can set it?
//!
//! A number printed without a tolerance gives a place and no window.
//! A window without width, or one that holds neither a sixty-fourth of an inch nor a tenth of a millimetre, holds nothing that a crew can set: it fails, and the rows that leave no room are named.
//!
//! Source: the rows that give the links, and the owner's windows.

use super::{Check, Inputs, Judge, LegInputs};
use crate::cable::Words;
use crate::cutback::Cut;
use crate::limit::{Datum, Outcome, Reach, Ruling};
use jointwright_units::{Tick, Toward, Window, window_text};

pub(super) const CHECK: Check = Check {
    slug: "cut_window",
    judge: Judge::Leg(judge),
};

/// Decimals of a millimetre that a rule or a calliper shows.
const MM_DECIMALS: usize = 1;

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let rule = |cut: &Cut| {
        let plane = cut.plane.words(inputs.order.job.words);
        let any_growth = cut.ladder.first().and_then(|rung| rung.window);
        let window = cut.window.or(any_growth);
        if !cut.conflict.is_empty() {
            return no_place(leg, cut, &plane);
        }
        if let Some(window) = window.filter(|w| holds_nothing(*w, cut.ladder.is_empty())) {
            return no_room(leg, cut, &plane, window, inputs.order.job.words);
        }
        let (Some(nominal), Some(window)) = (cut.nominal, cut.window) else {
            let why = cut
                .why
                .clone()
                .unwrap_or_else(|| "it has no place".to_owned());
            let ruling = Ruling::not_judged(CHECK.slug, leg.subject(), format!("{plane}: {why}"));
            return ruling.asking_all(leg.missing(inputs).places(&[cut.plane]));
        };
        let (least, greatest) = (window.least(), window.greatest());
        Ruling {
            value: Some(Datum::Number(nominal.mm())),
            limit: Some(Datum::Range {
                min: least.mm(),
                max: greatest.mm(),
            }),
            unit: Some("mm"),
            // What a crew has to spare either way, from the middle of the window.
            margin: Some((greatest - least).mm() / 2.0),
            source: Some(format!("window of: {}", cut.whose.join("; ")).into()),
            why: None,
            outcome: Outcome::Pass,
            reach: Reach::Instructions,
            ..Ruling::not_judged(CHECK.slug, leg.subject(), "")
        }
    };
    leg.cutback.cuts.iter().map(rule).collect()
}

fn no_place(leg: &LegInputs<'_>, cut: &Cut, plane: &str) -> Ruling {
    let ruling = Ruling::on_words(
        CHECK.slug,
        leg.subject(),
        "no place left",
        "a place inside every window",
        cut.conflict.join("; "),
    );
    let why = format!("{plane}: {}", cut.why.clone().unwrap_or_default());
    let hint = "Stop and call: the windows contradict each other, or growth and play are too large for them.";
    Ruling {
        reach: Reach::Computed,
        ..ruling.failing(why, hint)
    }
}

/// Whether a window has no width, or holds nothing that is on a tape or a rule; where the place itself waits for the growth only the width counts.
fn holds_nothing(window: Window, is_placed: bool) -> bool {
    let text = window_text(window, Tick::SIXTY_FOURTH);
    let decimals = text.mm.0.split_once('.').map_or(0, |(_, d)| d.len());
    let has_no_mark = text.inch.is_none() && decimals > MM_DECIMALS;
    window.least() == window.greatest() || (is_placed && has_no_mark)
}

fn no_room(leg: &LegInputs<'_>, cut: &Cut, plane: &str, window: Window, words: Words) -> Ruling {
    let mut rows = cut.whose.clone();
    let narrowed = cut.narrowed.as_ref();
    rows.extend(narrowed.into_iter().flat_map(|n| n.by.iter().cloned()));
    rows.sort();
    rows.dedup();
    let rows = if rows.is_empty() {
        narrowed.map_or("rows that print no room".to_owned(), |n| n.paper.clone())
    } else {
        rows.join("; ")
    };
    let (least, greatest) = (window.least(), window.greatest());
    let room = if least == greatest {
        "its window has no width".to_owned()
    } else {
        format!(
            "its window of {} is too narrow for a mark in sixty-fourths of an inch or tenths of a millimetre",
            words.along((greatest - least).floor(), Toward::Shorter)
        )
    };
    let ruling = Ruling {
        value: Some(Datum::Number((greatest - least).mm())),
        limit: Some(Datum::said("room in which a crew can set a mark")),
        unit: Some("mm"),
        source: Some(format!("window of: {rows}").into()),
        reach: Reach::Computed,
        ..Ruling::not_judged(CHECK.slug, leg.subject(), "")
    };
    ruling.failing(
        format!("{plane}: {room}; the rows that leave no room: {rows}"),
        "Stop and call: these rows together leave a crew nothing to set. Nobody can place it exactly; look up their tolerances.",
    )
}
