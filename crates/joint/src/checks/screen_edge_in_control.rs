//! Does the edge of the insulation screen lie where the body controls the stress, for every place that the windows allow?
//!
//! Worst of the windows of the edge and of the body, on both sides.
//!
//! Source: the planes in the body's own instructions.

use super::{Check, Inputs, Judge, LegInputs};
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Word};
use crate::plane::Plane;
use jointwright_units::Length;

pub(super) const CHECK: Check = Check {
    slug: "screen_edge_in_control",
    question: "Does the edge of the insulation screen lie where the body controls the stress?",
    judge: Judge::Leg(judge),
};

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let Some(body) = leg.chosen.body else {
        return Vec::new();
    };
    let sides = [
        (
            Plane::ControlNear,
            Plane::ScreenEdge,
            "past the inner end of the stress control",
        ),
        (
            Plane::ScreenEdge,
            Plane::ControlFar,
            "short of the outer end of the stress control",
        ),
    ];
    let sides = sides.into_iter().map(|(from, to, what)| {
        let subject = leg.subject();
        match leg.cutback.dimension(from, to, inputs.order.job.words) {
            Err(why) => {
                let asks = leg.missing(inputs).places(&[from, to]);
                let why = format!("screen edge {what}: {why}");
                Ruling::not_judged(CHECK.slug, subject, why).asking_all(asks)
            }
            Ok(dimension) => Question {
                check: CHECK.slug,
                what: format!(
                    "{}, screen edge {what}, at the worst of the windows",
                    subject.words()
                )
                .into(),
                subject,
                value: Known::exact(dimension.interval()),
                limit: &Limit {
                    bound: Bound::AtLeast(Length::ZERO),
                    word: Word::Instructions(body.head.source().into()),
                },
                reach: Reach::Computed,
                hint:
                    "Stop and call: with these windows the edge can lie outside the stress control."
                        .into(),
            }
            .rule(),
        }
    });
    sides.collect()
}
