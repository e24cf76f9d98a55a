//! Labels of a cut or a mark, for every page, paper and picture that shows one.
#![expect(missing_docs, reason = "the name of a label says what is said")]

use super::Label;
use crate::Tongue;
use crate::spanish::noun::the;
use jointwright_joint::plan::{AtEdge, CutDoc, CutKind, PrintedWindowDoc};
use jointwright_joint::plane::Plane;
use jointwright_joint::said::Language;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A label of a cut or a mark; texts in it are the plan's own.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum CutLabel {
    /// Action there, in large letters.
    Act {
        kind: CutKind,
    },
    /// The same with the place.
    ActAt {
        kind: CutKind,
        place: String,
    },
    NotThroughToMetal,
    BridgeFirst,
    NotIntoInsulation,
    NotIntoStrands,
    NoRoomEitherWay,
    NeverShorter,
    NeverLonger,
    PlaceAndWindowBy {
        by: Vec<String>,
        from: String,
    },
    PlaceBy {
        by: Vec<String>,
        from: String,
    },
    WindowBy {
        by: Vec<String>,
    },
    WindowInches {
        least: String,
        greatest: String,
    },
    WindowInchOnly {
        at: String,
    },
    WindowMillimetres {
        least: String,
        greatest: String,
    },
    /// Reason for a narrower window.
    Narrowed {
        text: String,
    },
    FromDatum {
        datum: String,
    },
    MayLie,
    /// The same with the window.
    MayLieIn {
        window: String,
    },
    NoWindow,
    NotSet,
}

impl CutLabel {
    /// Action at a cut.
    pub fn act(cut: &CutDoc) -> CutLabel {
        CutLabel::Act { kind: cut.kind }
    }

    /// Action at a cut, and its place.
    pub fn act_at(cut: &CutDoc) -> CutLabel {
        CutLabel::ActAt {
            kind: cut.kind,
            place: cut.words.clone(),
        }
    }

    /// Danger at a cut, in a few words beside it; the steps say it in full. Common practice, no source.
    pub fn caution(cut: &CutDoc) -> Option<CutLabel> {
        Some(match cut.plane {
            Plane::JacketEdge => CutLabel::NotThroughToMetal,
            Plane::ShieldEdge => CutLabel::BridgeFirst,
            Plane::ScreenEdge => CutLabel::NotIntoInsulation,
            Plane::InsulationEnd => CutLabel::NotIntoStrands,
            _ => return None,
        })
    }

    /// Says so where the mark stands at an end of its window, nearer than a crew can cut.
    pub fn at_edge(cut: &CutDoc) -> Option<CutLabel> {
        Some(match cut.at_edge()? {
            AtEdge::Both => CutLabel::NoRoomEitherWay,
            AtEdge::Shortest => CutLabel::NeverShorter,
            AtEdge::Longest => CutLabel::NeverLonger,
        })
    }

    /// On whose word the place is, and on whose the window: a line each, one where both are the same rows'.
    pub fn whose(cut: &CutDoc) -> Vec<CutLabel> {
        let placed = cut.placed.as_ref();
        let placed = placed.map(|placed| (placed.by.clone(), placed.from.clone()));
        whose_labels(placed, cut.window_of.clone())
    }

    /// The same with the leg's parts by their names alone.
    pub fn whose_by_name(cut: &CutDoc) -> Vec<CutLabel> {
        let placed = cut.placed.as_ref();
        let placed = placed.map(|placed| (cut.by_name.placed_by.clone(), placed.from.clone()));
        whose_labels(placed, cut.by_name.window_of.clone())
    }

    /// A window in a line a unit: inches, where they are printed, over millimetres.
    pub fn window(window: &PrintedWindowDoc) -> Vec<CutLabel> {
        window_labels(window.inch.as_ref(), &window.mm)
    }
}

/// Who places a cut, from where, and whose the window is.
fn whose_labels(placed: Option<(Vec<String>, String)>, window_of: Vec<String>) -> Vec<CutLabel> {
    let by = window_of.clone();
    let window = (!by.is_empty()).then_some(CutLabel::WindowBy { by });
    let Some((by, from)) = placed else {
        return window.into_iter().collect();
    };
    if by == window_of {
        return vec![CutLabel::PlaceAndWindowBy { by, from }];
    }
    let place = CutLabel::PlaceBy { by, from };
    [place].into_iter().chain(window).collect()
}

/// A window in a line a unit.
fn window_labels(inch: Option<&[String; 2]>, mm: &[String; 2]) -> Vec<CutLabel> {
    let inch = inch.map(|[least, greatest]| {
        if least == greatest {
            CutLabel::WindowInchOnly { at: least.clone() }
        } else {
            CutLabel::WindowInches {
                least: least.clone(),
                greatest: greatest.clone(),
            }
        }
    });
    let [least, greatest] = mm.clone();
    let mm = CutLabel::WindowMillimetres { least, greatest };
    inch.into_iter().chain([mm]).collect()
}

impl Tongue {
    /// A printed window as one text: `7 3/4 to 7 13/16 in, 196.0 to 200.0 mm`.
    pub fn window(self, window: &PrintedWindowDoc) -> String {
        self.printed(window.inch.as_ref(), &window.mm)
    }

    /// A window by its printed bounds.
    pub(crate) fn printed(self, inch: Option<&[String; 2]>, mm: &[String; 2]) -> String {
        let labels = window_labels(inch, mm);
        let lines: Vec<String> = labels.iter().map(|label| self.label(label)).collect();
        lines.join(", ")
    }

