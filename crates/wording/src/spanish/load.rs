//! Sentences about the load and the emergency of a joint, and about its bonding lead in a short circuit.

use crate::shown;
use jointwright_joint::said::{LoadSaid, Share, ShareFrom};

pub(super) fn say(said: &LoadSaid) -> String {
    match said {
        LoadSaid::TooHotAtLoad => "Pare y llame: con esta carga el empalme se calienta más de lo que permite su documento. El ingeniero decide sobre la carga, sobre lo que rodea el empalme, o sobre otro cuerpo u otro conector.".to_owned(),
        LoadSaid::GreatestAtLoadNotSaid { row } => format!(
            "la ficha {row} no dice qué temperatura puede tener de forma continua el conductor en su interior"
        ),
        LoadSaid::AskGreatestAtLoad { body } => format!(
            "¿Qué temperatura puede tener de forma continua el conductor dentro de {body}?"
        ),
        LoadSaid::InsideAtLoad { body, load_a } => format!(
            "conductor dentro de {body} con {} A de carga continua",
            shown(*load_a)
        ),
        LoadSaid::MoreThanCable { by_k, shares: of } => format!(
            "{by_k:.1} K más que lo que tendría allí su cable{}",
            shares(of)
        ),
        LoadSaid::ShareFrom(from) => share_from(from),
        LoadSaid::TooHotInEmergency => "Pare y llame: en tal emergencia el empalme se calienta más de lo que permite su documento. El ingeniero decide cuánta carga, y por cuánto tiempo.".to_owned(),
        LoadSaid::GreatestInEmergencyNotSaid { row } => format!(
            "la ficha {row} no dice qué temperatura puede tener en una emergencia el conductor en su interior"
        ),
        LoadSaid::AskGreatestInEmergency { body } => format!(
            "¿Qué temperatura puede tener en una emergencia el conductor dentro de {body}?"
        ),
        LoadSaid::InsideInEmergency {
            body,
            time_h,
            load_a,
        } => format!(
            "conductor dentro de {body} después de {} h con {} A",
            shown(*time_h),
            shown(*load_a)
        ),
        LoadSaid::PassesBefore => "la carga anterior ya lo sobrepasa".to_owned(),
        LoadSaid::GetsThereIn { time_h } => format!("llega allí en {} h", shown(*time_h)),
        LoadSaid::LeadTooSmall => "Pare y llame: este cable de conexión no soporta el cortocircuito indicado. El ingeniero decide sobre uno más grande, sobre el tiempo de despeje, o sobre cómo vuelve la corriente.".to_owned(),
        LoadSaid::LeadGreatestNotStated => {
            "el trabajo no indica `fault_greatest` del cable de conexión".to_owned()
        }
        LoadSaid::AskLeadGreatest => "¿Hasta qué temperatura puede subir este cable de conexión en un cortocircuito, según su documento?".to_owned(),
        LoadSaid::PaperOfLead => {
            "el documento del cable de conexión, como lo indica el trabajo".to_owned()
        }
    }
}

/// Shares of a difference; empty if there are none.
pub(super) fn shares(shares: &[Share]) -> String {
    if shares.is_empty() {
        return String::new();
    }
    let each = shares
        .iter()
        .map(|share| format!("{:+.1} K {}", share.k, share_from(&share.from)));
    format!(" (de esto: {})", each.collect::<Vec<_>>().join(", "))
}

fn share_from(from: &ShareFrom) -> String {
    match from {
        ShareFrom::Connector { leg } => {
            format!("el conector del ramal {leg} comparado con el mismo largo de su conductor")
        }
        ShareFrom::Bus => "la barra".to_owned(),
        ShareFrom::OtherLeg { leg } => {
            format!("el ramal {leg}, desde donde se unen los ramales")
        }
        ShareFrom::OwnCurrent { leg } => {
            format!("la corriente propia del ramal {leg}, bajo el empalme en lugar del cable libre")
        }
        ShareFrom::Surroundings => {
            "lo que rodea el empalme comparado con lo que rodea el cable".to_owned()
        }
        ShareFrom::ConnectorOf { leg } => format!("el conector del ramal {leg}"),
    }
}
