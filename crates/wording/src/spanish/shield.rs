//! Sentences about shields along the cable.

use super::fault::carrier;
use crate::{Tongue, shown};
use jointwright_joint::said::{
    AlongSaid, BondingSaid, Carrier, ReadingAsk, ReadingSaid, ShieldAsk, ShieldCurrent,
    ShieldLacks, ShieldLine, ShieldSaid, VoltageSaid, Wording,
};

pub(super) fn say(tongue: Tongue, said: &ShieldSaid) -> String {
    match said {
        ShieldSaid::Line(said) => line(tongue, said),
        ShieldSaid::Lacks(said) => lacks(*said).to_owned(),
        ShieldSaid::Ask(said) => ask(*said).to_owned(),
        ShieldSaid::Along(said) => along(said),
        ShieldSaid::Bonding(said) => bonding(said),
        ShieldSaid::Reading(said) => reading(tongue, said),
        ShieldSaid::Voltage(said) => voltage(tongue, said),
    }
}

fn along(said: &AlongSaid) -> String {
    match said {
        AlongSaid::ShieldOf { leg } => format!("pantalla del ramal {leg}"),
        AlongSaid::UnderAsRead { least_mm, greatest_mm } => format!(
            "debajo de ella de {least_mm:.2} a {greatest_mm:.2} mm según la medición, con sus errores"
        ),
        AlongSaid::UnderByPapers => "debajo de ella los diámetros de los documentos, porque no se midió ahí cada fase".to_owned(),
        AlongSaid::DiameterOf { leg } => format!("el diámetro de la pantalla del ramal {leg}"),
        AlongSaid::AskDiameters { leg } => format!(
            "¿Entre qué diámetros sobre la pantalla del aislamiento está el cable del ramal {leg}, según sus documentos?"
        ),
        AlongSaid::MetalNotStated { leg } => {
            format!("no se indica el metal de la pantalla del ramal {leg}")
        }
        AlongSaid::AskMetal { leg } => format!(
            "¿De qué metal es la pantalla del ramal {leg}, según los documentos del cable?"
        ),
        AlongSaid::ResistanceOf { leg } => {
            format!("la resistencia de la pantalla del ramal {leg}")
        }
        AlongSaid::AskHowMade { leg } => format!(
            "¿Cómo está hecha la pantalla del ramal {leg}: cantidad, ancho, espesor y traslape, según los documentos del cable?"
        ),
        AlongSaid::StraightWires => "alambres o cintas planas tomados como rectos, porque no se indica el paso; un paso la aumenta".to_owned(),
        AlongSaid::WiresWithLay { lay_mm } => {
            format!("alambres o cintas planas con un paso de {lay_mm:.0} mm")
        }
        AlongSaid::WiresBesideTape { lay_mm, turned_ratio } => {
            let wires = lay_mm.map_or_else(
                || "alambres rectos, porque no se indica el paso".to_owned(),
                |lay_mm| format!("alambres con un paso de {lay_mm:.0} mm"),
            );
            format!(
                "{wires}, junto a una cinta: desde un tubo cuyas vueltas se tocan todas hasta la cinta sola, cuya corriente recorre {} veces el largo del cable; ambos en paralelo",
                shown(*turned_ratio)
            )
        }
        AlongSaid::CorrugatedTape => "desde su área efectiva con la costura hasta una cinta lisa sin ella; el camino por la corrugación es más largo, en una medida que nadie indica".to_owned(),
        AlongSaid::LappedTape { turned_ratio } => format!(
            "desde un tubo cuyas vueltas se tocan todas hasta la cinta sola, cuya corriente recorre {} veces el largo del cable; nadie sabe qué tan bien se tocan las vueltas viejas",
            shown(*turned_ratio)
        ),
        AlongSaid::TapeWidthNotStated { leg } => {
            format!("no se indica el ancho de la cinta traslapada del ramal {leg}")
        }
        AlongSaid::AskTapeWidth { leg } => {
            format!("¿Qué ancho tiene la cinta del ramal {leg}?")
        }
    }
}

