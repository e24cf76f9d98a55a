//! State: whether something was computed.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Whether something was computed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum StateDoc {
    /// Computed.
    Computed,
    /// Not computed, because facts are missing; the reason names them.
    NotKnown,
    /// Not computed, though everything is known; the reason says what prevents it.
    NotComputed,
    /// Part past its date: nothing is computed for it.
    PastItsDate,
    /// Part that does not touch the surface below it.
    Loose,
}

impl StateDoc {
    /// Words for it.
    pub const fn words(self) -> &'static str {
        match self {
            StateDoc::Computed => "computed",
            StateDoc::NotKnown => "not known",
            StateDoc::NotComputed => "not computed",
            StateDoc::PastItsDate => "past its date",
            StateDoc::Loose => "loose",
        }
    }
}
