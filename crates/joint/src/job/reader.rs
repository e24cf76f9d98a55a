//! Reader: context in which the tables of a job are read, and complaints about them.
//!
//! Why its own file: every table is read by a function of its own, which takes the reader and a record.
//!
//! Invariants: while tables are read, nothing changes but the complaints and the file in which they stand.

use super::people::People;
use crate::cable::Words;
use crate::catalogue::Catalogue;
use crate::end::EndId;
use crate::form::{Complaints, Record, Source, Span};
use crate::said::{NameHint, NameSaid, RowHint, RowSaid, Said};
use jiff::civil::Date;
use std::collections::BTreeSet;

/// Rows of one file, with the table of the job that they belong to.
pub(super) struct Listed {
    /// Table.
    pub table: &'static str,
    /// File.
    pub source: Source,
    /// Rows.
    pub rows: Vec<Record>,
}

/// Reader of one job.
pub(super) struct JobReader<'a> {
    source: &'a Source,
    listed: &'a [Listed],
    complaints: &'a mut Complaints,
    pub(super) catalogue: &'a Catalogue,
    pub(super) people: People,
    legs: BTreeSet<String>,
    /// Whether the name of every leg could be read.
    legs_are_known: bool,
    phases: Option<i64>,
    /// Day of the work.
    date: Option<Date>,
    pub(super) words: Words,
}

impl<'a> JobReader<'a> {
    /// Reader of a job, with what all its tables need to know of it.
    pub(super) fn new(
        source: &'a Source,
        record: &Record,
        listed: &'a [Listed],
        catalogue: &'a Catalogue,
        complaints: &'a mut Complaints,
    ) -> Self {
        let head = record.record("job");
        let legs = record.records("leg");
        Self {
            source,
            listed,
            complaints,
            catalogue,
            people: People::read(record),
            legs: legs.filter_map(|leg| leg.string("id")).collect(),
            legs_are_known: record.item("leg").is_some()
                && record.records("leg").all(|leg| leg.item("id").is_some()),
            phases: head.and_then(|h| h.integer("phases")),
            date: head.and_then(|h| h.date("date")),
            words: super::words(head.and_then(|h| h.text("words"))),
        }
    }

    pub(super) fn complain(&mut self, at: usize, message: impl Into<Said>, hint: impl Into<Said>) {
        self.complaints
            .add(self.source.complaint(at, message, hint));
    }

    /// Forgets the complaints about missing fields of the table at an offset.
    pub(super) fn forget_missing(&mut self, at: usize) {
        self.complaints.forget_missing(self.source, at);
    }

    pub(super) fn place_of(&self, at: usize) -> Span {
        self.source.span(at)
    }

    /// Reads the rows of a list, each by itself; a row that cannot be read is left out, with a complaint.
    pub(super) fn rows<T, R: FromIterator<T>>(
        &mut self,
        record: &Record,
        name: &str,
        read: fn(&mut Self, &Record) -> Option<T>,
    ) -> R {
        let rows = record.records(name);
        let mut rows: Vec<T> = rows.filter_map(|row| read(self, row)).collect();
        let listed = self.listed;
        for list in listed.iter().filter(|list| list.table == name) {
            // A complaint about a row names its place in its own file.
            let job = std::mem::replace(&mut self.source, &list.source);
            rows.extend(list.rows.iter().filter_map(|row| read(self, row)));
            self.source = job;
        }
        rows.into_iter().collect()
    }

    pub(super) fn known_leg(&mut self, row: &Record, leg: &str) {
        if self.legs_are_known && !self.legs.contains(leg) {
            let legs = self.legs.iter().cloned().collect();
            let leg = leg.to_owned();
            self.complain(
                row.at("leg"),
                NameSaid::NoLeg { leg },
                NameHint::LegsAre { legs },
            );
        }
    }

    pub(super) fn end(&mut self, row: &Record) -> Option<EndId> {
        let (leg, phase) = (row.string("leg"), row.integer("phase"));
        if let Some(leg) = &leg {
            self.known_leg(row, leg);
        }
        if let (Some(phase), Some(phases)) = (phase, self.phases)
            && phase > phases
        {
            self.complain(
                row.at("phase"),
                RowSaid::PhaseBeyond { phase, phases },
                RowHint::ChangePhase,
            );
        }
        Some(EndId::new(&leg?, u8::try_from(phase?).ok()?))
    }

    /// Complains about a date after the day of the work: the plan can rest on nothing later.
    pub(super) fn not_after_the_work(&mut self, row: &Record) {
        if let (Some(date), Some(work)) = (row.date("date"), self.date)
            && date > work
        {
            self.complain(
                row.at("date"),
                RowSaid::DatedAfterWork {
                    date: date.to_string(),
                    work: work.to_string(),
                },
                RowHint::LookAtBothDates,
            );
        }
    }
}
