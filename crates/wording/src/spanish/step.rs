//! Sentences about the steps of a make-up.

use super::noun::the;
use crate::Tongue;
use jointwright_joint::cable::Layer;
use jointwright_joint::plane::Plane;
use jointwright_joint::said::{
    BridgeMoment, EdgeAct, Exact, SetOutFrom, ShieldPiece, StepSaid, Stop, Wording,
};
use jointwright_joint::stage::Stage;

pub(super) fn say(tongue: Tongue, said: &StepSaid) -> String {
    let jacket = the(tongue.layer(Layer::Jacket));
    let screen = tongue.layer(Layer::InsulationScreen);
    match said {
        StepSaid::Title { stage, edge } => title(tongue, *stage, *edge),
        StepSaid::HandOver => "Desconexión, identificación, verificación, puesta a tierra, aire y acceso: por las personas nombradas para ello, según los códigos locales y las reglas del propietario, y registrados por ellas. Este papel no dice nada sobre nada de eso.".to_owned(),
        StepSaid::MeasureWhereBare => "Sobre cada capa donde esté descubierta: en un trozo pelado del extremo de este mismo cable, y otra vez cuando la capa quede descubierta.".to_owned(),
        StepSaid::LookAtJacket => format!("Mire {jacket} en todo el contorno donde irá el sello, y anote cómo está."),
        StepSaid::WriteLegAndPhase => format!("Antes del corte: escriba ramal y fase sobre {jacket} que queda, más allá de donde terminará el sello; la segunda persona lo lee en voz alta."),
        StepSaid::MarkOut { grows } => format!(
            "De la primera página o de la tira de marcas: primero el corte más exterior, los otros desde el mismo extremo a medida que cada capa queda descubierta, las marcas del cuerpo y del sello donde se quedan. Todo antes de instalar el conector{}.",
            if *grows { ", porque al prensar el extremo se mueve" } else { "" }
        ),
        StepSaid::Phasing => "Por las personas y con el método que nombra el propietario; este papel no dice nada sobre cuál cable es cuál. Anote, fase por fase, lo que se encuentra aquí y en el extremo lejano. Distinto o en duda: no una nada, pare y llame.".to_owned(),
        StepSaid::SlideOnNow => "A más tardar en este paso, en este orden, cada pieza limpia y con el lado correcto hacia adelante; la segunda persona lee la lista en voz alta. Lo que no pasa sobre lo que hay debajo no se fuerza: sus instrucciones dicen cuándo se pone.".to_owned(),
        StepSaid::Wipes => format!(
            "Cada pasada desde el extremo del conductor hacia {0}, nunca al revés; una pasada por movimiento, con una cara limpia del paño. Abrasivo que no conduzca, nunca esmeril, y ninguno sobre {0}.",
            the(screen)
        ),
        StepSaid::PushOnInOrder => "En este orden, cada pieza limpia y con el lado correcto hacia adelante, engrasada como dicen sus instrucciones.".to_owned(),
        StepSaid::LookAgain => "Limpiado antes de instalar el conector: mire otra vez el aislamiento, y límpielo otra vez como dicen las instrucciones, antes de que algo lo cubra.".to_owned(),
        StepSaid::HandBack => "Los ensayos, la puesta en servicio y la entrega del lugar: decididos y registrados por las personas nombradas para ello.".to_owned(),
        StepSaid::GrowthNotMeasured { leg, waiting } => format!(
            "Ramal {leg}: no se ha medido cuánto se alarga el conector, por eso no tiene posición todavía: {}. Antes de cortar nada, prense un conector de prueba con esta herramienta y este dado, escriba su alargamiento en el trabajo y planifique otra vez; la escalera de alargamiento en la primera página muestra dónde lo pondría cada alargamiento, y entre dos de sus líneas no se sabe nada.",
            planes(tongue, waiting)
        ),
        StepSaid::TestMoisture => "Después del corte: pruebe si hay humedad en las hebras, y debajo de la pantalla metálica una vez descubierta, como dicen las reglas del propietario; anote quién encontró qué. Mojado: pare y llame.".to_owned(),
        StepSaid::BridgeBesideBond => "El puente está en paralelo con la conexión: una medida que abarca los dos no muestra la conexión sola, y con el puente puesto una conexión abierta se lee como buena. Deje el camino del puente fuera de la medida, como dicen las reglas del propietario; donde no se pueda, escriba «puente puesto» y llame.".to_owned(),
        StepSaid::MayMove { leg, row, minutes } => format!("Ramal {leg}: {row} se puede mover durante {minutes} minutos después de colocado, y no más. Colocado a las ____:____"),
        StepSaid::OfLeg { leg, said } => format!("Ramal {leg}: {}.", tongue.say(said)),
        StepSaid::KeepAsked { piece } => format!(
            "ninguna ficha dice si cada {} se dobla hacia atrás o se corta con la cinta: pregunte antes de cortar alguno",
            self::piece(*piece)
        ),
        StepSaid::Keep { length, piece, has_tape } => format!(
            "conserve {} de cada {} más allá de este borde{}",
            tongue.exact(*length),
            self::piece(*piece),
            tape(*has_tape)
        ),
        StepSaid::KeepUnstated { piece, has_tape } => format!(
            "no está dicho cuánto se conserva de cada {}: pregunte antes de acortar alguno{}",
            self::piece(*piece),
            tape(*has_tape)
        ),
        StepSaid::Abrasive { what } => format!("Abrasivo: {what}."),
        StepSaid::AbrasiveUnstated { row } => format!("Abrasivo y grano: la ficha {row} no indica ninguno; búsquelo en su documento, o pregunte, antes de usar alguno."),
        StepSaid::Brush { leg, metal, row } => format!(
            "Ramal {leg}: para su conductor, que es de {}, está nombrado {row}, uno que no haya tocado otro metal; cuándo y cómo, como dicen las instrucciones del conector.",
            tongue.metal(*metal)
        ),
        StepSaid::SeeInstructions { row } => format!("{row}: vea las instrucciones."),
        StepSaid::SetOut { leg, from, row, is_two_ended, stands, stop, gap } => format!(
            "Ramal {leg}: trace el corte desde {}, con el cable acomodado como va a quedar. {} de {row} queda allí, y el extremo del conductor queda a {} de allí: {}{}.",
            reference(*from),
            if *is_two_ended { "El centro" } else { "El plano de contacto" },
            standing(tongue, *stands),
            stopped(stop),
            gap.map_or(String::new(), |gap| format!(
                ", y no más de {} más lejos, la separación que permite",
                tongue.exact(gap)
            ))
        ),
        StepSaid::SetOutUnknown { leg, why, from } => format!(
            "Ramal {leg}: {}, por eso no se sabe a qué distancia queda el extremo del conductor desde {}; pregunte antes de este corte.",
            tongue.say(why),
            reference(*from)
        ),
        StepSaid::OpensShield => "Donde este corte atraviesa un cable que todavía está entero, abre también su pantalla metálica: puenteada antes de eso, como dicen las reglas del propietario.".to_owned(),
        StepSaid::BridgeComesOff { when } => format!(
            "El puente se quita {}, cuando la persona nombrada para ello lo dice en el lugar; no se deja debajo del sello.",
            moment(*when)
        ),
        StepSaid::BridgeAsk { name, number, why } => format!(
            "PREGUNTE A {name}, {number}: {}. Queda puesto hasta que eso esté dicho, y ningún sello cierra sobre él.",
            tongue.say(why)
        ),
        StepSaid::CommonPractice => "práctica común, sin fuente".to_owned(),
        StepSaid::Nobody => "nadie lo dice".to_owned(),
    }
}

