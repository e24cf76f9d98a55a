//! Labels of the page of a run of cable without a joint.
#![expect(missing_docs, reason = "the name of a label says what is said")]

use super::Label;
use crate::Tongue;
use jointwright_joint::said::Language;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A label of the page of a run of cable.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum CableRatePageLabel {
    NoPicture,
    DecidesNothing,
    Title { job: String },
    TooMuch,
    KeepsBelow,
    NotJudged,
    NotJudgedWhy { why: String },
    Cable { cable: String },
    Ask { whom: String, question: String },
    GoesInto { place: String },
    FirstAtLimit { degc: f64, load_a: f64 },
    Stretch(StretchLabel),
}

/// A label of one stretch of a run.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum StretchLabel {
    Title {
        what: String,
    },
    AtLoad {
        load_a: f64,
        conductor_degc: f64,
        shield_degc: f64,
        surface_degc: f64,
        conductor_w_per_m: f64,
        shield_w_per_m: f64,
    },
    AtLoadNotKnown,
    ComesTo {
        degc: f64,
        at: String,
    },
    WithoutLoad {
        degc: f64,
    },
    Cyclic {
        degc: f64,
        peak_a: f64,
        factor_ratio: f64,
        loss_load_ratio: f64,
        source: String,
    },
    DayOfLoads {
        why: String,
    },
    JobsLoad {
        at: String,
    },
}

impl Label for CableRatePageLabel {
    fn text(&self, tongue: Tongue) -> String {
        match tongue.language {
            Language::English => english(self),
            Language::Spanish => spanish(self),
        }
    }
}

fn english(label: &CableRatePageLabel) -> String {
    match label {
        CableRatePageLabel::NoPicture => {
            "No picture: a run of cable without a joint is the same all along each stretch."
                .to_owned()
        }
        CableRatePageLabel::DecidesNothing => "Computed from what is stated; decides nothing. The cable's papers, the owner's rules and the persons named for it prevail. A joint in this run may bear less: rate it in a job of its own.".to_owned(),
        CableRatePageLabel::Title { job } => {
            format!("{job}: what a run of cable carries, without a joint")
        }
        CableRatePageLabel::TooMuch => {
            "THE JOB'S LOAD IS TOO MUCH FOR THIS CABLE, by the job's own limit.".to_owned()
        }
        CableRatePageLabel::KeepsBelow => "The conductor keeps below the job's own limit at the job's load; that says nothing of joints, terminations and other limits, and permits nothing.".to_owned(),
        CableRatePageLabel::NotJudged => "Not judged; nothing below permits a load.".to_owned(),
        CableRatePageLabel::NotJudgedWhy { why } => format!("not judged: {why}"),
        CableRatePageLabel::Cable { cable } => format!("cable {cable}"),
        CableRatePageLabel::Ask { whom, question } => format!("ask {whom}: {question}"),
        CableRatePageLabel::GoesInto { place } => format!("goes into the {place}"),
        CableRatePageLabel::FirstAtLimit { degc, load_a } => format!("the first of its stretches to reach {degc} degC, the highest in service by the job, does so at {load_a:.0} A all the time"),
        CableRatePageLabel::Stretch(label) => stretch_english(label),
    }
}

fn stretch_english(label: &StretchLabel) -> String {
    match label {
        StretchLabel::Title { what } => format!("STRETCH: {what}"),
        StretchLabel::AtLoad {
            load_a,
            conductor_degc,
            shield_degc,
            surface_degc,
            conductor_w_per_m,
            shield_w_per_m,
        } => format!(
            "{load_a:.0} A all the time: conductor {conductor_degc:.1}, shield {shield_degc:.1}, surface {surface_degc:.1} degC; heat of the conductor {conductor_w_per_m:.1} W/m, of the shield {shield_w_per_m:.2} W/m"
        ),
        StretchLabel::AtLoadNotKnown => {
            "at the job's load: not known, or it warms without end".to_owned()
        }
        StretchLabel::JobsLoad { at } => format!("at the job's load: {at}"),
        StretchLabel::ComesTo { degc, at } => format!("it comes to {degc} degC at {at}"),
        StretchLabel::WithoutLoad { degc } => {
            format!("{degc} degC are passed without any load, by its surroundings")
        }
        StretchLabel::Cyclic {
            degc,
            peak_a,
            factor_ratio,
            loss_load_ratio,
            source,
        } => format!(
            "with the job's day of loads it comes to {degc} degC at a peak of {peak_a:.0} A, {factor_ratio:.2} times the steady load; mean loss of the day {loss_load_ratio:.2} of the peak's ({source}). The form (IEC 60853) is from memory: it rules nothing"
        ),
        StretchLabel::DayOfLoads { why } => format!("day of loads: {why}"),
    }
}

