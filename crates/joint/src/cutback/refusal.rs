//! Refusal: rows that contradict each other, in words.

use super::links::Joined;
use crate::form::Span;
use crate::plane::Plane;
use jointwright_numerics::chain::{ChainError, Path};
use jointwright_units::Station;

/// One way to a plane.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Way {
    /// Planes along it and the rows that join them.
    pub words: String,
    /// Where it puts the plane, millimetres.
    pub value: String,
}

/// Why the links of a leg have no solution.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refusal {
    /// Leg.
    pub leg: String,
    /// What is wrong, whole sentence.
    pub message: String,
    /// Where it stands: a row that takes part in it.
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
            (
                format!(
                    "The rows for leg {leg} contradict each other: they put the {} at {} from the {} by way of {}, and at {} by way of {}.",
                    planes[*plane].name().replace('-', " "),
                    one.value,
                    planes[first.start].name().replace('-', " "),
                    one.words,
                    other.value,
                    other.words
                ),
                place,
            )
        }
        other => (
            format!(
                "The rows for leg {leg} cannot be solved: {}.",
                in_words(other, planes)
            ),
            first_place,
        ),
    };
    Refusal {
        leg: leg.to_owned(),
        message,
        place,
    }
}

fn in_words(error: &ChainError, planes: &[Plane]) -> String {
    match error {
        ChainError::Open { plane } => format!(
            "no way of links leads to the {}",
            planes[*plane].name().replace('-', " ")
        ),
        other => other.to_string(),
    }
}

fn way(path: &Path, value: i64, planes: &[Plane], used: &[&Joined]) -> Way {
    let words: Vec<String> = path
        .steps
        .iter()
        .map(|step| {
            format!(
                "{} ({})",
                planes[step.plane].name().replace('-', " "),
                used[step.link].source.text()
            )
        })
        .collect();
    Way {
        words: words.join(", then "),
        value: millimetres(Station::from_half_nm(value)),
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
