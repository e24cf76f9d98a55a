//! Reading: the file of readings as built, read against its table of fields.
//!
//! Invariants: one run finds everything wrong; a row without a value is a blank that was not filled, and no reading.

use super::shape::READINGS;
use super::words::{Table, words_of};
use crate::catalogue::layer;
use crate::end::EndId;
use crate::form::spoken::bare;
use crate::form::{Complaint, Complaints, Record, Source, Span, Value, read};
use crate::job::Job;
use crate::plane::Plane;
use crate::said::{BuiltHint, BuiltSaid, NameHint, NameSaid, RowHint, RowSaid, Said};
use crate::slot::{Measured, Slot};
use jiff::civil::{Date, Time};
use jointwright_units::{Interval, Length};
use std::collections::{BTreeMap, BTreeSet};

/// Value of a reading; every error is either way.
#[derive(Clone, Debug, PartialEq)]
pub enum Found {
    /// Lengths, and the error of each.
    Lengths(Vec<Length>, Length),
    /// Resistance and its error, ohm.
    Ohm(f64, f64),
    /// Torques, and the error of each, N·m.
    Torques(Vec<f64>, f64),
    /// Count.
    Count(i64),
    /// Word of what was seen.
    Word(String),
}

impl Found {
    /// Least and greatest length with the error of the instrument; `None` for anything else.
    pub(super) fn interval(&self) -> Option<Interval> {
        match self {
            Found::Lengths(values, error) => {
                let read = Interval::hull(values.iter().copied());
                read.map(|read| read.widened(*error))
            }
            _ => None,
        }
    }

    /// Whether two readings of one thing can both be right: the same word or count, or values that meet within both errors.
    pub(super) fn agrees(&self, other: &Found) -> bool {
        match (self, other) {
            (Found::Lengths(one, by), Found::Lengths(other, other_by)) => {
                let (one, other) = (Interval::hull(one.clone()), Interval::hull(other.clone()));
                let (Some(one), Some(other)) = (one, other) else {
                    return true;
                };
                one.widened(*by).meet(other.widened(*other_by)).is_some()
            }
            (Found::Ohm(one, by), Found::Ohm(other, other_by)) => {
                (one - other).abs() <= by + other_by
            }
            (Found::Count(one), Found::Count(other)) => one == other,
            (Found::Word(one), Found::Word(other)) => one == other,
            _ => true,
        }
    }
}

/// One reading as built.
#[derive(Clone, Debug, PartialEq)]
pub struct BuiltReading {
    /// Slot that it fills.
    pub slot: Slot,
    /// Value.
    pub found: Found,
    /// Kind and number of the instrument; `None` for a count and for what was seen.
    pub with: Option<String>,
    /// Kind of the instrument alone.
    pub instrument: Option<String>,
    /// Temperature of a diameter's layer, degrees Celsius, if it was read.
    pub degc: Option<f64>,
    /// Method of a test for moisture.
    pub how: Option<String>,
    /// Person who read it.
    pub by: String,
    /// Day of the reading.
    pub date: Date,
    /// Time of the reading, if it was written down.
    pub time: Option<Time>,
    /// Decision of a named person about it.
    pub decision: Option<Decision>,
    /// Note of the crew, in its own words.
    pub note: Option<String>,
    /// Place in the file.
    pub place: Span,
}

/// Decision of a named person about a reading.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Decision {
    /// Person who decided.
    pub by: String,
    /// Role of that person.
    pub role: String,
    /// Authority on which it rests.
    pub authority: String,
    /// Way in which the person was reached.
    pub reached: String,
    /// Day.
    pub date: Date,
    /// Time of day.
    pub time: Time,
    /// Decision in that person's words.
    pub what: String,
}

/// Readings as built of one joint.
#[derive(Clone, Debug, PartialEq)]
pub struct Built {
    /// Readings, in the order of the file's tables.
    pub readings: Vec<BuiltReading>,
}

/// Reads a file of readings as built of a job, against the plan with a short mark.
///
/// # Errors
/// Every complaint about the file, in order.
pub fn read_built(source: &Source, job: &Job, plan: &str) -> Result<Built, Vec<Complaint>> {
    let mut complaints = Complaints::default();
    let record = read(source, &READINGS, &mut complaints);
    if !record.is_whole() {
        return Err(complaints.into_sorted());
    }
    let mut reader = Reader {
        source,
        job,
        complaints: &mut complaints,
        by: record.string("by"),
        date: record.date("date"),
        instruments: BTreeMap::new(),
        decisions: BTreeMap::new(),
        named: BTreeSet::new(),
    };
    reader.head(&record, plan);
    reader.instruments(&record);
    reader.decisions(&record);
    let mut readings = Vec::new();
    for table in Table::ALL {
        for row in record.records(table.name()) {
            readings.extend(reader.row(table, row));
        }
    }
    reader.idle_decisions(&record);
    if complaints.is_empty() {
        Ok(Built { readings })
    } else {
        Err(complaints.into_sorted())
    }
}

