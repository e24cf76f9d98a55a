//! What is said of how hard a part sits.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{Said, Word};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What is said of how hard a part sits.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PressureSaid {
    AskedButNotSaid { what: Said, kpa: f64, word: Word },
    LeastAskedButNotSaid { word: Word },
}
