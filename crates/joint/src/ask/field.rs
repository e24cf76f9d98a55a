//! Missing facts for the electric field of a leg.

use super::Missing;
use crate::cable::Layer;
use crate::catalogue::FieldDuty;
use crate::limit::{Ask, fact_table as fact};
use crate::plane::Plane;
use crate::said::PartKind;
use crate::underlay::{past_edge, past_edge_least};
use jointwright_units::{Length, Station};

impl Missing<'_> {
    /// Inputs of the leg's field that nobody gives.
    pub fn field(&self) -> Vec<Ask> {
        let Some(body) = self.chosen.body else {
            return vec![self.part(PartKind::Body)];
        };
        let mut asks = Vec::new();
        if !self.inside_is_known() {
            asks.push(fact::INSIDE.of(&body.head.id));
        }
        if self.leg.relative_permittivity.is_none() {
            asks.push(fact::PERMITTIVITY.of(&self.leg.id));
        }
        if let Some(adapter) = self.chosen.adapter
            && adapter.relative_permittivity.is_none()
        {
            asks.push(fact::ADAPTER_PERMITTIVITY.of(&adapter.head.id));
        }
        for (phase, survey) in (1..).zip(&self.surveys) {
            if !survey.diameters.contains_key(&Layer::Insulation) {
                asks.push(self.reading(phase, Layer::Insulation));
            }
        }
        let cable = &self.leg.cable;
        let papers = cable.diameter_over(Layer::ConductorScreen).is_ok()
            && cable.thickness_of(Layer::InsulationScreen).is_ok();
        if !papers {
            asks.push(fact::CABLE_PAPERS.of(&self.leg.id));
        }
        let end = self.cutback.in_service(Plane::InsulationEnd);
        asks.extend(self.places(&[end, Plane::ScreenEdge]));
        asks.extend(self.adapter_reach(true));
        let datum = [Plane::BodyCentre, Plane::BodySeat];
        if datum
            .iter()
            .all(|plane| self.cutback.nominal(*plane).is_none())
        {
            asks.push(fact::LINK.of(&body.head.id));
        }
        asks
    }

    /// Missing facts about an adapter that lies on the insulation up to the edge of its screen; for a field it must pass the edge.
    pub(super) fn adapter_reach(&self, is_for_field: bool) -> Vec<Ask> {
        let Some(adapter) = self.chosen.adapter else {
            return Vec::new();
        };
        let ends = [Plane::AdapterNear, Plane::AdapterFar];
        if ends.iter().any(|plane| !self.cutback.places(*plane)) {
            return vec![fact::ADAPTER_ENDS.of(&adapter.head.id)];
        }
        let least = past_edge_least(adapter).filter(|_| is_for_field);
        let least = least.unwrap_or(Length::ZERO);
        match past_edge(self.cutback) {
            Ok(past) if past >= Station::from(least) => Vec::new(),
            Ok(_) => vec![fact::ADAPTER_REACH.of(&self.leg.id)],
            Err(_) => self.places(&[Plane::ScreenEdge, Plane::AdapterFar]),
        }
    }

    /// Whether the row of the body states the inputs of a field.
    fn inside_is_known(&self) -> bool {
        let Some(inner) = self.chosen.body.and_then(|body| body.inner.as_ref()) else {
            return false;
        };
        let one = |duty| {
            let mut found = inner.regions.iter().filter(|r| r.serves == Some(duty));
            found.next().filter(|_| found.next().is_none())
        };
        let corners_are_round = |duty| {
            // The two corners on the bore end the region; the others lie in the field.
            one(duty).is_none_or(|region| {
                region.radii.iter().filter(|r| r.nm() > 0).count() + 3 >= region.corners.len()
            })
        };
        let insulation = one(FieldDuty::Insulation);
        let deflects = inner.grading.is_some() || one(FieldDuty::Deflector).is_some();
        insulation.is_some_and(|region| region.relative_permittivity.is_some())
            && one(FieldDuty::Electrode).is_some()
            && deflects
            && inner.on_diameter.is_some()
            && inner.screen_step.is_some()
            && corners_are_round(FieldDuty::Electrode)
            && corners_are_round(FieldDuty::Deflector)
    }

    /// Missing facts about the tapered plug.
    pub fn taper(&self) -> Vec<Ask> {
        let body = self.chosen.body;
        body.map(|body| fact::TAPER.of(&body.head.id))
            .into_iter()
            .collect()
    }
}
