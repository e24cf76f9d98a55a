//! By name: on whose word a cut is, with the leg's parts by their names alone.
//!
//! Why its own room: a front page has room for each paper once, beside its part; its sentences name the part.

use super::narrowed::narrowed_doc;
use crate::cable::Words;
use crate::checks::LegInputs;
use crate::cutback::Cut;
use crate::said::{Whose, Wording};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

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

/// The words of a cut with the leg's parts by their names alone; `window_of` are the owners of its window.
pub(super) fn by_name_doc(
    cut: &Cut,
    window_of: &[Whose],
    leg: &LegInputs<'_>,
    words: Words,
    wording: &dyn Wording,
) -> ByNameDoc {
    let chosen = leg.chosen;
    let heads = [
        chosen.body.map(|row| &row.head),
        chosen.adapter.map(|row| &row.head),
        chosen.connector.map(|row| &row.head),
        chosen.shield_part.map(|row| &row.head),
        chosen.seal.map(|row| &row.head),
    ];
    let rows: Vec<&str> = heads
        .into_iter()
        .flatten()
        .map(|head| head.id.as_str())
        .collect();
    let named = |all: &[Whose]| -> Vec<Whose> { all.iter().map(|of| of.by_name(&rows)).collect() };
    let said = |all: &[Whose]| -> Vec<String> {
        named(all)
            .iter()
            .map(|of| wording.say(&of.into()))
            .collect()
    };
    let mut short = cut.clone();
    short.whose = named(&cut.whose);
    if let Some(narrowed) = &mut short.narrowed {
        narrowed.paper = narrowed.paper.by_name(&rows);
        narrowed.by = named(&narrowed.by);
    }
    ByNameDoc {
        placed_by: cut
            .placed
            .as_ref()
            .map_or(Vec::new(), |placed| said(&placed.by)),
        window_of: said(window_of),
        narrowed: narrowed_doc(&short, words, wording).map(|narrowed| narrowed.text),
    }
}