    /// The same in a line a unit.
    pub fn window_lines(self, window: &PrintedWindowDoc) -> Vec<String> {
        let labels = CutLabel::window(window);
        labels.iter().map(|label| self.label(label)).collect()
    }

    /// On whose word the place of a cut is, and on whose the window.
    pub fn whose(self, cut: &CutDoc) -> Vec<String> {
        let labels = CutLabel::whose(cut);
        labels.iter().map(|label| self.label(label)).collect()
    }
}

impl Label for CutLabel {
    fn text(&self, tongue: Tongue) -> String {
        match tongue.language {
            Language::English => english(self),
            Language::Spanish => spanish(self),
        }
    }
}

fn english_act(kind: CutKind) -> &'static str {
    match kind {
        CutKind::LayBack => "LAY BACK",
        CutKind::Ask => "ASK: CUT OR LAY BACK",
        CutKind::Mark => "MARK",
        CutKind::Cut => "CUT",
    }
}

fn english(label: &CutLabel) -> String {
    match label {
        CutLabel::Act { kind } => english_act(*kind).to_owned(),
        CutLabel::ActAt { kind, place } => format!("{} {place}", english_act(*kind)),
        CutLabel::NotThroughToMetal => "never through to the metal under it".to_owned(),
        CutLabel::BridgeFirst => {
            "bridge it first; the bridge stays on until the step that takes it off".to_owned()
        }
        CutLabel::NotIntoInsulation => "never into the insulation".to_owned(),
        CutLabel::NotIntoStrands => "never into the strands".to_owned(),
        CutLabel::NoRoomEitherWay => {
            "there is no room either way: neither shorter nor longer".to_owned()
        }
        CutLabel::NeverShorter => {
            "this mark is the shortest that is allowed: never shorter".to_owned()
        }
        CutLabel::NeverLonger => {
            "this mark is the longest that is allowed: never longer".to_owned()
        }
        CutLabel::PlaceAndWindowBy { by, from } => {
            format!("place and window by: {}; from the {from}", by.join("; "))
        }
        CutLabel::PlaceBy { by, from } => {
            format!("place by: {}; from the {from}", by.join("; "))
        }
        CutLabel::WindowBy { by } => format!("window by: {}", by.join("; ")),
        CutLabel::WindowInches { least, greatest } => format!("{least} to {greatest} in"),
        CutLabel::WindowInchOnly { at } => format!("{at} in only"),
        CutLabel::WindowMillimetres { least, greatest } => format!("{least} to {greatest} mm"),
        CutLabel::Narrowed { text } => format!("narrowed: {text}"),
        CutLabel::FromDatum { datum } => format!("from the {datum}"),
        CutLabel::MayLie => "may lie".to_owned(),
        CutLabel::MayLieIn { window } => format!("may lie {window}"),
        CutLabel::NoWindow => "no window is set".to_owned(),
        CutLabel::NotSet => "not set".to_owned(),
    }
}

fn spanish_act(kind: CutKind) -> &'static str {
    match kind {
        CutKind::LayBack => "DOBLE HACIA ATRÁS",
        CutKind::Ask => "PREGUNTE: CORTAR O DOBLAR HACIA ATRÁS",
        CutKind::Mark => "MARQUE",
        CutKind::Cut => "CORTE",
    }
}

fn spanish(label: &CutLabel) -> String {
    match label {
        CutLabel::Act { kind } => spanish_act(*kind).to_owned(),
        CutLabel::ActAt { kind, place } => format!("{}: {place}", spanish_act(*kind)),
        CutLabel::NotThroughToMetal => "nunca hasta el metal que hay debajo".to_owned(),
        CutLabel::BridgeFirst => {
            "primero el puente; se queda puesto hasta el paso que lo quita".to_owned()
        }
        CutLabel::NotIntoInsulation => "nunca dentro del aislamiento".to_owned(),
        CutLabel::NotIntoStrands => "nunca dentro de las hebras".to_owned(),
        CutLabel::NoRoomEitherWay => {
            "no hay margen en ningún sentido: ni más corto ni más largo".to_owned()
        }
        CutLabel::NeverShorter => {
            "esta marca es la más corta que se permite: nunca más corto".to_owned()
        }
        CutLabel::NeverLonger => {
            "esta marca es la más larga que se permite: nunca más largo".to_owned()
        }
        CutLabel::PlaceAndWindowBy { by, from } => {
            format!(
                "posición y rango permitido según: {}; desde {}",
                by.join("; "),
                the(from)
            )
        }
        CutLabel::PlaceBy { by, from } => {
            format!("posición según: {}; desde {}", by.join("; "), the(from))
        }
        CutLabel::WindowBy { by } => format!("rango permitido según: {}", by.join("; ")),
        CutLabel::WindowInches { least, greatest } => format!("{least} a {greatest} in"),
        CutLabel::WindowInchOnly { at } => format!("solo {at} in"),
        CutLabel::WindowMillimetres { least, greatest } => format!("{least} a {greatest} mm"),
        CutLabel::Narrowed { text } => format!("rango más estrecho: {text}"),
        CutLabel::FromDatum { datum } => format!("desde {}", the(datum)),
        CutLabel::MayLie => "rango".to_owned(),
        CutLabel::MayLieIn { window } => format!("rango: {window}"),
        CutLabel::NoWindow => "sin rango permitido".to_owned(),
        CutLabel::NotSet => "sin fijar".to_owned(),
    }
}
