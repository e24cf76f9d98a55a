//! Judge page: takes a job and the readings of its ends as built, and prints each reading beside its window.
//!
//! Not here: numbers and rules; all of them come from the document.

use crate::files;
use crate::lines::Lines;
use crate::masthead::{banner_of, mark, verdict};
use crate::time_made;
use jointwright_joint::built::{ChangeDoc, FindingDoc, FindingKind, Findings, PhaseDoc};
use jointwright_joint::end::EndId;
use jointwright_joint::limit::Outcome;
use jointwright_joint::plan::{RulingDoc, mark_of, program};
use jointwright_wording::label::{EndsLabel, JudgePageLabel, PageLabel};
use jointwright_wording::{Tongue, findings_of_ends};
use std::collections::BTreeMap;
use std::path::PathBuf;

/// Kinds of findings, in the order in which a page lists them.
const ORDER: [FindingKind; 6] = [
    FindingKind::NoWayBack,
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
    files::with_model(order, |model, judged| {
        let job = &judged.inputs.order.job;
        let plan = mark_of(judged, &program(), &tongue);
        let built = jointwright_joint::built::read_built(&source, job, &plan.short)
            .map_err(|complaints| files::lines(tongue, &complaints))?;
        let document = findings_of_ends(model, judged, &built)
            .map_err(|complaints| files::lines(tongue, &complaints))?
            .made_at(&arguments.moment.made());
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
        if kind >= FindingKind::StopAndAsk {
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
    match &found.phases {
        Some(phases) => ends(phases, &mut lines),
        None => {
            lines.blank();
            lines.label("", &JudgePageLabel::PlanChecks);
        }
    }
    lines.blank();
    lines.label("", &JudgePageLabel::NamedPersonDecides);
    lines.wrap("", &found.never);
    if found.worst >= FindingKind::StopAndAsk {
        let kind = FindingKind::StopAndAsk;
        lines.heading(&JudgePageLabel::Heading { kind });
        call(found, &mut lines);
    }
    banner_of(found.invented.as_deref(), &mut lines);
    lines.text
}

/// Every check again on the ends as built: what became worse, worst first.
fn ends(phases: &[PhaseDoc], lines: &mut Lines) {
    if phases.is_empty() {
        return;
    }
    lines.heading(&EndsLabel::Heading);
    for of in phases {
        let (phase, n, settled) = (of.phase, of.n_rulings, of.n_settled);
        lines.label("  ", &EndsLabel::Asked { phase, n, settled });
        if of.changes.is_empty() {
            lines.label("    ", &EndsLabel::NothingWorse);
        }
        for change in &of.changes {
            let (whom, check) = (
                lines.tongue.whom(&change.is),
                lines.tongue.check(&change.is.check),
            );
            let kind = change.kind;
            lines.label("    ", &EndsLabel::Worse { kind, whom, check });
            was_and_is(change, lines);
        }
        if !of.beside.is_empty() {
            let names = of.beside.clone();
            lines.label("    ", &EndsLabel::Beside { names });
        }
    }
    lines.label("  ", &EndsLabel::Assume);
}

/// Figures of a ruling, or the reason why it fails or is not judged.
fn said_of(ruling: &RulingDoc, lines: &Lines) -> Option<String> {
    let why = ruling.why.clone();
    let figures = lines.tongue.figures(ruling);
    match ruling.ruling {
        Outcome::Pass => figures,
        _ => why.or(figures),
    }
}

/// Lines under a question that became worse: the ruling of the plan, and the ruling as built.
fn was_and_is(change: &ChangeDoc, lines: &mut Lines) {
    let was = change.was.as_ref().and_then(|was| said_of(was, lines));
    if let Some(figures) = was {
        lines.label("      ", &EndsLabel::Was { figures });
    }
    if let Some(figures) = said_of(&change.is, lines) {
        lines.label("      ", &EndsLabel::Is { figures });
    }
}

/// Most effects of one reading that its finding lists.
const EFFECTS_MOST: usize = 3;

/// Lines under a finding out of its window: what its reading alone makes worse.
fn effect(finding: &FindingDoc, lines: &mut Lines) {
    const INDENT: &str = "      ";
    match finding.effect.as_deref() {
        None => lines.label(INDENT, &EndsLabel::AloneNotComputed),
        Some([]) => lines.label(INDENT, &EndsLabel::AloneNothing),
        Some(changes) => {
            for change in changes.iter().take(EFFECTS_MOST) {
                let check = lines.tongue.check(&change.is.check);
                let whom = lines.tongue.whom(&change.is);
                lines.label(INDENT, &EndsLabel::AloneWorse { whom, check });
            }
            // The first one governs.
            if let Some(change) = changes.first() {
                was_and_is(change, lines);
            }
        }
    }
}

/// Lines under a finding out of its window: ways back, and those that are not offered.
fn ways(finding: &FindingDoc, lines: &mut Lines) {
    const INDENT: &str = "      ";
    const DEEPER: &str = "        ";
    let Some(ways) = &finding.ways else {
        return;
    };
    if ways.offered.is_empty() {
        lines.label(INDENT, &EndsLabel::NoWay);
    } else {
        lines.label(INDENT, &EndsLabel::Ways);
    }
    for back in &ways.offered {
        let (way, source) = (back.way.clone(), back.source.clone());
        lines.label(INDENT, &EndsLabel::Way { way, source });
        let left = EndsLabel::Left { n: back.n_left };
        lines.label(DEEPER, &left);
        for condition in back.conditions.iter().cloned() {
            lines.label(DEEPER, &EndsLabel::Condition { condition });
        }
    }
    for why in ways.not_offered.iter().cloned() {
        lines.label(INDENT, &EndsLabel::NotOffered { why });
    }
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
            if finding.kind >= FindingKind::StopAndAsk && !is_withheld {
                effect(finding, lines);
                ways(finding, lines);
            }
        }
    }
    if let Some(decided) = finding.decided.clone() {
        lines.label("      ", &JudgePageLabel::Decided { decided });
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
