//! Sentences about cutbacks.

use super::word;
use crate::Tongue;
use jointwright_joint::cable::Words;
use jointwright_joint::catalogue::die_words;
use jointwright_joint::said::{CutSaid, GrowthSaid, Tried, Unnamed, Whose, WindowSaid};

pub(super) fn say(tongue: Tongue, said: &CutSaid) -> String {
    match said {
        CutSaid::Growth(said) => growth(said),
        CutSaid::Window(said) => window(tongue, said),
        CutSaid::NotPlaced { plane } => format!("no row places the {}", tongue.plane(*plane)),
        CutSaid::BodyNotPlaced => "no row places the body".to_owned(),
        CutSaid::BodyLeftOpen => "the body is left open".to_owned(),
        CutSaid::WhereLies { part } => format!("where {part} lies"),
        CutSaid::NoRangeOver { part, layer } => {
            format!("{part} states no range over the {}", layer.name(Words::Us))
        }
        CutSaid::NothingPlacesIt => "nothing places it".to_owned(),
        CutSaid::GrowthNotMeasured => "the growth of the connector is not measured".to_owned(),
        CutSaid::NothingLeftOfWindow { plane } => format!(
            "nothing is left of the window for the {}",
            tongue.plane(*plane)
        ),
        CutSaid::NoWindowOf { plane } => {
            format!("no window is set for the {}", tongue.plane(*plane))
        }
        CutSaid::Plane { plane } => tongue.plane(*plane),
        CutSaid::WherePlaneLies { plane } => format!("where the {} lies", tongue.plane(*plane)),
        CutSaid::HasNoPlace => "it has no place".to_owned(),
        CutSaid::NoTolerance => "no window is set: the instructions print this number without a tolerance; only the owner's engineer can set one".to_owned(),
        CutSaid::NoPlaceKeepsEveryWindow { whose } => format!(
            "no place keeps every window, once play and growth are taken off: {}",
            all(whose)
        ),
        CutSaid::NoRowReaches { plane } => format!(
            "no row of the chosen parts says how far the {} is from any other plane",
            plane.name().replace('-', " ")
        ),
        CutSaid::LeftOpen { parts } => {
            let parts: Vec<&str> = parts.iter().map(|part| tongue.part(*part)).collect();
            format!("left open: {}", parts.join(", "))
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
            "the row {connector}{} does not name its {}: no trial press can be known to be like it",
            of_end(end.as_deref()),
            match missing {
                Unnamed::Die => "die",
                Unnamed::Presses => "presses",
                Unnamed::DieAndPresses => "die and presses",
            }
        ),
        GrowthSaid::WaitsForTrial { connector, end } => format!(
            "waits for a trial press of {connector}{} with this crew's tool and die: its growth is not measured",
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
                "no trial press of {connector}{} is like this one: its paper asks for {}, {} presses, here on {size}; tried: {}",
                of_end(end.as_deref()),
                die.as_deref()
                    .map_or("a die that it does not name".to_owned(), die_words),
                presses.map_or("any number of".to_owned(), |n| n.to_string()),
                tried.join("; ")
            )
        }
    }
}

fn window(tongue: Tongue, said: &WindowSaid) -> String {
    match said {
        WindowSaid::Printed { inch, mm } => tongue.printed(inch.as_ref(), mm),
        WindowSaid::Of { whose } => format!("window of: {}", all_or(whose, NO_ROWS)),
        WindowSaid::NoPlaceLeft => "no place left".to_owned(),
        WindowSaid::PlaceInsideEvery => "a place inside every window".to_owned(),
        WindowSaid::RoomForAMark => "room in which a crew can set a mark".to_owned(),
        WindowSaid::NoRoom {
            plane,
            width,
            whose,
        } => format!(
            "{}: {}; the rows that leave no room: {}",
            tongue.plane(*plane),
            match width {
                None => "its window has no width".to_owned(),
                Some(width) => format!(
                    "its window of {} is too narrow for a mark in sixty-fourths of an inch or tenths of a millimetre",
                    tongue.read(*width)
                ),
            },
            all_or(whose, NO_ROWS)
        ),
        WindowSaid::CallContradict => "Stop and call: the windows contradict each other, or growth and play are too large for them.".to_owned(),
        WindowSaid::CallNothingToSet => "Stop and call: these rows together leave a crew nothing to set. Nobody can place it exactly; look up their tolerances.".to_owned(),
        WindowSaid::CutsAndPartApart { part, windows } => {
            let windows: Vec<String> = windows
                .iter()
                .map(|of| format!("{} by {}", tongue.plane(of.plane), all(&of.whose)))
                .collect();
            let windows = match windows.len() {
                0 => String::new(),
                _ => format!(" The windows: {}.", windows.join(", ")),
            };
            format!(
                "Stop and call. The cuts and {part} do not go together: look up both in their papers, and do not trim the part.{windows}"
            )
        }
    }
}

/// Words in place of rows if none is to be named.
const NO_ROWS: &str = "rows that print no room";

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
        Whose::Trials(who) => format!("trial press: {}", who.join("; ")),
        Whose::Read(who) => format!("read as built: {who}"),
    }
}

pub(super) fn all(all: &[Whose]) -> String {
    let all: Vec<String> = all.iter().map(whose).collect();
    all.join("; ")
}

fn of_end(end: Option<&str>) -> String {
    end.map(|name| format!(", end {name}")).unwrap_or_default()
}

fn pressed_as(trial: &Tried) -> String {
    format!(
        "{}, {} presses on {}",
        die_words(&trial.die),
        trial.presses,
        trial.size
    )
}
