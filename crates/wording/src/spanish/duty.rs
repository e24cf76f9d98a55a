//! Sentences about a leg in service.

use crate::Tongue;
use jointwright_joint::said::{DutySaid, GapLevel, GapSaid, ShortCircuitSaid, Wording};

pub(super) fn say(tongue: Tongue, said: &DutySaid) -> String {
    match said {
        DutySaid::ShortCircuit(said) => short_circuit(said),
        DutySaid::Gap(said) => gap(tongue, said),
    }
}

fn short_circuit(said: &ShortCircuitSaid) -> String {
    match said {
        ShortCircuitSaid::FaultGreatestNotSaid { row } => format!(
            "la ficha {row} no dice cuánto se puede calentar el conductor dentro de ella en un cortocircuito"
        ),
        ShortCircuitSaid::AskFaultGreatest { body } => format!(
            "¿Hasta qué temperatura puede subir el conductor dentro de {body} en un cortocircuito?"
        ),
        ShortCircuitSaid::ConductorTooHot => {
            "Pare y llame: en un cortocircuito así el conductor se calienta dentro del empalme más de lo que su documento permite. El ingeniero decide sobre el nivel de falla, el tiempo de despeje u otro cuerpo."
                .to_owned()
        }
        ShortCircuitSaid::ConnectorNotGiven => {
            "Pare y llame: el documento de este conector no cubre este cortocircuito. Use uno cuyo documento sí lo cubra, o el ingeniero decide sobre el nivel de falla y el tiempo de despeje."
                .to_owned()
        }
    }
}

fn gap_level(level: GapLevel) -> &'static str {
    match level {
        GapLevel::InceptionInService => "inicio de la descarga con la tensión más alta en servicio",
        GapLevel::ExtinctionInService => {
            "extinción de la descarga con la tensión más alta en servicio"
        }
        GapLevel::InceptionInFault => {
            "inicio de la descarga mientras se despeja una falla a tierra"
        }
        GapLevel::ExtinctionInFault => {
            "extinción de la descarga mientras se despeja una falla a tierra"
        }
    }
}

fn trial_form(is_rectangular: bool) -> &'static str {
    if is_rectangular {
        "en onda coseno-rectangular"
    } else {
        "en onda senoidal"
    }
}

fn gap(tongue: Tongue, said: &GapSaid) -> String {
    match said {
        GapSaid::Edge => "hueco antes del borde de la pantalla".to_owned(),
        GapSaid::EdgeFilled => {
            "hueco antes del borde de la pantalla, un canal de aire a través de su relleno"
                .to_owned()
        }
        GapSaid::Film => "película a lo largo del tapón cónico".to_owned(),
        GapSaid::FilmFilled => {
            "película a lo largo del tapón cónico, un canal de aire a través de su relleno"
                .to_owned()
        }
        GapSaid::EngineerDecides => {
            "Pare y llame: decide el ingeniero. Un hueco que hoy llena la grasa puede quedar vacío después."
                .to_owned()
        }
        GapSaid::EngineerDecidesField => {
            "Pare y llame: decide el ingeniero. No lo recorte, engrase ni amarre para hacerlo calzar."
                .to_owned()
        }
        GapSaid::AtTrial {
            multiple,
            level_kv,
            is_rectangular,
            from,
        } => {
            let form = trial_form(*is_rectangular);
            format!(
                "empezaría a descargar a {multiple:.2} veces el nivel del ensayo, {level_kv} kV eficaces {form} ({from})"
            )
        }
        GapSaid::TellTrial => {
            "Avise a quien lee el ensayo; si se hace así lo decide el ingeniero del propietario."
                .to_owned()
        }
        GapSaid::NoneDischarges { extinction_ratio } => format!(
            "ningún hueco descarga en servicio; ruptura del aire según el criterio de Townsend; extinción a {extinction_ratio} del inicio"
        ),
        GapSaid::Level(level) => gap_level(*level).to_owned(),
        GapSaid::Against {
            subject,
            gap,
            level,
            kv,
        } => format!(
            "{}, {}, {} ({kv:.2} kV eficaces a tierra), como múltiplo de esa tensión",
            tongue.subject(subject),
            tongue.say(gap),
            gap_level(*level)
        ),
        GapSaid::ByCurves { read, lower } => format!(
            "{read:.2} veces según la curva que se leyó, {lower:.2} veces según una que es de memoria"
        ),
        GapSaid::BodyOpen => "el cuerpo queda sin elegir".to_owned(),
        GapSaid::AtOwnWall => "con el espesor propio de este ramal".to_owned(),
        GapSaid::ServiceOverDischarge { subject, is_filled } => {
            let how = if *is_filled {
                "con un canal de aire a través de su relleno"
            } else {
                "sin relleno (con aire)"
            };
            format!(
                "{}, tensión más alta en servicio dividida por la tensión con la que el hueco antes del borde de la pantalla descargaría, {how}",
                tongue.subject(subject)
            )
        }
    }
}
