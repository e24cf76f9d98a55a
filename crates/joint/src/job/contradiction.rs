//! What a job says twice and not alike: loads, short circuits and times that cannot all be so.
//!
//! Why its own room: one of the two is wrong, and no check can know which; the job is refused at the line.
//!
//! Not here: what one field alone cannot be (`form`), currents that cannot meet (`warm`).

use super::walk_job::JobReader;
use crate::form::Record;
use crate::said::{AroundHint, AroundSaid, JobDutyHint, JobDutySaid};

/// Earthings with which a fault to earth flows as long as it takes to clear it; with the others the current of one earth fault is small, and the stated one is that of two.
const CLEARED_AS_STATED: &[&str] = &["solid", "impedance"];

/// Temperature up to which the resistance of a conductor is known, °C: docs/theory/cable.md.
const KNOWN_TO_DEGC: f64 = 250.0;

impl JobReader<'_> {
    /// Complains of currents and times that contradict each other, of the whole job and of each leg.
    pub(super) fn contradictions(&mut self, record: &Record) {
        let Some(duty) = record.record("duty") else {
            return;
        };
        let legs: Vec<&Record> = record.records("leg").collect();
        self.emergency_below_load(duty, duty, duty);
        self.hotter_than_known(duty);
        self.shield_above_conductor(duty, duty);
        for leg in legs {
            if leg.is_given("load") || leg.is_given("emergency") {
                let pick = |name: &str| if leg.is_given(name) { leg } else { duty };
                self.emergency_below_load(pick("emergency"), pick("load"), leg);
            }
            self.shield_above_conductor(leg, duty);
        }
        let phases = record.record("job").and_then(|job| job.integer("phases"));
        self.soil_unlike_legs(record, phases.unwrap_or(1));
        if let Some(system) = record.record("system") {
            self.shorter_than_cleared(system, duty);
        }
    }

    /// Complains of a limit so high that no resistance is known there.
    fn hotter_than_known(&mut self, duty: &Record) {
        let name = "conductor_greatest";
        let Some(degc) = duty.number(name).filter(|degc| *degc > KNOWN_TO_DEGC) else {
            return;
        };
        self.complain(
            duty.at(name),
            JobDutySaid::HotterThanKnown {
                degc,
                known_degc: KNOWN_TO_DEGC,
            },
            JobDutyHint::HighestInService,
        );
    }

    /// Complains of cables that lie in the soil otherwise than their job or leg says.
    fn soil_unlike_legs(&mut self, record: &Record, phases: i64) {
        for row in record.records("surrounding") {
            let soil = row.record("soil");
            if let Some(soil) = soil {
                self.spacing_unlike_legs(record, row, soil);
            }
            let Some((soil, said)) = soil.and_then(|s| Some((s, s.text("formation")?))) else {
                continue;
            };
            if said == "alone" && phases > 1 {
                self.complain(
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
                    self.complain(
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

    /// Complains of cables that lie farther apart in the soil than their leg says, or nearer: one spacing rules the shield's loss, the other the soil.
    fn spacing_unlike_legs(&mut self, record: &Record, row: &Record, soil: &Record) {
        let Some(of_soil) = soil.length("spacing") else {
            return;
        };
        for leg in record.records("leg") {
            let is_its = row.text("leg").is_none_or(|of| leg.text("id") == Some(of));
            let of_leg = leg.length("spacing").filter(|of| is_its && *of != of_soil);
            if let (Some(of_leg), Some(id)) = (of_leg, leg.text("id")) {
                self.complain(
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

    fn emergency_below_load(&mut self, of_emergency: &Record, of_load: &Record, whose: &Record) {
        let (Some(emergency), Some(load)) =
            (of_emergency.number("emergency"), of_load.number("load"))
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
        self.complain(
            whose.at(name),
            JobDutySaid::EmergencyBelowLoad {
                emergency_a: emergency,
                load_a: load,
            },
            JobDutyHint::LookUpBothLoads,
        );
    }

    fn shield_above_conductor(&mut self, of_shield: &Record, duty: &Record) {
        let (Some(shield), Some(conductor)) =
            (of_shield.number("shield_fault"), duty.number("fault"))
        else {
            return;
        };
        if shield <= conductor {
            return;
        }
        self.complain(
            of_shield.at("shield_fault"),
            JobDutySaid::ShieldAboveConductor {
                shield_a: shield,
                conductor_a: conductor,
            },
            JobDutyHint::GreatestOfAllFaults,
        );
    }

    /// A fault to earth that ends before the longest time in which it is cleared.
    fn shorter_than_cleared(&mut self, system: &Record, duty: &Record) {
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
                self.complain(
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
}
