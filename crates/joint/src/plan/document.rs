//! The shapes of `plan.json`; every field says what it is, and the JSON Schema is made from them.

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
    /// Version of this document's shape.
    pub format: String,
    /// Version of the program that wrote it.
    pub program: String,
    /// What tells this plan from every other.
    pub plan_mark: MarkDoc,
    /// Present when anything in it is invented.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub invented: Option<String>,
    /// What it never says.
    pub never: String,
    /// The job.
    pub job: JobDoc,
    /// Worst of the rulings: "pass", "fail" or "not-judged".
    pub outcome: Outcome,
    /// What stops work though nothing fails, until a named person has said what it is.
    pub stops: Vec<StopDoc>,
    /// Every missing fact once: first what crew or owner can close, then what makers are asked for, in each what settles most first.
    pub asks: Vec<AskDoc>,
    /// Words of named engineers that close nothing, because their questions are judged now.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub idle_closings: Vec<String>,
    /// What this version does not compute, whatever is stated.
    pub not_computed: Vec<String>,
    /// What is not computed because something is not known, and what that is.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub missing: Vec<String>,
    /// The passing ruling with the least margin in millimetres: what governs while nothing fails.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub governs: Option<RulingDoc>,
    /// The same of what is computed in other units: the passing ruling whose margin is the least part of its limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub governs_computed: Option<RulingDoc>,
    /// Ends that come out alike, by leg and phase: the same cable, parts, cuts and outcomes.
    pub alike: Vec<Vec<String>>,
    /// Legs.
    pub legs: Vec<LegDoc>,
    /// What every computed pressure of an end assumes; empty where none was asked for.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub pressure_assumes: Vec<String>,
    /// Temperatures under load; left out where a body is left open.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub warm: Option<WarmDoc>,
    /// Steps, material, tools and people.
    pub make_up: MakeUpDoc,
    /// Ports without a leg.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub blanks: Vec<BlankDoc>,
    /// Rulings.
    pub rulings: Vec<RulingDoc>,
    /// Parts that would fit where one is left open.
    pub proposals: Vec<ProposalDoc>,
}

/// The job that the plan is for.
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
    /// Whom to call.
    pub stop_and_call: CallDoc,
}

/// Whom to call.
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
    /// Where it goes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub goes_to: Option<String>,
    /// The cable on its papers.
    pub cable: String,
    /// Its layers from the inside out, for pictures; nothing is judged by them.
    pub layers: Vec<LayerDoc>,
    /// Port of the bus, for separable joints.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub port: Option<i64>,
    /// Whether the body parks on it.
    pub parks: bool,
    /// How its connector is made.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub connector: Option<ConnectorDoc>,
    /// Its parts by kind and name; open parts are left out.
    pub parts: Vec<PartDoc>,
    /// Cuts and marks from the conductor end outward.
    pub cuts: Vec<CutDoc>,
    /// Other planes whose place is known, from the conductor end outward: those of the parts, and edges shrunk back.
    pub planes: Vec<PlaneDoc>,
    /// How deep a knife may go into the insulation screen.
    pub knife: KnifeDoc,
    /// Its fields at the worst of the windows; left out where its body is open.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub field: Option<FieldDoc>,
    /// Its shield beyond the joint.
    pub shield: ShieldDoc,
    /// Distances that the windows make vary.
    pub stacks: Vec<StackDoc>,
    /// Ends.
    pub ends: Vec<EndDoc>,
}

/// Outside of one layer of a leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LayerDoc {
    /// Layer, as job files name it.
    pub layer: Layer,
    /// What a crew calls it.
    pub words: String,
    /// Outside diameter, mm: mean of everything read on the leg's ends, else the middle of what its papers allow.
    pub diameter_mm: f64,
    /// Where it comes from.
    pub of: DiameterOf,
}

/// A plane that is neither cut nor marked by the crew.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PlaneDoc {
    /// Plane.
    pub plane: Plane,
    /// What a crew calls it.
    pub words: String,
    /// Distance from the square-cut conductor end, mm, not rounded.
    pub nominal_mm: f64,
}

/// Where a diameter comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum DiameterOf {
    /// Readings of the leg's ends.
    Readings,
    /// The cable's papers, which may rest on the table of cables.
    Papers,
}

/// What a crew does at a place.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum CutKind {
    /// Cuts a layer.
    Cut,
    /// Marks the place.
    Mark,
    /// Lays wires or straps of the shield back.
    LayBack,
    /// Asks whether wires beside a tape are cut or laid back: nobody says it.
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

