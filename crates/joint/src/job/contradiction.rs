//! Contradiction: statements of a job about loads, short circuits and times that cannot all be true.
//!
//! Why its own room: one of two statements is wrong, and no check can know which; the job is refused at that line.
//!
//! Not here: impossible values of one field (`form`), currents that cannot meet (`warm`).

use super::reader::JobReader;
use crate::form::Record;
use crate::said::{AroundHint, AroundSaid, JobDutyHint, JobDutySaid};

/// Earthings under which a fault to earth flows until it is cleared.
///
/// Under the others the current of one earth fault is small, and the stated current is that of two earth faults.
const CLEARED_AS_STATED: &[&str] = &["solid", "impedance"];

/// Highest temperature at which the resistance of a conductor is known, °C: docs/theory/cable.md.
const KNOWN_TO_DEGC: f64 = 250.0;

/// Complains about currents and times that contradict each other, in the whole job and in each leg.
pub(super) fn contradictions(reader: &mut JobReader<'_>, record: &Record) {
    let Some(duty) = record.record("duty") else {
        return;
    };
    let legs: Vec<&Record> = record.records("leg").collect();
    emergency_below_load(reader, duty, duty, duty);
    hotter_than_known(reader, duty);
    shield_above_conductor(reader, duty, duty);
    for leg in legs {
        if leg.is_given("load") || leg.is_given("emergency") {
            let pick = |name: &str| if leg.is_given(name) { leg } else { duty };
            emergency_below_load(reader, pick("emergency"), pick("load"), leg);
        }
        shield_above_conductor(reader, leg, duty);
    }
    let phases = record.record("job").and_then(|job| job.integer("phases"));
    soil_unlike_legs(reader, record, phases.unwrap_or(1));
    if let Some(system) = record.record("system") {
        shorter_than_cleared(reader, system, duty);
    }
}

/// Complains about a limit above the temperatures at which resistances are known.
fn hotter_than_known(reader: &mut JobReader<'_>, duty: &Record) {
    let name = "conductor_greatest";
    let Some(degc) = duty.number(name).filter(|degc| *degc > KNOWN_TO_DEGC) else {
        return;
    };
    reader.complain(
        duty.at(name),
        JobDutySaid::HotterThanKnown {
            degc,
            known_degc: KNOWN_TO_DEGC,
        },
        JobDutyHint::HighestInService,
    );
}

/// Complains about cables whose formation in the soil differs from that of their job or leg.
fn soil_unlike_legs(reader: &mut JobReader<'_>, record: &Record, phases: i64) {
    for row in record.records("surrounding") {
        let soil = row.record("soil");
        if let Some(soil) = soil {
            spacing_unlike_legs(reader, record, row, soil);
        }
        let Some((soil, said)) = soil.and_then(|s| Some((s, s.text("formation")?))) else {
            continue;
        };
        if said == "alone" && phases > 1 {
            reader.complain(
                soil.at("formation"),
                AroundSaid::AloneWithPhases { phases },
                AroundHint::SayHowTheyLie,
            );
        }
        for leg in record.records("leg") {
            let is_its = row.text("leg").is_none_or(|of| leg.text("id") == Some(of));
            let of_leg = leg
                .text("formation")
                .filter(|of_leg| is_its && *of_leg != said.trim_end_matches("-touching"));
            if let (Some(of_leg), Some(id)) = (of_leg, leg.text("id")) {
                reader.complain(
                    soil.at("formation"),
                    AroundSaid::LieOtherwise {
                        soil: said.to_owned(),
                        leg: id.to_owned(),
                        leg_way: of_leg.to_owned(),
                    },
                    AroundHint::OneWay,
                );
            }
        }
    }
}

/// Complains about cables whose spacing in the soil differs from that of their leg.
///
/// The leg's spacing rules the shield's loss, and the soil's spacing rules the heat in the soil.
fn spacing_unlike_legs(reader: &mut JobReader<'_>, record: &Record, row: &Record, soil: &Record) {
    let Some(of_soil) = soil.length("spacing") else {
        return;
    };
    for leg in record.records("leg") {
        let is_its = row.text("leg").is_none_or(|of| leg.text("id") == Some(of));
        let of_leg = leg.length("spacing").filter(|of| is_its && *of != of_soil);
        if let (Some(of_leg), Some(id)) = (of_leg, leg.text("id")) {
            reader.complain(
                soil.at("spacing"),
                AroundSaid::ApartOtherwise {
                    soil: of_soil.to_string(),
                    leg: id.to_owned(),
                    leg_apart: of_leg.to_string(),
                },
                AroundHint::OneDistance,
            );
        }
    }
}

fn emergency_below_load(
    reader: &mut JobReader<'_>,
    of_emergency: &Record,
    of_load: &Record,
    whose: &Record,
) {
    let (Some(emergency), Some(load)) = (of_emergency.number("emergency"), of_load.number("load"))
    else {
        return;
    };
    if emergency >= load {
        return;
    }
    let name = if whose.is_given("emergency") {
        "emergency"
    } else {
        "load"
    };
    reader.complain(
        whose.at(name),
        JobDutySaid::EmergencyBelowLoad {
            emergency_a: emergency,
            load_a: load,
        },
        JobDutyHint::LookUpBothLoads,
    );
}

fn shield_above_conductor(reader: &mut JobReader<'_>, of_shield: &Record, duty: &Record) {
    let (Some(shield), Some(conductor)) = (of_shield.number("shield_fault"), duty.number("fault"))
    else {
        return;
    };
    if shield <= conductor {
        return;
    }
    reader.complain(
        of_shield.at("shield_fault"),
        JobDutySaid::ShieldAboveConductor {
            shield_a: shield,
            conductor_a: conductor,
        },
        JobDutyHint::GreatestOfAllFaults,
    );
}

/// Complains about a fault to earth that is shorter than the longest clearing time.
fn shorter_than_cleared(reader: &mut JobReader<'_>, system: &Record, duty: &Record) {
    let is_stated = system
        .text("earthing")
        .is_some_and(|word| CLEARED_AS_STATED.contains(&word));
    let Some(clearing_s) = system.number("clearing_time").filter(|_| is_stated) else {
        return;
    };
    let is_to_earth = duty.text("fault_kind") == Some("to-earth");
    for (name, is_earth_fault) in [("shield_fault_time", true), ("fault_time", is_to_earth)] {
        let Some(time_s) = duty.number(name).filter(|_| is_earth_fault) else {
            continue;
        };
        if time_s < clearing_s {
            reader.complain(
                duty.at(name),
                JobDutySaid::ShorterThanCleared {
                    field: name.to_owned(),
                    time_s,
                    clearing_s,
                },
                JobDutyHint::LongestInBoth,
            );
        }
    }
}
