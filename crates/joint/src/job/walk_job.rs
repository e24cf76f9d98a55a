//! Walk: builds the job from its records, and finds errors that one table alone cannot show, such as unknown names and ports taken twice.

use super::bridge::BridgeOff;
use super::listed::Listed;
use super::one_run::is_run;
use super::shield::shield_run;
use super::types::{
    Blank, Count, Duty, Job, Leg, Lot, Moisture, PartNames, Person, Place, Reading, Room, Surface,
    Surrounding, System, Trial, TrialPress,
};
use crate::cable::Words;
use crate::catalogue::{Catalogue, layer, metal, shield_kind};
use crate::end::EndId;
use crate::form::Span;
use crate::form::{Complaints, Record, Source};
use crate::said::{
    CableHint, CableSaid, HeadHint, HeadSaid, JointKind, NameHint, NameSaid, RowHint, RowSaid, Said,
};
use jiff::civil::Date;
use jointwright_units::{Interval, Length};
use std::collections::{BTreeMap, BTreeSet};

/// Other kinds of joint, which are refused by name and not as misspellings.
const OTHER_KINDS: &[&str] = &[
    "transition",
    "termination",
    "paper-lead",
    "three-core",
    "stop",
    "trifurcating",
    "submarine",
    "repair",
];
/// Greatest diameter that can be a reading on one core of medium-voltage cable.
const READING_GREATEST: Length = Length::from_nm(200_000_000);
/// Least diameter that can be a reading.
const READING_LEAST: Length = Length::from_nm(1_000_000);

/// Reader of one job.
pub(super) struct JobReader<'a> {
    source: &'a Source,
    listed: &'a [Listed],
    complaints: &'a mut Complaints,
    pub(super) catalogue: &'a Catalogue,
    pub(super) people: Vec<Person>,
    /// Whether every person under `authority` could be read.
    pub(super) people_are_known: bool,
    pub(super) legs: BTreeSet<String>,
    /// Whether the name of every leg could be read.
    pub(super) legs_are_known: bool,
    pub(super) phases: Option<i64>,
    /// Day of the work.
    pub(super) date: Option<Date>,
    pub(super) words: Words,
}

pub(super) fn job(
    source: &Source,
    record: &Record,
    listed: &[Listed],
    catalogue: &Catalogue,
    complaints: &mut Complaints,
) -> Option<Job> {
    let head = record.record("job");
    let words = super::words(head.and_then(|h| h.text("words")));
    let legs: BTreeSet<String> = record
        .records("leg")
        .filter_map(|leg| leg.string("id"))
        .collect();
    let legs_are_known =
        record.item("leg").is_some() && record.records("leg").all(|leg| leg.item("id").is_some());
    let phases = head.and_then(|h| h.integer("phases"));
    let mut reader = JobReader {
        source,
        listed,
        complaints,
        catalogue,
        people: Vec::new(),
        people_are_known: false,
        legs,
        legs_are_known,
        phases,
        date: head.and_then(|h| h.date("date")),
        words,
    };
    reader.job(record)
}

