//! Square: from what reference the square cut itself is set out.
//!
//! Why its own file: every other place is measured from that cut, so it needs a place of its own.
//!
//! Invariants: the distance is the connector's stop and gap as its row gives them; what the row does not give is asked for.

use super::COMMON_PRACTICE;
use super::hold::{Against, Wanted};
use super::line::{Line, length_text};
use crate::cable::Words;
use crate::catalogue::{Connector, ConnectorEnd};
use crate::checks::{Inputs, LegInputs};
use crate::job::JointKind;
use jointwright_units::{Length, Station};

/// The reference from which the square cut of a leg is set out.
fn reference(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> String {
    match (inputs.order.job.kind, leg.leg.port) {
        (JointKind::Straight | JointKind::Cable, _) => "the centre line of the joint, marked on the rack".to_owned(),
        (JointKind::Branch, _) => {
            "the contact plane of the connector, marked on the rack where the instructions of the body put it".to_owned()
        }
        (JointKind::Separable, Some(port)) => {
            format!("the mating face of port {port} of the bus, hung as it will stay")
        }
        (JointKind::Separable, None) => {
            "the mating face of the leg's port of the bus, hung as it will stay".to_owned()
        }
    }
}

/// How far the conductor end stands from the contact plane or the middle of its connector, in words.
fn from_reference(end: &ConnectorEnd, words: Words) -> String {
    // A barrel may reach past the middle from which the papers measure.
    if end.bottom < Station::ZERO {
        return format!("{} beyond it, on the other side,", text(-end.bottom, words));
    }
    text(end.bottom, words)
}

/// What puts it there.
fn what_stops(connector: &Connector, end: &ConnectorEnd) -> String {
    match (&end.name, connector.two_ended) {
        (Some(name), _) => format!("the bottom of the end {name}"),
        (None, true) => "half its stop".to_owned(),
        (None, false) => "its stop".to_owned(),
    }
}

fn text(station: Station, words: Words) -> String {
    if station.half_nm() % 2 == 0 {
        length_text(Length::from_nm(station.half_nm() / 2), words)
    } else {
        format!("{} mm", station.mm())
    }
}

/// Where the square cut of a leg goes.
pub(super) fn lines(inputs: &Inputs<'_>, leg: &LegInputs<'_>, shield: &str) -> Vec<Line> {
    let words = inputs.order.job.words;
    let reference = reference(inputs, leg);
    let place = match leg.chosen.grip() {
        Some((connector, end)) => Line {
            say: format!(
                "Leg {}: set the cut out from {reference}, with the cable trained as it will stay. The {} of {} comes to lie there, and the conductor end stands {} from it: {}{}.",
                leg.leg.id,
                if connector.two_ended {
                    "middle"
                } else {
                    "contact plane"
                },
                connector.head.id,
                from_reference(end, words),
                what_stops(connector, end),
                end.gap_greatest.map_or(String::new(), |gap| format!(
                    ", and no more than {} farther, the gap that it allows",
                    length_text(gap, words)
                ))
            ),
            source: connector.head.source_text(),
        },
        None => Line {
            say: format!(
                "Leg {}: {}, so how far the conductor end stands from {reference} is not known; ask before this cut.",
                leg.leg.id,
                why_open(leg, words)
            ),
            source: COMMON_PRACTICE.to_owned(),
        },
    };
    let opens = Line {
        say: format!(
            "Where this cut goes through a cable that is still whole it opens its {shield}, too: bridged before that, as the owner's rules say."
        ),
        source: COMMON_PRACTICE.to_owned(),
    };
    vec![place, opens]
}

/// Why no end of a connector is known.
fn why_open(leg: &LegInputs<'_>, words: Words) -> String {
    let no_end = leg.chosen.why_no_end(leg.leg, words);
    no_end.unwrap_or_else(|| "no connector is named".to_owned())
}

/// The reading after the square cut.
pub(super) fn wanted(leg: &LegInputs<'_>, words: Words) -> Vec<Wanted> {
    let what = format!(
        "conductor end of leg {} from the reference line",
        leg.leg.id
    );
    let against = match leg.chosen.grip() {
        None => Against::NoWindow(format!("{}: ask before this cut", why_open(leg, words))),
        Some((connector, end)) => match end.gap_greatest.filter(|_| end.bottom >= Station::ZERO) {
            Some(gap) => {
                let least = end.bottom;
                Against::Words(
                    format!(
                        "{} to {}",
                        text(least, words),
                        text(least + Station::from(gap), words)
                    ),
                    connector.head.source_text(),
                )
            }
            None => Against::NoWindow(format!(
                "{} states no gap between conductor end and stop; the place is {} from it",
                connector.head.source_text(),
                from_reference(end, words)
            )),
        },
    };
    vec![Wanted { what, against }]
}
