//! Messages about cutbacks: reasons why a place or a window is not known, and sources of both.
#![expect(
    missing_docs,
    reason = "the sentence of each message stands in `wording`"
)]

use super::{Paper, PartKind, Read, Said};
use crate::cable::Layer;
use crate::plane::Plane;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Source of a plane's place or window, in the order in which several are named.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Whose {
    /// Somebody with the authority for it, by name and date.
    Person(String),
    /// A row of a part, with its place on the paper.
    Row { paper: Paper, place: Option<String> },
    /// A row by its name alone; its paper is printed elsewhere on the page.
    Named { row: String, place: Option<String> },
    /// Trial presses: person and day of each.
    Trials(Vec<String>),
    /// A reading as built: person and day.
    Read(String),
}

impl Whose {
    /// A row as a whole.
    pub const fn row(paper: Paper) -> Whose {
        Whose::Row { paper, place: None }
    }

    /// Returns the same source; a row with one of these names keeps only its name.
    pub fn by_name(&self, rows: &[&str]) -> Whose {
        match self {
            Whose::Row { paper, place } if rows.contains(&paper.row.as_str()) => Whose::Named {
                row: paper.row.clone(),
                place: place.clone(),
            },
            other => other.clone(),
        }
    }

    /// Joins several sources, one after another.
    pub fn all(whose: &[Whose]) -> Said {
        Said::all(whose.iter().map(Said::from))
    }
}

/// Messages about cutbacks.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum CutSaid {
    Growth(Box<GrowthSaid>),
    Window(WindowSaid),
    NotPlaced {
        plane: Plane,
    },
    BodyNotPlaced,
    BodyLeftOpen,
    WhereLies {
        part: String,
    },
    NoRangeOver {
        part: String,
        layer: Layer,
    },
    NothingPlacesIt,
    GrowthNotMeasured,
    NothingLeftOfWindow {
        plane: Plane,
    },
    NoWindowOf {
        plane: Plane,
    },
    Plane {
        plane: Plane,
    },
    WherePlaneLies {
        plane: Plane,
    },
    HasNoPlace,
    /// A number is printed without a tolerance.
    NoTolerance,
    NoPlaceKeepsEveryWindow {
        whose: Vec<Whose>,
    },
    NoRowReaches {
        plane: Plane,
    },
    LeftOpen {
        parts: Vec<PartKind>,
    },
}

/// Reason why the growth of a connector is not known.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum GrowthSaid {
    EndDoesNotName {
        connector: String,
        end: Option<String>,
        missing: Unnamed,
    },
    WaitsForTrial {
        connector: String,
        end: Option<String>,
    },
    NoTrialLikeThis {
        connector: String,
        end: Option<String>,
        die: Option<String>,
        presses: Option<i64>,
        size: String,
        tried: Vec<Tried>,
    },
}

/// Messages about the window for a cut.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum WindowSaid {
    /// Window as printed: inches, if any, over millimetres.
    Printed {
        inch: Option<[String; 2]>,
        mm: [String; 2],
    },
    Of {
        whose: Vec<Whose>,
    },
    NoPlaceLeft,
    PlaceInsideEvery,
    RoomForAMark,
    /// A window of this width, or no window.
    NoRoom {
        plane: Plane,
        width: Option<Read>,
        whose: Vec<Whose>,
    },
    CallContradict,
    CallNothingToSet,
    CutsAndPartApart {
        part: String,
        windows: Vec<WindowOf>,
    },
}

/// A plane, and the sources of its window.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct WindowOf {
    pub plane: Plane,
    pub whose: Vec<Whose>,
}

/// Fact about the pressing of an end that a row does not name.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Unnamed {
    Die,
    Presses,
    DieAndPresses,
}

/// Die, presses and conductor size of a trial.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Tried {
    pub die: String,
    pub presses: i64,
    pub size: String,
}

impl From<GrowthSaid> for Said {
    fn from(said: GrowthSaid) -> Said {
        CutSaid::Growth(Box::new(said)).into()
    }
}

impl From<WindowSaid> for Said {
    fn from(said: WindowSaid) -> Said {
        CutSaid::Window(said).into()
    }
}
