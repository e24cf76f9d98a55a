//! Does the connector, as made, go under the body's electrode?
//!
//! It compares the connector's outside diameter with the range in the body's instructions.
//!
//! Source: the body's own instructions.

use super::{Inputs, LegInputs, slug};
use crate::catalogue::Connector;
use crate::limit::{Bound, Known, Limit, Question, Reach, Ruling, Word, fact_table as fact};
use crate::said::BodySaid;
use jointwright_units::Interval;

const CHECK: &str = slug(module_path!());

pub(super) fn judge(_: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let (Some(body), Some(connector)) = (leg.chosen.body, leg.chosen.connector) else {
        return Vec::new();
    };
    let Some(range) = body.connector_diameter else {
        let row = body.head.id.clone();
        let why = BodySaid::NoConnectorRange { row };
        let ruling = Ruling::not_judged(CHECK, leg.subject(), why);
        return vec![ruling.asking(fact::CONNECTOR_DIAMETER.of(&body.head.id))];
    };
    let question = Question {
        check: CHECK,
        what: BodySaid::ConnectorOutside {
            subject: leg.subject(),
            connector: connector.head.id.clone(),
            body: body.head.id.clone(),
        }
        .into(),
        subject: leg.subject(),
        value: Known::exact(outside(connector)),
        limit: &Limit {
            bound: Bound::Within(range),
            word: Word::Instructions(body.head.source().into()),
        },
        reach: Reach::Instructions,
        hint: BodySaid::UseAdmittedConnector.into(),
    };
    vec![question.rule()]
}

/// Outside diameters of all its ends, because the body's electrode lies over the whole sleeve.
fn outside(connector: &Connector) -> Interval {
    let ends = connector.ends.iter().map(|end| end.outside_diameter);
    Interval::hull(ends).unwrap_or(Interval::point(connector.outside_diameter))
}
