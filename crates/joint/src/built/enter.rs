//! Enter: an order whose readings as built of one phase have taken the place of what was planned, or read before.
//!
//! Why its own file: this is the one place at which facts as built enter; every check then asks as it asks of a plan.
//!
//! Invariants:
//! - A reading moves no window and no limit.
//! - A reading as built takes the place of the job's reading of the same quantity at the same end.
//! - Of readings that disagree, everything that lies between them is entered.
//! - Whether a check computes with a quantity is decided for each quantity; none is dropped in silence.

use super::reading::{Built, BuiltReading, Found};
use crate::catalogue::{metal, shield_kind};
use crate::end::EndId;
use crate::job::{
    AsBuilt, Contact, Count, Job, JointKind, LegAsBuilt, Moisture, Order, Reading, Surface,
};
use crate::plane::Plane;
use crate::slot::Measured;
use jointwright_units::{Interval, Station};
use std::collections::BTreeSet;

/// Whether a check computes with a quantity that was read as built.
pub fn enters(measured: &Measured) -> bool {
    match measured {
        Measured::Place { plane } => *plane != Plane::ConductorEnd,
        Measured::Distance { .. }
        | Measured::SealOverlap
        | Measured::Diameter { .. }
        | Measured::ConnectorLength
        | Measured::ShieldElements
        | Measured::Strands
        | Measured::ConductorMetal
        | Measured::ShieldForm
        | Measured::StrandMoisture
        | Measured::ShieldMoisture
        | Measured::JacketSurface
        | Measured::ContactResistance => true,
        Measured::AdapterEnds
        | Measured::Surface { .. }
        | Measured::Bridge
        | Measured::WiresBesideTape
        | Measured::ShieldKept
        | Measured::Phase
        | Measured::ConnectorGap
        | Measured::BoltProud
        | Measured::ConnectorDiameter
        | Measured::AcrossFlats
        | Measured::Die
        | Measured::Presses
        | Measured::Bolts
        | Measured::BoltTorque
        | Measured::BondResistance { .. }
        | Measured::ShieldOpen
        | Measured::ShieldResistance => false,
    }
}

/// Phases of which a reading was taken, in order.
pub fn phases(built: &Built) -> BTreeSet<u8> {
    let readings = built.readings.iter();
    readings.map(|reading| reading.slot.end.phase).collect()
}

/// The order for one phase as built; readings for which `counts` is false are left out.
pub fn entered(
    order: &Order,
    built: &Built,
    phase: u8,
    counts: impl Fn(&BuiltReading) -> bool,
) -> Order {
    let mut job = order.job.clone();
    keep_phase(&mut job, phase);
    let of_phase = |reading: &&BuiltReading| reading.slot.end.phase == phase;
    let readings = built.readings.iter().filter(of_phase);
    let readings: Vec<&BuiltReading> = readings.filter(|reading| counts(reading)).collect();
    let mut as_built = AsBuilt {
        phase,
        ..AsBuilt::default()
    };
    replace(&mut job, &readings);
    for reading in readings {
        let leg = as_built.legs.entry(reading.slot.end.leg.clone());
        along(leg.or_default(), reading);
        add(&mut job, reading);
    }
    if job.kind == JointKind::Straight {
        share_sleeve(&job, &mut as_built);
    }
    job.as_built = Some(as_built);
    Order {
        job,
        catalogue: order.catalogue.clone(),
        went_in: order.went_in,
    }
}

/// Leaves out the rows of every other phase.
fn keep_phase(job: &mut Job, phase: u8) {
    job.readings.keep_phase(phase);
    job.counts.keep_phase(phase);
    job.moistures.keep_phase(phase);
    job.surfaces.keep_phase(phase);
    job.continuities.keep_phase(phase);
    job.contacts.keep_phase(phase);
    job.lots.keep_phase(phase);
}

/// Takes out of the job every row that a reading as built replaces.
fn replace(job: &mut Job, readings: &[&BuiltReading]) {
    for reading in readings {
        let end = &reading.slot.end;
        match &reading.slot.measured {
            Measured::Diameter { over } => {
                job.readings.of_mut(end).retain(|row| row.over != *over);
            }
            Measured::ShieldElements => blank(job, end, |row| row.shield_elements = None),
            Measured::Strands => blank(job, end, |row| row.strands = None),
            Measured::ConductorMetal => blank(job, end, |row| row.metal = None),
            Measured::ShieldForm => blank(job, end, |row| row.shield_kind = None),
            of @ (Measured::StrandMoisture | Measured::ShieldMoisture) if reading.how.is_some() => {
                let place = tested(of);
                job.moistures.of_mut(end).retain(|row| row.place != place);
            }
            Measured::JacketSurface => job.surfaces.of_mut(end).clear(),
            Measured::ContactResistance => job.contacts.of_mut(end).clear(),
            _ => {}
        }
    }
}

/// Takes one field out of every count of an end.
fn blank(job: &mut Job, end: &EndId, take: impl Fn(&mut Count)) {
    job.counts.of_mut(end).iter_mut().for_each(take);
}

