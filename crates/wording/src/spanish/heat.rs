//! Sentences about the temperatures that the load causes.

use super::ask::all;
use super::noun::{of_the, the};
use crate::Tongue;
use jointwright_joint::said::{
    HeatAsk, HeatCannot, HeatLacks, HeatLayer, HeatPlace, HeatSaid, LoadCannot, Stated, Wording,
};

pub(super) fn say(tongue: Tongue, said: &HeatSaid) -> String {
    match said {
        HeatSaid::RestOnMemory { keys } => format!(
            "estas temperaturas se basan en valores de memoria que el propietario no ha confirmado: `{}`",
            keys.join("`, `")
        ),
        HeatSaid::AskToConfirm { keys } => format!(
            "Pregunte: ¿confirma el ingeniero del propietario `{}` después de leer la norma (`confirmation`: `edition`, `by`, `date`)?",
            keys.join("`, `")
        ),
        HeatSaid::PapersStandFor { unread } => format!(
            "los diámetros de los documentos reemplazan lo que nadie midió: {}",
            all(tongue, unread)
        ),
        HeatSaid::PapersForUnread { unread } => format!(
            "los diámetros de los documentos en lugar de lo que nadie midió, {}: nada se aprueba con estas temperaturas",
            all(tongue, unread)
        ),
        HeatSaid::AskToRead { unread } => format!("Pregunte: mida {}.", all(tongue, unread)),
        HeatSaid::NotKnown { why } => format!("no se sabe: {}", tongue.say(why)),
        HeatSaid::Lacks(said) => lacks(tongue, said),
        HeatSaid::Ask(said) => ask(tongue, said),
        HeatSaid::Cannot(said) => cannot(tongue, said),
        HeatSaid::Bus {
            bus,
            micro_ohm,
            at_degc,
            cold_degc,
            percent_per_k,
        } => {
            let read = match at_degc {
                Some(degc) => format!(" a {degc} degC según su ficha"),
                None => format!(
                    "; su ficha no dice a qué temperatura, así que se toma como leída a {cold_degc} degC; en caliente es mayor"
                ),
            };
            format!(
                "barra {bus}: {micro_ohm:.1} microohm entre dos puertos{read}; crece {percent_per_k:.2} % de lo que es a 20 degC por cada kelvin"
            )
        }
    }
}

fn layer(layer: HeatLayer) -> &'static str {
    match layer {
        HeatLayer::Insulation => "aislamiento",
        HeatLayer::Jacket => "cubierta",
    }
}

fn place(tongue: Tongue, place: HeatPlace) -> String {
    match place {
        HeatPlace::Plane(plane) => tongue.plane(plane),
        HeatPlace::BodyDatum => "origen del cuerpo".to_owned(),
        HeatPlace::ConnectorMiddle => "mitad del conector".to_owned(),
    }
}

fn of_end(end: Option<&str>) -> String {
    end.map_or(String::new(), |end| format!(", extremo {end}"))
}

fn lacks(tongue: Tongue, said: &HeatLacks) -> String {
    match said {
        HeatLacks::Places { leg, places } => {
            let places: Vec<String> = places.iter().map(|of| place(tongue, *of)).collect();
            format!(
                "ramal {leg}: no se conoce la posición de: {}",
                places.join(", ")
            )
        }
        HeatLacks::LeftOpen { leg, part } => {
            format!("ramal {leg}: {} queda sin elegir", the(tongue.part(*part)))
        }
        HeatLacks::CableStuff { leg, layer: of } => format!(
            "ramal {leg}: cómo conduce y guarda el calor {}",
            the(layer(*of))
        ),
        HeatLacks::ShieldMetal { leg } => format!("ramal {leg}: el metal de su pantalla"),
        HeatLacks::Inside { part } => format!("lo que hay dentro de {part}"),
        HeatLacks::RegionStuff { part, regions } => format!(
            "cómo conducen y guardan el calor {} de {part}",
            regions.join(", ")
        ),
        HeatLacks::Filling { part, along_mm } => format!(
            "lo que llena {part} desde su interior hasta su exterior a {along_mm:.0} mm de su origen"
        ),
        HeatLacks::AdapterStuff { part } => format!("cómo conduce y guarda el calor {part}"),
        HeatLacks::Cover { part } => format!(
            "con qué espesor queda {part} sobre el empalme, y cómo conduce y guarda el calor"
        ),
        HeatLacks::WhichEnd { leg, part } => {
            format!("ramal {leg}: qué extremo de {part} lo recibe")
        }
        HeatLacks::MetalOf { part } => format!("el metal de {part}"),
        HeatLacks::ResistanceOf { part, end } => {
            format!("la resistencia de {part}{}", of_end(end.as_deref()))
        }
        HeatLacks::Bus => "la barra".to_owned(),
        HeatLacks::PlaceWarmest => "cuánto se calienta el lugar".to_owned(),
        HeatLacks::Surroundings { leg } => format!("lo que rodea el ramal {leg}"),
        HeatLacks::RunStuff { cable, layer: of } => format!(
            "cómo conduce el calor {} del cable {cable}",
            the(layer(*of))
        ),
        HeatLacks::RunSurroundings { cable } => format!("lo que rodea el cable {cable}"),
        HeatLacks::NoRun => "no hay ningún tramo de cable".to_owned(),
        HeatLacks::NoLoadForShield => {
            "se indica una corriente de la pantalla, y ninguna carga que la acompañe".to_owned()
        }
    }
}

