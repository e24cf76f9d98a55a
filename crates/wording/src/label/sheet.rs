//! Labels of the make-up sheet.
#![expect(missing_docs, reason = "the name of a label says what is said")]

use super::Label;
use crate::Tongue;
use jointwright_joint::said::Language;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A label of the make-up sheet.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SheetLabel {
    StopOutOfWindow,
    StopUntilSomebodySays,
}

impl Label for SheetLabel {
    fn text(&self, tongue: Tongue) -> String {
        match tongue.language {
            Language::English => english(self),
            Language::Spanish => spanish(self),
        }
    }
}

fn english(label: &SheetLabel) -> String {
    match label {
        SheetLabel::StopOutOfWindow => "Out of window: no number to cut to is printed".to_owned(),
        SheetLabel::StopUntilSomebodySays => {
            "Work stops until a named person has said what this is: no number to cut to is printed"
                .to_owned()
        }
    }
}

fn spanish(label: &SheetLabel) -> String {
    match label {
        SheetLabel::StopOutOfWindow => {
            "Fuera de ventana: no se imprime ninguna medida de corte".to_owned()
        }
        SheetLabel::StopUntilSomebodySays => {
            "El trabajo se detiene hasta que una persona designada diga qué es esto: no se imprime ninguna medida de corte"
                .to_owned()
        }
    }
}
