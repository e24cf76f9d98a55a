//! Labels of the page of a rating.
#![expect(missing_docs, reason = "the name of a label says what is said")]

use super::Label;
use crate::Tongue;
use jointwright_joint::plan::LimitOf;
use jointwright_joint::said::Language;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A label of the page of a rating.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum RatePageLabel {
    Title { job: String },
    NoPicture,
    DecidesNothing,
    Leg { leg: String },
    Surroundings,
    Limit { of: LimitOf },
    Loads(LoadsLabel),
    Governs(GovernsLabel),
    Lasting(LastingLabel),
}

/// A label of the table of loads and temperatures.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LoadsLabel {
    Title,
    Head,
    Columns,
    Exceeds,
}

/// A label of which limit comes first.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum GovernsLabel {
    Title,
    WithoutLoad {
        leg: String,
        what: String,
    },
    AtLoad {
        leg: String,
        what: String,
        load_a: f64,
        ratio: f64,
    },
    NoLoad {
        leg: String,
        what: String,
    },
    BodyStatesNone {
        leg: String,
    },
}

/// A label of how long loads may flow.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LastingLabel {
    Title,
    Head,
    Over,
    ToLimit,
}

impl Label for RatePageLabel {
    fn text(&self, tongue: Tongue) -> String {
        match tongue.language {
            Language::English => english(self),
            Language::Spanish => spanish(self),
        }
    }
}

fn english(label: &RatePageLabel) -> String {
    match label {
        RatePageLabel::Title { job } => format!("{job}: temperatures that the load brings"),
        RatePageLabel::NoPicture => "No picture: no temperature is computed.".to_owned(),
        RatePageLabel::DecidesNothing => "Computed from what is stated; decides nothing. The parts' own instructions, the owner's rules and the persons named for it prevail. A joint that was made otherwise than planned gets otherwise warm.".to_owned(),
        RatePageLabel::Leg { leg } => format!("LEG {leg}"),
        RatePageLabel::Surroundings => "SURROUNDINGS, AS STATED OR AS COMPUTED".to_owned(),
        RatePageLabel::Limit { of } => of.word().to_owned(),
        RatePageLabel::Loads(label) => loads_english(label),
        RatePageLabel::Governs(label) => governs_english(label),
        RatePageLabel::Lasting(label) => lasting_english(label),
    }
}

fn loads_english(label: &LoadsLabel) -> String {
    match label {
        LoadsLabel::Title => "LOADS ALL THE TIME, AND TEMPERATURES IN DEGREES CELSIUS".to_owned(),
        LoadsLabel::Head => format!(
            "{:>6}  {:<4}{:>7}{:>8}{:>8}{:>8}{:>8}   {}",
            "times", "leg", "A", "joint", "rubber", "cable", "beyond", "exceeds"
        ),
        LoadsLabel::Columns => "times: the job's load. joint: hottest conductor inside the body. cable: the same of this leg's cable, going through there without a joint. beyond: hottest conductor beyond the body. Each may be off by a hundredth of its rise, after a time by two.".to_owned(),
        LoadsLabel::Exceeds => "exceeds: limits of bodies by their papers and of the job that are passed; an empty place says nothing of other limits, and permits nothing.".to_owned(),
    }
}

fn governs_english(label: &GovernsLabel) -> String {
    match label {
        GovernsLabel::Title => "WHICH LIMIT COMES FIRST, ALL LOADS IN PROPORTION".to_owned(),
        GovernsLabel::WithoutLoad { leg, what } => {
            format!("leg {leg}: {what}: passed without any load, by its surroundings")
        }
        GovernsLabel::AtLoad {
            leg,
            what,
            load_a,
            ratio,
        } => format!("leg {leg}: {what}: {load_a:.0} A, {ratio:.2} times the job's load"),
        GovernsLabel::NoLoad { leg, what } => format!("leg {leg}: {what}: no load found"),
        GovernsLabel::BodyStatesNone { leg } => format!(
            "leg {leg}: its body states no temperature: not judged, whatever its cable may bear"
        ),
    }
}

