//! Sentences about ways back, in Spanish.

use super::noun::the;
use crate::Tongue;
use jointwright_joint::end::EndId;
use jointwright_joint::plane::Plane;
use jointwright_joint::said::{BuiltSaid, PartKind, Said, WaySaid, Wording};

pub(super) fn say(tongue: Tongue, said: &WaySaid) -> String {
    let part = |part: &PartKind| the(tongue.part(*part));
    let at = |plane: &Plane| the(&tongue.plane(*plane));
    match said {
        WaySaid::CutOn { plane, to } => format!(
            "quite más, hasta que {} quede a {}",
            at(plane),
            tongue.exact(*to)
        ),
        WaySaid::MoveTo {
            part: of,
            plane,
            to,
        } => format!("mueva {}: {} a {}", part(of), at(plane), tongue.exact(*to)),
        WaySaid::Finish { measured } => {
            let measured = measured.clone();
            let what = tongue.say(&Said::from(BuiltSaid::Slot { measured }));
            format!("termine el paso empezado: {what}")
        }
        WaySaid::StartAgain { ends } => {
            format!("corte hacia atrás y empiece de nuevo: {}", all(ends))
        }
        WaySaid::UntilHoldoutIsOut => "solo hasta que se retire su núcleo extraíble".to_owned(),
        WaySaid::WithinMinutes { minutes } => {
            format!("solo dentro de {minutes} minutos desde que se llevó a su sitio")
        }
        WaySaid::ReadAnew => "todo se hace y se lee de nuevo, y nada leído antes cuenta".to_owned(),
        WaySaid::UsesUp { rows } => format!(
            "gasta {}: ninguna ficha dice que pueda usarse otra vez",
            rows.join(", ")
        ),
        WaySaid::Slack { leg, needs, slack } => format!(
            "ramal {leg}: gasta {} de los {} de cable sobrante que declara el trabajo; reste lo que se haya cortado desde entonces",
            tongue.exact(*needs),
            tongue.exact(*slack)
        ),
        WaySaid::TooMuchIsOff { plane } => {
            format!("quitar más: en {} ya se quitó demasiado", at(plane))
        }
        WaySaid::Covered { plane } => format!(
            "quitar más: según las lecturas, algo cubre ya {}",
            at(plane)
        ),
        WaySaid::ConnectorCovered => {
            "terminar el paso: según las lecturas, el cuerpo cubre ya el conector".to_owned()
        }
        WaySaid::PartCovered { part: of } => {
            format!("mover {}: según las lecturas, algo lo cubre ya", part(of))
        }
        WaySaid::NoRowPlaces { plane } => {
            format!("ninguna ficha dice dónde va {}", at(plane))
        }
        WaySaid::NeverMoves { part: of, row } => {
            format!("mover {}: {row} dice que no se puede mover", part(of))
        }
        WaySaid::MoveNotSaid { part: of, row } => {
            format!("mover {}: {row} no dice si se puede mover", part(of))
        }
        WaySaid::NotToDress { row } => {
            format!("alisarlo: {row} no declara hasta qué profundidad se puede alisar")
        }
        WaySaid::NotToWind { row } => {
            format!("rehacer el borde: {row} no tiene un paso para ello")
        }
        WaySaid::SlackNotMeasured { leg } => {
            format!("cortar hacia atrás: el trabajo no declara el cable sobrante del ramal {leg}")
        }
        WaySaid::SlackTooShort { leg, needs, slack } => format!(
            "cortar hacia atrás: el ramal {leg} necesita {} y tiene {} de cable sobrante",
            tongue.exact(*needs),
            tongue.exact(*slack)
        ),
        WaySaid::JacketEdgeOpen { leg } => {
            format!(
                "cortar hacia atrás: el borde de la cubierta del ramal {leg} no tiene posición, y nadie sabe cuánto cable gasta"
            )
        }
        WaySaid::SameCable => {
            "cortar hacia atrás: un extremo nuevo del mismo cable mide lo mismo".to_owned()
        }
        WaySaid::CannotUndo => "no se puede deshacer".to_owned(),
    }
}

fn all(ends: &[EndId]) -> String {
    let ends: Vec<String> = ends.iter().map(ToString::to_string).collect();
    ends.join(", ")
}