/// Names of ends, each in Spanish quotes.
fn quoted(names: &[String]) -> Vec<String> {
    names.iter().map(|name| format!("«{name}»")).collect()
}

const ASK_MAKER: &str = "Pregunte a su fabricante.";
const STUFF: &str = "¿Cuáles son la resistividad térmica y la capacidad calorífica";

fn ask(tongue: Tongue, said: &HeatAsk) -> String {
    match said {
        HeatAsk::CableStuff { leg, layer: of } => format!(
            "{STUFF} {} del cable del ramal {leg}? {ASK_MAKER}",
            of_the(layer(*of))
        ),
        HeatAsk::ShieldMetal { leg } => {
            format!("¿De qué metal es la pantalla del cable del ramal {leg}?")
        }
        HeatAsk::ShieldLoad { leg } => {
            format!("¿Qué carga llevan al mismo tiempo el conductor y la pantalla del ramal {leg}?")
        }
        HeatAsk::Inside { part } => format!(
            "¿A qué distancia a lo largo del eje y con qué diámetros están los materiales dentro de {part}, y sobre un cable de qué diámetro? {ASK_MAKER}"
        ),
        HeatAsk::RegionStuff { part, regions } => {
            format!("{STUFF} de {} de {part}? {ASK_MAKER}", regions.join(", "))
        }
        HeatAsk::Filling { part, along_mm } => format!(
            "¿Qué materiales llenan {part} entre {along_mm:.0} mm y su extremo, y hasta qué diámetros? {ASK_MAKER}"
        ),
        HeatAsk::AdapterStuff { part } => format!("{STUFF} de {part}? {ASK_MAKER}"),
        HeatAsk::Cover { part } => format!(
            "¿Con qué espesor queda {part} sobre el empalme, cubre el cuerpo, y cuáles son su resistividad térmica y su capacidad calorífica? {ASK_MAKER}"
        ),
        HeatAsk::WhichEnd { leg, part, ends } => format!(
            "¿Qué extremo de {part} recibe el ramal {leg}, {}?",
            tongue.or(&quoted(ends))
        ),
        HeatAsk::MadeOf { part } => format!("¿De qué es {part}?"),
        HeatAsk::ConnectorResistance { part, end } => format!(
            "¿Cuál es la mayor resistencia de {part}{} ya instalado, comparada con la del mismo largo de conductor? {ASK_MAKER}",
            of_end(end.as_deref())
        ),
        HeatAsk::Bus => "¿En qué barra se asientan los ramales?".to_owned(),
        HeatAsk::BusResistance { bus } => format!(
            "¿Cuál es la mayor resistencia entre dos puertos de {bus}, incluidos los contactos de los cuerpos? {ASK_MAKER}"
        ),
        HeatAsk::PlaceWarmest => {
            "¿Cuál es la temperatura más alta que alcanza el lugar (`place.ambient_greatest`)?"
                .to_owned()
        }
        HeatAsk::Surroundings { leg } => format!(
            "¿Qué rodea el ramal {leg} desde el extremo del conductor hacia afuera, a qué temperatura como máximo, y cuánto calor sale de un metro cuadrado de superficie por cada kelvin? ¿Quién lo dice, y según qué fuente?"
        ),
        HeatAsk::LoadOfEachLeg => "¿Qué carga continua debe llevar cada ramal?".to_owned(),
        HeatAsk::RunStuff { cable, layer: of } => format!(
            "{STUFF} {} del cable {cable}? {ASK_MAKER}",
            of_the(layer(*of))
        ),
        HeatAsk::RunSurroundings { cable } => format!(
            "¿Qué rodea el cable {cable}, tramo por tramo, y a qué temperatura como máximo? ¿Quién lo dice, y según qué fuente?"
        ),
        HeatAsk::RunLoad => "¿Qué carga continua debe llevar el cable?".to_owned(),
    }
}

