//! Sentences about cable and joint under load.

use crate::{Tongue, shown};
use jointwright_joint::said::{Hottest, WarmingSaid, When, Wording};

pub(super) fn say(tongue: Tongue, said: &WarmingSaid) -> String {
    match said {
        WarmingSaid::JobDoesNotState { field } => format!("el trabajo no indica `{field}`"),
        WarmingSaid::AskGreatest => "¿Cuál es la temperatura más alta del conductor en servicio, incluidas las emergencias?".to_owned(),
        WarmingSaid::Conductor { hottest, load_a, when } => {
            let hottest = match hottest {
                Hottest::InJoint => "conductor en el empalme",
                Hottest::InCable => "conductor del cable",
            };
            let when = match when {
                When::AllTheTime => "de carga continua",
                When::EndOfEmergency => "al final de la emergencia",
            };
            format!("{hottest} con {} A {when}", shown(*load_a))
        }
        WarmingSaid::HotterThanStated => "Pare y llame: las presiones y los cortocircuitos se calculan aquí para un conductor más frío que el que produce la carga indicada. El ingeniero decide sobre la carga, o indica un `duty.conductor_greatest` más alto y hace calcular todo de nuevo.".to_owned(),
        WarmingSaid::ShieldStated { shield_load_a } => format!(
            "{shield_load_a} A en la pantalla con la carga del trabajo, como se indica, que crece con ella"
        ),
        WarmingSaid::FlowsRoundAtWorst => "la corriente que circula, con la resistencia y la temperatura en que más pierde".to_owned(),
        WarmingSaid::RunNotKnown => "no se sabe cuánto lleva el cable".to_owned(),
        WarmingSaid::ConductorIn { load_a, stretch } => format!(
            "conductor del cable con {} A de carga continua en {}",
            shown(*load_a),
            tongue.say(stretch)
        ),
        WarmingSaid::WithoutEnd => "sin fin".to_owned(),
        WarmingSaid::AtMost { degc } => format!("{degc} degC"),
        WarmingSaid::WarmsWithoutEnd => "se calienta sin fin".to_owned(),
        WarmingSaid::RunsAway { past_degc } => format!(
            "con esta carga se calienta sin fin, o más allá de {past_degc} degC"
        ),
        WarmingSaid::CableHotterThanStated => "Pare y llame: con esta carga el cable se calienta más de lo que indica el trabajo. El ingeniero decide sobre la carga, o sobre lo que rodea el cable.".to_owned(),
        WarmingSaid::RouteNotStated { leg } => format!(
            "el trabajo no indica `route_length`, así que el ramal {leg} puede tener tramos que nadie anotó"
        ),
        WarmingSaid::StretchHasNoLength { what } => format!("{what} no tiene largo"),
        WarmingSaid::StretchesAreNotTheRoute { leg, stretches_m, route_m, apart_mm } => format!(
            "los tramos suman {stretches_m:.3} m, y la ruta del ramal {leg} mide {route_m:.3} m: una parte ({apart_mm} mm) está dicha dos veces o ninguna"
        ),
    }
}
