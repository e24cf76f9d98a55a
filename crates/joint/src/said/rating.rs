//! Messages about the solved temperatures of a joint and of a run of cable.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{Said, Share};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Messages about solved temperatures.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum RatingSaid {
    Leg(LegRating),
    RunsAway { past_degc: f64 },
    LimitOfBody { body: String, limit_degc: f64 },
    LimitOfCable { limit_degc: f64 },
    BodyLeftOpen,
    FromMemory { key: String },
    // A run of cable.
    ShieldOfRun { said: Said },
    WorstOfDays { source: String },
    NotJudgedAndClosed { why: Said, word: Said },
}

/// Messages about one leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LegRating {
    RunsAwayAt {
        load_a: f64,
        past_degc: f64,
    },
    AgainstCable(AgainstCable),
    WorseContact(WorseContact),
    ToLimit(ToLimit),
    ByItself {
        limit_degc: f64,
        alone: AloneSaid,
        fed: Option<FedSaid>,
    },
    Emergency {
        load_a: f64,
        from_a: f64,
        time_h: f64,
        end: EmergencyEnd,
        limit: Option<EmergencyLimit>,
    },
    EmergencyNotComputed {
        why: Said,
    },
    Ageing {
        ratio: f64,
        reference_degc: f64,
        emergency_h: Option<f64>,
        activation_kj_per_mol: f64,
        from: String,
    },
}

/// A joint beside its cable without a joint.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct AgainstCable {
    pub load_a: f64,
    pub joint_degc: f64,
    pub joint_at_mm: f64,
    pub by_k: f64,
    pub shares: Vec<Share>,
    pub rubber_degc: f64,
    pub cable_degc: f64,
}

/// A joint with one connector of twice its resistance.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct WorseContact {
    pub connector_uohm: f64,
    pub equal_uohm: f64,
    pub load_a: f64,
    /// Rise by this leg's own connector, K; `None` if the joint would warm without end.
    pub own_k: Option<f64>,
    pub worst: Option<WorstConnector>,
}

/// Connector that would make a joint hottest.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct WorstConnector {
    pub leg: String,
    pub k: f64,
}

/// A leg with its load.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LegLoad {
    pub leg: String,
    pub load_a: f64,
}

/// Load at which a body reaches the limit of its paper.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ToLimit {
    NotStated {
        body: String,
    },
    NotFound {
        body: String,
        limit_degc: f64,
        most_a: f64,
    },
    At {
        body: String,
        limit_degc: f64,
        load_a: f64,
        /// Other legs, with their loads at the same time.
        others: Vec<LegLoad>,
        /// A leg whose body reaches its own limit sooner, with the load of this leg at that time.
        sooner: Option<LegLoad>,
    },
}

/// A leg whose load rises alone, with the others at the job's load.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum AloneSaid {
    At {
        load_a: f64,
        /// Legs above the limits of their own bodies at that load.
        passed: Vec<String>,
    },
    CannotCarryMore {
        most_a: f64,
    },
    NeverThere {
        most_a: f64,
    },
}

/// A leg that one other leg feeds.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct FedSaid {
    pub by: String,
    pub load_a: f64,
    pub its_load_a: f64,
    /// Legs above the limits of their own bodies at that load.
    pub passed: Vec<String>,
}

/// State at the end of an emergency.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum EmergencyEnd {
    At { joint_degc: f64 },
    Past { past_degc: f64 },
}

/// Time at which the limit of an emergency is reached.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum EmergencyLimit {
    PassedBefore { limit_degc: f64 },
    After { limit_degc: f64, time_s: f64 },
    NotWithin { limit_degc: f64, time_h: f64 },
}

impl From<ToLimit> for Said {
    fn from(said: ToLimit) -> Said {
        LegRating::ToLimit(said).into()
    }
}

impl From<LegRating> for Said {
    fn from(said: LegRating) -> Said {
        RatingSaid::Leg(said).into()
    }
}