/// Place of a test for moisture, by the word of the job's file.
fn tested(measured: &Measured) -> &'static str {
    match measured {
        Measured::ShieldMoisture => "shield",
        _ => "conductor",
    }
}

/// Adds what was read along the cable, and the connector as made.
fn along(built: &mut LegAsBuilt, reading: &BuiltReading) {
    let Some(read) = reading.found.interval() else {
        return;
    };
    let span = (Station::from(read.least()), Station::from(read.greatest()));
    match &reading.slot.measured {
        Measured::Place { plane } if *plane != Plane::ConductorEnd => {
            let known = built.places.entry(*plane).or_insert(span);
            *known = (known.0.min(span.0), known.1.max(span.1));
        }
        Measured::Distance { from, to } => add_distance(built, (*from, *to), span),
        Measured::SealOverlap => {
            add_distance(built, (Plane::JacketEdge, Plane::SealEnd), span);
        }
        Measured::ConnectorLength => {
            let who = format!("{}, {}", reading.by, reading.date);
            let known = built.connector_length.get_or_insert((read, who));
            let both = [
                known.0.least(),
                known.0.greatest(),
                read.least(),
                read.greatest(),
            ];
            known.0 = Interval::hull(both).unwrap_or(read);
        }
        _ => {}
    }
}

fn add_distance(built: &mut LegAsBuilt, between: (Plane, Plane), span: (Station, Station)) {
    let mut distances = built.distances.iter_mut();
    match distances.find(|(known, _)| *known == between) {
        Some((_, known)) => *known = (known.0.min(span.0), known.1.max(span.1)),
        None => built.distances.push((between, span)),
    }
}

/// Gives a sleeve that was measured on one leg to both legs that it joins.
fn share_sleeve(job: &Job, as_built: &mut AsBuilt) {
    let read = as_built.legs.values();
    let mut read = read.filter_map(|leg| leg.connector_length.clone());
    let Some(first) = read.next() else {
        return;
    };
    let whole = read.fold(first, |known, other| {
        let (a, b) = (known.0, other.0);
        let all = [a.least(), a.greatest(), b.least(), b.greatest()];
        (Interval::hull(all).unwrap_or(a), known.1)
    });
    for leg in &job.legs {
        let leg = as_built.legs.entry(leg.id.clone()).or_default();
        leg.connector_length = Some(whole.clone());
    }
}

/// Adds a reading to the rows of the job that hold its quantity.
fn add(job: &mut Job, reading: &BuiltReading) {
    let end = reading.slot.end.clone();
    match (&reading.slot.measured, &reading.found) {
        (Measured::Diameter { over }, Found::Lengths(values, error)) => {
            let row = Reading {
                over: *over,
                instrument: reading.instrument.clone().unwrap_or_default(),
                error: *error,
                values: values.clone(),
                place_along: None,
                degc: reading.degc,
                place: reading.place.clone(),
            };
            job.readings.add(end, row);
        }
        (measured, Found::Count(n)) => {
            let n = u32::try_from(*n).ok();
            job.counts
                .extend(counted(measured, n).map(|row| (end, row)));
        }
        (Measured::ContactResistance, Found::Ohm(ohm, error)) => {
            let leg = job.legs.iter().find(|leg| leg.id == end.leg);
            let part = leg.and_then(|leg| leg.parts.shield_part.clone());
            let row = Contact {
                at: part.unwrap_or_default(),
                ohm: *ohm,
                error_ohm: *error,
                by: reading.by.clone(),
                date: reading.date,
            };
            job.contacts.add(end, row);
        }
        (measured, Found::Word(word)) => add_seen(job, reading, measured, word),
        _ => {}
    }
}

/// Count of wires, straps or strands.
fn counted(measured: &Measured, n: Option<u32>) -> Option<Count> {
    match measured {
        Measured::ShieldElements => Some(Count {
            shield_elements: n,
            ..Count::default()
        }),
        Measured::Strands => Some(Count {
            strands: n,
            ..Count::default()
        }),
        _ => None,
    }
}

/// Adds what was seen or tested, by its word.
fn add_seen(job: &mut Job, reading: &BuiltReading, measured: &Measured, word: &str) {
    let end = reading.slot.end.clone();
    match measured {
        Measured::ConductorMetal => {
            let row = Count {
                metal: metal(word),
                ..Count::default()
            };
            job.counts.of_mut(&end).insert(0, row);
        }
        Measured::ShieldForm => {
            let row = Count {
                shield_kind: shield_kind(word),
                ..Count::default()
            };
            job.counts.of_mut(&end).insert(0, row);
        }
        Measured::StrandMoisture | Measured::ShieldMoisture => {
            let how = reading.how.clone();
            job.moistures.extend(how.map(|how| {
                let row = Moisture {
                    place: tested(measured).to_owned(),
                    is_wet: word == "wet",
                    how,
                    date: reading.date,
                    source: format!("{}, {}", reading.by, reading.date),
                };
                (end, row)
            }));
        }
        Measured::JacketSurface => {
            let row = Surface {
                jacket: word.to_owned(),
                by: reading.by.clone(),
            };
            job.surfaces.add(end, row);
        }
        _ => {}
    }
}
