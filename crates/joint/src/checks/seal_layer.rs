//! Does the seal lie, beyond the body, only on layers for which its paper gives it a range, for every place that the windows allow?
//!
//! What is compared: how far the seal can reach, from the body's end or from where it begins to its outer end, onto a layer that its row does not name, against nothing.
//! A seal that goes over the shields between body and jacket says so with `may_lie_on`.
//!
//! Source: the ranges of the seal's own instructions.

use super::{Check, Inputs, Judge, LegInputs};
use crate::limit::{Ruling, Word, fact_table};
use crate::plane::Plane;
use crate::underlay::{Asked, Stretch};

pub(super) const CHECK: Check = Check {
    slug: "seal_layer",
    judge: Judge::Leg(judge),
};

fn judge(_: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let Some(seal) = leg.chosen.seal else {
        return Vec::new();
    };
    let mut may_lie_on = seal.may_lie_on.clone();
    may_lie_on.extend(seal.fits.iter().map(|f| f.over));
    // What goes over the whole joint begins on the other leg.
    let begins: &[Plane] = if seal.spans_joint {
        &[Plane::BodyEnd]
    } else {
        &[Plane::SealStart, Plane::BodyEnd]
    };
    let asked = Asked {
        check: CHECK.slug,
        subject: leg.subject(),
        part: &seal.head.id,
        word: Word::Instructions(seal.head.source().into()),
        stretch: Stretch {
            begins,
            ends: Plane::SealEnd,
        },
        may_lie_on,
        ends: fact_table::SEAL_START.of(seal.head.id.clone()),
    };
    vec![asked.rule(&leg.cutback)]
}
