//! Table: the rows of one paper from which a cable chooses one, in the order of the deciding range.

use super::entry::{Entry, Kind, range_words};
use crate::cable::Layer;
use jointwright_units::Interval;
use std::collections::BTreeMap;

/// A row of a table, with its deciding range.
pub(super) struct Line<'c> {
    pub entry: Entry<'c>,
    pub range: Interval,
}

/// Rows of one table, in rising order.
pub(super) struct Table<'c> {
    /// Deciding range, in words.
    pub range: String,
    /// Paper and revision.
    pub paper: String,
    pub lines: Vec<Line<'c>>,
}

/// Key of a range: rank and name of its place, its layer, its temperature.
type Where<'c> = (u8, &'c str, Layer, Option<u64>);

/// Tables of all rows that have ranges over the cable.
pub(super) fn tables<'c>(entries: &[Entry<'c>]) -> Vec<Table<'c>> {
    let mut groups: BTreeMap<String, Vec<Entry<'c>>> = BTreeMap::new();
    // A side of a body has no place among whole bodies: two sides make a row of the paper's table.
    let is_side = |e: &Entry<'c>| matches!(e.kind, Kind::Body(row) if row.side.is_some());
    let rows = entries.iter().filter(|e| !e.fits.is_empty() && !is_side(e));
    for entry in rows {
        groups.entry(key(entry)).or_default().push(*entry);
    }
    groups.into_values().filter_map(table).collect()
}

fn table(entries: Vec<Entry<'_>>) -> Option<Table<'_>> {
    let mut counts: BTreeMap<Where<'_>, usize> = BTreeMap::new();
    for entry in &entries {
        let mut places: Vec<Where<'_>> = entry.fits.iter().map(place).collect();
        places.sort();
        places.dedup();
        for place in places {
            *counts.entry(place).or_default() += 1;
        }
    }
    let most = *counts.values().max()?;
    let (decides, _) = counts.into_iter().find(|(_, count)| *count == most)?;
    let instructions = &entries.first()?.head.instructions;
    let paper = format!("{} revision {}", instructions.paper, instructions.revision);
    let mut lines: Vec<Line<'_>> = entries
        .iter()
        .filter_map(|entry| {
            let fits = entry.fits.iter().find(|f| place(f) == decides)?;
            Some(Line {
                entry: *entry,
                range: fits.range,
            })
        })
        .collect();
    lines.sort_by(|a, b| {
        let key = |l: &Line<'_>| (l.range.least(), l.range.greatest());
        key(a)
            .cmp(&key(b))
            .then_with(|| a.entry.head.id.cmp(&b.entry.head.id))
    });
    Some(Table {
        range: range_words(decides.1, decides.2),
        paper,
        lines,
    })
}

/// The bore decides before the seal, the seal before the mouth.
fn place(fits: &crate::catalogue::Fits) -> Where<'_> {
    let rank = match fits.at.as_str() {
        "bore" => 0,
        "seal" => 1,
        _ => 2,
    };
    (rank, &fits.at, fits.over, fits.at_degc.map(f64::to_bits))
}

/// Common key of the rows of one table.
fn key(entry: &Entry<'_>) -> String {
    let instructions = &entry.head.instructions;
    let more = match entry.kind {
        Kind::Body(row) => {
            let mut kinds = row.kinds.clone();
            kinds.sort();
            format!("body/{}/{}", kinds.join("+"), row.system_greatest_kv)
        }
        Kind::Adapter(row) => format!("adapter/{}/{:?}", row.system_greatest_kv, row.outside),
        Kind::ShieldPart(_) => "shield_part".to_owned(),
        Kind::Seal(row) => format!("seal/{}", row.takes_bonding_lead.unwrap_or(false)),
        _ => "other".to_owned(),
    };
    format!(
        "{:?}/{:?}/{more}",
        instructions.paper, instructions.revision
    )
}

/// Whether something other than the deciding range separates two rows of a table.
pub(super) fn are_told_apart(a: &Line<'_>, b: &Line<'_>) -> bool {
    match (a.entry.kind, b.entry.kind) {
        (Kind::Body(one), Kind::Body(other)) => {
            let differ = |x: Option<i64>, y: Option<i64>| x.zip(y).is_some_and(|(x, y)| x != y);
            let interfaces = one.interface.as_ref().zip(other.interface.as_ref());
            are_disjoint(&one.earthings, &other.earthings)
                || are_disjoint(&one.bondings, &other.bondings)
                || differ(one.legs, other.legs)
                || interfaces.is_some_and(|(x, y)| x != y)
                || (a.range == b.range
                    && (have_ranges_apart(&a.entry, &b.entry)
                        || one.connector_length_greatest != other.connector_length_greatest
                        || (one.connector_diameter.zip(other.connector_diameter))
                            .is_some_and(|(x, y)| !share_inside(x, y))))
        }
        (Kind::ShieldPart(one), Kind::ShieldPart(other)) => {
            are_disjoint(&one.shields, &other.shields)
                || are_disjoint(&one.bondings, &other.bondings)
        }
        (Kind::Seal(one), Kind::Seal(other)) => {
            a.range == b.range && one.parked_length != other.parked_length
        }
        _ => false,
    }
}

/// Whether two rows with the same deciding range differ in another range over the cable.
fn have_ranges_apart(a: &Entry<'_>, b: &Entry<'_>) -> bool {
    a.fits.iter().any(|x| {
        b.fits
            .iter()
            .any(|y| place(x) == place(y) && !share_inside(x.range, y.range))
    })
}

/// Whether both lists have entries and none in common.
fn are_disjoint(a: &[String], b: &[String]) -> bool {
    !a.is_empty() && !b.is_empty() && !a.iter().any(|word| b.contains(word))
}

/// Whether two ranges have more in common than a bound.
pub(super) fn share_inside(a: Interval, b: Interval) -> bool {
    a == b || (a.least() < b.greatest() && b.least() < a.greatest())
}
