//! Caution: what can hurt at a stage, said there and not on a page of its own.
//!
//! Source: common practice, no source; local codes, the owner's rules and the parts' own instructions prevail.

use super::COMMON_PRACTICE;
use super::line::Line;
use crate::cable::{Layer, Words};
use crate::catalogue::{Body, MayMove, Means};
use crate::checks::LegInputs;
use crate::limit::said;
use crate::stage::Stage;

/// Cautions of a stage for these legs.
pub(super) fn cautions(stage: Stage, legs: &[&LegInputs<'_>], words: Words) -> Vec<Line> {
    let shield = Layer::MetallicShield.name(words);
    let said: Vec<String> = match stage {
        Stage::HandOver => vec![
            "A cable can carry voltage from the far end, from a second source, or charge left by a trial. Gas, water and lack of air in the hole; other circuits in it may be alive.".to_owned(),
        ],
        Stage::Square => vec!["Sharp tools and pinch points: cut away from the hand.".to_owned()],
        Stage::Jacket => vec![format!(
            "Knife: cut away from the hand, never through to the {shield}."
        )],
        Stage::Bridge | Stage::Shield => vec![format!(
            "An open {shield} can carry voltage, also on a cable that is isolated: it is bridged before it is cut and stays bridged."
        )],
        Stage::Screen => vec![format!(
            "Knife: no deeper than the depth on the front page, never into the insulation. {} left on the insulation carries current: none may stay.",
            capital(Layer::InsulationScreen.name(words))
        )],
        Stage::Insulation => vec!["Knife or stripper: never into the strands.".to_owned()],
        Stage::Connect => connect(legs),
        Stage::Clean => vec![
            "Solvent: no flame or spark, ventilate, gloves; let it dry. The paper strip is off before the last wipe.".to_owned(),
        ],
        Stage::SlideOn | Stage::Place if legs.iter().any(|leg| is_expanded(leg)) => {
            let mut said = vec![
                "An expanded body or seal holds stored energy: fingers out of the holdout, turns only as its instructions say.".to_owned(),
            ];
            if stage == Stage::Place {
                said.push("A body can walk along the cable while the holdout comes out and after: hold it to its mark, and measure both ends to their marks again before anything covers them.".to_owned());
            }
            said
        }
        Stage::Place => vec![
            "Rubber that was pushed on can creep back: measure the body to its marks again before anything covers them.".to_owned(),
        ],
        Stage::Mate => vec![
            "Never part or mate a separable joint under voltage or load unless its rating says so. Ports that stay open meanwhile are closed as the instructions of the bus say.".to_owned(),
        ],
        Stage::Bond => vec!["Sharp edges and springs. The bridge stays on.".to_owned()],
        Stage::Seal => vec![
            "Where the instructions ask for a torch: gas tested, no solvent vapour, heat kept off the body.".to_owned(),
        ],
        Stage::HandBack => vec![
            thrust(legs),
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

/// Bending and thrust near the bodies.
fn thrust(legs: &[&LegInputs<'_>]) -> String {
    let keep_off = legs
        .iter()
        .filter_map(|leg| leg.chosen.body?.bend_keep_off)
        .max();
    let keep_off = keep_off.map_or("as far as their instructions say".to_owned(), |length| {
        format!("{} or more, as their instructions say", said(length))
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

/// Whether anything of a leg stands expanded on a holdout.
fn is_expanded(leg: &LegInputs<'_>) -> bool {
    let on_holdout = |may_move: Option<&MayMove>| may_move == Some(&MayMove::BeforeHoldoutIsOut);
    let body = |body: &Body| {
        on_holdout(body.may_move.as_ref())
            || body
                .head
                .shelf
                .as_ref()
                .is_some_and(|s| s.from == "expanded")
    };
    leg.chosen.body.is_some_and(body)
        || leg
            .chosen
            .seal
            .is_some_and(|seal| on_holdout(seal.may_move.as_ref()))
}

/// Text with its first letter large.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters
        .next()
        .map(|first| first.to_uppercase().chain(letters).collect())
        .unwrap_or_default()
}
