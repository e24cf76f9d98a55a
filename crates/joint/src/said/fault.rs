//! Messages about short circuits.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{Said, Subject};
use crate::end::EndId;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Short circuit: current, time and number of shots.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Shots {
    /// Number of shots, without cooling between them.
    pub n_shots: i64,
    /// Current, A rms.
    pub current_a: f64,
    /// Time of each shot, s.
    pub each_s: f64,
}

/// Metal of a leg that a short circuit heats.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum HeatedMetal {
    /// Conductor.
    Conductor,
    /// Metallic shield.
    MetallicShield,
    /// Lead that bonds it.
    BondingLead,
}

/// Part of a leg that carries a short circuit.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Carrier {
    /// Conductor.
    Conductor,
    /// Metallic shield.
    MetallicShield,
    /// Connector, by its row.
    Connector(String),
    /// Part that carries or bonds the shield, by its row.
    ShieldPart(String),
    /// Lead that bonds it.
    BondingLead,
}

/// Measure of a shield that is impossible.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ShieldMeasure {
    /// Overlap of a tape along the cable.
    Overlap,
    /// Thickness of a tape.
    Thickness,
    /// Advance of a tape in one turn.
    WidthLessLap,
    /// Wires or straps side by side.
    SideBySide,
}

/// Messages about short circuits.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum FaultSaid {
    Is(Shots),
    OfWhat(Carrier),
    // Facts that the job does not state.
    ClearingTimeNotStated,
    ShorterThanClearing {
        longest_s: f64,
    },
    NotStated {
        fields: Vec<String>,
    },
    OfNothing {
        field: String,
    },
    StartNotStated,
    StartColderThanPlace {
        start_degc: f64,
        place_degc: f64,
    },
    // Construction of a shield.
    NoTape,
    TapeWidthNotStated,
    CannotBe {
        measure: ShieldMeasure,
        mm: f64,
        most_mm: f64,
    },
    NothingCounted,
    // Facts that are not known about the weakest part.
    LeadLimitNotStated,
    BodyLeftOpen,
    RowSaysNoConductorHeat {
        row: String,
    },
    ShieldMetalOrLimitNotStated,
    NoHeating {
        from_degc: f64,
        to_degc: f64,
        time_s: f64,
    },
    // Groups of their own.
    Heat(FaultHeatSaid),
    OfShield(ShieldFaultSaid),
    OfContact(ContactSaid),
}

/// Messages about metal that a short circuit heats, and about the current that a part withstands.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum FaultHeatSaid {
    Heats {
        subject: Subject,
        what: HeatedMetal,
        fault: Shots,
        from_degc: f64,
    },
    HeatsUpTo {
        heats: Said,
        hot_degc: f64,
        it_melts: bool,
    },
    HeatsToMelting {
        heats: Said,
    },
    HeatsBetween {
        cool_degc: f64,
        hot_degc: f64,
        it_melts: bool,
        greatest_degc: f64,
    },
    AskWhatShieldCarries,
    RowSaysNoFault {
        row: String,
    },
    AskWhatFlowsThrough {
        part: String,
    },
    CurrentThrough {
        subject: Subject,
        part: String,
    },
    SquareThrough {
        subject: Subject,
        part: String,
        fault: Shots,
    },
}

/// Messages about a short circuit in a leg's shield.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ShieldFaultSaid {
    ShieldDoesNotCarry,
    ShieldPartDoesNotCarry,
    PapersNotStated { fields: Vec<String> },
    AskMetalAndLimit,
    JobStatesPapers,
    TapeNotReadUnder,
    NotCounted { ends: Vec<EndId>, of_papers: u32 },
    AskCount { ends: Vec<EndId> },
}

/// Messages about the connections of a shield.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ContactSaid {
    NotRead {
        part: String,
        greatest_ohm: f64,
    },
    AskRead {
        part: String,
        subject: Subject,
    },
    Read {
        subject: Subject,
        at: String,
        ohm: f64,
    },
    Makes {
        fault: Shots,
        heat_kj: f64,
    },
    HeatNotKnown,
    NoPart,
    RowSaysNoGreatest {
        row: String,
    },
    AskGreatest {
        part: String,
    },
    MakesTooMuch,
}

impl From<FaultHeatSaid> for Said {
    fn from(said: FaultHeatSaid) -> Said {
        FaultSaid::Heat(said).into()
    }
}

impl From<ShieldFaultSaid> for Said {
    fn from(said: ShieldFaultSaid) -> Said {
        FaultSaid::OfShield(said).into()
    }
}

impl From<ContactSaid> for Said {
    fn from(said: ContactSaid) -> Said {
        FaultSaid::OfContact(said).into()
    }
}

impl From<Carrier> for Said {
    fn from(carrier: Carrier) -> Said {
        FaultSaid::OfWhat(carrier).into()
    }
}

impl From<Shots> for Said {
    fn from(shots: Shots) -> Said {
        FaultSaid::Is(shots).into()
    }
}
