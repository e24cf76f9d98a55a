//! Walk: puts the job together from its tables, each read by a function of its own.

use super::bridge::bridge_off;
use super::bus::{blank, bus};
use super::condition::{moisture, surface};
use super::contradiction::contradictions;
use super::count::count;
use super::duty::duty;
use super::kind::kind;
use super::leg::{Leg, leg};
use super::lot::lot;
use super::owner_rows::{closing, confirmation, owner_limit, owner_link, owner_window};
use super::place::place;
use super::ports::{leg_names, ports};
use super::reader::{JobReader, Listed};
use super::reading::reading;
use super::shield::{contact, continuity};
use super::surround::{Surrounding, ends_of_surroundings, surrounding};
use super::system::{system, trial};
use super::trial_press::trial_press;
use super::types::Job;
use crate::catalogue::Catalogue;
use crate::form::{Complaints, Record, Source};
use crate::said::JointKind;

/// Reads a job; `None` if a fact that it needs cannot be read.
pub(super) fn job(
    source: &Source,
    record: &Record,
    listed: &[Listed],
    catalogue: &Catalogue,
    complaints: &mut Complaints,
) -> Option<Job> {
    let reader = &mut JobReader::new(source, record, listed, catalogue, complaints);
    let authority = record.record("authority");
    let bridge_off = authority.and_then(|a| bridge_off(reader, a.record("bridge_off")?));
    let head = record.record("job");
    let kind = kind_with_ports(reader, record);
    let system = record.record("system").and_then(|s| system(reader, s));
    let place = record.record("place").and_then(|p| place(reader, p));
    let bus = bus(reader, record);
    let legs = legs(reader, record);
    let blanks = reader.rows(record, "blank", blank);
    let readings = reader.rows(record, "reading", reading);
    let counts = reader.rows(record, "count", count);
    let moistures = reader.rows(record, "moisture", moisture);
    let surfaces = reader.rows(record, "surface", surface);
    let surroundings = surroundings(reader, record, &legs);
    let continuities = reader.rows(record, "continuity", continuity);
    let contacts = reader.rows(record, "contact", contact);
    let lots = reader.rows(record, "lot", lot);
    let trial_presses = reader.rows(record, "trial_press", trial_press);
    let owner_windows = reader.rows(record, "owner_window", owner_window);
    let owner_links = reader.rows(record, "owner_link", owner_link);
    let owner_limits = reader.rows(record, "owner_limit", owner_limit);
    let confirmations = reader.rows(record, "confirmation", confirmation);
    let closings = reader.rows(record, "closing", closing);
    contradictions(reader, record);
    let (head, call) = (head?, authority?.record("stop_and_call")?);
    Some(Job {
        id: head.string("id")?,
        title: head.string("title")?,
        date: head.date("date")?,
        issue: head.integer("issue"),
        kind: kind?,
        phases: u8::try_from(head.integer("phases")?).ok()?,
        words: reader.words,
        language: super::language(head.text("language")),
        invented: head.flag("invented").unwrap_or(false),
        system: system?,
        duty: duty(reader, record.record("duty")?),
        trial: record.record("trial").and_then(trial),
        place: place?,
        stop_and_call: (call.string("name")?, call.string("number")?),
        people: reader.people.known.clone(),
        bridge_off,
        bus,
        blanks,
        legs,
        readings,
        counts,
        moistures,
        surfaces,
        surroundings,
        continuities,
        contacts,
        lots,
        trial_presses,
        owner_windows,
        owner_links,
        owner_limits,
        confirmations,
        closings,
        as_built: None,
    })
}

/// Reads the kind of joint, and checks that legs and ports fit it.
fn kind_with_ports(reader: &mut JobReader<'_>, record: &Record) -> Option<JointKind> {
    let kind = kind(reader, record.record("job")?)?;
    ports(reader, record, kind);
    Some(kind)
}

/// Reads the surroundings of the legs, from the joint outward.
fn surroundings(reader: &mut JobReader<'_>, record: &Record, legs: &[Leg]) -> Vec<Surrounding> {
    let mut rows: Vec<Surrounding> = reader.rows(record, "surrounding", surrounding);
    rows.sort_by_key(|row| (row.leg.clone(), row.until.is_none(), row.until));
    let ids: Vec<String> = legs.iter().map(|leg| leg.id.clone()).collect();
    ends_of_surroundings(reader, record, &ids);
    rows
}

fn legs(reader: &mut JobReader<'_>, record: &Record) -> Vec<Leg> {
    leg_names(reader, record);
    let mut legs: Vec<Leg> = reader.rows(record, "leg", leg);
    legs.sort_by(|a, b| a.id.cmp(&b.id));
    legs
}