/// How a connector is made.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ConnectorDoc {
    /// How it grips.
    pub means: Means,
    /// Two ends (sleeve) or one (contact).
    pub two_ended: bool,
    /// End that takes this leg, where the two ends differ; null where nobody says which.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end: Option<String>,
    /// Why no end is known to take this leg.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end_open: Option<String>,
    /// How far the other end reaches beyond the connector-centre before it is made, mm, where the two ends differ.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub other_end_mm: Option<f64>,
    /// Length before it is made, mm.
    pub length_mm: f64,
    /// Stop between the two conductors, or behind the one, mm.
    pub stop_mm: f64,
    /// Greatest outside diameter as made, mm.
    pub outside_diameter_mm: f64,
    /// Die, as the instructions name it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub die: Option<String>,
    /// Presses an end, as the instructions say.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub presses: Option<i64>,
    /// Growth of the mouth that the cuts already hold, least and greatest, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub growth_of_mouth_mm: Option<[f64; 2]>,
    /// Whose trial press.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub growth_source: Option<String>,
}

/// A port without a leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct BlankDoc {
    /// Port.
    pub port: i64,
    /// Its insulating plug; null where none is named.
    pub plug: Option<String>,
}

/// A part of a leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PartDoc {
    /// Kind.
    pub kind: PartKind,
    /// Name in the catalogue.
    pub id: String,
    /// Side by which this leg comes in, for a body whose two sides differ.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub side: Option<String>,
    /// What it is.
    pub name: String,
    /// Its instructions and their revision.
    pub instructions: String,
    /// What is doubtful of its row: that no second person has checked it, that its paper may have been replaced.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub doubts: Vec<String>,
    /// When it may still be moved once placed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub may_move: Option<String>,
}

/// A place to cut or to mark.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct CutDoc {
    /// Plane.
    pub plane: Plane,
    /// What a crew calls it.
    pub words: String,
    /// Whether it is cut, marked, or, for wires and straps, laid back; or asked which of the two.
    pub kind: CutKind,
    /// How much of a shield that is laid back is kept beyond this place, or that it must be asked for, for a crew.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub keeps: Option<String>,
    /// The same length, mm; left out where no row states it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub keeps_mm: Option<f64>,
    /// Datum: always the square-cut conductor end; before pressing, where a connector is pressed.
    pub from: String,
    /// Distance from the datum, mm, not rounded; null where it cannot be said.
    pub nominal_mm: Option<f64>,
    /// Least, mm; null where nobody sets a window.
    pub min_mm: Option<f64>,
    /// Greatest, mm; null where nobody sets a window.
    pub max_mm: Option<f64>,
    /// Mark: the tick on an inch rule in the middle of the window, or nearest to the place where there is no window.
    pub inch: Option<String>,
    /// The same mark in millimetres as printed.
    pub mark_mm: Option<String>,
    /// Exact place of that mark, mm from the datum: the tick, where there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mark_at_mm: Option<f64>,
    /// The window as printed: rounded inward.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub printed_window: Option<PrintedWindowDoc>,
    /// Whose window it is.
    pub window_of: Vec<String>,
    /// Who says where it is; left out where it has no place.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub placed: Option<PlacedDoc>,
    /// The same words with the leg's parts by their names alone, for a page that names their papers once.
    pub by_name: ByNameDoc,
    /// What narrowed it, where it is narrower than the row that places it prints.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub narrowed: Option<NarrowedDoc>,
    /// Why there is no nominal or no window.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
    /// Where the cut goes for each growth of the sleeve, while that is not measured.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub growth_ladder: Vec<RungDoc>,
}

/// On whose word a cut or a mark has its place.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PlacedDoc {
    /// Rows, the one that ends at the place first.
    pub by: Vec<String>,
    /// Place from which they lead, as a crew calls it: one with rows of its own, or the conductor end.
    pub from: String,
}

/// On whose word a cut is, with the leg's parts by their names alone.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ByNameDoc {
    /// Rows that place it, the row that ends at the place first.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub placed_by: Vec<String>,
    /// Owners of its window.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub window_of: Vec<String>,
    /// What narrowed its window, in one line.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub narrowed: Option<String>,
}

/// A window that is narrower than the row that places the plane prints.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct NarrowedDoc {
    /// The row that prints the wider one.
    pub paper: String,
    /// Width that it prints, mm.
    pub printed_mm: f64,
    /// Width that is left, mm.
    pub left_mm: f64,
    /// Planes with which the tolerance is shared.
    pub shared_with: Vec<Plane>,
    /// Rows and owners whose windows or play take the rest.
    pub by: Vec<String>,
    /// The same in one line.
    pub text: String,
}

/// A window as printed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PrintedWindowDoc {
    /// Least and greatest on an inch rule, where a tick of 1/64 in or coarser is inside.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inch: Option<[String; 2]>,
    /// Least and greatest in mm.
    pub mm: [String; 2],
    /// The printed bounds as numbers, mm from the datum, on the rule in use: of the inches where they are printed, else of the millimetres.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_mm: Option<[f64; 2]>,
}

/// A rung of the growth ladder.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct RungDoc {
    /// Growth of the whole sleeve, or of the one end pressed where the ends differ, inches; empty where the page is in millimetres.
    pub grew_inch: String,
    /// The same growth, mm.
    pub grew_mm: f64,
    /// Cut, mm from the datum.
    pub nominal_mm: f64,
    /// Least, mm; null where nobody sets a window.
    pub min_mm: Option<f64>,
    /// Greatest, mm; null where nobody sets a window.
    pub max_mm: Option<f64>,
    /// Tick on an inch rule inside the window.
    pub inch: Option<String>,
    /// The same mark in millimetres as printed.
    pub mark_mm: Option<String>,
    /// Exact place of that mark, mm from the datum: the tick, where there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mark_at_mm: Option<f64>,
    /// The window as printed: rounded inward.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub printed_window: Option<PrintedWindowDoc>,
}

