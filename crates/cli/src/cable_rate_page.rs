//! Cable rate page: takes a run of cable without a joint, and prints its rating in each stretch of its surroundings.
//!
//! Not here: numbers; all of them come from the document.

use crate::files;
use crate::lines::Lines;
use crate::masthead::{banner_of, mark};
use crate::printed::Printed;
use jointwright_joint::job::Order;
use jointwright_joint::judge::judge_run;
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::{CableRateDoc, RunAtDoc, StretchDoc};
use jointwright_joint::said::Wording;
use jointwright_wording::label::{CableRatePageLabel, PageLabel, StretchLabel};
use jointwright_wording::{Tongue, cable_rating};

/// Rates a run of cable.
///
/// # Errors
/// Lines for standard error.
pub fn run(
    order: &Order,
    made: &str,
    json: bool,
    has_pictures: bool,
) -> Result<Printed, Vec<String>> {
    let tongue = Tongue::of(&order.job);
    let judged = judge_run(order).map_err(|complaints| files::lines(tongue, &complaints))?;
    let document = cable_rating(&judged).made_at(made);
    let mut shown = if json {
        let text = serde_json::to_string_pretty(&document);
        text.map_err(|error| vec![format!("jointwright: {error}")])? + "\n"
    } else {
        page(&document)
    };
    if has_pictures && !json {
        shown.push_str(&(tongue.label(&CableRatePageLabel::NoPicture) + "\n"));
    }
    Ok(Printed {
        shown,
        outcome: document.outcome,
    })
}

fn page(document: &CableRateDoc) -> String {
    let mut lines = Lines::new(Tongue::of_cable_rate(document));
    banner_of(document.invented.as_deref(), &mut lines);
    let job = document.job.clone();
    lines.label("", &CableRatePageLabel::Title { job });
    mark(&document.plan_mark, &mut lines);
    verdict(document, &mut lines);
    for why in document.not_judged.iter().cloned() {
        lines.label("  ", &CableRatePageLabel::NotJudgedWhy { why });
    }
    for said in &document.idle_closings {
        lines.wrap("  ", said);
    }
    let cable = document.cable.clone();
    lines.label("  ", &CableRatePageLabel::Cable { cable });
    if let Some(why) = &document.why {
        lines.wrap(
            "  ",
            &format!("{}: {why}", lines.tongue.state(document.state)),
        );
    }
    for ask in &document.asks {
        let (whom, question) = (ask.who_words.clone(), ask.question.clone());
        lines.label("  ", &CableRatePageLabel::Ask { whom, question });
        let place = lines.tongue.say(&ask.place());
        lines.label("      ", &CableRatePageLabel::GoesInto { place });
    }
    if let (Some(degc), Some(load_a)) = (document.limit_degc, document.load_at_limit_a) {
        lines.label("  ", &CableRatePageLabel::FirstAtLimit { degc, load_a });
    }
    for stretch in &document.stretches {
        of_stretch(document, stretch, &mut lines);
    }
    lines.blank();
    if !document.assumes.is_empty() {
        let what = document.assumes.clone();
        lines.label("  ", &PageLabel::Assumes { what });
    }
    lines.label("  ", &CableRatePageLabel::DecidesNothing);
    banner_of(document.invented.as_deref(), &mut lines);
    lines.text
}

/// Adds the verdict on the job's load, before any number.
fn verdict(document: &CableRateDoc, lines: &mut Lines) {
    match document.outcome {
        Outcome::Fail => {
            lines.label("", &CableRatePageLabel::TooMuch);
            for what in document.fails.iter().cloned() {
                lines.label("  ", &PageLabel::Fails { what });
            }
        }
        Outcome::Pass => lines.label("", &CableRatePageLabel::KeepsBelow),
        Outcome::NotJudged => lines.label("", &CableRatePageLabel::NotJudged),
    }
}

fn of_stretch(document: &CableRateDoc, stretch: &StretchDoc, lines: &mut Lines) {
    let what = stretch.what.clone();
    lines.heading(&CableRatePageLabel::Stretch(StretchLabel::Title { what }));
    for line in &stretch.lines {
        lines.wrap("  ", line);
    }
    let at_load = match &stretch.at_load {
        Some(at) => StretchLabel::JobsLoad {
            at: at_words(at, lines),
        },
        None => StretchLabel::AtLoadNotKnown,
    };
    lines.label("  ", &CableRatePageLabel::Stretch(at_load));
    let at_limit = document.limit_degc.map(|degc| match &stretch.at_limit {
        Some(at) => StretchLabel::ComesTo {
            degc,
            at: at_words(at, lines),
        },
        None => StretchLabel::WithoutLoad { degc },
    });
    if let Some(label) = at_limit {
        lines.label("  ", &CableRatePageLabel::Stretch(label));
    }
    if let (Some(of), Some(degc)) = (&stretch.cyclic, document.limit_degc) {
        let label = StretchLabel::Cyclic {
            degc,
            peak_a: of.peak_a,
            factor_ratio: of.factor_ratio,
            loss_load_ratio: of.loss_load_ratio,
            source: of.source.clone(),
        };
        lines.label("  ", &CableRatePageLabel::Stretch(label));
    }
    if let Some(why) = stretch.cyclic_left_out.clone() {
        let label = StretchLabel::DayOfLoads { why };
        lines.label("  ", &CableRatePageLabel::Stretch(label));
    }
}

fn at_words(at: &RunAtDoc, lines: &Lines) -> String {
    lines.say(&CableRatePageLabel::Stretch(StretchLabel::AtLoad {
        load_a: at.load_a,
        conductor_degc: at.conductor_degc,
        shield_degc: at.shield_degc,
        surface_degc: at.surface_degc,
        conductor_w_per_m: at.conductor_w_per_m,
        shield_w_per_m: at.shield_w_per_m,
    }))
}
