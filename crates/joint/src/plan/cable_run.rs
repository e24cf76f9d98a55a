//! Cable run: the rating of a cable without a joint.

use super::asks::{AskDoc, asked};
use super::program;
use super::state::StateDoc;
use super::stated::stated;
use super::told_apart::{MarkDoc, mark_with};
use super::verdict::fails;
use super::warm::from_memory;
use super::words::all_said;
use crate::cable::Words;
use crate::job::{Day, Job, Leg};
use crate::judge::{JudgedRun, worst};
use crate::limit::{Outcome, Ruling};
use crate::said::{Language, PlanSaid, RatingSaid, RunAssumes, Said, Wording};
use crate::warm::{CableRun, RunAt};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Rating of a cable without a joint.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct CableRateDoc {
    /// Banner; present if anything is invented.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub invented: Option<String>,
    /// Name of the job.
    pub job: String,
    /// Language of its texts, by its code in ISO 639-1.
    pub language: Language,
    /// Practice whose words its texts use: "us" or "iec".
    pub words: Words,
    /// Mark of this rating: a fingerprint of all input and of its outcome.
    pub plan_mark: MarkDoc,
    /// "pass", "fail" or "not-judged": whether the job's load keeps the conductor below the highest temperature that the job states, in every stretch.
    pub outcome: Outcome,
    /// Failures.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub fails: Vec<String>,
    /// Questions that are not judged, with the reason.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub not_judged: Vec<String>,
    /// Words of engineers that no longer close anything.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub idle_closings: Vec<String>,
    /// The cable.
    pub cable: String,
    /// Whether it was computed.
    pub state: StateDoc,
    /// Reason why it is not computed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
    /// Missing facts, each once, with the person who can answer and the place for the answer.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub asks: Vec<AskDoc>,
    /// Highest temperature of the conductor that the job states, degrees Celsius.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub limit_degc: Option<f64>,
    /// Load at which the first stretch reaches that temperature, A.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub load_at_limit_a: Option<f64>,
    /// Stretches.
    pub stretches: Vec<StretchDoc>,
    /// Assumptions.
    pub assumes: Vec<String>,
}

/// One stretch of a run.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct StretchDoc {
    /// Name of the stretch.
    pub what: String,
    /// Surroundings as stated, with their source, then the values computed from them.
    pub lines: Vec<String>,
    /// State at the job's load all the time.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_load: Option<RunAtDoc>,
    /// State at the load that brings the conductor to the job's highest temperature.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_limit: Option<RunAtDoc>,
    /// Peak of the job's day that brings the conductor there; it is from memory and rules nothing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cyclic: Option<CyclicDoc>,
    /// Reason why the peak is not computed, if the job states a day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cyclic_left_out: Option<String>,
}

/// Load that repeats every day.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct CyclicDoc {
    /// Greatest hourly load, A.
    pub peak_a: f64,
    /// Ratio of that peak to the steady load that reaches the same temperature.
    pub factor_ratio: f64,
    /// Ratio of the day's mean losses to the losses of its greatest hour.
    pub loss_load_ratio: f64,
    /// Source of the day.
    pub source: String,
}

/// State of a cable at one load.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct RunAtDoc {
    /// Load, A.
    pub load_a: f64,
    /// Temperature of the conductor, degrees Celsius.
    pub conductor_degc: f64,
    /// Temperature of the shield, degrees Celsius.
    pub shield_degc: f64,
    /// Temperature of the surface, degrees Celsius.
    pub surface_degc: f64,
    /// Loss of the conductor, W/m.
    pub conductor_w_per_m: f64,
    /// Loss of the shield, W/m.
    pub shield_w_per_m: f64,
}

impl CableRateDoc {
    /// Returns the same rating with a day and time of making.
    pub fn made_at(mut self, made: &str) -> CableRateDoc {
        self.plan_mark = self.plan_mark.made_at(made);
        self
    }
}

fn run_at_doc(at: &RunAt) -> RunAtDoc {
    RunAtDoc {
        load_a: at.load_a,
        conductor_degc: at.conductor_degc,
        shield_degc: at.shield_degc,
        surface_degc: at.surface_degc,
        conductor_w_per_m: at.loss_w_per_m.0,
        shield_w_per_m: at.loss_w_per_m.1,
    }
}

