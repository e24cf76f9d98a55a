//! Shapes of `plan.json`: the doc comment of every field describes it, and the JSON Schema is made from these comments.

use super::asks::{AskDoc, StopDoc};
use super::field::FieldDoc;
use super::make_up::{KnifeDoc, MakeUpDoc};
use super::pressure::PressureDoc;
use super::shield::ShieldDoc;
use super::told_apart::MarkDoc;
use super::warm::WarmDoc;
use crate::cable::{Layer, Words};
use crate::catalogue::{Means, PartKind};
use crate::job::JointKind;
use crate::limit::Outcome;
use crate::plane::Plane;
use crate::said::{Language, Said};
use crate::slot::Slot;
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

/// Person to call.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct CallDoc {
    /// Name.
    pub name: String,
    /// Number.
    pub number: String,
}

/// One leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LegDoc {
    /// Letter or short name.
    pub mark: String,
    /// Destination of the leg.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub goes_to: Option<String>,
    /// Cable by its papers.
    pub cable: String,
    /// Its layers from the inside out, for pictures; nothing is judged by them.
    pub layers: Vec<LayerDoc>,
    /// Port of the bus, for separable joints.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub port: Option<i64>,
    /// Whether the body parks on this leg.
    pub parks: bool,
    /// Connector of the leg.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub connector: Option<ConnectorDoc>,
    /// Parts by kind and name; open parts are left out.
    pub parts: Vec<PartDoc>,
    /// Cuts and marks from the conductor end outward.
    pub cuts: Vec<CutDoc>,
    /// Other planes with a known place, from the conductor end outward: planes of the parts, and edges shrunk back.
    pub planes: Vec<PlaneDoc>,
    /// Limit of the depth of a knife cut into the insulation screen.
    pub knife: KnifeDoc,
    /// Fields at the worst of the windows; left out if the body is open.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub field: Option<FieldDoc>,
    /// Shield of the leg beyond the joint.
    pub shield: ShieldDoc,
    /// Distances that vary within the windows.
    pub stacks: Vec<StackDoc>,
    /// Ends.
    pub ends: Vec<EndDoc>,
}

/// Outside of one layer of a leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LayerDoc {
    /// Layer, as job files name it.
    pub layer: Layer,
    /// A crew's name for the layer.
    pub words: String,
    /// Outside diameter, mm: mean of all readings on the leg's ends, else the middle of the range that its papers allow.
    pub diameter_mm: f64,
    /// Origin of the diameter.
    pub of: DiameterOf,
}

/// Plane that the crew neither cuts nor marks.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PlaneDoc {
    /// Plane.
    pub plane: Plane,
    /// A crew's name for the plane.
    pub words: String,
    /// Distance from the square-cut conductor end, mm, not rounded.
    pub nominal_mm: f64,
}

/// Origin of a diameter.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum DiameterOf {
    /// Readings of the leg's ends.
    Readings,
    /// The cable's papers, which may rest on the table of cables.
    Papers,
}

/// Work of a crew at a place.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum CutKind {
    /// Cuts a layer.
    Cut,
    /// Marks the place.
    Mark,
    /// Lays wires or straps of the shield back.
    LayBack,
    /// Asks whether wires beside a tape are cut or laid back, because nobody says which.
    Ask,
}

impl CutKind {
    /// Word in plan.json.
    pub const fn name(self) -> &'static str {
        match self {
            CutKind::Cut => "cut",
            CutKind::Mark => "mark",
            CutKind::LayBack => "lay-back",
            CutKind::Ask => "ask",
        }
    }
}

/// Connector of a leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ConnectorDoc {
    /// Means by which it grips.
    pub means: Means,
    /// Whether it has two ends (sleeve) or one (contact).
    pub two_ended: bool,
    /// End that takes this leg, where the two ends differ; null if nobody says which end.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end: Option<String>,
    /// Reason why no end is known to take this leg.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end_open: Option<String>,
    /// Reach of the other end beyond the connector-centre before the connector is made, mm, where the two ends differ.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub other_end_mm: Option<f64>,
    /// Length before the connector is made, mm.
    pub length_mm: f64,
    /// Stop between the two conductors, or behind the single one, mm.
    pub stop_mm: f64,
    /// Greatest outside diameter of the made connector, mm.
    pub outside_diameter_mm: f64,
    /// Die, by its name in the instructions.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub die: Option<String>,
    /// Number of presses for each end by the instructions.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub presses: Option<i64>,
    /// Least and greatest growth of the mouth, which the cuts already hold, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub growth_of_mouth_mm: Option<[f64; 2]>,
    /// Source of the trial press.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub growth_source: Option<String>,
}

