//! Messages about cable and joint under load.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::Said;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Place of the hottest conductor.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Hottest {
    /// In the joint.
    InJoint,
    /// In the cable beyond it.
    InCable,
}

/// Duration of a current.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum When {
    /// Without end.
    AllTheTime,
    /// To the end of the emergency.
    EndOfEmergency,
}

/// Messages about cable and joint under load.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum WarmingSaid {
    JobDoesNotState {
        field: String,
    },
    AskGreatest,
    Conductor {
        hottest: Hottest,
        load_a: f64,
        when: When,
    },
    HotterThanStated,
    // Shield of a run of cable.
    ShieldStated {
        shield_load_a: f64,
    },
    FlowsRoundAtWorst,
    // A run of cable without a joint.
    RunNotKnown,
    ConductorIn {
        load_a: f64,
        stretch: Said,
    },
    WithoutEnd,
    AtMost {
        degc: f64,
    },
    WarmsWithoutEnd,
    RunsAway {
        past_degc: f64,
    },
    CableHotterThanStated,
    RouteNotStated {
        leg: String,
    },
    StretchHasNoLength {
        what: String,
    },
    StretchesAreNotTheRoute {
        leg: String,
        stretches_m: f64,
        route_m: f64,
        apart_mm: f64,
    },
}

impl WarmingSaid {
    /// Returns the message that the job does not state a field.
    pub(crate) fn not_stated(field: &str) -> WarmingSaid {
        let field = field.to_owned();
        WarmingSaid::JobDoesNotState { field }
    }
}
