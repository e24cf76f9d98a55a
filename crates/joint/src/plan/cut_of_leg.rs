//! Cut of a leg: fills the shape of a cut from the cutback.

use super::by_name::by_name_doc;
use super::cut::{CutDoc, CutKind, PlacedDoc, RungDoc};
use super::narrowed::narrowed_doc;
use super::printed::printed;
use super::words::plane_words;
use crate::cable::Words;
use crate::catalogue::Connector;
use crate::checks::LegInputs;
use crate::cutback::{Cut, Growth, Rung};
use crate::plane::Plane;
use crate::programme::{EdgeAct, shield_edge};
use crate::said::{PlanSaid, Whose, Wording};
use jointwright_units::{Length, Station};

pub(super) fn cut_doc(
    cut: &Cut,
    leg: &LegInputs<'_>,
    words: Words,
    wording: &dyn Wording,
) -> CutDoc {
    let shown = cut
        .nominal
        .map(|nominal| printed(nominal, cut.window, words));
    let rung = |rung: &Rung| {
        let shown = printed(rung.nominal, rung.window, words);
        RungDoc {
            grew_inch: rung
                .grew
                .exact_inch()
                .filter(|_| words == Words::Us)
                .unwrap_or_default(),
            grew_mm: rung.grew.mm(),
            nominal_mm: rung.nominal.mm(),
            min_mm: rung.window.map(|w| w.least().mm()),
            max_mm: rung.window.map(|w| w.greatest().mm()),
            inch: shown.inch,
            mark_mm: shown.mm,
            mark_at_mm: shown.at_mm,
            printed_window: shown.window,
        }
    };
    let (inch, mark_mm, mark_at_mm, printed_window) = shown.map_or((None, None, None, None), |s| {
        (s.inch, s.mm, s.at_mm, s.window)
    });
    let whose = |of: &Whose| wording.say(&of.into());
    let owners = owners(cut, leg);
    let edge = (cut.plane == Plane::ShieldEdge).then(|| shield_edge(leg));
    CutDoc {
        plane: cut.plane,
        words: plane_words(cut.plane, wording),
        kind: match (cut.plane.is_cut(), &edge) {
            (false, _) => CutKind::Mark,
            (true, Some(edge)) if edge.is_laid_back() => CutKind::LayBack,
            (true, Some(edge)) if edge.act == EdgeAct::Ask => CutKind::Ask,
            (true, _) => CutKind::Cut,
        },
        keeps: edge
            .as_ref()
            .and_then(|edge| Some(wording.say(&edge.keeps()?.into()))),
        keeps_mm: edge.as_ref().and_then(|e| e.kept).map(Length::mm),
        from: wording.say(
            &PlanSaid::SquareCutEnd {
                before_pressing: leg.chosen.connector.is_some_and(Connector::grows),
            }
            .into(),
        ),
        nominal_mm: cut.nominal.map(Station::mm),
        min_mm: cut.window.map(|w| w.least().mm()),
        max_mm: cut.window.map(|w| w.greatest().mm()),
        inch,
        mark_mm,
        mark_at_mm,
        printed_window,
        window_of: owners.iter().map(whose).collect(),
        by_name: by_name_doc(cut, &owners, leg, wording),
        placed: cut.placed.as_ref().map(|placed| PlacedDoc {
            by: placed.by.iter().map(|of| wording.say(&of.into())).collect(),
            from: plane_words(placed.from, wording),
        }),
        narrowed: narrowed_doc(cut, wording),
        why: cut.why.as_ref().map(|why| wording.say(why)),
        growth_ladder: cut.ladder.iter().map(rung).collect(),
    }
}

/// Owners of the window of a cut, and the source of the measured growth that it holds.
fn owners(cut: &Cut, leg: &LegInputs<'_>) -> Vec<Whose> {
    let mut owners = cut.whose.clone();
    if let (Growth::Measured { source, .. }, Plane::InsulationEnd) =
        (&leg.cutback.growth, cut.plane)
        && !owners.is_empty()
    {
        owners.push(source.clone());
    }
    owners
}