fn bonding(said: &BondingSaid) -> String {
    match said {
        BondingSaid::OpenAtJoint { leg } => format!(
            "la pantalla del ramal {leg} está abierta en el empalme: no circula corriente por ella"
        ),
        BondingSaid::OpenAtFarEnd { leg } => format!(
            "la pantalla del ramal {leg} está abierta en el extremo lejano de su tramo: no circula corriente por ella"
        ),
        BondingSaid::FarEndNotStated { leg } => format!(
            "no se indica si la pantalla del ramal {leg} está puesta a tierra en su extremo lejano"
        ),
        BondingSaid::AskFarEnd { leg } => format!(
            "¿Está la pantalla del ramal {leg} puesta a tierra también en el extremo lejano de su tramo?"
        ),
        BondingSaid::LinkNotStated { leg } => {
            format!("no se indica si el enlace del ramal {leg} está cerrado")
        }
        BondingSaid::AskLink { leg } => {
            format!("¿Está cerrado en servicio el enlace del ramal {leg} en el empalme?")
        }
        BondingSaid::LinkAndFarEndNotStated { leg } => format!(
            "no se indica si el enlace del ramal {leg} está cerrado, ni si su pantalla está puesta a tierra en el extremo lejano"
        ),
        BondingSaid::BondedAtBothEnds { leg } => format!(
            "la pantalla del ramal {leg} está conectada en ambos extremos: circula corriente por ella, y no se calcula la tensión entre ellos"
        ),
        BondingSaid::BondedAtNeitherEnd { leg } => format!(
            "la pantalla del ramal {leg} no está conectada en ningún extremo de su tramo: toma tensión de su conductor, y esa no se calcula"
        ),
        BondingSaid::AskWhereEarthed { leg } => {
            format!("¿Dónde está puesta a tierra la pantalla del ramal {leg}?")
        }
        BondingSaid::RunLengthNotStated { leg } => {
            format!("el ramal {leg} no indica su `run_length`")
        }
        BondingSaid::AskRunLength { leg } => format!(
            "¿Qué distancia hay desde el empalme hasta donde la pantalla del ramal {leg} se conecta otra vez, o termina?"
        ),
        BondingSaid::PlaceNotStated { leg, fields } => {
            format!("el ramal {leg} no indica `{}`", fields.join("` ni `"))
        }
        BondingSaid::AskFormation { leg } => {
            format!("¿Están los tres cables del ramal {leg} en trébol o en plano?")
        }
        BondingSaid::AskSpacing { leg } => {
            format!("¿Qué distancia hay entre los ejes de cables vecinos del ramal {leg}?")
        }
        BondingSaid::AxesTooNear {
            leg,
            spacing_mm,
            shield_mm,
        } => format!(
            "los ejes del ramal {leg} no pueden estar a {spacing_mm:.1} mm: su pantalla sola mide {shield_mm:.1} mm de diámetro"
        ),
    }
}

fn reading(tongue: Tongue, said: &ReadingSaid) -> String {
    let whole = match said {
        ReadingSaid::Ask(said) => return reading_ask(tongue, said),
        ReadingSaid::EndsWereBonded => {
            "los extremos estaban conectados: lo medido es también de otras pantallas y de la tierra, y no dice nada de esta"
        }
        ReadingSaid::TwoWires => {
            "se midió con dos hilos, y no se indica la resistencia de las puntas de prueba: pueden tener más que la pantalla"
        }
        ReadingSaid::TemperatureOrLengthNotStated => {
            "no se indica la temperatura de la pantalla, o el largo medido"
        }
        ReadingSaid::LeadsHaveAsMuch => {
            "las puntas de prueba tienen tanta resistencia como la medida con ellas, o el largo es nulo"
        }
        ReadingSaid::OwnerLimitsUnread => {
            "el propietario limita la resistencia de esta pantalla, y nadie la ha medido"
        }
        ReadingSaid::Above => "por encima",
        ReadingSaid::Below => "por debajo",
        ReadingSaid::AsExpected => "como se espera, pero nadie con la autoridad fija un límite",
        ReadingSaid::TooMuch => {
            "Pare y llame: esta pantalla tiene más resistencia que la que permite el propietario. Mídala otra vez, y luego busque qué la interrumpe."
        }
        ReadingSaid::ResistanceAt20 { subject } => {
            return format!(
                "{}, resistencia a lo largo de la pantalla a 20 degC",
                tongue.subject(subject)
            );
        }
        ReadingSaid::Read {
            read_ohm,
            by,
            date,
            least_ohm,
            greatest_ohm,
            length_m,
            degc,
            of,
        } => {
            return format!(
                "{} mohm medidos por {by} el {date}; se esperan de {} a {} mohm en {} m a {} degC ({})",
                shown(1e3 * read_ohm),
                shown(1e3 * least_ohm),
                shown(1e3 * greatest_ohm),
                shown(*length_m),
                shown(*degc),
                tongue.say(of)
            );
        }
    };
    whole.to_owned()
}

