//! Labels of rulings, proposals and what must be settled, on the page of a plan.
#![expect(missing_docs, reason = "the name of a label says what is said")]

use super::Label;
use crate::Tongue;
use jointwright_joint::said::{Language, PartKind};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A label of the rulings on the page of a plan.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PlanRulingLabel {
    ToSettle,
    OutOfWindow,
    WordOf {
        source: String,
    },
    NotJudged,
    SomethingMissing {
        what: String,
    },
    NotComputed {
        what: Vec<String>,
    },
    Closed,
    RanOut {
        word: String,
    },
    LeftOpen,
    Proposal {
        legs: Vec<String>,
        part: PartKind,
        found: String,
    },
    NoRowFits,
    NothingOutWith {
        fits: Vec<String>,
    },
    Misfit {
        id: String,
        why: String,
    },
    LeastRoom,
    NearestLength {
        check: String,
        whom: String,
        figures: String,
    },
    NearestComputed {
        check: String,
        whom: String,
        figures: String,
    },
}

impl Label for PlanRulingLabel {
    fn text(&self, tongue: Tongue) -> String {
        match tongue.language {
            Language::English => english(self, tongue),
            Language::Spanish => spanish(self, tongue),
        }
    }
}

fn english(label: &PlanRulingLabel, tongue: Tongue) -> String {
    let fixed = match label {
        PlanRulingLabel::ToSettle => "TO SETTLE BEFORE THE WORK",
        PlanRulingLabel::OutOfWindow => "OUT OF WINDOW",
        PlanRulingLabel::WordOf { source } => return format!("word of: {source}"),
        PlanRulingLabel::NotJudged => "NOT JUDGED",
        PlanRulingLabel::SomethingMissing { what } => {
            return format!("not computed, something is missing: {what}");
        }
        PlanRulingLabel::NotComputed { what } => {
            let what = what.join(", ");
            return format!("not computed by this version, whatever is stated: {what}");
        }
        PlanRulingLabel::Closed => {
            "NOT JUDGED, CLOSED BY SOMEBODY'S OWN WORD: no pass of this program"
        }
        PlanRulingLabel::RanOut { word } => {
            return format!("IT HAS RUN OUT AND COUNTS NO MORE: {word}");
        }
        PlanRulingLabel::LeftOpen => "LEFT OPEN: somebody with the authority chooses",
        PlanRulingLabel::Proposal { legs, part, found } => {
            let leg = if legs.len() == 1 { "leg" } else { "legs" };
            return format!("{leg} {}, {}: {found}", legs.join(" "), tongue.part(*part));
        }
        PlanRulingLabel::NoRowFits => "no row of the catalogues fits; call",
        PlanRulingLabel::NothingOutWith { fits } => {
            return format!("nothing is out of window with {}", fits.join(", "));
        }
        PlanRulingLabel::Misfit { id, why } => return format!("not {id}: {why}"),
        PlanRulingLabel::LeastRoom => "LEAST ROOM",
        PlanRulingLabel::NearestLength {
            check,
            whom,
            figures,
        } => {
            return format!(
                "Of all lengths and diameters that are in window, {check} at {whom} comes nearest to its limit: {figures}."
            );
        }
        PlanRulingLabel::NearestComputed {
            check,
            whom,
            figures,
        } => {
            return format!(
                "Of the numbers computed that are in window, {check} at {whom} comes nearest to its limit: {figures}."
            );
        }
    };
    fixed.to_owned()
}

fn spanish(label: &PlanRulingLabel, tongue: Tongue) -> String {
    let fixed = match label {
        PlanRulingLabel::ToSettle => "PARA DECIDIR ANTES DEL TRABAJO",
        PlanRulingLabel::OutOfWindow => "FUERA DE RANGO",
        PlanRulingLabel::WordOf { source } => return format!("según: {source}"),
        PlanRulingLabel::NotJudged => "SIN JUZGAR",
        PlanRulingLabel::SomethingMissing { what } => {
            return format!("no se calcula, falta algo: {what}");
        }
        PlanRulingLabel::NotComputed { what } => {
            let what = what.join(", ");
            return format!("esta versión no lo calcula, se indique lo que se indique: {what}");
        }
        PlanRulingLabel::Closed => {
            "SIN JUZGAR, CERRADO POR LA PALABRA DE ALGUIEN: este programa no lo aprueba"
        }
        PlanRulingLabel::RanOut { word } => {
            return format!("YA VENCIÓ Y NO CUENTA MÁS: {word}");
        }
        PlanRulingLabel::LeftOpen => "SIN ELEGIR: elige alguien con la autoridad",
        PlanRulingLabel::Proposal { legs, part, found } => {
            let leg = if legs.len() == 1 { "ramal" } else { "ramales" };
            return format!("{leg} {}, {}: {found}", legs.join(" "), tongue.part(*part));
        }
        PlanRulingLabel::NoRowFits => "ninguna ficha de los catálogos sirve; llame",
        PlanRulingLabel::NothingOutWith { fits } => {
            return format!("nada está fuera de rango con {}", fits.join(", "));
        }
        PlanRulingLabel::Misfit { id, why } => return format!("{id} no: {why}"),
        PlanRulingLabel::LeastRoom => "MENOR MARGEN",
        PlanRulingLabel::NearestLength {
            check,
            whom,
            figures,
        } => {
            return format!(
                "De todas las longitudes y diámetros dentro de rango, lo más cercano a su límite es {check} en {whom}: {figures}."
            );
        }
        PlanRulingLabel::NearestComputed {
            check,
            whom,
            figures,
        } => {
            return format!(
                "De los números calculados dentro de rango, lo más cercano a su límite es {check} en {whom}: {figures}."
            );
        }
    };
    fixed.to_owned()
}
