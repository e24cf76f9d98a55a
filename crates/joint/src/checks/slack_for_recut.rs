//! Is there cable left for as many fresh starts as the job asks for?
//!
//! A fresh start gives up everything to the jacket edge, at the far end of its window.
//!
//! Source: the job asks; the planes are the instructions'.

use super::{Check, Inputs, Judge, LegInputs};
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Word, fact_table as fact};
use crate::plane::Plane;
use jointwright_units::{Interval, Toward};

pub(super) const CHECK: Check = Check {
    slug: "slack_for_recut",
    question: "Is there cable left for as many fresh starts as the job asks for?",
    judge: Judge::Leg(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let subject = leg.subject();
    let (Some(slack), Some(times)) = (leg.leg.room.slack, leg.leg.room.spare_cuts) else {
        let why = if leg.leg.room.slack.is_none() {
            "nobody has measured the slack"
        } else {
            "the job does not say how many spare cuts are wanted"
        };
        let slack = leg
            .leg
            .room
            .slack
            .is_none()
            .then(|| fact::SLACK.of(&leg.leg.id));
        let cuts = leg.leg.room.spare_cuts.is_none();
        let cuts = cuts.then(|| fact::SPARE_CUTS.of(&leg.leg.id));
        let ruling = Ruling::not_judged(CHECK.slug, subject, why);
        return vec![ruling.asking_all(slack).asking_all(cuts)];
    };
    let Some(farthest) = leg.cutback.farthest(Plane::JacketEdge) else {
        let why = "the jacket edge has no place or no window yet";
        let ruling = Ruling::not_judged(CHECK.slug, subject, why);
        return vec![ruling.asking_all(leg.missing(inputs).places(&[Plane::JacketEdge]))];
    };
    let question = Question {
        check: CHECK.slug,
        what: format!("{}, slack for {times} more cuts", subject.words()).into(),
        subject,
        value: Known::exact(Interval::point(slack)),
        limit: &Limit {
            bound: Bound::AtLeast(farthest.ceil() * times),
            word: Word::Job(
                format!(
                    "{times} spare cuts of {} each",
                    inputs
                        .order
                        .job
                        .words
                        .along(farthest.ceil(), Toward::Longer)
                )
                .into(),
            ),
        },
        reach: Reach::Computed,
        hint: "Call before anything is cut: a spoilt end could not be made again.".into(),
    };
    vec![leg.on_room(question)]
}
