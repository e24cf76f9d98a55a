//! Caution: dangers of a stage, stated at that stage and not on a page of their own.
//!
//! Invariants:
//! - A caution belongs to a thing that is present; a holdout or a torch has one only if a row names it or is silent about it.
//! - Each caution stands once.
//! - A sentence of a part's own paper is never dropped for one of ours that says less.
//!
//! Source: common practice, no source; local codes, the owner's rules and the parts' own instructions prevail.

use super::Step;
use super::coming::{Coming, comings};
use super::line::{Line, common};
use crate::catalogue::{GoesOn, Means, PartKind};
use crate::checks::{Inputs, LegInputs};
use crate::said::{CautionSaid, Read, Said, Wording};
use crate::stage::Stage;
use jointwright_units::Toward;
use std::collections::BTreeSet;

/// Cautions of a stage for these legs.
pub(super) fn cautions(inputs: &Inputs<'_>, stage: Stage, legs: &[&LegInputs<'_>]) -> Vec<Line> {
    let said: Vec<CautionSaid> = match stage {
        Stage::HandOver => vec![CautionSaid::VoltageAndGas],
        Stage::Square => vec![CautionSaid::SharpTools],
        Stage::Jacket => vec![CautionSaid::JacketKnife],
        Stage::Bridge => vec![CautionSaid::OpenShield],
        Stage::Screen => vec![CautionSaid::ScreenKnife],
        Stage::Insulation => vec![CautionSaid::InsulationKnife],
        Stage::Connect => connect(legs),
        Stage::Clean => vec![CautionSaid::Solvent],
        Stage::SlideOn | Stage::PushOn => stored_energy(&here(inputs, legs, Some(stage))),
        Stage::Place => place(inputs, legs),
        Stage::Mate => vec![CautionSaid::NeverUnderVoltage],
        Stage::Bond => vec![CautionSaid::BondEdges],
        Stage::BridgeOff => vec![CautionSaid::BridgeOff],
        Stage::Seal => seal(legs),
        Stage::HandBack => vec![thrust(legs), CautionSaid::HighVoltage],
        _ => Vec::new(),
    };
    said.into_iter().map(common).collect()
}

