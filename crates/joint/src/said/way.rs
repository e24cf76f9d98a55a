//! Messages about ways back for an end that is out of its window.
#![expect(missing_docs, reason = "the name of a message says what is said")]

use super::{Exact, PartKind};
use crate::end::EndId;
use crate::plane::Plane;
use crate::slot::Measured;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Messages about ways back.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum WaySaid {
    /// Ways.
    CutOn {
        plane: Plane,
        to: Exact,
    },
    MoveTo {
        part: PartKind,
        plane: Plane,
        to: Exact,
    },
    Finish {
        measured: Measured,
    },
    StartAgain {
        ends: Vec<EndId>,
    },
    /// Conditions of a way.
    UntilHoldoutIsOut,
    WithinMinutes {
        minutes: i64,
    },
    ReadAnew,
    UsesUp {
        rows: Vec<String>,
    },
    Slack {
        leg: String,
        needs: Exact,
        slack: Exact,
    },
    /// Ways that are not offered, each with its reason.
    TooMuchIsOff {
        plane: Plane,
    },
    Covered {
        plane: Plane,
    },
    ConnectorCovered,
    PartCovered {
        part: PartKind,
    },
    NoRowPlaces {
        plane: Plane,
    },
    NeverMoves {
        part: PartKind,
        row: String,
    },
    MoveNotSaid {
        part: PartKind,
        row: String,
    },
    NotToDress {
        row: String,
    },
    NotToWind {
        row: String,
    },
    SlackNotMeasured {
        leg: String,
    },
    SlackTooShort {
        leg: String,
        needs: Exact,
        slack: Exact,
    },
    JacketEdgeOpen {
        leg: String,
    },
    SameCable,
    CannotUndo,
}
