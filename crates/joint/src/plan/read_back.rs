//! Read back: a plan from its own document.
//!
//! Why its own file: judgements against a plan must be read against that same plan for as long as the joint stands, so reading is as strict as writing.
//!
//! Invariants: a document of another version is refused by its version; the plan read is equal to the plan written.
//!
//! Not here: the shapes (`document` and its neighbours).

use super::{FORMAT, Plan};
use serde::Deserialize;

/// Reason why a text is no plan.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum NotAPlan {
    /// Another version of the document, or another document.
    #[error("its format is \"{found}\", and this version reads \"{FORMAT}\"")]
    Format {
        /// Format that the document names.
        found: String,
    },
    /// A text without the shape of a plan.
    #[error("it has not the shape of a plan, at line {line}, column {column}: {what}")]
    Shape {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// Mismatch.
        what: String,
    },
}

/// Field that is read before all others.
#[derive(Deserialize)]
struct Versioned {
    format: String,
}

impl Plan {
    /// Reads a plan back from the JSON that [`Plan`] was written as.
    ///
    /// # Errors
    /// Names the other format, or the place at which the text has not the shape of a plan.
    pub fn read(text: &str) -> Result<Plan, NotAPlan> {
        let shape = |error: &serde_json::Error| NotAPlan::Shape {
            line: error.line(),
            column: error.column(),
            what: error.to_string(),
        };
        let Versioned { format } = serde_json::from_str(text).map_err(|error| shape(&error))?;
        if format != FORMAT {
            return Err(NotAPlan::Format { found: format });
        }
        serde_json::from_str(text).map_err(|error| shape(&error))
    }
}
