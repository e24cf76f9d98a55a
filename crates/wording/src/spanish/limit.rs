//! Sentences about a value and its limit.

use crate::{Tongue, shown};
use jointwright_joint::said::{LimitSaid, Wording};

pub(super) fn say(tongue: Tongue, said: &LimitSaid) -> String {
    let read = |length| tongue.read(length);
    match said {
        LimitSaid::WithinError {
            what,
            margin,
            error,
        } => format!(
            "{} está dentro por {}, pero su error puede ser de {}",
            tongue.say(what),
            read(*margin),
            read(*error)
        ),
        LimitSaid::MayNotRule { word } => {
            format!(
                "el límite no puede decidir: {}",
                super::word::say(tongue, word)
            )
        }
        LimitSaid::Below {
            what,
            is,
            by,
            least,
        } => format!(
            "{}: {} está {} por debajo del mínimo permitido, {}",
            tongue.say(what),
            read(*is),
            read(*by),
            read(*least)
        ),
        LimitSaid::Above {
            what,
            is,
            by,
            greatest,
        } => format!(
            "{}: {} está {} por encima del máximo permitido, {}",
            tongue.say(what),
            read(*is),
            read(*by),
            read(*greatest)
        ),
        LimitSaid::AmountWithinError {
            what,
            is_inside,
            margin,
            error,
            unit,
        } => {
            let side = if *is_inside { "dentro" } else { "fuera" };
            format!(
                "{} está {side} por {} {unit}, pero su error puede ser de {} {unit}",
                tongue.say(what),
                shown(*margin),
                shown(*error)
            )
        }
        LimitSaid::AmountBelow {
            what,
            value,
            by,
            least,
            unit,
        } => format!(
            "{}: {} {unit} está {} {unit} por debajo del mínimo permitido, {} {unit}",
            tongue.say(what),
            shown(*value),
            shown(*by),
            shown(*least)
        ),
        LimitSaid::AmountAbove {
            what,
            value,
            by,
            greatest,
            unit,
        } => format!(
            "{}: {} {unit} está {} {unit} por encima del máximo permitido, {} {unit}",
            tongue.say(what),
            shown(*value),
            shown(*by),
            shown(*greatest)
        ),
    }
}