/// Returns the rating of a judged run of cable.
pub fn cable_rating(judged: &JudgedRun<'_>, wording: &dyn Wording) -> CableRateDoc {
    let JudgedRun {
        order,
        run,
        rulings,
        idle_closings,
    } = judged;
    let job = &order.job;
    let outcome = worst(rulings);
    let (state, why) = match run {
        Ok(_) => (StateDoc::Computed, None),
        Err(open) => (StateDoc::NotKnown, Some(wording.say(&open.why))),
    };
    let open = rulings.iter().filter(|r| r.outcome == Outcome::NotJudged);
    let said = |ruling: &Ruling| {
        let why = ruling.why.clone()?;
        Some(match ruling.closed_by.clone() {
            Some(word) => RatingSaid::NotJudgedAndClosed { why, word }.into(),
            None => why,
        })
    };
    let not_judged: Vec<Said> = open.filter_map(said).collect();
    CableRateDoc {
        invented: job
            .invented
            .then(|| wording.say(&PlanSaid::Invented.into())),
        job: job.id.clone(),
        language: job.language,
        words: job.words,
        plan_mark: mark_with(order, outcome.name(), &program(), wording),
        outcome,
        fails: fails(rulings, wording),
        not_judged: all_said(&not_judged, wording),
        idle_closings: all_said(idle_closings, wording),
        cable: wording.say(&cable_said(job)),
        state,
        why,
        asks: asked(rulings, &[], &order.catalogue, wording),
        limit_degc: job.duty.conductor_greatest_degc,
        load_at_limit_a: run.as_ref().ok().and_then(least_a),
        stretches: match run {
            Ok(run) => stretches(job, run, wording),
            Err(_) => Vec::new(),
        },
        assumes: all_said(&assumes(run.as_ref().ok()), wording),
    }
}

/// JSON Schema of the rating of a cable.
pub fn cable_rate_schema() -> serde_json::Value {
    schemars::generate::SchemaSettings::draft2020_12()
        .for_serialize()
        .into_generator()
        .into_root_schema_for::<CableRateDoc>()
        .to_value()
}

/// The runs, each with its conductor.
fn cable_said(job: &Job) -> Said {
    let of = |leg: &Leg| {
        let conductor = leg.cable.conductor;
        Said::of(&leg.id, PlanSaid::Conductor { conductor })
    };
    Said::all(job.legs.iter().map(of))
}

/// Least load at which a stretch reaches its limit; `None` if the surroundings of a stretch alone pass it, or if a stretch has no limit.
fn least_a(run: &CableRun) -> Option<f64> {
    let loads = run.stretches.iter().map(|of| Some(of.at_limit?.load_a));
    let loads: Vec<f64> = loads.collect::<Option<_>>()?;
    loads.into_iter().min_by(f64::total_cmp)
}

fn stretches(job: &Job, run: &CableRun, wording: &dyn Wording) -> Vec<StretchDoc> {
    let say = |said: &Said| wording.say(said);
    let rows = job.surroundings.iter().zip(&run.stretches);
    rows.map(|(row, of)| StretchDoc {
        what: of.what.clone(),
        lines: std::iter::once(stated(row))
            .chain(of.outside.clone())
            .map(|said| say(&said))
            .collect(),
        at_load: of.at_load.as_ref().map(run_at_doc),
        at_limit: of.at_limit.as_ref().map(run_at_doc),
        cyclic: of
            .cyclic
            .zip(job.duty.daily.as_ref())
            .map(|(of, day)| CyclicDoc {
                peak_a: of.peak_a,
                factor_ratio: of.factor_ratio,
                loss_load_ratio: of.loss_load_ratio,
                source: match day.day {
                    Day::Loads(_) => day.source.clone(),
                    Day::LossLoad(_) => {
                        let source = day.source.clone();
                        say(&RatingSaid::WorstOfDays { source }.into())
                    }
                },
            }),
        cyclic_left_out: of.cyclic_left_out.as_ref().map(say),
    })
    .collect()
}

fn assumes(run: Option<&CableRun>) -> Vec<Said> {
    let Some(run) = run else { return Vec::new() };
    let said = run.shield_says.clone();
    let shield = RatingSaid::ShieldOfRun { said }.into();
    let memory = run.unconfirmed.iter().copied().map(from_memory);
    let always = RunAssumes::ALL.iter().copied().map(Said::from);
    always.chain([shield]).chain(memory).collect()
}
