//! Frame of a letter around its questions, and the place for an answer.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{File, Said};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Frame of a letter around its questions.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LetterSaid {
    To {
        to: Said,
    },
    Job {
        job: String,
        title: String,
    },
    Place {
        place: String,
        date: String,
    },
    Plan {
        short: String,
        issue: Option<i64>,
        made: String,
    },
    CutNothing,
    FactsAreMissing,
    WithWhereItStands,
    LeaveBlank,
    FoundDuringWork,
    // Labels of the blanks.
    Answer,
    WhereItStands,
    NameAndDate,
    GoesInto {
        place: Said,
    },
    Settles {
        settles: Said,
    },
    Fact {
        key: String,
    },
    Questions {
        name: String,
        number: String,
    },
    AnswerPlace {
        file: File,
        tables: Vec<String>,
        fields: Vec<String>,
    },
    SettledBy {
        alone: Vec<SettledCheck>,
        with_others: Vec<SettledCheck>,
    },
}

/// A check, with the legs and ends for which it waits for an answer.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct SettledCheck {
    pub check: String,
    pub of: Vec<String>,
}
