//! What is said of how hard a part sits.

use super::word;
use crate::Tongue;
use jointwright_joint::said::{PressureSaid, Wording};

pub(super) fn say(tongue: Tongue, said: &PressureSaid) -> String {
    match said {
        PressureSaid::AskedButNotSaid { what, kpa, word } => format!(
            "{}: {kpa:.0} kPa are asked for ({}), and its pressure over the temperatures of this joint cannot be said",
            tongue.say(what),
            word::say(tongue, word)
        ),
        PressureSaid::LeastAskedButNotSaid { word } => format!(
            "a least pressure is asked for ({}), and the pressure over the temperatures of this joint cannot be said",
            word::say(tongue, word)
        ),
    }
}
