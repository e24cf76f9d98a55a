//! Labels of the legs on the page of a plan: parts, cuts, marks, windows.
#![expect(missing_docs, reason = "the name of a label says what is said")]

use super::Label;
use super::page::{phases_english, phases_spanish};
use crate::Tongue;
use jointwright_joint::said::{Language, PartKind};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A label of a leg on the page of a plan.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PlanLegLabel {
    Legs {
        names: Vec<String>,
        n_phases: i64,
        cable: String,
    },
    Leg {
        leg: String,
        port: Option<i64>,
        to: Option<String>,
    },
    Part {
        kind: PartKind,
        id: String,
        side: Option<String>,
        paper: String,
        may_move: Option<String>,
    },
    ConnectorEnd {
        end: String,
    },
    PressesHere {
        n: i64,
    },
    PressesAnEnd {
        n: i64,
    },
    WhichEndNotKnown {
        why: String,
    },
    MouthGrows {
        least: String,
        most: String,
        source: String,
    },
    NotKnown {
        what: Vec<String>,
    },
    Blank {
        port: i64,
        plug: Option<String>,
    },
    Line(LegLine),
    Stop(LegStop),
    Cut(LegCutLabel),
}

/// A line that stands by itself.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LegLine {
    BodyParksHere,
    MeasureFrom,
    SetOffBefore,
    ForTheEngineer,
    Pressed,
    Shield,
    UnderLoad,
}

/// Reasons why work stops on a leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LegStop {
    SomethingHere,
    AnotherLeg,
    NobodyNamedToPark,
    GoesOnBy { word: String, said: String },
    StopAndCall { whom: String, said: String },
    UntilSaid,
}

/// A label of a cut or mark.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LegCutLabel {
    Withheld,
    NotYet,
    MillimetresOnly,
    GrowthOfThisEnd,
    GrowthOfSleeve,
    ThisEndGrew,
    SleeveGrew,
    CutAt,
}

impl Label for PlanLegLabel {
    fn text(&self, tongue: Tongue) -> String {
        match tongue.language {
            Language::English => english(self, tongue),
            Language::Spanish => spanish(self, tongue),
        }
    }
}

fn english(label: &PlanLegLabel, tongue: Tongue) -> String {
    match label {
        PlanLegLabel::Legs {
            names,
            n_phases,
            cable,
        } => {
            let legs = if names.len() == 1 { "LEG" } else { "LEGS" };
            format!(
                "{legs} {}, {}: {cable}",
                names.join(", "),
                phases_english(*n_phases)
            )
        }
        PlanLegLabel::Leg { leg, port, to } => {
            let port = port.map(|port| format!(", bus port {port}"));
            let to = to.as_ref().map(|to| format!(" goes to {to}"));
            let (port, to) = (port.unwrap_or_default(), to.unwrap_or_default());
            format!("leg {leg}{port}{to}")
        }
        PlanLegLabel::Part {
            kind,
            id,
            side,
            paper,
            may_move,
        } => {
            let side = side.as_ref().map(|side| format!(", side {side}"));
            let moves = may_move.as_ref().map(|m| format!("; may be moved: {m}"));
            let (side, moves) = (side.unwrap_or_default(), moves.unwrap_or_default());
            format!("{}: {id}{side} ({paper}){moves}", tongue.part(*kind))
        }
        PlanLegLabel::ConnectorEnd { end } => format!("end {end}"),
        PlanLegLabel::PressesHere { n } => format!("{n} presses at this end"),
        PlanLegLabel::PressesAnEnd { n } => format!("{n} presses an end"),
        PlanLegLabel::WhichEndNotKnown { why } => format!("WHICH END IS NOT KNOWN: {why}"),
        PlanLegLabel::MouthGrows {
            least,
            most,
            source,
        } => format!(
            "each mouth grows {least} to {most} mm ({source}); the insulation cut holds that already"
        ),
        PlanLegLabel::NotKnown { what } => {
            format!("Not known: {} (questions in plan.json).", what.join("; "))
        }
        PlanLegLabel::Blank { port, plug } => {
            let plug = plug.as_deref().unwrap_or("NO PLUG IS NAMED");
            format!("PORT {port}, blank: insulating plug {plug}")
        }
        PlanLegLabel::Line(line) => line_english(*line).to_owned(),
        PlanLegLabel::Stop(stop) => stop_english(stop),
        PlanLegLabel::Cut(cut) => cut_english(*cut).to_owned(),
    }
}

