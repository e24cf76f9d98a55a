//! Sentences about the cable that is left.

use super::noun::of_the;
use crate::Tongue;
use jointwright_joint::said::SlackSaid;

pub(super) fn say(tongue: Tongue, said: &SlackSaid) -> String {
    match said {
        SlackSaid::NotMeasured => "nadie ha medido el cable sobrante".to_owned(),
        SlackSaid::SpareCutsNotSaid => {
            "el trabajo no dice cuántos cortes de reserva se quieren".to_owned()
        }
        SlackSaid::JacketEdgeOpen => {
            "el borde de la cubierta no tiene todavía posición o rango permitido".to_owned()
        }
        SlackSaid::For { subject, times: 1 } => {
            format!(
                "{}, cable sobrante para 1 corte más",
                tongue.subject(subject)
            )
        }
        SlackSaid::For { subject, times } => format!(
            "{}, cable sobrante para {times} cortes más",
            tongue.subject(subject)
        ),
        SlackSaid::SpareCuts { times: 1, each } => {
            format!("1 corte de reserva de {}", tongue.read(*each))
        }
        SlackSaid::SpareCuts { times, each } => {
            format!(
                "{times} cortes de reserva de {} cada uno",
                tongue.read(*each)
            )
        }
        SlackSaid::CallBeforeCutting => {
            "Llame antes de cortar nada: un extremo dañado no se podría hacer de nuevo.".to_owned()
        }
        SlackSaid::StraightNotMeasured => {
            "nadie ha medido hasta dónde es recto el ramal".to_owned()
        }
        SlackSaid::StraightNotSaid { row } => {
            format!("la ficha {row} no dice cuánto cable recto quiere más allá de su extremo")
        }
        SlackSaid::EndOpen { part } => format!(
            "el extremo {} no tiene todavía posición o rango permitido",
            of_the(tongue.part(*part))
        ),
        SlackSaid::Straight { subject } => format!(
            "{}, cable recto desde el extremo del conductor",
            tongue.subject(subject)
        ),
        SlackSaid::StraightenOrCall => {
            "Enderece más del ramal antes de cortar nada, o llame.".to_owned()
        }
    }
}
