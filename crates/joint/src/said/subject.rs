//! Subject: the joint, leg or end that something concerns.

use crate::end::EndId;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Subject of a ruling.
#[derive(
    Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
pub struct Subject {
    /// Leg; `None` for the whole joint.
    pub leg: Option<String>,
    /// Phase; `None` for all phases.
    pub phase: Option<u8>,
}

impl Subject {
    /// Returns the whole joint.
    pub fn joint() -> Subject {
        Subject::default()
    }

    /// Returns a leg in all phases.
    pub fn leg(leg: &str) -> Subject {
        Subject {
            leg: Some(leg.to_owned()),
            phase: None,
        }
    }

    /// Returns one end.
    pub fn end(end: &EndId) -> Subject {
        Subject {
            leg: Some(end.leg.clone()),
            phase: Some(end.phase),
        }
    }

    /// End of the subject; `None` if the subject is a leg or the joint.
    pub fn end_id(&self) -> Option<EndId> {
        Some(EndId::new(self.leg.as_deref()?, self.phase?))
    }

    /// Whether the other subject is the same, or an end of this leg.
    pub fn covers(&self, other: &Subject) -> bool {
        self.leg == other.leg && (self.phase.is_none() || self.phase == other.phase)
    }

    /// Words for the subject: "leg A, phase 1".
    pub fn words(&self) -> String {
        match (&self.leg, self.phase) {
            (Some(leg), Some(phase)) => format!("leg {leg}, phase {phase}"),
            (Some(leg), None) => format!("leg {leg}"),
            _ => "joint".to_owned(),
        }
    }
}
