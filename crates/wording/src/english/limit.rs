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
            "{} is inside by {}, less than the {} by which it may be off",
            tongue.say(what),
            read(*margin),
            read(*error)
        ),
        LimitSaid::MayNotRule { word } => {
            format!("the limit may not rule: {}", super::word::say(tongue, word))
        }
        LimitSaid::Below {
            what,
            is,
            by,
            least,
        } => format!(
            "{}: {} is {} below the least permitted, {}",
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
            "{}: {} is {} above the greatest permitted, {}",
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
            let side = if *is_inside { "inside" } else { "outside" };
            format!(
                "{} is {side} by {} {unit}, less than the {} {unit} by which it may be off",
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
            "{}: {} {unit} is {} {unit} below the least permitted, {} {unit}",
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
            "{}: {} {unit} is {} {unit} above the most permitted, {} {unit}",
            tongue.say(what),
            shown(*value),
            shown(*by),
            shown(*greatest)
        ),
    }
}
