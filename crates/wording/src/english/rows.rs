//! Sentences about rows that contradict each other.

use super::cut;
use jointwright_joint::plane::Plane;
use jointwright_joint::said::{RowsSaid, WayTo};

pub(super) fn say(said: &RowsSaid) -> String {
    match said {
        RowsSaid::Contradict {
            leg,
            plane,
            from,
            one,
            other,
        } => format!(
            "The rows for leg {leg} contradict each other: they put the {} at {} from the {} by way of {}, and at {} by way of {}.",
            name(*plane),
            one.at,
            name(*from),
            way(one),
            other.at,
            way(other)
        ),
        RowsSaid::DoNotReach { leg, plane } => format!(
            "The rows for leg {leg} cannot be solved: no way of links leads to the {}.",
            name(*plane)
        ),
        RowsSaid::NotSolved { leg, why } => {
            format!("The rows for leg {leg} cannot be solved: {why}.")
        }
    }
}

/// Plane as files name it, without hyphens.
fn name(plane: Plane) -> String {
    plane.name().replace('-', " ")
}

fn way(way: &WayTo) -> String {
    let steps = way.steps.iter();
    let steps: Vec<String> = steps
        .map(|(plane, by)| format!("{} ({})", name(*plane), cut::whose(by)))
        .collect();
    steps.join(", then ")
}
