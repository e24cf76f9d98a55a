//! Messages about a job's kind of joint, its ports and legs, its network and place, and its cables.
#![expect(missing_docs, reason = "the name of a message says what is said")]

use super::{JointKind, Said};
use crate::cable::Layer;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Messages about the kind of joint and the construction of its legs.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum JobKindSaid {
    Head(HeadSaid),
    HeadHint(HeadHint),
    Run(RunSaid),
    RunHint(RunHint),
    Cable(CableSaid),
    CableHint(CableHint),
}

/// Messages about a job's head, network, place, legs and ports.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum HeadSaid {
    KindIsNotHandled {
        kind: String,
    },
    KindIsUnknown {
        kind: String,
    },
    HighestBelowNominal {
        highest_kv: f64,
        nominal_kv: f64,
    },
    NoMediumVoltage {
        field: String,
        kv: f64,
    },
    AmbientReversed {
        least_degc: f64,
        greatest_degc: f64,
    },
    LegsNotTwoToSix {
        n: usize,
    },
    WantsTwoLegs {
        kind: JointKind,
        n: usize,
    },
    WantsThreeLegs {
        kind: JointKind,
        n: usize,
    },
    NoBusButOneNamed {
        kind: JointKind,
    },
    NoBusButBlanks {
        kind: JointKind,
    },
    LegHasNoPort {
        leg: String,
    },
    PortTakenTwice {
        port: i64,
        one: Option<String>,
        other: Option<String>,
    },
}

/// Advice on the head, network, place, legs and ports.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum HeadHint {
    QualifiedPeople,
    PhaseToPhase,
    LookAtVoltage,
    Exchange,
    AddOrTakeLegs,
    ChangeKindOrLegs,
    TakeOutOrSeparable,
    SayItsPort,
    AnotherPort,
}

/// Messages about a run of cable without a joint.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum RunSaid {
    NotOneLeg { n: usize },
    NamesAPart { field: String },
    NothingReads { field: String },
    NotComputedOfARun { field: String },
    OneLoad { field: String },
    NothingToCountFrom,
    OnlyOfARun { field: String },
    HasNoJoint,
}

/// Advice on a run of cable.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum RunHint {
    EachRunItsJob,
    TakeOutOrChangeKind,
    OtherMeans,
    SayUnderDuty,
    NoEmergencyOfARun,
    SayItsLength,
    RateSaysIt,
}

/// Unit of a conductor's size.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SizeUnit {
    Awg,
    Kcmil,
    Mm2,
}

/// Messages about a cable.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum CableSaid {
    GivenTwice {
        layer: Layer,
    },
    LeastAboveGreatest {
        least: String,
        low: String,
        greatest: String,
        high: String,
    },
    OnlyOneGiven {
        one: String,
        other: String,
    },
    NoSuchLevel {
        level: i64,
    },
    ClassWithoutLevel,
    NoWall,
    WallTwice {
        fields: Vec<String>,
    },
    SeveralCores {
        cores: i64,
    },
    Belted,
    InsulatedWith {
        what: String,
    },
    SheathOf {
        metal: String,
    },
    InsulationIs {
        what: String,
    },
    ShieldHasNo {
        kind: String,
        field: String,
        needs: Vec<String>,
    },
    ShieldTakesNo {
        kind: String,
        field: String,
        takes: Vec<String>,
    },
    ExpansionNotAPair,
    OnlyTogether {
        one: String,
        other: String,
    },
    SizeHasNoUnit {
        field: String,
        text: String,
    },
    IsNoSize {
        field: String,
        text: String,
        number: String,
        unit: SizeUnit,
    },
}

/// Advice on a cable.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum CableHint {
    KeepOne,
    ExchangeOrLookUp,
    BothOrNeither,
    ReadTheLegend,
    AddLevel,
    TakeFromLegend,
    OtherCable,
    LeadSheath,
    MetalSheath,
    OwnInstructions,
    MeasureOrCount,
    LookAtTheKind,
    BothFromASource,
    WriteASize,
}

/// Each group of messages about a job's kind is a message.
macro_rules! of_kind {
    ($($variant:ident($messages:ident),)*) => {
        $(impl From<$messages> for Said {
            fn from(said: $messages) -> Said {
                JobKindSaid::$variant(said).into()
            }
        })*
    };
}

of_kind! {
    Head(HeadSaid),
    HeadHint(HeadHint),
    Run(RunSaid),
    RunHint(RunHint),
    Cable(CableSaid),
    CableHint(CableHint),
}
