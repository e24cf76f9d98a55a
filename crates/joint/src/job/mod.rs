//! Job: the order for one joint, with the cables in the vault, the readings of their ends and the people with authority.
//!
//! Why its own room: everything later is computed for exactly this joint and no other.
//!
//! Invariants: one run finds everything wrong in a job.
//! The order of rows and the comments change nothing.
//! A kind of joint or cable that the program does not plan is refused with a reason.
//!
//! Not here: conclusions from the readings (`survey`), the fit of parts (`fit`).

mod age;
mod as_built;
mod authority;
mod bridge;
mod bus;
mod cable_of;
mod condition;
mod contradiction;
mod count;
mod daily;
mod duty;
mod end_shape;
mod head_shape;
mod kind;
mod leg;
mod leg_shape;
mod listed;
mod lot;
mod one_run;
mod owner_rows;
mod owner_shape;
mod part_ends;
mod part_names;
mod people;
mod place;
mod ports;
mod reader;
mod reading;
mod shape;
mod shield;
mod shield_shape;
mod slots;
mod surround;
mod surround_shape;
mod system;
mod trial_press;
mod types;
mod unknown_part;
mod walk_job;

pub use crate::said::JointKind;
pub use as_built::{AsBuilt, LegAsBuilt};
pub use bridge::BridgeOff;
pub use bus::Blank;
pub use condition::{Moisture, Surface};
pub use count::Count;
pub use daily::{Daily, Day};
pub use duty::Duty;
pub(crate) use end_shape::{ONE_LEG, ONE_PHASE};
pub use leg::{Leg, Room};
pub use listed::{List, ListName, list_names};
pub use lot::Lot;
pub use owner_rows::{Closing, Confirmation, OwnerLimit, OwnerLink, OwnerWindow};
pub use part_names::PartNames;
pub use people::Person;
pub use place::Place;
pub use reading::Reading;
pub use shape::JOB;
pub use shield::{BondingLead, Contact, Continuity, Formation, ShieldRun};
pub use surround::{AirForm, Bank, Drying, Duct, DuctFilling, Soil, Surrounding};
pub use system::System;
pub use trial_press::TrialPress;
pub use types::{End, Job};

use crate::cable::{TABLE_TEXTS, Words};
use crate::catalogue::Catalogue;
use crate::fingerprint::Fingerprint;
use crate::form::{Complaint, Complaints, Record, Source, Value, read};
use crate::limit::MEMORY_TEXT;
use crate::said::Language;
use reader::Listed;

/// A job, and the parts that it may use.
#[derive(Clone, Debug)]
pub struct Order {
    /// Job.
    pub job: Job,
    /// Parts.
    pub catalogue: Catalogue,
    /// Fingerprint of all input texts: the job, the catalogues in their order, the job's files of rows, and the embedded texts that judge.
    pub went_in: Fingerprint,
}

/// Names of the catalogues that a job asks for, each once, with their places in the job; empty if the job cannot be read.
pub fn catalogue_names(source: &Source) -> Vec<(String, usize)> {
    let record = read(source, &JOB, &mut Complaints::default());
    let mut names: Vec<(String, usize)> = Vec::new();
    for item in record.list("catalogues") {
        if let Value::Text(name) = &item.value
            && !names.iter().any(|(n, _)| n == name)
        {
            names.push((name.clone(), item.at));
        }
    }
    names
}

/// Language and practice of a job, whatever else is wrong in it; English and US practice if the job cannot be read.
pub fn tongue(source: &Source) -> (Language, Words) {
    let record = read(source, &JOB, &mut Complaints::default());
    let head = record.record("job");
    let text = |name: &str| head.and_then(|head| head.text(name));
    (language(text("language")), words(text("words")))
}

fn language(word: Option<&str>) -> Language {
    match word {
        Some("es") => Language::Spanish,
        _ => Language::English,
    }
}

fn words(word: Option<&str>) -> Words {
    match word {
        Some("iec") => Words::Iec,
        _ => Words::Us,
    }
}

/// Reads a job with its catalogues.
///
/// # Errors
/// Every complaint about the job and the catalogues, in order.
pub fn read_order(source: &Source, catalogues: &[Source]) -> Result<Order, Vec<Complaint>> {
    let catalogues = catalogues.iter().cloned().map(Ok).collect();
    read_order_from(source, catalogues, Vec::new())
}

/// Reads a job with its catalogues and files of rows, some of which the door could not read.
///
/// # Errors
/// Every complaint about the job, the catalogues and the rows, the door's among them, in order.
pub fn read_order_from(
    source: &Source,
    catalogues: Vec<Result<Source, Complaint>>,
    lists: Vec<List>,
) -> Result<Order, Vec<Complaint>> {
    let mut complaints = Complaints::default();
    let mut sources = Vec::new();
    for catalogue in catalogues {
        match catalogue {
            Ok(catalogue) => sources.push(catalogue),
            Err(complaint) => complaints.add(complaint),
        }
    }
    let are_opened = complaints.is_empty();
    let record: Record = read(source, &JOB, &mut complaints);
    // If a name of a catalogue cannot be read, no part is reported as missing.
    let are_all_read = are_opened && record.item("catalogues").is_some();
    let today = record.record("job").and_then(|head| head.date("date"));
    let catalogue = Catalogue::read_for(today, &sources, are_all_read, &mut complaints);
    if !record.is_whole() {
        // Facts hidden by a broken line would cause complaints about facts that are not missing.
        return Err(complaints.into_sorted());
    }
    let listed = listed::listed(source, &record, lists, &mut complaints);
    match walk_job::job(source, &record, &listed, &catalogue, &mut complaints) {
        Some(job) if complaints.is_empty() => Ok(Order {
            job,
            catalogue,
            went_in: went_in(source, &sources, &listed),
        }),
        _ => Err(complaints.into_sorted()),
    }
}

/// Fingerprint of the texts that make a joint; names of files are no part of it, except where the job itself states them.
fn went_in(job: &Source, catalogues: &[Source], listed: &[Listed]) -> Fingerprint {
    let catalogues = catalogues.iter().map(|source| ("catalogue", source.text()));
    let listed = listed.iter().map(|list| (list.table, list.source.text()));
    let embedded = TABLE_TEXTS.into_iter().chain([("limits", MEMORY_TEXT)]);
    let texts = [("job", job.text())].into_iter();
    Fingerprint::of(texts.chain(catalogues).chain(listed).chain(embedded))
}
