//! Messages about parts on a leg: their choice, place, cover and closing.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{JointKind, PartKind, Read, Said, Spot, Subject};
use crate::cable::{Conductor, Layer, Metal, Size, Stranding};
use crate::plane::Plane;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Messages about parts on a leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum FitSaid {
    Adapter(AdapterSaid),
    Body(BodySaid),
    Electrode(ElectrodeSaid),
    Bus(BusSaid),
    Level(LevelSaid),
    Connector(ConnectorSaid),
    Shared(SharedSaid),
    Cleaning(CleaningSaid),
    Order(OrderSaid),
    Layer(LayerSaid),
}

/// Messages about an adapter, in its body and on its leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum AdapterSaid {
    NoneNamed,
    NotNamed { body: String, adapter: String },
    UseNamed,
    NoBoreRange { row: String },
    OutsideIn { adapter: String, body: String },
    UseAnother,
    LeavesBare { adapter: String, most: Read },
    ReachesEdge,
    BoreByItsPaper,
    UseOneThatReaches,
}

/// Messages about a body and the place of its leg in it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum BodySaid {
    BendNotMeasured,
    BendLeastNotSaid,
    BendingRadius {
        subject: Subject,
    },
    PapersOfCable,
    EaseBend,
    UseRated,
    LegsNotSaid {
        row: String,
    },
    LegInEveryMouth {
        greatest: i64,
    },
    Legs {
        n_legs: usize,
    },
    TakesOtherLegs {
        body: String,
        greatest: i64,
        n_legs: usize,
    },
    UseWithMouths,
    UseForBonding,
    BondingsNotSaid {
        row: String,
    },
    AskBondings {
        body: String,
    },
    NoConnectorRange {
        row: String,
    },
    ConnectorOutside {
        subject: Subject,
        connector: String,
        body: String,
    },
    UseAdmittedConnector,
}

/// Messages about a body's electrode over the connector.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ElectrodeSaid {
    CoversConnector,
    EndsOnInsulation,
    PastMouth,
    OntoInsulation,
    /// Reach of the electrode at the worst of the windows.
    Reach {
        subject: Subject,
        what: Said,
    },
    ConnectorLengthNotSaid {
        row: String,
    },
    LengthAsMade {
        subject: Subject,
        connector: String,
    },
    UseShorterConnector,
    EndNotKnown,
    OtherEndOpen {
        connector: String,
    },
    NeitherOverlapNorLongest {
        body: String,
    },
    LongestCannotBePlanned,
}

/// Messages about a bus and its ports.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum BusSaid {
    NotNamed,
    Port {
        port: i64,
    },
    Ports {
        n_ports: i64,
    },
    PortBeyond {
        port: i64,
        bus: String,
        n_ports: i64,
    },
    UseWithPorts,
    /// Interface that a port needs.
    PortWants {
        port: i64,
        interface: String,
    },
    BodyOpen {
        port: i64,
        leg: String,
    },
    LegWith {
        leg: String,
        body: String,
    },
    WithInterface {
        body: String,
        interface: Option<String>,
    },
    MatesWithOther {
        port: i64,
        body: String,
        interface: Option<String>,
        of_bus: String,
    },
    BlankWith {
        plug: String,
    },
    PlugDoesNotServe {
        port: i64,
        plug: String,
        interface: String,
        greatest_kv: f64,
    },
    BlankWithoutPlug,
    PlugMissing {
        port: i64,
    },
    Nothing,
    PortEmpty {
        port: i64,
    },
    OrderWhatMates,
}

/// Messages about a cable's class and insulation level in its system.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LevelSaid {
    ClassNotBelowNominal,
    ClassBelow {
        class_kv: f64,
        nominal_kv: f64,
    },
    ClassNotForSystem,
    NoLevel,
    NoTimeForLevel {
        level_percent: u16,
    },
    NoClearingTime,
    FromMemory {
        source: Said,
    },
    KeyWaits {
        key: String,
        says: Said,
    },
    ConfirmedBy {
        source: Said,
        edition: String,
        by: String,
    },
    ClearedIn {
        time_s: f64,
        says: Said,
    },
    LevelNotForSystem,
}

