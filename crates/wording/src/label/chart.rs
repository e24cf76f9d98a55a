//! Labels of charts of a joint under load.
#![expect(missing_docs, reason = "the name of a label says what is said")]

use super::Label;
use crate::Tongue;
use jointwright_joint::said::Language;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A label of a chart of a joint under load.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ChartLabel {
    Undecided,
    AxisTitle { mark: String, job: String },
    EmergencyTitle { mark: String, job: String },
    OfPlan { issue: String },
    OfPlanThatFails { issue: String },
    AllTheTime { loads: Vec<String> },
    LoadOfLeg { leg: String, amperes: String },
    ConductorOfLeg { leg: String },
    ConductorOfLegs { first: String, second: String },
    CablesAlone { first: String, second: String },
    Outside { first: String, second: String },
    LimitInBody { degc: f64 },
    Pair { left: String, right: String },
    FromWhereLegsMeet,
    BodyEnds { legs: Vec<String> },
    Leg { leg: String },
    JobsEmergency { amperes: String },
    FromRest,
    Hours,
    LoadAmperes,
}

impl Label for ChartLabel {
    fn text(&self, tongue: Tongue) -> String {
        match tongue.language {
            Language::English => english(self),
            Language::Spanish => spanish(self),
        }
    }
}

fn english(label: &ChartLabel) -> String {
    match label {
        ChartLabel::Undecided => {
            "Computed from what is stated; decides nothing. The parts' own instructions prevail."
                .to_owned()
        }
        ChartLabel::AxisTitle { mark, job } => {
            format!("{mark}, {job}: temperature along the axis")
        }
        ChartLabel::EmergencyTitle { mark, job } => {
            format!("{mark}, {job}: emergency load against time")
        }
        ChartLabel::OfPlan { issue } => format!("{issue}."),
        ChartLabel::OfPlanThatFails { issue } => format!("{issue}. THIS JOINT FAILS ITS PLAN."),
        ChartLabel::AllTheTime { loads } => format!("All the time: {}.", loads.join(", ")),
        ChartLabel::LoadOfLeg { leg, amperes } => format!("leg {leg} {amperes} A"),
        ChartLabel::ConductorOfLeg { leg } => format!("conductor, leg {leg}"),
        ChartLabel::ConductorOfLegs { first, second } => {
            format!("conductor, legs {first} and {second}")
        }
        ChartLabel::CablesAlone { first, second } => {
            format!("conductor of the cables without a joint, legs {first} and {second}")
        }
        ChartLabel::Outside { first, second } => {
            format!("outside of joint and cable, legs {first} and {second}")
        }
        ChartLabel::LimitInBody { degc } => {
            format!("{degc} degC: conductor inside the body, by its paper")
        }
        ChartLabel::Pair { left, right } => format!(
            "leg {left} to the left, leg {right} to the right of the joint's middle, m"
        ),
        ChartLabel::FromWhereLegsMeet => "distance from where the legs meet, m".to_owned(),
        ChartLabel::BodyEnds { legs } => format!("body ends, {}", legs.join(" ")),
        ChartLabel::Leg { leg } => format!("leg {leg}"),
        ChartLabel::JobsEmergency { amperes } => format!("{amperes} A: the job's emergency"),
        ChartLabel::FromRest => "From the job's load at rest, until the conductor inside a body comes to the temperature that its paper gives for an emergency, or that of a cable to the highest in service by the job.".to_owned(),
        ChartLabel::Hours => "hours".to_owned(),
        ChartLabel::LoadAmperes => "load, A".to_owned(),
    }
}

fn spanish(label: &ChartLabel) -> String {
    match label {
        ChartLabel::Undecided => {
            "Calculado con lo indicado; no decide nada. Prevalecen las instrucciones de las piezas."
                .to_owned()
        }
        ChartLabel::AxisTitle { mark, job } => {
            format!("{mark}, {job}: temperatura a lo largo del eje")
        }
        ChartLabel::EmergencyTitle { mark, job } => {
            format!("{mark}, {job}: carga de emergencia según el tiempo")
        }
        ChartLabel::OfPlan { issue } => format!("{issue}."),
        ChartLabel::OfPlanThatFails { issue } => {
            format!("{issue}. ESTE EMPALME NO CUMPLE SU PLAN.")
        }
        ChartLabel::AllTheTime { loads } => format!("Carga continua: {}.", loads.join(", ")),
        ChartLabel::LoadOfLeg { leg, amperes } => format!("ramal {leg} {amperes} A"),
        ChartLabel::ConductorOfLeg { leg } => format!("conductor, ramal {leg}"),
        ChartLabel::ConductorOfLegs { first, second } => {
            format!("conductor, ramales {first} y {second}")
        }
        ChartLabel::CablesAlone { first, second } => {
            format!("conductor de los cables sin empalme, ramales {first} y {second}")
        }
        ChartLabel::Outside { first, second } => {
            format!("exterior del empalme y del cable, ramales {first} y {second}")
        }
        ChartLabel::LimitInBody { degc } => {
            format!("{degc} degC: conductor dentro del cuerpo, según su documento")
        }
        ChartLabel::Pair { left, right } => format!(
            "ramal {left} a la izquierda, ramal {right} a la derecha de la mitad del empalme, m"
        ),
        ChartLabel::FromWhereLegsMeet => "distancia desde donde se unen los ramales, m".to_owned(),
        ChartLabel::BodyEnds { legs } => format!("termina el cuerpo, {}", legs.join(" ")),
        ChartLabel::Leg { leg } => format!("ramal {leg}"),
        ChartLabel::JobsEmergency { amperes } => format!("{amperes} A: la emergencia del trabajo"),
        ChartLabel::FromRest => "Desde la carga del trabajo en régimen estable, hasta que el conductor dentro de un cuerpo llega a la temperatura que su documento da para una emergencia, o el de un cable a la más alta en servicio según el trabajo.".to_owned(),
        ChartLabel::Hours => "horas".to_owned(),
        ChartLabel::LoadAmperes => "carga, A".to_owned(),
    }
}
