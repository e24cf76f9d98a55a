//! Square cut: the reference from which the square cut itself is set out.
//!
//! Why its own file: every other place is measured from that cut, so the cut needs a place of its own.
//!
//! Invariants: the distance is the connector's stop and gap as its row states them; a number that the row does not state is asked for.

use super::line::{Line, common};
use super::wanted::{Against, Wanted};
use crate::catalogue::{Connector, ConnectorEnd};
use crate::checks::{Inputs, LegInputs};
use crate::job::JointKind;
use crate::plane::Plane;
use crate::said::{Exact, HoldSaid, Said, SetOutFrom, StepSaid, Stop, UnsettledSaid};
use crate::slot::Measured;
use jointwright_units::Station;

/// Reference from which the square cut of a leg is set out.
fn reference(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> SetOutFrom {
    match (inputs.order.job.kind, leg.leg.port) {
        (JointKind::Straight | JointKind::Cable, _) => SetOutFrom::CentreLine,
        (JointKind::Branch, _) => SetOutFrom::ContactPlane,
        (JointKind::Separable, Some(port)) => SetOutFrom::Port(port),
        (JointKind::Separable, None) => SetOutFrom::OwnPort,
    }
}

/// Stop of the conductor end in the connector.
fn what_stops(connector: &Connector, end: &ConnectorEnd) -> Stop {
    match (&end.name, connector.two_ended) {
        (Some(name), _) => Stop::End(name.clone()),
        (None, true) => Stop::Half,
        (None, false) => Stop::Whole,
    }
}

/// Lines on the place of a leg's square cut.
pub(super) fn lines(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Line> {
    let (id, from) = (leg.leg.id.clone(), reference(inputs, leg));
    let place = match leg.chosen.grip() {
        Some((connector, end)) => Line {
            say: StepSaid::SetOut {
                leg: id,
                from,
                row: connector.head.id.clone(),
                is_two_ended: connector.two_ended,
                stands: end.bottom.into(),
                stop: what_stops(connector, end),
                gap: end.gap_greatest.map(Exact::from),
            }
            .into(),
            source: connector.head.source().into(),
        },
        None => {
            let why = why_open(leg);
            common(StepSaid::SetOutUnknown { leg: id, why, from })
        }
    };
    vec![place, common(StepSaid::OpensShield)]
}

/// Reason why no end of a connector is known.
fn why_open(leg: &LegInputs<'_>) -> Said {
    let no_end = leg.chosen.no_end(leg.leg);
    no_end.map_or(UnsettledSaid::NoConnector.into(), Said::from)
}

/// Reading after the square cut.
pub(super) fn wanted(leg: &LegInputs<'_>) -> Vec<Wanted> {
    let what = HoldSaid::ConductorEnd {
        leg: leg.leg.id.clone(),
    };
    let against = match leg.chosen.grip() {
        None => {
            let why = why_open(leg);
            Against::no_window(HoldSaid::AskBeforeThisCut { why })
        }
        Some((connector, end)) => match end.gap_greatest.filter(|_| end.bottom >= Station::ZERO) {
            Some(gap) => Against::words(
                HoldSaid::Between {
                    least: end.bottom.into(),
                    greatest: (end.bottom + Station::from(gap)).into(),
                },
                connector.head.source(),
            ),
            None => Against::no_window(HoldSaid::StatesNoGap {
                paper: connector.head.source(),
                stands: end.bottom.into(),
            }),
        },
    };
    let plane = Plane::ConductorEnd;
    vec![Wanted::on(leg, Measured::Place { plane }, what, against)]
}
