//! Sentences about short circuits.

use crate::{Tongue, all_ends, shown};
use jointwright_joint::cable::Layer;
use jointwright_joint::said::{
    Carrier, ContactSaid, FaultHeatSaid, FaultSaid, HeatedMetal, ShieldFaultSaid, ShieldMeasure,
    Shots, Wording,
};

pub(super) fn say(tongue: Tongue, said: &FaultSaid) -> String {
    match said {
        FaultSaid::Is(of) => shots(*of),
        FaultSaid::OfWhat(of) => carrier(of),
        FaultSaid::ClearingTimeNotStated => "el trabajo no indica `system.clearing_time`, el mayor tiempo en que se despeja una falla a tierra: la pantalla puede llevarla todo ese tiempo".to_owned(),
        FaultSaid::ShorterThanClearing { longest_s } => format!(
            "`duty.shield_fault_time` es más corto que `system.clearing_time`, {} s, el mayor tiempo en que se despeja una falla a tierra",
            shown(*longest_s)
        ),
        FaultSaid::NotStated { fields } => format!("el trabajo no indica `{}`", fields.join("`, `")),
        FaultSaid::OfNothing { field } => format!(
            "`{field}` o `{field}_time` es 0: con un cortocircuito de 0 no se juzga nada"
        ),
        FaultSaid::StartNotStated => "el trabajo no indica `duty.conductor_greatest`, la temperatura a la que puede empezar un cortocircuito".to_owned(),
        FaultSaid::StartColderThanPlace { start_degc, place_degc } => format!(
            "`duty.conductor_greatest`, {start_degc:.0} degC, es más frío que el lugar en su peor momento, {place_degc:.0} degC"
        ),
        FaultSaid::NoTape => "la pantalla no tiene cinta".to_owned(),
        FaultSaid::TapeWidthNotStated => "no se indica el ancho de la cinta traslapada".to_owned(),
        FaultSaid::CannotBe { measure, mm, most_mm } => format!(
            "{} de la pantalla, {mm:.1} mm, no puede ser: {most_mm:.1} mm como máximo en este cable",
            shield_measure(*measure)
        ),
        FaultSaid::NothingCounted => "no se contó ningún alambre ni cinta plana de la pantalla".to_owned(),
        FaultSaid::LeadLimitNotStated => "no se indica cuánto puede calentarse el cable de conexión".to_owned(),
        FaultSaid::BodyLeftOpen => "el cuerpo está sin elegir".to_owned(),
        FaultSaid::RowSaysNoConductorHeat { row } => {
            format!("la ficha {row} no dice cuánto puede calentarse el conductor dentro de la pieza")
        }
        FaultSaid::ShieldMetalOrLimitNotStated => {
            "no se indica su metal, o cuánto puede calentarse".to_owned()
        }
        FaultSaid::NoHeating { from_degc, to_degc, time_s } => format!(
            "de {from_degc:.1} a {to_degc:.1} °C en {time_s} s no es un calentamiento que una corriente pueda hacer"
        ),
        FaultSaid::Heat(said) => heat(tongue, said),
        FaultSaid::OfShield(said) => shield(tongue, said),
        FaultSaid::OfContact(said) => contact(tongue, said),
    }
}

/// Sentences about the heating of metal, and about the short circuits that parts withstand.
fn heat(tongue: Tongue, said: &FaultHeatSaid) -> String {
    match said {
        FaultHeatSaid::Heats { subject, what, fault, from_degc } => format!(
            "{}, {} después de {} desde {from_degc:.0} degC",
            tongue.subject(subject),
            heated(tongue, *what),
            shots(*fault)
        ),
        FaultHeatSaid::HeatsUpTo { heats, hot_degc, it_melts } => format!(
            "{} (hasta {hot_degc:.0} degC, si conduce menos de su metal{})",
            tongue.say(heats),
            melting(*it_melts)
        ),
        FaultHeatSaid::HeatsToMelting { heats } => format!("{}{}", tongue.say(heats), melting(true)),
        FaultHeatSaid::HeatsBetween { cool_degc, hot_degc, it_melts, greatest_degc } => format!(
            "de {cool_degc:.0} a {hot_degc:.0} degC{}, según cuánto de su metal conduce; se permiten {greatest_degc} degC",
            melting(*it_melts)
        ),
        FaultHeatSaid::AskWhatShieldCarries => "¿Qué cortocircuito soporta esta pantalla, según los documentos del cable o un ensayo? Nadie sabe qué tan bien se tocan sus vueltas.".to_owned(),
        FaultHeatSaid::RowSaysNoFault { row } => {
            format!("la ficha {row} no dice qué cortocircuito soporta")
        }
        FaultHeatSaid::AskWhatFlowsThrough { part } => format!(
            "¿Qué corriente puede pasar por {part} en un cortocircuito, y por cuánto tiempo?"
        ),
        FaultHeatSaid::CurrentThrough { subject, part } => format!(
            "{}, corriente de cortocircuito por {part}",
            tongue.subject(subject)
        ),
        FaultHeatSaid::SquareThrough { subject, part, fault } => format!(
            "{}, corriente al cuadrado por tiempo en {part}: {}",
            tongue.subject(subject),
            shots(*fault)
        ),
    }
}

