//! Is the leg bent no tighter than its maker permits?
//!
//! Source: the cable's papers, as entered in the job; no rule of thumb is used.

use super::{Inputs, LegInputs, slug};
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Word, fact_table as fact};
use crate::said::BodySaid;
use jointwright_units::Interval;

const CHECK: &str = slug(module_path!());

pub(super) fn judge(_: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let subject = leg.subject();
    let (Some(radius), Some(least)) = (leg.leg.room.bend_radius, leg.leg.bend_radius_least) else {
        let why = if leg.leg.room.bend_radius.is_none() {
            BodySaid::BendNotMeasured
        } else {
            BodySaid::BendLeastNotSaid
        };
        let (id, room) = (&leg.leg.id, &leg.leg.room);
        let racked = room.bend_radius.is_none().then(|| fact::BEND.of(id));
        let least = leg.leg.bend_radius_least.is_none();
        let least = least.then(|| fact::BEND_LEAST.of(id));
        let ruling = Ruling::not_judged(CHECK, subject, why);
        return vec![ruling.asking_all(racked).asking_all(least)];
    };
    let question = Question {
        check: CHECK,
        what: BodySaid::BendingRadius {
            subject: subject.clone(),
        }
        .into(),
        subject,
        value: Known::exact(Interval::point(radius)),
        limit: &Limit {
            bound: Bound::AtLeast(least),
            word: Word::Job(BodySaid::PapersOfCable.into()),
        },
        reach: Reach::Instructions,
        hint: BodySaid::EaseBend.into(),
    };
    vec![leg.on_room(question)]
}
