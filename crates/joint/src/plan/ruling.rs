//! Ruling: the shape of a ruling in `plan.json`, and the function that fills it.

use super::asks::of_words;
use crate::limit::{Ask, Datum, Outcome, Reach, Ruling};
use crate::said::{Said, Wording};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A number, a range or words.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(untagged)]
pub enum DatumDoc {
    /// Number.
    Number(f64),
    /// Range.
    Range {
        /// Least.
        min: f64,
        /// Greatest.
        max: f64,
    },
    /// Words.
    Text(String),
}

/// One ruling.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct RulingDoc {
    /// Check.
    pub check: String,
    /// Question of the check.
    pub question: String,
    /// Leg; null for the whole joint.
    pub leg: Option<String>,
    /// End, as leg and phase; absent if the ruling holds for all phases.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end: Option<String>,
    /// Outcome.
    pub ruling: Outcome,
    /// Finding.
    pub value: Option<DatumDoc>,
    /// Limit: a number, a range or words.
    pub limit: Option<DatumDoc>,
    /// Unit of value, limit and margin.
    pub unit: Option<String>,
    /// Distance from the limit; negative outside.
    pub margin: Option<f64>,
    /// Error of value and limit together, in the unit, where it is stated.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub error: Option<f64>,
    /// Fact that decides a pass if its numbers alone do not show it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub decides: Option<String>,
    /// Source of the limit.
    pub source: Option<String>,
    /// Reason why it fails or is not judged.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
    /// Next thing to do.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hint: Option<String>,
    /// Facts that a not-judged ruling waits for: each by its name and the things that it is about.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub asks: Vec<String>,
    /// Whether work stops here though nothing fails.
    pub stops: bool,
    /// A named engineer's word on it: who, why, when, until when; the ruling stays not judged.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub closed_by: Option<String>,
    /// The same for a word that has run out: it no longer counts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub closed_until: Option<String>,
    /// Whether it rests on something that this program computed.
    pub computed: bool,
    /// Messages of its texts, before any language: a key with its arguments for each text.
    pub said: SaidDoc,
}

/// Check whose numbers are the marks themselves.
const CUT_WINDOW: &str = "cut_window";

impl RulingDoc {
    /// Whether the ruling is about the places and windows of cuts, which front pages print as marks.
    pub fn is_of_cuts(&self) -> bool {
        self.check == CUT_WINDOW
    }
}

/// Messages of a ruling, before any language; each text of the ruling is made from the message of the same name.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct SaidDoc {
    /// Finding, if it is words.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub value: Option<Said>,
    /// Limit, if it is words.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub limit: Option<Said>,
    /// Fact that decides a pass.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub decides: Option<Said>,
    /// Source of the limit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub source: Option<Said>,
    /// Reason why it fails or is not judged.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub why: Option<Said>,
    /// Next thing to do.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hint: Option<Said>,
    /// A named engineer's word on it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub closed_by: Option<Said>,
    /// The same for a word that has run out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub closed_until: Option<Said>,
}

pub(crate) fn ruling_doc(ruling: &Ruling, wording: &dyn Wording) -> RulingDoc {
    let say = |said: &Option<Said>| said.as_ref().map(|said| wording.say(said));
    let datum = |datum: &Option<Datum>| datum.as_ref().map(|datum| datum_doc(datum, wording));
    RulingDoc {
        check: ruling.check.to_owned(),
        question: wording.say(&Said::Check(ruling.check.to_owned())),
        leg: ruling.subject.leg.clone(),
        end: ruling
            .subject
            .leg
            .as_ref()
            .zip(ruling.subject.phase)
            .map(|(leg, phase)| format!("{leg}{phase}")),
        ruling: ruling.outcome,
        value: datum(&ruling.value),
        limit: datum(&ruling.limit),
        unit: ruling.unit.map(str::to_owned),
        margin: ruling.margin,
        error: ruling.error.filter(|error| *error > 0.0),
        decides: say(&ruling.decides),
        source: say(&ruling.source),
        why: say(&ruling.why),
        hint: say(&ruling.hint),
        asks: ruling.asks.iter().map(|ask| asked(ask, wording)).collect(),
        stops: ruling.stops,
        closed_by: say(&ruling.closed_by),
        closed_until: say(&ruling.closed_until),
        computed: ruling.reach == Reach::Computed,
        said: said_doc(ruling),
    }
}

/// Messages behind the texts of a ruling.
fn said_doc(ruling: &Ruling) -> SaidDoc {
    let words = |datum: &Option<Datum>| match datum {
        Some(Datum::Said(said)) => Some(said.clone()),
        _ => None,
    };
    SaidDoc {
        value: words(&ruling.value),
        limit: words(&ruling.limit),
        decides: ruling.decides.clone(),
        source: ruling.source.clone(),
        why: ruling.why.clone(),
        hint: ruling.hint.clone(),
        closed_by: ruling.closed_by.clone(),
        closed_until: ruling.closed_until.clone(),
    }
}

fn datum_doc(datum: &Datum, wording: &dyn Wording) -> DatumDoc {
    match datum {
        Datum::Number(number) => DatumDoc::Number(*number),
        Datum::Range { min, max } => DatumDoc::Range {
            min: *min,
            max: *max,
        },
        Datum::Said(said) => DatumDoc::Text(wording.say(said)),
    }
}

/// Fact that a ruling waits for: its name, then the things that the question is about.
fn asked(ask: &Ask, wording: &dyn Wording) -> String {
    format!("{} {}", ask.fact.key, of_words(&ask.of, wording))
        .trim_end()
        .to_owned()
}
