//! Cut: shapes of cuts and marks in `plan.json`, with their place, their window and on whose word they are.

use crate::plane::Plane;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

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

/// Distance from an end of its window, 1/64 in, below which a mark is said to stand at that end.
const NEAR_MM: f64 = 0.4;

/// End of its window at which a mark stands, nearer than a crew can cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AtEdge {
    /// Both ends: there is no room either way.
    Both,
    /// Shorter end.
    Shortest,
    /// Longer end.
    Longest,
}

impl CutDoc {
    /// Whether nothing is cut or laid back there.
    pub fn is_mark(&self) -> bool {
        self.kind == CutKind::Mark
    }

    /// End of its window at which the mark stands; `None` if there is room on both sides.
    pub fn at_edge(&self) -> Option<AtEdge> {
        let at: f64 = self.mark_mm.as_ref()?.parse().ok()?;
        match (at - self.min_mm? < NEAR_MM, self.max_mm? - at < NEAR_MM) {
            (true, true) => Some(AtEdge::Both),
            (true, false) => Some(AtEdge::Shortest),
            (false, true) => Some(AtEdge::Longest),
            (false, false) => None,
        }
    }
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