/// Conductors that one end of a connector takes: named ones, else every size with every metal and stranding.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Taken {
    /// Named conductors.
    pub named: Vec<Conductor>,
    /// Sizes.
    pub sizes: Vec<Size>,
    /// Metals.
    pub metals: Vec<Metal>,
    /// Strandings.
    pub strandings: Vec<Stranding>,
}

/// A connector, with its end if its ends differ.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct ConnectorAt {
    /// Its short name.
    pub connector: String,
    /// Name of the end.
    pub end: Option<String>,
}

/// Messages about a connector and the conductor in it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ConnectorSaid {
    UseForConductor,
    BothEndsTake {
        connector: String,
        conductor: Conductor,
    },
    NeitherEndTakes {
        connector: String,
        conductor: Conductor,
    },
    SayWhichEnd {
        leg: String,
        ends: Vec<String>,
    },
    Conductor {
        conductor: Conductor,
    },
    Takes {
        takes: Taken,
    },
    EndsTake {
        one: Taken,
        other: Taken,
    },
    End {
        end: String,
    },
    EndOfItsOwn,
    LegAtEachEnd,
    BothIntoEnd {
        leg: String,
        other: String,
        at: ConnectorAt,
    },
    UseSleeveWithEnds,
    IsForOthers {
        at: ConnectorAt,
        takes: Taken,
        conductor: Conductor,
    },
    ListsApart {
        at: ConnectorAt,
        conductor: Conductor,
    },
    WriteOneByOne,
    /// A sleeve with two ends, or a contact with one.
    Ends {
        is_sleeve: bool,
    },
    Joint {
        kind: JointKind,
    },
    NeedsOtherEnds {
        connector: String,
        kind: JointKind,
        is_sleeve: bool,
    },
    ConductorNotMeasured {
        at: ConnectorAt,
    },
    ConductorInBore {
        subject: Subject,
        at: ConnectorAt,
    },
}

/// Messages about parts that legs share.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SharedSaid {
    LegsNameNone { n_legs: usize, part: PartKind },
    OneForAllLegs { part: PartKind },
    JointHasOne { kind: JointKind, part: PartKind },
    Different { n_parts: usize, part: PartKind },
    NameTheSame,
    Sides { one: String, other: String },
    SideForEachLeg,
    LegAtEachSide,
    BothByOneSide { side: String },
    UseBodyWithSides,
}

/// Messages about the cleaning of a bare conductor.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum CleaningSaid {
    UseUntouched,
    NothingNamed { leg: String, metal: Metal },
    AskWithWhat { leg: String, metal: Metal },
    MetalsNotSaid { row: String },
    AskMetals { part: String },
}

/// Messages about the order of cuts and marks.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum OrderSaid {
    LayersEndInOrder,
    FromTo {
        subject: Subject,
        from: Plane,
        to: Plane,
    },
    FromConductorEnd {
        subject: Subject,
        to: Plane,
    },
    CopiedWrongly,
}

/// Edge of a layer or end of a part, with its place if known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct EdgeAt {
    /// Edge.
    pub plane: Plane,
    /// Distance from the conductor end.
    pub at: Option<Spot>,
}

/// Messages about the layers under a stretch of a part.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LayerSaid {
    EveryLayerAllowed,
    LayersOfItsRow,
    /// A layer under the part that its row does not permit, at the planned place or only at the worst of the windows.
    LiesOver {
        end: EdgeAt,
        by: Spot,
        is_planned: bool,
        layer: Layer,
        row: String,
        edges: Vec<EdgeAt>,
    },
}

/// Each group of messages is a message.
macro_rules! messages {
    ($($variant:ident($said:ident)),* $(,)?) => {
        $(impl From<$said> for Said {
            fn from(said: $said) -> Said {
                FitSaid::$variant(said).into()
            }
        })*
    };
}

messages! {
    Adapter(AdapterSaid),
    Body(BodySaid),
    Electrode(ElectrodeSaid),
    Bus(BusSaid),
    Level(LevelSaid),
    Connector(ConnectorSaid),
    Shared(SharedSaid),
    Cleaning(CleaningSaid),
    Order(OrderSaid),
    Layer(LayerSaid),
}
