//! Finds two rows of one table that take the same cable.

use super::entry::{Entry, Kind};
use super::table::{Line, are_told_apart, share_inside, tables};
use super::{Class, Defect, listed, shown};
use crate::cable::{Conductor, Words};
use crate::catalogue::{Catalogue, Connector, ConnectorEnd};
use std::collections::BTreeMap;

pub(super) const CLASS: Class = Class {
    slug: "rows_overlap",
    question: "Do two rows of one table take the same cable?",
    find,
};

const HINT: &str = "Look up both rows in the paper; where both are right, it must say what tells them apart, and so must the rows.";

fn find(_: &Catalogue, entries: &[Entry<'_>]) -> Vec<Defect> {
    let mut defects = Vec::new();
    for table in tables(entries) {
        for lines in clusters(&table.lines, |a, b| {
            share_inside(a.range, b.range) && !are_told_apart(a, b)
        }) {
            let ranges: Vec<String> = lines
                .iter()
                .map(|line| {
                    format!(
                        "`{}` from {} to {}",
                        line.entry.head.id,
                        shown(line.range.least()),
                        shown(line.range.greatest())
                    )
                })
                .collect();
            let found = format!(
                "Rows of {} overlap in the {}: {}.",
                table.paper,
                table.range,
                listed(&ranges)
            );
            let entries: Vec<&Entry<'_>> = lines.iter().map(|l| &l.entry).collect();
            defects.extend(defect(&entries, found));
        }
    }
    defects.extend(connectors(entries));
    defects
}

fn defect(entries: &[&Entry<'_>], found: String) -> Option<Defect> {
    let mut defect = Defect::of_row(
        CLASS.slug,
        entries.last()?,
        found,
        "Expected one row for one cable; ranges that only touch are taken as neighbours.",
        HINT,
    );
    defect.rows = entries.iter().map(|e| e.head.id.clone()).collect();
    Some(defect)
}

/// Groups of lines joined by overlaps, two lines or more each.
fn clusters<T>(lines: &[T], overlap: impl Fn(&T, &T) -> bool) -> Vec<Vec<&T>> {
    let mut group: Vec<usize> = (0..lines.len()).collect();
    for later in 0..lines.len() {
        for earlier in 0..later {
            let (a, b) = (group[earlier], group[later]);
            if a != b && overlap(&lines[earlier], &lines[later]) {
                for each in &mut group {
                    if *each == b {
                        *each = a;
                    }
                }
            }
        }
    }
    let mut clusters: BTreeMap<usize, Vec<&T>> = BTreeMap::new();
    for (line, group) in lines.iter().zip(&group) {
        clusters.entry(*group).or_default().push(line);
    }
    clusters.into_values().filter(|c| c.len() > 1).collect()
}

/// Whether lines of a table overlap at all, so that it has no order.
pub(super) fn have_no_order(lines: &[Line<'_>]) -> bool {
    lines.windows(2).any(|pair| {
        share_inside(pair[0].range, pair[1].range) || pair[0].range.least() == pair[1].range.least()
    })
}

/// A connector with its row.
type Tip<'c> = (Entry<'c>, &'c Connector);

/// Connectors of one paper, means and number of ends.
pub(super) fn connector_tables<'c>(entries: &[Entry<'c>]) -> Vec<Vec<Tip<'c>>> {
    let mut groups: BTreeMap<String, Vec<Tip<'c>>> = BTreeMap::new();
    for entry in entries {
        if let Kind::Connector(row, end) = entry.kind {
            // A row stands in its table once, whatever its ends.
            if row.ends.first().is_some_and(|first| first.name != end.name) {
                continue;
            }
            let paper = &row.head.instructions;
            let key = format!(
                "{:?}/{:?}/{:?}/{}",
                paper.paper, paper.revision, row.means, row.two_ended
            );
            groups.entry(key).or_default().push((*entry, row));
        }
    }
    groups.into_values().collect()
}

fn connectors(entries: &[Entry<'_>]) -> Vec<Defect> {
    let mut defects = Vec::new();
    for tips in connector_tables(entries) {
        for cluster in clusters(&tips, |a, b| shared(a.1, b.1).is_some()) {
            let entries: Vec<&Entry<'_>> = cluster.iter().map(|tip| &tip.0).collect();
            let ids: Vec<String> = (cluster.iter().map(|t| format!("`{}`", t.1.head.id))).collect();
            let both = (0..cluster.len())
                .flat_map(|j| (0..j).map(move |i| (i, j)))
                .find_map(|(i, j)| shared(cluster[i].1, cluster[j].1));
            let found = format!(
                "Connectors {} of one paper, {}, take the same conductor: {}.",
                listed(&ids),
                cluster[0].1.head.instructions.paper,
                both.unwrap_or_default()
            );
            defects.extend(defect(&entries, found));
        }
    }
    defects
}

/// Conductors that both rows take, at one end and the other in any order.
fn shared(a: &Connector, b: &Connector) -> Option<String> {
    let (first, last) = (a.ends.first()?, a.ends.last()?);
    let (one, other) = (b.ends.first()?, b.ends.last()?);
    let whole = (a.length, a.stop) == (b.length, b.stop);
    let both = |x: &ConnectorEnd, y: &ConnectorEnd| shared_end(x, y, whole);
    let straight = both(first, one).filter(|_| both(last, other).is_some());
    straight.or_else(|| both(first, other).filter(|_| both(last, one).is_some()))
}

/// Every conductor of the lists of an end.
fn each_conductor(end: &ConnectorEnd) -> impl Iterator<Item = Conductor> {
    end.sizes.iter().flat_map(move |size| {
        end.metals.iter().flat_map(move |metal| {
            end.strandings.iter().map(move |stranding| Conductor {
                size: *size,
                metal: *metal,
                stranding: *stranding,
            })
        })
    })
}

/// A conductor that both ends take; the bores decide where the sizes do not separate them.
fn shared_end(a: &ConnectorEnd, b: &ConnectorEnd, same_lengths: bool) -> Option<String> {
    a.metals.iter().find(|m| b.metals.contains(m))?;
    a.strandings.iter().find(|s| b.strandings.contains(s))?;
    let differ_in_tool_only = a.sizes == b.sizes
        && same_lengths
        && a.outside_diameter == b.outside_diameter
        && (&a.die, a.presses) != (&b.die, b.presses);
    if differ_in_tool_only {
        return None;
    }
    let bores = a.bore.zip(b.bore);
    if a.sizes.iter().any(|s| b.sizes.contains(s)) {
        let both = |c: &Conductor| a.takes(*c) && b.takes(*c);
        let conductor = each_conductor(a).find(both)?;
        let Conductor {
            size,
            metal,
            stranding,
        } = conductor;
        // Both name the same sizes and their bores differ: the bore decides.
        return bores
            .is_none_or(|(x, y)| share_inside(x, y))
            .then(|| format!("{size} {} {}", metal.name(Words::Iec), stranding.name()));
    }
    if a.sizes.is_empty() || b.sizes.is_empty() {
        let (x, y) = bores.filter(|(x, y)| share_inside(*x, *y))?;
        return Some(format!(
            "the bores run from {} to {} and from {} to {}",
            shown(x.least()),
            shown(x.greatest()),
            shown(y.least()),
            shown(y.greatest())
        ));
    }
    None
}
