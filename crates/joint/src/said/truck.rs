//! Things on the truck.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::Said;
use crate::cable::{Conductor, Layer};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Things on the truck: amounts, tools and their uses.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum TruckSaid {
    TrialOn {
        conductor: Conductor,
        end: Option<String>,
    },
    Phase {
        phase: u8,
    },
    Port {
        port: i64,
        phase: u8,
    },
    Stated {
        amount: String,
        n_ends: usize,
    },
    NoAmount,
    NotMeasured {
        leg: String,
        phase: u8,
        over: Layer,
    },
    Tape {
        metres: f64,
        n_ends: usize,
        row_says: Option<String>,
    },
    Press {
        die: Option<String>,
    },
    BoltDriver,
    ScrewDriver,
    Rule,
    Calliper,
    SawGuide,
    KnifeStop,
    Bridge,
    Ohmmeter,
    Wipes,
    KnifeByPapers,
    KnifeByReadings,
    KnifeNothing {
        whose: Said,
    },
    KnifeUnknown,
}
