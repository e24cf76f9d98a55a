//! Does the adapter lie only on layers for which its paper gives it a range, for every place that the windows allow?
//!
//! What is compared: how far the adapter can reach, at either end, onto a layer that its row does not name, against nothing.
//!
//! Source: the ranges of the adapter's own instructions.

use super::{Check, Inputs, Judge, LegInputs};
use crate::catalogue::Adapter;
use crate::limit::{Ruling, Word, fact_table};
use crate::plane::Plane;
use crate::said::{AdapterSaid, Read, Said};
use crate::underlay::{Asked, Stretch, past_edge};
use jointwright_units::{Station, Toward};

pub(super) const CHECK: Check = Check {
    slug: "adapter_layer",
    judge: Judge::Leg(judge),
};

fn judge(_: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let Some(adapter) = leg.chosen.adapter else {
        return Vec::new();
    };
    let mut may_lie_on = adapter.may_lie_on.clone();
    may_lie_on.extend(adapter.fits.iter().map(|f| f.over));
    let asked = Asked {
        check: CHECK.slug,
        subject: leg.subject(),
        part: &adapter.head.id,
        word: Word::Instructions(adapter.head.source().into()),
        stretch: Stretch {
            begins: &[Plane::AdapterNear],
            ends: Plane::AdapterFar,
        },
        may_lie_on,
        ends: fact_table::ADAPTER_ENDS.of(adapter.head.id.clone()),
    };
    let ruling = asked.rule(&leg.cutback);
    std::iter::once(ruling).chain(bare(leg, adapter)).collect()
}

/// Insulation beyond the adapter: the body's bore stands over it, and its range was met by the adapter alone.
fn bare(leg: &LegInputs<'_>, adapter: &Adapter) -> Option<Ruling> {
    leg.chosen.body?;
    let past = past_edge(&leg.cutback).ok()?;
    if past >= Station::ZERO {
        return None;
    }
    let id = &adapter.head.id;
    let found: Said = AdapterSaid::LeavesBare {
        adapter: id.clone(),
        most: Read::along((-past).ceil(), Toward::Longer),
    }
    .into();
    let ruling = match adapter.leaves_bare {
        None => Ruling::not_judged(
            CHECK.slug,
            leg.subject(),
            Said::of(found, AdapterSaid::BoreByItsPaper),
        )
        .asking(fact_table::BARE_BORE.of(id.as_str())),
        Some(may) => {
            let source = Word::Instructions(adapter.head.source().into());
            let ruling = Ruling::on_words(
                CHECK.slug,
                leg.subject(),
                &found,
                AdapterSaid::ReachesEdge,
                source,
            );
            if may {
                ruling
            } else {
                ruling.failing(found, AdapterSaid::UseOneThatReaches)
            }
        }
    };
    Some(ruling)
}
