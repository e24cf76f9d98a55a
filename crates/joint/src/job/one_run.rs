//! One run: a job about a run of cable without a joint.

use super::reader::JobReader;
use crate::form::Record;
use crate::said::{RunHint, RunSaid};

/// Whether a job is one run of cable without a joint.
pub(super) fn is_run(record: &Record) -> bool {
    let head = record.record("job");
    head.and_then(|head| head.text("kind")) == Some("cable")
}

/// Checks a run of cable without a joint: it has one leg, and no facts of a joint.
pub(super) fn one_run(reader: &mut JobReader<'_>, record: &Record) {
    let n_legs = record.list("leg").count();
    if n_legs != 1 {
        reader.complain(
            record.at("leg"),
            RunSaid::NotOneLeg { n: n_legs },
            RunHint::EachRunItsJob,
        );
    }
    let of_joint = [
        "body",
        "adapter",
        "connector",
        "shield_part",
        "seal",
        "consumables",
    ];
    let legs = record.records("leg");
    let given = legs.flat_map(|leg| of_joint.map(|name| (leg, name)));
    let given = given.filter(|(leg, name)| leg.is_given(name));
    let given = given.map(|(leg, name)| (leg.at(name), name));
    let whole = [
        "bus",
        "blank",
        "reading",
        "count",
        "surface",
        "moisture",
        "contact",
        "continuity",
        "trial_press",
        "lot",
        "readings_csv",
        "counts_csv",
        "lots_csv",
    ]
    .into_iter();
    let whole = whole.filter(|name| record.is_given(name));
    let whole = whole.map(|name| (record.at(name), name));
    for (at, name) in given.chain(whole).collect::<Vec<_>>() {
        let is_part = of_joint.contains(&name) || ["bus", "blank"].contains(&name);
        let field = name.to_owned();
        let said = if is_part {
            RunSaid::NamesAPart { field }
        } else {
            RunSaid::NothingReads { field }
        };
        reader.complain(at, said, RunHint::TakeOutOrChangeKind);
    }
    said_of_the_whole(reader, record);
}

/// Complains about loads and faults that a run does not use, and about stretches counted from a conductor end.
fn said_of_the_whole(reader: &mut JobReader<'_>, record: &Record) {
    // A fact that is stated but not computed would stand beside a pass.
    let of_duty = [
        "emergency",
        "emergency_time",
        "fault",
        "fault_time",
        "shield_fault",
        "shield_fault_time",
    ];
    if let Some(duty) = record.record("duty") {
        for name in of_duty.into_iter().filter(|name| duty.is_given(name)) {
            reader.complain(
                duty.at(name),
                RunSaid::NotComputedOfARun {
                    field: name.to_owned(),
                },
                RunHint::OtherMeans,
            );
        }
    }
    for leg in record.records("leg") {
        for (name, hint) in [
            ("load", RunHint::SayUnderDuty),
            ("emergency", RunHint::NoEmergencyOfARun),
        ] {
            if leg.is_given(name) {
                reader.complain(
                    leg.at(name),
                    RunSaid::OneLoad {
                        field: name.to_owned(),
                    },
                    hint,
                );
            }
        }
    }
    for row in record.records("surrounding") {
        if row.is_given("until") {
            reader.complain(
                row.at("until"),
                RunSaid::NothingToCountFrom,
                RunHint::SayItsLength,
            );
        }
    }
}

/// Complains about facts of a whole route in the job of a joint.
pub(super) fn nothing_of_a_run(reader: &mut JobReader<'_>, record: &Record) {
    let duty = record.record("duty").map(|duty| (duty, "daily"));
    let rows = [("leg", "route_length"), ("surrounding", "length")].into_iter();
    let rows = rows.flat_map(|(list, name)| record.records(list).map(move |row| (row, name)));
    for (row, name) in rows.chain(duty) {
        if row.is_given(name) {
            reader.complain(
                row.at(name),
                RunSaid::OnlyOfARun {
                    field: name.to_owned(),
                },
                RunHint::TakeOutOrChangeKind,
            );
        }
    }
}
