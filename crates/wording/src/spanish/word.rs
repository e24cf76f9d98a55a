//! Names of the sources of a statement.

use crate::Tongue;
use jointwright_joint::said::{Doubt, Paper, Word, Wording};

pub(super) fn say(tongue: Tongue, word: &Word) -> String {
    let say = |said| tongue.say(said);
    match word {
        Word::Instructions(source) => format!("instrucciones: {}", say(source)),
        Word::Owner(source) => format!("propietario: {}", say(source)),
        Word::CommonPractice(what) => format!("práctica común, sin fuente: {}", say(what)),
        Word::Memory { key, source } => {
            format!(
                "de memoria, espera al propietario (clave `{key}`): {}",
                say(source)
            )
        }
        Word::Confirmed(source) => format!("confirmado por el propietario: {}", say(source)),
        Word::WorstAllowed(source) => format!(
            "igual o mejor que el peor caso que permiten las instrucciones: {}",
            say(source)
        ),
        Word::Job(source) => format!("trabajo: {}", say(source)),
    }
}

/// A part's row and its paper, with the doubts about the row.
pub(super) fn paper(of: &Paper) -> String {
    let row = if of.row.is_empty() {
        String::new()
    } else {
        format!("{}, ", of.row)
    };
    let doubts: String = of
        .doubts
        .iter()
        .map(|of| format!(", {}", doubt(of)))
        .collect();
    format!("{row}{}, revisión {}{doubts}", of.paper, of.revision)
}

pub(super) fn doubt(doubt: &Doubt) -> String {
    match doubt {
        Doubt::NotChecked => "ficha no revisada por una segunda persona".to_owned(),
        Doubt::CurrentOnlyUntil(day) => {
            format!("vigencia del documento comprobada por última vez el {day}")
        }
    }
}
