//! Field page: a job in, the fields of its legs out, with a picture of one.
//!
//! Not here: any number of its own; the page is made from the plan document, the picture from the study.

use crate::files;
use crate::moment;
use crate::page::{Lines, banner, mark, verdict};
use jointwright_drawing::leg_field;
use jointwright_joint::judge::{Judged, with_judged, worst};
use jointwright_joint::limit::{Outcome, Rests, rests};
use jointwright_joint::plan::{GapDoc, LegDoc, Plan, RulingDoc, StressDoc, outcome_words};
use jointwright_joint::said::Wording as _;
use jointwright_wording::{Tongue, fails, plan};
use std::path::PathBuf;

/// What every page of fields says.
const DECIDES_NOTHING: &str =
    "Computed from the dimensions given; decides nothing. The parts' own instructions prevail.";

/// What was asked on the command line.
#[derive(clap::Args)]
pub struct Arguments {
    /// Job file.
    job: PathBuf,
    /// Leg; all legs where left out.
    #[arg(long)]
    leg: Option<String>,
    /// Write a picture of the leg's field, as SVG; asks for `--leg` where there are several.
    #[arg(long, value_name = "FILE")]
    svg: Option<PathBuf>,
    /// Print only the document, as JSON.
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    moment: moment::Arguments,
}

/// What came of it.
pub struct Done {
    /// What is printed.
    pub shown: String,
    /// Worst of all rulings on the joint: one joint has one verdict, at every door.
    pub outcome: Outcome,
}

/// Reads a job, solves the fields of its legs and writes the picture that is asked for.
///
/// # Errors
/// Lines for standard error.
pub fn run(arguments: &Arguments) -> Result<Done, Vec<String>> {
    let said = |complaints: Vec<jointwright_joint::form::Complaint>| {
        complaints
            .iter()
            .map(ToString::to_string)
            .collect::<Vec<_>>()
    };
    let order = files::read(&arguments.job).map_err(said)?;
    with_judged(order, |judged| judged_field(arguments, judged)).map_err(said)?
}

fn judged_field(arguments: &Arguments, judged: &Judged<'_>) -> Result<Done, Vec<String>> {
    let document = plan(judged).made_at(&arguments.moment.made());
    let fails = fails(judged);
    let names: Vec<&str> = document.legs.iter().map(|leg| leg.mark.as_str()).collect();
    let wanted: Vec<&LegDoc> = match &arguments.leg {
        Some(name) => document
            .legs
            .iter()
            .filter(|leg| leg.mark == *name)
            .collect(),
        None => document.legs.iter().collect(),
    };
    if wanted.is_empty() {
        return Err(vec![format!(
            "jointwright: no leg is named \"{}\"; the job has {}",
            arguments.leg.as_deref().unwrap_or_default(),
            names.join(", ")
        )]);
    }
    let mut shown = if arguments.json {
        let fields: Vec<serde_json::Value> = wanted.iter().map(|leg| of(leg)).collect();
        let whole = serde_json::json!({
            "invented": document.invented,
            "plan_mark": document.plan_mark,
            "outcome": document.outcome,
            "fails": fails,
            "legs": fields,
        });
        serde_json::to_string_pretty(&whole).map_err(|error| vec![error.to_string()])? + "\n"
    } else {
        page(&document, &fails, &wanted)
    };
    if let Some(path) = &arguments.svg {
        let [leg] = wanted[..] else {
            return Err(vec![format!(
                "jointwright: one picture shows one leg; name it with --leg: {}",
                names.join(", ")
            )]);
        };
        let svg = picture(judged, &document, leg).map_err(|why| {
            vec![format!(
                "jointwright: no picture of leg {}: {why}",
                leg.mark
            )]
        })?;
        files::write_file(path, &svg).map_err(|error| vec![format!("jointwright: {error}")])?;
        if !arguments.json {
            shown.push_str(&format!("\nWrote {}\n", path.display()));
        }
    }
    Ok(Done {
        shown,
        outcome: worst(&judged.rulings),
    })
}

fn of(leg: &LegDoc) -> serde_json::Value {
    serde_json::json!({ "leg": leg.mark, "field": leg.field })
}

fn picture(judged: &Judged<'_>, document: &Plan, leg: &LegDoc) -> Result<String, String> {
    let found = judged.inputs.legs.iter().find(|l| l.leg.id == leg.mark);
    let found = found.ok_or("it is not in the job")?;
    let tongue = Tongue::of(&judged.inputs.order.job);
    let shown = found.study.shown().map_err(|why| tongue.say(&why))?;
    Ok(leg_field(&leg.mark, shown, document).sheet())
}

