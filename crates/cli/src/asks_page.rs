//! Asks of a plan: on the page for the terminal, and as letters.
//!
//! Not here: questions; all of them come from the plan document.

use crate::lines::Lines;
use crate::masthead::standing;
use crate::written::written;
use jointwright_joint::plan::{AskDoc, Plan};
use jointwright_joint::said::Wording;
use jointwright_wording::Tongue;
use jointwright_wording::label::AskPageLabel;

/// Adds every missing fact once, with who can answer it and what it settles; the facts to ask first come first.
pub fn asks(plan: &Plan, lines: &mut Lines) {
    let groups = [
        (AskPageLabel::AskFirst, (true, false)),
        (AskPageLabel::DuringTheWork, (true, true)),
        (AskPageLabel::AskMakers, (false, false)),
    ];
    let mut n = 0;
    for (title, wanted) in groups {
        let asks: Vec<&AskDoc> = plan
            .asks
            .iter()
            .filter(|ask| (ask.near, ask.during_work) == wanted)
            .collect();
        if asks.is_empty() {
            continue;
        }
        lines.heading(&title);
        for ask in asks {
            n += 1;
            lines.wrap("  ", &format!("{n} {}: {}", ask.who_words, ask.question));
            let what = lines.tongue.say(&ask.settled());
            lines.label("      ", &AskPageLabel::Settles { what });
        }
    }
    if n > 0 {
        lines.label("  ", &AskPageLabel::WhereAnswersGo);
    }
}

/// Returns the page about the letters that were written: the verdict, their names, and letters of other plans beside them.
pub fn written_letters(plan: &Plan, folder: &str, names: &[&str], older: &[String]) -> String {
    let tongue = Tongue::of_plan(plan);
    let mut lines = Lines::new(tongue);
    lines.wrap(
        "",
        &format!("{} {}", tongue.plan_mark(&plan.plan_mark), standing(plan)),
    );
    lines.text.push_str(&written(tongue, folder, names));
    if !older.is_empty() {
        let names = older.to_vec();
        lines.label("  ", &AskPageLabel::LettersOfAnotherPlan { names });
    }
    lines.text
}

/// Returns a text with its lines wrapped at the width of a page.
pub fn wrapped(text: &str) -> String {
    let mut lines = Lines::default();
    for line in text.lines() {
        let words = line.trim_start();
        lines.wrap(&" ".repeat(line.len() - words.len()), words);
    }
    lines.text
}
