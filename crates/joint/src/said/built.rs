//! Messages about readings as built: what is wrong in their file, what was read, and what a reading says beside its window.
#![expect(missing_docs, reason = "the name of a message says what is said")]

use super::Exact;
use crate::slot::Measured;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Messages about readings as built.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum BuiltSaid {
    /// Complaints about the file of readings.
    OtherJob {
        read: String,
        job: String,
    },
    OtherPlan {
        read: String,
        plan: String,
    },
    NoInstrument {
        named: String,
    },
    HasNoError {
        instrument: String,
        field: String,
    },
    NamedTwice {
        named: String,
    },
    Needs {
        of: String,
        field: String,
    },
    NotWith {
        of: String,
        field: String,
    },
    NoWordFor {
        found: String,
        of: String,
    },
    NoteWithoutValue,
    NoTime {
        read: String,
    },
    NoDecision {
        named: String,
    },
    IdleDecision {
        named: String,
    },
    /// Decision of a named person.
    Decided {
        what: String,
        by: String,
        role: String,
        authority: String,
        reached: String,
        at: String,
    },
    NotAmongThePeople {
        by: String,
    },
    NobodyRead,
    NoDay,
    /// Values as read.
    Read {
        values: Vec<Amount>,
        error: Option<Amount>,
    },
    Found {
        found: String,
    },
    /// Name of what a slot holds.
    Slot {
        measured: Measured,
    },
    /// Doubt about a reading that lies in its window by itself.
    Disagree,
    UnlikeTheJob,
    Fewer {
        read: usize,
        wanted: i64,
    },
    /// Deviation of a reading from its window, or a doubt.
    Under {
        by: Amount,
    },
    Over {
        by: Amount,
    },
    UnderAndOver {
        under: Amount,
        over: Amount,
    },
    Unlike {
        wanted: String,
    },
    OnTheEdge,
    ErrorReachesOver {
        below: Amount,
    },
    NotFromPlan {
        planned: Exact,
    },
    NobodyAsks,
    NotRead,
}

/// Hints about a file of readings.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum BuiltHint {
    JudgeWithItsJob,
    NameItsPlan,
    InstrumentsAre { names: Vec<String> },
    DecisionsAre { names: Vec<String> },
    NameItInItsRow,
    WriteTime,
    WriteItsError { field: String },
    WordsAre { words: Vec<String> },
    WriteField { field: String },
    LeaveOut { field: String },
    WriteItsValue,
    WriteWho,
    WriteDay,
    OneRowEach,
}

/// A value with its unit, as read.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Amount {
    Length(Exact),
    Ohm(f64),
    Nm(f64),
    Count(i64),
}