fn cannot(tongue: Tongue, said: &HeatCannot) -> String {
    match said {
        HeatCannot::NotComputed { why } => format!(
            "sus temperaturas no se pueden calcular: {}",
            tongue.say(why)
        ),
        HeatCannot::SitsTooFar {
            part,
            stated_mm,
            leg,
            over_mm,
        } => format!(
            "el interior de {part} se indica para {stated_mm:.1} mm sobre el aislamiento, en el ramal {leg} se asienta sobre {over_mm:.1} mm: demasiada diferencia para concluir de uno al otro"
        ),
        HeatCannot::ConnectorInConductor {
            leg,
            connector_mm,
            conductor_mm,
        } => format!(
            "el conector del ramal {leg} mide {connector_mm:.1} mm por fuera, y su conductor {conductor_mm:.1} mm"
        ),
        HeatCannot::ShieldCarriesMore {
            leg,
            shield_a,
            load_a,
        } => format!(
            "ramal {leg}: su pantalla llevaría {shield_a} A junto a {load_a} A en su conductor"
        ),
        HeatCannot::LayersNotOutward => {
            "los diámetros sobre sus capas no crecen hacia afuera".to_owned()
        }
        HeatCannot::RunNotOutward => {
            "los diámetros sobre las capas del cable no crecen hacia afuera".to_owned()
        }
        HeatCannot::ColderThanPlace {
            what,
            degc,
            place_degc,
        } => format!(
            "{what} junto al empalme está a {degc} degC, más frío que lo que alcanza el lugar, {place_degc} degC"
        ),
        HeatCannot::ResistanceAtJoint { what, joint_end_mm } => format!(
            "{what} llega hasta el empalme, que termina a {joint_end_mm:.0} mm de su mitad; una resistencia térmica desde la superficie del cable no dice nada de un empalme, una película sí: pida al ingeniero `film_w_per_m2k` para el empalme tal como queda enterrado, incluido el diámetro mayor de su cuerpo"
        ),
        HeatCannot::NeitherFilmNorResistance => "ni una película ni una resistencia".to_owned(),
        HeatCannot::Cable { cable, why } => format!("cable {cable}: {}", tongue.say(why)),
        HeatCannot::Load(said) => load(said),
    }
}

fn stated(of: Stated) -> &'static str {
    match of {
        Stated::Load => "load",
        Stated::Emergency => "emergency",
    }
}

/// Currents that cannot be.
fn load(said: &LoadCannot) -> String {
    match said {
        LoadCannot::LoadIsNought => "la carga del trabajo es 0: no calienta nada".to_owned(),
        LoadCannot::EmergencyNotStated => {
            "el trabajo no indica `duty.emergency` ni `duty.emergency_time`".to_owned()
        }
        LoadCannot::EmergencyTakesNoTime => "`duty.emergency_time` es 0".to_owned(),
        LoadCannot::EmergencyBelowLoad {
            leg,
            emergency_a,
            load_a,
        } => format!(
            "ramal {leg}: su carga de emergencia, {emergency_a} A, es menor que su carga, {load_a} A"
        ),
        LoadCannot::LegCarriesMore {
            of,
            largest_a,
            whole_a,
        } => format!(
            "un ramal lleva {largest_a} A, más que `duty.{}`, {whole_a} A",
            stated(*of)
        ),
        LoadCannot::NoLegCarriesWhole {
            of,
            largest_a,
            whole_a,
        } => format!(
            "ningún ramal lleva `duty.{}`, {whole_a} A: lo más que lleva uno son {largest_a} A",
            stated(*of)
        ),
        LoadCannot::OneAgainstAll {
            of,
            n_legs,
            largest_a,
            others_a,
        } => {
            let of = match of {
                Stated::Load => "la carga",
                Stated::Emergency => "la carga de emergencia",
            };
            format!(
                "{of} de uno de {n_legs} ramales, {largest_a} A, es mayor que la de todos los demás, {others_a} A: indique qué lleva cada ramal"
            )
        }
    }
}
