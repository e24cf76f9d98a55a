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
            format!("{part}: ni su fila ni una etiqueta dan un límite de edad")
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
            format!("{part}: su fila no dice a qué temperaturas puede estar en el almacén")
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
                format!("{part}: su fila no dice cuánto frío puede tener en el almacén")
            }
            StoreSide::Warm => {
                format!("{part}: su fila no dice cuánto calor puede tener en el almacén")
            }
            StoreSide::ColdAndWarm => {
                format!(
                    "{part}: su fila no dice cuánto frío y cuánto calor puede tener en el almacén"
                )
            }
        },
        StoreSaid::AskStoreSide { part, side } => match side {
            StoreSide::Cold => format!("¿Cuánto frío puede tener {part} en el almacén?"),
            StoreSide::Warm => format!("¿Cuánto calor puede tener {part} en el almacén?"),
            StoreSide::ColdAndWarm => {
                format!("¿Cuánto frío y cuánto calor puede tener {part} en el almacén?")
            }
        },
        StoreSaid::LayNotWritten { of } => format!(
            "{}, lote {}: no está anotado cuánto frío y cuánto calor tuvo",
            of.part, of.lot
        ),
        StoreSaid::AskHowLay { of } => format!(
            "¿Cuánto frío y cuánto calor tuvo el lote {} de {} en el almacén y en el camión?",
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
        ParkSaid::RoomForSealOnly => "hay lugar para su propio sello, no para el cuerpo, y nadie dice en qué ramal se estaciona el cuerpo".to_owned(),
        ParkSaid::LengthNotSaid { row } => {
            format!("la fila {row} no dice qué largo tiene mientras está estacionado")
        }
        ParkSaid::NothingSlidOn => "aquí no se desliza nada antes del conector".to_owned(),
        ParkSaid::RoomForWhatIs => "lugar para lo que se desliza".to_owned(),
        ParkSaid::NotMeasured => {
            "nadie ha medido el lugar para lo que se desliza antes del conector".to_owned()
        }
        ParkSaid::Room { subject } => format!(
            "{}, lugar para lo que se desliza antes del conector",
            tongue.subject(subject)
        ),
        ParkSaid::ParkElsewhere => {
            "Estacione en otro ramal, o llame antes de cortar nada.".to_owned()
        }
        ParkSaid::ErrorNotWritten => {
            "no está anotado en cuánto pueden estar erradas las longitudes alrededor de este ramal"
                .to_owned()
        }
    }
}

fn choice(tongue: Tongue, said: &ChoiceSaid) -> String {
    match said {
        ChoiceSaid::TheJob => "trabajo".to_owned(),
        ChoiceSaid::Named { part } => format!("se nombra {}", noun::one(noun::part(*part))),
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
            "{part} es para no más de {rated_kv} kV; la tensión más alta del sistema es {highest_kv} kV"
        ),
        ChoiceSaid::UseRated => {
            "Pare. Use una pieza que sus instrucciones admitan en este sistema.".to_owned()
        }
    }
}

fn serves(what: ServesFor) -> &'static str {
    match what {
        ServesFor::Earthing => "sistemas con puesta a tierra",
        ServesFor::Kind => "empalmes de clase",
        ServesFor::Bonding => "conexión de pantallas",
        ServesFor::Shield => "una pantalla de",
        ServesFor::Conductor => "conductores de",
        ServesFor::Stranding => "cableado",
        ServesFor::Jacket => "una cubierta en estado",
    }
}

fn served(tongue: Tongue, of: &Served) -> String {
    match of {
        Served::Word(word) => word.clone(),
        Served::Size(size) => size.to_string(),
        Served::Metal(metal) => tongue.metal(*metal).to_owned(),
        Served::Stranding(stranding) => tongue.stranding(*stranding).to_owned(),
    }
}

fn served_all(tongue: Tongue, all: &[Served]) -> String {
    let all: Vec<String> = all.iter().map(|of| served(tongue, of)).collect();
    all.join(", ")
}
