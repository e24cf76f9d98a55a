//! Labels of what a plan asks: on its page, and where letters are written.
#![expect(missing_docs, reason = "the name of a label says what is said")]

use super::Label;
use crate::Tongue;
use jointwright_joint::said::Language;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A label of the questions on a page.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum AskPageLabel {
    AskFirst,
    DuringTheWork,
    AskMakers,
    Settles { what: String },
    WhereAnswersGo,
    LettersOfAnotherPlan { names: Vec<String> },
    NothingOpen,
}

impl Label for AskPageLabel {
    fn text(&self, tongue: Tongue) -> String {
        match tongue.language {
            Language::English => english(self),
            Language::Spanish => spanish(self),
        }
    }
}

fn english(label: &AskPageLabel) -> String {
    let fixed = match label {
        AskPageLabel::AskFirst => "ASK FIRST: what crew or owner can close before the work",
        AskPageLabel::DuringTheWork => "TO FIND DURING THE WORK, at its own step",
        AskPageLabel::AskMakers => "ASK MAKERS: some publish it, some do not",
        AskPageLabel::Settles { what } => return format!("settles {what}"),
        AskPageLabel::WhereAnswersGo => {
            "Where each answer goes: `plan --ask` writes them as letters."
        }
        AskPageLabel::LettersOfAnotherPlan { names } => {
            let names = names.join(", ");
            return format!("Letters of another plan stand there, too: {names}");
        }
        AskPageLabel::NothingOpen => "Nothing is open that somebody could answer.",
    };
    fixed.to_owned()
}

fn spanish(label: &AskPageLabel) -> String {
    let fixed = match label {
        AskPageLabel::AskFirst => {
            "PREGUNTE PRIMERO: lo que cuadrilla o propietario pueden cerrar antes del trabajo"
        }
        AskPageLabel::DuringTheWork => "PARA HALLAR DURANTE EL TRABAJO, cada cosa en su paso",
        AskPageLabel::AskMakers => "PREGUNTE A LOS FABRICANTES: unos lo publican, otros no",
        AskPageLabel::Settles { what } => return format!("preguntas que resuelve: {what}"),
        AskPageLabel::WhereAnswersGo => {
            "Dónde va cada respuesta: `plan --ask` lo escribe en forma de cartas."
        }
        AskPageLabel::LettersOfAnotherPlan { names } => {
            let names = names.join(", ");
            return format!("Allí hay también cartas de otro plan: {names}");
        }
        AskPageLabel::NothingOpen => "No queda nada abierto que alguien pueda responder.",
    };
    fixed.to_owned()
}
