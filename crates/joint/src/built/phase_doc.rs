//! Phase doc: what all checks say of the ends as built, as a page and other programs read it.

use super::ends::{Change, PhaseAsBuilt};
use super::finding::FindingKind;
use crate::plan::{RulingDoc, ruling_doc};
use crate::said::{BuiltSaid, Wording};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A question whose answer became worse by readings as built.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ChangeDoc {
    /// Effect: out of window, cannot be told, or only less room than the plan has.
    pub kind: FindingKind,
    /// Ruling of the plan; null if it does not ask the question.
    pub was: Option<RulingDoc>,
    /// Ruling as built.
    pub is: RulingDoc,
}

/// All checks on one phase as built.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PhaseDoc {
    /// Phase.
    pub phase: u8,
    /// Number of rulings as built.
    pub n_rulings: usize,
    /// Number of questions that the plan left open and the readings answered with a pass.
    pub n_settled: usize,
    /// Questions whose answer became worse, worst first.
    pub changes: Vec<ChangeDoc>,
    /// Quantities that were read and that no check computes with.
    pub beside: Vec<String>,
}

pub(super) fn change_doc(change: &Change, wording: &dyn Wording) -> ChangeDoc {
    ChangeDoc {
        kind: change.kind,
        was: change.was.as_ref().map(|was| ruling_doc(was, wording)),
        is: ruling_doc(&change.is, wording),
    }
}

pub(super) fn phase_doc(of: &PhaseAsBuilt, wording: &dyn Wording) -> PhaseDoc {
    let changes = of.changes.iter();
    let beside = of.beside.iter().cloned();
    PhaseDoc {
        phase: of.phase,
        n_rulings: of.n_rulings,
        n_settled: of.n_settled,
        changes: changes.map(|change| change_doc(change, wording)).collect(),
        beside: beside
            .map(|measured| wording.say(&BuiltSaid::Slot { measured }.into()))
            .collect(),
    }
}
