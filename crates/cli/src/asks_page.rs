//! What a plan asks: on the page for the terminal, and as letters.
//!
//! Not here: any question of its own; it prints the plan document.

use crate::page::{Lines, standing, written};
use jointwright_joint::plan::{AskDoc, Plan};

/// What to ask first: every missing fact once, with who can answer it and what it settles.
pub fn asks(plan: &Plan, lines: &mut Lines) {
    let groups = [
        (
            "ASK FIRST: what crew or owner can close before the work",
            (true, false),
        ),
        ("TO FIND DURING THE WORK, at its own step", (true, true)),
        ("ASK MAKERS: some publish it, some do not", (false, false)),
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
        lines.heading(title);
        for ask in asks {
            n += 1;
            lines.wrap("  ", &format!("{n} {}: {}", ask.who_words, ask.question));
            lines.wrap("      ", &format!("settles {}", ask.settled_words()));
        }
    }
    if n > 0 {
        lines.add("  Where each answer goes: `plan --ask` writes them as letters.");
    }
}

/// What letters were written: the verdict first, and letters of other plans that stand beside them.
pub fn written_letters(plan: &Plan, folder: &str, names: &[&str], older: &[String]) -> String {
    let mut lines = Lines::default();
    lines.wrap(
        "",
        &format!("{} {}", plan.plan_mark.words(), standing(plan)),
    );
    lines.text.push_str(&written(folder, names));
    if !older.is_empty() {
        let older = older.join(", ");
        lines.wrap(
            "  ",
            &format!("Letters of another plan stand there, too: {older}"),
        );
    }
    lines.text
}

/// A text whose lines are wrapped at the width of a page.
pub fn wrapped(text: &str) -> String {
    let mut lines = Lines::default();
    for line in text.lines() {
        let words = line.trim_start();
        lines.wrap(&" ".repeat(line.len() - words.len()), words);
    }
    lines.text
}