fn lasting_english(label: &LastingLabel) -> String {
    match label {
        LastingLabel::Title => "EMERGENCIES, FROM THE JOB'S LOAD AT REST".to_owned(),
        LastingLabel::Head => format!(
            "{:>6}  {:>10}  {:<12} A of each leg",
            "times", "to limit", "of"
        ),
        LastingLabel::Over => "over 72 h".to_owned(),
        LastingLabel::ToLimit => "to limit: until the conductor inside a body comes to the temperature that its paper gives for an emergency, or that of a cable to the highest in service by the job. Two hundredths of the rise more or less can be a tenth of such a time, near a load that is borne for long much more.".to_owned(),
    }
}

fn spanish(label: &RatePageLabel) -> String {
    match label {
        RatePageLabel::Title { job } => format!("{job}: temperaturas que trae la carga"),
        RatePageLabel::NoPicture => "Sin dibujo: no se calcula ninguna temperatura.".to_owned(),
        RatePageLabel::DecidesNothing => "Calculado a partir de lo indicado; no decide nada. Prevalecen las instrucciones propias de las piezas, las reglas del propietario y las personas designadas para ello. Un empalme que no se hizo como dice el plan se calienta de otro modo.".to_owned(),
        RatePageLabel::Leg { leg } => format!("RAMAL {leg}"),
        RatePageLabel::Surroundings => "LO QUE LO RODEA, INDICADO O CALCULADO".to_owned(),
        RatePageLabel::Limit { of } => match of {
            LimitOf::Joint => "empalme".to_owned(),
            LimitOf::Cable => "cable".to_owned(),
        },
        RatePageLabel::Loads(label) => loads_spanish(label),
        RatePageLabel::Governs(label) => governs_spanish(label),
        RatePageLabel::Lasting(label) => lasting_spanish(label),
    }
}

fn loads_spanish(label: &LoadsLabel) -> String {
    match label {
        LoadsLabel::Title => "CARGA CONTINUA, Y TEMPERATURAS EN GRADOS CELSIUS".to_owned(),
        LoadsLabel::Head => format!(
            "{:>6}  {:<5}{:>6}{:>8}{:>8}{:>8}{:>8}   {}",
            "veces", "ramal", "A", "empalme", "goma", "cable", "fuera", "supera"
        ),
        LoadsLabel::Columns => "veces: la carga del trabajo. empalme: el conductor más caliente dentro del cuerpo. cable: lo mismo del cable de este ramal, si pasara por allí sin empalme. fuera: el conductor más caliente más allá del cuerpo. Cada valor puede tener un error de una centésima de su aumento; en una emergencia, de dos.".to_owned(),
        LoadsLabel::Exceeds => "supera: límites de los cuerpos según sus documentos y del trabajo que se sobrepasan; una casilla vacía no dice nada de otros límites, y no permite nada.".to_owned(),
    }
}

fn governs_spanish(label: &GovernsLabel) -> String {
    match label {
        GovernsLabel::Title => {
            "QUÉ LÍMITE LLEGA PRIMERO, CON TODAS LAS CARGAS EN PROPORCIÓN".to_owned()
        }
        GovernsLabel::WithoutLoad { leg, what } => {
            format!("ramal {leg}: {what}: se sobrepasa sin carga alguna, por lo que lo rodea")
        }
        GovernsLabel::AtLoad {
            leg,
            what,
            load_a,
            ratio,
        } => {
            format!("ramal {leg}: {what}: {load_a:.0} A, {ratio:.2} veces la carga del trabajo")
        }
        GovernsLabel::NoLoad { leg, what } => {
            format!("ramal {leg}: {what}: no se halló ninguna carga")
        }
        GovernsLabel::BodyStatesNone { leg } => format!(
            "ramal {leg}: su cuerpo no indica ninguna temperatura: sin juzgar, soporte lo que soporte su cable"
        ),
    }
}

fn lasting_spanish(label: &LastingLabel) -> String {
    match label {
        LastingLabel::Title => "EMERGENCIAS, DESDE LA CARGA DEL TRABAJO EN RÉGIMEN ESTABLE".to_owned(),
        LastingLabel::Head => format!(
            "{:>6}  {:>10}  {:<12} A de cada ramal",
            "veces", "al límite", "de"
        ),
        LastingLabel::Over => "más de 72 h".to_owned(),
        LastingLabel::ToLimit => "al límite: hasta que el conductor dentro de un cuerpo llega a la temperatura que su documento da para una emergencia, o el de un cable a la más alta en servicio según el trabajo. Dos centésimas más o menos del aumento pueden ser una décima de ese tiempo; cerca de una carga que se soporta mucho tiempo, mucho más.".to_owned(),
    }
}
