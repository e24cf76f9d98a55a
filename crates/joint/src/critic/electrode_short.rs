//! Finds bodies whose electrode cannot cover the longest connector that the row itself admits.
//!
//! At the worst that the row allows: the longest connector as made, the body moved toward the conductor end by its placement tolerance, the insulation cut at the far end of its own tolerance.
//!
//! ```text
//!   connector-centre or -seat          L, the longest: L/2 or L
//!   |<------------ L ------------>|<-- gap, plus -->|
//!   |                             mouth             insulation-end
//!   |<-- minus --|<---------------- electrode ------------->|
//!                                                   |<----->|   overlap
//! ```
//!
//! A distance without a tolerance counts as printed, so a defect found here is short even then.

use super::entry::{Entry, Kind};
use super::row_chain::{Solved, ties};
use super::{Class, Defect, shown};
use crate::catalogue::{Body, Catalogue};
use crate::cutback::{Joined, Tolerance};
use crate::plane::Plane;
use crate::said::Whose;
use jointwright_units::{Length, Station};

pub(super) const CLASS: Class = Class {
    slug: "electrode_short",
    question: "Can the electrode cover the longest connector that the row admits?",
    find,
};

fn find(_: &Catalogue, entries: &[Entry<'_>]) -> Vec<Defect> {
    entries.iter().filter_map(of_row).collect()
}

/// Shortness of one row's electrode.
pub(super) fn of_row(entry: &Entry<'_>) -> Option<Defect> {
    let Kind::Body(body) = entry.kind else {
        return None;
    };
    let longest = body.connector_length_greatest?;
    [
        (Plane::ConnectorCentre, Station::half_of(longest)),
        (Plane::ConnectorSeat, Station::from(longest)),
    ]
    .into_iter()
    .find_map(|(datum, reach)| at(entry, body, longest, datum, reach))
}

fn at(
    entry: &Entry<'_>,
    body: &Body,
    longest: Length,
    datum: Plane,
    reach: Station,
) -> Option<Defect> {
    let mut ties = ties(entry);
    ties.push(Joined {
        from: datum,
        to: Plane::ConnectorMouth,
        distance: reach,
        tolerance: Tolerance::Exact,
        source: Whose::Person(String::new()),
        place: crate::form::Span::default(),
    });
    let solved = Solved::from(datum, &ties)?;
    let edge = [Plane::InsulationEndShrunk, Plane::InsulationEnd]
        .into_iter()
        .find(|plane| solved.planes().contains(plane));
    let (from, asked) = match edge {
        Some(edge) => (edge, body.electrode_overlap_least.unwrap_or(Length::ZERO)),
        // If the row does not say how far behind the mouth the insulation ends, the electrode must at least pass the mouth.
        None => (Plane::ConnectorMouth, Length::ZERO),
    };
    let (least, _) = solved.bounds(from, Plane::ElectrodeEnd)?;
    if least >= Station::from(asked) {
        return None;
    }
    let reached = if least < Station::ZERO {
        format!("ends {} short of", shown((-least).ceil()))
    } else {
        format!("reaches {} past", shown(least.floor()))
    };
    let found = format!(
        "`{}` admits a connector of {}; with that one, at the worst of the row's own tolerances, the electrode {reached} the {}.",
        body.head.id,
        shown(longest),
        from.name()
    );
    let expected = format!(
        "Expected {} or more by the row's own {}.",
        shown(asked),
        match (edge, body.electrode_overlap_least) {
            (Some(_), Some(_)) => "`electrode_overlap_least`",
            _ => "longest connector, which the electrode is there to cover",
        }
    );
    Some(Defect::of_row(
        CLASS.slug,
        entry,
        found,
        &expected,
        "Look up `connector_length_greatest`, the distance to the electrode-end and the overlap; where all three are right, ask the maker which of them prevails.",
    ))
}
