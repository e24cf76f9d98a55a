//! Messages about temperatures that were solved.

use super::load::shares;
use crate::{Tongue, shown};
use jointwright_joint::said::{
    AgainstCable, AloneSaid, EmergencyEnd, EmergencyLimit, FedSaid, LegLoad, LegRating, RatingSaid,
    ToLimit, Wording, WorseContact,
};

pub(super) fn say(tongue: Tongue, said: &RatingSaid) -> String {
    match said {
        RatingSaid::Leg(said) => leg(tongue, said),
        RatingSaid::RunsAway { past_degc } => {
            format!("se calienta sin fin, o más allá de {past_degc} degC")
        }
        RatingSaid::LimitOfBody { body, limit_degc } => {
            format!("conductor dentro de {body}: {limit_degc} degC según su documento")
        }
        RatingSaid::LimitOfCable { limit_degc } => format!(
            "su cable sin empalme: {limit_degc} degC, la más alta en servicio según el trabajo, incluidas las emergencias"
        ),
        RatingSaid::BodyLeftOpen => "queda un cuerpo sin elegir".to_owned(),
        RatingSaid::FromMemory { key } => format!(
            "`{key}` de memoria, sin confirmar por el propietario: nada se decide con estas temperaturas"
        ),
        RatingSaid::ShieldOfRun { said } => format!("pantalla: {}", tongue.say(said)),
        RatingSaid::WorstOfDays { source } => format!(
            "el peor de todos los días con este factor de pérdidas, porque sus 24 cargas no se indican; {source}"
        ),
        RatingSaid::NotJudgedAndClosed { why, word } => format!(
            "{}. Cerrado, sin aprobarse, por la palabra de {}",
            tongue.say(why),
            tongue.say(word)
        ),
    }
}

fn leg(tongue: Tongue, said: &LegRating) -> String {
    match said {
        LegRating::RunsAwayAt { load_a, past_degc } => format!(
            "con {} A de carga continua se calienta sin fin, o más allá de {past_degc} degC",
            shown(*load_a)
        ),
        LegRating::AgainstCable(said) => against_cable(said),
        LegRating::WorseContact(said) => worse_contact(said),
        LegRating::ToLimit(said) => to_limit(said),
        LegRating::ByItself {
            limit_degc,
            alone: by_itself,
            fed: by,
        } => format!(
            "{limit_degc} degC, este ramal por sí solo: {}{}",
            alone(by_itself),
            by.as_ref().map_or(String::new(), fed)
        ),
        LegRating::Emergency {
            load_a,
            from_a,
            time_h,
            end,
            limit,
        } => format!(
            "emergencia de {} A desde {} A estables: {}{}",
            shown(*load_a),
            shown(*from_a),
            emergency_end(*end, *time_h),
            limit.map_or(String::new(), emergency_limit)
        ),
        LegRating::EmergencyNotComputed { why } => {
            format!("emergencia: no se calcula: {}", tongue.say(why))
        }
        LegRating::Ageing {
            ratio,
            reference_degc,
            emergency_h,
            activation_kj_per_mol,
            from,
        } => {
            let spent = emergency_h.map_or(String::new(), |hours| {
                format!(
                    "; una emergencia así, sin el enfriamiento que le sigue, equivale a {} h de envejecimiento a esa temperatura",
                    shown(hours)
                )
            });
            format!(
                "envejecimiento de la goma con la carga: {} veces el que tiene a {reference_degc} degC{spent} (Arrhenius, {activation_kj_per_mol} kJ/mol, {from})",
                shown(*ratio)
            )
        }
    }
}

fn against_cable(said: &AgainstCable) -> String {
    let how = if said.by_k > 0.0 {
        "más caliente"
    } else {
        "más frío"
    };
    format!(
        "con {} A de carga continua: conductor en el empalme {:.1} degC (a {:.0} mm de su centro), {:.1} K {how} que su cable si pasara por ahí sin empalme{}; goma {:.1} degC; el cable fuera del cuerpo {:.1} degC donde más se calienta",
        shown(said.load_a),
        said.joint_degc,
        said.joint_at_mm,
        said.by_k.abs(),
        shares(&said.shares),
        said.rubber_degc,
        said.cable_degc
    )
}

