//! Document: the findings of a joint as built, as a page and other programs read them.

use super::blank::slots;
use super::bounds::{Bounds, bounds};
use super::ends::{Change, Ends};
use super::finding::{Finding, FindingKind};
use super::phase_doc::{ChangeDoc, PhaseDoc, change_doc, phase_doc};
use super::reading::{Built, BuiltReading, Decision, Found};
use super::way::Seeker;
use super::way_doc::{WaysDoc, ways_doc};
use super::words::{Table, sound_word, table_of};
use crate::cable::Words;
use crate::form::Complaint;
use crate::judge::{Judged, worst};
use crate::limit::Outcome;
use crate::model::Model;
use crate::plan::{CallDoc, MarkDoc, WantedDoc, fails, holds, invented, mark_of, program};
use crate::plane::Plane;
use crate::programme::Wanted;
use crate::said::{Amount, BuiltSaid, Language, PlanSaid, Wording};
use crate::slot::{Measured, Slot};
use jiff::civil::Time;
use jointwright_units::Interval;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Version of the document's shape.
pub const FORMAT: &str = "jointwright-findings-1";

/// One reading beside one window, or one slot without a reading.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct FindingDoc {
    /// Slot.
    pub slot: Slot,
    /// Kind of the finding.
    pub kind: FindingKind,
    /// Quantity that is read.
    pub what: String,
    /// Window as a crew reads it; null if nobody sets one.
    pub window: Option<String>,
    /// Source of the window, or the reason why there is none.
    pub whose: String,
    /// Values as read, with the error of its instrument; null without a reading.
    pub read: Option<String>,
    /// Instrument; null for a count, for what was seen, and without a reading.
    pub with: Option<String>,
    /// Person who read it, and the day.
    pub by: Option<String>,
    /// Note of the crew, in its own words.
    pub note: Option<String>,
    /// Decision of a named person about it, as recorded; it changes no finding.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub decided: Option<String>,
    /// Deviation from the window, or the doubt; null in the window.
    pub why: Option<String>,
    /// Place of the reading in its file.
    pub place: Option<String>,
    /// Questions whose answer becomes worse by the readings of this slot alone, worst first; null in the window, and where no check computes with the quantity.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub effect: Option<Vec<ChangeDoc>>,
    /// Ways back; null in the window, and if they were not sought.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ways: Option<WaysDoc>,
}

/// Findings of a joint as built.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Findings {
    /// Version of this document's shape.
    pub format: String,
    /// Name and version of the program.
    pub program: String,
    /// Mark of the plan with which the readings are compared.
    pub plan_mark: MarkDoc,
    /// Banner across every page if the data are invented.
    pub invented: Option<String>,
    /// Statement of what no page of this program decides.
    pub never: String,
    /// Name of the job.
    pub job: String,
    /// Title of the job.
    pub title: String,
    /// Language.
    pub language: Language,
    /// Practice whose words and units are used.
    pub words: Words,
    /// Person to call when work stops.
    pub stop_and_call: CallDoc,
    /// Worst ruling of the plan itself.
    pub plan_outcome: Outcome,
    /// Failures of the plan itself.
    pub plan_fails: Vec<String>,
    /// Whether pages withhold every number to cut to: the plan fails, or work stops.
    pub is_withheld: bool,
    /// Worst finding; a joint without any slot has a missing one.
    pub worst: FindingKind,
    /// Number of slots that the job filled before the work; the plan judges those.
    pub n_in_job: usize,
    /// Findings, end by end, in the order of the make-up.
    pub findings: Vec<FindingDoc>,
    /// All checks on each phase with a reading; null if they were not asked again.
    pub phases: Option<Vec<PhaseDoc>>,
}

/// JSON Schema of the findings.
pub fn schema() -> serde_json::Value {
    schemars::generate::SchemaSettings::draft2020_12()
        .for_serialize()
        .into_generator()
        .into_root_schema_for::<Findings>()
        .to_value()
}

