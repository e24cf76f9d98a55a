//! Is the leg straight for as far as the body, its seal and what the body's instructions keep straight beyond it?
//!
//! Source: the planes and `bend_keep_off` of the body's instructions.

use super::{Check, Inputs, Judge, LegInputs};
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Word, fact_table as fact};
use crate::plane::Plane;
use jointwright_units::Interval;

pub(super) const CHECK: Check = Check {
    slug: "straight_length",
    question: "Is the leg straight for as far as the body and its seal go?",
    judge: Judge::Leg(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let Some(body) = leg.chosen.body else {
        return Vec::new();
    };
    let subject = leg.subject();
    let Some(straight) = leg.leg.room.straight else {
        let why = "nobody has measured how far the leg is straight";
        let ruling = Ruling::not_judged(CHECK.slug, subject, why);
        return vec![ruling.asking(fact::STRAIGHT.of(&leg.leg.id))];
    };
    let not_judged = |why: String| Ruling::not_judged(CHECK.slug, leg.subject(), why);
    let Some(keep_off) = body.bend_keep_off else {
        let why = format!(
            "the row {} does not say how much straight cable it wants beyond its end",
            body.head.id
        );
        return vec![not_judged(why).asking(fact::BEND_KEEP_OFF.of(&body.head.id))];
    };
    let ends = (
        leg.cutback.farthest(Plane::BodyEnd),
        leg.cutback.farthest(Plane::SealEnd),
    );
    let (Some(body_end), Some(seal_end)) = ends else {
        let what = if ends.0.is_none() { "body" } else { "seal" };
        let why = format!("the end of the {what} has no place or no window yet");
        let asks = leg
            .missing(inputs)
            .places(&[Plane::BodyEnd, Plane::SealEnd]);
        return vec![not_judged(why).asking_all(asks)];
    };
    let needed = (body_end.ceil() + keep_off).max(seal_end.ceil());
    let question = Question {
        check: CHECK.slug,
        what: format!("{}, straight cable from the conductor end", subject.words()).into(),
        subject,
        value: Known::exact(Interval::point(straight)),
        limit: &Limit {
            bound: Bound::AtLeast(needed),
            word: Word::Instructions(body.head.source().into()),
        },
        reach: Reach::Computed,
        hint: "Straighten more of the leg before anything is cut, or call.".into(),
    };
    vec![leg.on_room(question)]
}
