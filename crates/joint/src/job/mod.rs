//! Job: the order for one joint, with the cables that are in the vault, the readings of their ends and whose word counts.
//!
//! Why its own room: everything later is computed for exactly this joint and no other.
//!
//! Invariants: everything wrong in a job is found in one run; the order of rows and the comments change nothing; a kind of joint or cable that the program does not know is refused in words.
//!
//! Not here: what the readings mean (`survey`), whether parts fit (`fit`).

mod cable_of;
mod leg_shape;
mod shape;
mod types;
mod walk_job;

pub use shape::JOB;
pub use types::{
    Blank, Confirmation, Count, Duty, End, Job, JointKind, Leg, Lot, OwnerLimit, OwnerLink,
    OwnerWindow, PartNames, Person, Place, Reading, Room, System, TrialPress,
};

use crate::catalogue::Catalogue;
use crate::form::{Complaint, Complaints, Record, Source, Value, read};

/// A job and the parts it may use.
#[derive(Clone, Debug)]
pub struct Order {
    /// The job.
    pub job: Job,
    /// The parts.
    pub catalogue: Catalogue,
}

/// Names of the catalogues a job asks for, each with the line and column at which it does; empty where the job cannot say.
pub fn catalogue_names(source: &Source) -> Vec<(String, usize)> {
    let record = read(source, &JOB, &mut Complaints::default());
    record
        .list("catalogues")
        .filter_map(|item| match &item.value {
            Value::Text(name) => Some((name.clone(), item.at)),
            _ => None,
        })
        .collect()
}

/// Reads a job with its catalogues.
///
/// # Errors
/// Every complaint about the job and the catalogues, in order.
pub fn read_order(source: &Source, catalogues: &[Source]) -> Result<Order, Vec<Complaint>> {
    let mut complaints = Complaints::default();
    let catalogue = Catalogue::read(catalogues, &mut complaints);
    let record: Record = read(source, &JOB, &mut complaints);
    let job = walk_job::job(source, &record, &catalogue, &mut complaints);
    match job {
        Some(job) if complaints.is_empty() => Ok(Order { job, catalogue }),
        _ => Err(complaints.into_sorted()),
    }
}
