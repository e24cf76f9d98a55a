//! Sentences about water.

use jointwright_joint::said::{MoistureSaid, TestedPlace, WaterSaid, WickSaid};

pub(super) fn say(said: &WaterSaid) -> String {
    match said {
        WaterSaid::Moisture(said) => moisture(said),
        WaterSaid::Wick(said) => wick(said),
    }
}

fn moisture(said: &MoistureSaid) -> String {
    match said {
        MoistureSaid::Wet => "mojado".to_owned(),
        MoistureSaid::Dry => "seco".to_owned(),
        MoistureSaid::WetIsNotJoined => "un extremo con agua no se empalma".to_owned(),
        MoistureSaid::FoundWet { place, how, source } => {
            format!("{} agua ({how}, {source})", found(*place))
        }
        MoistureSaid::StopAndCall => "Pare y llame: quien decide dice si se corta más atrás, se seca o se deja; pruebe otra vez después.".to_owned(),
        MoistureSaid::FoundDryBefore { place, tested, work } => {
            let place = match place {
                TestedPlace::Strands => "las hebras del conductor se encontraron secas",
                TestedPlace::UnderShield => "debajo de la pantalla se encontró seco",
            };
            format!("{place} el {tested}; el trabajo es el {work}, y un extremo abierto toma agua")
        }
        MoistureSaid::TestAgain => {
            "Pruebe otra vez después del corte a escuadra, y anote quién encontró qué.".to_owned()
        }
        MoistureSaid::Test { how, source } => format!("prueba de humedad ({how}), {source}"),
        MoistureSaid::ShieldNotTested => {
            "nadie ha probado si hay humedad debajo de la pantalla de este extremo".to_owned()
        }
        MoistureSaid::TestUnderShield => "Pruebe debajo de la pantalla cuando esté descubierta, como dicen las reglas del propietario, y anote quién encontró qué.".to_owned(),
        MoistureSaid::StrandsNotTested { blocked, far_end_in_water } => {
            let strands = match blocked {
                Some(true) => "sus documentos dicen que las hebras están bloqueadas, y eso no es una prueba",
                Some(false) => "las hebras no están bloqueadas",
                None => "no se indica si las hebras están bloqueadas",
            };
            let far_end = match far_end_in_water {
                Some(true) => "el extremo lejano está en agua o puede estarlo",
                Some(false) => "alguien miró el extremo lejano y no está en agua",
                None => "nadie ha dicho si el extremo lejano está en agua",
            };
            format!(
                "nadie ha probado si hay humedad entre las hebras de este extremo; {strands}; {far_end}"
            )
        }
        MoistureSaid::TestStrands => "Pruebe si hay humedad entre las hebras y debajo de la pantalla después del corte a escuadra, como dicen las reglas del propietario, y anote quién encontró qué.".to_owned(),
    }
}

/// Place where water was found, as the beginning of a sentence.
fn found(place: TestedPlace) -> &'static str {
    match place {
        TestedPlace::Strands => "entre las hebras del conductor se encontró",
        TestedPlace::UnderShield => "debajo de la pantalla se encontró",
    }
}

fn wick(said: &WickSaid) -> String {
    match said {
        WickSaid::PassesNotSaid { part } => {
            format!("la ficha de {part} no dice si algo de la pieza sale por debajo del sello")
        }
        WickSaid::AskPasses { part } => format!(
            "¿Sale por debajo del sello un alambre, cinta plana, trenza o cable de conexión de {part}, y está ese tramo bloqueado contra el agua?"
        ),
        WickSaid::NothingByItsRow { part } => format!(
            "la pantalla se conecta por un enlace, y según su ficha nada de {part} sale por debajo del sello"
        ),
        WickSaid::AskWhereLeadComesOut { part } => format!(
            "¿Por dónde sale el cable de conexión de {part}, y está ahí bloqueado contra el agua?"
        ),
        WickSaid::NothingPasses => "nada sale por debajo del sello".to_owned(),
        WickSaid::BlockedWhereSomethingDoes => "bloqueado, donde algo sale".to_owned(),
        WickSaid::Blocked => "bloqueado".to_owned(),
        WickSaid::NotBlocked => "no bloqueado".to_owned(),
        WickSaid::BlockedNotSaid { part } => format!(
            "la ficha de {part} no dice si su tramo debajo del sello está bloqueado contra el agua"
        ),
        WickSaid::AskBlocked { part } => format!(
            "¿Está bloqueado contra el agua el tramo de {part} que queda debajo del sello?"
        ),
        WickSaid::PassesUnblocked { part } => format!(
            "{part} sale por debajo del sello y no lleva ningún tramo bloqueado contra el agua"
        ),
        WickSaid::TakesLead => "admite una salida".to_owned(),
        WickSaid::TakesNoLead => "no admite ninguna salida".to_owned(),
        WickSaid::TakesLeadNotSaid { seal } => {
            format!("la ficha de {seal} no dice si admite una trenza o un cable de conexión por debajo")
        }
        WickSaid::AskTakesLead { seal } => {
            format!("¿Puede salir una trenza o un cable de conexión por debajo de {seal}?")
        }
        WickSaid::LetsNothingOut { part, seal } => format!(
            "{part} sale por debajo de {seal}, cuyo documento no deja salir nada por debajo"
        ),
        WickSaid::UseBlocked => "Pare: el agua se filtra por ahí hacia el empalme. Use una pieza con un tramo bloqueado, y un sello que lo admita.".to_owned(),
    }
}