impl JobReader<'_> {
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

    fn job(&mut self, record: &Record) -> Option<Job> {
        let authority = record.record("authority");
        let bridge_off = authority.and_then(|a| self.authority(a));
        let head = record.record("job");
        let kind = head.and_then(|h| self.kind(h));
        let system = record.record("system").and_then(|s| self.system(s));
        let place = record.record("place").and_then(|p| self.place(p));
        if let Some(kind) = kind {
            self.ports(record, kind);
        }
        let bus = self.bus(record);
        let legs = self.legs(record);
        let blanks = self.rows(record, "blank", Self::blank);
        let readings = self.rows(record, "reading", Self::reading);
        let counts = self.rows(record, "count", Self::count);
        let moistures = self.rows(record, "moisture", Self::moisture);
        let surfaces = self.rows(record, "surface", Self::surface);
        let surroundings = self.surroundings(record, &legs);
        let continuities = self.rows(record, "continuity", Self::continuity);
        let contacts = self.rows(record, "contact", Self::contact);
        let lots = self.rows(record, "lot", Self::lot);
        let trial_presses = self.rows(record, "trial_press", Self::trial_press);
        let owner_windows = self.rows(record, "owner_window", Self::owner_window);
        let owner_links = self.rows(record, "owner_link", Self::owner_link);
        let owner_limits = self.rows(record, "owner_limit", Self::owner_limit);
        let confirmations = self.rows(record, "confirmation", Self::confirmation);
        let closings = self.rows(record, "closing", Self::closing);
        self.contradictions(record);
        let head = head?;
        let call = authority?.record("stop_and_call")?;
        Some(Job {
            id: head.string("id")?,
            title: head.string("title")?,
            date: head.date("date")?,
            issue: head.integer("issue"),
            kind: kind?,
            phases: u8::try_from(head.integer("phases")?).ok()?,
            words: self.words,
            language: super::language(head.text("language")),
            invented: head.flag("invented").unwrap_or(false),
            system: system?,
            duty: self.duty(record.record("duty")?),
            trial: record.record("trial").and_then(trial),
            place: place?,
            stop_and_call: (call.string("name")?, call.string("number")?),
            people: std::mem::take(&mut self.people),
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
        })
    }

    /// Reads the people with authority, and the owner's decision about the bridge of the shield.
    fn authority(&mut self, authority: &Record) -> Option<BridgeOff> {
        self.people = authority.records("person").filter_map(person).collect();
        self.people_are_known = authority.records("person").count() == self.people.len()
            && (authority.item("person").is_some() || !authority.is_given("person"));
        let row = authority.record("bridge_off")?;
        self.bridge_off(row)
    }

    /// Reads the rows of a list, each by itself; a row that cannot be read is left out, with a complaint.
    fn rows<T, R: FromIterator<T>>(
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

    /// Reads the surroundings of the legs, from the joint outward.
    fn surroundings(&mut self, record: &Record, legs: &[Leg]) -> Vec<Surrounding> {
        let mut rows: Vec<Surrounding> = self.rows(record, "surrounding", Self::surrounding);
        rows.sort_by_key(|row| (row.leg.clone(), row.until.is_none(), row.until));
        let ids: Vec<String> = legs.iter().map(|leg| leg.id.clone()).collect();
        self.ends_of_surroundings(record, &ids);
        rows
    }

    fn legs(&mut self, record: &Record) -> Vec<Leg> {
        self.leg_names(record);
        let mut legs: Vec<Leg> = self.rows(record, "leg", Self::leg);
        legs.sort_by(|a, b| a.id.cmp(&b.id));
        legs
    }

    fn bus(&mut self, record: &Record) -> Option<String> {
        let bus = record.string("bus")?;
        if self.catalogue.bus(&bus).is_none() {
            let known = names(self.catalogue.buses.iter().map(|r| &r.head.id));
            self.unknown_part(record.at("bus"), "bus", &bus, &known);
        }
        Some(bus)
    }

    fn kind(&mut self, head: &Record) -> Option<JointKind> {
        let text = head.text("kind")?;
        let message = match text {
            "straight" => return Some(JointKind::Straight),
            "branch" => return Some(JointKind::Branch),
            "separable" => return Some(JointKind::Separable),
            "cable" => return Some(JointKind::Cable),
            other if OTHER_KINDS.contains(&other) => HeadSaid::KindIsNotHandled {
                kind: other.to_owned(),
            },
            other => HeadSaid::KindIsUnknown {
                kind: other.to_owned(),
            },
        };
        self.complain(head.at("kind"), message, HeadHint::QualifiedPeople);
        None
    }

    fn system(&mut self, record: &Record) -> Option<System> {
        let (nominal, highest) = (record.number("nominal"), record.number("highest"));
        if let (Some(nominal), Some(highest)) = (nominal, highest)
            && highest < nominal
        {
            self.complain(
                record.at("highest"),
                HeadSaid::HighestBelowNominal {
                    highest_kv: highest,
                    nominal_kv: nominal,
                },
                HeadHint::PhaseToPhase,
            );
        }
        for (name, value) in [("nominal", nominal), ("highest", highest)] {
            if let Some(value) = value
                && !(1.0..=52.0).contains(&value)
            {
                self.complain(
                    record.at(name),
                    HeadSaid::NoMediumVoltage {
                        field: name.to_owned(),
                        kv: value,
                    },
                    HeadHint::LookAtVoltage,
                );
            }
        }
        Some(System {
            nominal_kv: nominal?,
            highest_kv: highest?,
            frequency_hz: record.number("frequency")?,
            earthing: record.string("earthing")?,
            clearing_time_s: record.number("clearing_time"),
        })
    }

    fn place(&mut self, record: &Record) -> Option<Place> {
        let ambient_degc = (
            record.number("ambient_least"),
            record.number("ambient_greatest"),
        );
        if let (Some(least), Some(greatest)) = ambient_degc
            && least > greatest
        {
            self.complain(
                record.at("ambient_least"),
                HeadSaid::AmbientReversed {
                    least_degc: least,
                    greatest_degc: greatest,
                },
                HeadHint::Exchange,
            );
        }
        Some(Place {
            kind: record.string("kind")?,
            name: record.string("name")?,
            ambient_degc,
            wet: record.flag("wet"),
        })
    }

    fn blank(&mut self, record: &Record) -> Option<Blank> {
        let plug = record.string("plug");
        if let Some(id) = &plug
            && self.catalogue.plug(id).is_none()
        {
            let known = names(self.catalogue.plugs.iter().map(|r| &r.head.id));
            self.unknown_part(record.at("plug"), "plug", id, &known);
        }
        Some(Blank {
            port: record.integer("port")?,
            plug,
        })
    }

    pub(super) fn unknown_part(&mut self, at: usize, kind: &str, id: &str, known: &str) {
        // A row that could not be read has its own complaint, so its name is not unknown.
        if !self.catalogue.is_whole() || self.catalogue.names_row(kind, id) {
            return;
        }
        let hint = if self.catalogue.has_complaints() {
            NameHint::CatalogueIsWrong
        } else if known.is_empty() {
            NameHint::AddTheRow
        } else {
            NameHint::RowsAre {
                rows: known.to_owned(),
            }
        };
        let no_row = NameSaid::NoRow {
            kind: kind.to_owned(),
            id: id.to_owned(),
        };
        self.complain(at, no_row, hint);
    }

    fn leg(&mut self, record: &Record) -> Option<Leg> {
        let cable = record.record("cable");
        let construction = cable.and_then(|c| self.cable(c));
        let parts = self.part_names(record);
        let bonding_lead = self.bonding_lead(record);
        let cable = cable?;
        let shield = cable.record("shield");
        let insulation_stuff = self.layer_stuff(cable, "insulation");
        let jacket_stuff = self.layer_stuff(cable, "jacket");
        let expansion = (
            cable.number("expansion_per_k_least"),
            cable.number("expansion_per_k_greatest"),
        );
        let expansion_per_k = match expansion {
            (Some(least), Some(greatest)) if least <= greatest => Some((least, greatest)),
            (None, None) => None,
            _ => {
                self.complain(
                    cable.at,
                    CableSaid::ExpansionNotAPair,
                    CableHint::BothFromASource,
                );
                None
            }
        };
        Some(Leg {
            id: record.string("id")?,
            port: record.integer("port"),
            goes_to: record.string("goes_to"),
            bonding: record.string("bonding")?,
            parks: record.flag("parks").unwrap_or(false),
            room: Room {
                error: record.length("room_error"),
                straight: record.length("straight"),
                park_room: record.length("park_room"),
                bend_radius: record.length("bend_radius"),
                slack: record.length("slack"),
                spare_cuts: record.integer("spare_cuts"),
            },
            cable: construction?,
            blocked: cable.flag("blocked"),
            far_end_in_water: record.flag("far_end_in_water"),
            bend_radius_least: cable.length("bend_radius_least"),
            expansion_per_k,
            relative_permittivity: cable.number("permittivity"),
            insulation_stuff,
            jacket_stuff,
            load_a: record.number("load"),
            emergency_a: record.number("emergency"),
            shield_load_a: record.number("shield_load"),
            route_length: record.length("route_length"),
            shield_metal: shield.and_then(|row| metal(row.text("metal")?)),
            shield_fault_greatest_degc: shield.and_then(|row| row.number("fault_greatest")),
            shield_fault_a: record.number("shield_fault"),
            shield_run: shield_run(record),
            bonding_lead,
            parts,
            place: self.place_of(record.at),
        })
    }

    fn part_names(&mut self, record: &Record) -> PartNames {
        let c = self.catalogue;
        let kinds: [(&str, Vec<&String>); 5] = [
            ("body", c.bodies.iter().map(|r| &r.head.id).collect()),
            ("adapter", c.adapters.iter().map(|r| &r.head.id).collect()),
            (
                "connector",
                c.connectors.iter().map(|r| &r.head.id).collect(),
            ),
            (
                "shield_part",
                c.shield_parts.iter().map(|r| &r.head.id).collect(),
            ),
            ("seal", c.seals.iter().map(|r| &r.head.id).collect()),
        ];
        for (kind, known) in kinds {
            if let Some(id) = record.text(kind)
                && !known.iter().any(|k| *k == id)
            {
                self.unknown_part(record.at(kind), kind, id, &names(known.into_iter()));
            }
        }
        for id in record.texts("consumables") {
            if c.consumable(&id).is_none() {
                let known = names(c.consumables.iter().map(|r| &r.head.id));
                self.unknown_part(record.at("consumables"), "consumable", &id, &known);
            }
        }
        self.end_named(record, "connector_end");
        self.side_named(record);
        PartNames {
            body: record.string("body"),
            body_side: record.string("body_side"),
            adapter: record.string("adapter"),
            connector: record.string("connector"),
            connector_end: record.string("connector_end"),
            shield_part: record.string("shield_part"),
            seal: record.string("seal"),
            consumables: record.texts("consumables"),
        }
    }

    fn leg_names(&mut self, record: &Record) {
        let mut seen: BTreeMap<&str, usize> = BTreeMap::new();
        for leg in record.records("leg") {
            let Some(id) = leg.text("id") else { continue };
            if let Some(first) = seen.insert(id, leg.at) {
                let two = NameSaid::TwoLegs {
                    leg: id.to_owned(),
                    place: self.place_of(first).to_string(),
                };
                self.complain(leg.at("id"), two, NameHint::OwnLetter);
            }
        }
        let n_legs = record.list("leg").count();
        if record.is_given("leg") && !is_run(record) && !(2..=6).contains(&n_legs) {
            self.complain(
                record.at("leg"),
                HeadSaid::LegsNotTwoToSix { n: n_legs },
                HeadHint::AddOrTakeLegs,
            );
        }
    }

    /// Checks legs, ports and the bus against the kind of joint.
    fn ports(&mut self, record: &Record, kind: JointKind) {
        let n_legs = record.list("leg").count();
        let wrong = match kind {
            JointKind::Straight => {
                (n_legs != 2).then_some(HeadSaid::WantsTwoLegs { kind, n: n_legs })
            }
            JointKind::Branch => {
                (n_legs < 3).then_some(HeadSaid::WantsThreeLegs { kind, n: n_legs })
            }
            JointKind::Separable => None,
            JointKind::Cable => return self.one_run(record),
        };
        self.nothing_of_a_run(record);
        if let Some(wrong) = wrong {
            self.complain(record.at("leg"), wrong, HeadHint::ChangeKindOrLegs);
        }
        if kind != JointKind::Separable {
            let no_bus = [
                ("bus", HeadSaid::NoBusButOneNamed { kind }),
                ("blank", HeadSaid::NoBusButBlanks { kind }),
            ];
            for (name, said) in no_bus {
                if record.is_given(name) {
                    self.complain(record.at(name), said, HeadHint::TakeOutOrSeparable);
                }
            }
            return;
        }
        // Holder of each port: the name of a leg, or `None` for a blank.
        let mut taken: BTreeMap<i64, Option<String>> = BTreeMap::new();
        let legs = record
            .records("leg")
            .map(|leg| (leg, Some(leg.text("id").unwrap_or("?").to_owned())));
        let blanks = record.records("blank").map(|blank| (blank, None));
        let rows: Vec<(&Record, Option<String>)> = legs.chain(blanks).collect();
        for (row, who) in rows {
            let Some(port) = row.integer("port") else {
                if let Some(leg) = who.filter(|_| !row.is_given("port")) {
                    self.complain(row.at, HeadSaid::LegHasNoPort { leg }, HeadHint::SayItsPort);
                }
                continue;
            };
            if let Some(one) = taken.insert(port, who.clone()) {
                let other = who;
                let twice = HeadSaid::PortTakenTwice { port, one, other };
                self.complain(row.at("port"), twice, HeadHint::AnotherPort);
            }
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

    fn reading(&mut self, row: &Record) -> Option<(EndId, Reading)> {
        let end = self.end(row);
        let values = row.lengths("values");
        row.item("values")?;
        if row.list("values").count() == 0 {
            self.complain(
                row.at("values"),
                RowSaid::NoValues,
                RowHint::WriteWhatItShowed,
            );
            return None;
        }
        for value in &values {
            if !(READING_LEAST..=READING_GREATEST).contains(value) {
                self.complain(
                    row.at("values"),
                    RowSaid::NoDiameter {
                        value: value.to_string(),
                        least: READING_LEAST.to_string(),
                        greatest: READING_GREATEST.to_string(),
                    },
                    RowHint::LookAtUnit,
                );
            }
        }
        if row.length("error") == Some(Length::ZERO) {
            self.complain(
                row.at("error"),
                RowSaid::ErrorIsNothing,
                RowHint::WriteItsCertificate,
            );
        }
        let row = Reading {
            over: layer(row.text("over")?)?,
            instrument: row.string("instrument")?,
            error: row.length("error")?,
            values,
            place_along: row.string("place"),
            degc: row.number("temperature"),
            place: self.place_of(row.at),
        };
        Some((end?, row))
    }

    fn count(&mut self, row: &Record) -> Option<(EndId, Count)> {
        let end = self.end(row)?;
        let seen = ["shield_elements", "strands", "metal", "shield_kind"];
        if !seen.iter().any(|name| row.is_given(name)) {
            self.complain(
                row.at,
                RowSaid::CountSaysNothing,
                RowHint::ItTakes {
                    fields: seen.map(str::to_owned).to_vec(),
                },
            );
            return None;
        }
        let whole = |name| row.integer(name).and_then(|n| u32::try_from(n).ok());
        let row = Count {
            shield_elements: whole("shield_elements"),
            strands: whole("strands"),
            metal: row.text("metal").and_then(metal),
            shield_kind: row.text("shield_kind").and_then(shield_kind),
        };
        Some((end, row))
    }

    fn moisture(&mut self, row: &Record) -> Option<(EndId, Moisture)> {
        let end = self.end(row)?;
        self.not_after_the_work(row);
        let row = Moisture {
            place: row.string("in")?,
            is_wet: row.text("found")? == "wet",
            how: row.string("how")?,
            date: row.date("date")?,
            source: format!("{}, {}", row.string("by")?, row.date("date")?),
        };
        Some((end, row))
    }

    fn surface(&mut self, row: &Record) -> Option<(EndId, Surface)> {
        let end = self.end(row)?;
        let row = Surface {
            jacket: row.string("jacket")?,
            by: row.string("by")?,
        };
        Some((end, row))
    }

    /// Stays of a part; complains if one does not end after the one before it.
    fn stays(&mut self, lot: &Record) -> Vec<(Date, f64)> {
        let mut stays: Vec<(Date, f64)> = Vec::new();
        for row in lot.records("stay") {
            let (Some(until), Some(degc)) = (row.date("until"), row.number("greatest")) else {
                continue;
            };
            if let Some((last, _)) = stays.last()
                && *last >= until
            {
                let last = *last;
                self.complain(
                    row.at("until"),
                    RowSaid::StayNotAfter {
                        until: until.to_string(),
                        last: last.to_string(),
                    },
                    RowHint::StaysInOrder,
                );
            }
            stays.push((until, degc));
        }
        stays
    }

    /// Complains if a part's highest temperature is below its lowest.
    fn store(&mut self, row: &Record, stays: &[(Date, f64)]) {
        let Some(coldest) = row.number("store_least") else {
            return;
        };
        let stays = stays.iter().map(|(_, degc)| *degc);
        let warmest = stays.chain(row.number("store_greatest"));
        if let Some(warmest) = warmest.filter(|degc| *degc < coldest).reduce(f64::min) {
            self.complain(
                row.at("store_least"),
                RowSaid::ColdestAboveWarmest {
                    coldest_degc: coldest,
                    warmest_degc: warmest,
                },
                RowHint::ExchangeOrLookUp,
            );
        }
    }

    fn lot(&mut self, row: &Record) -> Option<(EndId, Lot)> {
        let end = self.end(row)?;
        let stays = self.stays(row);
        self.store(row, &stays);
        let has_no_expiry = row.flag("no_expiry") == Some(true);
        if let Some(expires) = row.date("expires").filter(|_| has_no_expiry) {
            self.complain(
                row.at("no_expiry"),
                RowSaid::LabelPrintsBoth {
                    expires: expires.to_string(),
                },
                RowHint::LookAtLabel,
            );
        }
        let row = Lot {
            part: row.string("part")?,
            lot: row.string("lot")?,
            made: row.date("made"),
            expanded: row.date("expanded"),
            expires: row.date("expires"),
            has_no_expiry,
            store_degc: (row.number("store_least"), row.number("store_greatest")),
            stays_degc: stays,
        };
        Some((end, row))
    }

    fn trial_press(&mut self, row: &Record) -> Option<TrialPress> {
        let size = self.size(row, "size");
        let connector = row.string("connector")?;
        self.pressed(row, &connector);
        self.not_after_the_work(row);
        let before = row.length("length_before")?;
        let after = Interval::hull(row.lengths("length_after"));
        let Some(after) = after else {
            self.complain(row.at, RowSaid::NoLengthAfter, RowHint::GiveLengthAfter);
            return None;
        };
        let error = row.length("error")?;
        // The growth is a difference of two lengths, so their errors add up.
        let read = after - Interval::point(before);
        let growth = read.widened(error * 2);
        if read.least() + error * 2 < Length::ZERO {
            self.complain(
                row.at("length_after"),
                RowSaid::SleeveShorter {
                    before: before.to_string(),
                    after: after.least().to_string(),
                },
                RowHint::MeasureBothAgain,
            );
            return None;
        }
        // A sleeve never grows by less than zero, whatever the rule could resolve.
        let growth = Interval::new(growth.least().max(Length::ZERO), growth.greatest())?;
        let listed = self.catalogue.connector(&connector).map(|part| part.length);
        if let Some(listed) = listed.filter(|listed| (*listed - before).abs() * 20 > *listed) {
            self.complain(
                row.at("length_before"),
                RowSaid::SleeveUnlikePaper {
                    before: before.to_string(),
                    connector: connector.clone(),
                    listed: listed.to_string(),
                },
                RowHint::PressTheNamed,
            );
        }
        Some(TrialPress {
            connector,
            end: row.string("end"),
            size: size?,
            metal: metal(row.text("metal")?)?,
            tool: row.string("tool")?,
            die: row.string("die")?,
            presses: row.integer("presses")?,
            growth,
            by: row.string("by")?,
            date: row.date("date")?,
        })
    }
}

fn person(row: &Record) -> Option<Person> {
    Some(Person {
        name: row.string("name")?,
        role: row.string("role")?,
        decides: row.texts("decides"),
    })
}

fn trial(row: &Record) -> Option<Trial> {
    Some(Trial {
        level_kv: row.number("level")?,
        frequency_hz: row.number("frequency")?,
        is_rectangular: row.text("waveform")? == "cosine-rectangular",
        from: row.string("from")?,
    })
}

impl JobReader<'_> {
    fn duty(&mut self, row: &Record) -> Duty {
        Duty {
            load_a: row.number("load"),
            emergency_a: row.number("emergency"),
            emergency_s: row.number("emergency_time"),
            conductor_greatest_degc: row.number("conductor_greatest"),
            fault_a: row.number("fault"),
            fault_s: row.number("fault_time"),
            is_fault_balanced: row.text("fault_kind").map(|word| word == "three-phase"),
            shield_fault_a: row.number("shield_fault"),
            shield_fault_s: row.number("shield_fault_time"),
            reclosing: row.integer("reclosing"),
            daily: self.daily(row),
        }
    }
}

pub(super) fn names<'s>(names: impl Iterator<Item = &'s String>) -> String {
    let names: Vec<&str> = names.map(String::as_str).collect();
    names.join(", ")
}