/// An instrument of the file.
struct Instrument {
    kind: String,
    words: String,
    error: Option<Length>,
    error_ohm: Option<f64>,
    error_nm: Option<f64>,
}

struct Reader<'a> {
    source: &'a Source,
    job: &'a Job,
    complaints: &'a mut Complaints,
    by: Option<String>,
    date: Option<Date>,
    instruments: BTreeMap<String, Instrument>,
    decisions: BTreeMap<String, Decision>,
    /// Decisions that some row names.
    named: BTreeSet<String>,
}

impl Reader<'_> {
    fn complain(&mut self, at: usize, message: impl Into<Said>, hint: impl Into<Said>) {
        self.complaints
            .add(self.source.complaint(at, message, hint));
    }

    /// Complains about readings of another job, or against another plan.
    fn head(&mut self, record: &Record, plan: &str) {
        if let Some(read) = record.string("job").filter(|read| *read != self.job.id) {
            let job = self.job.id.clone();
            let message = BuiltSaid::OtherJob { read, job };
            self.complain(record.at("job"), message, BuiltHint::JudgeWithItsJob);
        }
        if let Some(read) = record.string("plan").filter(|read| read != plan) {
            let plan = plan.to_owned();
            let message = BuiltSaid::OtherPlan { read, plan };
            self.complain(record.at("plan"), message, BuiltHint::NameItsPlan);
        }
    }

    /// Time of day of a field; complains if it is none.
    fn time(&mut self, row: &Record) -> Option<Time> {
        let read = bare(row.text("time")?).to_owned();
        let is_plain = read.len() == "14:20".len() && read.is_ascii();
        let time = read.parse::<Time>().ok().filter(|_| is_plain);
        if time.is_none() {
            let message = BuiltSaid::NoTime { read };
            self.complain(row.at("time"), message, BuiltHint::WriteTime);
        }
        time
    }

    fn decisions(&mut self, record: &Record) {
        for row in record.records("decision") {
            let time = self.time(row);
            let decision = || {
                Some(Decision {
                    by: row.string("by")?,
                    role: row.string("role")?,
                    authority: row.string("authority")?,
                    reached: row.string("reached")?,
                    date: row.date("date")?,
                    time: time?,
                    what: row.string("what")?,
                })
            };
            let (Some(id), Some(decision)) = (row.string("id"), decision()) else {
                continue;
            };
            if self.decisions.insert(id.clone(), decision).is_some() {
                let message = BuiltSaid::NamedTwice { named: id };
                self.complain(row.at("id"), message, BuiltHint::OneRowEach);
            }
        }
    }

    /// Decision that a row names.
    fn decision(&mut self, row: &Record) -> Option<Decision> {
        let named = row.string("decision")?;
        self.named.insert(named.clone());
        let decision = self.decisions.get(&named).cloned();
        if decision.is_none() {
            let hint = BuiltHint::DecisionsAre {
                names: self.decisions.keys().cloned().collect(),
            };
            let message = BuiltSaid::NoDecision { named };
            self.complain(row.at("decision"), message, hint);
        }
        decision
    }

    /// Complains about decisions that no row names: nobody could tell what was decided upon.
    fn idle_decisions(&mut self, record: &Record) {
        for row in record.records("decision") {
            if let Some(id) = row.string("id").filter(|id| !self.named.contains(id)) {
                let message = BuiltSaid::IdleDecision { named: id };
                self.complain(row.at("id"), message, BuiltHint::NameItInItsRow);
            }
        }
    }

    fn instruments(&mut self, record: &Record) {
        for row in record.records("instrument") {
            let (Some(id), Some(kind)) = (row.string("id"), row.string("kind")) else {
                continue;
            };
            let words = match row.string("serial") {
                Some(serial) => format!("{kind} {serial}"),
                None => kind.clone(),
            };
            let instrument = Instrument {
                kind,
                words,
                error: row.length("error"),
                error_ohm: row.number("error_ohm"),
                error_nm: row.number("error_torque"),
            };
            if self.instruments.insert(id.clone(), instrument).is_some() {
                let message = BuiltSaid::NamedTwice { named: id };
                self.complain(row.at("id"), message, BuiltHint::OneRowEach);
            }
        }
    }

    /// Reading of a row; `None` if it is a blank, or with a complaint.
    fn row(&mut self, table: Table, row: &Record) -> Option<BuiltReading> {
        let end = self.end(row);
        let measured = self.measured(table, row)?;
        let field = table.value();
        let is_empty = match row.item(field).map(|item| &item.value) {
            Some(Value::List(items)) => items.is_empty(),
            Some(_) => false,
            None => !row.is_given(field),
        };
        let decision = self.decision(row);
        if is_empty {
            let lost = ["note", "decision"].into_iter();
            for field in lost.filter(|field| row.is_given(field)) {
                let at = row.at(field);
                self.complain(at, BuiltSaid::NoteWithoutValue, BuiltHint::WriteItsValue);
            }
            return None;
        }
        let time = self.time(row);
        let found = self.found(table, row, &measured);
        let by = row.string("by").or_else(|| self.by.clone());
        if by.is_none() {
            self.complain(row.at, BuiltSaid::NobodyRead, BuiltHint::WriteWho);
        }
        let date = row.date("date").or(self.date);
        if date.is_none() {
            self.complain(row.at, BuiltSaid::NoDay, BuiltHint::WriteDay);
        }
        Some(BuiltReading {
            slot: Slot::new(&end?, measured),
            found: found?,
            with: self.instrument(row).map(|with| with.words.clone()),
            instrument: self.instrument(row).map(|with| with.kind.clone()),
            degc: row.number("temperature"),
            how: row.string("how"),
            by: by?,
            date: date?,
            time,
            decision,
            note: row.string("note"),
            place: self.source.span(row.at),
        })
    }

    /// End of a row, which the job must have.
    fn end(&mut self, row: &Record) -> Option<EndId> {
        let (leg, phase) = (row.string("leg"), row.integer("phase"));
        let legs: Vec<String> = self.job.legs.iter().map(|leg| leg.id.clone()).collect();
        let phases = i64::from(self.job.phases);
        if let Some(leg) = leg.clone().filter(|leg| !legs.contains(leg)) {
            let at = row.at("leg");
            self.complain(at, NameSaid::NoLeg { leg }, NameHint::LegsAre { legs });
        }
        if let Some(phase) = phase.filter(|phase| *phase > phases) {
            let at = row.at("phase");
            let message = RowSaid::PhaseBeyond { phase, phases };
            self.complain(at, message, RowHint::ChangePhase);
        }
        Some(EndId::new(&leg?, u8::try_from(phase?).ok()?))
    }

    /// Text of a field that goes with a quantity, and only with it.
    fn beside(&mut self, row: &Record, field: &str, of: &str, wanted: bool) -> Option<String> {
        let (of, field) = (of.to_owned(), field.to_owned());
        let at = row.at(&field);
        match (wanted, row.is_given(&field)) {
            (true, false) => {
                let hint = BuiltHint::WriteField {
                    field: field.clone(),
                };
                self.complain(at, BuiltSaid::Needs { of, field }, hint);
                None
            }
            (false, true) => {
                let hint = BuiltHint::LeaveOut {
                    field: field.clone(),
                };
                self.complain(at, BuiltSaid::NotWith { of, field }, hint);
                None
            }
            _ => row.string(&field),
        }
    }

    /// Quantity of a row.
    fn measured(&mut self, table: Table, row: &Record) -> Option<Measured> {
        let of = row.string("of")?;
        let measured = match table {
            Table::Along => {
                let plane = Plane::from_name(&of);
                let from = if plane.is_some() {
                    row.text("from").and_then(Plane::from_name)
                } else {
                    self.beside(row, "from", &of, false);
                    None
                };
                match (plane, from) {
                    (Some(to), Some(from)) => Measured::Distance { from, to },
                    (Some(plane), None) => Measured::Place { plane },
                    (None, _) => named(&of)?,
                }
            }
            Table::Across => {
                let over = self.beside(row, "over", &of, of == "diameter");
                match of.as_str() {
                    "diameter" => Measured::Diameter {
                        over: layer(&over?)?,
                    },
                    _ => named(&of)?,
                }
            }
            Table::Resistance => {
                let to = self.beside(row, "to", &of, of == "bond");
                match of.as_str() {
                    "contact" => Measured::ContactResistance,
                    "bond" => Measured::BondResistance { to: to? },
                    _ => Measured::ShieldResistance,
                }
            }
            Table::Torque => Measured::BoltTorque,
            Table::Count => named(&of)?,
            Table::Seen => {
                let on = self.beside(row, "on", &of, of == "surface");
                match of.as_str() {
                    "surface" => Measured::Surface { on: layer(&on?)? },
                    _ => named(&of)?,
                }
            }
        };
        Some(measured)
    }

    /// Value of a row that is no blank, with the error of its instrument.
    fn found(&mut self, table: Table, row: &Record, measured: &Measured) -> Option<Found> {
        match table {
            Table::Along | Table::Across => {
                let error = self.error(table, row, |with| with.error)?;
                Some(Found::Lengths(row.lengths(table.value()), error))
            }
            Table::Resistance => {
                let error = self.error(table, row, |with| with.error_ohm)?;
                Some(Found::Ohm(row.number(table.value())?, error))
            }
            Table::Torque => {
                let error = self.error(table, row, |with| with.error_nm)?;
                let numbers = row.list(table.value()).filter_map(|item| match item.value {
                    Value::Number(nm) => Some(nm),
                    _ => None,
                });
                Some(Found::Torques(numbers.collect(), error))
            }
            Table::Count => Some(Found::Count(row.integer(table.value())?)),
            Table::Seen => {
                let found = row.string(table.value())?;
                let words = words_of(measured);
                if words.is_empty() || words.contains(&found.as_str()) {
                    return Some(Found::Word(found));
                }
                let of = row.string("of")?;
                let words = words.iter().map(|word| (*word).to_owned()).collect();
                self.complain(
                    row.at(table.value()),
                    BuiltSaid::NoWordFor { found, of },
                    BuiltHint::WordsAre { words },
                );
                None
            }
        }
    }

    fn instrument(&self, row: &Record) -> Option<&Instrument> {
        self.instruments.get(row.text("with")?)
    }

    /// Error of a row's instrument.
    fn error<T>(
        &mut self,
        table: Table,
        row: &Record,
        of: impl Fn(&Instrument) -> Option<T>,
    ) -> Option<T> {
        let Some(with) = row.string("with") else {
            let (of, field) = (row.string("of")?, "with".to_owned());
            let hint = BuiltHint::InstrumentsAre {
                names: self.instruments.keys().cloned().collect(),
            };
            self.complain(row.at, BuiltSaid::Needs { of, field }, hint);
            return None;
        };
        let Some(instrument) = self.instruments.get(&with) else {
            let hint = BuiltHint::InstrumentsAre {
                names: self.instruments.keys().cloned().collect(),
            };
            let message = BuiltSaid::NoInstrument { named: with };
            self.complain(row.at("with"), message, hint);
            return None;
        };
        let error = of(instrument);
        if error.is_none() {
            let field = table.error().unwrap_or_default().to_owned();
            let message = BuiltSaid::HasNoError {
                instrument: with,
                field: field.clone(),
            };
            self.complain(row.at("with"), message, BuiltHint::WriteItsError { field });
        }
        error
    }
}

/// Quantity of a word that needs nothing beside it.
fn named(of: &str) -> Option<Measured> {
    Some(match of {
        "adapter-ends" => Measured::AdapterEnds,
        "shield-kept" => Measured::ShieldKept,
        "seal-overlap" => Measured::SealOverlap,
        "connector-length" => Measured::ConnectorLength,
        "connector-diameter" => Measured::ConnectorDiameter,
        "across-flats" => Measured::AcrossFlats,
        "connector-gap" => Measured::ConnectorGap,
        "bolt-proud" => Measured::BoltProud,
        "shield-elements" => Measured::ShieldElements,
        "strands" => Measured::Strands,
        "presses" => Measured::Presses,
        "bolts" => Measured::Bolts,
        "conductor-metal" => Measured::ConductorMetal,
        "shield-form" => Measured::ShieldForm,
        "strand-moisture" => Measured::StrandMoisture,
        "shield-moisture" => Measured::ShieldMoisture,
        "jacket-surface" => Measured::JacketSurface,
        "bridge" => Measured::Bridge,
        "wires-beside-tape" => Measured::WiresBesideTape,
        "phase" => Measured::Phase,
        "die" => Measured::Die,
        "shield-open" => Measured::ShieldOpen,
        _ => return None,
    })
}
