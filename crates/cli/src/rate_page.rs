//! Rate page: a job in, the temperatures of its joint at a row of loads out, what governs, and how long more may flow.
//!
//! Not here: any number of its own; page and pictures are made from the document and the solved joint.

use crate::cable_rate_page;
use crate::files;
use crate::moment;
use crate::page::{Lines, banner_of, mark, verdict};
use jointwright_drawing::{along_axis, emergency_against_time};
use jointwright_joint::job::JointKind;
use jointwright_joint::judge::{Judged, with_judged, worst};
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::{LastsDoc, LoadDoc, RateDoc};
use jointwright_joint::warm::Rating;
use jointwright_wording::rate;
use std::path::PathBuf;

/// What every rating says.
const DECIDES_NOTHING: &str = "Computed from what is stated; decides nothing. The parts' own instructions, the owner's rules and the persons named for it prevail. A joint that was made otherwise than planned gets otherwise warm.";

/// What was asked on the command line.
#[derive(clap::Args)]
pub struct Arguments {
    /// Job file.
    job: PathBuf,
    /// Folder for the pictures: temperature along the axis, and emergency load against time, as SVG.
    #[arg(long, value_name = "FOLDER")]
    pictures: Option<PathBuf>,
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

/// Reads a job, solves its joint under load and writes the pictures that are asked for.
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
    let made = arguments.moment.made();
    if order.job.kind == JointKind::Cable {
        return cable_rate_page::run(&order, &made, arguments.json, arguments.pictures.is_some());
    }
    with_judged(order, |judged| judged_rating(arguments, judged, &made)).map_err(said)?
}

fn judged_rating(
    arguments: &Arguments,
    judged: &Judged<'_>,
    made: &str,
) -> Result<Done, Vec<String>> {
    let failed = |why: String| vec![format!("jointwright: {why}")];
    let rating = judged.inputs.warm.rating().map_err(failed)?;
    let document = rate(judged, rating.as_ref()).made_at(made);
    let mut shown = if arguments.json {
        serde_json::to_string_pretty(&document).map_err(|error| failed(error.to_string()))? + "\n"
    } else {
        page(&document)
    };
    if let Some(folder) = &arguments.pictures {
        let pictures = pictures(judged, rating.as_ref(), &document);
        let names: Vec<&str> = pictures.iter().map(|(name, _)| name.as_str()).collect();
        if names.is_empty() {
            shown_more(
                &mut shown,
                arguments.json,
                "No picture: no temperature is computed.\n",
            );
        } else {
            files::write(folder, &pictures).map_err(|error| failed(error.to_string()))?;
            let written = crate::page::written(&folder.display().to_string(), &names);
            shown_more(&mut shown, arguments.json, &written);
        }
    }
    Ok(Done {
        shown,
        outcome: worst(&judged.rulings),
    })
}

/// Adds to a page; a document stays as it is.
fn shown_more(shown: &mut String, is_document: bool, more: &str) {
    if !is_document {
        shown.push_str(more);
    }
}

/// Pictures that can be made, by name.
fn pictures(
    judged: &Judged<'_>,
    rating: Option<&Rating>,
    document: &RateDoc,
) -> Vec<(String, Vec<u8>)> {
    let along = along_axis(&judged.inputs.warm, rating, document);
    let emergency = emergency_against_time(document);
    let named = [
        ("temperature-along-axis.svg", along),
        ("emergency-against-time.svg", emergency),
    ];
    named
        .into_iter()
        .filter_map(|(name, svg)| Some((name.to_owned(), svg?.into_bytes())))
        .collect()
}

/// The page for the terminal.
fn page(document: &RateDoc) -> String {
    let mut lines = Lines::default();
    banner_of(document.invented.as_deref(), &mut lines);
    lines.wrap(
        "",
        &format!("{}: temperatures that the load brings", document.job),
    );
    mark(&document.plan_mark, &mut lines);
    verdict(document.outcome, &document.fails, &mut lines);
    let warm = &document.warm;
    if let Some(why) = &warm.why {
        lines.wrap("  ", &format!("{}: {why}", warm.state.words()));
    }
    for question in &warm.questions {
        lines.wrap("  ", &format!("ask: {question}"));
    }
    loads(document, &mut lines);
    governs(document, &mut lines);
    lasting(&document.emergency, &mut lines);
    for leg in &warm.legs {
        lines.blank();
        lines.add(&format!("LEG {}", leg.leg));
        for line in &leg.lines {
            lines.wrap("  ", line);
        }
    }
    if !warm.surroundings.is_empty() {
        lines.blank();
        lines.add("SURROUNDINGS, AS STATED OR AS COMPUTED");
        for line in &warm.surroundings {
            lines.wrap("  ", line);
        }
    }
    lines.blank();
    if !warm.assumes.is_empty() {
        lines.wrap("  ", &format!("Assumes: {}.", warm.assumes.join("; ")));
    }
    lines.wrap("  ", DECIDES_NOTHING);
    banner_of(document.invented.as_deref(), &mut lines);
    lines.text
}

