//! Finds parts that the rows alone place on a layer for which their row gives no range.
//!
//! The rows count as printed, without tolerances; a plan judges the worst of the windows.
//! A body is compared with the metallic shield edges of the shield parts, with every connector of its kind; an adapter with the screen edge of its body; a contact with the jacket edges of the seals.
//! The parts of one catalogue need not all go together, so a row is at fault only if it goes with no row of the other kind.
//! If all rows conflict with one row, that row is at fault.
//! If another class finds a defect in one of the rows, only that defect is reported.

use super::entry::{Entry, Kind};
use super::row_chain::{Solved, ties};
use super::{Class, Defect, listed, shown};
use crate::cable::{Layer, Words};
use crate::catalogue::{Adapter, Catalogue};
use crate::cutback::Joined;
use crate::plane::Plane;
use jointwright_units::Station;

pub(super) const CLASS: Class = Class {
    slug: "part_over_layer",
    question: "Does a part come to lie on a layer for which its row gives it no range?",
    find,
};

fn find(catalogue: &Catalogue, entries: &[Entry<'_>]) -> Vec<Defect> {
    let of = |heads: Vec<&str>| -> Vec<&Entry<'_>> {
        heads
            .into_iter()
            .filter_map(|id| entry(entries, id))
            .collect()
    };
    let bodies = of(catalogue
        .bodies
        .iter()
        .map(|r| r.head.id.as_str())
        .collect());
    let parts = of(catalogue
        .shield_parts
        .iter()
        .map(|r| r.head.id.as_str())
        .collect());
    let seals = of(catalogue.seals.iter().map(|r| r.head.id.as_str()).collect());
    let over_shield = Over {
        layer: Layer::MetallicShield,
        edge: Plane::ShieldEdge,
        plane: Plane::BodyEnd,
    };
    let over_jacket = Over {
        layer: Layer::Jacket,
        edge: Plane::JacketEdge,
        plane: Plane::ContactFar,
    };
    let mut defects = over_shield.of_pairs(catalogue, entries, &bodies, &parts);
    defects.extend(over_jacket.of_pairs(catalogue, entries, &parts, &seals));
    defects.extend(adapters(catalogue, entries));
    defects
}

/// Adapters over the screen edge of a body to which they belong, each once.
fn adapters(catalogue: &Catalogue, entries: &[Entry<'_>]) -> Vec<Defect> {
    let over_screen = Over {
        layer: Layer::InsulationScreen,
        edge: Plane::ScreenEdge,
        plane: Plane::AdapterFar,
    };
    let of_adapter = |adapter: &Adapter| {
        let own = catalogue.bodies.iter();
        own.filter(|body| body.adapters.contains(&adapter.head.id))
            .find_map(|body| {
                let rows = [
                    entry(entries, &adapter.head.id)?,
                    entry(entries, &body.head.id)?,
                ];
                let past = over_screen.past(catalogue, entries, rows)?;
                (past > Station::ZERO).then(|| over_screen.defect(rows[0], &[rows[1]], past))
            })
    };
    catalogue.adapters.iter().filter_map(of_adapter).collect()
}

fn entry<'e, 'c>(entries: &'e [Entry<'c>], id: &str) -> Option<&'e Entry<'c>> {
    entries.iter().find(|e| e.head.id == id)
}

