//! Labels of the page about readings as built, and the opening of their blank form.
#![expect(missing_docs, reason = "the name of a label says what is said")]

use super::Label;
use crate::Tongue;
use jointwright_joint::built::FindingKind;
use jointwright_joint::said::Language;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A label of the page about readings as built.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum JudgePageLabel {
    Title,
    Count { kind: FindingKind, n: usize },
    InJob { n: usize },
    StopAndCall { name: String, number: String },
    Heading { kind: FindingKind },
    NothingRead { end: String, n: usize },
    Read { read: String },
    Seen { by: String },
    With { with: String, by: String },
    Window { window: String, whose: String },
    NoWindow { whose: String },
    Note { note: String },
    Decided { decided: String },
    Withheld,
    NamedPersonDecides,
    PlanChecks,
    Opening,
}

impl Label for JudgePageLabel {
    fn text(&self, tongue: Tongue) -> String {
        match tongue.language {
            Language::English => english(self),
            Language::Spanish => spanish(self),
        }
    }
}

fn english(label: &JudgePageLabel) -> String {
    let fixed = match label {
        JudgePageLabel::Title => "READINGS AS BUILT, beside the windows of this plan",
        JudgePageLabel::Count { kind, n } => {
            let what = match kind {
                FindingKind::NoWayBack => "out of window, no way back computed: stop and ask",
                FindingKind::StopAndAsk => "out of window: stop and ask",
                FindingKind::CannotTell => "cannot be told: measure again",
                FindingKind::NoWindow => "for which nobody sets a window",
                FindingKind::Missing => "not read",
                FindingKind::InWindow => "in window",
            };
            return format!("{n} {what}");
        }
        JudgePageLabel::InJob { n } => {
            return format!("{n} more stand in the job already; the plan judges those.");
        }
        JudgePageLabel::StopAndCall { name, number } => {
            return format!("Stop this end, and call {name}, {number}.");
        }
        JudgePageLabel::Heading { kind } => match kind {
            FindingKind::NoWayBack => {
                "OUT OF WINDOW, NO WAY BACK THAT THIS PROGRAM CAN COMPUTE: STOP AND ASK"
            }
            FindingKind::StopAndAsk => "OUT OF WINDOW: STOP AND ASK",
            FindingKind::CannotTell => "CANNOT BE TOLD: MEASURE AGAIN",
            FindingKind::NoWindow => "NOBODY SETS A WINDOW: ask who decides",
            FindingKind::Missing => "NOT READ: nothing is assumed for these",
            FindingKind::InWindow => "IN WINDOW",
        },
        JudgePageLabel::NothingRead { end, n } => {
            return format!("{end}: nothing read yet ({n})");
        }
        JudgePageLabel::Read { read } => return format!("read: {read}"),
        JudgePageLabel::Seen { by } => return format!("by {by}"),
        JudgePageLabel::With { with, by } => return format!("with {with}, by {by}"),
        JudgePageLabel::Window { window, whose } => return format!("window: {window} ({whose})"),
        JudgePageLabel::NoWindow { whose } => return format!("no window: {whose}"),
        JudgePageLabel::Note { note } => return format!("noted: {note}"),
        JudgePageLabel::Decided { decided } => return format!("decision recorded: {decided}"),
        JudgePageLabel::Withheld => {
            "Windows are withheld: this joint fails, or work stops. plan.json has them for the engineer."
        }
        JudgePageLabel::NamedPersonDecides => {
            "What happens to an end that is out of its window is decided by a named person, and recorded. In window means that a reading lies where somebody allows it, and no more."
        }
        JudgePageLabel::PlanChecks => {
            "Each reading is compared with its own window. The checks are not asked again of these ends, because the plan itself fails or work stops."
        }
        JudgePageLabel::Opening => {
            "Readings as built. Write each value into its row, inside the braces { }, and words in quotes; a row without a value counts as not read.\nA row that stands twice is for two looks, each at its own hold point, in their order.\nList every instrument with its error, and name it in the row as `with`.\nWrite who read and on which day, here at the head or in the row; `time` in a row is the time of day.\nIf a named person decides about a reading, write it under `decision`, in that person's words, and name it in the row as `decision`.\nA length is written as its rule shows it: \"8 3/8 in\" or \"212.7 mm\"; several clock points as a list.\nPlaces are measured from the square-cut conductor end before anything is pressed on it, and that end itself from the reference line."
        }
    };
    fixed.to_owned()
}

