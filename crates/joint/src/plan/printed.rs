//! Printed: a mark and its window as a crew reads them on a rule.

use super::cut::PrintedWindowDoc;
use crate::cable::Words;
use jointwright_units::{
    Length, Mark, Station, Tick, Toward, Window, WindowText, mark, metric_mark, metric_middle_mark,
    middle_mark, mm_beside, window_text,
};

/// A mark and its window as printed.
pub(super) struct Printed {
    pub(super) inch: Option<String>,
    pub(super) mm: Option<String>,
    pub(super) at_mm: Option<f64>,
    pub(super) window: Option<PrintedWindowDoc>,
}

/// Mark for a place and its window, on an inch rule or, in the words of IEC practice, on a millimetre rule.
///
/// The mark stands in the middle of its window, where a crew has most room on either side.
/// A place without a window is marked where it is planned.
pub(super) fn printed(nominal: Station, window: Option<Window>, words: Words) -> Printed {
    let mark = match (words, window) {
        (Words::Us, Some(window)) => middle_mark(window, Tick::SIXTEENTH),
        (Words::Us, None) => mark(nominal, None, Tick::SIXTEENTH, Toward::Nearest),
        (Words::Iec, Some(window)) => metric_middle_mark(window),
        (Words::Iec, None) => metric_mark(nominal, None),
    };
    let text = window.map(|window| (window, text_around(window, mark.as_ref())));
    let (mut mm, mut window) = (mark.as_ref().map(|m| m.mm.clone()), None);
    if let Some((bounds, text)) = text {
        let mut mm_bounds = text.mm;
        if let Some(mark) = &mark {
            let beside = mm_beside(mark, bounds);
            mm = Some(beside.0);
            mm_bounds = beside.1;
        }
        let inch = text.inch.map(|(a, b)| [a, b]);
        let inch = inch.filter(|_| words == Words::Us);
        let mm = [mm_bounds.0, mm_bounds.1];
        window = Some(PrintedWindowDoc {
            at_mm: bounds_mm(inch.as_ref(), &mm),
            inch,
            mm,
        });
    }
    Printed {
        at_mm: mark.as_ref().map(|m| m.station.mm()),
        inch: mark.and_then(|m| m.inch),
        mm,
        window,
    }
}

/// Window as printed.
///
/// The tick is so fine that the mark stands on neither bound, as far as sixty-fourths of an inch allow.
fn text_around(window: Window, mark: Option<&Mark>) -> WindowText {
    let mut tick = Tick::SIXTEENTH;
    loop {
        let text = window_text(window, tick);
        let at = mark.and_then(|mark| mark.inch.as_ref());
        let is_on_a_bound = match (&text.inch, at) {
            (Some((least, greatest)), Some(at)) => at == least || at == greatest,
            _ => false,
        };
        match tick.finer().filter(|_| is_on_a_bound) {
            Some(finer) => tick = finer,
            None => return text,
        }
    }
}

/// Printed bounds as numbers, read back from the printed text, so that a picture shows the same window as the text.
fn bounds_mm(inch: Option<&[String; 2]>, mm: &[String; 2]) -> Option<[f64; 2]> {
    let read = |text: &String| match inch {
        Some(_) => Length::parse_cut(&format!("{text} in"))
            .ok()
            .map(Length::mm),
        None => text.parse().ok(),
    };
    let [least, greatest] = inch.unwrap_or(mm);
    Some([read(least)?, read(greatest)?])
}
