//! Subject: whom something concerns.

use crate::end::EndId;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Whom a ruling concerns.
#[derive(
    Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
pub struct Subject {
    /// Leg; the whole joint where there is none.
    pub leg: Option<String>,
    /// Phase; all phases where there is none.
    pub phase: Option<u8>,
}

impl Subject {
    /// The whole joint.
    pub fn joint() -> Subject {
        Subject::default()
    }

    /// A leg in all phases.
    pub fn leg(leg: &str) -> Subject {
        Subject {
            leg: Some(leg.to_owned()),
            phase: None,
        }
    }

    /// One end.
    pub fn end(end: &EndId) -> Subject {
        Subject {
            leg: Some(end.leg.clone()),
            phase: Some(end.phase),
        }
    }

    /// End that it is; `None` if it is a leg or the joint.
    pub fn end_id(&self) -> Option<EndId> {
        Some(EndId::new(self.leg.as_deref()?, self.phase?))
    }

    /// Whether another is the same, or an end of its leg.
    pub fn covers(&self, other: &Subject) -> bool {
        self.leg == other.leg && (self.phase.is_none() || self.phase == other.phase)
    }

    /// Words for it: "leg A, phase 1".
    pub fn words(&self) -> String {
        match (&self.leg, self.phase) {
            (Some(leg), Some(phase)) => format!("leg {leg}, phase {phase}"),
            (Some(leg), None) => format!("leg {leg}"),
            _ => "joint".to_owned(),
        }
    }
}
