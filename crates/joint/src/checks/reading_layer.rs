//! Was the diameter read over the layer that the reading names?
//!
//! A reading over the screen makes an undersized leg look in range: the classic mistake.
//! It is suspected where the reading lies outside what the cable's papers allow over the named layer, and inside what they allow over the screen next to it.
//!
//! Source: the cable's papers where they give diameters, else the cable table; common practice, no source: it may fail, never pass.

use super::{Check, EndInputs, Inputs, Judge, LegInputs};
use crate::cable::{Layer, doubtful_layer, wrong_layer};
use crate::limit::{Datum, Reach, Ruling, fact_table as fact};
use crate::survey::Diameter;
use crate::survey::place_of;

pub(super) const CHECK: Check = Check {
    slug: "reading_layer",
    judge: Judge::End(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>, end: &EndInputs) -> Vec<Ruling> {
    let words = inputs.order.job.words;
    let suspected = end.survey.diameters.iter().filter_map(|(said, diameter)| {
        let read = diameter.known.read;
        if let Some(doubtful) = doubtful(inputs, leg, end, *said, diameter) {
            return Some(doubtful);
        }
        let other = wrong_layer(&leg.leg.cable, *said, read.widened(diameter.known.error))?;
        let band = leg.leg.cable.diameter_over(*said).ok()?;
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
            source: Some(format!(
                "common practice, no source: diameter over the {} of the cable on its papers",
                said.name(words)
            ).into()),
            reach: Reach::Instructions,
            ..Ruling::not_judged(CHECK.slug, leg.subject_of(end), "")
        };
        Some(ruling.failing(
            format!(
                "the reading over the {} is like the {} of this cable, not like its {}",
                said.name(words),
                other.name(words),
                said.name(words)
            ),
            "Remove nothing on this word. It was read over another layer, or the papers name another cable or level, or two legs are exchanged: look which layer the instrument lay on, read the print on the jacket, measure again; if it stands, call.",
        ))
    });
    suspected.collect()
}

/// A reading whose own error hides which layer it was taken over.
fn doubtful(
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
    end: &EndInputs,
    said: Layer,
    diameter: &Diameter,
) -> Option<Ruling> {
    let words = inputs.order.job.words;
    let (read, error) = (diameter.known.read, diameter.known.error);
    let other = doubtful_layer(&leg.leg.cable, said, read, error)?;
    let of = place_of(leg.leg, end.phase, said);
    let (said, other) = (said.name(words), other.name(words));
    let why = format!(
        "the reading over the {said} is not like the {said} of this cable; {error} off, as far as the instrument may be, it is like its {said} and like its {other}"
    );
    let ask = format!(
        "Read again over the {said} with an instrument that is less far off, and look which layer it lies on."
    );
    let subject = leg.subject_of(end);
    let ruling = Ruling::not_judged(CHECK.slug, subject, why).with_hint(ask);
    Some(ruling.asking(fact::READING_CLOSER.of(of)))
}
