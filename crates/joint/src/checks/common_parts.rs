//! Do the legs that share one body name the same body, and the legs that share one connector the same connector?
//!
//! Source: the job's own kind of joint.

use super::{Check, Inputs, Judge, LegInputs};
use crate::fit::Chosen;
use crate::job::JointKind;
use crate::limit::{Ruling, Subject};
use crate::said::PartKind;

pub(super) const CHECK: Check = Check {
    slug: "common_parts",
    question: "Do the legs that share a part name the same part?",
    judge: Judge::Joint(judge),
};

/// The name of one part of a leg.
type NameOf = for<'c> fn(&Chosen<'c>) -> Option<&'c String>;

fn judge(inputs: &Inputs<'_>) -> Vec<Ruling> {
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
    let rule = |(kind, name): (PartKind, NameOf)| {
        let what = kind.name();
        let mut named: Vec<&String> = inputs.legs.iter().filter_map(|l| name(&l.chosen)).collect();
        named.sort();
        named.dedup();
        let n_open = inputs
            .legs
            .iter()
            .filter(|l| name(&l.chosen).is_none())
            .count();
        if n_open > 0 && named.len() < 2 {
            let why = format!("{n_open} of the legs name no {what}");
            let ask = inputs
                .legs
                .first()
                .map(|leg| leg.missing(inputs).part(kind));
            return Ruling::not_judged(CHECK.slug, Subject::joint(), why).asking_all(ask);
        }
        let found: Vec<&str> = named.iter().map(|n| n.as_str()).collect();
        let ruling = Ruling::on_words(
            CHECK.slug,
            Subject::joint(),
            found.join(", "),
            format!("one {what} for all legs"),
            format!("job: a {} joint has one {what}", inputs.kind().name()),
        );
        if found.len() == 1 {
            ruling
        } else {
            ruling.failing(
                format!(
                    "the legs name {} different parts as their one {what}",
                    found.len()
                ),
                "Name the same part on every leg.",
            )
        }
    };
    shared
        .into_iter()
        .map(rule)
        .chain(body_sides(inputs))
        .collect()
}

/// Two legs of a straight joint do not come in by one side of their body.
fn body_sides(inputs: &Inputs<'_>) -> Option<Ruling> {
    let sides: Vec<&str> = inputs
        .legs
        .iter()
        .filter_map(|leg| leg.chosen.body?.side.as_deref())
        .collect();
    let [one, other] = sides.as_slice() else {
        return None;
    };
    let ruling = Ruling::on_words(
        CHECK.slug,
        Subject::joint(),
        format!("side {one} and side {other}"),
        "a side of the body for each leg",
        "job: a body takes one leg at each side".to_owned(),
    );
    Some(if one == other {
        ruling.failing(
            format!("both legs come in by the side {one} of their body"),
            "Stop. Use a body that has a side for each of the two cables.",
        )
    } else {
        ruling
    })
}
