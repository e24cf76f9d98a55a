//! Messages about temperatures under load: missing facts, questions, contradictions.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{Of, PartKind, Said};
use crate::plane::Plane;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Messages about temperatures under load.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum HeatSaid {
    RestOnMemory {
        keys: Vec<String>,
    },
    AskToConfirm {
        keys: Vec<String>,
    },
    PapersStandFor {
        unread: Vec<Of>,
    },
    PapersForUnread {
        unread: Vec<Of>,
    },
    AskToRead {
        unread: Vec<Of>,
    },
    NotKnown {
        why: Said,
    },
    Lacks(HeatLacks),
    Ask(HeatAsk),
    Cannot(HeatCannot),
    /// Resistance of a bus, as used.
    Bus {
        bus: String,
        micro_ohm: f64,
        at_degc: Option<f64>,
        cold_degc: f64,
        percent_per_k: f64,
    },
}

/// Layer of a cable whose thermal properties only its maker knows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum HeatLayer {
    /// Insulation.
    Insulation,
    /// Jacket.
    Jacket,
}

/// Place along a leg that the temperatures depend on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum HeatPlace {
    /// A plane.
    Plane(Plane),
    /// Place from which the inside of a body is measured.
    BodyDatum,
    /// Middle of the connector.
    ConnectorMiddle,
}

/// Current that the job states.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Stated {
    /// Continuous load.
    Load,
    /// Emergency load.
    Emergency,
}

/// Facts that are not known.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum HeatLacks {
    Places { leg: String, places: Vec<HeatPlace> },
    LeftOpen { leg: String, part: PartKind },
    CableStuff { leg: String, layer: HeatLayer },
    ShieldMetal { leg: String },
    Inside { part: String },
    RegionStuff { part: String, regions: Vec<String> },
    Filling { part: String, along_mm: f64 },
    AdapterStuff { part: String },
    Cover { part: String },
    WhichEnd { leg: String, part: String },
    MetalOf { part: String },
    ResistanceOf { part: String, end: Option<String> },
    Bus,
    PlaceWarmest,
    Surroundings { leg: String },
    // A run of cable without a joint.
    RunStuff { cable: String, layer: HeatLayer },
    RunSurroundings { cable: String },
    NoRun,
    NoLoadForShield,
}

/// Questions.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum HeatAsk {
    CableStuff {
        leg: String,
        layer: HeatLayer,
    },
    ShieldMetal {
        leg: String,
    },
    ShieldLoad {
        leg: String,
    },
    Inside {
        part: String,
    },
    RegionStuff {
        part: String,
        regions: Vec<String>,
    },
    Filling {
        part: String,
        along_mm: f64,
    },
    AdapterStuff {
        part: String,
    },
    Cover {
        part: String,
    },
    WhichEnd {
        leg: String,
        part: String,
        ends: Vec<String>,
    },
    MadeOf {
        part: String,
    },
    ConnectorResistance {
        part: String,
        end: Option<String>,
    },
    Bus,
    BusResistance {
        bus: String,
    },
    PlaceWarmest,
    Surroundings {
        leg: String,
    },
    LoadOfEachLeg,
    // A run of cable without a joint.
    RunStuff {
        cable: String,
        layer: HeatLayer,
    },
    RunSurroundings {
        cable: String,
    },
    RunLoad,
}

/// Statements that are impossible.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum HeatCannot {
    NotComputed {
        why: Said,
    },
    SitsTooFar {
        part: String,
        stated_mm: f64,
        leg: String,
        over_mm: f64,
    },
    ConnectorInConductor {
        leg: String,
        connector_mm: f64,
        conductor_mm: f64,
    },
    ShieldCarriesMore {
        leg: String,
        shield_a: f64,
        load_a: f64,
    },
    LayersNotOutward,
    RunNotOutward,
    Load(LoadCannot),
    ColderThanPlace {
        what: String,
        degc: f64,
        place_degc: f64,
    },
    ResistanceAtJoint {
        what: String,
        joint_end_mm: f64,
    },
    NeitherFilmNorResistance,
    Cable {
        cable: String,
        why: Said,
    },
}

/// Stated currents that are impossible.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LoadCannot {
    LoadIsNought,
    EmergencyNotStated,
    EmergencyTakesNoTime,
    EmergencyBelowLoad {
        leg: String,
        emergency_a: f64,
        load_a: f64,
    },
    LegCarriesMore {
        of: Stated,
        largest_a: f64,
        whole_a: f64,
    },
    NoLegCarriesWhole {
        of: Stated,
        largest_a: f64,
        whole_a: f64,
    },
    OneAgainstAll {
        of: Stated,
        n_legs: u32,
        largest_a: f64,
        others_a: f64,
    },
}

impl From<HeatLacks> for Said {
    fn from(said: HeatLacks) -> Said {
        HeatSaid::Lacks(said).into()
    }
}

impl From<HeatAsk> for Said {
    fn from(said: HeatAsk) -> Said {
        HeatSaid::Ask(said).into()
    }
}

impl From<HeatCannot> for Said {
    fn from(said: HeatCannot) -> Said {
        HeatSaid::Cannot(said).into()
    }
}

impl From<LoadCannot> for Said {
    fn from(said: LoadCannot) -> Said {
        HeatCannot::Load(said).into()
    }
}
