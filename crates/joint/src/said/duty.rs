//! Messages about a leg in service: heat and short circuits, fields and discharge.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{Said, Subject};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Messages about a leg in service.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum DutySaid {
    ShortCircuit(ShortCircuitSaid),
    Gap(GapSaid),
}

/// Messages about the heat of a short circuit in conductor, connector and connections.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ShortCircuitSaid {
    FaultGreatestNotSaid { row: String },
    AskFaultGreatest { body: String },
    ConductorTooHot,
    ConnectorNotGiven,
}

/// Level against which a gap is compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum GapLevel {
    /// Inception at the highest voltage in service.
    InceptionInService,
    /// Extinction at the highest voltage in service.
    ExtinctionInService,
    /// Inception while an earth fault is cleared.
    InceptionInFault,
    /// Extinction while an earth fault is cleared.
    ExtinctionInFault,
}

/// Messages about gaps in the field and about discharge in them.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum GapSaid {
    /// The gap before the screen edge.
    Edge,
    EdgeFilled,
    /// The film along a tapered plug.
    Film,
    FilmFilled,
    EngineerDecides,
    EngineerDecidesField,
    AtTrial {
        multiple: f64,
        level_kv: f64,
        is_rectangular: bool,
        from: String,
    },
    TellTrial,
    NoneDischarges {
        extinction_ratio: f64,
    },
    Level(GapLevel),
    /// Voltage of a gap, compared with a level.
    Against {
        subject: Subject,
        gap: Said,
        level: GapLevel,
        kv: f64,
    },
    ByCurves {
        read: f64,
        lower: f64,
    },
    BodyOpen,
    AtOwnWall,
    ServiceOverDischarge {
        subject: Subject,
        is_filled: bool,
    },
}

impl From<ShortCircuitSaid> for Said {
    fn from(said: ShortCircuitSaid) -> Said {
        DutySaid::ShortCircuit(said).into()
    }
}

impl From<GapSaid> for Said {
    fn from(said: GapSaid) -> Said {
        DutySaid::Gap(said).into()
    }
}