/// Least distance by which one plane lies beyond another with the given rows, over every connector of the catalogue; `None` if some connector does not place them.
fn beyond(
    catalogue: &Catalogue,
    entries: &[Entry<'_>],
    rows: &[&Entry<'_>],
    [from, to]: [Plane; 2],
) -> Option<Station> {
    let own: Vec<Joined> = rows.iter().flat_map(|row| ties(row)).collect();
    let names = |plane: Plane| own.iter().any(|l| l.from == plane || l.to == plane);
    let is_two_ended = names(Plane::ConnectorCentre);
    let apart = |ties: &[Joined]| Solved::from(from, ties)?.nominal(from, to);
    if let Some(apart) = apart(&own) {
        return Some(apart);
    }
    let connectors = catalogue.connectors.iter();
    let all: Vec<Option<Station>> = connectors
        .filter(|c| c.two_ended == is_two_ended)
        .filter_map(|c| entry(entries, &c.head.id))
        .map(|connector| {
            let mut all = own.clone();
            all.extend(ties(connector));
            apart(&all)
        })
        .collect();
    all.into_iter()
        .collect::<Option<Vec<Station>>>()?
        .into_iter()
        .min()
}

/// A plane of one row beyond the edge that another row gives.
struct Over {
    layer: Layer,
    edge: Plane,
    plane: Plane,
}

impl Over {
    /// Distance by which the first row's plane passes the edge that the second gives; `None` if nothing places them, or the first may lie there.
    fn past(
        &self,
        catalogue: &Catalogue,
        entries: &[Entry<'_>],
        rows: [&Entry<'_>; 2],
    ) -> Option<Station> {
        let is_named = may_lie_on(rows[0]).contains(&self.layer);
        if is_named || rows[0].fits.iter().any(|f| f.over == self.layer) {
            return None;
        }
        beyond(catalogue, entries, &rows, [self.edge, self.plane])
    }

    fn of_pairs(
        &self,
        catalogue: &Catalogue,
        entries: &[Entry<'_>],
        rows: &[&Entry<'_>],
        others: &[&Entry<'_>],
    ) -> Vec<Defect> {
        let past: Vec<Vec<Option<Station>>> = rows
            .iter()
            .map(|row| {
                let past = |other: &&Entry<'_>| self.past(catalogue, entries, [row, other]);
                others.iter().map(past).collect()
            })
            .collect();
        let mut defects = Vec::new();
        // If every row lies over an edge, the edge is at fault.
        let of_edge = |at: usize| -> Vec<Option<Station>> { past.iter().map(|p| p[at]).collect() };
        let at_fault: Vec<bool> = (0..others.len())
            .map(|at| rows.len() > 1 && least_of_all(&of_edge(at)).is_some())
            .collect();
        for (at, other) in others.iter().enumerate().filter(|(at, _)| at_fault[*at]) {
            if let Some(past) = least_of_all(&of_edge(at)) {
                let link = place(other, self.edge);
                let mut defect = self.defect(rows[0], &[other], past).at(&link);
                defect.rows = vec![other.head.id.clone()];
                defect
                    .rows
                    .extend(rows.iter().map(|row| row.head.id.clone()));
                defects.push(defect);
            }
        }
        for (row, past) in rows.iter().zip(&past) {
            let left: Vec<Option<Station>> = (past.iter().zip(&at_fault))
                .filter(|(_, is_at_fault)| !**is_at_fault)
                .map(|(past, _)| *past)
                .collect();
            if let Some(past) = least_of_all(&left) {
                defects.push(self.defect(row, others, past));
            }
        }
        defects
    }

    fn defect(&self, row: &Entry<'_>, others: &[&Entry<'_>], past: Station) -> Defect {
        let (edge, layer) = (self.edge.name(), self.layer.name(Words::Iec));
        let names: Vec<String> = others.iter().map(|o| format!("`{}`", o.head.id)).collect();
        let found = format!(
            "The {} of `{}` lies {} or more beyond the {edge} that {} gives, over the {layer}.",
            self.plane.name(),
            row.head.id,
            shown(past.ceil()),
            listed(&names)
        );
        let expected = format!(
            "Expected `{}` to end before the {edge}: its row gives it no range over the {layer}.",
            row.head.id
        );
        let hint = "Look up both distances in their papers; where the paper lets it lie there, give the range under `fits` or name the layer in `may_lie_on`.";
        let mut defect =
            Defect::of_row(CLASS.slug, row, found, &expected, hint).at(&place(row, self.plane));
        defect.rows.extend(others.iter().map(|o| o.head.id.clone()));
        defect
    }
}

/// Place of the link that names a plane in a row, else of the row.
fn place(row: &Entry<'_>, plane: Plane) -> crate::form::Span {
    let link = row.links.iter().find(|l| l.from == plane || l.to == plane);
    link.map_or(&row.head.place, |l| &l.place).clone()
}

fn may_lie_on<'c>(row: &Entry<'c>) -> &'c [Layer] {
    match row.kind {
        Kind::Body(row) => &row.may_lie_on,
        Kind::Adapter(row) => &row.may_lie_on,
        Kind::ShieldPart(row) => &row.may_lie_on,
        Kind::Seal(row) => &row.may_lie_on,
        _ => &[],
    }
}

/// Least of the known distances, if there is one and each is positive.
fn least_of_all(past: &[Option<Station>]) -> Option<Station> {
    let known = past.iter().copied().flatten();
    known.min().filter(|least| *least > Station::ZERO)
}
