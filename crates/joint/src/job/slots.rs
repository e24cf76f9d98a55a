//! Slots: names of the readings, counts and tests that a job has at its ends.
//!
//! Why its own file: a plan marks the blanks that are filled already, without comparing texts.

use super::{Count, Job};
use crate::end::EndId;
use crate::slot::{Measured, Slot};
use std::collections::BTreeSet;

impl Count {
    /// Quantities that are counted or seen.
    pub fn measured(&self) -> Vec<Measured> {
        let counted = [
            (self.shield_elements.is_some(), Measured::ShieldElements),
            (self.strands.is_some(), Measured::Strands),
            (self.metal.is_some(), Measured::ConductorMetal),
            (self.shield_kind.is_some(), Measured::ShieldForm),
        ];
        let counted = counted.into_iter().filter(|(is_counted, _)| *is_counted);
        counted.map(|(_, measured)| measured).collect()
    }
}

impl Job {
    /// Slots of an end that a row of the job fills.
    pub fn filled_slots(&self, end: &EndId) -> BTreeSet<Slot> {
        let readings = self.readings.of(end).iter();
        let readings = readings.map(|row| Measured::Diameter { over: row.over });
        let counts = self.counts.of(end).iter().flat_map(Count::measured);
        let moistures = self.moistures.of(end).iter().map(|row| {
            if row.place == "shield" {
                Measured::ShieldMoisture
            } else {
                Measured::StrandMoisture
            }
        });
        let surfaces = self.surfaces.of(end).iter();
        let contacts = self.contacts.of(end).iter();
        let continuities = self.continuities.of(end).iter();
        readings
            .chain(counts)
            .chain(moistures)
            .chain(surfaces.map(|_| Measured::JacketSurface))
            .chain(contacts.map(|_| Measured::ContactResistance))
            .chain(continuities.map(|_| Measured::ShieldResistance))
            .map(|measured| Slot::new(end, measured))
            .collect()
    }
}
