//! Ports: whether legs, their names, their ports and the bus fit the kind of joint.

use super::one_run::is_run;
use super::one_run::{nothing_of_a_run, one_run};
use super::reader::JobReader;
use crate::form::Record;
use crate::said::{HeadHint, HeadSaid, JointKind, NameHint, NameSaid};
use std::collections::BTreeMap;

/// Checks legs, ports and the bus against the kind of joint.
pub(super) fn ports(reader: &mut JobReader<'_>, record: &Record, kind: JointKind) {
    let n_legs = record.list("leg").count();
    let wrong = match kind {
        JointKind::Straight => (n_legs != 2).then_some(HeadSaid::WantsTwoLegs { kind, n: n_legs }),
        JointKind::Branch => (n_legs < 3).then_some(HeadSaid::WantsThreeLegs { kind, n: n_legs }),
        JointKind::Separable => None,
        JointKind::Cable => return one_run(reader, record),
    };
    nothing_of_a_run(reader, record);
    if let Some(wrong) = wrong {
        reader.complain(record.at("leg"), wrong, HeadHint::ChangeKindOrLegs);
    }
    if kind != JointKind::Separable {
        let no_bus = [
            ("bus", HeadSaid::NoBusButOneNamed { kind }),
            ("blank", HeadSaid::NoBusButBlanks { kind }),
        ];
        for (name, said) in no_bus {
            if record.is_given(name) {
                reader.complain(record.at(name), said, HeadHint::TakeOutOrSeparable);
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
                reader.complain(row.at, HeadSaid::LegHasNoPort { leg }, HeadHint::SayItsPort);
            }
            continue;
        };
        if let Some(one) = taken.insert(port, who.clone()) {
            let other = who;
            let twice = HeadSaid::PortTakenTwice { port, one, other };
            reader.complain(row.at("port"), twice, HeadHint::AnotherPort);
        }
    }
}

pub(super) fn leg_names(reader: &mut JobReader<'_>, record: &Record) {
    let mut seen: BTreeMap<&str, usize> = BTreeMap::new();
    for leg in record.records("leg") {
        let Some(id) = leg.text("id") else { continue };
        if let Some(first) = seen.insert(id, leg.at) {
            let two = NameSaid::TwoLegs {
                leg: id.to_owned(),
                place: reader.place_of(first).to_string(),
            };
            reader.complain(leg.at("id"), two, NameHint::OwnLetter);
        }
    }
    let n_legs = record.list("leg").count();
    if record.is_given("leg") && !is_run(record) && !(2..=6).contains(&n_legs) {
        reader.complain(
            record.at("leg"),
            HeadSaid::LegsNotTwoToSix { n: n_legs },
            HeadHint::AddOrTakeLegs,
        );
    }
}
