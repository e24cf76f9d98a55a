//! Sentences about kits: their age and store, where they park, and whether they are chosen and rated.

use super::noun;
use crate::Tongue;
use jointwright_joint::said::{
    AgeSaid, Begun, ChoiceSaid, KitSaid, ParkSaid, Served, ServesFor, StoreDegc, StoreSaid,
    StoreSide,
};

pub(super) fn say(tongue: Tongue, said: &KitSaid) -> String {
    match said {
        KitSaid::Age(said) => age(said),
        KitSaid::Store(said) => store(said),
        KitSaid::Park(said) => park(tongue, said),
        KitSaid::Choice(said) => choice(tongue, said),
    }
}

fn age(said: &AgeSaid) -> String {
    match said {
        AgeSaid::LotNotWritten { part } => {
            format!("{part}: su lote y su fecha no están anotados")
        }
        AgeSaid::NoAgeLimit { part } => {
            format!("{part}: ni su ficha ni una etiqueta dan un límite de edad")
        }
        AgeSaid::Day { day } => day.clone(),
        AgeSaid::NotAfter { day } => format!("no después del {day}"),
        AgeSaid::LastDayWas { of, last, today } => format!(
            "{}, lote {}: su último día fue el {last}; el trabajo es el {today}",
            of.part, of.lot
        ),
        AgeSaid::DoNotUse => "No lo use. Apártelo, marcado, y tome otro.".to_owned(),
        AgeSaid::Label { lot } => format!("etiqueta del lote {lot}"),
        AgeSaid::MonthsFromUnwritten { of, months, from } => format!(
            "{}, lote {}: los {months} meses corren desde el día en que fue {}, que no está anotado",
            of.part,
            of.lot,
            begun(*from)
        ),
        AgeSaid::ExpiryNotWritten { of } => format!(
            "{}, lote {}: no está anotado si su etiqueta lleva una fecha de vencimiento",
            of.part, of.lot
        ),
        AgeSaid::AskExpiry { of } => format!(
            "¿Qué fecha de vencimiento lleva la etiqueta del lote {} de {}, si lleva alguna?",
            of.lot, of.part
        ),
        AgeSaid::DayOfWork => "el día del trabajo".to_owned(),
        AgeSaid::BegunAfterWork {
            of,
            begun: what,
            day,
            today,
        } => format!(
            "{}, lote {}: {} el {day}, después del día del trabajo, el {today}",
            of.part,
            of.lot,
            begun(*what)
        ),
        AgeSaid::ReadLabelAgain => "Lea otra vez la etiqueta y el día del trabajo.".to_owned(),
    }
}

fn store(said: &StoreSaid) -> String {
    match said {
        StoreSaid::StoreNotSaid { part } => {
            format!("{part}: su ficha no dice a qué temperaturas puede estar en el almacén")
        }
        StoreSaid::AskShelf { part } => {
            format!("¿Por cuánto tiempo, y a qué temperaturas, puede estar {part} en el almacén?")
        }
        StoreSaid::MayLie { at_degc } => between(*at_degc, "cualquiera"),
        StoreSaid::Lay { at_degc } => between(*at_degc, "?"),
        StoreSaid::LayOutside {
            of,
            lay_degc,
            may_degc,
        } => format!(
            "{}, lote {}: estuvo a {}; se permite {}",
            of.part,
            of.lot,
            between(*lay_degc, "?"),
            between(*may_degc, "cualquiera")
        ),
        StoreSaid::StoreSideNotSaid { part, side } => match side {
            StoreSide::Cold => {
                format!("{part}: su ficha no dice qué temperatura mínima admite en el almacén")
            }
            StoreSide::Warm => {
                format!("{part}: su ficha no dice qué temperatura máxima admite en el almacén")
            }
            StoreSide::ColdAndWarm => {
                format!(
                    "{part}: su ficha no dice qué temperaturas mínima y máxima admite en el almacén"
                )
            }
        },
        StoreSaid::AskStoreSide { part, side } => match side {
            StoreSide::Cold => format!("¿Qué temperatura mínima admite {part} en el almacén?"),
            StoreSide::Warm => format!("¿Qué temperatura máxima admite {part} en el almacén?"),
            StoreSide::ColdAndWarm => {
                format!("¿Qué temperaturas mínima y máxima admite {part} en el almacén?")
            }
        },
        StoreSaid::LayNotWritten { of } => format!(
            "{}, lote {}: no está anotado a qué temperaturas mínima y máxima estuvo",
            of.part, of.lot
        ),
        StoreSaid::AskHowLay { of } => format!(
            "¿A qué temperaturas mínima y máxima estuvo el lote {} de {} en el almacén y en el camión?",
            of.lot, of.part
        ),
    }
}

fn begun(begun: Begun) -> &'static str {
    match begun {
        Begun::Made => "fabricado",
        Begun::Expanded => "expandido",
    }
}

/// Two temperatures, with a word for a missing one.
fn between(degc: StoreDegc, none: &str) -> String {
    let shown = |degc: Option<f64>| degc.map_or(none.to_owned(), |degc| degc.to_string());
    format!(
        "{} a {} degC",
        shown(degc.least_degc),
        shown(degc.greatest_degc)
    )
}

