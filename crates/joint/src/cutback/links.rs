//! The links of one leg: links from rows and the owner, and links that follow from the connector.

use crate::catalogue::{Connector, ConnectorEnd, LinkRow};
use crate::fit::Chosen;
use crate::form::Span;
use crate::job::{Job, Leg, TrialPress};
use crate::plane::Plane;
use crate::said::{GrowthSaid, Said, Tried, Unnamed, Whose};
use jointwright_units::{Length, Station};

/// Tolerance of a distance.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Tolerance {
    /// None: the distance is a dimension of one part.
    Exact,
    /// Greatest amount by which it may be shorter or longer; not negative.
    Window(Station, Station),
    /// Nobody states it.
    Unstated,
}

/// A link in the form that the chain needs.
#[derive(Clone, Debug)]
pub(crate) struct Joined {
    pub from: Plane,
    pub to: Plane,
    pub distance: Station,
    pub tolerance: Tolerance,
    pub source: Whose,
    /// Place of the link in its file, or of the row it follows from.
    pub place: Span,
}

/// Growth of the connector on one leg, as far as it is known.
#[derive(Clone, Debug, PartialEq)]
pub enum Growth {
    /// The connector does not grow.
    None,
    /// Measured on trial presses: growth of the mouth, least and greatest, with its source.
    Measured {
        /// Least growth of the mouth.
        least: Station,
        /// Greatest growth of the mouth.
        greatest: Station,
        /// Source of the measurement.
        source: Whose,
    },
    /// Not measured; the reason why the trial presses that exist do not serve.
    Unknown(Said),
}

/// Growth of the connector's mouth on a leg, from trial presses with exactly the same connector, end, size, metal, die and number of presses.
pub(super) fn growth(job: &Job, leg: &Leg, chosen: &Chosen<'_>) -> Growth {
    let Some(connector) = chosen.connector.filter(|part| part.grows()) else {
        return Growth::None;
    };
    if let Some(growth) = growth_as_built(job, leg, connector) {
        return growth;
    }
    let Some(end) = chosen.end else {
        let why = chosen.no_end(leg);
        return Growth::Unknown(why.map_or_else(|| Said::all([]), Said::from));
    };
    if let Some(missing) = unnamed(end) {
        let said = GrowthSaid::EndDoesNotName {
            connector: connector.head.id.clone(),
            end: end.name.clone(),
            missing,
        };
        return Growth::Unknown(said.into());
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
        let (connector, name) = (connector.head.id.clone(), end.name.clone());
        let said = if same_part.is_empty() {
            GrowthSaid::WaitsForTrial {
                connector,
                end: name,
            }
        } else {
            GrowthSaid::NoTrialLikeThis {
                connector,
                end: name,
                die: end.die.clone(),
                presses: end.presses,
                size: conductor.size.to_string(),
                tried: same_part.iter().map(|t| pressed_as(t)).collect(),
            }
        };
        return Growth::Unknown(said.into());
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
        source: Whose::Trials(who),
    }
}

/// Growth of the connector's mouth from its length as made; `None` if nobody read it, or if its ends differ and no reading tells which of them grew.
fn growth_as_built(job: &Job, leg: &Leg, connector: &Connector) -> Option<Growth> {
    let (length, who) = job.as_built_of(leg)?.connector_length.as_ref()?;
    if connector.has_unlike_ends() {
        return None;
    }
    let grown = |length: Length| mouth_share(connector, length - connector.length);
    Some(Growth::Measured {
        least: grown(length.least()),
        greatest: grown(length.greatest()),
        source: Whose::Read(who.clone()),
    })
}

/// Fact about the pressing of an end that the row does not name.
fn unnamed(end: &ConnectorEnd) -> Option<Unnamed> {
    match (&end.die, end.presses) {
        (Some(_), Some(_)) => None,
        (None, Some(_)) => Some(Unnamed::Die),
        (Some(_), None) => Some(Unnamed::Presses),
        (None, None) => Some(Unnamed::DieAndPresses),
    }
}

fn pressed_as(trial: &TrialPress) -> Tried {
    Tried {
        die: trial.die.clone(),
        presses: trial.presses,
        size: trial.size.to_string(),
    }
}

/// Part of a measured growth that moves one mouth: half of the whole sleeve's growth if both ends are alike; otherwise the whole, because the trial pressed that end alone.
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

/// Links that follow from the connector's own dimensions at one end; `mouth_growth` takes the place of growth that is not measured.
pub(crate) fn connector_links(
    connector: &Connector,
    end: &ConnectorEnd,
    growth: &Growth,
    mouth_growth: Station,
) -> Vec<Joined> {
    let datum = connector_datum(connector);
    let source = Whose::row(connector.head.source());
    let joined = |from, to, distance, tolerance, source: &Whose| Joined {
        from,
        to,
        distance,
        tolerance,
        source: source.clone(),
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
        // A conductor end short of the stop lies farther from the datum, so the signed distance is smaller.
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

/// All links of a leg.
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
        // Both planes lie on one part: the distance is a dimension of that part, taken as its paper states it.
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
