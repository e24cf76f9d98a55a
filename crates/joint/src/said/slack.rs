//! Messages about the cable that is left: slack for spare cuts, and its straight length.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{PartKind, Read, Subject};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Messages about the cable that is left.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SlackSaid {
    NotMeasured,
    SpareCutsNotSaid,
    JacketEdgeOpen,
    For { subject: Subject, times: i64 },
    SpareCuts { times: i64, each: Read },
    CallBeforeCutting,
    StraightNotMeasured,
    StraightNotSaid { row: String },
    EndOpen { part: PartKind },
    Straight { subject: Subject },
    StraightenOrCall,
}
