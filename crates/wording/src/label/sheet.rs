//! Labels of the make-up sheet behind its front pages.
#![expect(missing_docs, reason = "the name of a label says what is said")]

use super::Label;
use crate::Tongue;
use jointwright_joint::catalogue::PartKind;
use jointwright_joint::material::ItemKind;
use jointwright_joint::plan::GapState;
use jointwright_joint::said::Language;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A label of the make-up sheet; texts in it are the plan's own.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SheetLabel {
    StopOutOfWindow,
    StopUntilSomebodySays,
    CutNothing {
        call: String,
    },
    StopWord,
    NobodySaid,
    Title {
        job: String,
        title: String,
    },
    Made {
        when: String,
    },
    RowJob,
    RowTitle,
    RowKind,
    RowPlace,
    RowDay,
    RowPlan,
    RowIssue,
    RowFingerprint,
    /// At the foot of a page: which it is.
    FootStop,
    FootFront {
        end: String,
    },
    FootStrips {
        leg: String,
    },
    FootBehind,
    StripsHead {
        leg: String,
    },
    /// For those who cannot see a picture.
    StripShows {
        end: String,
        piece: usize,
        n: usize,
    },
    FieldShows {
        leg: String,
    },
    FigureShows {
        leg: String,
    },
    LooksAs {
        leg: String,
        other: String,
    },
    NotKnown,
    GapMayDischarge {
        state: GapState,
    },
    InService {
        kv: String,
    },
    Material {
        kind: ItemKind,
    },
    NotComputedFor {
        why: String,
    },
    Lots {
        lots: Vec<String>,
    },
    StepOfLegs {
        legs: Vec<String>,
        title: String,
    },
    Onto {
        kind: PartKind,
        id: String,
        ends: Vec<String>,
    },
    AsOnFront {
        are_others: bool,
    },
    KeepTo {
        found: String,
        limit: String,
    },
    Between {
        least: String,
        greatest: String,
    },
    Nothing,
}

impl Label for SheetLabel {
    fn text(&self, tongue: Tongue) -> String {
        match tongue.language {
            Language::English => english(tongue, self),
            Language::Spanish => spanish(tongue, self),
        }
    }
}

fn english(tongue: Tongue, label: &SheetLabel) -> String {
    match label {
        SheetLabel::StopOutOfWindow => "Out of window: no number to cut to is printed".to_owned(),
        SheetLabel::StopUntilSomebodySays => {
            "Work stops until a named person has said what this is: no number to cut to is printed"
                .to_owned()
        }
        SheetLabel::CutNothing { call } => format!("CUT NOTHING. CALL {call}."),
        SheetLabel::StopWord => "stop".to_owned(),
        SheetLabel::NobodySaid => "nobody has said which it is".to_owned(),
        SheetLabel::Title { job, title } => format!("Make-up sheet {job}: {title}"),
        SheetLabel::Made { when } => format!("made {when}"),
        SheetLabel::RowJob => "job".to_owned(),
        SheetLabel::RowTitle => "title".to_owned(),
        SheetLabel::RowKind => "kind".to_owned(),
        SheetLabel::RowPlace => "place".to_owned(),
        SheetLabel::RowDay => "day of the work".to_owned(),
        SheetLabel::RowPlan => "this plan".to_owned(),
        SheetLabel::RowIssue => "issue".to_owned(),
        SheetLabel::RowFingerprint => "fingerprint".to_owned(),
        SheetLabel::FootStop => "stop".to_owned(),
        SheetLabel::FootFront { end } => format!("front page of {end}"),
        SheetLabel::FootStrips { leg } => format!("marking strips of leg {leg}"),
        SheetLabel::FootBehind => "behind the front pages".to_owned(),
        SheetLabel::StripsHead { leg } => {
            format!("Marking strips of leg {leg}: print at 100 %, measure the bars, cut out")
        }
        SheetLabel::StripShows { end, piece, n } => format!(
            "Marking strip of {end} at full size, piece {piece} of {n}; its numbers stand on the front page."
        ),
        SheetLabel::FieldShows { leg } => format!(
            "Electric field of leg {leg} at the worst of its windows; its numbers stand in the table above."
        ),
        SheetLabel::FigureShows { leg } => {
            format!("Half-section of leg {leg} as made up; its numbers stand on the front page.")
        }
        SheetLabel::LooksAs { leg, other } => format!("Leg {leg} looks as leg {other} does."),
        SheetLabel::NotKnown => "not known".to_owned(),
        SheetLabel::GapMayDischarge { state } => format!(
            "gap before the screen edge, {}: discharge may begin at, as computed",
            tongue.gap(*state)
        ),
        SheetLabel::InService { kv } => format!("in service {kv} kV rms"),
        SheetLabel::Material { kind } => match kind {
            ItemKind::Trial => "trial".to_owned(),
            kind => tongue.item(*kind).to_owned(),
        },
        SheetLabel::NotComputedFor { why } => format!("not computed: {why}"),
        SheetLabel::Lots { lots } => format!("lots: {}", lots.join(", ")),
        SheetLabel::StepOfLegs { legs, title } => format!("Leg {}: {title}", legs.join(" and ")),
        SheetLabel::Onto { kind, id, ends } => {
            format!("{} {id} onto {}", tongue.part(*kind), ends.join(", "))
        }
        SheetLabel::AsOnFront { are_others: true } => {
            "every other place and window as on the front pages".to_owned()
        }
        SheetLabel::AsOnFront { are_others: false } => {
            "every place and window as on the front pages".to_owned()
        }
        SheetLabel::KeepTo { found, limit } => format!("{found}; to keep to {limit}"),
        SheetLabel::Between { least, greatest } => format!("{least} to {greatest}"),
        SheetLabel::Nothing => "nothing".to_owned(),
    }
}

