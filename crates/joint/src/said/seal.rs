//! Messages about seals.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{JointKind, Said, Subject};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Messages about seals.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SealSaid {
    Lap(LapSaid),
    Span(SpanSaid),
    NoRange { row: String },
}

/// Messages about the overlap of a seal on body and jacket.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LapSaid {
    OverlapOnBody,
    OverlapOnBodyEnd { subject: Subject, seal: String },
    ClosesOverBodyEnd,
    LeavesBodyEndOpen,
    BodyOverlapNotSaid { row: String },
    JacketOverlapNotSaid,
    OverlapOnJacket { subject: Subject, seal: String },
    UseLonger,
    ShrinkageNotStated,
    AskShrinkage,
}

/// Messages about one seal over the whole joint.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SpanSaid {
    NotNamedByBoth {
        seal: String,
    },
    LengthNotSaid {
        row: String,
    },
    OverlapNotSaid {
        row: String,
    },
    Joint {
        kind: JointKind,
    },
    OnePieceOverTwoLegs {
        seal: String,
        kind: JointKind,
    },
    UseOneForEachLeg,
    Length {
        seal: String,
    },
    /// Overlap on one leg, if the other end of the seal is set to the mark on the other leg.
    SetOff {
        seal: String,
        to_leg: String,
        from_leg: String,
    },
    AtWorst {
        what: Said,
    },
    UseLongerOrOneALeg,
}

impl From<LapSaid> for Said {
    fn from(said: LapSaid) -> Said {
        SealSaid::Lap(said).into()
    }
}

impl From<SpanSaid> for Said {
    fn from(said: SpanSaid) -> Said {
        SealSaid::Span(said).into()
    }
}
