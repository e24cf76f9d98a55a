//! Narrowed: a window narrower than its paper prints, in one line: by how much, and by whose words.

use super::document::NarrowedDoc;
use crate::cable::Words;
use crate::cutback::{Cut, Narrowed};
use crate::said::{Said, Whose, Wording};
use jointwright_units::{Length, Station};

/// What narrowed the window of a cut; none where it is as wide as its row prints.
pub(super) fn narrowed_doc(cut: &Cut, words: Words, wording: &dyn Wording) -> Option<NarrowedDoc> {
    let narrowed = cut.narrowed.as_ref()?;
    let shared: Vec<String> = narrowed
        .shared_with
        .iter()
        .map(|p| p.words(words))
        .collect();
    Some(NarrowedDoc {
        paper: wording.say(&Said::from(&narrowed.paper)),
        printed_mm: narrowed.printed.mm(),
        left_mm: narrowed.left.mm(),
        shared_with: narrowed.shared_with.clone(),
        by: narrowed
            .by
            .iter()
            .map(|of| wording.say(&of.into()))
            .collect(),
        text: text(cut, narrowed, &shared, words, wording),
    })
}

fn text(
    cut: &Cut,
    narrowed: &Narrowed,
    shared: &[String],
    words: Words,
    wording: &dyn Wording,
) -> String {
    let mut reasons: Vec<String> = Vec::new();
    if !shared.is_empty() {
        reasons.push(format!("shared with the {}", shared.join(" and the ")));
    }
    if !narrowed.by.is_empty() {
        reasons.push(wording.say(&Whose::all(&narrowed.by)));
    }
    // Its own paper alone stands above this line already.
    let is_named = matches!(cut.whose.as_slice(), [only] if *only == narrowed.paper);
    let paper = if is_named {
        "it".to_owned()
    } else {
        wording.say(&Said::from(&narrowed.paper))
    };
    format!(
        "{} is left of the {} that {paper} gives: {}",
        width(narrowed.left, words),
        width(narrowed.printed, words),
        reasons.join("; ")
    )
}

/// A width rounded down, so that no more room is said than there is.
fn width(width: Station, words: Words) -> String {
    let whole: Length = width.floor();
    match whole.exact_inch().filter(|_| words == Words::Us) {
        Some(inch) => inch.to_string(),
        None => format!("{:.2} mm", (whole.mm() * 100.0).floor() / 100.0),
    }
}
