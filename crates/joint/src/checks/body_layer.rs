//! Does the body lie only on layers for which its paper gives it a range, for every place that the windows allow?
//!
//! What is compared: how far the body can reach, from inside the connector to its end, onto a layer that its row does not name, against nothing.
//! Layers under it: the connector and the conductor always, those of its ranges, those of `may_lie_on`, and the insulation where an adapter lies between.
//!
//! Source: the ranges of the body's own instructions.

use super::{Check, Inputs, Judge, LegInputs};
use crate::cable::Layer;
use crate::limit::{Ruling, Word, fact_table};
use crate::plane::Plane;
use crate::said::Of;
use crate::underlay::{Asked, Stretch};

pub(super) const CHECK: Check = Check {
    slug: "body_layer",
    judge: Judge::Leg(judge),
};

fn judge(_: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let Some(body) = leg.chosen.body else {
        return Vec::new();
    };
    let mut may_lie_on = vec![Layer::Conductor];
    may_lie_on.extend(body.fits.iter().map(|f| f.over));
    may_lie_on.extend(&body.may_lie_on);
    may_lie_on.extend(leg.chosen.adapter.map(|_| Layer::Insulation));
    let asked = Asked {
        check: CHECK.slug,
        subject: leg.subject(),
        part: &body.head.id,
        word: Word::Instructions(body.head.source().into()),
        stretch: Stretch {
            begins: &[],
            ends: Plane::BodyEnd,
        },
        may_lie_on,
        ends: fact_table::LINK.of(Of::plane(Plane::BodyEnd, &body.head.id)),
    };
    vec![asked.rule(&leg.cutback)]
}
