//! Read back: a plan from its own document.
//!
//! Why its own file: what was judged against a plan must be read against that plan for as long as the joint stands, so the door back is as narrow as the door out.
//!
//! Invariants: a document of another version is refused by its version; what is read is equal to what was written.
//!
//! Not here: the shapes themselves (`document` and its neighbours).

use super::{FORMAT, Plan};
use serde::Deserialize;

/// Why a text is no plan.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum NotAPlan {
    /// Another version of the document, or another document.
    #[error("its format is \"{found}\", and this version reads \"{FORMAT}\"")]
    Format {
        /// The format that it names.
        found: String,
    },
    /// Not the shape of a plan.
    #[error("it has not the shape of a plan, at line {line}, column {column}: {what}")]
    Shape {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// What does not fit.
        what: String,
    },
}

/// The one field that is read before all others.
#[derive(Deserialize)]
struct Versioned {
    format: String,
}

impl Plan {
    /// Reads a plan back from the JSON that [`Plan`] was written as.
    ///
    /// # Errors
    /// That the text is of another format, or not the shape of a plan, with its place.
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
