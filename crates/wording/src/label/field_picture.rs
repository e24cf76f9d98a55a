//! Labels of pictures of a field.
#![expect(missing_docs, reason = "the name of a label says what is said")]

use super::Label;
use crate::Tongue;
use jointwright_joint::said::{Language, Quantity};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A label of a picture of a field; lengths have their units.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum FieldLabel {
    Undecided,
    Unjudged,
    TangentialField,
    GreatestFields,
    AndMoreOf {
        n: usize,
    },
    NotMarked {
        label: String,
    },
    DashedLine {
        label: String,
    },
    FullLine {
        label: String,
    },
    MarkedPlaces,
    AndMore,
    ThisLeg,
    WorstAllowed,
    Title {
        mark: String,
        leg: String,
        kv: String,
    },
    OfPlan {
        job: String,
        issue: String,
    },
    OfPlanThatFails {
        job: String,
        issue: String,
    },
    EdgeInField {
        diameter: String,
        edge: String,
    },
    EdgeCovered {
        diameter: String,
    },
    Peak {
        quantity: Quantity,
    },
    AlongLayer,
    /// A region of the section, by its name in the section.
    Region {
        name: String,
    },
}

/// A label of the scales of a picture of a field, and of what its shading and lines mean.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum FieldLegend {
    Axis,
    AlongAxis,
    AcrossAxis,
    AndAbove,
    AndAboveInShort,
    AndAboveDarker,
    FlatBands,
    HatchedInShort,
    Hatched {
        scale: String,
    },
    OneScaleInShort,
    OneScale,
    StretchedInShort {
        ratio: f64,
    },
    Stretched {
        ratio: f64,
    },
    ThinLines {
        of: Potential,
        least_kv: String,
        greatest_kv: String,
    },
    Lines {
        of: Potential,
        least_kv: String,
        greatest_kv: String,
    },
}

/// Potential of which lines are drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Potential {
    Real,
    Modulus,
}

impl Label for FieldLegend {
    fn text(&self, tongue: Tongue) -> String {
        match tongue.language {
            Language::English => english_legend(self),
            Language::Spanish => spanish_legend(self),
        }
    }
}

impl Label for FieldLabel {
    fn text(&self, tongue: Tongue) -> String {
        match tongue.language {
            Language::English => english(self),
            Language::Spanish => spanish(self),
        }
    }
}

const fn english_potential(of: Potential) -> &'static str {
    match of {
        Potential::Real => "potential",
        Potential::Modulus => "modulus of the potential",
    }
}

fn english(label: &FieldLabel) -> String {
    match label {
        FieldLabel::Undecided => "Computed from the dimensions given; decides nothing.".to_owned(),
        FieldLabel::Unjudged => "Computed from the drawing given; nobody has judged it.".to_owned(),
        FieldLabel::TangentialField => "Tangential field along the interface, kV/mm".to_owned(),
        FieldLabel::GreatestFields => "Greatest fields, kV/mm".to_owned(),
        FieldLabel::AndMoreOf { n } => format!("and {n} more"),
        FieldLabel::NotMarked { label } => format!("(not marked) {label}"),
        FieldLabel::DashedLine { label } => format!("Dashed line: {label}."),
        FieldLabel::FullLine { label } => format!("Full line: {label}."),
        FieldLabel::MarkedPlaces => "Marked places".to_owned(),
        FieldLabel::AndMore => "and more".to_owned(),
        FieldLabel::ThisLeg => "this leg".to_owned(),
        FieldLabel::WorstAllowed => "worst the instructions allow".to_owned(),
        FieldLabel::Title { mark, leg, kv } => {
            format!("{mark}, leg {leg}: field at {kv} kV rms between conductor and earth")
        }
        FieldLabel::OfPlan { job, issue } => format!("job {job}, {issue}."),
        FieldLabel::OfPlanThatFails { job, issue } => {
            format!("job {job}, {issue}. THIS JOINT FAILS ITS PLAN.")
        }
        FieldLabel::EdgeInField { diameter, edge } => format!(
            "The state with the strongest field along the interface; other fields may be worst in another. {diameter} over the insulation; screen edge at z = {edge}, the diagram ends half a millimetre before it; z from the body's datum"
        ),
        FieldLabel::EdgeCovered { diameter } => format!(
            "The state with the strongest field along the interface; other fields may be worst in another. {diameter} over the insulation; the deflector covers the screen edge; z from the body's datum"
        ),
        FieldLabel::Peak { quantity } => match quantity {
            Quantity::Interface => "along the cable",
            Quantity::ElectrodeEnd => "electrode end",
            Quantity::DeflectorTip => "deflector tip",
            Quantity::DeflectorHeel => "deflector heel",
            Quantity::ScreenEdge => "before the edge",
        }
        .to_owned(),
        FieldLabel::AlongLayer => "along the layer".to_owned(),
        FieldLabel::Region { name } => name.clone(),
    }
}

