//! Does the shield part touch bare metallic shield along its whole contact, for every place that the windows allow?
//!
//! What is compared: how far the contact can reach, at either end, onto the insulation screen or the jacket, against nothing.
//! A row that folds wires back says with `may_lie_on` or `fits` on what they come to lie.
//!
//! Source: the shield part's own instructions.

use super::{Check, Inputs, Judge, LegInputs};
use crate::cable::Layer;
use crate::limit::{Ruling, Word, fact_table};
use crate::plane::Plane;
use crate::underlay::{Asked, Stretch};

pub(super) const CHECK: Check = Check {
    slug: "contact_layer",
    judge: Judge::Leg(judge),
};

fn judge(_: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let Some(part) = leg.chosen.shield_part else {
        return Vec::new();
    };
    let mut may_lie_on = vec![Layer::MetallicShield];
    may_lie_on.extend(&part.may_lie_on);
    may_lie_on.extend(part.fits.iter().map(|f| f.over));
    let asked = Asked {
        check: CHECK.slug,
        subject: leg.subject(),
        part: &part.head.id,
        word: Word::Instructions(part.head.source().into()),
        stretch: Stretch {
            begins: &[Plane::ContactNear],
            ends: Plane::ContactFar,
        },
        may_lie_on,
        ends: fact_table::SHIELD_CONTACT.of(part.head.id.clone()),
    };
    vec![asked.rule(&leg.cutback)]
}
