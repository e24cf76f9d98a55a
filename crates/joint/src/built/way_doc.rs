//! Way doc: ways back from one finding, as a page and other programs read them.

use super::finding::FindingKind;
use super::way::{WayBack, Ways};
use crate::said::Wording;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A way back that the rows name and the stage allows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct WayDoc {
    /// Work of the way.
    pub way: String,
    /// Source that names it.
    pub source: String,
    /// Number of findings out of window that are left at this end and its leg after it.
    pub n_left: usize,
    /// Worst kind of what is left.
    pub left: FindingKind,
    /// Cable that it uses, millimetres.
    pub cable_mm: f64,
    /// Parts that it uses up, by row.
    pub uses_up: Vec<String>,
    /// Conditions.
    pub conditions: Vec<String>,
}

/// Ways back from one finding.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct WaysDoc {
    /// Ways that are offered: by what they leave, then by cable, then by parts.
    pub offered: Vec<WayDoc>,
    /// Ways that are not offered, each with its reason.
    pub not_offered: Vec<String>,
}

pub(super) fn ways_doc(ways: &Ways, wording: &dyn Wording) -> WaysDoc {
    let one = |way: &WayBack| WayDoc {
        way: wording.say(&way.way.clone().into()),
        source: wording.say(&way.source),
        n_left: way.n_left,
        left: way.left,
        cable_mm: way.cable.mm(),
        uses_up: way.uses_up.clone(),
        conditions: (way.conditions.iter())
            .map(|said| wording.say(&said.clone().into()))
            .collect(),
    };
    let not_offered = ways.not_offered.iter();
    WaysDoc {
        offered: ways.offered.iter().map(one).collect(),
        not_offered: not_offered
            .map(|said| wording.say(&said.clone().into()))
            .collect(),
    }
}
