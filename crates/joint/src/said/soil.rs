//! Messages about soil, ducts and air around a cable: thermal resistances, part by part, and impossible arrangements.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::Said;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Messages about soil, ducts and air around a cable.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SoilSaid {
    Outside {
        total_k_m_per_w: f64,
        parts: Vec<SoilPart>,
    },
    OfStretch {
        leg: String,
        what: String,
        outside: Said,
    },
    AirFilm {
        leg: String,
        what: String,
        film_w_per_m2k: f64,
        rise_k: f64,
        diameter_mm: f64,
    },
    AirAlongRun,
    DriesInTwoZones {
        outside: Said,
        above_k: f64,
        dry_k_m_per_w: f64,
    },
    Cannot(SoilCannot),
    /// Reason why a day of loads is left out.
    NoDay(NoDay),
    Stated(StatedSoil),
}

/// One part of a resistance, K·m/W.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct SoilPart {
    pub what: SoilWhat,
    pub k_m_per_w: f64,
    pub source: SoilSource,
    /// Whether the whole soil is taken as concrete.
    pub is_concrete: bool,
    /// Whether the whole soil is taken as dried out.
    pub is_dry: bool,
}

/// Part of the thermal resistance.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SoilWhat {
    AboutTrefoil,
    JacketOfTrefoil,
    CircuitsBeside { n_circuits: u32 },
    AboutOne,
    AboutTouching { n_lines: u32 },
    AboutApart { n_lines: u32 },
    FillingOfDuct { at_degc: f64 },
    WallOfDuct,
    BeyondBank,
}

/// Method by which a part is computed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SoilSource {
    /// Images of line sources.
    Images,
    /// The standard's form, as in a published case.
    Trefoil,
    /// The standard, from memory.
    Memory,
    /// Closed form.
    ClosedForm,
}

/// Arrangements that are impossible.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SoilCannot {
    LieSo {
        n_lines: u32,
        outside_mm: f64,
        depth_mm: f64,
        why: Said,
    },
    StickOut {
        n_lines: u32,
        outside_mm: f64,
    },
    LieInOneAnother {
        n_lines: u32,
        outside_mm: f64,
    },
    MoreThanFourInDuct,
    DuctTooNarrow {
        n_cables: u32,
        cable_mm: f64,
        duct_mm: f64,
    },
}

/// Reason why a day of loads is left out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum NoDay {
    NotInSoil,
    InDuct,
    InDryingSoil,
    NoDiffusivity,
    NotComputed { why: Said },
}

/// Surroundings of a cable, as a job states them.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct StatedSoil {
    /// Leg; `None` for all legs.
    pub leg: Option<String>,
    pub reach: StatedReach,
    pub what: String,
    pub degc: f64,
    pub film: StatedFilm,
    pub source: String,
}

/// Extent.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum StatedReach {
    FromConductorEnd { until: String },
    Long { length_m: f64 },
    ToFarEnd,
}

/// Effect on heat as stated, or the data from which it is computed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum StatedFilm {
    Film {
        w_per_m2k: f64,
    },
    Outside {
        k_m_per_w: f64,
    },
    Computed,
    Soil {
        k_m_per_w: f64,
        drying: Option<StatedDrying>,
        depth_m: f64,
        duct: Option<StatedDuct>,
    },
}

/// Soil that dries.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct StatedDrying {
    pub dry_k_m_per_w: f64,
    pub above_k: f64,
}

/// A duct.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct StatedDuct {
    pub inside_mm: f64,
    pub outside_mm: f64,
    pub n_cables: u32,
}

impl From<SoilCannot> for Said {
    fn from(said: SoilCannot) -> Said {
        SoilSaid::Cannot(said).into()
    }
}

impl From<NoDay> for Said {
    fn from(said: NoDay) -> Said {
        SoilSaid::NoDay(said).into()
    }
}