fn park(tongue: Tongue, said: &ParkSaid) -> String {
    match said {
        ParkSaid::NoLegParks => "no está dicho en qué ramal se estaciona el cuerpo: decídalo antes de hacer cualquier conector".to_owned(),
        ParkSaid::HasOneBody { kind } => {
            format!("un empalme {} tiene un solo cuerpo", tongue.joint_kind(*kind))
        }
        ParkSaid::Legs { n_legs: 1 } => "un ramal".to_owned(),
        ParkSaid::Legs { n_legs } => format!("{n_legs} ramales"),
        ParkSaid::LegsParkOneBody { n_legs } => {
            format!("{n_legs} ramales están nombrados para estacionar el único cuerpo")
        }
        ParkSaid::NameLeg => "Diga en qué ramal se desliza el cuerpo.".to_owned(),
        ParkSaid::RoomForSealOnly => "hay espacio para su propio sello, no para el cuerpo, y nadie dice en qué ramal se estaciona el cuerpo".to_owned(),
        ParkSaid::LengthNotSaid { row } => {
            format!("la ficha {row} no dice qué largo tiene mientras está estacionado")
        }
        ParkSaid::NothingSlidOn => "aquí no se desliza nada antes del conector".to_owned(),
        ParkSaid::RoomForWhatIs => "espacio para lo que se desliza".to_owned(),
        ParkSaid::NotMeasured => {
            "nadie ha medido el espacio para lo que se desliza antes del conector".to_owned()
        }
        ParkSaid::Room { subject } => format!(
            "{}, espacio para lo que se desliza antes del conector",
            tongue.subject(subject)
        ),
        ParkSaid::ParkElsewhere => {
            "Estacione en otro ramal, o llame antes de cortar nada.".to_owned()
        }
        ParkSaid::ErrorNotWritten => {
            "no está anotado qué error pueden tener las longitudes alrededor de este ramal"
                .to_owned()
        }
    }
}

fn choice(tongue: Tongue, said: &ChoiceSaid) -> String {
    match said {
        ChoiceSaid::TheJob => "trabajo".to_owned(),
        ChoiceSaid::Named { part } => named(&noun::one(noun::part(*part))),
        ChoiceSaid::NotNamed { part } => {
            format!("no se nombra {}", noun::none(noun::part(*part)))
        }
        ChoiceSaid::ChooseAmong { part } => format!(
            "Elija entre las propuestas para {}.",
            noun::the(noun::part(*part))
        ),
        ChoiceSaid::Is { found } => served(tongue, found),
        ChoiceSaid::OneOf { permitted } => served_all(tongue, permitted),
        ChoiceSaid::ServesOthers {
            part,
            what,
            permitted,
            found,
        } => format!(
            "{part} es para {} {}; aquí es {}",
            serves(*what),
            served_all(tongue, permitted),
            served(tongue, found)
        ),
        ChoiceSaid::RatedBelow {
            part,
            rated_kv,
            highest_kv,
        } => format!(
            "{part} es para {rated_kv} kV como máximo; la tensión más alta del sistema es {highest_kv} kV"
        ),
        ChoiceSaid::UseRated => {
            "Pare. Use una pieza que sus instrucciones admitan en este sistema.".to_owned()
        }
    }
}

/// A part that is named: "un cuerpo nombrado", "una pieza de pantalla nombrada".
fn named(part: &str) -> String {
    let ending = if part.starts_with("una ") {
        "nombrada"
    } else {
        "nombrado"
    };
    format!("{part} {ending}")
}

fn serves(what: ServesFor) -> &'static str {
    match what {
        ServesFor::Earthing => "sistemas con puesta a tierra",
        ServesFor::Kind => "empalmes de tipo",
        ServesFor::Bonding => "conexión de pantallas",
        ServesFor::Shield => "una pantalla de",
        ServesFor::Conductor => "conductores de",
        ServesFor::Stranding => "cableado",
        ServesFor::Jacket => "una cubierta",
    }
}

/// A word of files for an earthing, a bonding, a kind of joint, a shield or a jacket; another word stays as it is.
fn file_word(word: &str) -> &str {
    match word {
        "solid" => "directa",
        "open" => "abierta",
        "linked" => "con enlace",
        "impedance" => "por impedancia",
        "resonant" => "resonante",
        "isolated" => "aislada",
        "straight" => "recto",
        "branch" => "derivación",
        "flat-straps" => "cintas planas",
        "concentric-wires" => "alambres concéntricos",
        "lapped-tape" => "cinta traslapada",
        "corrugated-tape" => "cinta corrugada longitudinal",
        "tape-with-wires" => "cinta con alambres",
        "smooth" => "lisa",
        "scored" => "rayada",
        "wrinkled" => "arrugada",
        "embossed" => "con relieve",
        "cracked" => "agrietada",
        own => own,
    }
}

fn served(tongue: Tongue, of: &Served) -> String {
    match of {
        Served::Word(word) => file_word(word).to_owned(),
        Served::Size(size) => size.to_string(),
        Served::Metal(metal) => tongue.metal(*metal).to_owned(),
        Served::Stranding(stranding) => tongue.stranding(*stranding).to_owned(),
    }
}

fn served_all(tongue: Tongue, all: &[Served]) -> String {
    let all: Vec<String> = all.iter().map(|of| served(tongue, of)).collect();
    all.join(", ")
}
