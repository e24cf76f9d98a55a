//! Rows that a job names as files beside it: which files those are, and their rows.
//!
//! Why its own room: a spreadsheet holds readings, counts and lots in lines; the job says which file holds which.
//!
//! Invariants: a file that is named and was not handed over is a complaint, never an empty list; a row that stands in the job and in the file is refused.
//!
//! Not here: reading the file (the doors), its cells (`form`).

use super::shape::{COUNT, JOB, LOT, READING};
use crate::form::{Complaint, Complaints, Record, Shape, Source, read, read_csv};
use crate::said::{CsvHint, CsvSaid};
use std::collections::BTreeMap;

/// What may stand in a file of its own: the field of the job that names it, and the shape of its rows.
const LISTS: &[(&str, &Shape)] = &[
    ("readings_csv", &READING),
    ("counts_csv", &COUNT),
    ("lots_csv", &LOT),
];

/// A file of rows that a job names.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ListName {
    /// Field of the job that names it.
    pub field: &'static str,
    /// Name of the file.
    pub name: String,
    /// Where the job names it.
    pub at: usize,
}

/// A file of rows as a door handed it over: the field of the job that names it, and its text or why there is none.
pub type List = (&'static str, Result<Source, Complaint>);

/// The files of rows that a job names; none where the job cannot say.
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

/// The rows of one file, by the table of the job that they belong to.
pub(super) struct Listed {
    /// The table.
    pub table: &'static str,
    /// The file.
    pub source: Source,
    /// Its rows.
    pub rows: Vec<Record>,
}

/// The rows of the files that a job names.
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
