//! Slide: what must go over a cable before its connector is made, and onto which end.

use crate::catalogue::Head;
use crate::checks::{Inputs, LegInputs};
use crate::job::JointKind;

/// A part that is slid onto one end.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Slide {
    /// Kind of part.
    pub part: &'static str,
    /// Its row.
    pub id: String,
    /// The leg and phase that it is for.
    pub of: String,
    /// The end it is slid onto, as leg and phase.
    pub onto: String,
}

/// What is slid onto a leg, that which lies farthest from the conductor end first.
pub(super) fn slides(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Slide> {
    let chosen = &leg.chosen;
    let takes_body = inputs.order.job.kind == JointKind::Separable || parks(inputs, leg);
    let parts: [(&'static str, Option<&Head>); 3] = [
        ("seal", chosen.seal.map(|p| &p.head)),
        ("body", chosen.body.filter(|_| takes_body).map(|p| &p.head)),
        ("adapter", chosen.adapter.map(|p| &p.head)),
    ];
    let mut slides = Vec::new();
    for (part, head) in parts {
        let Some(head) = head else { continue };
        for end in &leg.ends {
            let name = format!("{}{}", leg.leg.id, end.phase);
            slides.push(Slide {
                part,
                id: head.id.clone(),
                of: name.clone(),
                onto: name,
            });
        }
    }
    slides
}

/// Whether this leg is the only one named to park the one body.
fn parks(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> bool {
    leg.leg.parks && inputs.legs.iter().filter(|l| l.leg.parks).count() == 1
}

/// What about sliding on cannot be settled here.
pub(super) fn unsettled(inputs: &Inputs<'_>) -> Vec<String> {
    if inputs.order.job.kind == JointKind::Separable {
        return Vec::new();
    }
    match inputs.legs.iter().filter(|l| l.leg.parks).count() {
        1 => Vec::new(),
        0 => vec![
            "No leg is named to park the body; settle it before any connector is made.".to_owned(),
        ],
        n => vec![format!(
            "{n} legs are named to park the one body; settle which before any connector is made."
        )],
    }
}
