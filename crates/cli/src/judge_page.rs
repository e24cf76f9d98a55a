//! Judge page: takes a job and the readings of its ends as built, and prints each reading beside its window.
//!
//! Not here: numbers and rules; all of them come from the document.

use crate::files;
use crate::lines::Lines;
use crate::masthead::{banner_of, mark, verdict};
use crate::time_made;
use jointwright_joint::built::{FindingDoc, FindingKind, Findings};
use jointwright_joint::end::EndId;
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::{mark_of, program};
use jointwright_wording::label::{JudgePageLabel, PageLabel};
use jointwright_wording::{Tongue, findings};
use std::collections::BTreeMap;
use std::path::PathBuf;

/// Kinds of findings, in the order in which a page lists them.
const ORDER: [FindingKind; 5] = [
    FindingKind::StopAndAsk,
    FindingKind::CannotTell,
    FindingKind::NoWindow,
    FindingKind::Missing,
    FindingKind::InWindow,
];

/// Arguments of `judge`.
#[derive(clap::Args)]
pub struct Arguments {
    /// Job file.
    job: PathBuf,
    /// File of readings as built; `plan --blank FILE` writes an empty one.
    readings: PathBuf,
    /// Print only the document, as JSON.
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    moment: time_made::Arguments,
}

/// Page or document, and the worst finding.
pub struct Done {
    /// Text to print.
    pub shown: String,
    /// Worst finding.
    pub worst: FindingKind,
}

/// Reads a job and its readings as built, and compares them.
///
/// # Errors
/// Lines for standard error.
pub fn run(arguments: &Arguments) -> Result<Done, Vec<String>> {
    let order = files::read(&arguments.job)?;
    let tongue = Tongue::of(&order.job);
    let source = files::read_readings(&arguments.readings);
    let source = source.map_err(|complaint| files::lines(tongue, &[complaint]))?;
    files::with_judged(order, |judged| {
        let job = &judged.inputs.order.job;
        let plan = mark_of(judged, &program(), &tongue);
        let built = jointwright_joint::built::read_built(&source, job, &plan.short)
            .map_err(|complaints| files::lines(tongue, &complaints))?;
        let document = findings(judged, &built).made_at(&arguments.moment.made());
        let shown = if arguments.json {
            let text = serde_json::to_string_pretty(&document);
            text.map_err(|error| vec![format!("jointwright: {error}")])? + "\n"
        } else {
            page(&document, tongue)
        };
        Ok(Done {
            shown,
            worst: document.worst,
        })
    })?
}

fn page(found: &Findings, tongue: Tongue) -> String {
    let mut lines = Lines::new(tongue);
    banner_of(found.invented.as_deref(), &mut lines);
    mark(&found.plan_mark, &mut lines);
    lines.wrap("", &format!("{}: {}", found.job, found.title));
    if found.is_withheld && found.plan_outcome != Outcome::Fail {
        lines.label("", &PageLabel::StopCutNothing);
    } else {
        verdict(found.plan_outcome, &found.plan_fails, &mut lines);
    }
    lines.heading(&JudgePageLabel::Title);
    for kind in ORDER {
        let n = of_kind(found, kind).count();
        lines.label("  ", &JudgePageLabel::Count { kind, n });
    }
    if found.n_in_job > 0 {
        lines.label("  ", &JudgePageLabel::InJob { n: found.n_in_job });
    }
    if found.is_withheld {
        lines.label("  ", &JudgePageLabel::Withheld);
    }
    for kind in ORDER {
        if of_kind(found, kind).next().is_none() {
            continue;
        }
        lines.heading(&JudgePageLabel::Heading { kind });
        if kind == FindingKind::StopAndAsk {
            call(found, &mut lines);
        }
        let untouched = untouched(found);
        for (end, n) in untouched.iter().filter(|_| kind == FindingKind::Missing) {
            let end = end.to_string();
            lines.label("  ", &JudgePageLabel::NothingRead { end, n: *n });
        }
        let is_touched = |of: &&FindingDoc| !untouched.contains_key(&of.slot.end);
        for finding in of_kind(found, kind).filter(is_touched) {
            one(finding, found.is_withheld, &mut lines);
        }
    }
    lines.blank();
    lines.label("", &JudgePageLabel::PlanChecks);
    lines.label("", &JudgePageLabel::NamedPersonDecides);
    lines.wrap("", &found.never);
    if of_kind(found, FindingKind::StopAndAsk).next().is_some() {
        lines.heading(&JudgePageLabel::Heading {
            kind: FindingKind::StopAndAsk,
        });
        call(found, &mut lines);
    }
    banner_of(found.invented.as_deref(), &mut lines);
    lines.text
}

/// Person to call when an end is out of its window.
fn call(found: &Findings, lines: &mut Lines) {
    let call = found.stop_and_call.clone();
    let (name, number) = (call.name, call.number);
    lines.label("  ", &JudgePageLabel::StopAndCall { name, number });
}

/// Ends at which nothing was read, each with the number of its slots.
fn untouched(found: &Findings) -> BTreeMap<EndId, usize> {
    let mut ends: BTreeMap<EndId, usize> = BTreeMap::new();
    for finding in &found.findings {
        *ends.entry(finding.slot.end.clone()).or_default() += 1;
    }
    let read = found.findings.iter().filter(|of| of.read.is_some());
    for finding in read {
        ends.remove(&finding.slot.end);
    }
    ends
}

fn of_kind(found: &Findings, kind: FindingKind) -> impl Iterator<Item = &FindingDoc> {
    found.findings.iter().filter(move |of| of.kind == kind)
}

/// One finding: what is in its window, or not read, takes one line.
fn one(finding: &FindingDoc, is_withheld: bool, lines: &mut Lines) {
    let head = format!("{}  {}", finding.slot.end, finding.what);
    match (finding.kind, &finding.read) {
        (FindingKind::InWindow, Some(read)) => {
            let read = format!("{head}: {read}");
            match finding.window.clone().filter(|_| !is_withheld) {
                Some(window) => {
                    let whose = finding.whose.clone();
                    let window = lines.say(&JudgePageLabel::Window { window, whose });
                    lines.wrap("  ", &format!("{read}; {window}"));
                }
                None => lines.wrap("  ", &read),
            }
        }
        (FindingKind::Missing, _) => lines.wrap("  ", &head),
        _ => {
            match &finding.why {
                Some(why) if !is_withheld => lines.wrap("  ", &format!("{head}: {why}")),
                _ => lines.wrap("  ", &head),
            }
            beside(finding, is_withheld, lines);
        }
    }
    if let Some(note) = finding.note.clone() {
        lines.label("      ", &JudgePageLabel::Note { note });
    }
}

/// Lines under a finding: reading, window, instrument, person.
fn beside(finding: &FindingDoc, is_withheld: bool, lines: &mut Lines) {
    const INDENT: &str = "      ";
    if let Some(read) = finding.read.clone() {
        lines.label(INDENT, &JudgePageLabel::Read { read });
    }
    let whose = finding.whose.clone();
    match finding.window.clone() {
        // The reason why there is no window may name a planned place.
        _ if is_withheld => {}
        Some(window) => lines.label(INDENT, &JudgePageLabel::Window { window, whose }),
        None => lines.label(INDENT, &JudgePageLabel::NoWindow { whose }),
    }
    match (finding.with.clone(), finding.by.clone()) {
        (Some(with), Some(by)) => lines.label(INDENT, &JudgePageLabel::With { with, by }),
        (None, Some(by)) => lines.label(INDENT, &JudgePageLabel::Seen { by }),
        _ => {}
    }
}
