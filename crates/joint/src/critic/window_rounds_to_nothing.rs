//! Finds links whose window holds nothing that a crew can set on a tape or a rule.
//!
//! Only distances that a crew sets count: a dimension within one part is nobody's mark.

use super::entry::Entry;
use super::{Class, Defect, shown};
use crate::catalogue::{Catalogue, LinkRow};
use jointwright_units::{Station, Tick, Toward, Window, mark};

pub(super) const CLASS: Class = Class {
    slug: "window_rounds_to_nothing",
    question: "Does the window of a link hold anything that a crew can set?",
    find,
};

/// Number of decimals of a millimetre that a rule or calliper shows.
const MM_DECIMALS: usize = 1;

fn find(_: &Catalogue, entries: &[Entry<'_>]) -> Vec<Defect> {
    let mut defects = Vec::new();
    for entry in entries {
        defects.extend(entry.all_links().filter_map(|link| one(entry, link)));
    }
    defects
}

fn one(entry: &Entry<'_>, link: &LinkRow) -> Option<Defect> {
    let (minus, plus) = link.tolerance?;
    if link.from.is_of_one_piece_with(link.to) {
        return None;
    }
    let (least, greatest) = (link.distance - minus, link.distance + plus);
    let window = Window::new(Station::from(least), Station::from(greatest))?;
    let mark = mark(
        window.middle(),
        Some(window),
        Tick::SIXTY_FOURTH,
        Toward::Nearest,
    )?;
    let decimals = mark.mm.split_once('.').map_or(0, |(_, d)| d.len());
    if mark.tick.is_some() || decimals <= MM_DECIMALS {
        return None;
    }
    let found = format!(
        "The link of `{}` from {} to {} allows {} to {}: no sixty-fourth of an inch and no tenth of a millimetre lies in it.",
        entry.head.id,
        link.from.name(),
        link.to.name(),
        shown(least),
        shown(greatest)
    );
    Some(
        Defect::of_row(
            CLASS.slug,
            entry,
            found,
            "Expected a window that holds a mark of a crew's tape or rule.",
            "Look up the distance and both sides of its tolerance; one of them may be in the wrong unit.",
        )
        .at(&link.place),
    )
}
