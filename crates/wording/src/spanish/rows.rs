//! Sentences about rows that contradict each other.

use super::cut;
use crate::Tongue;
use jointwright_joint::said::{RowsSaid, WayTo};

pub(super) fn say(tongue: Tongue, said: &RowsSaid) -> String {
    match said {
        RowsSaid::Contradict {
            leg,
            plane,
            from,
            one,
            other,
        } => format!(
            "Las fichas del ramal {leg} se contradicen: {}, medido desde {}, queda a {} por {}, y a {} por {}.",
            tongue.plane(*plane),
            tongue.plane(*from),
            one.at,
            way(tongue, one),
            other.at,
            way(tongue, other)
        ),
        RowsSaid::DoNotReach { leg, plane } => format!(
            "Las fichas del ramal {leg} no se pueden resolver: ninguna cadena de distancias llega a {}.",
            tongue.plane(*plane)
        ),
        RowsSaid::NotSolved { leg, why } => {
            format!("Las fichas del ramal {leg} no se pueden resolver: `{why}`.")
        }
    }
}

fn way(tongue: Tongue, way: &WayTo) -> String {
    let steps = way.steps.iter();
    let steps: Vec<String> = steps
        .map(|(plane, by)| format!("{} ({})", tongue.plane(*plane), cut::whose(by)))
        .collect();
    steps.join(", luego ")
}
