//! Sentences about the edge of the insulation screen under the body.

use crate::Tongue;
use jointwright_joint::said::{ControlEnd, EdgeSaid};

pub(super) fn say(tongue: Tongue, said: &EdgeSaid) -> String {
    match said {
        EdgeSaid::InControl { end } => in_control(*end).to_owned(),
        EdgeSaid::InControlAtWorst { subject, end } => format!(
            "{}, {}, en el peor caso de los rangos permitidos",
            tongue.subject(subject),
            in_control(*end)
        ),
        EdgeSaid::MayLieOutsideControl => {
            "Pare y llame: con estos rangos permitidos el borde puede quedar fuera del control de campo."
                .to_owned()
        }
    }
}

fn in_control(end: ControlEnd) -> &'static str {
    match end {
        ControlEnd::Inner => {
            "borde de la pantalla más allá del extremo interior del control de campo"
        }
        ControlEnd::Outer => "borde de la pantalla antes del extremo exterior del control de campo",
    }
}
