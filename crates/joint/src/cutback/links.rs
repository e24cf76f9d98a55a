//! The links of one leg: those that rows and the owner give, and those that follow from the connector.

use crate::catalogue::{Connector, ConnectorEnd, LinkRow, die_words};
use crate::fit::Chosen;
use crate::form::Span;
use crate::job::{Job, Leg, TrialPress};
use crate::plane::Plane;
use jointwright_units::{Length, Station};

/// How far a distance may be off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Tolerance {
    /// It is a dimension of one part.
    Exact,
    /// So much shorter or longer; not negative.
    Window(Station, Station),
    /// Nobody says.
    Unstated,
}

/// A link as the chain needs it.
#[derive(Clone, Debug)]
pub(crate) struct Joined {
    pub from: Plane,
    pub to: Plane,
    pub distance: Station,
    pub tolerance: Tolerance,
    pub source: String,
    /// Where it stands, or the row it follows from.
    pub place: Span,
}

/// What is known of the connector's growth on one leg.
#[derive(Clone, Debug, PartialEq)]
pub enum Growth {
    /// It does not grow.
    None,
    /// Measured on trial presses: growth of the mouth, least and greatest, and whose word.
    Measured {
        /// Least growth of the mouth.
        least: Station,
        /// Greatest growth of the mouth.
        greatest: Station,
        /// Whose word.
        source: String,
    },
    /// Not measured, and why what there is does not serve.
    Unknown(String),
}

/// Growth of the connector's mouth on a leg, from the trial presses of exactly this connector, end, size, metal, die and presses.
pub(super) fn growth(job: &Job, leg: &Leg, chosen: &Chosen<'_>) -> Growth {
    let Some(connector) = chosen.connector.filter(|part| part.grows()) else {
        return Growth::None;
    };
    let Some(end) = chosen.end else {
        let why = chosen.why_no_end(leg, job.words);
        return Growth::Unknown(why.unwrap_or_default());
    };
    if let Some(missing) = unnamed(end) {
        return Growth::Unknown(format!(
            "the row {}{} does not name its {missing}: no trial press can be known to be like it",
            connector.head.id,
            end.of_end()
        ));
    }
    let conductor = leg.cable.conductor;
    let same_part: Vec<&TrialPress> = job
        .trial_presses
        .iter()
        .filter(|t| t.connector == connector.head.id && t.end == end.name)
        .collect();
    let serves = |t: &&&TrialPress| {
        t.size == conductor.size
            && t.metal == conductor.metal
            && end.die.as_ref().is_none_or(|die| *die == t.die)
            && end.presses.is_none_or(|presses| presses == t.presses)
    };
    let serving: Vec<&&TrialPress> = same_part.iter().filter(serves).collect();
    let Some(least) = serving.iter().map(|t| t.growth.least()).min() else {
        return Growth::Unknown(if same_part.is_empty() {
            format!(
                "waits for a trial press of {}{} with this crew's tool and die: its growth is not measured",
                connector.head.id,
                end.of_end()
            )
        } else {
            let tried: Vec<String> = same_part.iter().map(|t| pressed_as(t)).collect();
            format!(
                "no trial press of {}{} is like this one: its paper asks for {}, {} presses, here on {}; tried: {}",
                connector.head.id,
                end.of_end(),
                end.die_words()
                    .unwrap_or_else(|| "a die that it does not name".to_owned()),
                end.presses
                    .map_or("any number of".to_owned(), |n| n.to_string()),
                conductor.size,
                tried.join("; ")
            )
        });
    };
    let greatest = serving
        .iter()
        .map(|t| t.growth.greatest())
        .max()
        .unwrap_or(least);
    let who: Vec<String> = serving
        .iter()
        .map(|t| format!("{}, {}", t.by, t.date))
        .collect();
    Growth::Measured {
        least: mouth_share(connector, least),
        greatest: mouth_share(connector, greatest),
        source: format!("trial press: {}", who.join("; ")),
    }
}

/// What the row does not name of how an end is pressed.
fn unnamed(end: &ConnectorEnd) -> Option<&'static str> {
    match (&end.die, end.presses) {
        (Some(_), Some(_)) => None,
        (None, Some(_)) => Some("die"),
        (Some(_), None) => Some("presses"),
        (None, None) => Some("die and presses"),
    }
}

