//! Labels of a front page of the make-up sheet.
#![expect(missing_docs, reason = "the name of a label says what is said")]

use super::Label;
use crate::Tongue;
use crate::spanish::noun;
use jointwright_joint::catalogue::{Means, PartKind};
use jointwright_joint::job::JointKind;
use jointwright_joint::said::Language;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A label of a front page; texts in it are the plan's own.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum FrontLabel {
    Joint {
        kind: JointKind,
        port: Option<i64>,
    },
    LegPhase {
        leg: String,
        phase: u8,
        joint: String,
    },
    GoesTo {
        place: String,
    },
    NotSaid,
    Cable {
        cable: String,
    },
    Part {
        kind: PartKind,
        id: String,
    },
    SlideOn {
        parts: Vec<String>,
    },
    PushOn {
        parts: Vec<String>,
    },
    PushOver {
        parts: Vec<String>,
    },
    NothingComesOn,
    LeftOpen {
        settled: String,
        parts: Vec<PartKind>,
    },
    GoesOnByWord {
        word: String,
        about: String,
    },
    StopAtEnd {
        end: String,
        why: String,
    },
    Stop {
        why: String,
    },
    NotComplete {
        places: Vec<String>,
    },
    NotYet,
    LadderBelow,
    /// The place is in capitals already.
    LadderTitle {
        place: String,
    },
    LadderOfSleeve,
    LadderOfEnd {
        end: String,
    },
    Grew {
        length: String,
    },
    NoPlace,
    CutNotSet,
    SetOff {
        call: String,
    },
    NotJudged {
        what: String,
    },
}

/// A label of a leg's connector and parts.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PartLabel {
    NoConnector,
    Connector {
        id: String,
        means: Means,
    },
    IntoEnd {
        end: String,
    },
    Stop {
        why: String,
    },
    DieAndPresses {
        die: Option<String>,
        presses: Option<i64>,
        is_of_one_end: bool,
    },
    OrderOf {
        means: Means,
        paper: String,
    },
    GrowthMeasured {
        source: String,
    },
    Part {
        kind: PartKind,
        id: String,
        side: Option<String>,
        paper: String,
        doubts: Vec<String>,
    },
}

impl Label for FrontLabel {
    fn text(&self, tongue: Tongue) -> String {
        match tongue.language {
            Language::English => english(tongue, self),
            Language::Spanish => spanish(tongue, self),
        }
    }
}

impl Label for PartLabel {
    fn text(&self, tongue: Tongue) -> String {
        match tongue.language {
            Language::English => english_part(tongue, self),
            Language::Spanish => spanish_part(tongue, self),
        }
    }
}

fn english(tongue: Tongue, label: &FrontLabel) -> String {
    match label {
        FrontLabel::Joint { kind, port } => {
            let port = port.map_or(String::new(), |port| format!(", bus port {port}"));
            format!("{} joint{port}", tongue.joint_kind(*kind))
        }
        FrontLabel::LegPhase { leg, phase, joint } => format!("Leg {leg}, phase {phase}: {joint}"),
        FrontLabel::GoesTo { place } => format!("goes to {place}"),
        FrontLabel::NotSaid => "not said".to_owned(),
        FrontLabel::Cable { cable } => format!("cable: {cable}"),
        FrontLabel::Part { kind, id } => format!("{} {id}", tongue.part(*kind)),
        FrontLabel::SlideOn { parts } => format!(
            "slide on before the connector, in this order: {}",
            parts.join(", then ")
        ),
        FrontLabel::PushOn { parts } => format!(
            "push on once it is clean, before the connector, in this order: {}",
            parts.join(", then ")
        ),
        FrontLabel::PushOver { parts } => format!(
            "push on once it is clean, over the connector, in this order: {}",
            parts.join(", then ")
        ),
        FrontLabel::NothingComesOn => "nothing named comes onto this end".to_owned(),
        FrontLabel::LeftOpen { settled, parts } => {
            let parts: Vec<&str> = parts.iter().map(|part| tongue.part(*part)).collect();
            format!(
                "{settled}; {} left open: settle it before any connector is made",
                parts.join(" and ")
            )
        }
        FrontLabel::GoesOnByWord { word, about } => format!(
            "NOT JUDGED, and work goes on by the word of {word}. What it is about: {about}"
        ),
        FrontLabel::StopAtEnd { end, why } => format!("STOP AND CALL: {end}: {why}"),
        FrontLabel::Stop { why } => format!("STOP AND CALL: {why}"),
        FrontLabel::NotComplete { places } => format!(
            "NOT COMPLETE: no place yet for {}. Do not start on this end: what is missing stands beside it; with it the job is planned again.",
            places.join(", ")
        ),
        FrontLabel::NotYet => "NOT YET".to_owned(),
        FrontLabel::LadderBelow => "growth ladder below".to_owned(),
        FrontLabel::LadderTitle { place } => format!("{place}: GROWTH LADDER."),
        FrontLabel::LadderOfSleeve => "The whole sleeve grew so much on the trial press → cut at, from the square-cut conductor end, before pressing. Choose no row by guess; between two rows use none: press a trial, write it into the job and plan again.".to_owned(),
        FrontLabel::LadderOfEnd { end } => format!("The end {end}, pressed alone, grew so much on the trial press → cut at, from the square-cut conductor end, before pressing. Choose no row by guess; between two rows use none: press a trial, write it into the job and plan again."),
        FrontLabel::Grew { length } => format!("grew {length}"),
        FrontLabel::NoPlace => "no place".to_owned(),
        FrontLabel::CutNotSet => "the cut itself is not set".to_owned(),
        FrontLabel::SetOff { call } => format!(
            "Set off every mark before the connector is made. If the instructions and this page differ, or a measurement is outside its window: stop and call {call}."
        ),
        FrontLabel::NotJudged { what } => format!("Not judged: {what}."),
    }
}

