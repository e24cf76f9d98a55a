//! Missing facts for the temperatures that the load causes.

use super::Missing;
use crate::catalogue::Bus;
use crate::job::JointKind;
use crate::limit::{Ask, fact_table as fact};
use crate::plane::Plane;
use crate::said::{Of, Subject};
use crate::warm::unread;

/// Missing facts of a joint; all legs count, because each warms the others.
pub fn heat(legs: &[Missing<'_>], bus: Option<&Bus>) -> Vec<Ask> {
    let mut asks: Vec<Ask> = Vec::new();
    let mut add = |ask: Ask| {
        if !asks.contains(&ask) {
            asks.push(ask);
        }
    };
    for leg in legs {
        leg.heat().into_iter().for_each(&mut add);
    }
    if legs.iter().any(|leg| leg.job.kind == JointKind::Separable) {
        match bus {
            None => add(fact::BUS.of(Of::Bus)),
            Some(bus) if bus.resistance_ohm.is_none() => add(fact::BUS_HEAT.of(&bus.head.id)),
            Some(_) => {}
        }
    }
    asks
}

impl Missing<'_> {
    fn heat(&self) -> Vec<Ask> {
        let (job, leg) = (self.job, self.leg);
        let mut asks = Vec::new();
        if job.load_of_a(leg).is_none() {
            asks.push(fact::LOAD.of(""));
        }
        if job.place.ambient_degc.1.is_none() {
            asks.push(fact::AMBIENT_GREATEST.of(""));
        }
        let mut surroundings = job.surroundings.iter();
        if !surroundings.any(|row| row.leg.as_ref().is_none_or(|of| *of == leg.id)) {
            asks.push(fact::SURROUNDING.of(Subject::leg(&leg.id)));
        }
        if leg.insulation_stuff.is_none() || leg.jacket_stuff.is_none() {
            asks.push(fact::CABLE_HEAT.of(&leg.id));
        }
        if leg.shield_metal.is_none() {
            asks.push(fact::SHIELD_PAPERS.of(&leg.id));
        }
        asks.extend(self.shield_area());
        if leg.shield_load_a.is_none() {
            asks.extend(self.run());
        }
        asks.extend(unread(self.leg, self.surveys.iter().copied()));
        asks.extend(self.parts_in_heat());
        asks.extend(self.places_in_heat());
        asks
    }

    fn parts_in_heat(&self) -> Vec<Ask> {
        let chosen = self.chosen;
        let mut asks = Vec::new();
        if let Some(body) = chosen.body {
            let id = &body.head.id;
            match &body.inner {
                Some(inner) if inner.on_diameter.is_some() => {
                    if inner.regions.iter().any(|region| region.stuff.is_none()) {
                        asks.push(fact::BODY_HEAT.of(id));
                    }
                }
                _ => asks.push(fact::INSIDE.of(id)),
            }
        }
        if let Some(adapter) = chosen.adapter.filter(|adapter| adapter.stuff.is_none()) {
            asks.push(fact::ADAPTER_HEAT.of(&adapter.head.id));
        }
        if let Some(seal) = chosen.seal.filter(|seal| seal.cover.is_none()) {
            asks.push(fact::SEAL_HEAT.of(&seal.head.id));
        }
        let is_silent = chosen.end.is_none_or(|end| end.resistance_ratio.is_none());
        let bare = |c: &&crate::catalogue::Connector| c.made_of.is_none() || is_silent;
        if let Some(connector) = chosen.connector.filter(bare) {
            asks.push(fact::CONNECTOR_HEAT.of(&connector.head.id));
        }
        asks
    }

    /// Places from which the heat is computed; their windows do not matter, because each counts at its planned place.
    fn places_in_heat(&self) -> Vec<Ask> {
        let open = self.open_parts();
        if !open.is_empty() {
            return open;
        }
        let planes = [
            Plane::ConnectorMouth,
            Plane::InsulationEnd,
            Plane::ScreenEdge,
            Plane::ShieldEdge,
            Plane::JacketEdge,
            Plane::BodyEnd,
            Plane::SealEnd,
        ];
        let unplaced = planes
            .into_iter()
            .filter(|p| self.cutback.nominal(*p).is_none());
        let unplaced: Vec<Plane> = unplaced.collect();
        let mut asks = self.places(&unplaced);
        let ends = [Plane::AdapterNear, Plane::AdapterFar];
        if let Some(adapter) = self.chosen.adapter
            && ends.iter().any(|p| self.cutback.nominal(*p).is_none())
        {
            asks.push(fact::ADAPTER_ENDS.of(&adapter.head.id));
        }
        asks.retain(|ask| ask.fact.key != fact::WINDOW.key);
        asks
    }
}
