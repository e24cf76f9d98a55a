//! Frame of a letter around its questions, and the place of an answer.

use crate::Tongue;
use jointwright_joint::limit::File;
use jointwright_joint::said::{LetterSaid, SettledCheck, Wording};

pub(super) fn say(tongue: Tongue, said: &LetterSaid) -> String {
    match said {
        LetterSaid::To { to } => format!("Para: {}", tongue.say(to)),
        LetterSaid::Job { job, title } => format!("Trabajo: {job}: {title}"),
        LetterSaid::Place { place, date } => {
            format!("Lugar: {place}. Día del trabajo: {date}.")
        }
        LetterSaid::Plan { short, issue, made } => {
            format!("PLAN {short}, {}; hecho {made}", super::plan::issue(*issue))
        }
        LetterSaid::CutNothing => "NO CORTE NADA: el plan de este empalme dice que pare. Estas preguntas se contestan sin ningún corte.".to_owned(),
        LetterSaid::FactsAreMissing => {
            "Faltan estos datos para el empalme nombrado arriba.".to_owned()
        }
        LetterSaid::WithWhereItStands => "Escriba con cada respuesta dónde está (documento, revisión, página) o cómo se encontró.".to_owned(),
        LetterSaid::LeaveBlank => {
            "Deje en blanco lo que no sepa: adivinar es peor que no responder.".to_owned()
        }
        LetterSaid::FoundDuringWork => "SE ENCUENTRA DURANTE EL TRABAJO, en su propio paso: no corte nada por lo que sigue.".to_owned(),
        LetterSaid::Answer => "respuesta".to_owned(),
        LetterSaid::WhereItStands => "según (documento, página, o cómo)".to_owned(),
        LetterSaid::NameAndDate => "nombre, fecha".to_owned(),
        LetterSaid::GoesInto { place } => format!("Se anota en el {}", tongue.say(place)),
        LetterSaid::Settles { settles } => format!("Preguntas que resuelve: {}.", tongue.say(settles)),
        LetterSaid::Fact { key } => format!("(`fact`: {key})"),
        LetterSaid::Questions { name, number } => format!("Consultas: {name}, {number}"),
        LetterSaid::AnswerPlace {
            file: of,
            tables,
            fields,
        } => format!(
            "{}, bajo `{}`: `{}`",
            file(*of),
            tables.join("` o `"),
            fields.join("`, `")
        ),
        LetterSaid::SettledBy { alone, with_others } => settled(tongue, alone, with_others),
    }
}

fn file(file: File) -> &'static str {
    match file {
        File::Job => "trabajo",
        File::Catalogue => "catálogo",
    }
}

fn settled(tongue: Tongue, alone: &[SettledCheck], with_others: &[SettledCheck]) -> String {
    match (checks(tongue, alone), checks(tongue, with_others)) {
        (None, None) => {
            "ninguna; hasta entonces lo dice todo lo que depende de este dato".to_owned()
        }
        (Some(alone), None) => alone,
        (Some(alone), Some(with)) => format!("{alone}; con otras respuestas también {with}"),
        (None, Some(with)) => format!("con otras respuestas {with}"),
    }
}

/// Checks, each with its legs and ends; nothing where there is none.
fn checks(tongue: Tongue, all: &[SettledCheck]) -> Option<String> {
    let each = all
        .iter()
        .map(|SettledCheck { check, of }| format!("{} ({})", tongue.check(check), of.join(" ")));
    (!all.is_empty()).then(|| each.collect::<Vec<_>>().join(", "))
}
