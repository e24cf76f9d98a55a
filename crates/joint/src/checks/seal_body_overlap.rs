//! Does the seal close over the end of the body, for every place that the windows allow?
//!
//! It compares the distance from the inner end of the seal to the end of the body with the overlap in the seal's paper.
//! If the paper asks for no overlap, a seal that ends short of the body leaves it open: common practice, which may fail and never passes.
//! For a seal over the whole joint, its length is checked instead (`seal_span`).
//!
//! Source: the seal's own instructions.

use super::{Inputs, LegInputs, slug};
use crate::limit::{Bound, Known, Limit, Outcome, Question, Reach, Ruling, Word, fact_table};
use crate::plane::Plane;
use crate::said::{LapSaid, Of, Said};
use jointwright_units::Length;

const CHECK: &str = slug(module_path!());

pub(super) fn judge(_: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let Some(seal) = leg.chosen.seal.filter(|s| !s.spans_joint) else {
        return Vec::new();
    };
    let subject = leg.subject();
    let dimension = leg.cutback.dimension(Plane::SealStart, Plane::BodyEnd);
    let dimension = match dimension {
        Err(why) => {
            let why = Said::of(LapSaid::OverlapOnBody, why);
            let ruling = Ruling::not_judged(CHECK, subject, why);
            let ask = if leg.cutback.places(Plane::SealStart) {
                fact_table::LINK.of(Of::plane(Plane::BodyEnd, leg.subject()))
            } else {
                fact_table::SEAL_START.of(seal.head.id.as_str())
            };
            return vec![ruling.asking(ask)];
        }
        Ok(dimension) => dimension,
    };
    let limit = match seal.body_overlap_least {
        Some(overlap) => Limit {
            bound: Bound::AtLeast(overlap),
            word: Word::Instructions(seal.head.source().into()),
        },
        None => Limit {
            bound: Bound::AtLeast(Length::ZERO),
            word: Word::CommonPractice(LapSaid::ClosesOverBodyEnd.into()),
        },
    };
    let ruling = Question {
        check: CHECK,
        what: LapSaid::OverlapOnBodyEnd {
            subject: subject.clone(),
            seal: seal.head.id.clone(),
        }
        .into(),
        subject,
        value: Known::exact(dimension.interval()),
        limit: &limit,
        reach: Reach::Computed,
        hint: LapSaid::LeavesBodyEndOpen.into(),
    }
    .rule();
    if ruling.outcome == Outcome::NotJudged {
        let row = seal.head.id.clone();
        let why = LapSaid::BodyOverlapNotSaid { row };
        let ruling = Ruling {
            why: Some(why.into()),
            ..ruling
        };
        return vec![ruling.asking(fact_table::BODY_OVERLAP.of(seal.head.id.as_str()))];
    }
    vec![ruling]
}
