//! Rate page: takes a job, and prints the temperatures of its joint at several loads, the governing limits, and the time an emergency load may last.
//!
//! Not here: numbers; page and pictures take them from the document and the solved joint.

use crate::cable_rate_page;
use crate::files;
use crate::lines::Lines;
use crate::masthead::{banner_of, mark, verdict};
use crate::printed::Printed;
use crate::time_made;
use jointwright_drawing::{along_axis, emergency_against_time};
use jointwright_joint::job::JointKind;
use jointwright_joint::judge::{Judged, worst};
use jointwright_joint::plan::{LastsDoc, LoadDoc, RateDoc};
use jointwright_joint::said::Wording;
use jointwright_joint::warm::Rating;
use jointwright_wording::label::{
    GovernsLabel, LastingLabel, LoadsLabel, PageLabel, RatePageLabel,
};
use jointwright_wording::{Tongue, rate};
use std::path::PathBuf;

/// Arguments of `rate`.
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
    moment: time_made::Arguments,
}

/// Reads a job, solves its joint under load and writes the pictures, if they are asked for.
///
/// # Errors
/// Lines for standard error.
pub fn run(arguments: &Arguments) -> Result<Printed, Vec<String>> {
    let order = files::read(&arguments.job)?;
    let made = arguments.moment.made();
    if order.job.kind == JointKind::Cable {
        return cable_rate_page::run(&order, &made, arguments.json, arguments.pictures.is_some());
    }
    files::with_judged(order, |judged| judged_rating(arguments, judged, &made))?
}

fn judged_rating(
    arguments: &Arguments,
    judged: &Judged<'_>,
    made: &str,
) -> Result<Printed, Vec<String>> {
    let failed = |why: String| vec![format!("jointwright: {why}")];
    let tongue = Tongue::of(&judged.inputs.order.job);
    let rating = judged.inputs.warm.rating();
    let rating = rating.map_err(|why| failed(tongue.say(&why)))?;
    let document = rate(judged, rating.as_ref()).made_at(made);
    let tongue = Tongue::of_rate(&document);
    let mut shown = if arguments.json {
        serde_json::to_string_pretty(&document).map_err(|error| failed(error.to_string()))? + "\n"
    } else {
        page(&document)
    };
    if let Some(folder) = &arguments.pictures {
        let pictures = pictures(judged, rating.as_ref(), &document);
        let names: Vec<&str> = pictures.iter().map(|(name, _)| name.as_str()).collect();
        if names.is_empty() {
            let no_picture = tongue.label(&RatePageLabel::NoPicture) + "\n";
            shown_more(&mut shown, arguments.json, &no_picture);
        } else {
            files::write(folder, &pictures).map_err(|error| failed(error.to_string()))?;
            let folder = folder.display().to_string();
            let written = crate::written::written(tongue, &folder, &names);
            shown_more(&mut shown, arguments.json, &written);
        }
    }
    Ok(Printed {
        shown,
        outcome: worst(&judged.rulings),
    })
}

/// Adds text to a page; a document stays as it is.
fn shown_more(shown: &mut String, is_document: bool, more: &str) {
    if !is_document {
        shown.push_str(more);
    }
}

/// Pictures that can be made, each with its file name.
fn pictures(
    judged: &Judged<'_>,
    rating: Option<&Rating>,
    document: &RateDoc,
) -> Vec<(String, Vec<u8>)> {
    let tongue = Tongue::of(&judged.inputs.order.job);
    let along = along_axis(&judged.inputs.warm, rating, document, tongue);
    let emergency = emergency_against_time(document, tongue);
    let named = [
        ("temperature-along-axis.svg", along),
        ("emergency-against-time.svg", emergency),
    ];
    named
        .into_iter()
        .filter_map(|(name, svg)| Some((name.to_owned(), svg?.into_bytes())))
        .collect()
}

