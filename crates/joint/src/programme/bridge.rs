//! Bridge: when the bridge of the metallic shield comes off, and on whose word.
//!
//! Why its own file: which order is allowed is the owner's and the instructions' to say; without a word the step asks, and the bridge stays on.
//!
//! Invariants: nothing here says that a bridge may come off; it repeats who said when.

use super::COMMON_PRACTICE;
use super::line::{Line, paper};
use crate::catalogue::BridgeMoment;
use crate::checks::Inputs;

/// What is said of the bridge.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum BridgeWord {
    /// When it comes off, and all who say so.
    Said(BridgeMoment, Vec<String>),
    /// Nobody says, or not all say the same: the question for whom to call.
    Ask(String),
}

/// What job and papers say together.
pub(super) fn word(inputs: &Inputs<'_>) -> BridgeWord {
    let job = &inputs.order.job;
    let owner = job.bridge_off.iter().map(|b| (b.when, b.source.clone()));
    let parts = inputs.legs.iter().filter_map(|leg| {
        let part = leg.chosen.shield_part?;
        Some((part.bridge_off?, paper(&part.head)))
    });
    let mut said: Vec<(BridgeMoment, String)> = owner.chain(parts).collect();
    said.sort();
    said.dedup();
    let Some((first, _)) = said.first() else {
        return BridgeWord::Ask(
            "nobody's word says whether the bridge comes off before or after the permanent bond is measured"
                .to_owned(),
        );
    };
    if said.iter().all(|(when, _)| when == first) {
        return BridgeWord::Said(*first, said.iter().map(|(_, who)| who.clone()).collect());
    }
    let all: Vec<String> = said
        .iter()
        .map(|(when, who)| format!("{who}: {}", when.words()))
        .collect();
    BridgeWord::Ask(format!(
        "not all say the same of when the bridge comes off ({})",
        all.join("; ")
    ))
}

/// Whether all who say so want the bridge off before the permanent bond is measured.
pub(super) fn is_off_before_the_reading(inputs: &Inputs<'_>) -> bool {
    matches!(
        word(inputs),
        BridgeWord::Said(BridgeMoment::BeforeBondIsMeasured, _)
    )
}

/// What the step that takes it off says.
pub(super) fn line(inputs: &Inputs<'_>) -> Line {
    match word(inputs) {
        BridgeWord::Said(when, who) => Line {
            say: format!(
                "The bridge comes off {}, when the person named for it says so on the spot; it is not left under the seal.",
                when.words()
            ),
            source: who.join("; "),
        },
        BridgeWord::Ask(why) => Line {
            say: format!(
                "ASK {}: {why}. It stays on until that is said, and no seal closes over it.",
                call(inputs)
            ),
            source: COMMON_PRACTICE.to_owned(),
        },
    }
}

/// What about the bridge a person must settle.
pub(super) fn unsettled(inputs: &Inputs<'_>) -> Option<String> {
    match word(inputs) {
        BridgeWord::Said(..) => None,
        BridgeWord::Ask(why) => Some(format!(
            "Ask {} before any seal closes: {why}; the bridge stays on until that is said.",
            call(inputs)
        )),
    }
}

fn call(inputs: &Inputs<'_>) -> String {
    let (name, number) = &inputs.order.job.stop_and_call;
    format!("{name}, {number}")
}