fn spanish(label: &CableRatePageLabel) -> String {
    match label {
        CableRatePageLabel::NoPicture => {
            "Sin dibujo: un cable sin empalme es igual a lo largo de cada tramo.".to_owned()
        }
        CableRatePageLabel::DecidesNothing => "Calculado a partir de lo indicado; no decide nada. Prevalecen los documentos del cable, las reglas del propietario y las personas designadas para ello. Un empalme en este recorrido puede soportar menos: evalúelo en un trabajo propio.".to_owned(),
        CableRatePageLabel::Title { job } => {
            format!("{job}: lo que lleva un recorrido de cable, sin empalme")
        }
        CableRatePageLabel::TooMuch => "LA CARGA DEL TRABAJO ES DEMASIADA PARA ESTE CABLE, por el límite propio del trabajo.".to_owned(),
        CableRatePageLabel::KeepsBelow => "El conductor queda por debajo del límite propio del trabajo con la carga del trabajo; eso no dice nada de empalmes, terminales y otros límites, y no permite nada.".to_owned(),
        CableRatePageLabel::NotJudged => {
            "Sin juzgar; nada de lo que sigue permite una carga.".to_owned()
        }
        CableRatePageLabel::NotJudgedWhy { why } => format!("sin juzgar: {why}"),
        CableRatePageLabel::Cable { cable } => format!("cable {cable}"),
        CableRatePageLabel::Ask { whom, question } => format!("pregunte a {whom}: {question}"),
        CableRatePageLabel::GoesInto { place } => format!("va en: {place}"),
        CableRatePageLabel::FirstAtLimit { degc, load_a } => format!("el primero de sus tramos que llega a {degc} degC, lo más alto en servicio según el trabajo, llega con {load_a:.0} A de carga continua"),
        CableRatePageLabel::Stretch(label) => stretch_spanish(label),
    }
}

fn stretch_spanish(label: &StretchLabel) -> String {
    match label {
        StretchLabel::Title { what } => format!("TRAMO: {what}"),
        StretchLabel::AtLoad {
            load_a,
            conductor_degc,
            shield_degc,
            surface_degc,
            conductor_w_per_m,
            shield_w_per_m,
        } => format!(
            "{load_a:.0} A de carga continua: conductor {conductor_degc:.1}, pantalla metálica {shield_degc:.1}, superficie {surface_degc:.1} degC; calor del conductor {conductor_w_per_m:.1} W/m, de la pantalla metálica {shield_w_per_m:.2} W/m"
        ),
        StretchLabel::AtLoadNotKnown => {
            "con la carga del trabajo: no se conoce, o se calienta sin fin".to_owned()
        }
        StretchLabel::JobsLoad { at } => format!("con la carga del trabajo: {at}"),
        StretchLabel::ComesTo { degc, at } => format!("llega a {degc} degC con {at}"),
        StretchLabel::WithoutLoad { degc } => {
            format!("{degc} degC se sobrepasan sin carga alguna, por lo que lo rodea")
        }
        StretchLabel::Cyclic {
            degc,
            peak_a,
            factor_ratio,
            loss_load_ratio,
            source,
        } => format!(
            "con el día de cargas del trabajo llega a {degc} degC con un máximo de {peak_a:.0} A, {factor_ratio:.2} veces la carga constante; pérdida media del día {loss_load_ratio:.2} de la del máximo ({source}). La fórmula (IEC 60853) está citada de memoria: no decide nada"
        ),
        StretchLabel::DayOfLoads { why } => format!("día de cargas: {why}"),
    }
}
