//! The core's hatch: a text goes in, a text comes out, in WebAssembly and natively alike.
//!
//! **What.** [`solve()`] answers a section case and [`plan()`] plans a joint; [`exports`] offers both to the program that runs the module.
//!
//! **Why separate.** A separate door keeps exported names out of the core, and shows that the core runs without any system.
//! The browser's app will replace it.
//!
//! **Invariants.** No trade rule and no formula stands here.
//! Every text gets an answer that is JSON: a document, or `{"complaints": [...]}`, or `{"error": "..."}`.
//! There is no clock: an argument limits the computation, and a document states no time; a plan says "time not given".
//!
//! **Not here.** Reading and writing files, and the page for people (`cli`).

pub mod exports;

use jointwright_joint::cable::Words;
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::form::{Complaint, Source};
use jointwright_joint::job::{self, ListName};
use jointwright_joint::judge;
use jointwright_numerics::case::{self, AnswersDoc, HeatCase, Question, Run, SecondsDoc, TubeCase};
use jointwright_numerics::field::{self, Options, Unwatched, Wanted};
use jointwright_numerics::heat::{self, HeatOptions};
use jointwright_wording::Tongue;
use serde_json::{Value, json};

/// Answers a section case, given as the text of its file.
///
/// The answer is the document of answers without its times.
/// Refinement stops at `n_unknowns_most` unknowns; an answer that had not settled by then says so.
///
/// ```
/// let text = r#"{"case": "coaxial", "about": "invented", "points": [[1, 0], [2, 0], [2, 5], [1, 5]],
///   "curves": [{"from": 0, "to": 1, "tag": "interior"}, {"from": 1, "to": 2, "tag": "outer"},
///              {"from": 2, "to": 3, "tag": "interior"}, {"from": 3, "to": 0, "tag": "inner"}],
///   "regions": [{"name": "wall", "material": "pe", "boundary": [1, 2, 3, 4]}],
///   "materials": {"pe": {"eps_r": 2.3}}, "potentials_kv": {"inner": 10, "outer": 0},
///   "wanted": [{"name": "phi", "kind": "potential-at", "at": [1.5, 2.5]}]}"#;
/// let answer: serde_json::Value = serde_json::from_str(&jointwright_hatch::solve(text, 10_000)).expect("JSON");
/// let potential_kv = answer["answers"][0]["value"].as_f64().expect("a number");
/// // V ln(b/r) / ln(b/a); the tolerance is the one that is asked of potentials, 1e-3.
/// assert!((potential_kv - 10.0 * (2.0f64 / 1.5).ln() / 2.0f64.ln()).abs() < 1e-3 * potential_kv);
/// ```
pub fn solve(case_text: &str, n_unknowns_most: usize) -> String {
    let case = match case::read_question(case_text) {
        Ok(Question::Section(case)) => case,
        Ok(Question::Tube(case)) => return of_tube(&case),
        Ok(Question::Heat(case)) => return of_heat(&case, n_unknowns_most),
        Err(complaints) => return refused(complaints.iter().map(ToString::to_string)),
    };
    let wanted: Vec<Wanted> = case.wanted.iter().map(|ask| ask.wanted.clone()).collect();
    let options = Options {
        n_unknowns_most,
        ..Options::default()
    };
    let solved = match field::solve(&case.section, &wanted, &options, &mut Unwatched) {
        Ok(solved) => solved,
        Err(error) => return failed(&error),
    };
    let run = Run {
        n_unknowns: solved.n_unknowns,
        residuals: solved.newton_residuals,
        cut_short: solved.cut_short,
        ..Run::default()
    };
    let document = case::document(&case, &solved.answers, run);
    untimed(document)
}

/// The answer to a tube of rubber.
fn of_tube(case: &TubeCase) -> String {
    match case.pressed() {
        Ok(pressed) => untimed(case.document(&pressed, SecondsDoc::default())),
        Err(error) => failed(&error),
    }
}

