//! Finds rows whose links put a plane at two places along two ways.
//!
//! A body's own length must also agree with its links: a two-ended body is twice as long as from its middle to its end, a one-ended body no shorter than from its seat to its end.
//! Planes keep the order of their names: the far end of a stress control is not nearer than the near end, the jacket edge not nearer than the metallic shield edge.

use super::entry::{Entry, Kind};
use super::row_chain::{Solved, planes, solve, ties};
use super::{Class, Defect, listed, shown};
use crate::catalogue::{Body, Catalogue};
use crate::cutback::Joined;
use crate::plane::Plane;
use jointwright_numerics::chain::{ChainError, Path};
use jointwright_units::{Length, Station};

pub(super) const CLASS: Class = Class {
    slug: "links_contradict",
    question: "Do two ways through the links of one row put a plane at two places?",
    find,
};

/// Greatest difference of a body's length from twice its half: each is printed in whole millimetres, so each is off by half a millimetre, and the half counts twice.
const ROUNDING: Length = Length::from_nm(1_500_000);

/// Half a millimetre for a length, and half a millimetre for a distance printed in whole millimetres.
const ROUNDING_OF_TWO: Length = Length::MM;

/// Planes in the order of their names, from the conductor end outward.
const ORDERS: [&[Plane]; 3] = [
    &[
        Plane::ConductorEnd,
        Plane::ConnectorMouth,
        Plane::InsulationEnd,
        Plane::ScreenEdge,
        Plane::ShieldEdge,
        Plane::JacketEdge,
        Plane::SealEnd,
    ],
    &[
        Plane::BodyCentre,
        Plane::ElectrodeEnd,
        Plane::ControlNear,
        Plane::ControlFar,
        Plane::BodyEnd,
    ],
    &[
        Plane::BodySeat,
        Plane::ElectrodeEnd,
        Plane::ControlNear,
        Plane::ControlFar,
        Plane::BodyEnd,
    ],
];