/// Sentences about the demand on a leg's shield.
fn shield(tongue: Tongue, said: &ShieldFaultSaid) -> String {
    match said {
        ShieldFaultSaid::ShieldDoesNotCarry => "Pare y llame: esta pantalla no soporta el cortocircuito indicado. El ingeniero decide sobre el nivel de falla, el tiempo de despeje o el camino de retorno de la corriente.".to_owned(),
        ShieldFaultSaid::ShieldPartDoesNotCarry => "Pare y llame: el documento de esta pieza no cubre este cortocircuito. Use una cuyo documento lo cubra, o el ingeniero decide sobre el nivel de falla, el tiempo de despeje y el camino de retorno de la corriente.".to_owned(),
        ShieldFaultSaid::PapersNotStated { fields } => {
            format!("el trabajo no indica `{}` del cable", fields.join("`, `"))
        }
        ShieldFaultSaid::AskMetalAndLimit => "¿De qué metal es la pantalla de este cable, y hasta qué temperatura puede subir en un cortocircuito, según los documentos del cable?".to_owned(),
        ShieldFaultSaid::JobStatesPapers => "los documentos del cable, como los indica el trabajo".to_owned(),
        ShieldFaultSaid::TapeNotReadUnder => format!(
            "la cinta tiene más metal cuanto más grueso es el cable debajo de ella, y no se midió cada fase sobre la {}",
            tongue.layer(Layer::InsulationScreen)
        ),
        ShieldFaultSaid::NotCounted { ends, of_papers } => format!(
            "nadie ha contado los alambres o cintas planas de la pantalla en {}; sus documentos dicen {of_papers}",
            all_ends(ends)
        ),
        ShieldFaultSaid::AskCount { ends } => {
            format!("¿Cuántos alambres o cintas planas hay en {}?", all_ends(ends))
        }
    }
}

/// Sentences about the connections of a shield.
fn contact(tongue: Tongue, said: &ContactSaid) -> String {
    match said {
        ContactSaid::NotRead { part, greatest_ohm } => format!(
            "nadie ha medido la resistencia de la conexión de {part}; su documento permite {} mohm",
            shown(1e3 * greatest_ohm)
        ),
        ContactSaid::AskRead { part, subject } => format!(
            "¿Qué resistencia se mide con cuatro hilos en la conexión de {part}, {}?",
            tongue.subject(subject)
        ),
        ContactSaid::Read { subject, at, ohm } => format!(
            "{}, {at}, {} mohm",
            tongue.subject(subject),
            shown(1e3 * ohm)
        ),
        ContactSaid::Makes { fault, heat_kj } => {
            format!("{} producen {} kJ en ella", shots(*fault), shown(*heat_kj))
        }
        ContactSaid::HeatNotKnown => {
            "no se sabe qué calor produce en ella un cortocircuito".to_owned()
        }
        ContactSaid::NoPart => {
            "no se nombra una pieza de pantalla cuyo documento diga cuánta puede tener".to_owned()
        }
        ContactSaid::RowSaysNoGreatest { row } => {
            format!("la ficha {row} no dice cuánta puede tener")
        }
        ContactSaid::AskGreatest { part } => {
            format!("¿Qué resistencia puede tener la conexión de {part}?")
        }
        ContactSaid::MakesTooMuch => "Pare y llame: un cortocircuito produciría en esta conexión más calor que el que permite su documento. Hágala de nuevo según su documento, y mídala de nuevo.".to_owned(),
    }
}

/// Current, time and number of shots.
pub(super) fn shots(of: Shots) -> String {
    let how_often = match of.n_shots {
        1 => String::new(),
        n => format!("{n} veces, sin enfriarse entre ellas, "),
    };
    format!(
        "{how_often}{} kA durante {} s",
        shown(1e-3 * of.current_a),
        shown(of.each_s)
    )
}

/// Name of the part that carries the current.
pub(super) fn carrier(of: &Carrier) -> String {
    match of {
        Carrier::Conductor => "conductor".to_owned(),
        Carrier::MetallicShield => "pantalla metálica".to_owned(),
        Carrier::Connector(id) => format!("conector {id}"),
        Carrier::ShieldPart(id) => format!("pieza de pantalla {id}"),
        Carrier::BondingLead => "cable de conexión".to_owned(),
    }
}

fn heated(tongue: Tongue, what: HeatedMetal) -> &'static str {
    match what {
        HeatedMetal::Conductor => "conductor",
        HeatedMetal::MetallicShield => tongue.layer(Layer::MetallicShield),
        HeatedMetal::BondingLead => "cable de conexión",
    }
}

fn melting(it_melts: bool) -> &'static str {
    if it_melts { ", donde se funde" } else { "" }
}

fn shield_measure(measure: ShieldMeasure) -> &'static str {
    match measure {
        ShieldMeasure::Overlap => "el traslape",
        ShieldMeasure::Thickness => "el espesor",
        ShieldMeasure::WidthLessLap => "el ancho menos el traslape",
        ShieldMeasure::SideBySide => "lo que ocupan lado a lado los alambres o cintas planas",
    }
}
