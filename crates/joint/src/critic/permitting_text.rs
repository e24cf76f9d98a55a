//! Finds texts of a row that permit something that no paper of a part can permit.
//!
//! A step says how a part is built in; only named persons of the job say on the day that a cable is dead, or that a joint may be energised or kept.
//! The list has English phrases and is only a hint: every text of a row stands in quotation marks with its source, whether this finds it or not (`form::spoken`).

use super::entry::Entry;
use super::{Class, Defect};
use crate::catalogue::{Catalogue, Head};
use crate::form::spoken::bare;

pub(super) const CLASS: Class = Class {
    slug: "permitting_text",
    question: "Does no text of a row permit what only a named person of the job can?",
    find,
};

/// Beginnings of words that release a cable or a joint, or call one safe.
const PERMITTING: &[&str] = &[
    "all clear",
    "approved",
    "authorised",
    "authorized",
    "be energised",
    "be energized",
    "be kept",
    "be touched",
    "cleared",
    "close the breaker",
    "de energised",
    "de energized",
    "dead",
    "fit for service",
    "go ahead",
    "good joint",
    "good to go",
    "guarantee",
    "harmless",
    "may cut",
    "may energi",
    "may touch",
    "no voltage",
    "not live",
    "ok to",
    "permission",
    "permit to",
    "proved dead",
    "ready for service",
    "ready to energi",
    "safe",
    "signed off",
    "sound joint",
    "switch it in",
    "switch it on",
    "voltage free",
];

fn find(_: &Catalogue, entries: &[Entry<'_>]) -> Vec<Defect> {
    let of_row = |entry: &Entry<'_>| {
        let texts = texts(entry.head).into_iter();
        let found = texts.filter_map(|(what, text)| {
            let phrase = permits(text)?;
            let found = format!(
                "The {what} of `{}` says “{text}”, and \"{phrase}\" permits.",
                entry.head.id
            );
            Some(Defect::of_row(
                CLASS.slug,
                entry,
                found,
                "Expected a row that says how the part is built in; that a cable is dead or a joint may be energised, touched or kept is said by named persons of the job.",
                "Take the words out; where the paper has them, they are no step of the make-up.",
            ))
        });
        found.collect::<Vec<Defect>>()
    };
    entries.iter().flat_map(of_row).collect()
}

/// Texts of a row, each with its name.
fn texts(head: &Head) -> Vec<(String, &str)> {
    let paper = &head.instructions;
    let mut texts = vec![
        ("short name".to_owned(), head.id.as_str()),
        ("name".to_owned(), bare(&head.name)),
        ("paper".to_owned(), bare(&paper.paper)),
        ("revision".to_owned(), bare(&paper.revision)),
    ];
    texts.extend(head.note.iter().map(|note| ("note".to_owned(), bare(note))));
    for (index, step) in head.steps.iter().enumerate() {
        let which = step.id.clone().unwrap_or_else(|| (index + 1).to_string());
        let caution = step.caution.as_deref();
        texts.push((format!("step {which}"), bare(&step.say)));
        texts.extend(caution.map(|text| (format!("caution of step {which}"), bare(text))));
    }
    texts
}

/// Permitting phrase in a text, from the start of a word.
fn permits(text: &str) -> Option<&'static str> {
    let plain = |c: char| if c.is_alphanumeric() { c } else { ' ' };
    let letters: String = text.to_lowercase().chars().map(plain).collect();
    let words: Vec<&str> = letters.split_whitespace().collect();
    let text = format!(" {}", words.join(" "));
    let is_in = |phrase: &&&str| text.contains(&format!(" {phrase}"));
    PERMITTING.iter().find(is_in).copied()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sentences_that_permit_are_known_and_others_are_not() {
        for text in [
            "Approved by the owner",
            "may be energised",
            "May  be\u{a0}energized",
            "DE-ENERGISED",
            "Cable is dead.",
            "safe to cut",
            "OK to proceed",
            "cleared and released",
            "go-ahead given",
            "joint may be kept",
            "ready for service",
            "No voltage here",
        ] {
            assert!(permits(text).is_some(), "{text}");
        }
        for text in [
            "The seal may be moved until its holdout is out.",
            "Keep the bridge on; the shield stays earthed.",
            "unapproved",
            "unsafely near",
            "Wipe until the cloth stays clean.",
        ] {
            assert_eq!(permits(text), None, "{text}");
        }
    }
}
