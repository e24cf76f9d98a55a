//! Sentences about the temperatures that the load causes.

use super::ask::all;
use crate::Tongue;
use jointwright_joint::said::HeatSaid;

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
            "los diámetros de los documentos ocupan el lugar de lo que nadie midió: {}",
            all(tongue, unread)
        ),
        HeatSaid::PapersForUnread { unread } => format!(
            "los diámetros de los documentos en lugar de lo que nadie midió, {}: nada se aprueba con estas temperaturas",
            all(tongue, unread)
        ),
        HeatSaid::AskToRead { unread } => format!("Pregunte: mida {}.", all(tongue, unread)),
    }
}