/// Title of a stage for a crew.
fn title(tongue: Tongue, stage: Stage, edge: Option<EdgeAct>) -> String {
    let jacket = the(tongue.layer(Layer::Jacket));
    match stage {
        Stage::HandOver => "Entrega del lugar y de los cables".to_owned(),
        Stage::Measure => "Mida el cable y compárelo con los rangos".to_owned(),
        Stage::Square => "Enderece, acomode y corte a escuadra el extremo del conductor".to_owned(),
        Stage::MarkOut => {
            "Trace cada marca desde el extremo del conductor cortado a escuadra".to_owned()
        }
        Stage::SlideOn => {
            "Deslice y estacione todo lo que debe pasar sobre este extremo".to_owned()
        }
        Stage::Jacket => format!("Corte {jacket}"),
        Stage::Bridge => "Puentee la pantalla metálica".to_owned(),
        Stage::Shield => match edge {
            Some(EdgeAct::Cut) => "Corte la pantalla metálica",
            Some(EdgeAct::LayBack) => "Doble hacia atrás la pantalla metálica",
            Some(EdgeAct::Ask) => "Pregunte: cortar o doblar hacia atrás la pantalla metálica",
            None => "Corte o doble hacia atrás la pantalla metálica",
        }
        .to_owned(),
        Stage::Screen => format!(
            "Corte y quite {}",
            the(tongue.layer(Layer::InsulationScreen))
        ),
        Stage::Insulation => "Corte y quite el aislamiento".to_owned(),
        Stage::Phasing => "Compruebe cada fase con el extremo lejano".to_owned(),
        Stage::Connect => "Instale el conector".to_owned(),
        Stage::Clean => "Alise y limpie el aislamiento".to_owned(),
        Stage::PushOn => {
            "Empuje sobre el extremo limpio lo que no se puede estacionar sobre la cubierta"
                .to_owned()
        }
        Stage::Place => "Lleve el cuerpo a su posición".to_owned(),
        Stage::Mate => "Enchufe el ramal en su puerto".to_owned(),
        Stage::Bond => "Reponga y conecte la pantalla metálica".to_owned(),
        Stage::BondCheck => "Mida la conexión permanente de la pantalla metálica".to_owned(),
        Stage::BridgeOff => "Quite el puente de la pantalla metálica".to_owned(),
        Stage::Seal => format!("Reponga {jacket} y selle"),
        Stage::HandBack => "Soporte, ensayos, entrega y registro".to_owned(),
    }
}

