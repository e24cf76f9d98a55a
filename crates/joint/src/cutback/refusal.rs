//! Refusal: rows of a leg that contradict each other.

use super::links::Joined;
use crate::form::Span;
use crate::plane::Plane;
use crate::said::{RowsSaid, WayTo};
use jointwright_numerics::chain::{ChainError, Path};
use jointwright_units::Station;

/// Reason why the links of a leg have no solution.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refusal {
    /// Leg.
    pub leg: String,
    /// Contradiction, or another reason.
    pub message: RowsSaid,
    /// Place of a row that takes part in it.
    pub place: Span,
}

pub(super) fn refusals(
    leg: &str,
    errors: &[ChainError],
    planes: &[Plane],
    joined: &[Joined],
) -> Vec<Refusal> {
    let used: Vec<&Joined> = joined
        .iter()
        .filter(|l| planes.contains(&l.from) && planes.contains(&l.to))
        .collect();
    errors
        .iter()
        // Windows exclude each other only where nominals contradict, and that is said already.
        .filter(|error| !matches!(error, ChainError::WindowsExclude { .. }))
        .map(|error| refusal(leg, error, planes, &used))
        .collect()
}

fn refusal(leg: &str, error: &ChainError, planes: &[Plane], used: &[&Joined]) -> Refusal {
    let first_place = used.first().map(|l| l.place.clone()).unwrap_or_default();
    let (message, place) = match error {
        ChainError::Contradiction {
            plane,
            first,
            first_value,
            second,
            second_value,
        } => {
            let (one, other) = (
                way(first, *first_value, planes, used),
                way(second, *second_value, planes, used),
            );
            let place = last_place(second, used)
                .or_else(|| last_place(first, used))
                .unwrap_or(first_place);
            let message = RowsSaid::Contradict {
                leg: leg.to_owned(),
                plane: planes[*plane],
                from: planes[first.start],
                one,
                other,
            };
            (message, place)
        }
        ChainError::Open { plane } => {
            let message = RowsSaid::DoNotReach {
                leg: leg.to_owned(),
                plane: planes[*plane],
            };
            (message, first_place)
        }
        other => {
            let message = RowsSaid::NotSolved {
                leg: leg.to_owned(),
                why: other.to_string(),
            };
            (message, first_place)
        }
    };
    Refusal {
        leg: leg.to_owned(),
        message,
        place,
    }
}

fn way(path: &Path, value: i64, planes: &[Plane], used: &[&Joined]) -> WayTo {
    let steps = path.steps.iter().map(|step| {
        let by = used[step.link].source.clone();
        (planes[step.plane], by)
    });
    WayTo {
        at: millimetres(Station::from_half_nm(value)),
        steps: steps.collect(),
    }
}

fn last_place(path: &Path, used: &[&Joined]) -> Option<Span> {
    path.steps.last().map(|step| used[step.link].place.clone())
}

/// Millimetres of a station, exact.
fn millimetres(station: Station) -> String {
    if station.floor() == station.ceil() {
        station.floor().to_string()
    } else {
        format!("{} mm", station.mm())
    }
}