fn english_legend(label: &FieldLegend) -> String {
    match label {
        FieldLegend::Axis => "axis".to_owned(),
        FieldLegend::AlongAxis => "z in mm, along the axis".to_owned(),
        FieldLegend::AcrossAxis => "r in mm".to_owned(),
        FieldLegend::AndAbove => "and above".to_owned(),
        FieldLegend::AndAboveInShort => "and above; |E|, kV/mm".to_owned(),
        FieldLegend::AndAboveDarker => {
            "and above: field strength |E| in kV/mm, darker is stronger".to_owned()
        }
        FieldLegend::FlatBands => "Field strength |E| in kV/mm, flat bands:".to_owned(),
        FieldLegend::HatchedInShort => "Hatched: no field computed.".to_owned(),
        FieldLegend::Hatched { scale } => format!(
            "Hatched: conductors, and whatever lies outside of the section; no field is computed there. {scale}"
        ),
        FieldLegend::OneScaleInShort => "r and z to one scale.".to_owned(),
        FieldLegend::OneScale => "r and z are drawn to the same scale.".to_owned(),
        FieldLegend::StretchedInShort { ratio } => format!("r drawn {ratio} times z."),
        FieldLegend::Stretched { ratio } => {
            format!("r is drawn {ratio} times as large as z; angles are not true.")
        }
        FieldLegend::ThinLines {
            of,
            least_kv,
            greatest_kv,
        } => format!(
            "Thin lines: {} in tenths, from 0 % at {least_kv} kV to 100 % at {greatest_kv} kV. Thick: conductors of given or floating potential.",
            english_potential(*of)
        ),
        FieldLegend::Lines {
            of,
            least_kv,
            greatest_kv,
        } => format!(
            "Lines: {} in tenths, from 0 % at {least_kv} kV to 100 % at {greatest_kv} kV. Thick: conductors of given or floating potential.",
            english_potential(*of)
        ),
    }
}

const fn spanish_potential(of: Potential) -> &'static str {
    match of {
        Potential::Real => "potencial",
        Potential::Modulus => "módulo del potencial",
    }
}

