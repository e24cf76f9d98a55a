//! Cable rate page: a run of cable without a joint in, what it carries in each stretch of its surroundings out.
//!
//! Not here: any number of its own; the page is made from the document.

use crate::page::{Lines, banner_of, mark};
use crate::rate_page::Done;
use jointwright_joint::job::Order;
use jointwright_joint::judge::judge_run;
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::{CableRateDoc, RunAtDoc, StretchDoc};
use jointwright_wording::cable_rating;

/// What every rating of a cable says.
const DECIDES_NOTHING: &str = "Computed from what is stated; decides nothing. The cable's papers, the owner's rules and the persons named for it prevail. A joint in this run may bear less: rate it in a job of its own.";

/// Rates a run of cable.
///
/// # Errors
/// Lines for standard error.
pub fn run(order: &Order, made: &str, json: bool, has_pictures: bool) -> Result<Done, Vec<String>> {
    let judged = judge_run(order).map_err(|complaints| {
        let lines = complaints.iter().map(ToString::to_string);
        lines.collect::<Vec<_>>()
    })?;
    let document = cable_rating(&judged).made_at(made);
    let mut shown = if json {
        let text = serde_json::to_string_pretty(&document);
        text.map_err(|error| vec![format!("jointwright: {error}")])? + "\n"
    } else {
        page(&document)
    };
    if has_pictures && !json {
        shown.push_str(
            "No picture: a run of cable without a joint is the same all along each stretch.\n",
        );
    }
    Ok(Done {
        shown,
        outcome: document.outcome,
    })
}

fn page(document: &CableRateDoc) -> String {
    let mut lines = Lines::default();
    banner_of(document.invented.as_deref(), &mut lines);
    lines.wrap(
        "",
        &format!(
            "{}: what a run of cable carries, without a joint",
            document.job
        ),
    );
    mark(&document.plan_mark, &mut lines);
    verdict(document, &mut lines);
    for why in &document.not_judged {
        lines.wrap("  ", &format!("not judged: {why}"));
    }
    for said in &document.idle_closings {
        lines.wrap("  ", said);
    }
    lines.wrap("  ", &format!("cable {}", document.cable));
    if let Some(why) = &document.why {
        lines.wrap("  ", &format!("{}: {why}", document.state.words()));
    }
    for ask in &document.asks {
        lines.wrap("  ", &format!("ask {}: {}", ask.who_words, ask.question));
        lines.wrap("      ", &format!("goes into the {}", ask.place()));
    }
    if let (Some(degc), Some(load_a)) = (document.limit_degc, document.load_at_limit_a) {
        lines.wrap("  ", &format!("the first of its stretches to reach {degc} degC, the highest in service by the job, does so at {load_a:.0} A all the time"));
    }
    for stretch in &document.stretches {
        of_stretch(document, stretch, &mut lines);
    }
    lines.blank();
    if !document.assumes.is_empty() {
        lines.wrap("  ", &format!("Assumes: {}.", document.assumes.join("; ")));
    }
    lines.wrap("  ", DECIDES_NOTHING);
    banner_of(document.invented.as_deref(), &mut lines);
    lines.text
}

/// What comes of the job's load, before any number.
fn verdict(document: &CableRateDoc, lines: &mut Lines) {
    match document.outcome {
        Outcome::Fail => {
            lines.wrap("", "THE JOB'S LOAD IS TOO MUCH FOR THIS CABLE, by the job's own limit.");
            for fail in &document.fails {
                lines.wrap("  ", &format!("FAILS {fail}"));
            }
        }
        Outcome::Pass => lines.wrap(
            "",
            "The conductor keeps below the job's own limit at the job's load; that says nothing of joints, terminations and other limits, and permits nothing.",
        ),
        Outcome::NotJudged => lines.wrap("", "Not judged; nothing below permits a load."),
    }
}

fn of_stretch(document: &CableRateDoc, stretch: &StretchDoc, lines: &mut Lines) {
    lines.blank();
    lines.wrap("", &format!("STRETCH: {}", stretch.what));
    for line in &stretch.lines {
        lines.wrap("  ", line);
    }
    match &stretch.at_load {
        Some(at) => lines.wrap("  ", &format!("at the job's load: {}", at_words(at))),
        None => lines.wrap(
            "  ",
            "at the job's load: not known, or it warms without end",
        ),
    }
    match (&stretch.at_limit, document.limit_degc) {
        (Some(at), Some(degc)) => {
            lines.wrap(
                "  ",
                &format!("it comes to {degc} degC at {}", at_words(at)),
            );
        }
        (None, Some(degc)) => {
            lines.wrap(
                "  ",
                &format!("{degc} degC are passed without any load, by its surroundings"),
            );
        }
        (_, None) => {}
    }
    if let (Some(of), Some(degc)) = (&stretch.cyclic, document.limit_degc) {
        lines.wrap(
            "  ",
            &format!(
                "with the job's day of loads it comes to {degc} degC at a peak of {:.0} A, {:.2} times the steady load; mean loss of the day {:.2} of the peak's ({}). The form (IEC 60853) is from memory: it rules nothing",
                of.peak_a, of.factor_ratio, of.loss_load_ratio, of.source
            ),
        );
    }
    if let Some(why) = &stretch.cyclic_left_out {
        lines.wrap("  ", &format!("day of loads: {why}"));
    }
}

fn at_words(at: &RunAtDoc) -> String {
    format!(
        "{:.0} A all the time: conductor {:.1}, shield {:.1}, surface {:.1} degC; heat of the conductor {:.1} W/m, of the shield {:.2} W/m",
        at.load_a,
        at.conductor_degc,
        at.shield_degc,
        at.surface_degc,
        at.conductor_w_per_m,
        at.shield_w_per_m
    )
}
