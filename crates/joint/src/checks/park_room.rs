//! Is there room to park the body, and the seals behind it, on the leg that parks?
//!
//! Source: the parked lengths in the instructions of the body and the seal.

use super::{Check, Inputs, Judge, LegInputs, PartKind};
use crate::job::JointKind;
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Subject, Word};
use jointwright_units::{Interval, Length};

pub(super) const CHECK: Check = Check {
    slug: "park_room",
    question: "Is there room to park the body, and the seals behind it, on the leg that parks?",
    parts: &[PartKind::Body, PartKind::Seal],
    judge: Judge::Joint(judge),
};

fn judge(inputs: &Inputs<'_>) -> Vec<Ruling> {
    let mut rulings: Vec<Ruling> = inputs
        .legs
        .iter()
        .filter(|l| l.leg.parks)
        .map(on_leg)
        .collect();
    // In a straight joint or a branch joint one body goes over everything, so some leg must take it first.
    if inputs.kind() != JointKind::Separable && rulings.is_empty() {
        rulings.push(Ruling::not_judged(
            CHECK.slug,
            Subject::joint(),
            "no leg is named as the one that parks the body",
        ));
    }
    rulings
}

fn on_leg(leg: &LegInputs<'_>) -> Ruling {
    let subject = leg.subject();
    let Some(body) = leg.chosen.body else {
        return Ruling::not_judged(CHECK.slug, subject, "no body is named");
    };
    let Some(parked) = body.parked_length else {
        return Ruling::not_judged(
            CHECK.slug,
            subject,
            format!(
                "the row {} does not say how long it is while parked",
                body.head.id
            ),
        );
    };
    let Some(room) = leg.leg.room.park_room else {
        return Ruling::not_judged(
            CHECK.slug,
            subject,
            "nobody has measured the room for parking",
        );
    };
    let seal = match leg.chosen.seal {
        None => Length::ZERO,
        Some(seal) => match seal.parked_length {
            Some(length) => length,
            None => {
                let why = format!(
                    "the row {} does not say how long it is while parked",
                    seal.head.id
                );
                return Ruling::not_judged(CHECK.slug, subject, why);
            }
        },
    };
    Question {
        check: CHECK.slug,
        what: format!("{}, room for parking", subject.words()),
        subject,
        value: Known::exact(Interval::point(room)),
        limit: &Limit {
            bound: Bound::AtLeast(parked + seal),
            word: Word::Instructions(body.head.source()),
        },
        reach: Reach::Instructions,
        hint: "Park on another leg, or call before anything is cut.",
    }
    .rule()
}
