//! Does the body's electrode cover the whole connector and lap onto the insulation, wherever the windows let them lie?
//!
//! Three things, all at the worst of the windows: the connector as made is no longer than the body admits; the electrode reaches past the connector's mouth; it laps onto the insulation by what the instructions ask.
//! Where they ask for no overlap, the first limit is the worst that they allow: the longest connector they admit, cut at the end of its tolerance.
//!
//! Source: the body's own instructions.

use super::{Check, Inputs, Judge, LegInputs, PartKind};
use crate::catalogue::{Body, Connector};
use crate::cutback::{Growth, cutback};
use crate::fit::Chosen;
use crate::job::Job;
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Word};
use crate::plane::Plane;
use jointwright_units::{Interval, Length, Station};

pub(super) const CHECK: Check = Check {
    slug: "electrode_cover",
    question: "Does the body's electrode cover the whole connector and lap onto the insulation?",
    parts: &[PartKind::Body, PartKind::Connector],
    judge: Judge::Leg(judge),
};

const HINT: &str = "Stop. Use a shorter connector or another body; do not trim either.";

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let (Some(body), Some(connector)) = (leg.chosen.body, leg.chosen.connector) else {
        return Vec::new();
    };
    let mut rulings = vec![length(leg, body, connector)];
    let zero = Limit {
        bound: Bound::AtLeast(Length::ZERO),
        word: Word::Instructions(body.head.source()),
    };
    rulings.push(reach(
        inputs,
        leg,
        Plane::ConnectorMouth,
        "electrode past the connector's mouth",
        Ok(zero),
    ));
    rulings.push(reach(
        inputs,
        leg,
        Plane::InsulationEnd,
        "electrode onto the insulation",
        overlap_limit(inputs, leg, body, connector),
    ));
    rulings
}

/// Length of the connector as made against the longest that the body admits.
fn length(leg: &LegInputs<'_>, body: &Body, connector: &Connector) -> Ruling {
    let subject = leg.subject();
    let Some(greatest) = body.connector_length_greatest else {
        return Ruling::not_judged(
            CHECK.slug,
            subject,
            format!(
                "the row {} does not say how long a connector it admits",
                body.head.id
            ),
        );
    };
    let grown = match &leg.cutback.growth {
        Growth::None => Interval::point(Length::ZERO),
        Growth::Unknown(why) => return Ruling::not_judged(CHECK.slug, subject, why.clone()),
        // Both mouths of a sleeve move.
        Growth::Measured {
            least, greatest, ..
        } => whole(connector, *least, *greatest),
    };
    Question {
        check: CHECK.slug,
        what: format!(
            "{}, length of {} as made",
            subject.words(),
            connector.head.id
        ),
        subject,
        value: Known::exact(Interval::point(connector.length) + grown),
        limit: &Limit {
            bound: Bound::AtMost(greatest),
            word: Word::Instructions(body.head.source()),
        },
        reach: Reach::Instructions,
        hint: HINT,
    }
    .rule()
}

fn whole(connector: &Connector, least: Station, greatest: Station) -> Interval {
    let whole = |share: Station| {
        if connector.two_ended {
            Length::from_nm(share.half_nm())
        } else {
            share.ceil()
        }
    };
    Interval::new(whole(least), whole(greatest)).expect("growth is kept least first")
}

fn reach(
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
    from: Plane,
    what: &str,
    limit: Result<Limit, String>,
) -> Ruling {
    let subject = leg.subject();
    let dimension = leg
        .cutback
        .dimension(from, Plane::ElectrodeEnd, inputs.order.job.words);
    match (dimension, limit) {
        (Ok(dimension), Ok(limit)) => Question {
            check: CHECK.slug,
            what: format!("{}, {what}, at the worst of the windows", subject.words()),
            subject,
            value: Known::exact(dimension.interval()),
            limit: &limit,
            reach: Reach::Computed,
            hint: HINT,
        }
        .rule(),
        (Err(why), _) | (_, Err(why)) => {
            Ruling::not_judged(CHECK.slug, subject, format!("{what}: {why}"))
        }
    }
}

/// The overlap that the instructions or the owner ask for, else the worst that the instructions allow.
fn overlap_limit(
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
    body: &Body,
    connector: &Connector,
) -> Result<Limit, String> {
    if let Some(overlap) = body.electrode_overlap_least {
        return Ok(Limit {
            bound: Bound::AtLeast(overlap),
            word: Word::Instructions(body.head.source()),
        });
    }
    if let Some(limit) = inputs.owner_limit(CHECK.slug) {
        return Ok(limit);
    }
    let Some(longest) = body.connector_length_greatest else {
        return Err(format!(
            "{} states neither an overlap nor the longest connector it admits",
            body.head.id
        ));
    };
    let longest = Connector {
        length: longest,
        means: crate::catalogue::Means::ShearBolt,
        ..connector.clone()
    };
    let chosen = Chosen {
        connector: Some(&longest),
        ..leg.chosen
    };
    let without_owner = Job {
        owner_windows: Vec::new(),
        owner_links: Vec::new(),
        ..inputs.order.job.clone()
    };
    let worst = cutback(&without_owner, leg.leg, &chosen)
        .map_err(|_| "the longest connector that the body admits cannot be planned".to_owned())?
        .dimension(
            Plane::InsulationEnd,
            Plane::ElectrodeEnd,
            inputs.order.job.words,
        )?;
    Ok(Limit {
        bound: Bound::AtLeast(worst.interval().least()),
        word: Word::WorstAllowed(body.head.source()),
    })
}