fn worse_contact(said: &WorseContact) -> String {
    let own = match said.own_k {
        None => "el empalme se calentaría sin fin".to_owned(),
        Some(k) => format!(
            "el conductor en el empalme de este ramal estaría {k:.1} K más caliente con {} A",
            shown(said.load_a)
        ),
    };
    let worst = said.worst.as_ref().map_or(String::new(), |worst| {
        format!(
            "; de todos los conectores de este empalme, uno a la vez, el del ramal {} es el que más lo calentaría, {:.1} K",
            worst.leg, worst.k
        )
    });
    format!(
        "conector: {} microohm como máximo según su ficha a 20 degC, el mismo largo de conductor {}; con el doble de esa resistencia solo en este conector, y los demás como están, {own}{worst}",
        shown(said.connector_uohm),
        shown(said.equal_uohm)
    )
}

fn to_limit(said: &ToLimit) -> String {
    match said {
        ToLimit::NotStated { body } => {
            format!("{body} no indica ninguna temperatura continua para su conductor")
        }
        ToLimit::NotFound {
            body,
            limit_degc,
            most_a,
        } => format!(
            "no se encuentra ninguna carga hasta {} A que lleve el conductor en {body} a {limit_degc} degC",
            shown(*most_a)
        ),
        ToLimit::At {
            body,
            limit_degc,
            load_a,
            others,
            sooner,
        } => {
            let sooner = sooner.as_ref().map_or(String::new(), |first| {
                format!(
                    "; el ramal {} llega antes a su temperatura límite, cuando este ramal lleva {} A",
                    first.leg,
                    shown(first.load_a)
                )
            });
            format!(
                "el conductor en {body} llega a {limit_degc} degC, lo máximo según su documento, con {} A de carga continua si todos los ramales suben en proporción ({}){sooner}",
                shown(*load_a),
                legs_at(others)
            )
        }
    }
}

fn legs_at(legs: &[LegLoad]) -> String {
    let each = legs
        .iter()
        .map(|of| format!("ramal {} con {} A", of.leg, shown(of.load_a)));
    each.collect::<Vec<_>>().join(", ")
}

/// Legs that are then above their own limits.
fn passed(legs: &[String]) -> String {
    match legs {
        [] => String::new(),
        [only] => format!(", y entonces el ramal {only} supera el límite de su propio cuerpo"),
        all => format!(
            ", y entonces superan el límite de su propio cuerpo los ramales {}",
            all.join(" y ")
        ),
    }
}

fn alone(said: &AloneSaid) -> String {
    match said {
        AloneSaid::At {
            load_a,
            passed: legs,
        } => format!(
            "con todos los demás ramales con la carga del trabajo llega allí con {} A en este ramal{}",
            shown(*load_a),
            passed(legs)
        ),
        AloneSaid::CannotCarryMore { most_a } => format!(
            "no puede llevar más con todos los demás ramales con la carga del trabajo: entre ellos suman {} A como máximo",
            shown(*most_a)
        ),
        AloneSaid::NeverThere { most_a } => format!(
            "con todos los demás ramales con la carga del trabajo no llega allí: entre ellos suman {} A como máximo",
            shown(*most_a)
        ),
    }
}

fn fed(said: &FedSaid) -> String {
    format!(
        "; si solo el ramal {} aporta o toma la corriente adicional, llega allí con {} A, y ese ramal queda con {} A{}",
        said.by,
        shown(said.load_a),
        shown(said.its_load_a),
        passed(&said.passed)
    )
}

fn emergency_end(end: EmergencyEnd, time_h: f64) -> String {
    let hours = shown(time_h);
    match end {
        EmergencyEnd::At { joint_degc } => {
            format!("después de {hours} h el conductor en el empalme tiene {joint_degc:.1} degC")
        }
        EmergencyEnd::Past { past_degc } => {
            format!("antes de {hours} h supera {past_degc} degC")
        }
    }
}

fn emergency_limit(limit: EmergencyLimit) -> String {
    match limit {
        EmergencyLimit::PassedBefore { limit_degc } => format!(
            "; la carga anterior ya supera los {limit_degc} degC que su documento da para una emergencia"
        ),
        EmergencyLimit::After { limit_degc, time_s } => format!(
            "; llega a los {limit_degc} degC que su documento da para una emergencia después de {}",
            time(time_s)
        ),
        EmergencyLimit::NotWithin { limit_degc, time_h } => format!(
            "; no llega en {time_h} h a los {limit_degc} degC que su documento da para una emergencia, si lo que lo rodea queda como se indica"
        ),
    }
}

/// A time as people say it.
fn time(s: f64) -> String {
    if s < 3600.0 {
        format!("{} min", shown(s / 60.0))
    } else {
        format!("{} h", shown(s / 3600.0))
    }
}