/// The answers to a section that conducts heat.
fn of_heat(case: &HeatCase, n_unknowns_most: usize) -> String {
    let options = HeatOptions {
        n_unknowns_most,
        ..HeatOptions::default()
    };
    match heat::solve(&case.section, &case.asks, &options) {
        Ok(solved) => untimed(case.document(&solved, SecondsDoc::default())),
        Err(error) => failed(&error),
    }
}

/// A document without the times of its run.
fn untimed(document: AnswersDoc) -> String {
    match serde_json::to_value(document) {
        Ok(Value::Object(mut fields)) => {
            // No time was measured; zero seconds would claim that one was.
            fields.shift_remove("seconds");
            Value::Object(fields).to_string()
        }
        Ok(other) => other.to_string(),
        Err(error) => failed(&error),
    }
}

/// Plans a joint, given as the text of its job; the answer is the document plan.json.
///
/// Only the demonstration catalogue is here, because other catalogues are files beside the job, and so are files of rows.
///
/// ```
/// let answer = jointwright_hatch::plan("id = 7");
/// assert!(answer.contains("complaints"));
/// ```
pub fn plan(job_text: &str) -> String {
    let source = match Source::from_bytes("job.toml", job_text.as_bytes()) {
        Ok(source) => source,
        Err(complaint) => return complained(Tongue::english(Words::Us), &[complaint]),
    };
    let catalogues = job::catalogue_names(&source)
        .into_iter()
        .map(|(name, at)| catalogue(&source, &name, at))
        .collect();
    let tongue = Tongue::of_source(&source);
    let said = |complaints: Vec<Complaint>| complained(tongue, &complaints);
    let lists = job::list_names(&source).into_iter();
    let lists = lists.map(|named| (named.field, Err(no_file(&source, &named))));
    let order = match job::read_order_from(&source, catalogues, lists.collect()) {
        Ok(order) => order,
        Err(complaints) => return said(complaints),
    };
    let written = judge::with_judged(order, |judged| {
        serde_json::to_string(&jointwright_wording::plan(judged))
            .unwrap_or_else(|error| failed(&error))
    });
    written.unwrap_or_else(said)
}

fn catalogue(source: &Source, name: &str, at: usize) -> Result<Source, Complaint> {
    if name == DEMONSTRATION {
        return Ok(Source::new(DEMONSTRATION, DEMONSTRATION_TEXT.to_owned()));
    }
    Err(source.complaint(
        at,
        format!("The catalogue \"{name}\" is a file, and no files are at hand here."),
        format!("Only \"{DEMONSTRATION}\" can be named here; the command line reads others."),
    ))
}

fn no_file(source: &Source, named: &ListName) -> Complaint {
    source.complaint(
        named.at,
        format!(
            "\"{}\" is a file of rows, and no files are at hand here.",
            named.name
        ),
        "Write its rows in the job; the command line reads the file.",
    )
}

fn complained(tongue: Tongue, complaints: &[Complaint]) -> String {
    let texts = tongue.complaints(complaints).into_iter();
    refused(texts.map(|text| text.to_string()))
}

fn refused(complaints: impl IntoIterator<Item = String>) -> String {
    let complaints: Vec<String> = complaints.into_iter().collect();
    json!({ "complaints": complaints }).to_string()
}

/// An error with its causes, as one line.
fn failed(error: &dyn std::error::Error) -> String {
    let mut words = error.to_string();
    let mut cause = error.source();
    while let Some(inner) = cause {
        words.push_str(&format!(": {inner}"));
        cause = inner.source();
    }
    json!({ "error": words }).to_string()
}

#[cfg(test)]
mod tests {
    const DOCK: &str = include_str!("../../../examples/dock-straight-pressed/job.toml");

    #[test]
    fn a_file_of_rows_is_refused_where_the_job_names_it() {
        let answer = super::plan(&format!("readings_csv = \"mine.csv\"\n{DOCK}"));
        assert!(answer.contains("job.toml:1:16 "), "{answer}");
        assert!(answer.contains("no files are at hand here"), "{answer}");
        assert!(super::plan(DOCK).contains("plan_mark"));
    }
}
