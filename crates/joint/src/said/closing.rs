//! Messages about the words of named engineers.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::Subject;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Messages about the words of named engineers.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ClosingSaid {
    Word {
        by: String,
        why: String,
        date: String,
        until: String,
    },
    ClosesNothing {
        by: String,
        date: String,
        check: String,
        subject: Subject,
    },
}
