//! Sentences about the fields of a leg.

use super::noun::the;
use crate::{Tongue, shown};
use jointwright_joint::said::{FieldWith, StudyAdapter, StudyCable, StudySaid, Wording};

pub(super) fn say(tongue: Tongue, said: &StudySaid) -> String {
    match said {
        StudySaid::Adapter(said) => adapter(tongue, said),
        StudySaid::Cable(said) => cable(tongue, said),
        StudySaid::BodyLeftOpen => "falta elegir su cuerpo".to_owned(),
        StudySaid::NothingSolved => "no se resolvió nada".to_owned(),
        StudySaid::AtTrial => "en el ensayo".to_owned(),
        StudySaid::NotSolved { why } => why.clone(),
        StudySaid::WithState {
            insulation_mm,
            edge_mm,
        } => format!(
            "con {insulation_mm:.2} mm sobre el aislamiento y el borde de la pantalla a {edge_mm:.1} mm del origen del cuerpo"
        ),
        StudySaid::With(with) => self::with(*with),
        StudySaid::PermittivityNotStated => {
            "no se declara la permitividad del aislamiento del cable".to_owned()
        }
        StudySaid::AskPermittivity { leg } => format!(
            "¿Cuál es la permitividad relativa del aislamiento del cable del ramal {leg}? Pregunte a su fabricante."
        ),
        StudySaid::StatedForOther {
            part,
            stated_mm,
            least_mm,
            greatest_mm,
        } => format!(
            "el interior de {part} se declara para {stated_mm:.1} mm sobre el aislamiento, aquí son {least_mm:.1} a {greatest_mm:.1} mm: demasiado lejos para concluir de uno al otro"
        ),
        StudySaid::LayerRises { part } => format!(
            "la conductividad de una capa dentro de {part} crece con el campo; no se busca el peor caso de sus rangos permitidos"
        ),
        StudySaid::DatumNotPlaced { part } => format!("ninguna ficha sitúa el origen de {part}"),
        StudySaid::ElectrodeElsewhere {
            part,
            linked_mm,
            inside_mm,
        } => format!(
            "{part}: sus distancias ponen el extremo del electrodo a {linked_mm:.1} mm de su origen, su interior a {inside_mm:.1} mm; uno de los dos es de otra pieza"
        ),
        StudySaid::NoEdgeByInstructions => {
            "las instrucciones solas no sitúan ningún borde de la pantalla".to_owned()
        }
        StudySaid::ByInstructionsAlone { said } => {
            format!("según las instrucciones solas, {}", tongue.say(said))
        }
        StudySaid::NoPlaceForEdge { part } => {
            format!(
                "las instrucciones de {part} no dejan ninguna posición para el borde de la pantalla"
            )
        }
    }
}

fn cable(tongue: Tongue, said: &StudyCable) -> String {
    match said {
        StudyCable::NotMeasuredInPhase { layer, phase } => format!(
            "nadie lo midió sobre {} en la fase {phase}",
            the(tongue.layer(*layer))
        ),
        StudyCable::NotMeasured { layer } => {
            format!("nadie lo midió sobre {}", the(tongue.layer(*layer)))
        }
        StudyCable::ScreenNotThicker {
            insulation_mm,
            screen_mm,
        } => format!(
            "se leyeron {insulation_mm:.2} mm sobre el aislamiento y {screen_mm:.2} mm sobre su pantalla, que no es más"
        ),
        StudyCable::ScreenThicknessNotKnown => {
            "el espesor de la pantalla del aislamiento no está medido ni en los documentos"
                .to_owned()
        }
        StudyCable::ConductorScreenNotKnown => {
            "el diámetro sobre la pantalla del conductor no está en los documentos".to_owned()
        }
        StudyCable::NoWall {
            insulation_mm,
            screen_mm,
        } => format!(
            "el medio de las lecturas sobre el aislamiento es {insulation_mm:.2} mm; sobre la pantalla del conductor sus documentos dicen {screen_mm:.2} mm"
        ),
    }
}

fn adapter(tongue: Tongue, said: &StudyAdapter) -> String {
    match said {
        StudyAdapter::UnderLayer { part } => format!(
            "no se dibuja un adaptador bajo {part}, que tiene una capa propia que reparte el campo"
        ),
        StudyAdapter::StuffNotKnown { part } => format!("no se sabe de qué es {part}"),
        StudyAdapter::AskStuff { part } => format!(
            "¿Cuál es la permitividad relativa de {part}, y llega desde debajo del electrodo hasta más allá del borde de la pantalla?"
        ),
        StudyAdapter::BeginsAfter {
            part,
            begins_mm,
            electrode_mm,
        } => format!(
            "{part} puede empezar a {begins_mm:.1} mm del origen del cuerpo, el electrodo deja el interior a {electrode_mm:.1} mm: no se dibuja lo que hay entre ellos"
        ),
        StudyAdapter::EndsBeforeDeflector {
            part,
            ends_mm,
            deflector_mm,
        } => format!(
            "{part} puede terminar a {ends_mm:.1} mm del origen del cuerpo, el deflector empieza a {deflector_mm:.1} mm: no se dibuja lo que hay más allá"
        ),
        StudyAdapter::EndsBeforeEdge { part, by } => format!(
            "{part} puede terminar {} antes del borde de la pantalla del aislamiento: no se dibuja lo que hay allí en el interior del cuerpo",
            tongue.read(*by)
        ),
        StudyAdapter::EndsTooNear { part, past, thick } => format!(
            "{part} puede terminar {} después del borde de la pantalla del aislamiento, menos que los {} que puede tener de espesor: no se dibuja lo que hay allí en el interior del cuerpo",
            tongue.read(*past),
            tongue.read(*thick)
        ),
    }
}

/// Dimensions that make a field the worst.
fn with(with: FieldWith) -> String {
    match with {
        FieldWith::NoField => {
            "sin campo: el deflector cubre el borde en cualquier posición que permitan los rangos"
                .to_owned()
        }
        FieldWith::Edge {
            insulation_mm,
            edge_mm,
            rounded,
        } => {
            let rounded = rounded.map_or(String::new(), |edge| {
                let filling = if edge.is_empty {
                    "sin relleno (con aire)"
                } else {
                    "relleno"
                };
                format!(
                    ", su borde redondeado con {} mm, el hueco {filling}",
                    shown(edge.radius_mm)
                )
            });
            format!(
                "{} mm sobre el aislamiento, borde de la pantalla a {} mm del origen del cuerpo{rounded}",
                shown(insulation_mm),
                shown(edge_mm)
            )
        }
        FieldWith::Film {
            thickness_mm,
            is_empty,
        } => format!(
            "película de {} mm de espesor, {}",
            shown(thickness_mm),
            if is_empty { "vacía" } else { "llena" }
        ),
    }
}
