//! State: whether a document of something computed holds numbers.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Whether something was computed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum StateDoc {
    /// Computed.
    Computed,
    /// Not computed, for want of facts; the reason names them.
    NotKnown,
    /// Not computed, though everything is known; the reason says what stands against it.
    NotComputed,
    /// A part past its date: nothing is computed of it.
    PastItsDate,
    /// A part that does not touch what it covers.
    Loose,
}

impl StateDoc {
    /// The same in words.
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
