//! Finds planes of a row that nothing ties to the cable, and bodies that do not place all that they must.
//!
//! A row may rely on planes that other parts must provide: the conductor end, the connector, and cuts nearer the end than its own.
//! A shield part may begin at the screen edge, and a seal at the metallic shield edge.
//! If a catalogue has no row that could place a cut, another catalogue has one.

use super::entry::{Entry, Kind};
use super::row_chain::{pairs, reached, ties};
use super::{Class, Defect, listed};
use crate::catalogue::Catalogue;
use crate::plane::Plane;
use std::collections::BTreeSet;

pub(super) const CLASS: Class = Class {
    slug: "plane_loose",
    question: "Is every plane that a row names tied to the cable?",
    find,
};

/// Planes of the conductor and of any connector on it.
const CONNECTOR: [Plane; 5] = [
    Plane::ConductorEnd,
    Plane::ConnectorCentre,
    Plane::ConnectorSeat,
    Plane::ConnectorMouthBefore,
    Plane::ConnectorMouth,
];
/// Planes of a body.
const BODY: [Plane; 6] = [
    Plane::BodyCentre,
    Plane::BodySeat,
    Plane::ElectrodeEnd,
    Plane::ControlNear,
    Plane::ControlFar,
    Plane::BodyEnd,
];

type Pairs = BTreeSet<(Plane, Plane)>;

/// Planes that the rows of each kind tie to each other.
struct Others {
    bodies: Pairs,
    connectors: Pairs,
    adapters: Pairs,
    shield_parts: Pairs,
    seals: Pairs,
}