/// A port without a leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct BlankDoc {
    /// Port.
    pub port: i64,
    /// Insulating plug; null if none is named.
    pub plug: Option<String>,
}

/// A part of a leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PartDoc {
    /// Kind.
    pub kind: PartKind,
    /// Name in the catalogue.
    pub id: String,
    /// Side of the body by which this leg comes in, where the two sides differ.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub side: Option<String>,
    /// Name in plain words.
    pub name: String,
    /// Instructions and their revision.
    pub instructions: String,
    /// Doubts about its row: no second person has checked it, or its paper may have been replaced.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub doubts: Vec<String>,
    /// Time until which a placed part may still be moved.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub may_move: Option<String>,
}

/// Place to cut or to mark.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct CutDoc {
    /// Plane.
    pub plane: Plane,
    /// A crew's name for the plane.
    pub words: String,
    /// Kind of work: cut, mark, or, for wires and straps, lay back; or a question which of these it is.
    pub kind: CutKind,
    /// Sentence for the crew: length of the laid-back shield kept beyond this place, or that the length must be asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub keeps: Option<String>,
    /// The same length, mm; left out if no row states it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub keeps_mm: Option<f64>,
    /// Datum: always the square-cut conductor end, before pressing if the connector is pressed.
    pub from: String,
    /// Distance from the datum, mm, not rounded; null if it cannot be stated.
    pub nominal_mm: Option<f64>,
    /// Least distance, mm; null if nobody sets a window.
    pub min_mm: Option<f64>,
    /// Greatest distance, mm; null if nobody sets a window.
    pub max_mm: Option<f64>,
    /// Mark: the tick on an inch rule in the middle of the window, or nearest to the place if there is no window.
    pub inch: Option<String>,
    /// The same mark in millimetres as printed.
    pub mark_mm: Option<String>,
    /// Exact place of that mark, mm from the datum; on an inch rule, the place of the tick.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mark_at_mm: Option<f64>,
    /// Window as printed, rounded inward.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub printed_window: Option<PrintedWindowDoc>,
    /// Owners of the window.
    pub window_of: Vec<String>,
    /// Source of the place; left out if the cut has no place.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub placed: Option<PlacedDoc>,
    /// The same words with the leg's parts by name alone, for a page that names their papers once.
    pub by_name: ByNameDoc,
    /// Causes that narrowed the window, if it is narrower than the row that places the plane prints.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub narrowed: Option<NarrowedDoc>,
    /// Reason why there is no nominal or no window.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
    /// Place of the cut for each growth of the sleeve, while the growth is not measured.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub growth_ladder: Vec<RungDoc>,
}

/// Source of the place of a cut or a mark.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PlacedDoc {
    /// Rows; the row that ends at the place comes first.
    pub by: Vec<String>,
    /// Place from which the rows lead, in a crew's words: a place with rows of its own, or the conductor end.
    pub from: String,
}

/// Sources of a cut, with the leg's parts by name alone.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ByNameDoc {
    /// Rows that place it; the row that ends at the place comes first.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub placed_by: Vec<String>,
    /// Owners of its window.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub window_of: Vec<String>,
    /// Causes that narrowed its window, in one line.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub narrowed: Option<String>,
}

/// A window that is narrower than the row that places the plane prints.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct NarrowedDoc {
    /// Row that prints the wider window.
    pub paper: String,
    /// Printed width, mm.
    pub printed_mm: f64,
    /// Remaining width, mm.
    pub left_mm: f64,
    /// Planes that share the tolerance.
    pub shared_with: Vec<Plane>,
    /// Rows and owners whose windows or play take the difference.
    pub by: Vec<String>,
    /// The same in one line.
    pub text: String,
}

