//! Field page: takes a job, prints the fields of its legs, and draws the field of one.
//!
//! Not here: numbers; the page takes them from the plan document, the picture from the study.

use crate::files;
use crate::lines::Lines;
use crate::masthead::{banner, mark, verdict};
use crate::printed::Printed;
use crate::time_made;
use jointwright_drawing::leg_field;
use jointwright_joint::judge::{Judged, worst};
use jointwright_joint::limit::{Outcome, Rests, rests};
use jointwright_joint::plan::{GapDoc, GapState, LegDoc, Plan, RulingDoc, StressDoc};
use jointwright_joint::said::Wording as _;
use jointwright_wording::label::{FieldPageLabel, FieldTableLabel, PageLabel};
use jointwright_wording::{Tongue, fails, plan};
use std::path::PathBuf;

/// Arguments of `field`.
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
    moment: time_made::Arguments,
}

/// Reads a job, solves the fields of its legs and writes the picture, if one is asked for.
///
/// # Errors
/// Lines for standard error.
pub fn run(arguments: &Arguments) -> Result<Printed, Vec<String>> {
    let order = files::read(&arguments.job)?;
    files::with_judged(order, |judged| judged_field(arguments, judged))?
}

fn judged_field(arguments: &Arguments, judged: &Judged<'_>) -> Result<Printed, Vec<String>> {
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
            let file = path.display().to_string();
            let wrote = Tongue::of_plan(&document).label(&PageLabel::Wrote { file });
            shown.push_str(&format!("\n{wrote}\n"));
        }
    }
    Ok(Printed {
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

/// Returns the page for the terminal.
fn page(document: &Plan, fails: &[String], legs: &[&LegDoc]) -> String {
    let mut lines = Lines::new(Tongue::of_plan(document));
    banner(document, &mut lines);
    let job = document.job.id.clone();
    lines.label("", &FieldPageLabel::Title { job });
    mark(&document.plan_mark, &mut lines);
    verdict(document.outcome, fails, &mut lines);
    lines.label("  ", &FieldPageLabel::WorstOfWindows);
    for leg in legs {
        of_leg(document, leg, &mut lines);
    }
    lines.blank();
    let assumes = legs.iter().find_map(|leg| leg.field.as_ref());
    if let Some(field) = assumes {
        let what = field.assumes.clone();
        lines.label("  ", &PageLabel::Assumes { what });
    }
    let earthing = legs
        .iter()
        .find_map(|leg| leg.field.as_ref()?.voltage_in_earth_fault_kv);
    if let Some(kv) = earthing {
        lines.label("  ", &FieldPageLabel::EarthFault { kv });
    }
    lines.label("  ", &FieldPageLabel::DecidesNothing);
    banner(document, &mut lines);
    lines.text
}

fn of_leg(document: &Plan, leg: &LegDoc, lines: &mut Lines) {
    lines.heading(&FieldPageLabel::Leg {
        leg: leg.mark.clone(),
        cable: leg.cable.clone(),
    });
    let Some(field) = &leg.field else {
        lines.label("  ", &FieldPageLabel::BodyLeftOpen);
        return;
    };
    if let Some(why) = &field.why {
        lines.wrap("  ", &format!("{}: {why}", lines.tongue.state(field.state)));
    }
    for question in field.questions.iter().cloned() {
        lines.label("  ", &PageLabel::AskOf { question });
    }
    table(leg, lines);
    rulings(document, leg, lines);
    if document.must_stop() {
        lines.label("  ", &FieldPageLabel::Withheld);
        return;
    }
    for stress in &field.stresses {
        lines.wrap("  ", &format!("{}: {}", stress.words, stress.with));
    }
    for gap in &field.gaps {
        let (state, with) = (gap.state, gap.with.clone());
        lines.label("  ", &FieldPageLabel::GapWith { state, with });
    }
}

/// Adds the rulings of the field checks on a leg; those that pass are only counted.
fn rulings(document: &Plan, leg: &LegDoc, lines: &mut Lines) {
    let of_leg =
        |r: &&RulingDoc| rests(&r.check) == Rests::Field && r.leg.as_ref() == Some(&leg.mark);
    let (passing, open): (Vec<&RulingDoc>, Vec<&RulingDoc>) = document
        .rulings
        .iter()
        .filter(of_leg)
        .partition(|r| r.ruling == Outcome::Pass);
    lines.label("  ", &FieldPageLabel::Passing { n: passing.len() });
    for ruling in open {
        let word = lines.tongue.outcome(ruling.ruling).to_uppercase();
        let check = lines.tongue.check(&ruling.check);
        let why = ruling.why.as_deref().unwrap_or_default();
        lines.wrap("  ", &format!("{word} {check}: {why}"));
    }
}

/// Width of the column of names in the table, characters.
const NAME: usize = 46;

fn text(lines: &Lines, label: FieldTableLabel) -> String {
    lines.say(&FieldPageLabel::Table(label))
}

/// Adds the table of a leg's fields at the worst of its windows.
pub fn table(leg: &LegDoc, lines: &mut Lines) {
    let Some(field) = &leg.field else { return };
    if field.stresses.is_empty() && field.plug.is_none() {
        return;
    }
    let of = leg.mark.clone();
    lines.wrap("  ", &text(lines, FieldTableLabel::FieldOf { leg: of }));
    let voltage_kv = field.voltage_kv;
    let title = FieldTableLabel::ToEarth { voltage_kv };
    stresses(&field.stresses, title, lines);
    let trial_kv = field.trial_kv.unwrap_or(0.0);
    let title = FieldTableLabel::ToEarthTrial {
        voltage_kv: trial_kv,
    };
    stresses(&field.stresses_at_trial, title, lines);
    gaps(&field.gaps, lines, |what| FieldTableLabel::GapBeforeEdge {
        what,
    });
    let Some(plug) = &field.plug else { return };
    if let Some(why) = plug.why.clone() {
        let state = plug.state;
        lines.wrap("  ", &text(lines, FieldTableLabel::PlugNot { state, why }));
        return;
    }
    let title = text(lines, FieldTableLabel::Plug { voltage_kv });
    let here = text(lines, FieldTableLabel::Here);
    lines.named("  ", &title, NAME, &format!("{here:>8}"));
    for stress in &plug.stresses {
        lines.named("  ", &stress.words, NAME, &number(stress));
    }
    gaps(&plug.gaps, lines, |what| FieldTableLabel::FilmOfPlug {
        what,
    });
}

/// Text of a field strength; a question mark says that its error is larger than the tolerance.
fn number(stress: &StressDoc) -> String {
    let mark = if stress.is_settled { "" } else { " ?" };
    format!("{:>8.2}{mark}", stress.kv_per_mm)
}

fn gaps(gaps: &[GapDoc], lines: &mut Lines, name: fn(GapState) -> FieldTableLabel) {
    for gap in gaps {
        let of = text(lines, name(gap.state));
        let may_discharge = text(lines, FieldTableLabel::MayDischarge);
        let mut what = format!("{of} {may_discharge}");
        if what.chars().count() > NAME {
            lines.wrap("  ", &of);
            what = format!("  {may_discharge}");
        }
        let inception_kv = gap.inception_kv;
        let at = text(lines, FieldTableLabel::AsComputed { inception_kv });
        lines.add(&format!("  {what:<NAME$}{at}"));
    }
}

fn stresses(stresses: &[StressDoc], title: FieldTableLabel, lines: &mut Lines) {
    if stresses.is_empty() {
        return;
    }
    let title = text(lines, title);
    let here = text(lines, FieldTableLabel::Here);
    let allowed = text(lines, FieldTableLabel::WorstAllowed);
    lines.named("  ", &title, NAME, &format!("{here:>8}{allowed:>16}"));
    for stress in stresses {
        let allowed = stress
            .allowed_kv_per_mm
            .map_or("-".to_owned(), |most| format!("{most:.2}"));
        let here = number(stress);
        lines.named(
            "  ",
            &stress.words,
            NAME,
            &format!("{here:<10}{allowed:>14}"),
        );
    }
    if stresses.iter().any(|stress| !stress.is_settled) {
        lines.wrap("  ", &text(lines, FieldTableLabel::NotSettled));
    }
}
