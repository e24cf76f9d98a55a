//! Does the body's electrode cover the whole connector and lap onto the insulation, wherever the windows let them lie?
//!
//! It checks three things at the worst of the windows:
//!
//! - the connector as made is no longer than the body admits;
//! - the electrode reaches past the connector's mouth;
//! - the electrode laps onto the insulation by the overlap that the instructions ask for.
//!
//! If the instructions ask for no overlap, the limit is the worst overlap that they allow: with the longest connector that they admit, cut at the end of its tolerance.
//!
//! Source: the body's own instructions.

use super::{Inputs, LegInputs, slug};
use crate::catalogue::{Body, Connector, ConnectorEnd, Means};
use crate::cutback::{Growth, cutback};
use crate::fit::Chosen;
use crate::limit::{
    Bound, Known, Limit, Outcome, Question, Reach, Ruling, Word, fact_table as fact,
};
use crate::plane::Plane;
use crate::said::{ElectrodeSaid, Said};
use jointwright_units::{Interval, Length, Station};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let (Some(body), Some(connector)) = (leg.chosen.body, leg.chosen.connector) else {
        return Vec::new();
    };
    let mut rulings = vec![length(inputs, leg, body, connector)];
    // An electrode over the whole connector is common practice: this may fail and never pass.
    let mouth = Limit {
        bound: Bound::AtLeast(Length::ZERO),
        word: Word::CommonPractice(ElectrodeSaid::CoversConnector.into()),
    };
    let past = ElectrodeSaid::PastMouth.into();
    let past = reach(inputs, leg, Plane::ConnectorMouth, past, &mouth);
    rulings.extend(Some(past).filter(|r| r.outcome == Outcome::Fail));
    let onto = Said::from(ElectrodeSaid::OntoInsulation);
    match overlap_limits(inputs, leg, body, connector) {
        Err(why) => {
            let why = Said::of(onto, why);
            let ruling = Ruling::not_judged(CHECK, leg.subject(), why);
            let edge = leg.cutback.in_service(Plane::InsulationEnd);
            let planes = [edge, Plane::ElectrodeEnd];
            let silent =
                body.electrode_overlap_least.is_none() && body.connector_length_greatest.is_none();
            let silent = silent.then(|| fact::CONNECTOR_LENGTH.of(&body.head.id));
            let asks = leg.missing(inputs).places(&planes);
            rulings.push(ruling.asking_all(silent).asking_all(asks));
        }
        Ok(limits) => {
            let edge = leg.cutback.in_service(Plane::InsulationEnd);
            let rule = |limit: &Limit| reach(inputs, leg, edge, onto.clone(), limit);
            rulings.extend(limits.iter().map(rule));
        }
    }
    rulings
}

/// Compares the length of the connector as made with the longest that the body admits.
fn length(inputs: &Inputs<'_>, leg: &LegInputs<'_>, body: &Body, connector: &Connector) -> Ruling {
    let subject = leg.subject();
    let Some(greatest) = body.connector_length_greatest else {
        let row = body.head.id.clone();
        let why = ElectrodeSaid::ConnectorLengthNotSaid { row };
        let ruling = Ruling::not_judged(CHECK, subject, why);
        return ruling.asking(fact::CONNECTOR_LENGTH.of(&body.head.id));
    };
    let grown = match whole_growth(inputs, leg, connector) {
        Ok(grown) => grown,
        Err(why) => {
            let ruling = Ruling::not_judged(CHECK, subject, why);
            return ruling.asking_all(leg.missing(inputs).unknown_growth());
        }
    };
    Question {
        check: CHECK,
        what: ElectrodeSaid::LengthAsMade {
            subject: subject.clone(),
            connector: connector.head.id.clone(),
        }
        .into(),
        subject,
        value: Known::exact(Interval::point(connector.length) + grown),
        limit: &Limit {
            bound: Bound::AtMost(greatest),
            word: Word::Instructions(body.head.source().into()),
        },
        reach: Reach::Instructions,
        hint: ElectrodeSaid::UseShorterConnector.into(),
    }
    .rule()
}

