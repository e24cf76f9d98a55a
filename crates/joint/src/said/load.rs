//! Messages about the load and the emergency of a joint, and about its bonding lead in a short circuit.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::Said;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Messages about a joint under load.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LoadSaid {
    TooHotAtLoad,
    GreatestAtLoadNotSaid {
        row: String,
    },
    AskGreatestAtLoad {
        body: String,
    },
    InsideAtLoad {
        body: String,
        load_a: f64,
    },
    MoreThanCable {
        by_k: f64,
        shares: Vec<Share>,
    },
    /// Source of a share of the temperature difference.
    ShareFrom(ShareFrom),
    TooHotInEmergency,
    GreatestInEmergencyNotSaid {
        row: String,
    },
    AskGreatestInEmergency {
        body: String,
    },
    InsideInEmergency {
        body: String,
        time_h: f64,
        load_a: f64,
    },
    PassesBefore,
    GetsThereIn {
        time_h: f64,
    },
    LeadTooSmall,
    LeadGreatestNotStated,
    AskLeadGreatest,
    PaperOfLead,
}

/// One share of the difference between a joint and its cable, K.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Share {
    /// Source of the heat.
    pub from: ShareFrom,
    /// Contribution, K.
    pub k: f64,
}

/// Sources of the difference between a joint and its cable.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ShareFrom {
    Connector { leg: String },
    Bus,
    OtherLeg { leg: String },
    OwnCurrent { leg: String },
    Surroundings,
    ConnectorOf { leg: String },
}

impl From<&ShareFrom> for Said {
    fn from(from: &ShareFrom) -> Said {
        LoadSaid::ShareFrom(from.clone()).into()
    }
}
