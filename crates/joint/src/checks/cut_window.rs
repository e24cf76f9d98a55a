//! Does every cut and mark of this leg have a place and a window in which a crew can set it?
//!
//! A number printed without a tolerance gives a place, but no window.
//! A crew cannot set a mark in a window without width, or in one that holds neither a sixty-fourth of an inch nor a tenth of a millimetre.
//! Such a window fails, and the ruling names the rows that leave no room.
//!
//! Source: the rows that give the links, and the owner's windows.

use super::{Inputs, LegInputs, slug};
use crate::cutback::Cut;
use crate::limit::{Datum, Outcome, Reach, Ruling};
use crate::said::{CutSaid, Read, Said, Whose, WindowSaid};
use jointwright_units::{Tick, Toward, Window, window_text};

const CHECK: &str = slug(module_path!());

/// Decimals of a millimetre on a rule or a calliper.
const MM_DECIMALS: usize = 1;

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let rule = |cut: &Cut| {
        let any_growth = cut.ladder.first().and_then(|rung| rung.window);
        let window = cut.window.or(any_growth);
        if !cut.conflict.is_empty() {
            return no_place(leg, cut);
        }
        if let Some(window) = window.filter(|w| holds_nothing(*w, cut.ladder.is_empty())) {
            return no_room(leg, cut, window);
        }
        let (Some(nominal), Some(window)) = (cut.nominal, cut.window) else {
            let ruling = Ruling::not_judged(CHECK, leg.subject(), why_open(cut));
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
            // Half the width of the window: the crew's room on either side of the middle.
            margin: Some((greatest - least).mm() / 2.0),
            source: Some(window_of(cut.whose.clone())),
            why: None,
            outcome: Outcome::Pass,
            reach: Reach::Instructions,
            ..Ruling::not_judged(CHECK, leg.subject(), "")
        }
    };
    leg.cutback.cuts.iter().map(rule).collect()
}

/// Reason why a cut has no place or no window.
fn why_open(cut: &Cut) -> Said {
    let plane = CutSaid::Plane { plane: cut.plane };
    let why = cut.why.clone();
    Said::of(plane, why.unwrap_or_else(|| CutSaid::HasNoPlace.into()))
}

fn window_of(whose: Vec<Whose>) -> Said {
    WindowSaid::Of { whose }.into()
}

fn no_place(leg: &LegInputs<'_>, cut: &Cut) -> Ruling {
    let ruling = Ruling::on_words(
        CHECK,
        leg.subject(),
        WindowSaid::NoPlaceLeft,
        WindowSaid::PlaceInsideEvery,
        Whose::all(&cut.conflict),
    );
    Ruling {
        reach: Reach::Computed,
        ..ruling.failing(why_open(cut), WindowSaid::CallContradict)
    }
}

/// Whether a window has no width, or holds no mark of a tape or a rule; if the place still waits for the growth, only the width counts.
fn holds_nothing(window: Window, is_placed: bool) -> bool {
    let text = window_text(window, Tick::SIXTY_FOURTH);
    let decimals = text.mm.0.split_once('.').map_or(0, |(_, d)| d.len());
    let has_no_mark = text.inch.is_none() && decimals > MM_DECIMALS;
    window.least() == window.greatest() || (is_placed && has_no_mark)
}

fn no_room(leg: &LegInputs<'_>, cut: &Cut, window: Window) -> Ruling {
    let mut rows = cut.whose.clone();
    let narrowed = cut.narrowed.as_ref();
    rows.extend(narrowed.into_iter().flat_map(|n| n.by.iter().cloned()));
    rows.sort();
    rows.dedup();
    if rows.is_empty() {
        rows.extend(narrowed.map(|n| n.paper.clone()));
    }
    let (least, greatest) = (window.least(), window.greatest());
    let width =
        (least != greatest).then(|| Read::along((greatest - least).floor(), Toward::Shorter));
    let ruling = Ruling {
        value: Some(Datum::Number((greatest - least).mm())),
        limit: Some(Datum::said(WindowSaid::RoomForAMark)),
        unit: Some("mm"),
        source: Some(window_of(rows.clone())),
        reach: Reach::Computed,
        ..Ruling::not_judged(CHECK, leg.subject(), "")
    };
    ruling.failing(
        WindowSaid::NoRoom {
            plane: cut.plane,
            width,
            whose: rows,
        },
        WindowSaid::CallNothingToSet,
    )
}
