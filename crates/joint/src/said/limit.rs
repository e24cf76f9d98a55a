//! Messages about a value beside its limit.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{Read, Said, Word};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Messages about a value beside its limit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LimitSaid {
    /// The error is larger than the margin.
    WithinError {
        what: Said,
        margin: Read,
        error: Read,
    },
    MayNotRule {
        word: Word,
    },
    Below {
        what: Said,
        is: Read,
        by: Read,
        least: Read,
    },
    Above {
        what: Said,
        is: Read,
        by: Read,
        greatest: Read,
    },
    /// The same for a computed number.
    AmountWithinError {
        what: Said,
        is_inside: bool,
        margin: f64,
        error: f64,
        unit: String,
    },
    AmountBelow {
        what: Said,
        value: f64,
        by: f64,
        least: f64,
        unit: String,
    },
    AmountAbove {
        what: Said,
        value: f64,
        by: f64,
        greatest: f64,
        unit: String,
    },
}
