//! Do the cuts of this leg lie in the order of the layers, at the worst of their windows?
//!
//! From the conductor end: connector mouth, insulation end, insulation-screen edge, metallic-shield edge, jacket edge, seal end.
//! A park mark lies beyond the jacket edge.
//! A wrong sign or digit, copied from a paper, puts a cut at an impossible place.
//! Common practice, no source: it may fail and never pass, so it speaks only when it fails.

use super::{Inputs, LegInputs, slug};
use crate::limit::{Bound, Known, Limit, Outcome, Question, Reach, Ruling, Word};
use crate::plane::Plane;
use crate::said::{OrderSaid, Said};
use jointwright_units::{Interval, Length};

const CHECK: &str = slug(module_path!());

const ORDER: &[Plane] = &[
    Plane::ConductorEnd,
    Plane::ConnectorMouth,
    Plane::InsulationEnd,
    Plane::ScreenEdge,
    Plane::ShieldEdge,
    Plane::JacketEdge,
    Plane::SealEnd,
];

pub(super) fn judge(_: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let placed: Vec<Plane> = ORDER
        .iter()
        .copied()
        .filter(|plane| leg.cutback.nominal(*plane).is_some())
        .collect();
    let limit = Limit {
        bound: Bound::AtLeast(Length::ZERO),
        word: Word::CommonPractice(OrderSaid::LayersEndInOrder.into()),
    };
    let neighbours = placed.windows(2).filter_map(|pair| {
        let (from, to) = (pair[0], pair[1]);
        let nominal = leg.cutback.nominal(to)? - leg.cutback.nominal(from)?;
        // Without windows, the planned places must still be in order.
        let interval = leg.cutback.dimension(from, to).map(|d| d.interval());
        let read = interval.unwrap_or(Interval::point(nominal.floor()));
        let subject = leg.subject();
        let what = OrderSaid::FromTo { subject, from, to };
        Some(question(leg, read, what.into(), &limit).rule())
    });
    let beyond = [Plane::BodyEnd, Plane::ParkMark]
        .into_iter()
        .filter_map(|plane| {
            let nominal = leg.cutback.nominal(plane)?;
            let what = OrderSaid::FromConductorEnd {
                subject: leg.subject(),
                to: plane,
            };
            let read = Interval::point(nominal.floor());
            Some(question(leg, read, what.into(), &limit).rule())
        });
    // A parked part rests on the jacket, away from the work.
    let parked = placed_pair(leg).map(|(read, what)| question(leg, read, what, &limit).rule());
    let rulings = neighbours.chain(beyond).chain(parked);
    rulings.filter(|r| r.outcome == Outcome::Fail).collect()
}

/// Distance from the jacket edge to the park mark, if both have a place.
fn placed_pair(leg: &LegInputs<'_>) -> Option<(Interval, Said)> {
    let (from, to) = (Plane::JacketEdge, Plane::ParkMark);
    let nominal = leg.cutback.nominal(to)? - leg.cutback.nominal(from)?;
    let interval = leg.cutback.dimension(from, to).map(|d| d.interval());
    let subject = leg.subject();
    let what = OrderSaid::FromTo { subject, from, to };
    let read = interval.unwrap_or(Interval::point(nominal.floor()));
    Some((read, what.into()))
}

fn question<'l>(leg: &LegInputs<'_>, read: Interval, what: Said, limit: &'l Limit) -> Question<'l> {
    Question {
        check: CHECK,
        what,
        subject: leg.subject(),
        value: Known::exact(read),
        limit,
        reach: Reach::Computed,
        hint: OrderSaid::CopiedWrongly.into(),
    }
}