/// Compares readings as built with the windows of the plan.
pub fn findings(judged: &Judged<'_>, built: &Built, wording: &dyn Wording) -> Findings {
    let job = &judged.inputs.order.job;
    let scribe = Scribe {
        judged,
        built,
        wording,
        holds: holds(judged, wording),
    };
    let (findings, n_in_job) = scribe.findings();
    let kinds = findings.iter().map(|finding| finding.kind);
    Findings {
        format: FORMAT.to_owned(),
        program: program(),
        plan_mark: mark_of(judged, &program(), wording),
        invented: invented(judged.inputs.order, &[], wording),
        never: wording.say(&PlanSaid::Never.into()),
        job: job.id.clone(),
        title: job.title.clone(),
        language: job.language,
        words: job.words,
        stop_and_call: CallDoc {
            name: job.stop_and_call.0.clone(),
            number: job.stop_and_call.1.clone(),
        },
        plan_outcome: worst(&judged.rulings),
        plan_fails: fails(&judged.rulings, wording),
        is_withheld: is_withheld(judged),
        worst: kinds.max().unwrap_or(FindingKind::Missing),
        n_in_job,
        findings,
        phases: None,
    }
}

/// Whether the plan fails, or work stops and nobody lifted the stop.
fn is_withheld(judged: &Judged<'_>) -> bool {
    let mut rulings = judged.rulings.iter();
    worst(&judged.rulings) == Outcome::Fail
        || rulings.any(|ruling| ruling.stops && ruling.closed_by.is_none())
}

/// Compares readings as built with the windows of the plan, and asks every check again of the ends as built; no check is asked again of a plan that fails or stops.
///
/// # Errors
/// Rows that contradict each other once the connector is as made, as complaints at the rows.
pub fn findings_of_ends(
    model: &Model,
    judged: &Judged<'_>,
    built: &Built,
    wording: &dyn Wording,
) -> Result<Findings, Vec<Complaint>> {
    let mut found = findings(judged, built, wording);
    if found.is_withheld {
        return Ok(found);
    }
    let ends = Ends::new(model, &judged.rulings, built)?;
    let phases: Vec<PhaseDoc> = ends
        .judged()
        .iter()
        .map(|of| phase_doc(of, wording))
        .collect();
    let seeker = Seeker::new(&ends, judged, built);
    for finding in &mut found.findings {
        if finding.kind < FindingKind::StopAndAsk {
            continue;
        }
        let effect = ends.alone(&finding.slot)?;
        let docs = |changes: Vec<Change>| {
            let docs = changes.iter().map(|change| change_doc(change, wording));
            docs.collect()
        };
        finding.effect = effect.map(docs);
        let ways = ways_doc(&seeker.ways(&finding.slot)?, wording);
        if ways.offered.is_empty() {
            finding.kind = FindingKind::NoWayBack;
        }
        finding.ways = Some(ways);
    }
    let changes = phases.iter().flat_map(|of| &of.changes);
    let worst = changes.map(|change| change.kind).max();
    let findings = found.findings.iter().map(|finding| finding.kind);
    found.worst = findings.chain(worst).max().unwrap_or(found.worst);
    found.phases = Some(phases);
    Ok(found)
}

impl Findings {
    /// Returns the same findings with a day and time of making, printed as given.
    #[must_use]
    pub fn made_at(mut self, made: &str) -> Findings {
        self.plan_mark = self.plan_mark.made_at(made);
        self
    }
}

/// Writer of findings.
struct Scribe<'a> {
    judged: &'a Judged<'a>,
    built: &'a Built,
    wording: &'a dyn Wording,
    holds: Vec<(Wanted, WantedDoc)>,
}

