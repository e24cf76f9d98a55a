//! Finds bore ranges that no cable of the table reaches.
//!
//! The cables are of the classes that the row is rated for: in each family of standards the highest class that is not above `system_greatest`.

use super::entry::{Entry, Kind, range_words};
use super::{Class, Defect, shown};
use crate::cable::{Candidate, Layer, Wall, candidates};
use crate::catalogue::{Catalogue, Connector, ConnectorEnd, Fits};
use jointwright_units::Interval;

pub(super) const CLASS: Class = Class {
    slug: "range_unreached",
    question: "Is there any cable of the table that a bore range can take?",
    find,
};

const HINT: &str =
    "Look up both bounds and the layer they are over; a bound in the wrong unit shows here.";

fn find(_: &Catalogue, entries: &[Entry<'_>]) -> Vec<Defect> {
    let mut defects = Vec::new();
    for entry in entries {
        if let Kind::Connector(row, end) = entry.kind {
            defects.extend(connector(entry, row, end));
        }
        let Some(system_kv) = entry.system_greatest_kv() else {
            continue;
        };
        let Some((classes, cables)) = rated(system_kv) else {
            continue;
        };
        for fits in entry.fits.iter().filter(|f| f.is_bore()) {
            defects.extend(range(entry, fits, &classes, &cables));
        }
    }
    defects
}

fn range(entry: &Entry<'_>, fits: &Fits, classes: &str, cables: &[&Candidate]) -> Option<Defect> {
    let over: Vec<Interval> = (cables.iter())
        .filter_map(|cable| cable.diameters_over(fits.over))
        .collect();
    if over.is_empty() || over.iter().any(|d| d.meet(fits.range).is_some()) {
        return None;
    }
    let found = format!(
        "The {} of `{}` runs from {} to {}, and no cable of the table for {classes} has such a diameter.",
        range_words(&fits.at, fits.over),
        entry.head.id,
        shown(fits.range.least()),
        shown(fits.range.greatest())
    );
    let hull = Interval::hull(over.iter().flat_map(|d| [d.least(), d.greatest()]))?;
    let expected = format!(
        "Expected a range that some cable reaches; by the cable table they measure from {} to {} there.",
        shown(hull.least()),
        shown(hull.greatest())
    );
    Some(Defect::of_row(CLASS.slug, entry, found, &expected, HINT))
}

/// Cables of the highest classes that a system voltage allows, and the classes in words.
fn rated(system_kv: f64) -> Option<(String, Vec<&'static Candidate>)> {
    let class_kv = |wall: &Wall| match wall {
        Wall::Icea { class_kv, .. } => Some((false, u32::from(*class_kv))),
        Wall::Iec { u_kv, .. } => Some((true, *u_kv)),
        Wall::Stated(_) => None,
    };
    let highest = |is_iec: bool| {
        candidates()
            .iter()
            .flat_map(|cable| cable.walls.iter().filter_map(class_kv))
            .filter(|(iec, kv)| *iec == is_iec && f64::from(*kv) <= system_kv)
            .map(|(_, kv)| kv)
            .max()
    };
    let highest: Vec<(bool, u32)> = [false, true]
        .into_iter()
        .filter_map(|is_iec| highest(is_iec).map(|kv| (is_iec, kv)))
        .collect();
    let classes: Vec<String> = highest
        .iter()
        .map(|(is_iec, kv)| match is_iec {
            true => format!("U = {kv} kV"),
            false => format!("the {kv} kV class"),
        })
        .collect();
    let is_rated = |cable: &&Candidate| {
        let mut classes = cable.walls.iter().filter_map(class_kv);
        classes.any(|class| highest.contains(&class))
    };
    let cables = candidates().iter().filter(is_rated).collect();
    (!highest.is_empty()).then(|| (classes.join(" or "), cables))
}

/// A connector's bore against the conductors that its own row names.
fn connector(entry: &Entry<'_>, row: &Connector, end: &ConnectorEnd) -> Option<Defect> {
    let bore = end.bore?;
    let named = candidates().iter().filter(|cable| {
        let conductor = cable.conductor;
        let of_any_size = end.sizes.is_empty()
            && end.metals.contains(&conductor.metal)
            && end.strandings.contains(&conductor.stranding);
        of_any_size || end.takes(conductor)
    });
    let over: Vec<Interval> = named
        .filter_map(|cable| cable.diameters_over(Layer::Conductor))
        .collect();
    if over.is_empty() || over.iter().any(|d| d.meet(bore).is_some()) {
        return None;
    }
    let found = format!(
        "The bore of `{}`{} runs from {} to {}, and no conductor that its row names has such a diameter.",
        row.head.id,
        end.of_end(),
        shown(bore.least()),
        shown(bore.greatest())
    );
    let hull = Interval::hull(over.iter().flat_map(|d| [d.least(), d.greatest()]))?;
    let expected = format!(
        "Expected a bore that one of them reaches; by the cable table they measure from {} to {}.",
        shown(hull.least()),
        shown(hull.greatest())
    );
    Some(Defect::of_row(CLASS.slug, entry, found, &expected, HINT))
}
