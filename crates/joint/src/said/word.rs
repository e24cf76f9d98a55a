//! Word: the source of a limit, and the paper that a part's row repeats.
//!
//! Not here: the conclusions that each source allows (`limit`).

use super::Said;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Source of a limit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Word {
    /// Instructions of the part.
    Instructions(Said),
    /// Owner's engineer, by name and date.
    Owner(Said),
    /// Common practice, without a source.
    CommonPractice(Said),
    /// Value from memory, with the key under which the owner may confirm it.
    Memory {
        /// Key.
        key: String,
        /// Remembered source.
        source: Said,
    },
    /// Value from memory that the owner has confirmed.
    Confirmed(Said),
    /// Worst that the instructions allow, computed from their own rows.
    WorstAllowed(Said),
    /// Statement or demand of the job.
    Job(Said),
}

/// Row of a part, with its paper and the doubts about the row.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
pub struct Paper {
    /// Short name of the row; empty if only the paper is named.
    pub row: String,
    /// Number or title.
    pub paper: String,
    /// Revision.
    pub revision: String,
    /// Doubts about the row.
    pub doubts: Vec<Doubt>,
}

/// Doubt about a row.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Doubt {
    /// Only its writer has compared it with its paper.
    NotChecked,
    /// Its paper was last seen to be in force on this day, before the day of the work.
    CurrentOnlyUntil(String),
}
