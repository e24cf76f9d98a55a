//! Is one seal over the whole joint long enough for both legs, from whichever of them it is set off?
//!
//! It compares, at the worst of the windows and with lengths from the middle of the connector:
//!
//! - its length with the distance between both jacket edges and an overlap on each;
//! - its remaining length on one leg with the overlap there, if it is set off to the mark on the other leg.
//!
//! Source: length and overlap in the seal's own instructions.

use super::{Inputs, LegInputs, slug};
use crate::catalogue::Seal;
use crate::job::JointKind;
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Subject, Word, fact_table};
use crate::plane::Plane;
use crate::said::{Said, SpanSaid};
use jointwright_units::{Interval, Length};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>) -> Vec<Ruling> {
    let of_leg = |leg: &LegInputs<'_>| leg.chosen.seal.filter(|s| s.spans_joint).is_some();
    let Some(first) = inputs.legs.iter().find(|leg| of_leg(leg)) else {
        return Vec::new();
    };
    let Some(seal) = first.chosen.seal else {
        return Vec::new();
    };
    let [one, other] = inputs.legs.as_slice() else {
        return vec![misplaced(inputs, seal)];
    };
    if inputs.kind() != JointKind::Straight {
        return vec![misplaced(inputs, seal)];
    }
    let is_of_both = [one, other]
        .iter()
        .all(|leg| leg.chosen.seal.is_some_and(|s| s.head.id == seal.head.id));
    if !is_of_both {
        let seal = seal.head.id.clone();
        let why = SpanSaid::NotNamedByBoth { seal };
        return vec![Ruling::not_judged(CHECK, Subject::joint(), why)];
    }
    let (Some(length), Some(overlap)) = (seal.length, seal.overlap_least) else {
        let row = seal.head.id.clone();
        let why = if seal.length.is_none() {
            SpanSaid::LengthNotSaid { row }
        } else {
            SpanSaid::OverlapNotSaid { row }
        };
        let ruling = Ruling::not_judged(CHECK, Subject::joint(), why);
        return vec![ruling.asking(fact_table::SEAL_LENGTH.of(seal.head.id.as_str()))];
    };
    let one_piece = OnePiece {
        seal,
        length,
        overlap,
    };
    let pairs = [(one, other), (other, one)];
    let set_off = pairs
        .into_iter()
        .map(|(from, to)| one_piece.set_off(from, to));
    std::iter::once(one_piece.whole(one, other))
        .chain(set_off)
        .collect()
}

fn misplaced(inputs: &Inputs<'_>, seal: &Seal) -> Ruling {
    let kind = inputs.kind();
    let source = Word::Instructions(seal.head.source().into());
    let [found, permitted] = [kind, JointKind::Straight].map(|kind| SpanSaid::Joint { kind });
    let ruling = Ruling::on_words(CHECK, Subject::joint(), found, permitted, source);
    let seal = seal.head.id.clone();
    ruling.failing(
        SpanSaid::OnePieceOverTwoLegs { seal, kind },
        SpanSaid::UseOneForEachLeg,
    )
}

struct OnePiece<'i> {
    seal: &'i Seal,
    length: Length,
    overlap: Length,
}

impl OnePiece<'_> {
    /// Greatest distance of a plane of a leg from the middle of the connector.
    fn farthest(&self, leg: &LegInputs<'_>, plane: Plane) -> Result<Length, Said> {
        let dimension = leg.cutback.dimension(Plane::ConnectorCentre, plane);
        let dimension = dimension.map_err(|why| Said::of(leg.subject(), why))?;
        Ok(dimension.interval().greatest())
    }

    fn jacket(&self, leg: &LegInputs<'_>) -> Result<Length, Said> {
        self.farthest(leg, leg.cutback.in_service(Plane::JacketEdge))
    }

    /// Compares its length with both jacket edges and both overlaps.
    fn whole(&self, one: &LegInputs<'_>, other: &LegInputs<'_>) -> Ruling {
        let needed = self.jacket(one).and_then(|a| Ok(a + self.jacket(other)?));
        let seal = self.seal.head.id.clone();
        let what = SpanSaid::Length { seal };
        match needed {
            Err(why) => Ruling::not_judged(CHECK, Subject::joint(), Said::of(what, why)),
            Ok(needed) => self.rule(what, self.length, needed + self.overlap + self.overlap),
        }
    }

    /// Compares its overlap on the jacket of one leg with the least, if it is set off to the mark on the other leg.
    fn set_off(&self, from: &LegInputs<'_>, to: &LegInputs<'_>) -> Ruling {
        let left = self
            .farthest(from, Plane::SealEnd)
            .and_then(|mark| Ok(self.length - mark - self.jacket(to)?));
        let what = SpanSaid::SetOff {
            seal: self.seal.head.id.clone(),
            to_leg: to.leg.id.clone(),
            from_leg: from.leg.id.clone(),
        };
        match left {
            Err(why) => Ruling::not_judged(CHECK, Subject::joint(), Said::of(what, why)),
            Ok(left) => self.rule(what, left, self.overlap),
        }
    }

    fn rule(&self, what: SpanSaid, value: Length, least: Length) -> Ruling {
        Question {
            check: CHECK,
            subject: Subject::joint(),
            value: Known::exact(Interval::point(value)),
            limit: &Limit {
                bound: Bound::AtLeast(least),
                word: Word::Instructions(self.seal.head.source().into()),
            },
            reach: Reach::Computed,
            what: SpanSaid::AtWorst { what: what.into() }.into(),
            hint: SpanSaid::UseLongerOrOneALeg.into(),
        }
        .rule()
    }
}
