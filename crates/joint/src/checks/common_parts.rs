//! Do the legs that share one body name the same body, and the legs that share one connector the same connector?
//!
//! Source: the job's own kind of joint.

use super::{Inputs, LegInputs, slug};
use crate::fit::Chosen;
use crate::job::JointKind;
use crate::limit::{Ruling, Subject, Word};
use crate::said::{PartKind, Said, SharedSaid};

const CHECK: &str = slug(module_path!());

/// Name of one part of a leg.
type NameOf = for<'c> fn(&Chosen<'c>) -> Option<&'c String>;

pub(super) fn judge(inputs: &Inputs<'_>) -> Vec<Ruling> {
    if inputs.kind() == JointKind::Separable {
        return Vec::new();
    }
    let mut shared: Vec<(PartKind, NameOf)> =
        vec![(PartKind::Body, |c| c.body.map(|p| &p.head.id))];
    if inputs.kind() == JointKind::Straight {
        shared.push((PartKind::Connector, |c| c.connector.map(|p| &p.head.id)));
        let spans = |leg: &LegInputs<'_>| leg.chosen.seal.is_some_and(|s| s.spans_joint);
        if inputs.legs.iter().any(spans) {
            shared.push((PartKind::Seal, |c| c.seal.map(|p| &p.head.id)));
        }
    }
    let rule = |(part, name): (PartKind, NameOf)| {
        let mut named: Vec<&String> = inputs.legs.iter().filter_map(|l| name(&l.chosen)).collect();
        named.sort();
        named.dedup();
        let n_open = inputs
            .legs
            .iter()
            .filter(|l| name(&l.chosen).is_none())
            .count();
        if n_open > 0 && named.len() < 2 {
            let n_legs = n_open;
            let why = SharedSaid::LegsNameNone { n_legs, part };
            let ask = inputs
                .legs
                .first()
                .map(|leg| leg.missing(inputs).part(part));
            return Ruling::not_judged(CHECK, Subject::joint(), why).asking_all(ask);
        }
        let kind = inputs.kind();
        let ruling = Ruling::on_words(
            CHECK,
            Subject::joint(),
            Said::listed(named.iter().map(|name| Said::from(*name))),
            SharedSaid::OneForAllLegs { part },
            Word::Job(SharedSaid::JointHasOne { kind, part }.into()),
        );
        let n_parts = named.len();
        if n_parts == 1 {
            ruling
        } else {
            let why = SharedSaid::Different { n_parts, part };
            ruling.failing(why, SharedSaid::NameTheSame)
        }
    };
    shared
        .into_iter()
        .map(rule)
        .chain(body_sides(inputs))
        .collect()
}

/// Rules that two legs of a straight joint do not enter the same side of their body.
fn body_sides(inputs: &Inputs<'_>) -> Option<Ruling> {
    let sides: Vec<&String> = inputs
        .legs
        .iter()
        .filter_map(|leg| leg.chosen.body?.side.as_ref())
        .collect();
    let [one, other] = sides.as_slice() else {
        return None;
    };
    let ruling = Ruling::on_words(
        CHECK,
        Subject::joint(),
        SharedSaid::Sides {
            one: (*one).clone(),
            other: (*other).clone(),
        },
        SharedSaid::SideForEachLeg,
        Word::Job(SharedSaid::LegAtEachSide.into()),
    );
    Some(if one == other {
        let side = (*one).clone();
        let why = SharedSaid::BothByOneSide { side };
        ruling.failing(why, SharedSaid::UseBodyWithSides)
    } else {
        ruling
    })
}
