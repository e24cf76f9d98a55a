//! Layer: the checks of the layers under a part, which differ in the part only; each is a row of the table of checks.
//!
//! It takes the greatest reach of the part onto a layer that its row does not name, over every place that the windows allow.
//! That reach must be zero.
//!
//! - Adapter: both ends, onto a layer without a range; also the insulation that it leaves bare under the body.
//! - Body: from inside the connector to its end. It may lie on the conductor, on the layers of its ranges and of `may_lie_on`, and over the insulation if an adapter lies between.
//! - Contact of the shield part: both ends lie on bare metallic shield; a row that folds wires back names the layer under them with `may_lie_on` or `fits`.
//! - Electrode: it has the conductor's potential, so an electrode on the insulation screen is a short circuit. Common practice, no source: it may fail and never pass, so it speaks only when it fails.
//! - Seal: from the body's end, or from its own inner end, to its outer end. A row of a seal that lies on the shields between body and jacket names them with `may_lie_on`.
//!
//! Source: the ranges of the part's own instructions.

use super::{Inputs, LegInputs};
use crate::cable::Layer;
use crate::catalogue::{Adapter, Fits, Head};
use crate::limit::{Ask, Outcome, Ruling, Word, fact_table as fact};
use crate::plane::Plane;
use crate::said::{AdapterSaid, ElectrodeSaid, Of, Read, Said};
use crate::underlay::{Asked, Stretch, past_edge};
use jointwright_units::{Station, Toward};

/// Part that lies on the cable.
#[derive(Clone, Copy)]
pub(super) enum Row {
    Adapter,
    Body,
    Contact,
    Electrode,
    Seal,
}

/// Layers on which a part may lie, and the planes between which it lies.
struct Lies<'a> {
    head: &'a Head,
    stretch: Stretch<'static>,
    may_lie_on: Vec<Layer>,
    /// Ask for the fact that is missing if its ends have no place.
    ends: Ask,
}

/// Rulings on the layers under one part of a leg.
pub(super) fn rule(
    check: &'static str,
    row: Row,
    _: &Inputs<'_>,
    leg: &LegInputs<'_>,
) -> Vec<Ruling> {
    let Some(lies) = lies(row, leg) else {
        return Vec::new();
    };
    let is_electrode = matches!(row, Row::Electrode);
    let asked = Asked {
        check,
        subject: leg.subject(),
        part: &lies.head.id,
        word: if is_electrode {
            Word::CommonPractice(ElectrodeSaid::EndsOnInsulation.into())
        } else {
            Word::Instructions(lies.head.source().into())
        },
        stretch: lies.stretch,
        may_lie_on: lies.may_lie_on,
        ends: lies.ends,
    };
    let ruling = Some(asked.rule(&leg.cutback));
    let ruling = ruling.filter(|r| !is_electrode || r.outcome == Outcome::Fail);
    let adapter = leg.chosen.adapter.filter(|_| matches!(row, Row::Adapter));
    let bare = adapter.and_then(|adapter| bare(check, leg, adapter));
    ruling.into_iter().chain(bare).collect()
}

/// Stretch and permitted layers of a part on a leg; `None` if the leg has no such part.
fn lies<'a>(row: Row, leg: &'a LegInputs<'_>) -> Option<Lies<'a>> {
    let chosen = &leg.chosen;
    let named = |fits: &[Fits], may_lie_on: &[Layer]| -> Vec<Layer> {
        let ranges = fits.iter().map(|f| f.over);
        may_lie_on.iter().copied().chain(ranges).collect()
    };
    let between = |begins, ends| Stretch { begins, ends };
    Some(match row {
        Row::Adapter => {
            let part = chosen.adapter?;
            Lies {
                head: &part.head,
                stretch: between(&[Plane::AdapterNear], Plane::AdapterFar),
                may_lie_on: named(&part.fits, &part.may_lie_on),
                ends: fact::ADAPTER_ENDS.of(&part.head.id),
            }
        }
        Row::Body => {
            let part = chosen.body?;
            let mut may_lie_on = named(&part.fits, &part.may_lie_on);
            may_lie_on.push(Layer::Conductor);
            may_lie_on.extend(chosen.adapter.map(|_| Layer::Insulation));
            Lies {
                head: &part.head,
                stretch: between(&[], Plane::BodyEnd),
                may_lie_on,
                ends: fact::LINK.of(Of::plane(Plane::BodyEnd, &part.head.id)),
            }
        }
        Row::Contact => {
            let part = chosen.shield_part?;
            let mut may_lie_on = named(&part.fits, &part.may_lie_on);
            may_lie_on.push(Layer::MetallicShield);
            Lies {
                head: &part.head,
                stretch: between(&[Plane::ContactNear], Plane::ContactFar),
                may_lie_on,
                ends: fact::SHIELD_CONTACT.of(&part.head.id),
            }
        }
        Row::Electrode => {
            let part = chosen.body?;
            Lies {
                head: &part.head,
                stretch: between(&[], Plane::ElectrodeEnd),
                may_lie_on: vec![Layer::Conductor, Layer::Insulation],
                ends: fact::LINK.of(Of::plane(Plane::ElectrodeEnd, &part.head.id)),
            }
        }
        Row::Seal => {
            let part = chosen.seal?;
            // A seal over the whole joint begins on the other leg.
            let begins: &[Plane] = if part.spans_joint {
                &[Plane::BodyEnd]
            } else {
                &[Plane::SealStart, Plane::BodyEnd]
            };
            Lies {
                head: &part.head,
                stretch: between(begins, Plane::SealEnd),
                may_lie_on: named(&part.fits, &part.may_lie_on),
                ends: fact::SEAL_START.of(&part.head.id),
            }
        }
    })
}

/// Ruling on bare insulation beyond the adapter: the body's bore lies over it, but only the adapter was compared with the body's range.
fn bare(check: &'static str, leg: &LegInputs<'_>, adapter: &Adapter) -> Option<Ruling> {
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
            check,
            leg.subject(),
            Said::of(found, AdapterSaid::BoreByItsPaper),
        )
        .asking(fact::BARE_BORE.of(id.as_str())),
        Some(may) => {
            let source = Word::Instructions(adapter.head.source().into());
            let ruling = Ruling::on_words(
                check,
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
