//! Shapes of `plan.json`: the doc comment of every field describes it, and the JSON Schema is made from these comments.

use super::asks::{AskDoc, StopDoc};
use super::leg::LegDoc;
use super::make_up::MakeUpDoc;
use super::proposal::ProposalDoc;
use super::ruling::RulingDoc;
use super::told_apart::MarkDoc;
use super::warm::WarmDoc;
use crate::cable::Words;
use crate::job::JointKind;
use crate::limit::Outcome;
use crate::said::Language;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The plan of one joint.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Plan {
    /// Version of the document's shape.
    pub format: String,
    /// Version of the program that wrote the document.
    pub program: String,
    /// Mark that tells this plan from every other.
    pub plan_mark: MarkDoc,
    /// Banner; present if anything in the plan is invented.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub invented: Option<String>,
    /// Statements that the plan never makes.
    pub never: String,
    /// The job.
    pub job: JobDoc,
    /// Worst of the rulings: "pass", "fail" or "not-judged".
    pub outcome: Outcome,
    /// Causes that stop work though nothing fails, until a named person has said what they are.
    pub stops: Vec<StopDoc>,
    /// Missing facts, each once: first those that crew or owner can close, then questions to makers; within each group, the fact that settles most comes first.
    pub asks: Vec<AskDoc>,
    /// Words of named engineers that close nothing, because the program judges their questions now.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub idle_closings: Vec<String>,
    /// Quantities that this version never computes, whatever is stated.
    pub not_computed: Vec<String>,
    /// Quantities that are not computed because a fact is not known, each with that fact.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub missing: Vec<String>,
    /// Governing ruling while nothing fails: the passing ruling with the least margin in millimetres.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub governs: Option<RulingDoc>,
    /// Governing ruling among quantities computed in other units: the passing ruling with the smallest ratio of margin to limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub governs_computed: Option<RulingDoc>,
    /// Groups of ends with the same cable, parts, cuts and outcomes, by leg and phase.
    pub alike: Vec<Vec<String>>,
    /// Legs.
    pub legs: Vec<LegDoc>,
    /// Assumptions of every computed pressure of an end; empty if no pressure was asked for.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub pressure_assumes: Vec<String>,
    /// Temperatures under load; left out if a body is left open.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub warm: Option<WarmDoc>,
    /// Steps, material, tools and people.
    pub make_up: MakeUpDoc,
    /// Ports without a leg.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub blanks: Vec<BlankDoc>,
    /// Rulings.
    pub rulings: Vec<RulingDoc>,
    /// Parts that would fit in the place of an open part.
    pub proposals: Vec<ProposalDoc>,
}

impl Plan {
    /// Returns the same plan with a day and time of making.
    ///
    /// The door gives that text; it is printed and never compared.
    pub fn made_at(mut self, made: &str) -> Plan {
        self.plan_mark = self.plan_mark.made_at(made);
        self
    }

    /// Whether all legs share a body and no leg is named to park it.
    pub fn is_parking_open(&self) -> bool {
        self.job.kind != JointKind::Separable && !self.legs.iter().any(|leg| leg.parks)
    }

    /// Whether work stops: a ruling fails, or a cause stops work and nobody with the authority has said what it is.
    ///
    /// The plan then prints no number to cut to.
    pub fn must_stop(&self) -> bool {
        self.outcome == Outcome::Fail || self.stops.iter().any(|stop| stop.lifted_by.is_none())
    }
}

/// Job that the plan is for.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct JobDoc {
    /// Short name.
    pub id: String,
    /// Title.
    pub title: String,
    /// Day of the work, year-month-day.
    pub date: String,
    /// Kind of joint.
    pub kind: JointKind,
    /// Number of phases.
    pub phases: u8,
    /// Practice whose words and rule the page uses: "us" (inches and mm) or "iec" (mm).
    pub words: Words,
    /// Language of its texts, by its code in ISO 639-1.
    pub language: Language,
    /// Place.
    pub place: String,
    /// Person to call.
    pub stop_and_call: CallDoc,
}

impl JobDoc {
    /// Year, month and day of the work, as written.
    pub fn date_parts(&self) -> [String; 3] {
        let mut parts = self.date.splitn(3, '-').map(str::to_owned);
        [(); 3].map(|()| parts.next().unwrap_or_default())
    }
}

/// Person to call.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct CallDoc {
    /// Name.
    pub name: String,
    /// Number.
    pub number: String,
}

/// A port without a leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct BlankDoc {
    /// Port.
    pub port: i64,
    /// Insulating plug; null if none is named.
    pub plug: Option<String>,
}
