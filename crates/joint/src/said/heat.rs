//! What is said of the temperatures that the load brings.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::Of;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What is said of the temperatures that the load brings.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum HeatSaid {
    RestOnMemory { keys: Vec<String> },
    AskToConfirm { keys: Vec<String> },
    PapersStandFor { unread: Vec<Of> },
    PapersForUnread { unread: Vec<Of> },
    AskToRead { unread: Vec<Of> },
}
