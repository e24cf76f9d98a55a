//! Labels of the half-section of a leg.
#![expect(missing_docs, reason = "the name of a label says what is said")]

use super::Label;
use crate::Tongue;
use crate::spanish::noun;
use jointwright_joint::cable::Layer;
use jointwright_joint::said::Language;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A label of the half-section of a leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum HalfSectionLabel {
    Leg {
        leg: String,
        cable: String,
    },
    NotToMeasure,
    ToScale {
        ratio: String,
    },
    RaggedEdge,
    LeftOut {
        layers: Vec<String>,
    },
    /// A layer of which the plan says nothing.
    Unmeasured {
        layer: Layer,
    },
    Foot {
        program: String,
        job: String,
        day: String,
    },
    InstructionsPrevail,
    SquareCutEnd,
    NoNumber,
    NobodySetsWindow,
    SeeLadder,
    Connector,
    EdgeNotSet {
        layer: String,
    },
    BodyOutline,
    Electrode,
    StressControl,
    Broken,
    BrokenAtEach,
}

impl Label for HalfSectionLabel {
    fn text(&self, tongue: Tongue) -> String {
        match tongue.language {
            Language::English => english(self),
            Language::Spanish => spanish(tongue, self),
        }
    }
}

fn english(label: &HalfSectionLabel) -> String {
    match label {
        HalfSectionLabel::Leg { leg, cable } => format!("Leg {leg}: {cable}"),
        HalfSectionLabel::NotToMeasure => {
            "Upper half of the leg. Nothing may be measured from the picture.".to_owned()
        }
        HalfSectionLabel::ToScale { ratio } => format!(
            "Upper half, scale 1 : {ratio} both ways. Mark from the numbers, never from the picture."
        ),
        HalfSectionLabel::RaggedEdge => "A ragged edge is not set.".to_owned(),
        HalfSectionLabel::LeftOut { layers } => {
            format!("Left out, no diameter is known: {}.", layers.join(", "))
        }
        HalfSectionLabel::Unmeasured { layer } => layer.file_name().replace('-', " "),
        HalfSectionLabel::Foot { program, job, day } => format!("{program}; job {job}; {day}"),
        HalfSectionLabel::InstructionsPrevail => "The parts' own instructions prevail.".to_owned(),
        HalfSectionLabel::SquareCutEnd => "square-cut conductor end".to_owned(),
        HalfSectionLabel::NoNumber => "out of window: no number is printed".to_owned(),
        HalfSectionLabel::NobodySetsWindow => "nobody sets a window".to_owned(),
        HalfSectionLabel::SeeLadder => "see the growth ladder".to_owned(),
        HalfSectionLabel::Connector => "connector".to_owned(),
        HalfSectionLabel::EdgeNotSet { layer } => format!("edge of {layer}: not set"),
        HalfSectionLabel::BodyOutline => "body (outline only, thickness not known)".to_owned(),
        HalfSectionLabel::Electrode => "electrode in the body".to_owned(),
        HalfSectionLabel::StressControl => "stress control in the body".to_owned(),
        HalfSectionLabel::Broken => "broken: not to scale here".to_owned(),
        HalfSectionLabel::BrokenAtEach => "broken: not to scale here (each double line)".to_owned(),
    }
}

fn spanish(tongue: Tongue, label: &HalfSectionLabel) -> String {
    match label {
        HalfSectionLabel::Leg { leg, cable } => format!("Ramal {leg}: {cable}"),
        HalfSectionLabel::NotToMeasure => {
            "Mitad superior del ramal. Del dibujo no se puede medir nada.".to_owned()
        }
        HalfSectionLabel::ToScale { ratio } => format!(
            "Mitad superior, escala 1 : {ratio} en ambos sentidos. Marque según los números, nunca según el dibujo."
        ),
        HalfSectionLabel::RaggedEdge => "Un borde dentado no está fijado.".to_owned(),
        HalfSectionLabel::LeftOut { layers } => {
            format!(
                "No dibujado, no se sabe el diámetro: {}.",
                layers.join(", ")
            )
        }
        HalfSectionLabel::Unmeasured { layer } => tongue.layer(*layer).to_owned(),
        HalfSectionLabel::Foot { program, job, day } => format!("{program}; trabajo {job}; {day}"),
        HalfSectionLabel::InstructionsPrevail => {
            "Prevalecen las instrucciones de las piezas.".to_owned()
        }
        HalfSectionLabel::SquareCutEnd => "extremo del conductor cortado a escuadra".to_owned(),
        HalfSectionLabel::NoNumber => "fuera de rango: no se imprime ningún número".to_owned(),
        HalfSectionLabel::NobodySetsWindow => "sin rango permitido".to_owned(),
        HalfSectionLabel::SeeLadder => "vea la escalera".to_owned(),
        HalfSectionLabel::Connector => "conector".to_owned(),
        HalfSectionLabel::EdgeNotSet { layer } => {
            format!("borde {}: sin fijar", noun::of_the(layer))
        }
        HalfSectionLabel::BodyOutline => {
            "cuerpo (solo el contorno, no se sabe el espesor)".to_owned()
        }
        HalfSectionLabel::Electrode => "electrodo en el cuerpo".to_owned(),
        HalfSectionLabel::StressControl => "control de campo en el cuerpo".to_owned(),
        HalfSectionLabel::Broken => "dibujo interrumpido: aquí sin escala".to_owned(),
        HalfSectionLabel::BrokenAtEach => {
            "dibujo interrumpido: aquí sin escala (cada línea doble)".to_owned()
        }
    }
}