/// A distance that the windows make vary.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct StackDoc {
    /// What it is.
    pub what: String,
    /// Plane it is measured from.
    pub from: Plane,
    /// Plane it is measured to.
    pub to: Plane,
    /// As planned, mm.
    pub nominal_mm: f64,
    /// Least over all windows, mm.
    pub min_mm: f64,
    /// Greatest over all windows, mm.
    pub max_mm: f64,
    /// Bounds of the middle 95 percent of a seeded stack, mm: every deviation uniform in its window, half of each crew mark's common to all (one tape).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub middle_95_mm: Option<[f64; 2]>,
    /// Share of each plane in its variance, greatest first: which mark matters most.
    pub shares: Vec<ShareDoc>,
}

/// Share of one plane.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ShareDoc {
    /// Plane.
    pub plane: Plane,
    /// What a crew calls the thing that moves it.
    pub words: String,
    /// Share of the variance if all deviations were independent, 0 to 1.
    pub share_ratio: f64,
}

/// One end.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct EndDoc {
    /// Phase.
    pub phase: u8,
    /// Outcome of the comparison with its papers, in a few words.
    pub measures: String,
    /// Whether it measures like its papers, and what that never says.
    pub like_its_papers: String,
    /// What was read.
    pub readings: Vec<ReadingDoc>,
    /// Slots that a row of the job fills.
    pub filled: Vec<Slot>,
    /// How hard its parts sit; left out where nobody asked.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pressure: Option<PressureDoc>,
}

/// What was read over one layer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ReadingDoc {
    /// Its name: end and layer.
    pub slot: Slot,
    /// Layer, as job files name it.
    pub over: Layer,
    /// What a crew calls it.
    pub words: String,
    /// Least diameter read, mm.
    pub min_mm: f64,
    /// Greatest diameter read, mm.
    pub max_mm: f64,
    /// How far off either may be, mm.
    pub error_mm: f64,
    /// Greatest difference at one place, mm; null where only one diameter was read.
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
    /// The question it asks.
    pub question: String,
    /// Leg; null for the whole joint.
    pub leg: Option<String>,
    /// End, as leg and phase; absent where it holds for all phases.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end: Option<String>,
    /// Outcome.
    pub ruling: Outcome,
    /// What was found.
    pub value: Option<DatumDoc>,
    /// What it must keep to: a number, a range or words.
    pub limit: Option<DatumDoc>,
    /// Unit of value, limit and margin.
    pub unit: Option<String>,
    /// Distance from the limit; negative outside.
    pub margin: Option<f64>,
    /// How far off value and limit together may be, in the unit, where that is said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub error: Option<f64>,
    /// What decides a pass where its numbers alone do not show it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub decides: Option<String>,
    /// On whose word the limit stands.
    pub source: Option<String>,
    /// Why it fails or is not judged.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
    /// What to do next.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hint: Option<String>,
    /// Facts that it waits for while it is not judged, each by its name and what it is of.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub asks: Vec<String>,
    /// Whether work stops here though nothing fails.
    pub stops: bool,
    /// A named engineer's word on it: who, why, when, until when; it stays not judged.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub closed_by: Option<String>,
    /// The same, of a word that has run out: it counts no more.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub closed_until: Option<String>,
    /// Whether it rests on something that this program computed.
    pub computed: bool,
    /// What its texts say, before any language: a key with its arguments for each of them.
    pub said: SaidDoc,
}

/// What the texts of a ruling say, before any language; each text of the ruling is made from the message of the same name.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct SaidDoc {
    /// What was found, where it is words.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub value: Option<Said>,
    /// What it must keep to, where it is words.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub limit: Option<Said>,
    /// What decides a pass.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub decides: Option<Said>,
    /// On whose word the limit stands.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub source: Option<Said>,
    /// Why it fails or is not judged.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub why: Option<Said>,
    /// What to do next.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hint: Option<Said>,
    /// A named engineer's word on it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub closed_by: Option<Said>,
    /// The same, of a word that has run out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub closed_until: Option<Said>,
}

/// For one open part of one leg: what fits, and why the rest does not.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ProposalDoc {
    /// Leg.
    pub leg: String,
    /// Other legs that take the same one part and have it open too.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub shared_with: Vec<String>,
    /// Kind of part.
    pub part: PartKind,
    /// Parts against which no check fails.
    pub fits: Vec<FitDoc>,
    /// Parts that fail, with the first reason.
    pub does_not_fit: Vec<MisfitDoc>,
}

/// A part that fits.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct FitDoc {
    /// Name in the catalogue.
    pub id: String,
    /// Number of questions about it that stay unjudged.
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
