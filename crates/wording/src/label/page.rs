//! Labels that several pages share: whose page it is, what it comes to, whom to call.
#![expect(missing_docs, reason = "the name of a label says what is said")]

use super::Label;
use crate::Tongue;
use jointwright_joint::said::{JointKind, Language};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A label of any page for the terminal.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PageLabel {
    WroteInto {
        folder: String,
    },
    Wrote {
        file: String,
    },
    JointFails,
    Fails {
        what: String,
    },
    EveryRulingPasses,
    NothingFails,
    Joint {
        kind: JointKind,
        n_phases: i64,
        place: String,
        date: String,
    },
    Checked {
        n_pass: usize,
        n_open: usize,
        n_fail: usize,
    },
    StopAndCall {
        name: String,
        number: String,
    },
    LegsAndPhases,
    NoPlaceYet {
        planes: Vec<String>,
    },
    OutOfWindowCutNothing,
    StopCutNothing,
    AllInWindow,
    NotAllJudged,
    ShieldsNever {
        said: String,
    },
    Assumes {
        what: Vec<String>,
    },
    AskOf {
        question: String,
    },
}

/// Number of phases: "phases 1 to 3".
pub(super) fn phases_english(n_phases: i64) -> String {
    if n_phases == 1 {
        "phase 1".to_owned()
    } else {
        format!("phases 1 to {n_phases}")
    }
}

/// The same in Spanish.
pub(super) fn phases_spanish(n_phases: i64) -> String {
    if n_phases == 1 {
        "fase 1".to_owned()
    } else {
        format!("fases 1 a {n_phases}")
    }
}

impl Label for PageLabel {
    fn text(&self, tongue: Tongue) -> String {
        match tongue.language {
            Language::English => english(self, tongue),
            Language::Spanish => spanish(self, tongue),
        }
    }
}

fn english(label: &PageLabel, tongue: Tongue) -> String {
    match label {
        PageLabel::WroteInto { folder } => format!("Wrote into {folder}:"),
        PageLabel::Wrote { file } => format!("Wrote {file}"),
        PageLabel::JointFails => "THIS JOINT FAILS ITS PLAN: CUT NOTHING. What follows makes up for none of it; `plan` says all.".to_owned(),
        PageLabel::Fails { what } => format!("FAILS {what}"),
        PageLabel::EveryRulingPasses => {
            "Every ruling of the plan passes; that does not say that it may be built.".to_owned()
        }
        PageLabel::NothingFails => "Nothing fails in the plan; not all is judged there.".to_owned(),
        PageLabel::Joint {
            kind,
            n_phases,
            place,
            date,
        } => format!(
            "{} joint, {}, {place}, work day {date}",
            tongue.joint_kind(*kind),
            phases_english(*n_phases)
        ),
        PageLabel::Checked {
            n_pass,
            n_open,
            n_fail,
        } => format!("Checked: {n_pass} in window, {n_open} not judged, {n_fail} out of window."),
        PageLabel::StopAndCall { name, number } => format!("Stop and call: {name}, {number}"),
        PageLabel::LegsAndPhases => {
            "A1 is leg A, phase 1. The parts' own instructions prevail over this page.".to_owned()
        }
        PageLabel::NoPlaceYet { planes } => {
            format!("NOT COMPLETE: no place yet for {}.", planes.join(", "))
        }
        PageLabel::OutOfWindowCutNothing => "OUT OF WINDOW: CUT NOTHING.".to_owned(),
        PageLabel::StopCutNothing => {
            "STOP: CUT NOTHING. Nothing of it is out of window, and work stops all the same."
                .to_owned()
        }
        PageLabel::AllInWindow => {
            "All is in window; that does not say that it may be built.".to_owned()
        }
        PageLabel::NotAllJudged => "Nothing is out of window; not all is judged.".to_owned(),
        PageLabel::ShieldsNever { said } => format!("Shields: {said}"),
        PageLabel::Assumes { what } => format!("Assumes: {}.", what.join("; ")),
        PageLabel::AskOf { question } => format!("ask: {question}"),
    }
}

fn spanish(label: &PageLabel, tongue: Tongue) -> String {
    match label {
        PageLabel::WroteInto { folder } => format!("Escrito en {folder}:"),
        PageLabel::Wrote { file } => format!("Escrito: {file}"),
        PageLabel::JointFails => "ESTE EMPALME NO CUMPLE SU PLAN: NO CORTE NADA. Nada de lo que sigue lo compensa; `plan` lo dice todo.".to_owned(),
        PageLabel::Fails { what } => format!("NO CUMPLE {what}"),
        PageLabel::EveryRulingPasses => {
            "Todos los resultados del plan están dentro de rango; eso no dice que se pueda construir."
                .to_owned()
        }
        PageLabel::NothingFails => {
            "Nada en el plan está fuera de rango; no todo está juzgado en él.".to_owned()
        }
        PageLabel::Joint {
            kind,
            n_phases,
            place,
            date,
        } => format!(
            "empalme {}, {}, {place}, día de trabajo {date}",
            tongue.joint_kind(*kind),
            phases_spanish(*n_phases)
        ),
        PageLabel::Checked {
            n_pass,
            n_open,
            n_fail,
        } => format!(
            "Revisado: {n_pass} dentro de rango, {n_open} sin juzgar, {n_fail} fuera de rango."
        ),
        PageLabel::StopAndCall { name, number } => format!("Pare y llame: {name}, {number}"),
        PageLabel::LegsAndPhases => "A1 es el ramal A, fase 1. Las instrucciones propias de las piezas prevalecen sobre esta página.".to_owned(),
        PageLabel::NoPlaceYet { planes } => {
            format!("INCOMPLETO: todavía sin posición: {}.", planes.join(", "))
        }
        PageLabel::OutOfWindowCutNothing => "FUERA DE RANGO: NO CORTE NADA.".to_owned(),
        PageLabel::StopCutNothing => "PARE: NO CORTE NADA. Nada está fuera de rango, y aun así el trabajo se detiene.".to_owned(),
        PageLabel::AllInWindow => {
            "Todo está dentro de rango; eso no dice que se pueda construir.".to_owned()
        }
        PageLabel::NotAllJudged => {
            "Nada está fuera de rango; no todo está juzgado.".to_owned()
        }
        PageLabel::ShieldsNever { said } => format!("Pantallas: {said}"),
        PageLabel::Assumes { what } => format!("Supone: {}.", what.join("; ")),
        PageLabel::AskOf { question } => format!("pregunta: {question}"),
    }
}