fn find(_: &Catalogue, entries: &[Entry<'_>]) -> Vec<Defect> {
    entries.iter().flat_map(of_row).collect()
}

/// Contradictions within one row.
pub(super) fn of_row(entry: &Entry<'_>) -> Vec<Defect> {
    if entry.links.is_empty() {
        return Vec::new();
    }
    let ties = ties(entry);
    let found = contradictions(&planes(&ties), &ties);
    if !found.is_empty() {
        return in_words(entry, &ties, &found);
    }
    // One wrong distance often shows in both, and is reported once.
    let length = length_against_links(entry, &ties);
    let order = || order_of_names(entry, &ties);
    length.or_else(order).into_iter().collect()
}

/// First two planes of the row in the wrong order.
fn order_of_names(entry: &Entry<'_>, ties: &[Joined]) -> Option<Defect> {
    for order in ORDERS {
        for (index, near) in order.iter().enumerate() {
            let Some(solved) = Solved::from(*near, ties) else {
                continue;
            };
            let wrong = order[index + 1..].iter().find_map(|far| {
                let apart = solved.nominal(*near, *far)?;
                (apart < Station::ZERO).then_some((*far, -apart))
            });
            if let Some((far, apart)) = wrong {
                return Some(wrong_way_round(entry, *near, far, apart));
            }
        }
    }
    None
}

fn wrong_way_round(entry: &Entry<'_>, near: Plane, far: Plane, apart: Station) -> Defect {
    let link = entry
        .links
        .iter()
        .find(|l| [l.from, l.to].contains(&near) && [l.from, l.to].contains(&far))
        .or_else(|| entry.links.iter().find(|l| [l.from, l.to].contains(&far)));
    let found = format!(
        "The links of `{}` put {} {} nearer the conductor end than {}.",
        entry.head.id,
        far.name(),
        millimetres(apart.half_nm()),
        near.name()
    );
    let expected = format!(
        "Expected {} to lie outward of {}, as their names say.",
        far.name(),
        near.name()
    );
    Defect::of_row(
        CLASS.slug,
        entry,
        found,
        &expected,
        "Look up both distances in the paper; a distance that is measured toward the conductor end needs `toward_end = true`.",
    )
    .at(link.map_or(&entry.head.place, |l| &l.place))
}

/// Two ways to one plane.
struct Loop {
    plane: usize,
    ways: [(Path, i64); 2],
}

fn contradictions(planes: &[Plane], ties: &[Joined]) -> Vec<Loop> {
    let Err(errors) = solve(planes, ties) else {
        return Vec::new();
    };
    errors
        .into_iter()
        .filter_map(|error| match error {
            ChainError::Contradiction {
                plane,
                first,
                first_value,
                second,
                second_value,
            } => Some(Loop {
                plane,
                ways: [(first, first_value), (second, second_value)],
            }),
            _ => None,
        })
        .collect()
}

fn in_words(entry: &Entry<'_>, ties: &[Joined], found: &[Loop]) -> Vec<Defect> {
    let planes = planes(ties);
    // One link that stands in every loop is one misprint, whatever the number of loops.
    let to_blame = blamed(&planes, ties, found);
    let said = if to_blame.is_empty() {
        found
    } else {
        &found[..1]
    };
    said.iter()
        .map(|one| {
            let [first, second] = &one.ways;
            let found = format!(
                "The links of `{}` put {} at {} from {} by way of {}, and at {} by way of {}.",
                entry.head.id,
                planes[one.plane].name(),
                millimetres(first.1),
                planes[first.0.start].name(),
                way(&first.0, &planes, ties),
                millimetres(second.1),
                way(&second.0, &planes, ties)
            );
            let hint = match to_blame.as_slice() {
                [blame] => format!(
                    "Look up the distance from {} to {}: without it all links agree.",
                    ties[*blame].from.name(),
                    ties[*blame].to.name()
                ),
                _ => "Look up each of these distances in the paper.".to_owned(),
            };
            let place = second.0.steps.last().map(|s| ties[s.link].place.clone());
            Defect::of_row(
                CLASS.slug,
                entry,
                found,
                "Expected every way to a plane to give the same place, by the row's own paper.",
                &hint,
            )
            .at(place.as_ref().unwrap_or(&entry.head.place))
        })
        .collect()
}

/// Links of the first loop without which no contradiction is left.
fn blamed(planes: &[Plane], ties: &[Joined], found: &[Loop]) -> Vec<usize> {
    let Some(first) = found.first() else {
        return Vec::new();
    };
    let mut steps: Vec<usize> = (first.ways.iter())
        .flat_map(|(path, _)| path.steps.iter().map(|s| s.link))
        .collect();
    steps.sort_unstable();
    steps.dedup();
    steps.retain(|blame| {
        let mut without = ties.to_vec();
        without.remove(*blame);
        contradictions(planes, &without).is_empty()
    });
    steps
}

fn way(path: &Path, planes: &[Plane], ties: &[Joined]) -> String {
    let steps: Vec<String> = path
        .steps
        .iter()
        .map(|step| {
            let way = if step.forward { "" } else { "back " };
            format!(
                "{way}{} to {}",
                millimetres(ties[step.link].distance.half_nm()),
                planes[step.plane].name()
            )
        })
        .collect();
    if steps.is_empty() {
        "itself".to_owned()
    } else {
        listed(&steps)
    }
}

fn millimetres(half_nm: i64) -> String {
    let station = Station::from_half_nm(half_nm);
    if station.floor() == station.ceil() {
        shown(station.floor())
    } else {
        format!("{} mm", station.mm())
    }
}

fn length_against_links(entry: &Entry<'_>, ties: &[Joined]) -> Option<Defect> {
    let Kind::Body(body) = entry.kind else {
        return None;
    };
    if body.side.is_some() {
        // Half of the whole length is not the half on this side.
        return None;
    }
    let (least, greatest, of) = length_by_links(body, ties)?;
    let length = Station::from(body.length);
    if least <= length && length <= greatest {
        return None;
    }
    let found = format!(
        "`{}` states `length` = {}, and its links put the body-end {of}.",
        body.head.id,
        shown(body.length)
    );
    Some(Defect::of_row(
        CLASS.slug,
        entry,
        found,
        "Expected one length of the body, whichever way its paper states it.",
        "Look up the length and the distance to the body-end in the paper.",
    ))
}

/// Least and greatest length that the links allow, and their sentence.
fn length_by_links(body: &Body, ties: &[Joined]) -> Option<(Station, Station, String)> {
    let half = Solved::from(Plane::BodyCentre, ties)?;
    if let Some((least, greatest)) = half.bounds(Plane::BodyCentre, Plane::BodyEnd) {
        let nominal = half.nominal(Plane::BodyCentre, Plane::BodyEnd)?;
        // A branch body has no single middle of its length.
        if body.kinds.iter().any(|kind| kind != "straight") {
            return None;
        }
        let rounding = Station::from(ROUNDING);
        let of = format!(
            "{} from the body-centre, half of {}",
            millimetres(nominal.half_nm()),
            millimetres((nominal + nominal).half_nm())
        );
        return Some((least + least - rounding, greatest + greatest + rounding, of));
    }
    let seated = Solved::from(Plane::BodySeat, ties)?;
    let (least, _) = seated.bounds(Plane::BodySeat, Plane::BodyEnd)?;
    let nominal = seated.nominal(Plane::BodySeat, Plane::BodyEnd)?;
    let of = format!("{} from the body-seat", millimetres(nominal.half_nm()));
    let unbounded = Station::from_half_nm(i64::MAX);
    Some((least - Station::from(ROUNDING_OF_TWO), unbounded, of))
}