/// Parts that come over these legs, at one stage or at any.
fn here<'i>(inputs: &Inputs<'i>, legs: &[&LegInputs<'i>], stage: Option<Stage>) -> Vec<Coming<'i>> {
    let all = legs.iter().flat_map(|leg| comings(inputs, leg));
    all.filter(|coming| stage.is_none_or(|stage| coming.stage == stage))
        .collect()
}

/// Cautions about parts that stand expanded on a holdout.
fn stored_energy(comings: &[Coming<'_>]) -> Vec<CautionSaid> {
    let held = comings.iter();
    let held = held.filter(|coming| coming.by == Some(GoesOn::Holdout));
    let mut parts: Vec<PartKind> = held.map(|coming| coming.part).collect();
    parts.sort_unstable_by_key(|part| part.name());
    parts.dedup();
    if parts.is_empty() {
        return Vec::new();
    }
    vec![CautionSaid::StoredEnergy { parts }]
}

fn energy_of(part: PartKind) -> CautionSaid {
    CautionSaid::StoredEnergy { parts: vec![part] }
}

/// Dangers while body and adapter go to their place.
fn place(inputs: &Inputs<'_>, legs: &[&LegInputs<'_>]) -> Vec<CautionSaid> {
    let ways: Vec<(PartKind, Option<GoesOn>)> = here(inputs, legs, None)
        .into_iter()
        .filter(|coming| coming.part != PartKind::Seal)
        .map(|coming| (coming.part, coming.by))
        .collect();
    let is_any = |wanted: GoesOn| ways.iter().any(|(_, by)| *by == Some(wanted));
    let mut said = Vec::new();
    if ways.contains(&(PartKind::Body, Some(GoesOn::Holdout))) {
        said.push(energy_of(PartKind::Body));
        said.push(CautionSaid::BodyWalks);
    }
    if is_any(GoesOn::Torch) {
        said.push(CautionSaid::Torch);
    }
    let is_pushed = is_any(GoesOn::PushOn) || ways.iter().any(|(_, by)| by.is_none());
    if is_pushed || ways.is_empty() {
        said.push(CautionSaid::CreepsBack);
    }
    said
}

/// Dangers while the seals close.
fn seal(legs: &[&LegInputs<'_>]) -> Vec<CautionSaid> {
    let seals = legs.iter().filter_map(|leg| leg.chosen.seal);
    let ways: Vec<Option<GoesOn>> = seals.map(|seal| seal.comes_by()).collect();
    let mut said = Vec::new();
    if ways.contains(&Some(GoesOn::Holdout)) {
        said.push(energy_of(PartKind::Seal));
    }
    if ways.contains(&Some(GoesOn::Torch)) {
        said.push(CautionSaid::Torch);
    }
    if ways.contains(&None) || ways.is_empty() {
        said.push(CautionSaid::TorchIfAsked);
    }
    said
}

/// Bending and thrust near the bodies.
fn thrust(legs: &[&LegInputs<'_>]) -> CautionSaid {
    let keep_off = legs
        .iter()
        .filter_map(|leg| leg.chosen.body?.bend_keep_off)
        .max();
    let keep_off = keep_off.map(|length| Read::along(length, Toward::Longer));
    CautionSaid::Thrust { keep_off }
}

fn connect(legs: &[&LegInputs<'_>]) -> Vec<CautionSaid> {
    let mut said = Vec::new();
    let means = |wanted: Means| {
        legs.iter()
            .any(|leg| leg.chosen.connector.is_some_and(|c| c.means == wanted))
    };
    if means(Means::Compression) {
        said.push(CautionSaid::Press);
    }
    if means(Means::ShearBolt) {
        said.push(CautionSaid::BoltHeads);
    }
    if means(Means::SetScrew) {
        said.push(CautionSaid::SlippingKey);
    }
    said
}

/// Drops a caution that another one of the same step, or of the step before on the same leg, already says; the other one takes over its source.
///
/// Papers use their own words, so sentences are compared in the words of a tongue.
pub fn said_once(steps: &mut [Step], wording: &dyn Wording) {
    let says_all_of = |one: &Said, other: &Said| says_all(one, other, wording);
    for at in 0..steps.len() {
        within(&mut steps[at].cautions, wording);
        let Some((before, rest)) = steps[..=at]
            .split_last_mut()
            .map(|(step, before)| (before, step))
        else {
            continue;
        };
        let previous = before.iter_mut().rev().find(|other| {
            rest.legs.is_empty()
                || other.legs.is_empty()
                || other.legs.iter().any(|leg| rest.legs.contains(leg))
        });
        let Some(previous) = previous else { continue };
        rest.cautions.retain(|caution| {
            let same = previous
                .cautions
                .iter_mut()
                .find(|other| says_all_of(&other.say, &caution.say));
            if let Some(same) = same {
                name_too(same, &caution.source);
                return false;
            }
            true
        });
    }
}

/// Drops a caution that another one of the same step already says.
fn within(cautions: &mut Vec<Line>, wording: &dyn Wording) {
    let says_all_of = |one: &Said, other: &Said| says_all(one, other, wording);
    let mut kept: Vec<Line> = Vec::new();
    for caution in std::mem::take(cautions) {
        if let Some(same) = kept.iter_mut().find(|k| says_all_of(&k.say, &caution.say)) {
            name_too(same, &caution.source);
            continue;
        }
        let mut caution = caution;
        kept.retain(|less| {
            let is_less = says_all_of(&caution.say, &less.say);
            if is_less {
                name_too(&mut caution, &less.source);
            }
            !is_less
        });
        kept.push(caution);
    }
    *cautions = kept;
}

/// Adds a source to a line that already has one.
fn name_too(line: &mut Line, source: &Said) {
    let own = match &line.source {
        Said::All(all) => all.clone(),
        one => vec![one.clone()],
    };
    let mut all = own;
    let new = match source {
        Said::All(all) => all.clone(),
        one => vec![one.clone()],
    };
    for one in new {
        if !all.contains(&one) {
            all.push(one);
        }
    }
    line.source = Said::all(all);
}

/// Whether one message, in the words of a tongue, says all that another says.
fn says_all(one: &Said, other: &Said, wording: &dyn Wording) -> bool {
    one == other || says_all_of(&wording.say(one), &wording.say(other))
}

/// Words with which a sentence says less than without them.
const WEAKENING: &[&str] = &["unless", "except", "but", "only", "where", "if", "may"];

/// Whether one text holds every word of another, and no word that weakens it.
fn says_all_of(text: &str, other: &str) -> bool {
    let words = |text: &str| -> BTreeSet<String> {
        text.to_lowercase()
            .split(|c: char| !c.is_alphanumeric())
            .filter(|word| !word.is_empty())
            .map(str::to_owned)
            .collect()
    };
    let (all, of) = (words(text), words(other));
    let weakened = WEAKENING
        .iter()
        .any(|word| all.contains(*word) && !of.contains(*word));
    of.is_subset(&all) && (!weakened || all == of)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_caution_that_says_more_stands_for_one_that_says_less() {
        assert!(says_all_of(
            "Bolt heads fly: eyes protected, nobody in line.",
            "Bolt heads fly: nobody in line."
        ));
        assert!(!says_all_of(
            "Bolt heads fly: nobody in line.",
            "Bolt heads fly: eyes protected, nobody in line."
        ));
    }

    #[test]
    fn a_caution_with_an_exception_does_not_stand_for_one_without() {
        let paper = "Never part or mate a separable joint under voltage or load.";
        let ours =
            "Never part or mate a separable joint under voltage or load unless its rating says so.";
        assert!(!says_all_of(ours, paper));
        assert!(says_all_of(ours, ours));
    }
}
