//! Sentences about the items on the truck.

use super::noun::the;
use crate::Tongue;
use jointwright_joint::said::{TruckSaid, Wording};

pub(super) fn say(tongue: Tongue, said: &TruckSaid) -> String {
    match said {
        TruckSaid::TrialOn { conductor, end } => format!(
            "prensada de prueba en un trozo de {}{}",
            tongue.conductor(*conductor),
            end.as_ref().map(|end| format!(", extremo {end}")).unwrap_or_default()
        ),
        TruckSaid::Phase { phase } => format!("fase {phase}"),
        TruckSaid::Port { port, phase } => format!("puerto {port} fase {phase}"),
        TruckSaid::Stated { amount, n_ends } => format!("{amount}, {n_ends} extremos"),
        TruckSaid::NoAmount => "su ficha no indica cantidad ni vueltas".to_owned(),
        TruckSaid::NotMeasured { leg, phase, over } => format!(
            "nadie ha medido el ramal {leg}, fase {phase} sobre {}, y sus documentos no lo dicen",
            the(tongue.layer(*over))
        ),
        TruckSaid::Tape { metres, n_ends, row_says } => format!(
            "{metres:.1} m de cinta en total, {n_ends} extremos, sin contar el desperdicio{}",
            row_says.as_ref().map(|amount| format!("; su ficha dice {amount}")).unwrap_or_default()
        ),
        TruckSaid::Press { die } => format!(
            "prensa, con su calibración vigente, con {}",
            die.as_deref().unwrap_or("el dado que nombran sus instrucciones")
        ),
        TruckSaid::BoltDriver => "llave para los tornillos de cabeza rompible, y una lima para dejarlos al ras".to_owned(),
        TruckSaid::ScrewDriver => "llave para los tornillos, con el par que nombran sus instrucciones".to_owned(),
        TruckSaid::Rule => "cinta o regla de acero, con el gancho comprobado, con dieciseisavos y milímetros".to_owned(),
        TruckSaid::Calliper => "calibrador, y una cinta de diámetros".to_owned(),
        TruckSaid::SawGuide => "guía de sierra a escuadra".to_owned(),
        TruckSaid::KnifeStop => "cuchilla o pelacables con tope de profundidad, ajustado en un retazo del mismo cable".to_owned(),
        TruckSaid::Bridge => "puente para la pantalla abierta".to_owned(),
        TruckSaid::Ohmmeter => "ohmímetro de baja resistencia".to_owned(),
        TruckSaid::Wipes => "paños sin pelusa, tela abrasiva que no conduce, bolsas limpias para lo que se estaciona".to_owned(),
        TruckSaid::KnifeByPapers => "lo mínimo que permiten los documentos del cable".to_owned(),
        TruckSaid::KnifeByReadings => "lo mínimo que dejan las lecturas".to_owned(),
        TruckSaid::KnifeNothing { whose } => format!("{} es nada: mida otra vez antes de cortar", tongue.say(whose)),
        TruckSaid::KnifeUnknown => "su espesor no está en los documentos ni se ha medido: ajuste el tope en un retazo de este cable".to_owned(),
    }
}
