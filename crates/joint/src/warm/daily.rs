//! Daily: the peak of a daily load cycle that a buried run of cable can carry, beside its steady load.
//!
//! Not here: rulings; the formula is from memory.
//!
//! Source: iec_60853, memory; `docs/theory/rating.md`.

use super::input::metal_stuff;
use super::outside;
use crate::job::{Daily, Day, Leg, Surrounding};
use crate::said::NoDay;
use jointwright_numerics::heat::Stuff;
use jointwright_numerics::rating::cyclic::{Cycle, least_factor_ratio};
use jointwright_numerics::rating::transient::{Body, Ground, Transient, Wall};
use jointwright_numerics::rating::{Circuit, Outside, RatingError, Steady};
use std::f64::consts::PI;

/// Peak of a day's loads that brings the conductor to its limit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cyclic {
    /// Load of the hour with the greatest load, A.
    pub peak_a: f64,
    /// Cyclic rating factor M: ratio of the peak to the steady load of the same temperature.
    pub factor_ratio: f64,
    /// Loss-load factor: ratio of the mean loss to the loss at the peak.
    pub loss_load_ratio: f64,
}

/// Buried cable, with its diameters over conductor, screen and jacket, m.
pub(super) struct Buried<'a> {
    pub leg: &'a Leg,
    pub row: &'a Surrounding,
    pub conductor_m: f64,
    pub screen_m: f64,
    pub jacket_m: f64,
}

impl Buried<'_> {
    /// Thermal body of the cable: insulation and jacket with their heat capacities, and the metal of the conductor.
    fn body(&self, stuffs: (Stuff, Stuff), circuit: &Circuit, losses_ratio: f64) -> Body {
        let (conductor_m, screen_m, jacket_m) = (self.conductor_m, self.screen_m, self.jacket_m);
        let papers = self.leg.cable.conductor;
        let metal = metal_stuff(papers.metal);
        let area_m2 = papers.size.area_mm2() * 1e-6;
        Body {
            // The area of metal is at most the area of the conductor's circle.
            conductor_j_per_m_k: metal.capacity_j_per_m3k
                * area_m2.min(PI / 4.0 * conductor_m * conductor_m),
            insulation: Wall {
                inside_m: conductor_m,
                outside_m: screen_m,
                resistance_k_m_per_w: circuit.inner_k_m_per_w.iter().sum(),
                heat_j_per_m3_k: stuffs.0.capacity_j_per_m3k,
            },
            shield_j_per_m_k: 0.0,
            jacket: Some(Wall {
                inside_m: screen_m,
                outside_m: jacket_m,
                resistance_k_m_per_w: circuit.outer_k_m_per_w.iter().sum(),
                heat_j_per_m3_k: stuffs.1.capacity_j_per_m3k,
            }),
            losses_ratio,
            outside_k_m_per_w: 0.0,
        }
    }
}

/// Reason why a day is not computed for a stretch; `None` if it is computed.
pub(super) fn left_out(row: &Surrounding) -> Option<NoDay> {
    let Some(soil) = &row.soil else {
        return Some(NoDay::NotInSoil);
    };
    if row.duct.is_some() {
        return Some(NoDay::InDuct);
    }
    if soil.drying.is_some() {
        return Some(NoDay::InDryingSoil);
    }
    soil.diffusivity_m2_per_s
        .is_none()
        .then_some(NoDay::NoDiffusivity)
}

/// Peak that brings this cable to the temperature of a steady load; `None` if it is left out.
///
/// # Assumes
/// Conductor, insulation and jacket store heat; the shield stores none, which makes the peak smaller.
/// The jacket of a touching trefoil has the same thermal resistance as under a steady load.
///
/// # Errors
/// The reason why it cannot be computed.
///
/// # Source
/// iec_60853, memory.
pub(super) fn cyclic(
    daily: &Daily,
    cable: &Buried<'_>,
    circuit: &Circuit,
    steady: &Steady,
) -> Result<Option<Cyclic>, RatingError> {
    let leg = cable.leg;
    let (
        Some(soil),
        Outside::Soil {
            resistance_k_m_per_w,
        },
    ) = (&cable.row.soil, circuit.outside)
    else {
        return Ok(None);
    };
    let (Some(diffusivity_m2_per_s), Some(insulation), Some(jacket)) = (
        soil.diffusivity_m2_per_s,
        leg.insulation_stuff,
        leg.jacket_stuff,
    ) else {
        return Ok(None);
    };
    let body = cable.body((insulation, jacket), circuit, 1.0 + steady.shield_ratio);
    let ground = Ground {
        resistance_k_m_per_w,
        diffusivity_m2_per_s,
        outside_m: cable.jacket_m,
        depth_m: soil.depth_m,
        others: outside::others(soil, cable.jacket_m)?,
    };
    let peak = || -> Result<Cyclic, RatingError> {
        let transient = Transient::of(&body, Some(ground))?;
        let reached = |time_s| transient.reached_ratio(time_s);
        let (factor_ratio, loss_load_ratio) = match daily.day {
            Day::Loads(loads_ratio) => {
                let cycle = Cycle::of(loads_ratio)?;
                (cycle.factor_ratio(reached)?, cycle.loss_load_ratio())
            }
            Day::LossLoad(ratio) => (least_factor_ratio(ratio, reached)?, ratio),
        };
        Ok(Cyclic {
            peak_a: factor_ratio * steady.current_a,
            factor_ratio,
            loss_load_ratio,
        })
    };
    peak().map(Some)
}
