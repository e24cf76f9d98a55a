//! Rows of a leg that contradict each other.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::Whose;
use crate::plane::Plane;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Way along rows to a plane.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct WayTo {
    /// Place that it gives the plane, with its unit.
    pub at: String,
    /// Planes along it, each with the row that leads there.
    pub steps: Vec<(Plane, Whose)>,
}

/// Reason why the rows of a leg give no places.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum RowsSaid {
    Contradict {
        leg: String,
        plane: Plane,
        from: Plane,
        one: WayTo,
        other: WayTo,
    },
    DoNotReach {
        leg: String,
        plane: Plane,
    },
    NotSolved {
        leg: String,
        why: String,
    },
}