fn reading_ask(tongue: Tongue, said: &ReadingAsk) -> String {
    let whole = match said {
        ReadingAsk::EndsOpen => {
            "¿Cuánto se mide con sus extremos abiertos, donde el trabajo lo permite?"
        }
        ReadingAsk::Leads => "¿Cuánto se mide en las puntas de prueba con sus pinzas unidas?",
        ReadingAsk::TemperatureAndLength => {
            "¿Qué largo tiene la pantalla entre las pinzas, y a qué temperatura se midió?"
        }
        ReadingAsk::FourWires => "¿Cuánto se mide en la pantalla con cuatro hilos?",
        ReadingAsk::WhyAbove => {
            "¿Hay alambres rotos o corroídos? ¿Ya no se tocan las vueltas de una cinta vieja? ¿Muerden las pinzas metal limpio? ¿Es correcto el largo, y el de cada empalme intermedio?"
        }
        ReadingAsk::WhyBelow => {
            "¿Hay otro camino junto a esta pantalla, un extremo conectado, un largo menor, o más metal que el que indican los documentos?"
        }
        ReadingAsk::Greatest => {
            "¿Cuál es la mayor resistencia de esta pantalla que acepta el propietario?"
        }
        ReadingAsk::Reading { subject } => {
            return format!(
                "¿Qué resistencia se mide a lo largo de la pantalla, {}?",
                tongue.subject(subject)
            );
        }
    };
    whole.to_owned()
}

fn voltage(tongue: Tongue, said: &VoltageSaid) -> String {
    match said {
        VoltageSaid::NobodyLimits { volts, length_m, load_a } => format!(
            "{} V en {} m de pantalla con {} A; nadie con la autoridad fija un límite, y ninguna tensión se llama inofensiva",
            shown(*volts),
            shown(*length_m),
            shown(*load_a)
        ),
        VoltageSaid::AskWhatMayStand => "¿Qué tensión puede haber en el extremo abierto de esta pantalla, y quién puede acercarse a él?".to_owned(),
        VoltageSaid::AtOpenEnd { subject, length_m, load_a } => format!(
            "{}, tensión en el extremo abierto de {} m de pantalla con {} A",
            tongue.subject(subject),
            shown(*length_m),
            shown(*load_a)
        ),
        VoltageSaid::TooMuch => "Pare y llame: el extremo abierto de esta pantalla está a más tensión que la que permite el propietario. El ingeniero decide sobre la conexión, el largo del tramo o la disposición de los cables.".to_owned(),
    }
}