fn pressed_as(trial: &TrialPress) -> String {
    format!(
        "{}, {} presses on {}",
        die_words(&trial.die),
        trial.presses,
        trial.size
    )
}

/// Part of a measured growth that moves one mouth: half of the whole sleeve's where both ends are alike; of a sleeve whose ends differ, one end alone was pressed.
pub(super) fn mouth_share(connector: &Connector, whole: Length) -> Station {
    if connector.two_ended && !connector.has_unlike_ends() {
        Station::half_of(whole)
    } else {
        Station::from(whole)
    }
}

/// Plane of the connector that instructions measure from.
pub(super) fn connector_datum(connector: &Connector) -> Plane {
    if connector.two_ended {
        Plane::ConnectorCentre
    } else {
        Plane::ConnectorSeat
    }
}

/// Links that follow from the connector's own dimensions at one end; `mouth_growth` stands in for growth that is not measured.
pub(crate) fn connector_links(
    connector: &Connector,
    end: &ConnectorEnd,
    growth: &Growth,
    mouth_growth: Station,
) -> Vec<Joined> {
    let datum = connector_datum(connector);
    let source = connector.head.source_text();
    let joined = |from, to, distance, tolerance, source: &str| Joined {
        from,
        to,
        distance,
        tolerance,
        source: source.to_owned(),
        place: connector.head.place.clone(),
    };
    let (grown, spread, growth_source) = match growth {
        Growth::None => (Station::ZERO, Tolerance::Exact, source.clone()),
        Growth::Unknown(_) => (mouth_growth, Tolerance::Exact, source.clone()),
        Growth::Measured {
            least,
            greatest,
            source,
        } => {
            let middle = Station::from_half_nm((least.half_nm() + greatest.half_nm()) / 2);
            (
                middle,
                Tolerance::Window(middle - *least, *greatest - middle),
                source.clone(),
            )
        }
    };
    let seated = match end.gap_greatest {
        None => Tolerance::Exact,
        // Short of the stop the conductor end lies farther from the datum, so the signed distance is smaller.
        Some(gap) => Tolerance::Window(Station::from(gap), Station::ZERO),
    };
    vec![
        joined(Plane::ConductorEnd, datum, -end.bottom, seated, &source),
        joined(
            datum,
            Plane::ConnectorMouthBefore,
            end.reach,
            Tolerance::Exact,
            &source,
        ),
        joined(
            Plane::ConnectorMouthBefore,
            Plane::ConnectorMouth,
            grown,
            spread,
            &growth_source,
        ),
    ]
}

/// Every link of a leg.
pub(super) fn links(
    job: &Job,
    leg: &Leg,
    chosen: &Chosen<'_>,
    growth: &Growth,
    mouth_growth: Station,
) -> Vec<Joined> {
    let mut joined = Vec::new();
    if let Some((connector, end)) = chosen.grip() {
        joined.extend(connector_links(connector, end, growth, mouth_growth));
        joined.extend(connector.links.iter().chain(&end.links).map(from_row));
    }
    joined.extend(chosen.body.iter().flat_map(|p| &p.links).map(from_row));
    joined.extend(chosen.adapter.iter().flat_map(|p| &p.links).map(from_row));
    joined.extend(
        chosen
            .shield_part
            .iter()
            .flat_map(|p| &p.links)
            .map(from_row),
    );
    joined.extend(chosen.seal.iter().flat_map(|p| &p.links).map(from_row));
    let owners = job
        .owner_links
        .iter()
        .filter(|o| o.leg.as_ref().is_none_or(|l| *l == leg.id));
    joined.extend(owners.map(|o| from_row(&o.link)));
    joined
}

pub(crate) fn from_row(row: &LinkRow) -> Joined {
    let tolerance = match row.tolerance {
        Some((minus, plus)) => Tolerance::Window(Station::from(minus), Station::from(plus)),
        // Both planes on one part: a dimension of that part, taken as its paper states it.
        None if row.from.is_of_one_piece_with(row.to) => Tolerance::Exact,
        None => Tolerance::Unstated,
    };
    Joined {
        from: row.from,
        to: row.to,
        distance: Station::from(row.distance),
        tolerance,
        source: row.source.clone(),
        place: row.place.clone(),
    }
}
