//! Does the edge of the insulation screen lie where the body controls the stress, for every place that the windows allow?
//!
//! It takes the worst of the windows of the edge and of the body, on both sides.
//!
//! Source: the planes in the body's own instructions.

use super::{Inputs, LegInputs, slug};
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Word};
use crate::plane::Plane;
use crate::said::{ControlEnd, EdgeSaid, Said};
use jointwright_units::Length;

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let Some(body) = leg.chosen.body else {
        return Vec::new();
    };
    let sides = [
        (Plane::ControlNear, Plane::ScreenEdge, ControlEnd::Inner),
        (Plane::ScreenEdge, Plane::ControlFar, ControlEnd::Outer),
    ];
    let sides = sides.into_iter().map(|(from, to, end)| {
        let subject = leg.subject();
        match leg.cutback.dimension(from, to) {
            Err(why) => {
                let asks = leg.missing(inputs).places(&[from, to]);
                let why = Said::of(EdgeSaid::InControl { end }, why);
                Ruling::not_judged(CHECK, subject, why).asking_all(asks)
            }
            Ok(dimension) => Question {
                check: CHECK,
                what: EdgeSaid::InControlAtWorst {
                    subject: subject.clone(),
                    end,
                }
                .into(),
                subject,
                value: Known::exact(dimension.interval()),
                limit: &Limit {
                    bound: Bound::AtLeast(Length::ZERO),
                    word: Word::Instructions(body.head.source().into()),
                },
                reach: Reach::Computed,
                hint: EdgeSaid::MayLieOutsideControl.into(),
            }
            .rule(),
        }
    });
    sides.collect()
}
