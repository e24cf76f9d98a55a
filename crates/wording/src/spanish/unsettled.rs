//! Questions that a person must settle before work goes on.

use super::step::{moment, piece};
use crate::Tongue;
use jointwright_joint::said::{UnsettledSaid, Wording};

pub(super) fn say(tongue: Tongue, said: &UnsettledSaid) -> String {
    match said {
        UnsettledSaid::WiresBesideTape { leg, piece: of, row } => format!(
            "Ramal {leg}: ¿cada {} de la pantalla metálica se dobla hacia atrás o se corta con la cinta, y cuánto se conserva? {}; resuélvalo antes del corte a escuadra.",
            piece(*of),
            match row {
                Some(row) => format!("La ficha {row} no lo dice (`lay_back`, `cut_off`)"),
                None => "La pieza de pantalla está sin elegir".to_owned(),
            }
        ),
        UnsettledSaid::KeptTooLong { leg, kept, piece: of, edge_mm } => format!(
            "Ramal {leg}: hay que conservar {} de cada {} más allá del borde, y el borde está a {edge_mm:.1} mm del corte a escuadra; resuelva antes de ese corte cómo quedan bastante largos.",
            tongue.exact(*kept),
            piece(*of)
        ),
        UnsettledSaid::BridgeNobodySays => "nadie dice si el puente se quita antes o después de medir la conexión permanente".to_owned(),
        UnsettledSaid::BridgeNotAllSame { words } => {
            let all: Vec<String> = words
                .iter()
                .map(|(who, when)| format!("{}: {}", tongue.say(who), moment(*when)))
                .collect();
            format!("no todos dicen lo mismo de cuándo se quita el puente ({})", all.join("; "))
        }
        UnsettledSaid::AskOfBridge { name, number, why } => format!(
            "Pregunte a {name}, {number} antes de que cierre algún sello: {}; el puente queda puesto hasta que eso esté dicho.",
            tongue.say(why)
        ),
        UnsettledSaid::AloneAcross { row, leg } => format!("{row} cruza el empalme de ramal a ramal, y solo el ramal {leg} la nombra; resuelva qué lleva la pantalla metálica de los otros."),
        UnsettledSaid::NobodyParks => "Ningún ramal está nombrado para estacionar el cuerpo; resuélvalo antes de hacer algún conector.".to_owned(),
        UnsettledSaid::TooManyPark { n } => format!("{n} ramales están nombrados para estacionar el único cuerpo; resuelva cuál antes de hacer algún conector."),
        UnsettledSaid::OwnOrder { row, before, after } => format!(
            "{row} quiere `{}` antes de `{}`, contra el orden que los empalmes necesitan; resuélvalo con sus instrucciones en la mano.",
            tongue.say(before),
            tongue.say(after)
        ),
        UnsettledSaid::SlidOnByPaper { row, leg, passes, jacket } => format!(
            "{row} se desliza antes del conector según su propio documento, y según su ficha pasa sobre {} como máximo, y la cubierta del ramal {leg} puede medir {}; resuelva con sus instrucciones en la mano cuándo se pone.",
            tongue.read(*passes),
            tongue.read(*jacket)
        ),
        UnsettledSaid::CannotPark { row, leg, passes, jacket } => format!(
            "{row} no se puede estacionar sobre la cubierta: pasa sobre {} como máximo, y la cubierta del ramal {leg} puede medir {}; resuelva dónde se estaciona.",
            tongue.read(*passes),
            tongue.read(*jacket)
        ),
        UnsettledSaid::HowItGoesOn { row } => format!("La ficha {row} no dice cómo se pone (`goes_on`), ni sobre qué pasa (`passes`); resuelva cuándo se pone antes de hacer algún conector."),
        UnsettledSaid::NoConnector => "no está nombrado ningún conector".to_owned(),
    }
}