fn find(catalogue: &Catalogue, entries: &[Entry<'_>]) -> Vec<Defect> {
    let of = |is: fn(&Kind<'_>) -> bool| -> Pairs {
        let rows = entries.iter().filter(|e| is(&e.kind));
        rows.flat_map(|e| pairs(&ties(e))).collect()
    };
    let others = Others {
        bodies: of(|p| matches!(p, Kind::Body(_))),
        connectors: of(|p| matches!(p, Kind::Connector(..))),
        adapters: of(|p| matches!(p, Kind::Adapter(_))),
        shield_parts: of(|p| matches!(p, Kind::ShieldPart(_))),
        seals: of(|p| matches!(p, Kind::Seal(_))),
    };
    let mut defects = Vec::new();
    for entry in entries {
        let placed = placed(entry, catalogue, &others);
        defects.extend(loose(entry, &placed));
        if let Kind::Body(body) = entry.kind {
            let cuts = [Plane::InsulationEnd, Plane::ScreenEdge];
            let named = pairs(&ties(entry));
            let is_named = |p: Plane| named.iter().any(|(a, b)| *a == p || *b == p);
            let unplaced = cuts
                .iter()
                .filter(|p| !placed.contains(p) && !is_named(**p));
            defects.extend(unplaced.map(|plane| never_placed(entry, *plane)));
            let adapters = body.adapters.iter().filter_map(|id| catalogue.adapter(id));
            let of_adapters = adapters.flat_map(|a| &a.links).map(|l| (l.from, l.to));
            defects.extend(half_control(entry, &named, &of_adapters.collect()));
        }
    }
    defects
}

/// Planes that the row's links tie to the cable, together with the planes that other rows provide.
fn placed(entry: &Entry<'_>, catalogue: &Catalogue, others: &Others) -> BTreeSet<Plane> {
    let mut given = CONNECTOR.to_vec();
    let mut all = pairs(&ties(entry));
    let mut add = |from: &[&Pairs]| all.extend(from.iter().copied().flatten());
    match entry.kind {
        Kind::Body(body) => {
            add(&[&others.connectors, &others.shield_parts, &others.seals]);
            let adapters = body.adapters.iter().filter_map(|id| catalogue.adapter(id));
            all.extend(adapters.flat_map(|a| &a.links).map(|l| (l.from, l.to)));
        }
        Kind::Connector(..) => {
            add(&[&others.bodies, &others.shield_parts, &others.seals]);
            if catalogue.bodies.is_empty() {
                given.extend(BODY);
                given.extend([Plane::InsulationEnd, Plane::ScreenEdge]);
            }
        }
        Kind::Adapter(_) => {
            add(&[&others.bodies, &others.shield_parts, &others.seals]);
            given.extend(BODY);
            given.extend([Plane::InsulationEnd, Plane::ScreenEdge]);
        }
        Kind::ShieldPart(_) => {
            add(&[&others.bodies, &others.adapters, &others.seals]);
            given.extend(BODY);
            given.extend([Plane::InsulationEnd, Plane::ScreenEdge]);
        }
        Kind::Seal(_) => {
            add(&[&others.bodies, &others.adapters, &others.shield_parts]);
            given.extend(BODY);
            given.extend([Plane::InsulationEnd, Plane::ScreenEdge, Plane::ShieldEdge]);
        }
        Kind::Bus(_) | Kind::Plug(_) | Kind::Consumable(_) => {}
    }
    if catalogue.shield_parts.is_empty() {
        given.push(Plane::ShieldEdge);
    }
    if catalogue.seals.is_empty() {
        given.extend([Plane::JacketEdge, Plane::SealEnd]);
    }
    reached(&given, &all)
}

/// Planes that the row's own links leave loose; each piece once.
fn loose(entry: &Entry<'_>, placed: &BTreeSet<Plane>) -> Vec<Defect> {
    let own = pairs(&ties(entry));
    let mut left: BTreeSet<Plane> = own
        .iter()
        .flat_map(|(a, b)| [*a, *b])
        .filter(|p| !placed.contains(p))
        .collect();
    let mut defects = Vec::new();
    while let Some(first) = left.pop_first() {
        let piece = reached(&[first], &own);
        left.retain(|p| !piece.contains(p));
        let names: Vec<String> = piece.iter().map(|p| format!("`{}`", p.name())).collect();
        let found = format!(
            "`{}` names {}, and no link ties {} to the conductor end, the connector or a cut that other rows place.",
            entry.head.id,
            listed(&names),
            if names.len() == 1 { "it" } else { "them" }
        );
        let link = entry
            .links
            .iter()
            .find(|l| l.from == first || l.to == first);
        let place = link.map_or(&entry.head.place, |l| &l.place).clone();
        defects.push(
            Defect::of_row(
                CLASS.slug,
                entry,
                found,
                "Expected a way of links from the cable to every plane that a row names.",
                "Look in the paper for the distance that ties them, and add that link.",
            )
            .at(&place),
        );
    }
    defects
}

fn never_placed(entry: &Entry<'_>, plane: Plane) -> Defect {
    let found = format!(
        "Neither `{}` nor any row that goes with it says where the {} is cut.",
        entry.head.id,
        plane.name()
    );
    Defect::of_row(
        CLASS.slug,
        entry,
        found,
        "Expected the paper of the body, its adapter or its connector to place the insulation-end and the insulation-screen-edge.",
        "Look for the distance in the paper, and add the link.",
    )
}

/// A stretch of stress control with one end missing.
fn half_control(entry: &Entry<'_>, own: &Pairs, of_adapters: &Pairs) -> Option<Defect> {
    let names = |pairs: &Pairs, p: Plane| pairs.iter().any(|(a, b)| *a == p || *b == p);
    let (near, far) = (Plane::ControlNear, Plane::ControlFar);
    let (has, lacks) = match (names(own, near), names(own, far)) {
        (true, false) => (near, far),
        (false, true) => (far, near),
        _ => return None,
    };
    if names(of_adapters, lacks) {
        return None;
    }
    let link = entry.links.iter().find(|l| l.from == has || l.to == has);
    let found = format!(
        "`{}` places `{}` and never `{}`.",
        entry.head.id,
        has.name(),
        lacks.name()
    );
    let defect = Defect::of_row(
        CLASS.slug,
        entry,
        found,
        "Expected both ends of the stretch in which the screen edge may lie.",
        "Look for the other end in the paper, and add its link.",
    );
    Some(defect.at(link.map_or(&entry.head.place, |l| &l.place)))
}