impl Scribe<'_> {
    /// Findings of all slots, and the number of slots that the job filled.
    fn findings(&self) -> (Vec<FindingDoc>, usize) {
        let job = &self.judged.inputs.order.job;
        let mut n_in_job = 0;
        let mut findings = Vec::new();
        let slots = slots(self.judged);
        for slot in &slots {
            let readings = self.readings(slot);
            if !readings.is_empty() {
                findings.extend(self.of_slot(slot, &readings));
            } else if job.filled_slots(&slot.end).contains(slot) {
                n_in_job += 1;
            } else {
                let n_looks = match table_of(&slot.measured).0 {
                    Table::Seen => self.holds_of(slot).len(),
                    _ => 1,
                };
                findings.extend((0..n_looks).filter_map(|index| self.missing(slot, index)));
            }
        }
        let readings = self.built.readings.iter();
        let others = readings.filter(|reading| !slots.contains(&reading.slot));
        findings.extend(others.map(|reading| self.not_asked(reading)));
        findings.sort_by(|a, b| a.slot.end.cmp(&b.slot.end));
        (findings, n_in_job)
    }

    fn readings(&self, slot: &Slot) -> Vec<&BuiltReading> {
        let readings = self.built.readings.iter();
        readings.filter(|reading| reading.slot == *slot).collect()
    }

    fn say(&self, said: BuiltSaid) -> String {
        self.wording.say(&said.into())
    }

    /// Readings of hold points that a slot fills, each with its window.
    fn holds_of(&self, slot: &Slot) -> Vec<&(Wanted, WantedDoc)> {
        let holds = self.holds.iter();
        holds
            .filter(|(wanted, _)| wanted.slots.contains(slot))
            .collect()
    }

    /// Readings of one slot: each look beside the hold point at which it was made, every other reading beside every window.
    fn of_slot(&self, slot: &Slot, readings: &[&BuiltReading]) -> Vec<FindingDoc> {
        let holds = self.holds_of(slot);
        let is_look = table_of(&slot.measured).0 == Table::Seen;
        if !is_look {
            let each = readings.iter().flat_map(|reading| {
                let holds = holds.iter();
                holds.map(|hold| self.compared(reading, hold, readings))
            });
            return each.collect();
        }
        let last = holds.len().saturating_sub(1);
        let looks = readings.iter().enumerate();
        // More rows than hold points are second looks at the last one.
        let mut findings: Vec<FindingDoc> = looks
            .map(|(index, reading)| {
                let beside = if index >= last {
                    &readings[last..]
                } else {
                    &[]
                };
                self.compared(reading, holds[index.min(last)], beside)
            })
            .collect();
        let left = readings.len()..holds.len();
        findings.extend(left.filter_map(|index| self.missing(slot, index)));
        findings
    }

    /// A reading beside one window, and beside the other readings of the same.
    fn compared(
        &self,
        reading: &BuiltReading,
        (wanted, doc): &(Wanted, WantedDoc),
        beside: &[&BuiltReading],
    ) -> FindingDoc {
        let bounds = bounds(&self.judged.inputs, &wanted.against);
        let mut finding = Finding::of(&reading.found, &bounds);
        if finding.kind == FindingKind::InWindow {
            let disagrees = |other: &&BuiltReading| !reading.found.agrees(&other.found);
            let doubt = if beside.iter().any(disagrees) || self.is_unlike_its_places(reading) {
                Some(BuiltSaid::Disagree)
            } else if self.is_unlike_the_job(reading) {
                Some(BuiltSaid::UnlikeTheJob)
            } else {
                self.fewer(reading)
            };
            if let Some(doubt) = doubt {
                finding = Finding::unclear(doubt);
            }
        }
        self.doc(reading, doc, finding)
    }

    /// Whether the job has a diameter of the same layer and end that no error brings together with this one.
    fn is_unlike_the_job(&self, reading: &BuiltReading) -> bool {
        let (Measured::Diameter { over }, Found::Lengths(values, error)) =
            (&reading.slot.measured, &reading.found)
        else {
            return false;
        };
        let rows = self.judged.inputs.order.job.readings.of(&reading.slot.end);
        let mut known = rows.iter().filter(|row| row.over == *over);
        known.any(|row| {
            let known = Found::Lengths(row.values.clone(), row.error);
            !known.agrees(&Found::Lengths(values.clone(), *error))
        })
    }

    /// Whether a distance that was read is not the distance between the two places that were read, by more than all errors.
    fn is_unlike_its_places(&self, reading: &BuiltReading) -> bool {
        let (from, to) = match reading.slot.measured {
            Measured::Distance { from, to } => (from, to),
            Measured::SealOverlap => (Plane::JacketEdge, Plane::SealEnd),
            _ => return false,
        };
        let place = |plane: Plane| {
            let slot = Slot::new(&reading.slot.end, Measured::Place { plane });
            let reading = self.readings(&slot).into_iter().next()?;
            reading.found.interval()
        };
        let (Some(from), Some(to), Some(read)) = (place(from), place(to), reading.found.interval())
        else {
            return false;
        };
        let apart = Interval::new(to.least() - from.greatest(), to.greatest() - from.least());
        apart.is_some_and(|apart| apart.meet(read).is_none())
    }

    /// Fewer values than bolts or presses, where the window is for every one.
    fn fewer(&self, reading: &BuiltReading) -> Option<BuiltSaid> {
        let of = match reading.slot.measured {
            Measured::BoltTorque => Measured::Bolts,
            Measured::AcrossFlats => Measured::Presses,
            _ => return None,
        };
        let read = match &reading.found {
            Found::Lengths(values, _) => values.len(),
            Found::Torques(values, _) => values.len(),
            _ => return None,
        };
        let counted = self.holds_of(&Slot::new(&reading.slot.end, of));
        let wanted = counted.iter().find_map(|(wanted, _)| {
            match bounds(&self.judged.inputs, &wanted.against) {
                Bounds::Count(n) => Some(n),
                _ => None,
            }
        })?;
        let is_few = i64::try_from(read).is_ok_and(|read| read < wanted);
        is_few.then_some(BuiltSaid::Fewer { read, wanted })
    }

    fn doc(&self, reading: &BuiltReading, wanted: &WantedDoc, finding: Finding) -> FindingDoc {
        FindingDoc {
            slot: reading.slot.clone(),
            kind: finding.kind,
            what: wanted.what.clone(),
            window: wanted.window.clone(),
            whose: wanted.whose.clone(),
            read: Some(self.say(read_of(&reading.found))),
            with: reading.with.clone(),
            by: Some(match reading.time {
                Some(time) => format!("{}, {} {}", reading.by, reading.date, hour(time)),
                None => format!("{}, {}", reading.by, reading.date),
            }),
            note: reading.note.clone(),
            decided: reading.decision.as_ref().map(|of| self.decided(of)),
            why: finding.why.map(|why| self.say(why)),
            place: Some(reading.place.to_string()),
            effect: None,
            ways: None,
        }
    }

    /// A decision as recorded, and whether the job names its person.
    fn decided(&self, decision: &Decision) -> String {
        let decided = self.say(BuiltSaid::Decided {
            what: decision.what.clone(),
            by: decision.by.clone(),
            role: decision.role.clone(),
            authority: decision.authority.clone(),
            reached: decision.reached.clone(),
            at: format!("{} {}", decision.date, hour(decision.time)),
        });
        let mut people = self.judged.inputs.order.job.people.iter();
        let decides = |decides: &[String]| decides.iter().any(|of| of == "windows");
        if people.any(|person| person.name == decision.by && decides(&person.decides)) {
            return decided;
        }
        let by = decision.by.clone();
        let unknown = self.say(BuiltSaid::NotAmongThePeople { by });
        format!("{decided}; {unknown}")
    }

    /// A reading that no hold point asks for.
    fn not_asked(&self, reading: &BuiltReading) -> FindingDoc {
        let measured = reading.slot.measured.clone();
        let wanted = WantedDoc {
            what: self.say(BuiltSaid::Slot { measured }),
            window: None,
            whose: self.say(BuiltSaid::NobodyAsks),
            slots: Vec::new(),
        };
        // A nick is a nick, whoever asks for it.
        let bounds = sound_word(&reading.slot.measured).map_or(Bounds::Nobody(None), Bounds::Word);
        let finding = Finding::of(&reading.found, &bounds);
        let finding = match finding.kind {
            FindingKind::StopAndAsk => finding,
            _ => Finding::of(&reading.found, &Bounds::Nobody(None)),
        };
        self.doc(reading, &wanted, finding)
    }

    /// A slot without a reading, by one of its hold points.
    fn missing(&self, slot: &Slot, index: usize) -> Option<FindingDoc> {
        let (_, wanted) = self.holds_of(slot).get(index).copied()?;
        Some(FindingDoc {
            slot: slot.clone(),
            kind: FindingKind::Missing,
            what: wanted.what.clone(),
            window: wanted.window.clone(),
            whose: wanted.whose.clone(),
            read: None,
            with: None,
            by: None,
            note: None,
            decided: None,
            why: Some(self.say(BuiltSaid::NotRead)),
            place: None,
            effect: None,
            ways: None,
        })
    }
}

/// Time of day in hours and minutes.
fn hour(time: Time) -> String {
    format!("{:02}:{:02}", time.hour(), time.minute())
}

/// Values as read, as a message.
fn read_of(found: &Found) -> BuiltSaid {
    match found {
        Found::Lengths(values, error) => BuiltSaid::Read {
            values: values.iter().map(|v| Amount::Length((*v).into())).collect(),
            error: Some(Amount::Length((*error).into())),
        },
        Found::Ohm(ohm, error) => BuiltSaid::Read {
            values: vec![Amount::Ohm(*ohm)],
            error: Some(Amount::Ohm(*error)),
        },
        Found::Torques(values, error) => BuiltSaid::Read {
            values: values.iter().map(|nm| Amount::Nm(*nm)).collect(),
            error: Some(Amount::Nm(*error)),
        },
        Found::Count(n) => BuiltSaid::Read {
            values: vec![Amount::Count(*n)],
            error: None,
        },
        Found::Word(word) => BuiltSaid::Found {
            found: word.clone(),
        },
    }
}
