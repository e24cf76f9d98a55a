//! Is the leg straight over the body, its seal and the length that the body's instructions keep straight beyond it?
//!
//! Source: the planes and `bend_keep_off` of the body's instructions.

use super::{Inputs, LegInputs, slug};
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Word, fact_table as fact};
use crate::plane::Plane;
use crate::said::{PartKind, SlackSaid};
use jointwright_units::Interval;

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let Some(body) = leg.chosen.body else {
        return Vec::new();
    };
    let subject = leg.subject();
    let Some(straight) = leg.leg.room.straight else {
        let why = SlackSaid::StraightNotMeasured;
        let ruling = Ruling::not_judged(CHECK, subject, why);
        return vec![ruling.asking(fact::STRAIGHT.of(&leg.leg.id))];
    };
    let not_judged = |why: SlackSaid| Ruling::not_judged(CHECK, leg.subject(), why);
    let Some(keep_off) = body.bend_keep_off else {
        let row = body.head.id.clone();
        let why = SlackSaid::StraightNotSaid { row };
        return vec![not_judged(why).asking(fact::BEND_KEEP_OFF.of(&body.head.id))];
    };
    let ends = (
        leg.cutback.farthest(Plane::BodyEnd),
        leg.cutback.farthest(Plane::SealEnd),
    );
    let (Some(body_end), Some(seal_end)) = ends else {
        let part = if ends.0.is_none() {
            PartKind::Body
        } else {
            PartKind::Seal
        };
        let why = SlackSaid::EndOpen { part };
        let asks = leg
            .missing(inputs)
            .places(&[Plane::BodyEnd, Plane::SealEnd]);
        return vec![not_judged(why).asking_all(asks)];
    };
    let needed = (body_end.ceil() + keep_off).max(seal_end.ceil());
    let question = Question {
        check: CHECK,
        what: SlackSaid::Straight {
            subject: subject.clone(),
        }
        .into(),
        subject,
        value: Known::exact(Interval::point(straight)),
        limit: &Limit {
            bound: Bound::AtLeast(needed),
            word: Word::Instructions(body.head.source().into()),
        },
        reach: Reach::Computed,
        hint: SlackSaid::StraightenOrCall.into(),
    };
    vec![leg.on_room(question)]
}