/// The page for the terminal.
fn page(document: &Plan, fails: &[String], legs: &[&LegDoc]) -> String {
    let mut lines = Lines::default();
    banner(document, &mut lines);
    lines.wrap("", &format!("{}: electric field", document.job.id));
    mark(&document.plan_mark, &mut lines);
    verdict(document.outcome, fails, &mut lines);
    lines.wrap(
        "  ",
        "Worst of what the windows and readings of each leg leave open.",
    );
    for leg in legs {
        lines.blank();
        lines.wrap("", &format!("LEG {}: {}", leg.mark, leg.cable));
        let Some(field) = &leg.field else {
            lines.add("  its body is left open");
            continue;
        };
        if let Some(why) = &field.why {
            lines.wrap("  ", &format!("{}: {why}", field.state.words()));
        }
        for question in &field.questions {
            lines.wrap("  ", &format!("ask: {question}"));
        }
        table(leg, &mut lines);
        rulings(document, leg, &mut lines);
        if document.must_stop() {
            lines.add("  At which cuts each is so is withheld: this joint fails, or work stops.");
            continue;
        }
        for stress in &field.stresses {
            lines.wrap("  ", &format!("{}: {}", stress.words, stress.with));
        }
        for gap in &field.gaps {
            lines.wrap("  ", &format!("gap {}: {}", gap.state.word(), gap.with));
        }
    }
    lines.blank();
    let assumes = legs.iter().find_map(|leg| leg.field.as_ref());
    if let Some(field) = assumes {
        lines.wrap("  ", &format!("Assumes: {}.", field.assumes.join("; ")));
    }
    let earthing = legs
        .iter()
        .find_map(|leg| leg.field.as_ref()?.voltage_in_earth_fault_kv);
    if let Some(kv) = earthing {
        lines.wrap("  ", &format!("While an earth fault is cleared {kv:.2} kV rms stand between conductor and earth; gaps are held against that too."));
    }
    lines.wrap("  ", DECIDES_NOTHING);
    banner(document, &mut lines);
    lines.text
}

/// What the checks of fields say of a leg, but for what passes.
fn rulings(document: &Plan, leg: &LegDoc, lines: &mut Lines) {
    let of_leg =
        |r: &&RulingDoc| rests(&r.check) == Rests::Field && r.leg.as_ref() == Some(&leg.mark);
    let (passing, open): (Vec<&RulingDoc>, Vec<&RulingDoc>) = document
        .rulings
        .iter()
        .filter(of_leg)
        .partition(|r| r.ruling == Outcome::Pass);
    lines.add(&format!(
        "  {} {}",
        passing.len(),
        outcome_words(Outcome::Pass)
    ));
    for ruling in open {
        let word = outcome_words(ruling.ruling).to_uppercase();
        let why = ruling.why.as_deref().unwrap_or_default();
        lines.wrap(
            "  ",
            &format!("{word} {}: {why}", ruling.check.replace('_', " ")),
        );
    }
}

/// The fields of a leg at the worst of its windows.
pub fn table(leg: &LegDoc, lines: &mut Lines) {
    let Some(field) = &leg.field else { return };
    if field.stresses.is_empty() && field.plug.is_none() {
        return;
    }
    lines.wrap("  ", &format!("Field of leg {}", leg.mark));
    stresses(&field.stresses, field.voltage_kv, "", lines);
    let trial_kv = field.trial_kv.unwrap_or(0.0);
    stresses(&field.stresses_at_trial, trial_kv, ", trial", lines);
    gaps(&field.gaps, "gap before the edge", lines);
    let Some(plug) = &field.plug else { return };
    if let Some(why) = &plug.why {
        lines.wrap(
            "  ",
            &format!("tapered plug, {}: {why}", plug.state.words()),
        );
        return;
    }
    let title = format!("tapered plug, kV/mm rms at {:.2} kV", field.voltage_kv);
    lines.add(&format!("  {title:<46}{:>8}", "here"));
    for stress in &plug.stresses {
        lines.add(&format!("  {:<46}{}", stress.words, number(stress)));
    }
    gaps(&plug.gaps, "film of the plug", lines);
}

/// A field; one that is not as close as asked says so.
fn number(stress: &StressDoc) -> String {
    let mark = if stress.is_settled { "" } else { " ?" };
    format!("{:>8.2}{mark}", stress.kv_per_mm)
}

fn gaps(gaps: &[GapDoc], name: &str, lines: &mut Lines) {
    for gap in gaps {
        let mut what = format!("{name}, {}: may discharge at", gap.words());
        if what.len() > 46 {
            lines.add(&format!("  {name}, {}:", gap.words()));
            what = "  may discharge at".to_owned();
        }
        lines.add(&format!(
            "  {what:<46}{:>8.1} kV rms, as computed",
            gap.inception_kv
        ));
    }
}

fn stresses(stresses: &[StressDoc], voltage_kv: f64, when: &str, lines: &mut Lines) {
    if stresses.is_empty() {
        return;
    }
    let title = format!("kV/mm rms at {voltage_kv:.2} kV rms to earth{when}");
    lines.add(&format!(
        "  {title:<46}{:>8}{:>16}",
        "here", "worst allowed"
    ));
    for stress in stresses {
        let allowed = stress
            .allowed_kv_per_mm
            .map_or("-".to_owned(), |most| format!("{most:.2}"));
        let here = number(stress);
        lines.add(&format!("  {:<46}{here:<10}{allowed:>14}", stress.words));
    }
    if stresses.iter().any(|stress| !stress.is_settled) {
        lines.add("  ? did not come as close as asked; not judged");
    }
}
