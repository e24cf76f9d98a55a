//! Ruling: the outcome of one check on one joint, leg or end, with its evidence.

use super::ask::Ask;
use crate::said::{Said, Subject};
use jointwright_units::Interval;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Outcome of a check.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Outcome {
    /// The value keeps to its limit.
    Pass,
    /// Not judged; a sentence gives the reason.
    NotJudged,
    /// The value breaks its limit.
    Fail,
}

impl Outcome {
    /// Word in plan.json.
    pub const fn name(self) -> &'static str {
        match self {
            Outcome::Pass => "pass",
            Outcome::NotJudged => "not-judged",
            Outcome::Fail => "fail",
        }
    }
}

/// Whether a ruling repeats the instructions, the owner or the job, or rests on a computation from them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reach {
    /// Compared with the words of somebody with authority.
    Instructions,
    /// Computed by this program; it can only tighten.
    Computed,
}

/// A value or a limit.
#[derive(Clone, Debug, PartialEq)]
pub enum Datum {
    /// One number.
    Number(f64),
    /// A range.
    Range {
        /// Least.
        min: f64,
        /// Greatest.
        max: f64,
    },
    /// Words.
    Said(Said),
}

impl Datum {
    /// Range of lengths, millimetres.
    pub fn range(interval: Interval) -> Datum {
        Datum::Range {
            min: interval.least().mm(),
            max: interval.greatest().mm(),
        }
    }

    /// One number where the interval is a point, else a range; millimetres.
    pub fn of(interval: Interval) -> Datum {
        if interval.least() == interval.greatest() {
            Datum::Number(interval.least().mm())
        } else {
            Datum::range(interval)
        }
    }

    /// Words.
    pub fn said(said: impl Into<Said>) -> Datum {
        Datum::Said(said.into())
    }
}

/// Outcome of one check on one joint, leg or end, with its evidence.
#[derive(Clone, Debug, PartialEq)]
pub struct Ruling {
    /// Slug of the check.
    pub check: &'static str,
    /// Joint, leg or end that it concerns.
    pub subject: Subject,
    /// Outcome.
    pub outcome: Outcome,
    /// Value that was found.
    pub value: Option<Datum>,
    /// Limit of the value.
    pub limit: Option<Datum>,
    /// Unit of value, limit and margin.
    pub unit: Option<&'static str>,
    /// Distance of the value from the limit, in the unit; negative outside.
    pub margin: Option<f64>,
    /// Error of value and limit together, in the unit, if it is stated.
    pub error: Option<f64>,
    /// Fact that decides a pass where its numbers alone do not show it.
    pub decides: Option<Said>,
    /// Source of the limit.
    pub source: Option<Said>,
    /// Reason why it fails or is not judged.
    pub why: Option<Said>,
    /// Next action.
    pub hint: Option<Said>,
    /// Asks that would settle it while it is not judged; it is settled when all are answered.
    pub asks: Vec<Ask>,
    /// Whether work stops here although nothing fails, until a named person has decided what it is.
    pub stops: bool,
    /// A named engineer's word on it while it is not judged: who, why, when, until when; it changes no outcome.
    pub closed_by: Option<Said>,
    /// The same for a word that has expired.
    pub closed_until: Option<Said>,
    /// Whether the value was computed.
    pub reach: Reach,
}

impl Ruling {
    /// Ruling that is not judged, because a fact is missing.
    pub fn not_judged(check: &'static str, subject: Subject, why: impl Into<Said>) -> Ruling {
        Ruling {
            check,
            subject,
            outcome: Outcome::NotJudged,
            value: None,
            limit: None,
            unit: None,
            margin: None,
            error: None,
            decides: None,
            source: None,
            why: Some(why.into()),
            hint: None,
            asks: Vec::new(),
            stops: false,
            closed_by: None,
            closed_until: None,
            reach: Reach::Instructions,
        }
    }

    /// Ruling on words: the words found, and the words permitted.
    pub fn on_words(
        check: &'static str,
        subject: Subject,
        found: impl Into<Said>,
        permitted: impl Into<Said>,
        source: impl Into<Said>,
    ) -> Ruling {
        Ruling {
            value: Some(Datum::said(found)),
            limit: Some(Datum::said(permitted)),
            source: Some(source.into()),
            ..Ruling::passing(check, subject)
        }
    }

    /// Ruling of a pass; value, limit and source are still to be filled in.
    pub fn passing(check: &'static str, subject: Subject) -> Ruling {
        Ruling {
            outcome: Outcome::Pass,
            why: None,
            ..Ruling::not_judged(check, subject, Said::All(Vec::new()))
        }
    }

    /// Turns the ruling into a fail.
    pub fn failing(self, why: impl Into<Said>, hint: impl Into<Said>) -> Ruling {
        Ruling {
            outcome: Outcome::Fail,
            decides: None,
            why: Some(why.into()),
            hint: Some(hint.into()),
            asks: Vec::new(),
            stops: false,
            ..self
        }
    }

    /// Adds the next action.
    pub fn with_hint(self, hint: impl Into<Said>) -> Ruling {
        Ruling {
            hint: Some(hint.into()),
            ..self
        }
    }

    /// Adds one more fact that would settle the ruling; a judged ruling asks for nothing.
    pub fn asking(mut self, ask: Ask) -> Ruling {
        if self.outcome == Outcome::NotJudged && !self.asks.contains(&ask) {
            self.asks.push(ask);
        }
        self
    }

    /// Adds several such facts.
    pub fn asking_all(self, asks: impl IntoIterator<Item = Ask>) -> Ruling {
        asks.into_iter().fold(self, Ruling::asking)
    }

    /// Makes work stop on the ruling although nothing fails.
    pub fn stopping(self) -> Ruling {
        Ruling {
            stops: self.outcome == Outcome::NotJudged,
            ..self
        }
    }
}
