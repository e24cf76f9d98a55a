//! Names of the sources of a statement.

use crate::Tongue;
use jointwright_joint::said::{Doubt, Paper, Word, Wording};

pub(super) fn say(tongue: Tongue, word: &Word) -> String {
    let say = |said| tongue.say(said);
    match word {
        Word::Instructions(source) => format!("instructions: {}", say(source)),
        Word::Owner(source) => format!("owner: {}", say(source)),
        Word::CommonPractice(what) => format!("common practice, no source: {}", say(what)),
        Word::Memory { key, source } => {
            format!(
                "from memory, waits for the owner (key {key}): {}",
                say(source)
            )
        }
        Word::Confirmed(source) => format!("confirmed by the owner: {}", say(source)),
        Word::WorstAllowed(source) => format!(
            "no worse than the worst the instructions allow: {}",
            say(source)
        ),
        Word::Job(source) => format!("job: {}", say(source)),
    }
}

/// A part's row and its paper, with the doubts about the row.
pub(super) fn paper(of: &Paper) -> String {
    let row = if of.row.is_empty() {
        String::new()
    } else {
        format!("{}, ", of.row)
    };
    let doubts: String = of
        .doubts
        .iter()
        .map(|of| format!(", {}", doubt(of)))
        .collect();
    format!("{row}{} revision {}{doubts}", of.paper, of.revision)
}

pub(super) fn doubt(doubt: &Doubt) -> String {
    match doubt {
        Doubt::NotChecked => "row not checked by a second person".to_owned(),
        Doubt::CurrentOnlyUntil(day) => format!("paper known to be current only until {day}"),
    }
}
