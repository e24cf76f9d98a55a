//! Is one seal over the whole joint long enough for both legs, from whichever of them it is set off?
//!
//! What is compared, all at the worst of the windows, lengths from the middle of the connector:
//! its length against both jacket edges and the overlap on each; and, set off to the mark on one leg, what is left of it for the overlap on the other.
//!
//! Source: length and overlap in the seal's own instructions.

use super::{Check, Inputs, Judge, LegInputs};
use crate::catalogue::Seal;
use crate::job::JointKind;
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Subject, Word, fact_table};
use crate::plane::Plane;
use jointwright_units::{Interval, Length};

pub(super) const CHECK: Check = Check {
    slug: "seal_span",
    question: "Is one seal over the whole joint long enough for both legs?",
    judge: Judge::Joint(judge),
};

const HINT: &str = "Stop. Use a longer seal, or one seal a leg; do not stretch it along the joint.";

fn judge(inputs: &Inputs<'_>) -> Vec<Ruling> {
    let of_leg = |leg: &LegInputs<'_>| leg.chosen.seal.filter(|s| s.spans_joint).is_some();
    let Some(first) = inputs.legs.iter().find(|leg| of_leg(leg)) else {
        return Vec::new();
    };
    let Some(seal) = first.chosen.seal else {
        return Vec::new();
    };
    let not_judged = |why: String| vec![Ruling::not_judged(CHECK.slug, Subject::joint(), why)];
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
        return not_judged(format!(
            "{} goes over the whole joint, and the legs do not both name it",
            seal.head.id
        ));
    }
    let (Some(length), Some(overlap)) = (seal.length, seal.overlap_least) else {
        let what = if seal.length.is_none() {
            "how long it is once it has closed"
        } else {
            "how far it must lap onto the jacket"
        };
        let why = format!("the row {} does not say {what}", seal.head.id);
        let ruling = Ruling::not_judged(CHECK.slug, Subject::joint(), why);
        return vec![ruling.asking(fact_table::SEAL_LENGTH.of(seal.head.id.as_str()))];
    };
    let one_piece = OnePiece {
        inputs,
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
    let kind = inputs.kind().name();
    let source = Word::Instructions(seal.head.source().into());
    let ruling = Ruling::on_words(CHECK.slug, Subject::joint(), kind, "straight", source);
    ruling.failing(
        format!(
            "{} is one piece over two legs; here the joint is {kind}",
            seal.head.id
        ),
        "Use a seal for each leg.",
    )
}

struct OnePiece<'i> {
    inputs: &'i Inputs<'i>,
    seal: &'i Seal,
    length: Length,
    overlap: Length,
}

impl OnePiece<'_> {
    /// Farthest that a plane of a leg can lie from the middle of the connector.
    fn farthest(&self, leg: &LegInputs<'_>, plane: Plane) -> Result<Length, String> {
        let words = self.inputs.order.job.words;
        let dimension = leg.cutback.dimension(Plane::ConnectorCentre, plane, words);
        let say = |why: String| format!("leg {}: {why}", leg.leg.id);
        dimension.map(|d| d.interval().greatest()).map_err(say)
    }

    fn jacket(&self, leg: &LegInputs<'_>) -> Result<Length, String> {
        self.farthest(leg, leg.cutback.in_service(Plane::JacketEdge))
    }

    /// Its length against both jacket edges and both overlaps.
    fn whole(&self, one: &LegInputs<'_>, other: &LegInputs<'_>) -> Ruling {
        let needed = self.jacket(one).and_then(|a| Ok(a + self.jacket(other)?));
        let what = format!("length of {} over the whole joint", self.seal.head.id);
        match needed {
            Err(why) => Ruling::not_judged(CHECK.slug, Subject::joint(), format!("{what}: {why}")),
            Ok(needed) => self.rule(what, self.length, needed + self.overlap + self.overlap),
        }
    }

    /// Set off to the mark on one leg: its overlap on the jacket of the other.
    fn set_off(&self, from: &LegInputs<'_>, to: &LegInputs<'_>) -> Ruling {
        let left = self
            .farthest(from, Plane::SealEnd)
            .and_then(|mark| Ok(self.length - mark - self.jacket(to)?));
        let what = format!(
            "overlap of {} on the jacket of leg {}, when its other end is set to the mark on leg {}",
            self.seal.head.id, to.leg.id, from.leg.id
        );
        match left {
            Err(why) => Ruling::not_judged(CHECK.slug, Subject::joint(), format!("{what}: {why}")),
            Ok(left) => self.rule(what, left, self.overlap),
        }
    }

    fn rule(&self, what: String, value: Length, least: Length) -> Ruling {
        Question {
            check: CHECK.slug,
            subject: Subject::joint(),
            value: Known::exact(Interval::point(value)),
            limit: &Limit {
                bound: Bound::AtLeast(least),
                word: Word::Instructions(self.seal.head.source().into()),
            },
            reach: Reach::Computed,
            what: format!("{what}, at the worst of the windows").into(),
            hint: HINT.into(),
        }
        .rule()
    }
}
