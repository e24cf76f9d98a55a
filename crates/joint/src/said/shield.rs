//! Messages about shields along the cable: resistance, circulating current, voltage, readings.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{Carrier, Said, Subject};
use crate::end::EndId;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Messages about shields along the cable.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ShieldSaid {
    Along(AlongSaid),
    Bonding(BondingSaid),
    Reading(ReadingSaid),
    Voltage(VoltageSaid),
    Line(ShieldLine),
    Lacks(ShieldLacks),
    Ask(ShieldAsk),
}

/// Statements of a plan about a shield beyond the joint.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ShieldLine {
    Resistance {
        least_ohm_per_km: f64,
        greatest_ohm_per_km: f64,
        between: Said,
        on: Said,
    },
    TapeArea {
        has_wires: bool,
        standard_mm2: (f64, f64),
        computed_mm2: (f64, f64),
    },
    InSteadyLoad {
        why: Said,
    },
    NoVoltage {
        why: Said,
    },
    Contact {
        end: EndId,
        at: String,
        milli_ohm: f64,
        shots: Said,
        heat_kj: f64,
    },
    Weakest {
        what: Carrier,
        times_ratio: f64,
        not_known: Vec<Carrier>,
    },
    WeakestNotKnown {
        not_known: Vec<Carrier>,
    },
    Current(ShieldCurrent),
}

/// Messages about currents and voltages along a shield.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ShieldCurrent {
    Stated {
        shield_a: f64,
        loss_w_per_m: f64,
        shield_degc: f64,
    },
    FlowsRound {
        load_a: f64,
        round_a: (f64, f64),
        loss_w_per_m: f64,
        shield_degc: (f64, f64),
    },
    StandsOpen {
        load_a: f64,
        volts_v: f64,
        length_m: f64,
    },
    StandsInFault {
        fault_ka: f64,
        volts_v: f64,
    },
    FaultToEarth,
    /// Assumptions, limits, and statements that are never made.
    Never,
}

/// Fields that the job does not state.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ShieldLacks {
    Load,
    Hottest,
    Fault,
    FaultKind,
}

/// Questions.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ShieldAsk {
    Load,
    Hottest,
    Fault,
    FaultKind,
}

impl From<ShieldLine> for Said {
    fn from(said: ShieldLine) -> Said {
        ShieldSaid::Line(said).into()
    }
}

impl From<ShieldCurrent> for Said {
    fn from(said: ShieldCurrent) -> Said {
        ShieldLine::Current(said).into()
    }
}

impl From<ShieldLacks> for Said {
    fn from(said: ShieldLacks) -> Said {
        ShieldSaid::Lacks(said).into()
    }
}

impl From<ShieldAsk> for Said {
    fn from(said: ShieldAsk) -> Said {
        ShieldSaid::Ask(said).into()
    }
}

/// Messages about the resistance of a shield along its cable, and about the layer under the shield.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum AlongSaid {
    ShieldOf {
        leg: String,
    },
    UnderAsRead {
        least_mm: f64,
        greatest_mm: f64,
    },
    UnderByPapers,
    DiameterOf {
        leg: String,
    },
    AskDiameters {
        leg: String,
    },
    MetalNotStated {
        leg: String,
    },
    AskMetal {
        leg: String,
    },
    ResistanceOf {
        leg: String,
    },
    AskHowMade {
        leg: String,
    },
    StraightWires,
    WiresWithLay {
        lay_mm: f64,
    },
    WiresBesideTape {
        lay_mm: Option<f64>,
        turned_ratio: f64,
    },
    CorrugatedTape,
    LappedTape {
        turned_ratio: f64,
    },
    TapeWidthNotStated {
        leg: String,
    },
    AskTapeWidth {
        leg: String,
    },
}

/// Messages about the bonding of a shield, and about the formation of the three cables of a run.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum BondingSaid {
    OpenAtJoint {
        leg: String,
    },
    OpenAtFarEnd {
        leg: String,
    },
    FarEndNotStated {
        leg: String,
    },
    AskFarEnd {
        leg: String,
    },
    LinkNotStated {
        leg: String,
    },
    AskLink {
        leg: String,
    },
    LinkAndFarEndNotStated {
        leg: String,
    },
    BondedAtBothEnds {
        leg: String,
    },
    BondedAtNeitherEnd {
        leg: String,
    },
    AskWhereEarthed {
        leg: String,
    },
    RunLengthNotStated {
        leg: String,
    },
    AskRunLength {
        leg: String,
    },
    PlaceNotStated {
        leg: String,
        fields: Vec<String>,
    },
    AskFormation {
        leg: String,
    },
    AskSpacing {
        leg: String,
    },
    AxesTooNear {
        leg: String,
        spacing_mm: f64,
        shield_mm: f64,
    },
}

/// Messages about a resistance read along a shield.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ReadingSaid {
    Ask(ReadingAsk),
    EndsWereBonded,
    TwoWires,
    TemperatureOrLengthNotStated,
    LeadsHaveAsMuch,
    OwnerLimitsUnread,
    ResistanceAt20 {
        subject: Subject,
    },
    /// Reading, and the resistance expected there.
    Read {
        read_ohm: f64,
        by: String,
        date: String,
        least_ohm: f64,
        greatest_ohm: f64,
        length_m: f64,
        degc: f64,
        of: Said,
    },
    Above,
    Below,
    AsExpected,
    TooMuch,
}

/// Questions about a resistance along a shield.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ReadingAsk {
    EndsOpen,
    Leads,
    TemperatureAndLength,
    FourWires,
    Reading { subject: Subject },
    WhyAbove,
    WhyBelow,
    Greatest,
}

/// Messages about the voltage along a shield that is open at one end.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum VoltageSaid {
    NobodyLimits {
        volts: f64,
        length_m: f64,
        load_a: f64,
    },
    AskWhatMayStand,
    AtOpenEnd {
        subject: Subject,
        length_m: f64,
        load_a: f64,
    },
    TooMuch,
}

impl From<AlongSaid> for Said {
    fn from(said: AlongSaid) -> Said {
        ShieldSaid::Along(said).into()
    }
}

impl From<BondingSaid> for Said {
    fn from(said: BondingSaid) -> Said {
        ShieldSaid::Bonding(said).into()
    }
}

impl From<ReadingSaid> for Said {
    fn from(said: ReadingSaid) -> Said {
        ShieldSaid::Reading(said).into()
    }
}

impl From<ReadingAsk> for Said {
    fn from(said: ReadingAsk) -> Said {
        ReadingSaid::Ask(said).into()
    }
}

impl From<VoltageSaid> for Said {
    fn from(said: VoltageSaid) -> Said {
        ShieldSaid::Voltage(said).into()
    }
}
