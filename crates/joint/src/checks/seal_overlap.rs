//! Does the seal lap far enough onto the jacket, for every place that the windows allow, also after the jacket has shrunk back?
//!
//! Source: the seal's own instructions, else the owner's limit.

use super::{Inputs, LegInputs, slug};
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Word, fact_table as fact};
use crate::plane::Plane;
use crate::said::{LapSaid, Said};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let Some(seal) = leg.chosen.seal else {
        return Vec::new();
    };
    let subject = leg.subject();
    let stated = seal.overlap_least.map(|overlap| Limit {
        bound: Bound::AtLeast(overlap),
        word: Word::Instructions(seal.head.source().into()),
    });
    let limits = inputs.limits(CHECK, stated);
    if limits.is_empty() {
        let why = LapSaid::JacketOverlapNotSaid;
        let ruling = Ruling::not_judged(CHECK, subject, why);
        return vec![ruling.asking(fact::OVERLAP.of(&seal.head.id))];
    }
    let edge = leg.cutback.in_service(Plane::JacketEdge);
    let dimension = leg.cutback.dimension(edge, Plane::SealEnd);
    let dimension = match dimension {
        Err(why) => {
            let asks = leg.missing(inputs).places(&[edge, Plane::SealEnd]);
            return vec![Ruling::not_judged(CHECK, subject, why).asking_all(asks)];
        }
        Ok(dimension) => dimension,
    };
    let rule = |limit: &Limit| {
        Question {
            check: CHECK,
            what: LapSaid::OverlapOnJacket {
                subject: subject.clone(),
                seal: seal.head.id.clone(),
            }
            .into(),
            subject: subject.clone(),
            value: Known::exact(dimension.interval()),
            limit,
            reach: Reach::Computed,
            hint: LapSaid::UseLonger.into(),
        }
        .rule()
    };
    let mut rulings: Vec<Ruling> = limits.iter().map(rule).collect();
    if edge == Plane::JacketEdge {
        let why = LapSaid::ShrinkageNotStated;
        let ruling = Ruling::not_judged(CHECK, leg.subject(), why);
        let ruling = ruling.asking(fact::JACKET_SHRINKS.of(&leg.leg.id));
        let ask = Said::Questions(vec![LapSaid::AskShrinkage.into()]);
        rulings.push(ruling.with_hint(ask));
    }
    rulings
}