fn spanish(label: &JudgePageLabel) -> String {
    let fixed = match label {
        JudgePageLabel::Title => {
            "LECTURAS DE LO HECHO, al lado de los rangos permitidos de este plan"
        }
        JudgePageLabel::Count { kind, n } => {
            let what = match kind {
                FindingKind::NoWayBack => {
                    "fuera del rango permitido, sin camino de vuelta calculado: pare y pregunte"
                }
                FindingKind::StopAndAsk => "fuera del rango permitido: pare y pregunte",
                FindingKind::CannotTell => "dudosas: mida otra vez",
                FindingKind::NoWindow => "sin rango permitido, porque nadie lo fija",
                FindingKind::Missing => "sin leer",
                FindingKind::InWindow => "dentro del rango permitido",
            };
            return format!("{n}: {what}");
        }
        JudgePageLabel::InJob { n } => {
            return format!("Otras que ya están en el trabajo: {n}; esas las juzga el plan.");
        }
        JudgePageLabel::StopAndCall { name, number } => {
            return format!("Pare este extremo, y llame a {name}, {number}.");
        }
        JudgePageLabel::Heading { kind } => match kind {
            FindingKind::NoWayBack => {
                "FUERA DEL RANGO PERMITIDO, SIN CAMINO DE VUELTA QUE ESTE PROGRAMA PUEDA CALCULAR: PARE Y PREGUNTE"
            }
            FindingKind::StopAndAsk => "FUERA DEL RANGO PERMITIDO: PARE Y PREGUNTE",
            FindingKind::CannotTell => "DUDOSO: MIDA OTRA VEZ",
            FindingKind::NoWindow => "NADIE FIJA UN RANGO PERMITIDO: pregunte a quien decide",
            FindingKind::Missing => "SIN LEER: no se supone nada",
            FindingKind::InWindow => "DENTRO DEL RANGO PERMITIDO",
        },
        JudgePageLabel::NothingRead { end, n } => {
            return format!("{end}: nada leído todavía ({n})");
        }
        JudgePageLabel::Read { read } => return format!("lectura: {read}"),
        JudgePageLabel::Seen { by } => return format!("por {by}"),
        JudgePageLabel::With { with, by } => return format!("con {with}, por {by}"),
        JudgePageLabel::Window { window, whose } => {
            return format!("rango permitido: {window} ({whose})");
        }
        JudgePageLabel::NoWindow { whose } => return format!("sin rango permitido: {whose}"),
        JudgePageLabel::Note { note } => return format!("anotado: {note}"),
        JudgePageLabel::Decided { decided } => return format!("decisión registrada: {decided}"),
        JudgePageLabel::Withheld => {
            "No se dicen los rangos permitidos: este empalme no cumple, o el trabajo se detiene. plan.json los tiene para el ingeniero."
        }
        JudgePageLabel::NamedPersonDecides => {
            "Qué pasa con un extremo fuera de su rango permitido lo decide una persona nombrada, y lo registra. Dentro del rango quiere decir que una lectura está donde alguien lo permite, y nada más."
        }
        JudgePageLabel::PlanChecks => {
            "Cada lectura se compara con su propio rango permitido. Las comprobaciones no se hacen otra vez en estos extremos, porque el plan mismo no cumple o el trabajo se detiene."
        }
        JudgePageLabel::Opening => {
            "Lecturas de lo hecho. Escriba cada valor en su fila, dentro de las llaves { }, y las palabras entre comillas; una fila sin valor cuenta como sin leer.\nUna fila que está dos veces es para dos revisiones, cada una en su punto de espera, en su orden.\nPonga cada instrumento con su error, y nómbrelo en la fila con `with`.\nEscriba quién leyó y qué día, aquí al comienzo o en la fila; `time` en una fila es la hora.\nSi una persona nombrada decide sobre una lectura, escríbalo bajo `decision`, con sus palabras, y nómbrelo en la fila con `decision`.\nUna longitud se escribe como la muestra la regla: \"8 3/8 in\" o \"212.7 mm\"; varios puntos del contorno, como lista.\nLos lugares se miden desde el extremo del conductor cortado a escuadra antes de prensar nada en él, y ese extremo desde la línea de referencia."
        }
    };
    fixed.to_owned()
}
