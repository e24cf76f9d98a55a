//! Sentences about seals.

use crate::Tongue;
use jointwright_joint::said::{LapSaid, SealSaid, SpanSaid, Wording};

pub(super) fn say(tongue: Tongue, said: &SealSaid) -> String {
    match said {
        SealSaid::Lap(said) => lap(tongue, said),
        SealSaid::Span(said) => span(tongue, said),
        SealSaid::NoRange { row } => format!("la ficha {row} no da ningún rango"),
    }
}

fn lap(tongue: Tongue, said: &LapSaid) -> String {
    match said {
        LapSaid::OverlapOnBody => "traslape del sello sobre el cuerpo".to_owned(),
        LapSaid::OverlapOnBodyEnd { subject, seal } => format!(
            "{}, traslape de {seal} sobre el extremo del cuerpo, en el peor caso de los rangos permitidos",
            tongue.subject(subject)
        ),
        LapSaid::ClosesOverBodyEnd => "un sello cierra sobre el extremo del cuerpo".to_owned(),
        LapSaid::LeavesBodyEndOpen => "Pare. Use un sello más largo, o pida al ingeniero del propietario que revise los rangos permitidos; un extremo del cuerpo que queda abierto deja entrar agua.".to_owned(),
        LapSaid::BodyOverlapNotSaid { row } => format!(
            "la ficha {row} no dice cuánto debe traslaparse sobre el extremo del cuerpo"
        ),
        LapSaid::JacketOverlapNotSaid => "ni las instrucciones ni el propietario dicen cuánto debe traslaparse sobre la cubierta".to_owned(),
        LapSaid::OverlapOnJacket { subject, seal } => format!(
            "{}, traslape de {seal} sobre la cubierta, en el peor caso de los rangos permitidos",
            tongue.subject(subject)
        ),
        LapSaid::UseLonger => "Pare. Use un sello más largo, o pida al ingeniero del propietario que revise los rangos permitidos.".to_owned(),
        LapSaid::ShrinkageNotStated => "no se indica cuánto se contrae la cubierta después de cortarla, así que no se puede decir qué traslape queda entonces".to_owned(),
        LapSaid::AskShrinkage => "¿Cuánto se contrae la cubierta de este cable? El propietario lo fija como una distancia de `jacket-edge` a `jacket-edge-shrunk-back`.".to_owned(),
    }
}

fn span(tongue: Tongue, said: &SpanSaid) -> String {
    match said {
        SpanSaid::NotNamedByBoth { seal } => {
            format!("{seal} cubre todo el empalme, y no lo nombran los dos ramales")
        }
        SpanSaid::LengthNotSaid { row } => {
            format!("la ficha {row} no dice qué largo tiene una vez cerrado")
        }
        SpanSaid::OverlapNotSaid { row } => {
            format!("la ficha {row} no dice cuánto debe traslaparse sobre la cubierta")
        }
        SpanSaid::Joint { kind } => tongue.joint_kind(*kind).to_owned(),
        SpanSaid::OnePieceOverTwoLegs { seal, kind } => format!(
            "{seal} es una sola pieza sobre dos ramales; aquí el empalme es {}",
            tongue.joint_kind(*kind)
        ),
        SpanSaid::UseOneForEachLeg => "Use un sello para cada ramal.".to_owned(),
        SpanSaid::Length { seal } => format!("largo de {seal} sobre todo el empalme"),
        SpanSaid::SetOff { seal, to_leg, from_leg } => format!(
            "traslape de {seal} sobre la cubierta del ramal {to_leg}, cuando su otro extremo se coloca en la marca del ramal {from_leg}"
        ),
        SpanSaid::AtWorst { what } => {
            format!("{}, en el peor caso de los rangos permitidos", tongue.say(what))
        }
        SpanSaid::UseLongerOrOneALeg => "Pare. Use un sello más largo, o un sello por ramal; no lo estire a lo largo del empalme.".to_owned(),
    }
}
