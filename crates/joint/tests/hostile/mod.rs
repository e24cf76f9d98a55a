//! Hostile input: any file is read without a panic, and every complaint has its place.
//!
//! Jobs and catalogues of the project are broken at random, as bytes and as values; a file that is still read without complaint must give a plan that keeps its promises.
//!
//! `JOINTWRIGHT_HOSTILE_CASES` sets the number of cases of each property, else `PROPTEST_CASES`, else 300.
//! `JOINTWRIGHT_HOSTILE_SEED` sets the seed, which is fixed so that two runs give the same result.

mod all_at_once;
pub(crate) mod mutate;
mod named;
mod promises;
pub(crate) mod random;
pub mod structure;

use crate::cases::texts;
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::form::{Complaint, Source};
use jointwright_joint::{job, judge, plan};

/// Text of a job of the examples.
macro_rules! example {
    ($slug:literal) => {
        include_str!(concat!("../../../../examples/", $slug, "/job.toml"))
    };
}

/// Jobs that are broken.
pub(crate) const JOBS: &[&str] = &[
    example!("larkspur-three-way"),
    example!("tannery-change"),
    example!("dock-straight-pressed"),
    example!("dock-straight-not-pressed"),
    example!("quarry-four-way"),
    include_str!("../../../../data/starter.toml"),
];

/// Result of a job and a catalogue.
pub(crate) enum Came {
    /// Complaints.
    Refused(Vec<Complaint>),
    /// A plan.
    Planned(Box<plan::Plan>),
}

/// Most cases of a property for which fields are solved as well.
const CASES_WITH_FIELDS_MOST: u32 = 1000;

/// Reads, judges and plans, and checks the promises of the result.
pub(crate) fn run(job_bytes: &[u8], catalogue_bytes: &[u8]) -> Result<Came, String> {
    let texts = [("job.toml", job_bytes), (DEMONSTRATION, catalogue_bytes)];
    let mut sources = Vec::new();
    for (name, bytes) in texts {
        match Source::from_bytes(name, bytes) {
            Ok(source) => sources.push(source),
            Err(complaint) => return refused(vec![complaint], &texts),
        }
    }
    let order = match job::read_order(&sources[0], &sources[1..]) {
        Ok(order) => order,
        Err(complaints) => return refused(complaints, &texts),
    };
    // A field takes a thousand times as long as all the rest; a run of many cases leaves it out.
    let is_long = random::config().cases > CASES_WITH_FIELDS_MOST;
    let judged = if is_long {
        judge::judge_unsolved(&order)
    } else {
        judge::judge(&order)
    };
    let judged = match judged {
        Ok(judged) => judged,
        Err(complaints) => return refused(complaints, &texts),
    };
    let document = jointwright_wording::plan(&judged);
    promises::of_plan(&judged, &document, &texts)?;
    Ok(Came::Planned(Box::new(document)))
}

fn refused(complaints: Vec<Complaint>, texts: &[(&str, &[u8])]) -> Result<Came, String> {
    promises::of_complaints(&complaints, texts)?;
    Ok(Came::Refused(complaints))
}

/// Complaints about a job that uses the demonstration catalogue, as `line:column message`.
pub(crate) fn complaints(job_text: &str) -> Vec<String> {
    complaints_with(job_text, DEMONSTRATION_TEXT)
}

/// Complaints about a job and a catalogue, as `path:line:column message`; empty if there is a plan.
pub(crate) fn complaints_with(job_text: &str, catalogue_text: &str) -> Vec<String> {
    match run(job_text.as_bytes(), catalogue_text.as_bytes()) {
        Ok(Came::Refused(complaints)) => {
            let texts = texts(&complaints);
            texts.iter().map(ToString::to_string).collect()
        }
        Ok(Came::Planned(_)) => Vec::new(),
        Err(broken) => panic!("{broken}"),
    }
}

/// Text with one passage exchanged, which must stand in it.
#[track_caller]
pub(crate) fn exchanged(text: &str, from: &str, to: &str) -> String {
    assert!(text.contains(from), "the text has no `{from}`");
    text.replacen(from, to, 1)
}