/// Returns the page for the terminal.
fn page(document: &RateDoc) -> String {
    let mut lines = Lines::new(Tongue::of_rate(document));
    banner_of(document.invented.as_deref(), &mut lines);
    let job = document.job.clone();
    lines.label("", &RatePageLabel::Title { job });
    mark(&document.plan_mark, &mut lines);
    verdict(document.outcome, &document.fails, &mut lines);
    let warm = &document.warm;
    if let Some(why) = &warm.why {
        lines.wrap("  ", &format!("{}: {why}", lines.tongue.state(warm.state)));
    }
    for question in warm.questions.iter().cloned() {
        lines.label("  ", &PageLabel::AskOf { question });
    }
    loads(document, &mut lines);
    governs(document, &mut lines);
    lasting(&document.emergency, &mut lines);
    for leg in &warm.legs {
        let mark = leg.leg.clone();
        lines.heading(&RatePageLabel::Leg { leg: mark });
        for line in &leg.lines {
            lines.wrap("  ", line);
        }
    }
    if !warm.surroundings.is_empty() {
        lines.heading(&RatePageLabel::Surroundings);
        for line in &warm.surroundings {
            lines.wrap("  ", line);
        }
    }
    lines.blank();
    if !warm.assumes.is_empty() {
        let what = warm.assumes.clone();
        lines.label("  ", &PageLabel::Assumes { what });
    }
    lines.label("  ", &RatePageLabel::DecidesNothing);
    banner_of(document.invented.as_deref(), &mut lines);
    lines.text
}

/// Adds the table of temperatures at each load.
fn loads(document: &RateDoc, lines: &mut Lines) {
    if document.loads.is_empty() {
        return;
    }
    lines.heading(&RatePageLabel::Loads(LoadsLabel::Title));
    lines.laid_out("  ", &RatePageLabel::Loads(LoadsLabel::Head));
    for row in &document.loads {
        load(document, row, lines);
    }
    lines.label("  ", &RatePageLabel::Loads(LoadsLabel::Columns));
    lines.label("  ", &RatePageLabel::Loads(LoadsLabel::Exceeds));
}

fn load(document: &RateDoc, row: &LoadDoc, lines: &mut Lines) {
    let ratio = format!("{:.2}", row.ratio);
    if let Some(why) = &row.why {
        lines.wrap("  ", &format!("{ratio:>6}  {why}"));
        return;
    }
    for (index, (at, of)) in row.legs.iter().zip(&document.warm.legs).enumerate() {
        let ratio = if index == 0 { ratio.as_str() } else { "" };
        let ours = row.passed.iter().filter(|passed| passed.leg == of.leg);
        let passed = ours.map(|passed| lines.say(&RatePageLabel::Limit { of: passed.of }));
        let passed: Vec<String> = passed.collect();
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

/// Adds the limits and the loads that reach them.
fn governs(document: &RateDoc, lines: &mut Lines) {
    if document.loads.is_empty() {
        return;
    }
    lines.heading(&RatePageLabel::Governs(GovernsLabel::Title));
    for of in &document.governs {
        let (leg, what) = (of.leg.clone(), of.what.clone());
        let label = match (of.ratio, of.load_a) {
            (Some(0.0), _) => GovernsLabel::WithoutLoad { leg, what },
            (Some(ratio), Some(load_a)) => GovernsLabel::AtLoad {
                leg,
                what,
                load_a,
                ratio,
            },
            _ => GovernsLabel::NoLoad { leg, what },
        };
        lines.label("  ", &RatePageLabel::Governs(label));
    }
    let legs = document.warm.legs.iter();
    for leg in legs.filter(|leg| leg.limit_degc.is_none()) {
        let leg = leg.leg.clone();
        let label = GovernsLabel::BodyStatesNone { leg };
        lines.label("  ", &RatePageLabel::Governs(label));
    }
}

/// Adds the times that emergency loads may last.
fn lasting(rows: &[LastsDoc], lines: &mut Lines) {
    if rows.is_empty() {
        return;
    }
    lines.heading(&RatePageLabel::Lasting(LastingLabel::Title));
    lines.laid_out("  ", &RatePageLabel::Lasting(LastingLabel::Head));
    for row in rows {
        let lasts = match row.lasts_h {
            None => lines.say(&RatePageLabel::Lasting(LastingLabel::Over)),
            Some(hours) if hours < 1.0 => format!("{:.1} min", hours * 60.0),
            Some(hours) => format!("{hours:.2} h"),
        };
        let of = match (row.of, &row.leg) {
            (Some(of), Some(leg)) => {
                format!("{}, {leg}", lines.say(&RatePageLabel::Limit { of }))
            }
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
    lines.label("  ", &RatePageLabel::Lasting(LastingLabel::ToLimit));
}
