//! Messages about water: in the strands, under the shield, along parts that pass under a seal.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::Said;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Tested place of an end.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum TestedPlace {
    /// Strands of the conductor.
    Strands,
    /// Space under the shield.
    UnderShield,
}

/// Messages about water.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum WaterSaid {
    Moisture(MoistureSaid),
    Wick(WickSaid),
}

/// Messages about tests for moisture.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum MoistureSaid {
    Wet,
    Dry,
    WetIsNotJoined,
    FoundWet {
        place: TestedPlace,
        how: String,
        source: String,
    },
    StopAndCall,
    FoundDryBefore {
        place: TestedPlace,
        tested: String,
        work: String,
    },
    TestAgain,
    Test {
        how: String,
        source: String,
    },
    ShieldNotTested,
    TestUnderShield,
    StrandsNotTested {
        blocked: Option<bool>,
        far_end_in_water: Option<bool>,
    },
    TestStrands,
}

/// Messages about parts that pass out under a seal.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum WickSaid {
    PassesNotSaid { part: String },
    AskPasses { part: String },
    NothingByItsRow { part: String },
    AskWhereLeadComesOut { part: String },
    NothingPasses,
    BlockedWhereSomethingDoes,
    Blocked,
    NotBlocked,
    BlockedNotSaid { part: String },
    AskBlocked { part: String },
    PassesUnblocked { part: String },
    TakesLead,
    TakesNoLead,
    TakesLeadNotSaid { seal: String },
    AskTakesLead { seal: String },
    LetsNothingOut { part: String, seal: String },
    UseBlocked,
}

impl From<MoistureSaid> for Said {
    fn from(said: MoistureSaid) -> Said {
        WaterSaid::Moisture(said).into()
    }
}

impl From<WickSaid> for Said {
    fn from(said: WickSaid) -> Said {
        WaterSaid::Wick(said).into()
    }
}
