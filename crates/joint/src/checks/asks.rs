//! Asks: the facts that settle rulings not judged on a rubber part or on a temperature under load.

use super::{EndInputs, Inputs, LegInputs};
use crate::ask::{Missing, asking};
use crate::limit::{Ruling, word_on};
use crate::said::PartKind;
use crate::warm::Warm;

/// Adds asks to rulings on a rubber part.
///
/// A ruling that is not judged asks for the missing facts of the part, and of its temperatures if they count.
pub(super) fn asking_of_rubber(
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
    end: &EndInputs,
    (kind, heat): (PartKind, bool),
    rulings: Vec<Ruling>,
) -> Vec<Ruling> {
    let missing = leg.missing(inputs);
    let asks = |check: &str| {
        let mut asks = missing.pressure(kind, end.id.phase, &end.survey);
        if heat {
            asks.extend(missing.warmth(kind, end.id.phase, &end.survey));
        }
        if asks.is_empty() {
            asks.push(word_on(check, &leg.subject_of(end)));
        }
        asks
    };
    let Some(check) = rulings.first().map(|ruling| ruling.check) else {
        return rulings;
    };
    asking(rulings, || asks(check))
}

/// Adds asks to rulings on temperatures under load: a ruling that is not judged asks for the missing facts of the joint.
pub(super) fn asking_of_heat(
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
    rulings: Vec<Ruling>,
) -> Vec<Ruling> {
    // A leg without a body is asked for its body, and for nothing that the body decides.
    if matches!(*inputs.warm, Warm::BodyOpen) && leg.chosen.body.is_none() {
        return Vec::new();
    }
    let Some(check) = rulings.first().map(|ruling| ruling.check) else {
        return rulings;
    };
    let asks = || {
        let legs: Vec<Missing<'_>> = inputs.legs.iter().map(|leg| leg.missing(inputs)).collect();
        let bus = inputs.order.job.bus.as_deref();
        let bus = bus.and_then(|id| inputs.order.catalogue.bus(id));
        let asks = crate::ask::heat(&legs, bus);
        if asks.is_empty() {
            vec![word_on(check, &leg.subject())]
        } else {
            asks
        }
    };
    asking(rulings, asks)
}
