//! Is there cable left for as many fresh starts as the job asks for?
//!
//! A fresh start uses up the cable as far as the jacket edge, at the far end of its window.
//!
//! Source: the job for the number of fresh starts; the instructions for the planes.

use super::{Inputs, LegInputs, slug};
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Word, fact_table as fact};
use crate::plane::Plane;
use crate::said::{Read, SlackSaid};
use jointwright_units::{Interval, Toward};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let subject = leg.subject();
    let (Some(slack), Some(times)) = (leg.leg.room.slack, leg.leg.room.spare_cuts) else {
        let why = if leg.leg.room.slack.is_none() {
            SlackSaid::NotMeasured
        } else {
            SlackSaid::SpareCutsNotSaid
        };
        let slack = leg
            .leg
            .room
            .slack
            .is_none()
            .then(|| fact::SLACK.of(&leg.leg.id));
        let cuts = leg.leg.room.spare_cuts.is_none();
        let cuts = cuts.then(|| fact::SPARE_CUTS.of(&leg.leg.id));
        let ruling = Ruling::not_judged(CHECK, subject, why);
        return vec![ruling.asking_all(slack).asking_all(cuts)];
    };
    let Some(farthest) = leg.cutback.farthest(Plane::JacketEdge) else {
        let why = SlackSaid::JacketEdgeOpen;
        let ruling = Ruling::not_judged(CHECK, subject, why);
        return vec![ruling.asking_all(leg.missing(inputs).places(&[Plane::JacketEdge]))];
    };
    let spare_cuts = SlackSaid::SpareCuts {
        times,
        each: Read::along(farthest.ceil(), Toward::Longer),
    };
    let question = Question {
        check: CHECK,
        what: SlackSaid::For {
            subject: subject.clone(),
            times,
        }
        .into(),
        subject,
        value: Known::exact(Interval::point(slack)),
        limit: &Limit {
            bound: Bound::AtLeast(farthest.ceil() * times),
            word: Word::Job(spare_cuts.into()),
        },
        reach: Reach::Computed,
        hint: SlackSaid::CallBeforeCutting.into(),
    };
    vec![leg.on_room(question)]
}