/// Growth of the whole connector: both mouths of a sleeve move, each by its own growth if the ends differ.
fn whole_growth(
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
    connector: &Connector,
) -> Result<Interval, Said> {
    let mine = mouth_growth(&leg.cutback.growth)?;
    if !connector.two_ended {
        return Ok(rounded(mine));
    }
    let Some(end) = leg.chosen.end else {
        let why = leg.chosen.no_end(leg.leg);
        return Err(why.map_or(ElectrodeSaid::EndNotKnown.into(), Said::from));
    };
    let other = match connector.other_end(end) {
        None => mine,
        Some(_) if !connector.grows() => mine,
        Some(other) => {
            let across = inputs.legs.iter().find(|leg| {
                let is_other = |(part, end): (&Connector, &ConnectorEnd)| {
                    part.head.id == connector.head.id && end.name == other.name
                };
                leg.chosen.grip().is_some_and(is_other)
            });
            let Some(across) = across else {
                let connector = connector.head.id.clone();
                return Err(ElectrodeSaid::OtherEndOpen { connector }.into());
            };
            mouth_growth(&across.cutback.growth).map_err(|why| Said::of(across.subject(), why))?
        }
    };
    Ok(rounded((mine.0 + other.0, mine.1 + other.1)))
}

/// Growth of one mouth, least and greatest.
fn mouth_growth(growth: &Growth) -> Result<(Station, Station), Said> {
    match growth {
        Growth::None => Ok((Station::ZERO, Station::ZERO)),
        Growth::Unknown(why) => Err(why.into()),
        Growth::Measured {
            least, greatest, ..
        } => Ok((*least, *greatest)),
    }
}

fn rounded((least, greatest): (Station, Station)) -> Interval {
    Interval::new(least.floor(), greatest.ceil()).expect("growth is kept least first")
}

fn reach(
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
    from: Plane,
    what: Said,
    limit: &Limit,
) -> Ruling {
    let subject = leg.subject();
    let dimension = leg.cutback.dimension(from, Plane::ElectrodeEnd);
    match dimension {
        Err(why) => {
            let asks = leg.missing(inputs).places(&[from, Plane::ElectrodeEnd]);
            Ruling::not_judged(CHECK, subject, Said::of(what, why)).asking_all(asks)
        }
        Ok(dimension) => Question {
            check: CHECK,
            what: ElectrodeSaid::Reach {
                subject: subject.clone(),
                what,
            }
            .into(),
            subject,
            value: Known::exact(dimension.interval()),
            limit,
            reach: Reach::Computed,
            hint: ElectrodeSaid::UseShorterConnector.into(),
        }
        .rule(),
    }
}

/// Overlaps that the instructions and the owner ask for; if the instructions ask for none, the worst that they allow.
fn overlap_limits(
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
    body: &Body,
    connector: &Connector,
) -> Result<Vec<Limit>, Said> {
    let stated = match body.electrode_overlap_least {
        Some(overlap) => Ok(Limit {
            bound: Bound::AtLeast(overlap),
            word: Word::Instructions(body.head.source().into()),
        }),
        None => worst_allowed(inputs, leg, body, connector),
    };
    let owners = inputs.limits(CHECK, None);
    match stated {
        Err(why) if owners.is_empty() => Err(why),
        stated => Ok(stated.into_iter().chain(owners).collect()),
    }
}

/// Overlap with the longest connector that the body admits, seated without play, cut at the end of its tolerance.
fn worst_allowed(
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
    body: &Body,
    connector: &Connector,
) -> Result<Limit, Said> {
    let Some(length) = body.connector_length_greatest else {
        let body = body.head.id.clone();
        return Err(ElectrodeSaid::NeitherOverlapNorLongest { body }.into());
    };
    let Some(end) = leg.chosen.end else {
        let why = leg.chosen.no_end(leg.leg);
        return Err(why.map_or(ElectrodeSaid::EndNotKnown.into(), Said::from));
    };
    // A body admits a length centred under its middle; a sleeve that reaches farther to one side does not widen the instructions.
    let reach = if connector.two_ended {
        Station::half_of(length)
    } else {
        Station::from(length)
    };
    let longest = Connector {
        length,
        means: Means::ShearBolt,
        links: Vec::new(),
        ..connector.clone()
    };
    let end = ConnectorEnd {
        reach,
        gap_greatest: None,
        links: Vec::new(),
        ..end.clone()
    };
    let chosen = Chosen {
        connector: Some(&longest),
        end: Some(&end),
        ..leg.chosen
    };
    let alone = inputs.order.job.by_instructions_alone();
    let worst =
        cutback(&alone, leg.leg, &chosen).map_err(|_| ElectrodeSaid::LongestCannotBePlanned)?;
    // If the rows state a shrink-back, the worst that they allow includes it.
    let edge = worst.in_service(Plane::InsulationEnd);
    let overlap = worst.dimension(edge, Plane::ElectrodeEnd)?;
    // The limit is never below zero: an electrode that ends before the insulation begins does not cover it, even if the body's own worst case allows that.
    Ok(Limit {
        bound: Bound::AtLeast(overlap.interval().least().max(Length::ZERO)),
        word: Word::WorstAllowed(body.head.source().into()),
    })
}
