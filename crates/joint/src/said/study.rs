//! Messages about the fields of a leg: facts that a study lacks, and reasons why it was not solved.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{Read, Said};
use crate::cable::Layer;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Messages about the fields of a leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum StudySaid {
    Adapter(StudyAdapter),
    Cable(StudyCable),
    BodyLeftOpen,
    NothingSolved,
    AtTrial,
    /// Finding of the solver, in its own words.
    NotSolved {
        why: String,
    },
    WithState {
        insulation_mm: f64,
        edge_mm: f64,
    },
    PermittivityNotStated,
    AskPermittivity {
        leg: String,
    },
    StatedForOther {
        part: String,
        stated_mm: f64,
        least_mm: f64,
        greatest_mm: f64,
    },
    LayerRises {
        part: String,
    },
    DatumNotPlaced {
        part: String,
    },
    ElectrodeElsewhere {
        part: String,
        linked_mm: f64,
        inside_mm: f64,
    },
    NoEdgeByInstructions,
    ByInstructionsAlone {
        said: Said,
    },
    NoPlaceForEdge {
        part: String,
    },
    With(FieldWith),
}

/// Dimensions at which a field is worst, mm.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum FieldWith {
    NoField,
    Edge {
        insulation_mm: f64,
        edge_mm: f64,
        rounded: Option<EdgeRounded>,
    },
    Film {
        thickness_mm: f64,
        is_empty: bool,
    },
}

/// Rounding of the screen edge, mm, and whether the gap before it is empty.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct EdgeRounded {
    pub radius_mm: f64,
    pub is_empty: bool,
}

/// Facts that are not known about the cable's layers.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum StudyCable {
    NotMeasuredInPhase { layer: Layer, phase: u32 },
    NotMeasured { layer: Layer },
    ScreenNotThicker { insulation_mm: f64, screen_mm: f64 },
    ScreenThicknessNotKnown,
    ConductorScreenNotKnown,
    NoWall { insulation_mm: f64, screen_mm: f64 },
}

/// Messages about an adapter under a body.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum StudyAdapter {
    UnderLayer {
        part: String,
    },
    StuffNotKnown {
        part: String,
    },
    AskStuff {
        part: String,
    },
    BeginsAfter {
        part: String,
        begins_mm: f64,
        electrode_mm: f64,
    },
    EndsBeforeDeflector {
        part: String,
        ends_mm: f64,
        deflector_mm: f64,
    },
    EndsBeforeEdge {
        part: String,
        by: Read,
    },
    EndsTooNear {
        part: String,
        past: Read,
        thick: Read,
    },
}

impl From<StudyAdapter> for Said {
    fn from(said: StudyAdapter) -> Said {
        StudySaid::Adapter(said).into()
    }
}

impl From<StudyCable> for Said {
    fn from(said: StudyCable) -> Said {
        StudySaid::Cable(said).into()
    }
}

impl From<FieldWith> for Said {
    fn from(said: FieldWith) -> Said {
        StudySaid::With(said).into()
    }
}
