//! What is said of how hard a part sits.

use super::word;
use crate::Tongue;
use jointwright_joint::said::{PressureSaid, Wording};

pub(super) fn say(tongue: Tongue, said: &PressureSaid) -> String {
    match said {
        PressureSaid::AskedButNotSaid { what, kpa, word } => format!(
            "{}: se piden {kpa:.0} kPa ({}), y no se puede decir su presión en las temperaturas de este empalme",
            tongue.say(what),
            word::say(tongue, word)
        ),
        PressureSaid::LeastAskedButNotSaid { word } => format!(
            "se pide una presión mínima ({}), y no se puede decir la presión en las temperaturas de este empalme",
            word::say(tongue, word)
        ),
    }
}