fn spanish(tongue: Tongue, label: &FrontLabel) -> String {
    match label {
        FrontLabel::Joint { kind, port } => {
            let port = port.map_or(String::new(), |port| format!(", puerto {port} de la barra"));
            format!("empalme {}{port}", tongue.joint_kind(*kind))
        }
        FrontLabel::LegPhase { leg, phase, joint } => format!("Ramal {leg}, fase {phase}: {joint}"),
        FrontLabel::GoesTo { place } => format!("va a: {place}"),
        FrontLabel::NotSaid => "no está dicho".to_owned(),
        FrontLabel::Cable { cable } => format!("cable: {cable}"),
        FrontLabel::Part { kind, id } => format!("{} {id}", tongue.part(*kind)),
        FrontLabel::SlideOn { parts } => format!(
            "deslice sobre el cable antes de instalar el conector, en este orden: {}",
            parts.join(", luego ")
        ),
        FrontLabel::PushOn { parts } => format!(
            "empuje cuando esté limpio, antes de instalar el conector, en este orden: {}",
            parts.join(", luego ")
        ),
        FrontLabel::PushOver { parts } => format!(
            "empuje cuando esté limpio, sobre el conector, en este orden: {}",
            parts.join(", luego ")
        ),
        FrontLabel::NothingComesOn => "no está nombrado nada que vaya sobre este extremo".to_owned(),
        FrontLabel::LeftOpen { settled, parts } => {
            let parts: Vec<&str> = parts.iter().map(|part| tongue.part(*part)).collect();
            format!(
                "{settled}; falta elegir: {}; resuélvalo antes de hacer cualquier conector",
                parts.join(" y ")
            )
        }
        FrontLabel::GoesOnByWord { word, about } => format!(
            "SIN JUZGAR, y el trabajo sigue por la palabra de {word}. De qué se trata: {about}"
        ),
        FrontLabel::StopAtEnd { end, why } => format!("PARE Y LLAME: {end}: {why}"),
        FrontLabel::Stop { why } => format!("PARE Y LLAME: {why}"),
        FrontLabel::NotComplete { places } => format!(
            "INCOMPLETO: todavía sin posición: {}. No empiece en este extremo: lo que falta está escrito al lado; con eso se planifica otra vez el trabajo.",
            places.join(", ")
        ),
        FrontLabel::NotYet => "TODAVÍA NO".to_owned(),
        FrontLabel::LadderBelow => "escalera de alargamiento abajo".to_owned(),
        FrontLabel::LadderTitle { place } => format!("{place}: ESCALERA DE ALARGAMIENTO."),
        FrontLabel::LadderOfSleeve => "Cuánto se alargó el manguito entero en la prensada de prueba → corte a, desde el extremo del conductor cortado a escuadra, antes de prensar. No elija ninguna fila a ojo, y entre dos filas ninguna: prense uno de prueba, escríbalo en el trabajo y planifique otra vez.".to_owned(),
        FrontLabel::LadderOfEnd { end } => format!("Cuánto se alargó el extremo {end}, prensado solo, en la prensada de prueba → corte a, desde el extremo del conductor cortado a escuadra, antes de prensar. No elija ninguna fila a ojo, y entre dos filas ninguna: prense uno de prueba, escríbalo en el trabajo y planifique otra vez."),
        FrontLabel::Grew { length } => format!("se alargó {length}"),
        FrontLabel::NoPlace => "sin posición".to_owned(),
        FrontLabel::CutNotSet => "el corte mismo no está fijado".to_owned(),
        FrontLabel::SetOff { call } => format!(
            "Trace todas las marcas antes de instalar el conector. Si las instrucciones y esta página no coinciden, o una medida está fuera de su rango permitido: pare y llame a {call}."
        ),
        FrontLabel::NotJudged { what } => format!("Sin juzgar: {what}."),
    }
}

