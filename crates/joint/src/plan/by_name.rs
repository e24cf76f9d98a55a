//! By name: sources of a cut, with the leg's parts by name alone.
//!
//! Why its own room: a front page has room for each paper once, beside its part; the sentences name only the part.

use super::cut::ByNameDoc;
use super::narrowed::narrowed_doc;
use crate::checks::LegInputs;
use crate::cutback::Cut;
use crate::said::{Whose, Wording};

/// Returns the words of a cut with the leg's parts by name alone; `window_of` are the owners of its window.
pub(super) fn by_name_doc(
    cut: &Cut,
    window_of: &[Whose],
    leg: &LegInputs<'_>,
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
        narrowed: narrowed_doc(&short, wording).map(|narrowed| narrowed.text),
    }
}