/// Loads against temperatures.
fn loads(document: &RateDoc, lines: &mut Lines) {
    if document.loads.is_empty() {
        return;
    }
    lines.blank();
    lines.add("LOADS ALL THE TIME, AND TEMPERATURES IN DEGREES CELSIUS");
    lines.add(&format!(
        "  {:>6}  {:<4}{:>7}{:>8}{:>8}{:>8}{:>8}   {}",
        "times", "leg", "A", "joint", "rubber", "cable", "beyond", "exceeds"
    ));
    for row in &document.loads {
        load(document, row, lines);
    }
    lines.wrap("  ", "times: the job's load. joint: hottest conductor inside the body. cable: the same of this leg's cable, going through there without a joint. beyond: hottest conductor beyond the body. Each may be off by a hundredth of its rise, after a time by two.");
    lines.wrap("  ", "exceeds: limits of bodies by their papers and of the job that are passed; an empty place says nothing of other limits, and permits nothing.");
}

fn load(document: &RateDoc, row: &LoadDoc, lines: &mut Lines) {
    let ratio = format!("{:.2}", row.ratio);
    if let Some(why) = &row.why {
        lines.add(&format!("  {ratio:>6}  {why}"));
        return;
    }
    for (index, (at, of)) in row.legs.iter().zip(&document.warm.legs).enumerate() {
        let ratio = if index == 0 { ratio.as_str() } else { "" };
        let ours = row.passed.iter().filter(|passed| passed.leg == of.leg);
        let passed: Vec<&str> = ours.map(|passed| passed.of.word()).collect();
        lines.add(&format!(
            "  {ratio:>6}  {:<4}{:>7.0}{:>8.1}{:>8.1}{:>8.1}{:>8.1}   {}",
            of.leg,
            at.load_a,
            at.joint_degc,
            at.rubber_degc,
            at.cable_there_degc,
            at.cable_degc,
            passed.join(", ")
        ));
    }
}

/// Limits and the loads that reach them.
fn governs(document: &RateDoc, lines: &mut Lines) {
    if document.loads.is_empty() {
        return;
    }
    lines.blank();
    lines.add("WHICH LIMIT COMES FIRST, ALL LOADS IN PROPORTION");
    for of in &document.governs {
        let load = match (of.ratio, of.load_a) {
            (Some(0.0), _) => "passed without any load, by its surroundings".to_owned(),
            (Some(ratio), Some(load_a)) => {
                format!("{load_a:.0} A, {ratio:.2} times the job's load")
            }
            _ => "no load found".to_owned(),
        };
        lines.wrap("  ", &format!("leg {}: {}: {load}", of.leg, of.what));
    }
    for leg in document
        .warm
        .legs
        .iter()
        .filter(|leg| leg.limit_degc.is_none())
    {
        lines.wrap(
            "  ",
            &format!(
                "leg {}: its body states no temperature: not judged, whatever its cable may bear",
                leg.leg
            ),
        );
    }
}

/// How long loads may flow.
fn lasting(rows: &[LastsDoc], lines: &mut Lines) {
    if rows.is_empty() {
        return;
    }
    lines.blank();
    lines.add("EMERGENCIES, FROM THE JOB'S LOAD AT REST");
    lines.add(&format!(
        "  {:>6}  {:>10}  {:<12} A of each leg",
        "times", "to limit", "of"
    ));
    for row in rows {
        let lasts = match row.lasts_h {
            None => "over 72 h".to_owned(),
            Some(hours) if hours < 1.0 => format!("{:.1} min", hours * 60.0),
            Some(hours) => format!("{hours:.2} h"),
        };
        let of = match (&row.of, &row.leg) {
            (Some(of), Some(leg)) => format!("{}, {leg}", of.word()),
            _ => "-".to_owned(),
        };
        let loads: Vec<String> = row
            .loads_a
            .iter()
            .map(|load| format!("{load:.0}"))
            .collect();
        lines.add(&format!(
            "  {:>6.2}  {lasts:>10}  {of:<12} {}",
            row.ratio,
            loads.join(" ")
        ));
    }
    lines.wrap("  ", "to limit: until the conductor inside a body comes to the temperature that its paper gives for an emergency, or that of a cable to the highest in service by the job. Two hundredths of the rise more or less can be a tenth of such a time, near a load that is borne for long much more.");
}
