//! Labels of the page of fields, and of their table on the page of a plan.
#![expect(missing_docs, reason = "the name of a label says what is said")]

use super::Label;
use crate::Tongue;
use jointwright_joint::plan::{GapState, StateDoc};
use jointwright_joint::said::Language;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A label of the page of fields.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum FieldPageLabel {
    DecidesNothing,
    Title { job: String },
    WorstOfWindows,
    Leg { leg: String, cable: String },
    BodyLeftOpen,
    Withheld,
    GapWith { state: GapState, with: String },
    EarthFault { kv: f64 },
    Passing { n: usize },
    Table(FieldTableLabel),
}

/// A label of the table of fields.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum FieldTableLabel {
    FieldOf { leg: String },
    ToEarth { voltage_kv: f64 },
    ToEarthTrial { voltage_kv: f64 },
    Here,
    WorstAllowed,
    PlugNot { state: StateDoc, why: String },
    Plug { voltage_kv: f64 },
    GapBeforeEdge { what: GapState },
    FilmOfPlug { what: GapState },
    MayDischarge,
    AsComputed { inception_kv: f64 },
    NotSettled,
}

impl Label for FieldPageLabel {
    fn text(&self, tongue: Tongue) -> String {
        match tongue.language {
            Language::English => english(self, tongue),
            Language::Spanish => spanish(self, tongue),
        }
    }
}

fn english(label: &FieldPageLabel, tongue: Tongue) -> String {
    match label {
        FieldPageLabel::DecidesNothing => "Computed from the dimensions given; decides nothing. The parts' own instructions prevail.".to_owned(),
        FieldPageLabel::Title { job } => format!("{job}: electric field"),
        FieldPageLabel::WorstOfWindows => {
            "Worst of what the windows and readings of each leg leave open.".to_owned()
        }
        FieldPageLabel::Leg { leg, cable } => format!("LEG {leg}: {cable}"),
        FieldPageLabel::BodyLeftOpen => "its body is left open".to_owned(),
        FieldPageLabel::Withheld => {
            "At which cuts each is so is withheld: this joint fails, or work stops.".to_owned()
        }
        FieldPageLabel::GapWith { state, with } => format!("gap {}: {with}", state.word()),
        FieldPageLabel::EarthFault { kv } => format!("While an earth fault is cleared {kv:.2} kV rms stand between conductor and earth; gaps are held against that too."),
        FieldPageLabel::Passing { n } => format!("{n} in window"),
        FieldPageLabel::Table(label) => table_english(label, tongue),
    }
}

fn table_english(label: &FieldTableLabel, tongue: Tongue) -> String {
    match label {
        FieldTableLabel::FieldOf { leg } => format!("Field of leg {leg}"),
        FieldTableLabel::ToEarth { voltage_kv } => {
            format!("kV/mm rms at {voltage_kv:.2} kV rms to earth")
        }
        FieldTableLabel::ToEarthTrial { voltage_kv } => {
            format!("kV/mm rms at {voltage_kv:.2} kV rms to earth, trial")
        }
        FieldTableLabel::Here => "here".to_owned(),
        FieldTableLabel::WorstAllowed => "worst allowed".to_owned(),
        FieldTableLabel::PlugNot { state, why } => {
            format!("tapered plug, {}: {why}", tongue.state(*state))
        }
        FieldTableLabel::Plug { voltage_kv } => {
            format!("tapered plug, kV/mm rms at {voltage_kv:.2} kV")
        }
        FieldTableLabel::GapBeforeEdge { what } => {
            format!("gap before the edge, {}:", tongue.gap(*what))
        }
        FieldTableLabel::FilmOfPlug { what } => {
            format!("film of the plug, {}:", tongue.gap(*what))
        }
        FieldTableLabel::MayDischarge => "may discharge at".to_owned(),
        FieldTableLabel::AsComputed { inception_kv } => {
            format!("{inception_kv:>8.1} kV rms, as computed")
        }
        FieldTableLabel::NotSettled => "? did not come as close as asked; not judged".to_owned(),
    }
}

fn spanish(label: &FieldPageLabel, tongue: Tongue) -> String {
    match label {
        FieldPageLabel::DecidesNothing => "Calculado a partir de las medidas dadas; no decide nada. Prevalecen las instrucciones propias de las piezas.".to_owned(),
        FieldPageLabel::Title { job } => format!("{job}: campo eléctrico"),
        FieldPageLabel::WorstOfWindows => {
            "El peor caso que dejan abierto los rangos permitidos y las lecturas de cada ramal.".to_owned()
        }
        FieldPageLabel::Leg { leg, cable } => format!("RAMAL {leg}: {cable}"),
        FieldPageLabel::BodyLeftOpen => "su cuerpo está sin elegir".to_owned(),
        FieldPageLabel::Withheld => "No se dice con qué cortes es así: este empalme no cumple, o el trabajo se detiene.".to_owned(),
        FieldPageLabel::GapWith { state, with } => format!(
            "hueco {}: {with}",
            match state {
                GapState::Filled => "con relleno",
                GapState::Empty => "sin relleno (con aire)",
            }
        ),
        FieldPageLabel::EarthFault { kv } => format!("Mientras se despeja una falla a tierra, entre conductor y tierra hay {kv:.2} kV eficaces; los huecos se comparan también con eso."),
        FieldPageLabel::Passing { n } => format!("{n} dentro de rango"),
        FieldPageLabel::Table(label) => table_spanish(label, tongue),
    }
}

fn table_spanish(label: &FieldTableLabel, tongue: Tongue) -> String {
    match label {
        FieldTableLabel::FieldOf { leg } => format!("Campo del ramal {leg}"),
        FieldTableLabel::ToEarth { voltage_kv } => {
            format!("kV/mm eficaces con {voltage_kv:.2} kV a tierra")
        }
        FieldTableLabel::ToEarthTrial { voltage_kv } => {
            format!("kV/mm eficaces con {voltage_kv:.2} kV a tierra, ensayo")
        }
        FieldTableLabel::Here => "aquí".to_owned(),
        FieldTableLabel::WorstAllowed => "peor permitido".to_owned(),
        FieldTableLabel::PlugNot { state, why } => {
            format!("tapón cónico, {}: {why}", tongue.state(*state))
        }
        FieldTableLabel::Plug { voltage_kv } => {
            format!("tapón cónico, kV/mm eficaces con {voltage_kv:.2} kV")
        }
        FieldTableLabel::GapBeforeEdge { what } => {
            format!("hueco antes del borde, {}:", tongue.gap(*what))
        }
        FieldTableLabel::FilmOfPlug { what } => {
            format!("película del tapón, {}:", tongue.gap(*what))
        }
        FieldTableLabel::MayDischarge => "puede descargar con".to_owned(),
        FieldTableLabel::AsComputed { inception_kv } => {
            format!("{inception_kv:>8.1} kV eficaces, calculado")
        }
        FieldTableLabel::NotSettled => "? no llegó a la exactitud pedida; sin juzgar".to_owned(),
    }
}