const fn line_english(line: LegLine) -> &'static str {
    match line {
        LegLine::BodyParksHere => {
            "The body parks on this leg: it is on before the connector is made."
        }
        LegLine::MeasureFrom => "Measure from the square-cut conductor end, back along the cable.",
        LegLine::SetOffBefore => "Set off every mark before the connector is made.",
        LegLine::ForTheEngineer => {
            "For the engineer, mm                planned  least  most  widest share"
        }
        LegLine::Pressed => "Pressed on the cable, for the engineer",
        LegLine::Shield => "Shield beyond the joint, for the engineer",
        LegLine::UnderLoad => "UNDER LOAD, FOR THE ENGINEER",
    }
}

fn stop_english(stop: &LegStop) -> String {
    match stop {
        LegStop::SomethingHere => {
            "STOP: SOMETHING HERE IS OUT OF WINDOW. CUT NOTHING. READ IT BELOW, THEN CALL."
                .to_owned()
        }
        LegStop::AnotherLeg => {
            "STOP: ANOTHER LEG IS OUT OF WINDOW. CUT NOTHING. READ IT BELOW, THEN CALL.".to_owned()
        }
        LegStop::NobodyNamedToPark => {
            "NO LEG IS NAMED TO PARK THE BODY: settle it before any connector is made.".to_owned()
        }
        LegStop::GoesOnBy { word, said } => format!("Work goes on by the word of {word}. {said}"),
        LegStop::StopAndCall { whom, said } => format!("STOP AND CALL: {whom}: {said}"),
        LegStop::UntilSaid => {
            "STOP: CUT NOTHING HERE UNTIL A NAMED PERSON HAS SAID WHAT IT IS.".to_owned()
        }
    }
}

const fn cut_english(cut: LegCutLabel) -> &'static str {
    match cut {
        LegCutLabel::Withheld => "withheld",
        LegCutLabel::NotYet => "not yet",
        LegCutLabel::MillimetresOnly => "mm only",
        LegCutLabel::GrowthOfThisEnd => {
            "Choose no row by guess; between two rows, use none: press a trial,\nwrite it into the job and plan again. Growth is of this end, pressed alone."
        }
        LegCutLabel::GrowthOfSleeve => {
            "Choose no row by guess; between two rows, use none: press a trial,\nwrite it into the job and plan again. Growth is of the whole sleeve."
        }
        LegCutLabel::ThisEndGrew => "this end grew",
        LegCutLabel::SleeveGrew => "sleeve grew",
        LegCutLabel::CutAt => "cut at",
    }
}

fn spanish(label: &PlanLegLabel, tongue: Tongue) -> String {
    match label {
        PlanLegLabel::Legs {
            names,
            n_phases,
            cable,
        } => {
            let legs = if names.len() == 1 { "RAMAL" } else { "RAMALES" };
            format!(
                "{legs} {}, {}: {cable}",
                names.join(", "),
                phases_spanish(*n_phases)
            )
        }
        PlanLegLabel::Leg { leg, port, to } => {
            let port = port.map(|port| format!(", puerto {port} de la barra"));
            let to = to.as_ref().map(|to| format!(" va a {to}"));
            let (port, to) = (port.unwrap_or_default(), to.unwrap_or_default());
            format!("ramal {leg}{port}{to}")
        }
        PlanLegLabel::Part {
            kind,
            id,
            side,
            paper,
            may_move,
        } => {
            let side = side.as_ref().map(|side| format!(", lado {side}"));
            let moves = may_move.as_ref().map(|m| format!("; se puede mover: {m}"));
            let (side, moves) = (side.unwrap_or_default(), moves.unwrap_or_default());
            format!("{}: {id}{side} ({paper}){moves}", tongue.part(*kind))
        }
        PlanLegLabel::ConnectorEnd { end } => format!("extremo {end}"),
        PlanLegLabel::PressesHere { n: 1 } => "1 prensada en este extremo".to_owned(),
        PlanLegLabel::PressesHere { n } => format!("{n} prensadas en este extremo"),
        PlanLegLabel::PressesAnEnd { n: 1 } => "1 prensada por extremo".to_owned(),
        PlanLegLabel::PressesAnEnd { n } => format!("{n} prensadas por extremo"),
        PlanLegLabel::WhichEndNotKnown { why } => format!("NO SE SABE QUÉ EXTREMO ES: {why}"),
        PlanLegLabel::MouthGrows {
            least,
            most,
            source,
        } => format!(
            "cada boca se alarga de {least} a {most} mm ({source}); el corte del aislamiento ya lo incluye"
        ),
        PlanLegLabel::NotKnown { what } => {
            format!(
                "No se conoce: {} (preguntas en plan.json).",
                what.join("; ")
            )
        }
        PlanLegLabel::Blank { port, plug } => {
            let plug = plug.as_deref().unwrap_or("NO SE NOMBRA NINGÚN TAPÓN");
            format!("PUERTO {port}, sin ramal: tapón aislante {plug}")
        }
        PlanLegLabel::Line(line) => line_spanish(*line).to_owned(),
        PlanLegLabel::Stop(stop) => stop_spanish(stop),
        PlanLegLabel::Cut(cut) => cut_spanish(*cut).to_owned(),
    }
}

