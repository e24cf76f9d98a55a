//! Messages about fields that a check compares.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{Quantity, Subject};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Messages about fields that a check compares.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum StressSaid {
    /// The name of a field.
    Quantity {
        quantity: Quantity,
    },
    /// A field at a voltage: in service, or at a trial of a frequency.
    AtWorst {
        subject: Subject,
        quantity: Quantity,
        voltage_kv: f64,
        trial_hz: Option<f64>,
    },
    NoSuchPart,
    NotSettled,
    AllowedNotSettled,
    ImpulseThroughConducting,
    AtOwnWall,
    IsOneOfThose,
    EngineerDecides,
    TaperedPlug,
}
