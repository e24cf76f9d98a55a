//! Adapter: the place of an adapter's end once it is on, and the time until which it may be moved.
//!
//! Why its own file: the body covers the adapter, so nothing later shows its place, and a millimetre matters.
//!
//! Source: the adapter's own row.

use super::coming::comings;
use super::wanted::{Against, Wanted};
use crate::catalogue::{Adapter, LinkRow, PartKind};
use crate::checks::{Inputs, LegInputs};
use crate::plane::Plane;
use crate::said::{HoldSaid, Read, Said};
use crate::slot::Measured;
use crate::stage::Stage;
use jointwright_units::{Interval, Toward};

/// Stage at which the adapter of a leg reaches its place; `None` for a leg without an adapter.
pub(super) fn placed_at(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Option<Stage> {
    let mut parts = comings(inputs, leg).into_iter();
    let coming = parts.find(|coming| coming.part == PartKind::Adapter)?;
    Some(match coming.stage {
        Stage::PushOn => Stage::PushOn,
        // A parked adapter reaches its place with the body.
        _ => Stage::Place,
    })
}

/// Distances to read on the adapters that reach their place at this stage, from the planes that their rows name.
pub(super) fn readings(inputs: &Inputs<'_>, legs: &[&LegInputs<'_>], stage: Stage) -> Vec<Wanted> {
    let of = |leg: &&LegInputs<'_>| of_leg(inputs, leg, stage);
    legs.iter().flat_map(of).collect()
}

fn of_leg(inputs: &Inputs<'_>, leg: &LegInputs<'_>, stage: Stage) -> Vec<Wanted> {
    let Some(adapter) = leg.chosen.adapter else {
        return Vec::new();
    };
    if placed_at(inputs, leg) != Some(stage) {
        return Vec::new();
    }
    let is_end = |plane: Plane| matches!(plane, Plane::AdapterNear | Plane::AdapterFar);
    let places = |row: &&LinkRow| is_end(row.from) != is_end(row.to);
    let rows: Vec<&LinkRow> = adapter.links.iter().filter(places).collect();
    if rows.is_empty() {
        return vec![unplaced(leg, adapter)];
    }
    let id = || leg.leg.id.clone();
    let read = |row: &LinkRow| {
        let what = HoldSaid::FromTo {
            from: row.from,
            to: row.to,
            leg: id(),
        };
        let source = || Said::from(&row.source);
        let range = row
            .tolerance
            .map(|(minus, plus)| Interval::new(row.distance - minus, row.distance + plus));
        let against = match range {
            Some(Some(range)) => Against::Along(range, source()),
            Some(None) => Against::no_window(HoldSaid::GivesNoRange { source: source() }),
            None => Against::no_window(HoldSaid::GivesNoWindow {
                source: source(),
                distance: Read::along(row.distance, Toward::Nearest),
            }),
        };
        let (from, to) = (row.from, row.to);
        Wanted::on(leg, Measured::Distance { from, to }, what, against)
    };
    rows.into_iter().map(read).collect()
}

fn unplaced(leg: &LegInputs<'_>, adapter: &Adapter) -> Wanted {
    let (row, id) = (adapter.head.id.clone(), leg.leg.id.clone());
    let against = Against::no_window(HoldSaid::NoRowSaysWhere);
    let what = HoldSaid::WhereEnds { row, leg: id };
    Wanted::on(leg, Measured::AdapterEnds, what, against)
}
