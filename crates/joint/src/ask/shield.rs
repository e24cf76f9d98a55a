//! Missing facts about short circuits, and about a shield beyond the joint.

use super::Missing;
use crate::cable::{Layer, Shield};
use crate::job::Leg;
use crate::limit::{Ask, fact_table as fact};

impl Missing<'_> {
    /// Facts about the conductor's short circuit that nobody states.
    pub fn fault(&self) -> Vec<Ask> {
        let duty = &self.job.duty;
        let stated = [duty.fault_a, duty.fault_s].map(|value| value.is_some_and(|v| v > 0.0));
        let is_known = stated == [true; 2] && duty.reclosing.is_some();
        (!is_known)
            .then(|| fact::FAULT.of(""))
            .into_iter()
            .collect()
    }

    /// Facts about the shield's short circuit that nobody states.
    pub fn shield_fault(&self) -> Vec<Ask> {
        let duty = &self.job.duty;
        let current = self.leg.shield_fault_a.or(duty.shield_fault_a);
        let stated = [current, duty.shield_fault_s].map(|value| value.is_some_and(|v| v > 0.0));
        let longest_s = self.job.system.clearing_time_s.unwrap_or(0.0);
        let is_long = duty.shield_fault_s.is_none_or(|time| time >= longest_s);
        let is_known = stated == [true; 2] && is_long && duty.reclosing.is_some();
        (!is_known)
            .then(|| fact::SHIELD_FAULT.of(""))
            .into_iter()
            .collect()
    }

    /// Temperature at which a short circuit begins.
    pub fn fault_start(&self) -> Option<Ask> {
        let floor = self.job.place.ambient_degc.1.unwrap_or(0.0).max(0.0);
        let start = self.job.duty.conductor_greatest_degc;
        let is_known = start.is_some_and(|start| start >= floor);
        (!is_known).then(|| fact::CONDUCTOR_GREATEST.of(""))
    }

    /// Facts about the shield that the papers of the cable leave open.
    pub fn shield_papers(&self) -> Option<Ask> {
        let leg = self.leg;
        let is_known = leg.shield_metal.is_some() && leg.shield_fault_greatest_degc.is_some();
        (!is_known).then(|| fact::SHIELD_PAPERS.of(&leg.id))
    }

    /// Missing facts about the area of the shield.
    pub fn shield_area(&self) -> Vec<Ask> {
        shield_area(self.leg)
    }

    /// Bonding of the shield, formation and length of its run.
    pub fn run(&self) -> Vec<Ask> {
        run(self.leg)
    }

    /// Missing facts for the voltage at the open end of the shield.
    pub fn standing(&self) -> Vec<Ask> {
        let (leg, run) = (self.leg, &self.leg.shield_run);
        let mut asks = Vec::new();
        let is_floating = leg.bonding == "open" && run.is_far_end_bonded == Some(false);
        if run.is_far_end_bonded.is_none() || leg.bonding == "linked" || is_floating {
            asks.push(fact::FAR_END.of(&leg.id));
        }
        if run.formation.is_none() || run.spacing.is_none() || run.length.is_none() {
            asks.push(fact::RUN.of(&leg.id));
        }
        if self
            .leg
            .cable
            .diameter_over(Layer::InsulationScreen)
            .is_err()
        {
            asks.push(fact::CABLE_PAPERS.of(&leg.id));
        }
        if self.job.load_of_a(leg).is_none() {
            asks.push(fact::LOAD.of(""));
        }
        asks
    }
}

/// Missing facts about the area of a leg's shield.
pub(super) fn shield_area(leg: &Leg) -> Vec<Ask> {
    let (id, cable) = (&leg.id, &leg.cable);
    let mut asks = Vec::new();
    if cable.diameter_over(Layer::InsulationScreen).is_err() {
        asks.push(fact::CABLE_PAPERS.of(id));
    }
    let mut is_made = crate::fault::shield_area_mm2(cable, None).is_ok();
    if let Shield::LappedTape { width, .. } | Shield::TapeWithWires { width, .. } = cable.shield {
        is_made &= width.is_some();
    }
    if !is_made {
        asks.push(fact::SHIELD_MADE.of(id));
    }
    asks
}

/// Bonding of a leg's shield, and the formation of its run.
pub(super) fn run(leg: &Leg) -> Vec<Ask> {
    let run = &leg.shield_run;
    let mut asks = Vec::new();
    let is_far_end_open = run.is_far_end_bonded.is_none() && leg.bonding != "open";
    if is_far_end_open || leg.bonding == "linked" {
        asks.push(fact::FAR_END.of(&leg.id));
    }
    let flows = leg.bonding == "solid" && run.is_far_end_bonded == Some(true);
    if flows && (run.formation.is_none() || run.spacing.is_none()) {
        asks.push(fact::RUN.of(&leg.id));
    }
    asks
}
