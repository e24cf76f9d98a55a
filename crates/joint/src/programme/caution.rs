//! Caution: what can hurt at a stage, said there and not on a page of its own.
//!
//! Invariants: a caution belongs to what is there, a holdout or a torch only where a row has one or is silent; it stands once; a word of a part's own paper is never dropped for one of ours that says less.
//!
//! Source: common practice, no source; local codes, the owner's rules and the parts' own instructions prevail.

use super::coming::{Coming, comings};
use super::line::{Line, capital};
use super::{COMMON_PRACTICE, Step};
use crate::cable::{Layer, Words};
use crate::catalogue::{GoesOn, Means, PartKind};
use crate::checks::{Inputs, LegInputs};
use crate::stage::Stage;
use jointwright_units::Toward;
use std::collections::BTreeSet;

/// Cautions of a stage for these legs.
pub(super) fn cautions(inputs: &Inputs<'_>, stage: Stage, legs: &[&LegInputs<'_>]) -> Vec<Line> {
    let words = inputs.order.job.words;
    let shield = Layer::MetallicShield.name(words);
    let said: Vec<String> = match stage {
        Stage::HandOver => vec![
            "A cable can carry voltage from the far end, from a second source, or charge left by a trial. Gas, water and lack of air in the hole; other circuits in it may be alive.".to_owned(),
        ],
        Stage::Square => vec!["Sharp tools and pinch points: cut away from the hand.".to_owned()],
        Stage::Jacket => vec![format!(
            "Knife: cut away from the hand, never through to the {shield}."
        )],
        Stage::Bridge => vec![format!(
            "An open {shield} can carry voltage, also on a cable that is isolated: it is bridged before it is cut and stays bridged."
        )],
        Stage::Screen => vec![format!(
            "Knife: no deeper than the depth on the front page, where it sets none no deeper than a stop tried on a scrap of this cable; never into the insulation. {} left on the insulation carries current: none may stay.",
            capital(Layer::InsulationScreen.name(words))
        )],
        Stage::Insulation => vec!["Knife or stripper: never into the strands.".to_owned()],
        Stage::Connect => connect(legs),
        Stage::Clean => vec![
            "Solvent: no flame or spark, ventilate, gloves; let it dry. The paper strip is off before the last wipe.".to_owned(),
        ],
        Stage::SlideOn | Stage::PushOn => stored_energy(&here(inputs, legs, Some(stage))),
        Stage::Place => place(inputs, legs),
        Stage::Mate => vec![
            "Never part or mate a separable joint under voltage or load. Ports that stay open meanwhile are closed as the instructions of the bus say.".to_owned(),
        ],
        Stage::Bond => vec!["Sharp edges and springs. The bridge stays on.".to_owned()],
        Stage::BridgeOff => vec![format!(
            "From here the permanent bond alone holds the {shield}: in doubt about any of it the bridge stays on. An open {shield} can carry voltage."
        )],
        Stage::Seal => seal(legs),
        Stage::HandBack => vec![
            thrust(legs, words),
            "High voltage at trials: the area is closed off, and what was tried is discharged and grounded or earthed by those who made the trial. Nobody is in the hole when voltage first comes on.".to_owned(),
        ],
        _ => Vec::new(),
    };
    said.into_iter()
        .map(|say| Line {
            say,
            source: COMMON_PRACTICE.to_owned(),
        })
        .collect()
}