fn spanish(label: &FieldLabel) -> String {
    match label {
        FieldLabel::Undecided => "Calculado con las dimensiones dadas; no decide nada.".to_owned(),
        FieldLabel::Unjudged => "Calculado con el dibujo dado; nadie lo ha juzgado.".to_owned(),
        FieldLabel::TangentialField => {
            "Campo tangencial a lo largo de la superficie, kV/mm".to_owned()
        }
        FieldLabel::GreatestFields => "Campos mayores, kV/mm".to_owned(),
        FieldLabel::AndMoreOf { n } => format!("y {n} más"),
        FieldLabel::NotMarked { label } => format!("(sin marcar) {label}"),
        FieldLabel::DashedLine { label } => format!("Línea a trazos: {label}."),
        FieldLabel::FullLine { label } => format!("Línea continua: {label}."),
        FieldLabel::MarkedPlaces => "Puntos marcados".to_owned(),
        FieldLabel::AndMore => "y más".to_owned(),
        FieldLabel::ThisLeg => "este ramal".to_owned(),
        FieldLabel::WorstAllowed => "el peor que permiten las instrucciones".to_owned(),
        FieldLabel::Title { mark, leg, kv } => {
            format!("{mark}, ramal {leg}: campo a {kv} kV eficaces entre conductor y tierra")
        }
        FieldLabel::OfPlan { job, issue } => format!("trabajo {job}, {issue}."),
        FieldLabel::OfPlanThatFails { job, issue } => {
            format!("trabajo {job}, {issue}. ESTE EMPALME NO CUMPLE SU PLAN.")
        }
        FieldLabel::EdgeInField { diameter, edge } => format!(
            "El estado con el campo más fuerte a lo largo de la superficie; otros campos pueden ser peores en otro. {diameter} sobre el aislamiento; borde de la pantalla a z = {edge}, el diagrama termina medio milímetro antes; z desde el origen del cuerpo"
        ),
        FieldLabel::EdgeCovered { diameter } => format!(
            "El estado con el campo más fuerte a lo largo de la superficie; otros campos pueden ser peores en otro. {diameter} sobre el aislamiento; el deflector cubre el borde de la pantalla; z desde el origen del cuerpo"
        ),
        FieldLabel::Peak { quantity } => match quantity {
            Quantity::Interface => "a lo largo del cable",
            Quantity::ElectrodeEnd => "extremo del electrodo",
            Quantity::DeflectorTip => "punta del deflector",
            Quantity::DeflectorHeel => "talón del deflector",
            Quantity::ScreenEdge => "antes del borde",
        }
        .to_owned(),
        FieldLabel::AlongLayer => "a lo largo de la capa".to_owned(),
        FieldLabel::Region { name } => spanish_region(name).to_owned(),
    }
}

fn spanish_legend(label: &FieldLegend) -> String {
    match label {
        FieldLegend::Axis => "eje".to_owned(),
        FieldLegend::AlongAxis => "z en mm, a lo largo del eje".to_owned(),
        FieldLegend::AcrossAxis => "r en mm".to_owned(),
        FieldLegend::AndAbove => "y más".to_owned(),
        FieldLegend::AndAboveInShort => "y más; |E|, kV/mm".to_owned(),
        FieldLegend::AndAboveDarker => {
            "y más: intensidad de campo |E| en kV/mm, más oscuro es más fuerte".to_owned()
        }
        FieldLegend::FlatBands => "Intensidad de campo |E| en kV/mm, franjas planas:".to_owned(),
        FieldLegend::HatchedInShort => "Rayado: campo no calculado.".to_owned(),
        FieldLegend::Hatched { scale } => format!(
            "Rayado: conductores, y lo que queda fuera de la sección; allí no se calcula ningún campo. {scale}"
        ),
        FieldLegend::OneScaleInShort => "r y z a la misma escala.".to_owned(),
        FieldLegend::OneScale => "r y z están dibujados a la misma escala.".to_owned(),
        FieldLegend::StretchedInShort { ratio } => format!("r dibujado {ratio} veces z."),
        FieldLegend::Stretched { ratio } => format!(
            "r está dibujado {ratio} veces más grande que z; los ángulos no son verdaderos."
        ),
        FieldLegend::ThinLines {
            of,
            least_kv,
            greatest_kv,
        } => format!(
            "Líneas finas: {} en décimos, de 0 % a {least_kv} kV hasta 100 % a {greatest_kv} kV. Gruesas: conductores de potencial dado o flotante.",
            spanish_potential(*of)
        ),
        FieldLegend::Lines {
            of,
            least_kv,
            greatest_kv,
        } => format!(
            "Líneas: {} en décimos, de 0 % a {least_kv} kV hasta 100 % a {greatest_kv} kV. Gruesas: conductores de potencial dado o flotante.",
            spanish_potential(*of)
        ),
    }
}

/// A region of the section in Spanish; one that has no name here keeps its own.
fn spanish_region(name: &str) -> &str {
    match name {
        "insulation of the cable" => "aislamiento del cable",
        "insulation of the body" => "aislamiento del cuerpo",
        "gap before the screen edge" => "hueco antes del borde",
        "adapter" => "adaptador",
        "layer that spreads the field" => "capa que reparte el campo",
        own => own,
    }
}
