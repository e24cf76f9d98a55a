//! Messages about the edge of the insulation screen under the body.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::Subject;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// End of the stretch in which the body controls the stress.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ControlEnd {
    /// Inner end; the edge lies past it.
    Inner,
    /// Outer end; the edge lies short of it.
    Outer,
}

/// Messages about the edge of the insulation screen under the body.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum EdgeSaid {
    InControl { end: ControlEnd },
    InControlAtWorst { subject: Subject, end: ControlEnd },
    MayLieOutsideControl,
}