/// A window as printed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PrintedWindowDoc {
    /// Least and greatest on an inch rule, if a tick of 1/64 in or coarser lies inside.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inch: Option<[String; 2]>,
    /// Least and greatest in mm.
    pub mm: [String; 2],
    /// Printed bounds as numbers, mm from the datum, on the rule in use: the inches if they are printed, else the millimetres.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_mm: Option<[f64; 2]>,
}

/// A rung of the growth ladder.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct RungDoc {
    /// Growth, inches: of the whole sleeve, or of the one pressed end where the ends differ; empty if the page is in millimetres.
    pub grew_inch: String,
    /// The same growth, mm.
    pub grew_mm: f64,
    /// Place of the cut, mm from the datum.
    pub nominal_mm: f64,
    /// Least distance, mm; null if nobody sets a window.
    pub min_mm: Option<f64>,
    /// Greatest distance, mm; null if nobody sets a window.
    pub max_mm: Option<f64>,
    /// Tick on an inch rule inside the window.
    pub inch: Option<String>,
    /// The same mark in millimetres as printed.
    pub mark_mm: Option<String>,
    /// Exact place of that mark, mm from the datum; on an inch rule, the place of the tick.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mark_at_mm: Option<f64>,
    /// Window as printed, rounded inward.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub printed_window: Option<PrintedWindowDoc>,
}

/// Distance that varies within the windows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct StackDoc {
    /// Name of the distance.
    pub what: String,
    /// Plane from which it is measured.
    pub from: Plane,
    /// Plane to which it is measured.
    pub to: Plane,
    /// Planned distance, mm.
    pub nominal_mm: f64,
    /// Least over all windows, mm.
    pub min_mm: f64,
    /// Greatest over all windows, mm.
    pub max_mm: f64,
    /// Bounds of the middle 95 percent of a seeded stack, mm: every deviation is uniform in its window, and half of each crew mark's deviation is common to all marks (one tape).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub middle_95_mm: Option<[f64; 2]>,
    /// Share of each plane in the variance, greatest first: the first mark matters most.
    pub shares: Vec<ShareDoc>,
}

/// Share of one plane.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ShareDoc {
    /// Plane.
    pub plane: Plane,
    /// A crew's name for the thing that moves the plane.
    pub words: String,
    /// Share of the variance, 0 to 1, as if all deviations were independent.
    pub share_ratio: f64,
}

/// One end.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct EndDoc {
    /// Phase.
    pub phase: u8,
    /// Outcome of the comparison with its papers, in a few words.
    pub measures: String,
    /// Sentence that says whether the end measures like its papers, and what that never means.
    pub like_its_papers: String,
    /// Readings.
    pub readings: Vec<ReadingDoc>,
    /// Slots that a row of the job fills.
    pub filled: Vec<Slot>,
    /// Pressure of its parts; left out if nobody asked.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pressure: Option<PressureDoc>,
}

/// Readings over one layer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ReadingDoc {
    /// Slot: end and layer.
    pub slot: Slot,
    /// Layer, as job files name it.
    pub over: Layer,
    /// A crew's name for the layer.
    pub words: String,
    /// Least diameter read, mm.
    pub min_mm: f64,
    /// Greatest diameter read, mm.
    pub max_mm: f64,
    /// Error of either reading, mm.
    pub error_mm: f64,
    /// Greatest difference at one place, mm; null if only one diameter was read.
    pub ovality_mm: Option<f64>,
}

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

/// Parts that fit in the place of one open part of one leg, and the reasons why the others do not.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ProposalDoc {
    /// Leg.
    pub leg: String,
    /// Other legs that take the same single part and have it open too.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub shared_with: Vec<String>,
    /// Kind of part.
    pub part: PartKind,
    /// Parts for which no check fails.
    pub fits: Vec<FitDoc>,
    /// Parts for which a check fails, with the first reason.
    pub does_not_fit: Vec<MisfitDoc>,
}

/// A part that fits.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct FitDoc {
    /// Name in the catalogue.
    pub id: String,
    /// Number of its questions that stay unjudged.
    pub not_judged: usize,
}

/// A part that does not fit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct MisfitDoc {
    /// Name in the catalogue.
    pub id: String,
    /// First reason.
    pub why: String,
}