fn english_part(tongue: Tongue, label: &PartLabel) -> String {
    match label {
        PartLabel::NoConnector => "no connector is named: stop and call".to_owned(),
        PartLabel::Connector { id, means } => format!("{id}, {}", tongue.means(*means)),
        PartLabel::IntoEnd { end } => format!("this leg goes into its end {end}"),
        PartLabel::Stop { why } => format!("stop and call: {why}"),
        PartLabel::DieAndPresses {
            die,
            presses,
            is_of_one_end,
        } => format!(
            "{}; {}",
            die.as_deref()
                .map_or("die not named: see its instructions".to_owned(), |die| {
                    tongue.die(die)
                }),
            match (presses, is_of_one_end) {
                (None, _) => "presses not named: see its instructions".to_owned(),
                (Some(n), true) => format!("{n} presses at this end"),
                (Some(n), false) => format!("{n} presses an end"),
            }
        ),
        PartLabel::OrderOf { means, paper } => {
            let what = match means {
                Means::Compression => "order of presses",
                Means::ShearBolt => "order of bolts",
                Means::SetScrew => "order and torque of screws",
            };
            format!("{what}: {paper}")
        }
        PartLabel::GrowthMeasured { source } => {
            format!("growth measured ({source}): the insulation cut holds it already")
        }
        PartLabel::Part {
            kind,
            id,
            side,
            paper,
            doubts,
        } => {
            let side = side.as_ref();
            let side = side.map_or(String::new(), |side| format!(", side {side}"));
            let doubts: String = doubts.iter().map(|doubt| format!("; {doubt}")).collect();
            format!("{}: {id}{side} ({paper}{doubts})", tongue.part(*kind))
        }
    }
}

fn spanish_part(tongue: Tongue, label: &PartLabel) -> String {
    match label {
        PartLabel::NoConnector => "no está nombrado ningún conector: pare y llame".to_owned(),
        PartLabel::Connector { id, means } => format!("{id}, {}", tongue.means(*means)),
        PartLabel::IntoEnd { end } => format!("este ramal entra en su extremo {end}"),
        PartLabel::Stop { why } => format!("pare y llame: {why}"),
        PartLabel::DieAndPresses {
            die,
            presses,
            is_of_one_end,
        } => format!(
            "{}; {}",
            die.as_deref().map_or(
                "dado no nombrado: vea sus instrucciones".to_owned(),
                noun::die
            ),
            match (presses, is_of_one_end) {
                (None, _) => "prensadas no nombradas: vea sus instrucciones".to_owned(),
                (Some(n), true) => format!("{} en este extremo", noun::presses(*n)),
                (Some(n), false) => format!("{} por extremo", noun::presses(*n)),
            }
        ),
        PartLabel::OrderOf { means, paper } => {
            let what = match means {
                Means::Compression => "orden de las prensadas",
                Means::ShearBolt => "orden de los tornillos",
                Means::SetScrew => "orden y par de los tornillos",
            };
            format!("{what}: {paper}")
        }
        PartLabel::GrowthMeasured { source } => {
            format!("alargamiento medido ({source}): el corte del aislamiento ya lo incluye")
        }
        PartLabel::Part {
            kind,
            id,
            side,
            paper,
            doubts,
        } => {
            let side = side.as_ref();
            let side = side.map_or(String::new(), |side| format!(", lado {side}"));
            let doubts: String = doubts.iter().map(|doubt| format!("; {doubt}")).collect();
            format!("{}: {id}{side} ({paper}{doubts})", tongue.part(*kind))
        }
    }
}
