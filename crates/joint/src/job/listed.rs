//! Listed: files of rows that a job names, and their rows.
//!
//! Why its own room: a spreadsheet holds readings, counts and lots in lines; the job names the file for each of these.
//!
//! Invariants: a named file that was not handed over is a complaint, never an empty list.
//! A row that stands in both the job and the file is refused.
//!
//! Not here: reading the file (the doors), its cells (`form`).

use super::reader::Listed;
use super::shape::{COUNT, JOB, LOT, READING};
use crate::form::{Complaint, Complaints, Record, Shape, Source, read, read_csv};
use crate::said::{CsvHint, CsvSaid};
use std::collections::BTreeMap;

/// Rows that may stand in a file of their own: the field of the job that names the file, and the shape of its rows.
const LISTS: &[(&str, &Shape)] = &[
    ("readings_csv", &READING),
    ("counts_csv", &COUNT),
    ("lots_csv", &LOT),
];

/// File of rows that a job names.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ListName {
    /// Field of the job that names it.
    pub field: &'static str,
    /// Name of the file.
    pub name: String,
    /// Place in the job that names it.
    pub at: usize,
}

/// File of rows as a door handed it over: the field of the job that names it, and its text or the reason why there is none.
pub type List = (&'static str, Result<Source, Complaint>);

/// Files of rows that a job names; empty if the job cannot be read.
pub fn list_names(source: &Source) -> Vec<ListName> {
    named(&read(source, &JOB, &mut Complaints::default()))
}

fn named(record: &Record) -> Vec<ListName> {
    let names = LISTS.iter().filter_map(|(field, _)| {
        Some(ListName {
            field,
            name: record.string(field)?,
            at: record.at(field),
        })
    });
    names.collect()
}

/// Returns the rows of the files that a job names.
pub(super) fn listed(
    job: &Source,
    record: &Record,
    lists: Vec<List>,
    complaints: &mut Complaints,
) -> Vec<Listed> {
    let mut sources = Vec::new();
    for (field, list) in lists {
        match list {
            Ok(source) => sources.push((field, source)),
            Err(complaint) => {
                complaints.add(complaint);
                sources.push((field, Source::new("", String::new())));
            }
        }
    }
    let mut listed = Vec::new();
    for name in named(record) {
        let source = sources.iter().position(|(field, _)| *field == name.field);
        let shape = LISTS.iter().find(|(field, _)| *field == name.field);
        let (Some(source), Some((_, shape))) = (source, shape) else {
            complaints.add(job.complaint(
                name.at,
                CsvSaid::NotAtHand {
                    file: name.name,
                    field: name.field.to_owned(),
                },
                CsvHint::WriteRowsInJob,
            ));
            continue;
        };
        let (_, source) = sources.swap_remove(source);
        let rows = read_csv(&source, shape, complaints);
        let of_job = record.records(shape.name);
        let of_job: BTreeMap<String, &Record> = of_job.map(|row| (row.said(), row)).collect();
        for row in &rows {
            if let Some(twin) = of_job.get(&row.said()) {
                complaints.add(source.complaint(
                    row.at,
                    CsvSaid::StandsInJob {
                        row: shape.name.to_owned(),
                        place: job.span(twin.at).to_string(),
                    },
                    CsvHint::TakeOneRowOut,
                ));
            }
        }
        listed.push(Listed {
            table: shape.name,
            source,
            rows,
        });
    }
    listed
}
