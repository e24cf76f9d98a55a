//! Is the leg straight for as far as the body, its seal and what the body's instructions keep straight beyond it?
//!
//! Source: the planes and `bend_keep_off` of the body's instructions.

use super::{Check, Inputs, Judge, LegInputs, PartKind};
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Word};
use crate::plane::Plane;
use jointwright_units::{Interval, Length};

pub(super) const CHECK: Check = Check {
    slug: "straight_length",
    question: "Is the leg straight for as far as the body and its seal go?",
    parts: &[PartKind::Body, PartKind::Seal],
    judge: Judge::Leg(judge),
};

fn judge(_: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let Some(body) = leg.chosen.body else {
        return Vec::new();
    };
    let subject = leg.subject();
    let Some(straight) = leg.leg.room.straight else {
        return vec![Ruling::not_judged(
            CHECK.slug,
            subject,
            "nobody has measured how far the leg is straight",
        )];
    };
    let Some(body_end) = leg.cutback.nominal(Plane::BodyEnd) else {
        return vec![Ruling::not_judged(
            CHECK.slug,
            subject,
            format!("no row places the end of {}", body.head.id),
        )];
    };
    let beyond = body_end.ceil() + body.bend_keep_off.unwrap_or(Length::ZERO);
    let seal_end = leg
        .cutback
        .nominal(Plane::SealEnd)
        .map_or(Length::ZERO, |s| s.ceil());
    let question = Question {
        check: CHECK.slug,
        what: format!("{}, straight cable from the conductor end", subject.words()),
        subject,
        value: Known::exact(Interval::point(straight)),
        limit: &Limit {
            bound: Bound::AtLeast(beyond.max(seal_end)),
            word: Word::Instructions(body.head.source()),
        },
        reach: Reach::Computed,
        hint: "Straighten more of the leg before anything is cut, or call.",
    };
    vec![question.rule()]
}