/// Statements of a plan about a shield beyond the joint.
fn line(tongue: Tongue, said: &ShieldLine) -> String {
    let say = |said| tongue.say(said);
    match said {
        ShieldLine::Resistance {
            least_ohm_per_km,
            greatest_ohm_per_km,
            between,
            on,
        } => {
            let (least, greatest) = (*least_ohm_per_km, *greatest_ohm_per_km);
            let ohm = if least == greatest {
                shown(least)
            } else {
                format!("{} a {}", shown(least), shown(greatest))
            };
            format!("{ohm} ohm/km a 20 degC: {}; {}.", say(between), say(on))
        }
        ShieldLine::TapeArea {
            has_wires,
            standard_mm2,
            computed_mm2,
        } => format!(
            "Área efectiva de {} según la fórmula de la norma para un cable nuevo: {} a {} mm2 ([icea_p45482], de memoria: no decide nada); se calcula con {} a {} mm2.",
            if *has_wires {
                "la cinta, junto con los alambres,"
            } else {
                "la cinta"
            },
            shown(standard_mm2.0),
            shown(standard_mm2.1),
            shown(computed_mm2.0),
            shown(computed_mm2.1)
        ),
        ShieldLine::InSteadyLoad { why } => format!("Con carga estable {}.", say(why)),
        ShieldLine::NoVoltage { why } => format!("Tensión: {}.", say(why)),
        ShieldLine::Contact {
            end,
            at,
            milli_ohm,
            shots,
            heat_kj,
        } => format!(
            "{end}, {at}: {} mohm, en los que {} producen {} kJ.",
            shown(*milli_ohm),
            say(shots),
            shown(*heat_kj)
        ),
        ShieldLine::Weakest {
            what,
            times_ratio,
            not_known,
        } => {
            let known = if not_known.is_empty() {
                String::new()
            } else {
                format!(
                    " entre los que se conocen; no se conocen: {}",
                    carriers(not_known)
                )
            };
            format!(
                "Lo más débil en un cortocircuito: {}, {} veces lo que se le pide{known}.",
                carrier(what),
                shown(*times_ratio)
            )
        }
        ShieldLine::WeakestNotKnown { not_known } => format!(
            "Lo más débil en un cortocircuito: no se conoce de {}.",
            carriers(not_known)
        ),
        ShieldLine::Current(said) => current(said),
    }
}

fn carriers(all: &[Carrier]) -> String {
    all.iter().map(carrier).collect::<Vec<_>>().join(", ")
}

/// Currents and voltages along a shield.
fn current(said: &ShieldCurrent) -> String {
    match said {
        ShieldCurrent::Stated {
            shield_a,
            loss_w_per_m,
            shield_degc,
        } => format!(
            "El trabajo indica {} A continuos en ella; producen hasta {} W/m, con la pantalla a {} degC.",
            shown(*shield_a),
            shown(*loss_w_per_m),
            shown(*shield_degc)
        ),
        ShieldCurrent::FlowsRound {
            load_a,
            round_a,
            loss_w_per_m,
            shield_degc,
        } => format!(
            "Con {} A circulan por ella de {} a {} A y producen hasta {} W/m, con la pantalla de {} a {} degC.",
            shown(*load_a),
            shown(round_a.0),
            shown(round_a.1),
            shown(*loss_w_per_m),
            shown(shield_degc.0),
            shown(shield_degc.1)
        ),
        ShieldCurrent::StandsOpen {
            load_a,
            volts_v,
            length_m,
        } => format!(
            "Con {} A hay {} V en su extremo abierto, a lo largo de {} m.",
            shown(*load_a),
            shown(*volts_v),
            shown(*length_m)
        ),
        ShieldCurrent::StandsInFault { fault_ka, volts_v } => format!(
            "Mientras fluyen {} kA iguales en las tres fases hay ahí {} V.",
            shown(*fault_ka),
            shown(*volts_v)
        ),
        ShieldCurrent::FaultToEarth => {
            "La falla indicada fluye a tierra: lo que hay entonces en el extremo abierto no se calcula."
                .to_owned()
        }
        ShieldCurrent::Never => "Solo corrientes equilibradas en tres cables; no se cuentan las corrientes de un neutro ni las corrientes parásitas dentro de una pantalla. La tensión que hay en una falla a tierra es mucho mayor y no se calcula. A ninguna tensión se la llama aquí inofensiva.".to_owned(),
    }
}

fn lacks(said: ShieldLacks) -> &'static str {
    match said {
        ShieldLacks::Load => "el trabajo no indica `duty.load`",
        ShieldLacks::Hottest => {
            "el trabajo no indica `duty.conductor_greatest`, que ninguna pantalla supera en servicio"
        }
        ShieldLacks::Fault => "el trabajo no indica `duty.fault`",
        ShieldLacks::FaultKind => "el trabajo no indica `duty.fault_kind`",
    }
}

fn ask(said: ShieldAsk) -> &'static str {
    match said {
        ShieldAsk::Load => "¿Qué carga llevan estos cables?",
        ShieldAsk::Hottest => "¿Cuál es la temperatura más alta del conductor en servicio?",
        ShieldAsk::Fault => "¿Qué corriente de falla puede fluir en el conductor?",
        ShieldAsk::FaultKind => "¿Fluye la falla indicada igual en las tres fases, o a tierra?",
    }
}
