//! Assumptions of computed values, and limits of this version.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::Said;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Assumptions.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum AssumedSaid {
    Field(FieldAssumes),
    Pressure(PressureAssumes),
    Warm(WarmAssumes),
    Run(RunAssumes),
    NotComputed(NotComputed),
}

/// Assumptions of every computed field.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum FieldAssumes {
    Round,
    OneDiameter,
    RubberFollows,
    AwayFromJunction,
    InsideAsStated,
    ScreenAndAdapter,
    NoNick,
}

/// Assumptions of every computed pressure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PressureAssumes {
    RigidCable,
    LongTubes,
    EndsFreeOrHeld,
    OneWarmth,
    AdapterOutside,
}

/// Assumptions of every computed temperature of a joint.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum WarmAssumes {
    OnePhase,
    SurroundingsAsStated,
    ConnectorAtWorst,
    LegsMeet,
    ShieldCurrentGrows,
    StillAir,
}

/// Assumptions of every rating of a run of cable.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum RunAssumes {
    ThreeCables,
    PapersAtWorst,
    SurroundingsAsStated,
    SteadyLoad,
}

/// Limits of this version, whatever is stated.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum NotComputed {
    RisingConductivity,
    Imprint,
    BusFaults,
    WaterPastSeals,
}

/// All of them, in printed order.
macro_rules! all {
    ($($group:ident($assumes:ident): $($one:ident,)*;)*) => {
        $(
            impl $assumes {
                /// All of them, in printed order.
                pub const ALL: &[$assumes] = &[$($assumes::$one,)*];
            }

            impl From<$assumes> for Said {
                fn from(said: $assumes) -> Said {
                    AssumedSaid::$group(said).into()
                }
            }
        )*
    };
}

all! {
    Field(FieldAssumes):
        Round, OneDiameter, RubberFollows, AwayFromJunction, InsideAsStated, ScreenAndAdapter, NoNick,;
    Pressure(PressureAssumes):
        RigidCable, LongTubes, EndsFreeOrHeld, OneWarmth, AdapterOutside,;
    Warm(WarmAssumes):
        OnePhase, SurroundingsAsStated, ConnectorAtWorst, LegsMeet, ShieldCurrentGrows, StillAir,;
    Run(RunAssumes):
        ThreeCables, PapersAtWorst, SurroundingsAsStated, SteadyLoad,;
    NotComputed(NotComputed):
        RisingConductivity, Imprint, BusFaults, WaterPastSeals,;
}
