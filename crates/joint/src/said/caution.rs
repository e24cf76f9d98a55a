//! Dangers of a step.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{PartKind, Read};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Dangers of a step.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum CautionSaid {
    VoltageAndGas,
    SharpTools,
    JacketKnife,
    OpenShield,
    ScreenKnife,
    InsulationKnife,
    Solvent,
    NeverUnderVoltage,
    BondEdges,
    BridgeOff,
    HighVoltage,
    StoredEnergy { parts: Vec<PartKind> },
    BodyWalks,
    Torch,
    CreepsBack,
    TorchIfAsked,
    Thrust { keep_off: Option<Read> },
    Press,
    BoltHeads,
    SlippingKey,
}