/// Parts that come over these legs, at one stage or at any.
fn here<'i>(inputs: &Inputs<'i>, legs: &[&LegInputs<'i>], stage: Option<Stage>) -> Vec<Coming<'i>> {
    let all = legs.iter().flat_map(|leg| comings(inputs, leg));
    all.filter(|coming| stage.is_none_or(|stage| coming.stage == stage))
        .collect()
}

/// What is said of parts that stand expanded on a holdout.
fn stored_energy(comings: &[Coming<'_>]) -> Vec<String> {
    let mut held: Vec<&str> = comings
        .iter()
        .filter(|coming| coming.by == Some(GoesOn::Holdout))
        .map(|coming| coming.part.name())
        .collect();
    held.sort_unstable();
    held.dedup();
    if held.is_empty() {
        return Vec::new();
    }
    vec![energy_of(&held.join(" or "))]
}

fn energy_of(parts: &str) -> String {
    format!(
        "An expanded {parts} holds stored energy: keep fingers out of the holdout; turns only as its instructions say."
    )
}

/// What can hurt while body and adapter come to their place.
fn place(inputs: &Inputs<'_>, legs: &[&LegInputs<'_>]) -> Vec<String> {
    let ways: Vec<(PartKind, Option<GoesOn>)> = here(inputs, legs, None)
        .into_iter()
        .filter(|coming| coming.part != PartKind::Seal)
        .map(|coming| (coming.part, coming.by))
        .collect();
    let is_any = |wanted: GoesOn| ways.iter().any(|(_, by)| *by == Some(wanted));
    let mut said = Vec::new();
    if ways.contains(&(PartKind::Body, Some(GoesOn::Holdout))) {
        said.push(energy_of("body"));
        said.push("A body can walk along the cable while the holdout comes out and after: hold it to its mark, and measure both ends to their marks again before anything covers them.".to_owned());
    }
    if is_any(GoesOn::Torch) {
        said.push(TORCH.to_owned());
    }
    let is_pushed = is_any(GoesOn::PushOn) || ways.iter().any(|(_, by)| by.is_none());
    if is_pushed || ways.is_empty() {
        said.push("Rubber that was pushed on can creep back: measure the body to its marks again before anything covers them.".to_owned());
    }
    said
}

const TORCH: &str = "Torch: gas tested, no solvent vapour, heat kept off what it is not meant for; nothing of the kind left within its reach that burns.";

/// What can hurt while the seals close.
fn seal(legs: &[&LegInputs<'_>]) -> Vec<String> {
    let seals = legs.iter().filter_map(|leg| leg.chosen.seal);
    let ways: Vec<Option<GoesOn>> = seals.map(|seal| seal.comes_by()).collect();
    let mut said = Vec::new();
    if ways.contains(&Some(GoesOn::Holdout)) {
        said.push(energy_of("seal"));
    }
    if ways.contains(&Some(GoesOn::Torch)) {
        said.push(TORCH.to_owned());
    }
    if ways.contains(&None) || ways.is_empty() {
        said.push("Where the instructions ask for a torch: gas tested, no solvent vapour, heat kept off the body.".to_owned());
    }
    said
}

/// Bending and thrust near the bodies.
fn thrust(legs: &[&LegInputs<'_>], words: Words) -> String {
    let keep_off = legs
        .iter()
        .filter_map(|leg| leg.chosen.body?.bend_keep_off)
        .max();
    let keep_off = keep_off.map_or("as far as their instructions say".to_owned(), |length| {
        format!(
            "{} or more, as their instructions say",
            words.along(length, Toward::Longer)
        )
    });
    format!(
        "A cable that grows warm pushes, and one that is bent pulls a body open on one side: no bend within reach of the bodies, {keep_off}; supported so that neither thrust nor weight comes on them; not moved before everything has settled."
    )
}

fn connect(legs: &[&LegInputs<'_>]) -> Vec<String> {
    let mut said = Vec::new();
    let means = |wanted: Means| {
        legs.iter()
            .any(|leg| leg.chosen.connector.is_some_and(|c| c.means == wanted))
    };
    if means(Means::Compression) {
        said.push("Press: hands clear of the jaws; hydraulic oil can pierce the skin.".to_owned());
    }
    if means(Means::ShearBolt) {
        said.push("Bolt heads fly: eyes protected, nobody in line.".to_owned());
    }
    if means(Means::SetScrew) {
        said.push("A slipping key cuts: hold the connector, not the cable.".to_owned());
    }
    said
}

/// Drops what another caution of the same step, or of the step before on the same leg, says already; who says it is named there.
pub(super) fn said_once(steps: &mut [Step]) {
    for at in 0..steps.len() {
        within(&mut steps[at].cautions);
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

/// Drops what another caution of one step says already.
fn within(cautions: &mut Vec<Line>) {
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

/// Adds a source to a line that has another.
fn name_too(line: &mut Line, source: &str) {
    if !line.source.split("; ").any(|s| s == source) {
        line.source = format!("{}; {source}", line.source);
    }
}

/// Words by which a sentence says less than one without them.
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
