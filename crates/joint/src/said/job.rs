//! Messages about contradictions in a job's rows, names and head.
//!
//! Why its own room: a crew meets these complaints while it types readings, in the language of the job.
#![expect(missing_docs, reason = "the name of a message says what is said")]

use super::{JobKindSaid, JobWholeSaid, Said};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Error in a job, or advice on it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum JobSaid {
    Row(RowSaid),
    RowHint(RowHint),
    Name(NameSaid),
    NameHint(NameHint),
    Kind(JobKindSaid),
    Whole(JobWholeSaid),
}

/// Messages about readings, counts, lots, trial presses and tests.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum RowSaid {
    PhaseBeyond {
        phase: i64,
        phases: i64,
    },
    NoValues,
    NoDiameter {
        value: String,
        least: String,
        greatest: String,
    },
    ErrorIsNothing,
    CountSaysNothing,
    StayNotAfter {
        until: String,
        last: String,
    },
    ColdestAboveWarmest {
        coldest_degc: f64,
        warmest_degc: f64,
    },
    LabelPrintsBoth {
        expires: String,
    },
    NoLengthAfter,
    SleeveShorter {
        before: String,
        after: String,
    },
    SleeveUnlikePaper {
        before: String,
        connector: String,
        listed: String,
    },
    DatedAfterWork {
        date: String,
        work: String,
    },
    ThreeWires,
    LeadHasNoMetal,
}

/// Advice on these rows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum RowHint {
    ChangePhase,
    WriteWhatItShowed,
    LookAtUnit,
    WriteItsCertificate,
    ItTakes { fields: Vec<String> },
    StaysInOrder,
    ExchangeOrLookUp,
    LookAtLabel,
    GiveLengthAfter,
    MeasureBothAgain,
    PressTheNamed,
    LookAtBothDates,
    FourOrTwoWires,
    WriteItsSection,
}

/// Messages about legs, parts, ends and sides that a job names.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum NameSaid {
    NoLeg {
        leg: String,
    },
    TwoLegs {
        leg: String,
        place: String,
    },
    NoRow {
        kind: String,
        id: String,
    },
    EndOfNoConnector {
        field: String,
        end: String,
    },
    EndsAreAlike {
        field: String,
        end: String,
        connector: String,
    },
    NoSuchEnd {
        field: String,
        end: String,
        connector: String,
    },
    SideOfNoBody {
        side: String,
    },
    SidesAreAlike {
        side: String,
        body: String,
    },
    NoSuchSide {
        side: String,
        body: String,
    },
    TrialIsNotPressed {
        connector: String,
    },
    TrialNamesNoEnd {
        connector: String,
    },
}

/// Advice on these names.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum NameHint {
    LegsAre { legs: Vec<String> },
    OwnLetter,
    CatalogueIsWrong,
    AddTheRow,
    RowsAre { rows: String },
    NameConnector,
    NameBody,
    TakeLineOut,
    EndsAre { ends: Vec<String> },
    SidesAre { sides: Vec<String> },
    TakeTrialOut,
    AddEnd { ends: Vec<String> },
    LookBothUp,
}

/// Each group of messages about a job is a message.
macro_rules! of_job {
    ($($variant:ident($messages:ident),)*) => {
        $(impl From<$messages> for Said {
            fn from(said: $messages) -> Said {
                JobSaid::$variant(said).into()
            }
        })*
    };
}

of_job! {
    Row(RowSaid),
    RowHint(RowHint),
    Name(NameSaid),
    NameHint(NameHint),
    Kind(JobKindSaid),
    Whole(JobWholeSaid),
}
