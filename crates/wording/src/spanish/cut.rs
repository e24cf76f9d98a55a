//! Sentences about cutbacks.

use super::noun::{self, of_the, the, to_the};
use super::word;
use crate::Tongue;
use jointwright_joint::said::{CutSaid, GrowthSaid, Tried, Unnamed, Whose, WindowSaid};

pub(super) fn say(tongue: Tongue, said: &CutSaid) -> String {
    match said {
        CutSaid::Growth(said) => growth(said),
        CutSaid::Window(said) => window(tongue, said),
        CutSaid::NotPlaced { plane } => {
            format!("ninguna ficha sitúa {}", the(&tongue.plane(*plane)))
        }
        CutSaid::BodyNotPlaced => "ninguna ficha sitúa el cuerpo".to_owned(),
        CutSaid::BodyLeftOpen => "falta elegir el cuerpo".to_owned(),
        CutSaid::WhereLies { part } => format!("dónde está {part}"),
        CutSaid::NoRangeOver { part, layer } => format!(
            "{part} no declara ningún rango sobre {}",
            the(tongue.layer(*layer))
        ),
        CutSaid::NothingPlacesIt => "nada lo sitúa".to_owned(),
        CutSaid::GrowthNotMeasured => "el alargamiento del conector no está medido".to_owned(),
        CutSaid::NothingLeftOfWindow { plane } => format!(
            "no queda nada del rango permitido {}",
            of_the(&tongue.plane(*plane))
        ),
        CutSaid::NoWindowOf { plane } => format!(
            "nadie fija un rango permitido {}",
            to_the(&tongue.plane(*plane))
        ),
        CutSaid::Plane { plane } => tongue.plane(*plane),
        CutSaid::WherePlaneLies { plane } => format!("dónde está {}", the(&tongue.plane(*plane))),
        CutSaid::HasNoPlace => "no tiene posición".to_owned(),
        CutSaid::NoTolerance => "nadie fija un rango permitido: las instrucciones imprimen este número sin tolerancia; solo el ingeniero del propietario puede fijarlo".to_owned(),
        CutSaid::NoPlaceKeepsEveryWindow { whose } => format!(
            "ninguna posición respeta todos los rangos permitidos, una vez descontados el juego y el alargamiento: {}",
            all(whose)
        ),
        CutSaid::NoRowReaches { plane } => format!(
            "ninguna ficha de las piezas elegidas dice a qué distancia está {} de otro plano",
            the(&tongue.plane(*plane))
        ),
        CutSaid::LeftOpen { parts } => {
            let parts: Vec<&str> = parts.iter().map(|part| tongue.part(*part)).collect();
            format!("sin elegir: {}", parts.join(", "))
        }
    }
}

fn growth(said: &GrowthSaid) -> String {
    match said {
        GrowthSaid::EndDoesNotName {
            connector,
            end,
            missing,
        } => format!(
            "la ficha {connector}{} no nombra {}: no se puede saber si una prensada de prueba es como esta",
            of_end(end.as_deref()),
            match missing {
                Unnamed::Die => "su dado",
                Unnamed::Presses => "sus prensadas",
                Unnamed::DieAndPresses => "su dado ni sus prensadas",
            }
        ),
        GrowthSaid::WaitsForTrial { connector, end } => format!(
            "espera una prensada de prueba de {connector}{} con la herramienta y el dado de esta cuadrilla: su alargamiento no está medido",
            of_end(end.as_deref())
        ),
        GrowthSaid::NoTrialLikeThis {
            connector,
            end,
            die,
            presses,
            size,
            tried,
        } => {
            let tried: Vec<String> = tried.iter().map(pressed_as).collect();
            format!(
                "ninguna prensada de prueba de {connector}{} es como esta: su documento pide {}, {}, aquí sobre {size}; probadas: {}",
                of_end(end.as_deref()),
                die.as_deref()
                    .map_or("un dado que no nombra".to_owned(), die_words),
                presses.map_or("cualquier número de prensadas".to_owned(), noun::presses),
                tried.join("; ")
            )
        }
    }
}

fn window(tongue: Tongue, said: &WindowSaid) -> String {
    match said {
        WindowSaid::Printed { inch, mm } => tongue.printed(inch.as_ref(), mm),
        WindowSaid::Of { whose } => format!("rango permitido de: {}", all_or(whose, NO_ROWS)),
        WindowSaid::NoPlaceLeft => "no queda ninguna posición".to_owned(),
        WindowSaid::PlaceInsideEvery => "una posición dentro de todos los rangos permitidos".to_owned(),
        WindowSaid::RoomForAMark => {
            "espacio para que una cuadrilla ponga una marca".to_owned()
        }
        WindowSaid::NoRoom {
            plane,
            width,
            whose,
        } => format!(
            "{}: {}; las fichas que no dejan espacio: {}",
            tongue.plane(*plane),
            match width {
                None => "su rango permitido no tiene ancho".to_owned(),
                Some(width) => format!(
                    "su rango permitido de {} es demasiado estrecho para una marca en sesentaicuatroavos de pulgada o décimas de milímetro",
                    tongue.read(*width)
                ),
            },
            all_or(whose, NO_ROWS)
        ),
        WindowSaid::CallContradict => "Pare y llame: los rangos permitidos se contradicen, o el alargamiento y el juego son demasiado grandes para ellos.".to_owned(),
        WindowSaid::CallNothingToSet => "Pare y llame: estas fichas juntas no dejan a la cuadrilla nada que marcar. Nadie puede situarlo con exactitud; busque sus tolerancias.".to_owned(),
        WindowSaid::CutsAndPartApart { part, windows } => {
            let windows: Vec<String> = windows
                .iter()
                .map(|of| format!("{} por {}", tongue.plane(of.plane), all(&of.whose)))
                .collect();
            let windows = match windows.len() {
                0 => String::new(),
                _ => format!(" Los rangos permitidos: {}.", windows.join(", ")),
            };
            format!(
                "Pare y llame. Los cortes y {part} no van juntos: búsquelos en sus documentos, y no recorte la pieza.{windows}"
            )
        }
    }
}

/// Words in place of rows if none is to be named.
const NO_ROWS: &str = "fichas que no dan espacio";

fn all_or(whose: &[Whose], none: &str) -> String {
    if whose.is_empty() {
        none.to_owned()
    } else {
        all(whose)
    }
}

/// Source of a plane's place or window.
pub(super) fn whose(whose: &Whose) -> String {
    match whose {
        Whose::Person(who) => who.clone(),
        Whose::Named { row, place } => match place {
            Some(place) => format!("{row}, {place}"),
            None => row.clone(),
        },
        Whose::Row { paper, place } => match place {
            Some(place) => format!("{}, {place}", word::paper(paper)),
            None => word::paper(paper),
        },
        Whose::Trials(who) => format!("prensada de prueba: {}", who.join("; ")),
        Whose::Read(who) => format!("leído en lo hecho: {who}"),
    }
}

pub(super) fn all(all: &[Whose]) -> String {
    let all: Vec<String> = all.iter().map(whose).collect();
    all.join("; ")
}

fn of_end(end: Option<&str>) -> String {
    end.map(|name| format!(", extremo {name}"))
        .unwrap_or_default()
}

/// A die by its name, which may already contain the word.
fn die_words(die: &str) -> String {
    format!("el dado {die}")
}

fn pressed_as(trial: &Tried) -> String {
    format!(
        "{}, {} sobre {}",
        die_words(&trial.die),
        noun::presses(trial.presses),
        trial.size
    )
}