fn planes(tongue: Tongue, planes: &[Plane]) -> String {
    let planes: Vec<String> = planes
        .iter()
        .map(|plane| the(&tongue.plane(*plane)))
        .collect();
    planes.join(" y ")
}

pub(super) fn piece(piece: ShieldPiece) -> &'static str {
    match piece {
        ShieldPiece::Strap => "cinta plana",
        ShieldPiece::Wire => "alambre",
        ShieldPiece::Turn => "vuelta",
    }
}

fn tape(has_tape: bool) -> &'static str {
    if has_tape {
        "; la cinta se corta en este borde"
    } else {
        ""
    }
}

fn reference(from: SetOutFrom) -> String {
    match from {
        SetOutFrom::CentreLine => "la línea central del empalme, marcada en el soporte".to_owned(),
        SetOutFrom::ContactPlane => "el plano de contacto del conector, marcado en el soporte donde lo ponen las instrucciones del cuerpo".to_owned(),
        SetOutFrom::Port(port) => {
            format!("la cara del puerto {port} de la barra, colgada como va a quedar")
        }
        SetOutFrom::OwnPort => {
            "la cara del puerto del ramal en la barra, colgada como va a quedar".to_owned()
        }
    }
}

/// Distance of the conductor end from its reference; a barrel may reach past the middle from which the papers measure.
pub(super) fn standing(tongue: Tongue, stands: Exact) -> String {
    if stands.half_nm < 0 {
        let beyond = Exact {
            half_nm: -stands.half_nm,
        };
        format!("{} más allá, del otro lado,", tongue.exact(beyond))
    } else {
        tongue.exact(stands)
    }
}

fn stopped(stop: &Stop) -> String {
    match stop {
        Stop::End(name) => format!("el fondo del extremo {name}"),
        Stop::Half => "la mitad de su tope".to_owned(),
        Stop::Whole => "su tope".to_owned(),
    }
}

pub(super) fn moment(when: BridgeMoment) -> &'static str {
    match when {
        BridgeMoment::AfterBondIsMeasured => "después de medir la conexión permanente",
        BridgeMoment::BeforeBondIsMeasured => "antes de medir la conexión permanente",
    }
}
