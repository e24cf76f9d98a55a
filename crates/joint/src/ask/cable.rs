//! Missing facts for the rating of a run of cable without a joint.

use super::shield::{run, shield_area};
use crate::cable::Layer;
use crate::job::{Job, Leg};
use crate::limit::{Ask, fact_table as fact};
use crate::said::Subject;

/// Missing facts of a run of cable, before anything is computed of it.
pub fn cable(job: &Job) -> Vec<Ask> {
    let Some(leg) = job.legs.first() else {
        return Vec::new();
    };
    let mut asks = Vec::new();
    if job.surroundings.is_empty() {
        asks.push(fact::RUN_SURROUNDING.of(of_leg(leg)));
    }
    if leg.insulation_stuff.is_none() || leg.jacket_stuff.is_none() {
        asks.push(fact::CABLE_HEAT.of(&leg.id));
    }
    asks.extend(shield(leg));
    let unknown = |layer: &Layer| leg.cable.diameter_over(*layer).is_err();
    let papers = fact::CABLE_PAPERS.of(&leg.id);
    if LAYERS.iter().any(unknown) && !asks.contains(&papers) {
        asks.push(papers);
    }
    asks
}

/// Layers with diameters from the papers.
const LAYERS: [Layer; 4] = [
    Layer::Conductor,
    Layer::InsulationScreen,
    Layer::MetallicShield,
    Layer::Jacket,
];

/// The load, and the limit of its temperature.
pub fn cable_duty(job: &Job) -> Vec<Ask> {
    let duty = &job.duty;
    let load = duty.load_a.is_none().then(|| fact::LOAD.of(""));
    let greatest = duty.conductor_greatest_degc.is_none();
    let greatest = greatest.then(|| fact::CONDUCTOR_GREATEST.of(""));
    load.into_iter().chain(greatest).collect()
}

/// Length of the route and of its stretches.
pub fn cable_route(leg: &Leg) -> Ask {
    fact::ROUTE.of(of_leg(leg))
}

fn of_leg(leg: &Leg) -> Subject {
    Subject::leg(&leg.id)
}

/// Current in the shield, and its path.
fn shield(leg: &Leg) -> Vec<Ask> {
    let is_stated = leg.shield_load_a.is_some();
    let mut asks = if is_stated { Vec::new() } else { run(leg) };
    let is_open = leg.bonding == "open" || leg.shield_run.is_far_end_bonded == Some(false);
    if is_stated || !is_open {
        if leg.shield_metal.is_none() {
            asks.push(fact::SHIELD_PAPERS.of(&leg.id));
        }
        asks.extend(shield_area(leg));
    }
    asks
}
