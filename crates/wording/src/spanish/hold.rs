//! Sentences about the readings at a hold point, and their windows.

use super::noun::the;
use super::step::{piece, standing};
use super::word::paper;
use crate::Tongue;
use jointwright_joint::cable::Layer;
use jointwright_joint::said::{ConnectorOf, HoldSaid, Wording};

pub(super) fn say(tongue: Tongue, said: &HoldSaid) -> String {
    match said {
        HoldSaid::PlaneOn { plane, leg } => format!("{} en el ramal {leg}", tongue.plane(*plane)),
        HoldSaid::NobodySetsWindow => "nadie fija un rango permitido".to_owned(),
        HoldSaid::WhoHandedOver => "quién entregó, a quién, cuándo".to_owned(),
        HoldSaid::NamedPersonDecides => "una persona nombrada lo decide, y lo registra".to_owned(),
        HoldSaid::WhoTookBridgeOff => "quién dijo que se quita el puente, a quién, cuándo".to_owned(),
        HoldSaid::NamedPersonOnTheSpot => "una persona nombrada lo dice en el lugar, y lo registra".to_owned(),
        HoldSaid::AsInstructionsAsk => "lo que piden las instrucciones".to_owned(),
        HoldSaid::NoWindowHere => "aquí no se fija ningún rango permitido".to_owned(),
        HoldSaid::SetsNoneHere { source } => format!("{} no fija ninguno aquí", tongue.say(source)),
        HoldSaid::BridgeBeforeThisCut { leg } => format!("puente de la pantalla metálica del ramal {leg}, visto antes de este corte donde abre un cable entero"),
        HoldSaid::OnAndTight => "debe estar puesto y apretado".to_owned(),
        HoldSaid::StrandsDry { leg } => format!("hebras del ramal {leg}: secas o mojadas, con qué prueba, quién la hizo"),
        HoldSaid::UnderShieldDry { leg } => format!("debajo de la pantalla metálica del ramal {leg}: seco o mojado, con qué prueba, quién la hizo"),
        HoldSaid::Dry => "debe estar seco".to_owned(),
        HoldSaid::WetStops => "práctica común, sin fuente; mojado: pare y llame".to_owned(),
        HoldSaid::BridgeBeforeFirstCut { leg } => format!("puente de la pantalla metálica del ramal {leg}, antes del primer corte"),
        HoldSaid::SeenOnAndTight => "debe verse puesto y apretado".to_owned(),
        HoldSaid::WiresBesideTape { leg } => format!("alambres al lado de la cinta del ramal {leg}: doblados hacia atrás o cortados"),
        HoldSaid::AskBeforeOneIsCut => "ninguna ficha lo indica: pregunte antes de cortar alguno".to_owned(),
        HoldSaid::LengthKept { piece: of, leg } => format!("longitud que se conserva de cada {} más allá del borde, ramal {leg}", piece(*of)),
        HoldSaid::AtLeast { length } => format!("al menos {}", tongue.exact(*length)),
        HoldSaid::AskBeforeOneIsCutShort => "ninguna ficha lo indica: pregunte antes de acortar alguno".to_owned(),
        HoldSaid::Looks { on, leg } => format!(
            "muescas, cortes en anillo y partículas en {} del ramal {leg}, con la vista y el dedo en todo el contorno",
            if *on == Layer::Conductor { "las hebras".to_owned() } else { the(tongue.layer(*on)) }
        ),
        HoldSaid::NoneSeenOrFelt => "no debe verse ni sentirse ninguna".to_owned(),
        HoldSaid::OneFoundStops { row } => match row {
            Some(row) => format!("práctica común, sin fuente; si hay alguna: haga solo lo que permiten las instrucciones de {row}; si no lo permiten, pare y llame"),
            None => "práctica común, sin fuente; si hay alguna: pare y llame".to_owned(),
        },
        HoldSaid::PhaseAtFarEnd { leg, goes_to } => format!(
            "ramal {leg}, fase encontrada en el extremo lejano ({}), por quién",
            goes_to.as_deref().unwrap_or("no está dicho adónde va")
        ),
        HoldSaid::SameAsHere => "debe ser la misma que aquí".to_owned(),
        HoldSaid::UnlikeStops => "práctica común, sin fuente; distinta o en duda: no una nada, pare y llame".to_owned(),
        HoldSaid::ContactOf { leg } => format!("resistencia de la conexión de la pantalla metálica del ramal {leg}"),
        HoldSaid::AtMostOhm { ohm } => {
            if *ohm < 1.0 {
                format!("como máximo {} miliohm", ohm * 1e3)
            } else {
                format!("como máximo {ohm} ohm")
            }
        }
        HoldSaid::SetsNone { paper: of } => format!("{} no fija ninguno", paper(of)),
        HoldSaid::NoShieldPart => "no está nombrada ninguna pieza de pantalla".to_owned(),
        HoldSaid::AcrossJoint { from, to } => format!("resistencia de la pantalla metálica a través del empalme, del ramal {from} al ramal {to}"),
        HoldSaid::CompareThePhases => "anótela; compare las fases, y llame donde una sea distinta de las otras".to_owned(),
        HoldSaid::OpenHere { leg } => format!("pantalla metálica del ramal {leg}: abierta aquí, no unida a los otros ramales"),
        HoldSaid::BondedOpen => "el trabajo la deja abierta; quién la mide, y cómo, lo dice el propietario".to_owned(),
        HoldSaid::DiameterFor { leg, over, at, row } => format!(
            "ramal {leg}, diámetro sobre {}, para `{at}` de {row}",
            the(tongue.layer(*over))
        ),
        HoldSaid::GapAtStop { row, leg } => format!("separación entre el extremo del conductor y el tope en {row}, ramal {leg}"),
        HoldSaid::BoltStandsProud { row } => format!("cuánto sobresale un tornillo roto de {row}"),
        HoldSaid::LengthAsMade { row } => format!("longitud de {row} una vez hecho"),
        HoldSaid::DiameterAsMade { row } => format!("diámetro exterior de {row} una vez hecho"),
        HoldSaid::LapOntoJacket { row, leg } => format!("traslape de {row} sobre {} del ramal {leg}", the(tongue.layer(Layer::Jacket))),
        HoldSaid::ConductorEnd { leg } => format!("extremo del conductor del ramal {leg} desde la línea de referencia"),
        HoldSaid::Between { least, greatest } => format!("{} a {}", tongue.exact(*least), tongue.exact(*greatest)),
        HoldSaid::AskBeforeThisCut { why } => format!("{}: pregunte antes de este corte", tongue.say(why)),
        HoldSaid::StatesNoGap { paper: of, stands } => format!(
            "{} no indica separación entre el extremo del conductor y el tope; la posición está a {} de él",
            paper(of),
            standing(tongue, *stands)
        ),
        HoldSaid::Die { of } => format!("dado en la prensa para {}", connector(of)),
        HoldSaid::Presses { of } => format!("prensadas hechas en cada extremo de {}", connector(of)),
        HoldSaid::AcrossFlats { of } => format!("entre caras planas de cada prensada de {}", connector(of)),
        HoldSaid::LengthByPaper { of } => format!("longitud de {} una vez hecho, según su propio documento, ramal {}", row(of), of.leg),
        HoldSaid::StatesNone { paper: of } => format!("{} no indica ninguna", paper(of)),
        HoldSaid::HeadsSheared { of } => format!("cabezas de {} rotas, ramal {}", row(of), of.leg),
        HoldSaid::Exactly { n } => n.to_string(),
        HoldSaid::All { n } => format!("todas, {n}"),
        HoldSaid::EveryHead => "cada una; no está dicho cuántas son".to_owned(),
        HoldSaid::HeadTorque { of } => format!("par con que se rompen las cabezas de {}, ramal {}", row(of), of.leg),
        HoldSaid::ScrewsTightened { of } => format!("tornillos de {} apretados, ramal {}", row(of), of.leg),
        HoldSaid::ScrewTorque { of } => format!("par de cada tornillo de {}", connector(of)),
        HoldSaid::Torque { least_nm, greatest_nm } => tongue.torque((*least_nm, *greatest_nm), "a"),
        HoldSaid::FromTo { from, to, leg } => format!(
            "desde {} hasta {}, en el ramal {leg}",
            the(&tongue.plane(*from)),
            the(&tongue.plane(*to))
        ),
        HoldSaid::GivesNoRange { source } => format!("{} no da ningún rango", tongue.say(source)),
        HoldSaid::GivesNoWindow { source, distance } => format!(
            "{} da {} sin rango permitido: pare y pregunte si es otra",
            tongue.say(source),
            tongue.read(*distance)
        ),
        HoldSaid::WhereEnds { row, leg } => format!("dónde termina {row}, en el ramal {leg}"),
        HoldSaid::NoRowSaysWhere => "ninguna ficha dice dónde queda: vea sus instrucciones".to_owned(),
        HoldSaid::NotPlacedYet => "sin posición todavía, vea la escalera de alargamiento: prense uno de prueba, escriba su alargamiento en el trabajo, planifique otra vez".to_owned(),
        HoldSaid::OnLadder => "escalera de alargamiento en la primera página".to_owned(),
    }
}

/// A connector with its end.
fn row(of: &ConnectorOf) -> String {
    match &of.end {
        Some(end) => format!("{}, extremo {end}", of.row),
        None => of.row.clone(),
    }
}

/// A connector with its end, on its leg.
fn connector(of: &ConnectorOf) -> String {
    format!("{}, ramal {}", row(of), of.leg)
}
