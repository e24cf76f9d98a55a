//! Was the diameter read over the layer that the reading names?
//!
//! The classic mistake: a reading over the screen makes an undersized leg look in range.
//! The check suspects it if the reading lies outside the papers' diameters over the named layer, and inside their diameters over the screen next to it.
//!
//! Source: the cable's papers if they give diameters, else the cable table; common practice, no source: it may fail, never pass.

use super::{EndInputs, Inputs, LegInputs, slug};
use crate::cable::{Layer, doubtful_layer, wrong_layer};
use crate::limit::{Datum, Reach, Ruling, Word, fact_table as fact};
use crate::said::{Read, ReadingLayerSaid};
use crate::survey::Diameter;
use crate::survey::place_of;
use jointwright_units::Toward;

const CHECK: &str = slug(module_path!());

pub(super) fn judge(_: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let suspected = end.survey.diameters.iter().filter_map(|(said, diameter)| {
        let read = diameter.known.read;
        if let Some(doubtful) = doubtful(leg, end, *said, diameter) {
            return Some(doubtful);
        }
        let other = wrong_layer(&leg.leg.cable, *said, read.widened(diameter.known.error))?;
        let band = leg.leg.cable.diameter_over(*said).ok()?;
        let on_papers = ReadingLayerSaid::DiameterOnPapers { layer: *said };
        let ruling = Ruling {
            value: Some(Datum::of(read)),
            limit: Some(Datum::Range {
                min: band.least.mm(),
                max: band.greatest.mm(),
            }),
            unit: Some("mm"),
            margin: Some(
                (read.least() - band.least)
                    .min(band.greatest - read.greatest())
                    .mm(),
            ),
            source: Some(Word::CommonPractice(on_papers.into()).into()),
            reach: Reach::Instructions,
            ..Ruling::not_judged(CHECK, leg.subject_of(end), "")
        };
        let why = ReadingLayerSaid::LikeAnother {
            named: *said,
            like: other,
        };
        Some(ruling.failing(why, ReadingLayerSaid::RemoveNothing))
    });
    suspected.collect()
}

/// Ruling on a reading whose error is too large to tell over which layer it was taken.
fn doubtful(
    leg: &LegInputs<'_>,
    end: &EndInputs,
    said: Layer,
    diameter: &Diameter,
) -> Option<Ruling> {
    let (read, error) = (diameter.known.read, diameter.known.error);
    let other = doubtful_layer(&leg.leg.cable, said, read, error)?;
    let of = place_of(leg.leg, end.id.phase, said);
    let why = ReadingLayerSaid::LikeEither {
        named: said,
        like: other,
        error: Read::diameter(error, Toward::Longer),
    };
    let ask = ReadingLayerSaid::ReadAgain { layer: said };
    let subject = leg.subject_of(end);
    let ruling = Ruling::not_judged(CHECK, subject, why).with_hint(ask);
    Some(ruling.asking(fact::READING_CLOSER.of(of)))
}