fn spanish(tongue: Tongue, label: &SheetLabel) -> String {
    match label {
        SheetLabel::StopOutOfWindow => {
            "Fuera de rango: no se imprime ninguna medida de corte".to_owned()
        }
        SheetLabel::StopUntilSomebodySays => {
            "El trabajo se detiene hasta que una persona designada diga qué es esto: no se imprime ninguna medida de corte"
                .to_owned()
        }
        SheetLabel::CutNothing { call } => format!("NO CORTE NADA. LLAME A {call}."),
        SheetLabel::StopWord => "pare".to_owned(),
        SheetLabel::NobodySaid => "nadie ha dicho cuál de los dos es".to_owned(),
        SheetLabel::Title { job, title } => format!("Hoja de empalme {job}: {title}"),
        SheetLabel::Made { when } => format!("hecho {when}"),
        SheetLabel::RowJob => "trabajo".to_owned(),
        SheetLabel::RowTitle => "título".to_owned(),
        SheetLabel::RowKind => "tipo".to_owned(),
        SheetLabel::RowPlace => "lugar".to_owned(),
        SheetLabel::RowDay => "día del trabajo".to_owned(),
        SheetLabel::RowPlan => "este plan".to_owned(),
        SheetLabel::RowIssue => "edición".to_owned(),
        SheetLabel::RowFingerprint => "huella".to_owned(),
        SheetLabel::FootStop => "pare".to_owned(),
        SheetLabel::FootFront { end } => format!("primera página de {end}"),
        SheetLabel::FootStrips { leg } => format!("tiras de marcas del ramal {leg}"),
        SheetLabel::FootBehind => "detrás de las primeras páginas".to_owned(),
        SheetLabel::StripsHead { leg } => {
            format!("Tiras de marcas del ramal {leg}: imprima al 100 %, mida las barras, recorte")
        }
        SheetLabel::StripShows { end, piece, n } => format!(
            "Tira de marcas de {end} a tamaño natural, trozo {piece} de {n}; sus números están en la primera página."
        ),
        SheetLabel::FieldShows { leg } => format!(
            "Campo eléctrico del ramal {leg} en el peor caso de sus rangos permitidos; sus números están en la tabla de arriba."
        ),
        SheetLabel::FigureShows { leg } => format!(
            "Media sección del ramal {leg} ya hecho; sus números están en la primera página."
        ),
        SheetLabel::LooksAs { leg, other } => format!("El ramal {leg} se ve como el ramal {other}."),
        SheetLabel::NotKnown => "no se sabe".to_owned(),
        SheetLabel::GapMayDischarge { state } => format!(
            "hueco antes del borde de la pantalla, {}: la descarga puede empezar, según el cálculo, a",
            tongue.gap(*state)
        ),
        SheetLabel::InService { kv } => format!("en servicio {kv} kV eficaces"),
        SheetLabel::Material { kind } => tongue.item(*kind).to_owned(),
        SheetLabel::NotComputedFor { why } => format!("no calculado: {why}"),
        SheetLabel::Lots { lots } => format!("lotes: {}", lots.join(", ")),
        SheetLabel::StepOfLegs { legs, title } => match legs.as_slice() {
            [leg] => format!("Ramal {leg}: {title}"),
            legs => format!("Ramales {}: {title}", legs.join(" y ")),
        },
        SheetLabel::Onto { kind, id, ends } => {
            format!("{} {id} sobre {}", tongue.part(*kind), ends.join(", "))
        }
        SheetLabel::AsOnFront { are_others: true } => {
            "todas las otras posiciones y rangos permitidos, como en las primeras páginas".to_owned()
        }
        SheetLabel::AsOnFront { are_others: false } => {
            "todas las posiciones y rangos permitidos, como en las primeras páginas".to_owned()
        }
        SheetLabel::KeepTo { found, limit } => format!("{found}; se exige: {limit}"),
        SheetLabel::Between { least, greatest } => format!("{least} a {greatest}"),
        SheetLabel::Nothing => "nada".to_owned(),
    }
}
