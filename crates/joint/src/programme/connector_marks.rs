//! Connector marks: marks that press, torque or shear bolt leave behind, as readings before work goes on.
//!
//! Why its own file: each means leaves other marks, and each reading takes its window from the connector's own paper or says that there is none.

use super::practice;
use super::wanted::{Against, Wanted};
use crate::catalogue::{Connector, Means};
use crate::checks::LegInputs;
use crate::said::{ConnectorOf, HoldSaid, Said};
use crate::slot::Measured;
use jointwright_units::Interval;

/// Readings of a connector as made, from its own paper.
pub(super) fn made(connector: &Connector, leg: &LegInputs<'_>) -> Vec<Wanted> {
    let end = leg.chosen.end;
    let of = || connector_of(connector, leg);
    let made = connector.as_made_at(end);
    let source = || connector.head.source();
    let none = || Against::no_window(HoldSaid::StatesNone { paper: source() });
    let stated = |said: Option<Said>| said.map_or_else(none, |said| Against::words(said, source()));
    let window = |interval: Option<Interval>| stated(interval.map(|i| between(i).into()));
    let read = |measured, what, against| Wanted::on(leg, measured, what, against);
    let all = |n: i64| Said::from(HoldSaid::All { n });
    match connector.means {
        Means::Compression => {
            let die = end.and_then(|end| end.die.as_ref()).map(Said::from);
            let presses = end.and_then(|end| end.presses);
            let presses = presses.map(|n| Said::from(HoldSaid::Exactly { n }));
            vec![
                read(Measured::Die, HoldSaid::Die { of: of() }, stated(die)),
                read(
                    Measured::Presses,
                    HoldSaid::Presses { of: of() },
                    stated(presses),
                ),
                read(
                    Measured::AcrossFlats,
                    HoldSaid::AcrossFlats { of: of() },
                    window(made.across),
                ),
                read(
                    Measured::ConnectorLength,
                    HoldSaid::LengthByPaper { of: of() },
                    window(made.length),
                ),
            ]
        }
        Means::ShearBolt => {
            let heads = match made.bolts {
                Some(n) => Against::words(all(n), source()),
                None => Against::words(HoldSaid::EveryHead, practice()),
            };
            let heads = read(Measured::Bolts, HoldSaid::HeadsSheared { of: of() }, heads);
            // A bolt's head shears at its own torque; a crew reads it only where the paper names it.
            let torque = made.torque_nm.map(|window| {
                let window = stated(Some(torque(window).into()));
                read(
                    Measured::BoltTorque,
                    HoldSaid::HeadTorque { of: of() },
                    window,
                )
            });
            [heads].into_iter().chain(torque).collect()
        }
        Means::SetScrew => {
            let window = made.torque_nm.map(|window| torque(window).into());
            vec![
                read(
                    Measured::Bolts,
                    HoldSaid::ScrewsTightened { of: of() },
                    stated(made.bolts.map(all)),
                ),
                read(
                    Measured::BoltTorque,
                    HoldSaid::ScrewTorque { of: of() },
                    stated(window),
                ),
            ]
        }
    }
}

/// A connector on a leg, with the end that takes it where its ends differ.
fn connector_of(connector: &Connector, leg: &LegInputs<'_>) -> ConnectorOf {
    ConnectorOf {
        row: connector.head.id.clone(),
        end: leg.chosen.end.and_then(|end| end.name.clone()),
        leg: leg.leg.id.clone(),
    }
}

/// Window of a length.
fn between(interval: Interval) -> HoldSaid {
    HoldSaid::Between {
        least: interval.least().into(),
        greatest: interval.greatest().into(),
    }
}

/// Window of a torque, N·m.
fn torque((least_nm, greatest_nm): (f64, f64)) -> HoldSaid {
    HoldSaid::Torque {
        least_nm,
        greatest_nm,
    }
}
