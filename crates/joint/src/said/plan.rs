//! Statements of a plan around its numbers: marks, parts and places, failures, missing facts.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{Exact, Read, ReadRange, Said, Subject};
use crate::cable::{Conductor, Layer, ShieldKind, Wall};
use crate::plane::Plane;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Statements of a plan around its numbers.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PlanSaid {
    Invented,
    Never,
    Mark(MarkSaid),
    /// Thousandths of an inch; "mil" means a thousand in Spanish.
    Mils {
        mils: i64,
    },
    Cable {
        conductor: Conductor,
        wall: WallSaid,
        shield: ShieldKind,
    },
    Conductor {
        conductor: Conductor,
    },
    Layer {
        layer: Layer,
    },
    /// Subject of a ruling, as pages name it.
    Whom(Subject),
    SquareCutEnd {
        before_pressing: bool,
    },
    MayMove(MayMoveSaid),
    Distance(Distance),
    Mover(Mover),
    Window(WindowText),
    Narrowed {
        left: Exact,
        printed: Exact,
        /// Row that prints the wider window; `None` if the line above names it.
        paper: Option<Said>,
        shared_with: Vec<Plane>,
        by: Option<Said>,
    },
    Fails {
        who: Vec<Subject>,
        check: String,
        why: Said,
    },
    NoReason,
    Missing(MissingSaid),
}

/// Marks that tell a plan from every other.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum MarkSaid {
    /// Letters of a mark, as read aloud.
    Aloud {
        short: String,
    },
    NotNumbered,
    Issue {
        issue: i64,
    },
    NoTime,
}

/// Wall of a cable, by its papers.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum WallSaid {
    Icea { class_kv: u16, level_percent: u16 },
    Iec { u0_kv_tenths: u32, u_kv: u32 },
    Stated { wall_mm: f64 },
}

/// Time until which a part may still be moved.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum MayMoveSaid {
    Never,
    UntilHoldoutIsOut,
    WithinMinutes { minutes: i64 },
}

/// Distance that varies within the windows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Distance {
    ElectrodePastMouth,
    ElectrodeOntoInsulation,
    InnerEndOfControl,
    OuterEndOfControl,
    SealOntoJacket,
}

/// Mover of a plane.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Mover {
    Body,
    Connector,
    ScreenCut,
    Plane(Plane),
}

/// Window as a crew reads it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum WindowText {
    Diameters(ReadRange),
    Along { least: Read, greatest: Read },
    AtMost(Read),
    AtLeast(Read),
}

/// Quantities that are not computed because a fact is not known.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum MissingSaid {
    Of {
        what: MissingOf,
        of: Vec<String>,
        why: Said,
    },
    Temperatures {
        why: Said,
    },
    Contacts,
    NobodyAsked,
}

/// Quantities computed for legs or ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum MissingOf {
    Field,
    FieldOfPlug,
    Pressure,
}

impl From<Wall> for WallSaid {
    fn from(wall: Wall) -> WallSaid {
        match wall {
            Wall::Icea {
                class_kv,
                level_percent,
            } => WallSaid::Icea {
                class_kv,
                level_percent,
            },
            Wall::Iec { u0_kv_tenths, u_kv } => WallSaid::Iec { u0_kv_tenths, u_kv },
            Wall::Stated(wall) => WallSaid::Stated { wall_mm: wall.mm() },
        }
    }
}

/// Each of these groups of messages is a message.
macro_rules! groups {
    ($($group:ident($said:ident),)*) => {
        $(impl From<$said> for Said {
            fn from(said: $said) -> Said {
                PlanSaid::$group(said).into()
            }
        })*
    };
}

groups! {
    Mark(MarkSaid),
    MayMove(MayMoveSaid),
    Distance(Distance),
    Mover(Mover),
    Window(WindowText),
    Missing(MissingSaid),
}
