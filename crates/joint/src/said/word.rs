//! Word: on whose word a limit stands, and the paper that a part's row repeats.
//!
//! Not here: what may be concluded on which word (`limit`).

use super::Said;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// On whose word a limit stands.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Word {
    /// The part's own instructions.
    Instructions(Said),
    /// The owner's engineer, by name and date.
    Owner(Said),
    /// Common practice, without a source.
    CommonPractice(Said),
    /// From memory; the key under which the owner may confirm it.
    Memory {
        /// Key.
        key: String,
        /// Where it is remembered from.
        source: Said,
    },
    /// From memory, and confirmed by the owner.
    Confirmed(Said),
    /// The worst that the instructions allow, computed from their own rows.
    WorstAllowed(Said),
    /// What the job itself states or asks for.
    Job(Said),
}

/// A part's row, its paper, and what is doubtful of the row.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
pub struct Paper {
    /// Short name of the row; empty where the paper alone is named.
    pub row: String,
    /// Number or title.
    pub paper: String,
    /// Revision.
    pub revision: String,
    /// What is doubtful of the row.
    pub doubts: Vec<Doubt>,
}

/// What is doubtful of a row.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Doubt {
    /// Nobody but its writer has held it beside its paper.
    NotChecked,
    /// Its paper was last seen to be the one in force on this day, before the day of the work.
    CurrentOnlyUntil(String),
}
