//! Labels of ends as built: every check again, and ways back.
#![expect(missing_docs, reason = "the name of a label says what is said")]

use super::Label;
use crate::Tongue;
use jointwright_joint::built::FindingKind;
use jointwright_joint::said::Language;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A label of ends as built.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum EndsLabel {
    Heading,
    /// All checks on one phase as built.
    Asked {
        phase: u8,
        n: usize,
        settled: usize,
    },
    NothingWorse,
    /// A question whose answer became worse: whom it concerns, its check, and figures or words before and now.
    Worse {
        kind: FindingKind,
        whom: String,
        check: String,
    },
    Was {
        figures: String,
    },
    Is {
        figures: String,
    },
    /// Effect of one reading alone.
    AloneWorse {
        whom: String,
        check: String,
    },
    AloneNothing,
    AloneNotComputed,
    Beside {
        names: Vec<String>,
    },
    Ways,
    /// A way back: its work and its source.
    Way {
        way: String,
        source: String,
    },
    /// Findings left out of window after a way.
    Left {
        n: usize,
    },
    Condition {
        condition: String,
    },
    NotOffered {
        why: String,
    },
    NoWay,
    Assume,
}

impl Label for EndsLabel {
    fn text(&self, tongue: Tongue) -> String {
        match tongue.language {
            Language::English => english(self),
            Language::Spanish => spanish(self),
        }
    }
}

fn english(label: &EndsLabel) -> String {
    let fixed = match label {
        EndsLabel::Heading => "EVERY CHECK AGAIN, on the ends as built",
        EndsLabel::Asked { phase, n, settled } => {
            let settled = match settled {
                0 => String::new(),
                1 => "; 1 question that the plan left open is answered now".to_owned(),
                n => format!("; {n} questions that the plan left open are answered now"),
            };
            return format!("Phase {phase}: {n} answers{settled}.");
        }
        EndsLabel::NothingWorse => "No answer is worse than that of the plan.",
        EndsLabel::Worse { kind, whom, check } => {
            let effect = match kind {
                FindingKind::NoWayBack | FindingKind::StopAndAsk => "OUT OF WINDOW",
                FindingKind::CannotTell => "CANNOT BE TOLD",
                _ => "less room than in the plan",
            };
            return format!("{whom}, {check}: {effect}");
        }
        EndsLabel::Was { figures } => return format!("was: {figures}"),
        EndsLabel::Is { figures } => return format!("is: {figures}"),
        EndsLabel::AloneWorse { whom, check } => {
            return format!("this alone makes worse: {whom}, {check}");
        }
        EndsLabel::AloneNothing => {
            "this alone makes no check worse; it is out of its window all the same"
        }
        EndsLabel::AloneNotComputed => "no check computes with it: its limit is its window alone",
        EndsLabel::Beside { names } => {
            return format!("Read, and no check computes with it: {}.", names.join("; "));
        }
        EndsLabel::Ways => "ways back that the rows name; the person called decides:",
        EndsLabel::Way { way, source } => return format!("- {way} ({source})"),
        EndsLabel::Left { n: 0 } => "leaves nothing out of window at this end",
        EndsLabel::Left { n } => return format!("leaves {n} out of window at this end"),
        EndsLabel::Condition { condition } => return condition.clone(),
        EndsLabel::NotOffered { why } => return format!("not offered: {why}"),
        EndsLabel::NoWay => "no way back that this program can compute",
        EndsLabel::Assume => {
            "What was not read is taken where the plan and its windows have it. Round, concentric and square is assumed; a nick, a void or dirt is in no number."
        }
    };
    fixed.to_owned()
}

fn spanish(label: &EndsLabel) -> String {
    let fixed = match label {
        EndsLabel::Heading => "TODAS LAS COMPROBACIONES OTRA VEZ, en los extremos hechos",
        EndsLabel::Asked { phase, n, settled } => {
            let settled = match settled {
                0 => String::new(),
                1 => "; 1 pregunta que el plan dejó abierta ya tiene respuesta".to_owned(),
                n => format!("; {n} preguntas que el plan dejó abiertas ya tienen respuesta"),
            };
            return format!("Fase {phase}: {n} respuestas{settled}.");
        }
        EndsLabel::NothingWorse => "Ninguna respuesta es peor que la del plan.",
        EndsLabel::Worse { kind, whom, check } => {
            let effect = match kind {
                FindingKind::NoWayBack | FindingKind::StopAndAsk => "FUERA DEL RANGO PERMITIDO",
                FindingKind::CannotTell => "DUDOSO",
                _ => "menos margen que en el plan",
            };
            return format!("{whom}, {check}: {effect}");
        }
        EndsLabel::Was { figures } => return format!("antes: {figures}"),
        EndsLabel::Is { figures } => return format!("ahora: {figures}"),
        EndsLabel::AloneWorse { whom, check } => {
            return format!("esto solo empeora: {whom}, {check}");
        }
        EndsLabel::AloneNothing => {
            "esto solo no empeora ninguna comprobación; aun así está fuera de su rango permitido"
        }
        EndsLabel::AloneNotComputed => {
            "ninguna comprobación calcula con esto: su límite es solo su rango permitido"
        }
        EndsLabel::Beside { names } => {
            return format!(
                "Leído, y ninguna comprobación calcula con ello: {}.",
                names.join("; ")
            );
        }
        EndsLabel::Ways => {
            "caminos de vuelta que nombran las fichas; decide la persona a la que se llama:"
        }
        EndsLabel::Way { way, source } => return format!("- {way} ({source})"),
        EndsLabel::Left { n: 0 } => "no deja nada fuera del rango permitido en este extremo",
        EndsLabel::Left { n } => {
            return format!("deja {n} fuera del rango permitido en este extremo");
        }
        EndsLabel::Condition { condition } => return condition.clone(),
        EndsLabel::NotOffered { why } => return format!("no se ofrece: {why}"),
        EndsLabel::NoWay => "ningún camino de vuelta que este programa pueda calcular",
        EndsLabel::Assume => {
            "Lo que no se leyó se toma donde lo tienen el plan y sus rangos permitidos. Se supone redondo, concéntrico y a escuadra; una muesca, un hueco o suciedad no están en ningún número."
        }
    };
    fixed.to_owned()
}
