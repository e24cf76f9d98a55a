//! Instructions of a step of a make-up.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{EdgeAct, Exact, Said, ShieldPiece};
use crate::cable::Metal;
use crate::plane::Plane;
use crate::stage::Stage;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Instructions of a step of a make-up.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum StepSaid {
    /// Name of a stage; for a shield also the work at its edge.
    Title {
        stage: Stage,
        edge: Option<EdgeAct>,
    },
    HandOver,
    MeasureWhereBare,
    LookAtJacket,
    WriteLegAndPhase,
    MarkOut {
        grows: bool,
    },
    Phasing,
    SlideOnNow,
    Wipes,
    PushOnInOrder,
    LookAgain,
    HandBack,
    GrowthNotMeasured {
        leg: String,
        waiting: Vec<Plane>,
    },
    TestMoisture,
    BridgeBesideBond,
    MayMove {
        leg: String,
        row: String,
        minutes: i64,
    },
    /// Sentence about a leg.
    OfLeg {
        leg: String,
        said: Said,
    },
    KeepAsked {
        piece: ShieldPiece,
    },
    Keep {
        length: Exact,
        piece: ShieldPiece,
        has_tape: bool,
    },
    KeepUnstated {
        piece: ShieldPiece,
        has_tape: bool,
    },
    Abrasive {
        what: String,
    },
    AbrasiveUnstated {
        row: String,
    },
    Brush {
        leg: String,
        metal: Metal,
        row: String,
    },
    SeeInstructions {
        row: String,
    },
    SetOut {
        leg: String,
        from: SetOutFrom,
        row: String,
        is_two_ended: bool,
        stands: Exact,
        stop: Stop,
        gap: Option<Exact>,
    },
    SetOutUnknown {
        leg: String,
        why: Said,
        from: SetOutFrom,
    },
    OpensShield,
    BridgeComesOff {
        when: super::BridgeMoment,
    },
    BridgeAsk {
        name: String,
        number: String,
        why: Said,
    },
    /// Source of steps for which no paper gives one.
    CommonPractice,
    /// Source that nobody gives.
    Nobody,
}

/// Place from which a square cut is set out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SetOutFrom {
    CentreLine,
    ContactPlane,
    /// Mating face of a port of the bus.
    Port(i64),
    OwnPort,
}

/// Stop of a conductor in its connector.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Stop {
    /// Bottom of a named end.
    End(String),
    Half,
    Whole,
}
