//! Weakest: the short-circuit current that each part of a leg carries by its own paper, compared with the current that the job demands of it.

use super::{Fault, circular_mils, conductor_area_mm2, melts_degc, shield_area_mm2, start_degc};
use crate::cable::Metal;
use crate::catalogue::Withstand;
use crate::fit::Chosen;
use crate::job::{Job, Leg};
use crate::said::{Carrier, FaultHeatSaid, FaultSaid, Said};
use crate::survey::measured;

/// Capacity of one part of a leg.
#[derive(Clone, Debug, PartialEq)]
pub struct Carries {
    /// Part.
    pub what: Carrier,
    /// Current that it carries for the stated time, A, by its own paper; or the reason why that is not known.
    pub carries_a: Result<f64, Said>,
    /// Current that the job demands of it, A; or the reason why that is not known.
    pub asked_a: Result<f64, Said>,
}

impl Carries {
    /// Ratio of the carried current to the demanded current, if both are known.
    pub fn share_ratio(&self) -> Option<f64> {
        match (&self.carries_a, &self.asked_a) {
            (Ok(carries_a), Ok(asked_a)) => Some(carries_a / asked_a),
            _ => None,
        }
    }
}

/// Conductor, metallic shield, connector, shield part and bonding lead of a leg, as far as the leg has them.
pub fn carries(job: &Job, leg: &Leg, chosen: &Chosen<'_>) -> Vec<Carries> {
    let of_conductor = Fault::of_conductor(&job.duty);
    let of_shield = Fault::of_shield(job, leg);
    let part = |what: Carrier,
                fault: &Result<Fault, Said>,
                carried: &dyn Fn(&Fault) -> Result<f64, Said>| Carries {
        what,
        carries_a: fault.as_ref().map_err(Clone::clone).and_then(carried),
        asked_a: fault
            .as_ref()
            .map(|fault| fault.current_a)
            .map_err(Clone::clone),
    };
    let mut all = vec![
        part(Carrier::Conductor, &of_conductor, &|fault| {
            conductor(job, leg, chosen, fault)
        }),
        part(Carrier::MetallicShield, &of_shield, &|fault| {
            shield(job, leg, fault)
        }),
    ];
    if let Some(connector) = chosen.connector {
        let id = connector.head.id.as_str();
        all.push(part(
            Carrier::Connector(id.to_owned()),
            &of_conductor,
            &|fault| withstood(connector.withstands, id, fault),
        ));
    }
    if let Some(shield_part) = chosen.shield_part {
        let id = shield_part.head.id.as_str();
        all.push(part(
            Carrier::ShieldPart(id.to_owned()),
            &of_shield,
            &|fault| withstood(shield_part.withstands, id, fault),
        ));
    }
    if let Some(lead) = &leg.bonding_lead {
        all.push(part(Carrier::BondingLead, &of_shield, &|fault| {
            let Some(greatest_degc) = lead.fault_greatest_degc else {
                return Err(FaultSaid::LeadLimitNotStated.into());
            };
            heated(job, lead.metal, lead.area_mm2, greatest_degc, fault)
        }));
    }
    all
}

/// Part with the smallest ratio of capacity to demand, among the parts with a known ratio.
pub fn weakest(all: &[Carries]) -> Option<&Carries> {
    let known = all.iter().filter(|part| part.share_ratio().is_some());
    known.min_by(|a, b| f64::total_cmp(&share(a), &share(b)))
}

fn share(part: &Carries) -> f64 {
    part.share_ratio().unwrap_or(f64::INFINITY)
}

fn conductor(job: &Job, leg: &Leg, chosen: &Chosen<'_>, fault: &Fault) -> Result<f64, Said> {
    let Some(body) = chosen.body else {
        return Err(FaultSaid::BodyLeftOpen.into());
    };
    let Some(greatest_degc) = body.conductor_fault_greatest_degc else {
        let row = body.head.id.clone();
        return Err(FaultSaid::RowSaysNoConductorHeat { row }.into());
    };
    let area_mm2 = conductor_area_mm2(&leg.cable)?;
    let metal = leg.cable.conductor.metal;
    heated(job, metal, area_mm2, greatest_degc, fault)
}

/// Current of the shield, from the least metal that may carry it.
fn shield(job: &Job, leg: &Leg, fault: &Fault) -> Result<f64, Said> {
    let (Some(metal), Some(greatest_degc)) = (leg.shield_metal, leg.shield_fault_greatest_degc)
    else {
        return Err(FaultSaid::ShieldMetalOrLimitNotStated.into());
    };
    let counts = job.counts.of_leg(&leg.id);
    let n_counted = counts.filter_map(|(_, row)| row.shield_elements).min();
    let (least_mm2, _) = shield_area_mm2(&measured(job, leg).0, n_counted)?;
    heated(job, metal, least_mm2, greatest_degc, fault)
}

/// Current that heats metal from the highest temperature in service to the greatest permitted one, in the time of all shots.
fn heated(
    job: &Job,
    metal: Metal,
    area_mm2: f64,
    greatest_degc: f64,
    fault: &Fault,
) -> Result<f64, Said> {
    // No paper allows metal to melt.
    let greatest_degc = greatest_degc.min(melts_degc(metal) - 1.0);
    let form = circular_mils(metal);
    let from_degc = start_degc(job)?;
    form.current_a(area_mm2 * 1e-6, from_degc, greatest_degc, fault.time_s)
        .map_err(|_| {
            FaultSaid::NoHeating {
                from_degc,
                to_degc: greatest_degc,
                time_s: fault.time_s,
            }
            .into()
        })
}

/// Current from a part's paper, or I √(t1/t) for a longer time; never more for a shorter time, because of its forces.
fn withstood(withstands: Option<Withstand>, id: &str, fault: &Fault) -> Result<f64, Said> {
    let Some(stated) = withstands else {
        let row = id.to_owned();
        return Err(FaultHeatSaid::RowSaysNoFault { row }.into());
    };
    let by_heat = stated.current_a * (stated.time_s / fault.time_s).sqrt();
    Ok(by_heat.min(stated.current_a))
}
