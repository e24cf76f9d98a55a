//! Labels of a marking strip.
#![expect(missing_docs, reason = "the name of a label says what is said")]

use super::Label;
use crate::Tongue;
use crate::spanish::noun;
use jointwright_joint::cable::Layer;
use jointwright_joint::said::Language;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A label of a marking strip; `at` is what is done, and where.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum StripLabel {
    BeyondStrips {
        at: String,
        number: String,
    },
    WaitsForGrowth {
        at: String,
    },
    NoPlace {
        at: String,
    },
    OnlyOnOuterLayers,
    NotOnThisStrip,
    /// Datum of a leg without a cut.
    SquareCutEnd,
    Zero {
        datum: String,
    },
    EdgeIsNotZero {
        piece: usize,
        n: usize,
        before: usize,
    },
    FirstPiece {
        n: usize,
    },
    MeasureBars,
    /// First line of a join; `join` is its number, `other` the piece on the other side of it.
    JoinA {
        join: usize,
        other: usize,
        n: usize,
    },
    /// Second line of a join.
    JoinB {
        join: usize,
    },
    Inches,
    BarMillimetres,
    BarInches,
}

impl Label for StripLabel {
    fn text(&self, tongue: Tongue) -> String {
        match tongue.language {
            Language::English => english(tongue, self),
            Language::Spanish => spanish(tongue, self),
        }
    }
}

fn english(tongue: Tongue, label: &StripLabel) -> String {
    match label {
        StripLabel::BeyondStrips { at, number } => {
            format!("{at}: {number}, from the square-cut conductor end; not on these strips.")
        }
        StripLabel::WaitsForGrowth { at } => format!(
            "{at}: waits for the growth of the connector; see the growth ladder on the front page."
        ),
        StripLabel::NoPlace { at } => format!("{at}: no place is set; stop and call."),
        StripLabel::OnlyOnOuterLayers => format!(
            "For {} and {} only. Never on cleaned insulation: toner, ink and pencil are carbon. Off before the last wipe.",
            tongue.layer(Layer::Jacket),
            tongue.layer(Layer::InsulationScreen)
        ),
        StripLabel::NotOnThisStrip => "Not on this strip:".to_owned(),
        StripLabel::SquareCutEnd => "square-cut conductor end".to_owned(),
        StripLabel::Zero { datum } => format!("ZERO: {datum}"),
        StripLabel::EdgeIsNotZero { piece, n, before } => {
            format!("THIS EDGE IS NOT ZERO: piece {piece} of {n}, joined to piece {before}")
        }
        StripLabel::FirstPiece { n } => format!("piece 1 of {n}"),
        StripLabel::MeasureBars => "Measure the three bars first: 30 mm across, 100 mm and 4 in along. One off: do not use the strip.".to_owned(),
        StripLabel::JoinA { join, other, n } => {
            format!("JOIN {join}a: on JOIN {join}a of piece {other} of {n}")
        }
        StripLabel::JoinB { join } => format!(
            "JOIN {join}b: 1 in (25.4 mm) from {join}a. Measure it on the joined strip, then tape."
        ),
        StripLabel::Inches => "inches".to_owned(),
        StripLabel::BarMillimetres => "this bar is 100 mm".to_owned(),
        StripLabel::BarInches => "this bar is 4 in".to_owned(),
    }
}

fn spanish(tongue: Tongue, label: &StripLabel) -> String {
    match label {
        StripLabel::BeyondStrips { at, number } => format!(
            "{at}: {number}, desde el extremo del conductor cortado a escuadra; no está en estas tiras."
        ),
        StripLabel::WaitsForGrowth { at } => format!(
            "{at}: espera el alargamiento del conector; vea la escalera de alargamiento en la primera página."
        ),
        StripLabel::NoPlace { at } => format!("{at}: no tiene posición; pare y llame."),
        StripLabel::OnlyOnOuterLayers => format!(
            "Solo para {} y {}. Nunca sobre aislamiento limpio: tóner, tinta y lápiz son carbón. Quítela antes de la última pasada.",
            noun::the(tongue.layer(Layer::Jacket)),
            noun::the(tongue.layer(Layer::InsulationScreen))
        ),
        StripLabel::NotOnThisStrip => "No está en esta tira:".to_owned(),
        StripLabel::SquareCutEnd => "extremo del conductor cortado a escuadra".to_owned(),
        StripLabel::Zero { datum } => format!("CERO: {datum}"),
        StripLabel::EdgeIsNotZero { piece, n, before } => {
            format!("ESTE BORDE NO ES CERO: trozo {piece} de {n}, unido al trozo {before}")
        }
        StripLabel::FirstPiece { n } => format!("trozo 1 de {n}"),
        StripLabel::MeasureBars => "Mida primero las tres barras: 30 mm a lo ancho, 100 mm y 4 in a lo largo. Si una no mide lo que dice: no use la tira.".to_owned(),
        StripLabel::JoinA { join, other, n } => {
            format!("UNIÓN {join}a: sobre UNIÓN {join}a del trozo {other} de {n}")
        }
        StripLabel::JoinB { join } => format!(
            "UNIÓN {join}b: a 1 in (25.4 mm) de {join}a. Mídalo en la tira unida, luego pegue con cinta."
        ),
        StripLabel::Inches => "pulgadas".to_owned(),
        StripLabel::BarMillimetres => "esta barra mide 100 mm".to_owned(),
        StripLabel::BarInches => "esta barra mide 4 in".to_owned(),
    }
}
