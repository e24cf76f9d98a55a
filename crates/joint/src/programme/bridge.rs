//! Bridge: when the bridge of the metallic shield comes off, and on whose word.
//!
//! Why its own file: the owner and the instructions decide the order; where neither states it, the step asks and the bridge stays on.
//!
//! Invariants: no line of this file says that a bridge may come off; it repeats who stated the moment.

use super::line::{Line, common, paper};
use crate::catalogue::BridgeMoment;
use crate::checks::Inputs;
use crate::said::{Said, StepSaid, UnsettledSaid};

/// Statements about the bridge.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum BridgeWord {
    /// Moment at which the bridge comes off, and all who state it.
    Said(BridgeMoment, Vec<Said>),
    /// Nobody states the moment, or the statements differ: the question for the person to call.
    Ask(UnsettledSaid),
}

/// Joint statement of job and papers.
pub(super) fn word(inputs: &Inputs<'_>) -> BridgeWord {
    let job = &inputs.order.job;
    let owner = job.bridge_off.iter();
    let owner = owner.map(|b| (b.when, b.source.clone(), Said::from(&b.source)));
    let parts = inputs.legs.iter().filter_map(|leg| {
        let part = leg.chosen.shield_part?;
        let head = &part.head;
        let name = format!(
            "{} revision {}",
            head.instructions.paper, head.instructions.revision
        );
        Some((part.bridge_off?, name, paper(head)))
    });
    let mut said: Vec<(BridgeMoment, String, Said)> = owner.chain(parts).collect();
    // The result does not depend on the order of rows.
    said.sort_by(|a, b| (a.0, &a.1).cmp(&(b.0, &b.1)));
    said.dedup();
    let Some((first, ..)) = said.first().cloned() else {
        return BridgeWord::Ask(UnsettledSaid::BridgeNobodySays);
    };
    let words = said.into_iter().map(|(when, _, who)| (who, when));
    let words: Vec<(Said, BridgeMoment)> = words.collect();
    if words.iter().all(|(_, when)| *when == first) {
        return BridgeWord::Said(first, words.into_iter().map(|(who, _)| who).collect());
    }
    BridgeWord::Ask(UnsettledSaid::BridgeNotAllSame { words })
}

/// Whether all statements put the removal of the bridge before the measurement of the permanent bond.
pub(super) fn is_off_before_the_reading(inputs: &Inputs<'_>) -> bool {
    matches!(
        word(inputs),
        BridgeWord::Said(BridgeMoment::BeforeBondIsMeasured, _)
    )
}

/// Line of the step that removes the bridge.
pub(super) fn line(inputs: &Inputs<'_>) -> Line {
    match word(inputs) {
        BridgeWord::Said(when, who) => Line {
            say: StepSaid::BridgeComesOff { when }.into(),
            source: Said::all(who),
        },
        BridgeWord::Ask(why) => {
            let (name, number) = inputs.order.job.stop_and_call.clone();
            let why = why.into();
            common(StepSaid::BridgeAsk { name, number, why })
        }
    }
}

/// Question about the bridge that a person must settle.
pub(super) fn unsettled(inputs: &Inputs<'_>) -> Option<UnsettledSaid> {
    match word(inputs) {
        BridgeWord::Said(..) => None,
        BridgeWord::Ask(why) => {
            let (name, number) = inputs.order.job.stop_and_call.clone();
            let why = why.into();
            Some(UnsettledSaid::AskOfBridge { name, number, why })
        }
    }
}