const fn line_spanish(line: LegLine) -> &'static str {
    match line {
        LegLine::BodyParksHere => {
            "El cuerpo se estaciona en este ramal: está puesto antes de instalar el conector."
        }
        LegLine::MeasureFrom => {
            "Mida desde el extremo del conductor, cortado a escuadra, hacia atrás."
        }
        LegLine::SetOffBefore => "Trace todas las marcas antes de instalar el conector.",
        LegLine::ForTheEngineer => {
            "Para el ingeniero, mm              previsto   mín.  máx.  mayor parte"
        }
        LegLine::Pressed => "Presión sobre el cable, para el ingeniero",
        LegLine::Shield => "Pantalla metálica más allá del empalme, para el ingeniero",
        LegLine::UnderLoad => "CON CARGA, PARA EL INGENIERO",
    }
}

fn stop_spanish(stop: &LegStop) -> String {
    match stop {
        LegStop::SomethingHere => {
            "PARE: AQUÍ HAY ALGO FUERA DE RANGO. NO CORTE NADA. LÉALO ABAJO Y LLAME.".to_owned()
        }
        LegStop::AnotherLeg => {
            "PARE: OTRO RAMAL ESTÁ FUERA DE RANGO. NO CORTE NADA. LÉALO ABAJO Y LLAME.".to_owned()
        }
        LegStop::NobodyNamedToPark => {
            "NO SE NOMBRA EL RAMAL QUE ESTACIONA EL CUERPO: decídalo antes de hacer ningún conector."
                .to_owned()
        }
        LegStop::GoesOnBy { word, said } => {
            format!("El trabajo sigue por la palabra de {word}. {said}")
        }
        LegStop::StopAndCall { whom, said } => format!("PARE Y LLAME: {whom}: {said}"),
        LegStop::UntilSaid => {
            "PARE: NO CORTE NADA AQUÍ HASTA QUE UNA PERSONA DESIGNADA DIGA QUÉ ES.".to_owned()
        }
    }
}

const fn cut_spanish(cut: LegCutLabel) -> &'static str {
    match cut {
        LegCutLabel::Withheld => "retenido",
        LegCutLabel::NotYet => "aún no",
        LegCutLabel::MillimetresOnly => "solo mm",
        LegCutLabel::GrowthOfThisEnd => {
            "No elija fila por tanteo; entre dos filas, ninguna: haga una prensada\nde prueba, anótela en el trabajo y planifique otra vez. El alargamiento\nes el de este extremo, prensado solo."
        }
        LegCutLabel::GrowthOfSleeve => {
            "No elija fila por tanteo; entre dos filas, ninguna: haga una prensada\nde prueba, anótela en el trabajo y planifique otra vez. El alargamiento\nes el de todo el manguito."
        }
        LegCutLabel::ThisEndGrew => "se alargó",
        LegCutLabel::SleeveGrew => "se alargó",
        LegCutLabel::CutAt => "corte a",
    }
}
