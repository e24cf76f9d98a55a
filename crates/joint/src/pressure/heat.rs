//! Heat: the temperatures that a joint reaches, and their effect on cable and rubber.
//!
//! Lengths grow as exp(α ΔT), so a tube and a cylinder with one expansion coefficient keep their ratio.

use super::Seat;
use crate::catalogue::Rubber;
use crate::job::{Job, Leg};
use crate::said::{HeatFact, PressureHeat, WarmthSaid};
use crate::section::Unknown;

/// Number of temperature steps over the range.
const N_STEPS: u32 = 16;

/// Temperatures of body and cable, degrees Celsius.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Warmth {
    /// Temperature of the rubber.
    pub body_degc: f64,
    /// Temperature of the cable's insulation.
    pub cable_degc: f64,
}

/// Range of temperature, and the constants of cable and rubber over it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Heat {
    /// Lowest and highest temperature, degrees Celsius.
    pub range_degc: (f64, f64),
    read_degc: (f64, f64),
    rubber_degc: f64,
    cable_per_k: (f64, f64),
    rubber_per_k: (f64, f64),
    modulus_per_k: (f64, f64),
}

impl Warmth {
    /// Returns the message for these temperatures.
    pub const fn said(self) -> WarmthSaid {
        WarmthSaid {
            body_degc: self.body_degc,
            cable_degc: self.cable_degc,
        }
    }
}

/// Reads the temperatures of a joint and the constants of their effect on a part, or names the missing facts.
pub(super) fn heat(
    job: &Job,
    leg: &Leg,
    id: &str,
    rubber: &Rubber,
    seat: &Seat,
) -> Result<Heat, Unknown> {
    let (least, greatest) = (job.place.ambient_degc.0, job.duty.conductor_greatest_degc);
    let known = (|| {
        Some(Heat {
            range_degc: (least?, greatest?),
            read_degc: seat.degc?,
            rubber_degc: rubber.at_degc,
            cable_per_k: leg.expansion_per_k?,
            rubber_per_k: rubber.expansion_per_k?,
            modulus_per_k: rubber.modulus_per_k?,
        })
    })();
    match known {
        Some(heat) if heat.range_degc.0 <= heat.range_degc.1 => heat.with_stiffness(id),
        Some(heat) => Err(Unknown::plain(PressureHeat::LowestAboveHighest {
            lowest_degc: heat.range_degc.0,
            highest_degc: heat.range_degc.1,
        })),
        None => {
            let missing = gaps(job, leg, rubber, seat);
            let ask = |fact: &HeatFact| question(*fact, &leg.id, id);
            let questions: Vec<PressureHeat> = missing.iter().map(ask).collect();
            Err(Unknown::new(PressureHeat::NotKnown { missing }, questions))
        }
    }
}

/// Question that would settle a missing fact.
fn question(fact: HeatFact, leg: &str, id: &str) -> PressureHeat {
    let (leg, part) = (leg.to_owned(), id.to_owned());
    match fact {
        HeatFact::LowestAtPlace => PressureHeat::AskLowestAtPlace,
        HeatFact::HighestOfConductor => PressureHeat::AskHighestOfConductor,
        HeatFact::OfReadings => PressureHeat::AskDegcOfLeg { leg },
        HeatFact::CableExpansion => PressureHeat::AskCableExpansion { leg },
        HeatFact::RubberExpansion => PressureHeat::AskRubberExpansion { part },
        HeatFact::RubberStiffness => PressureHeat::AskRubberStiffness { part },
    }
}

/// Missing facts.
fn gaps(job: &Job, leg: &Leg, rubber: &Rubber, seat: &Seat) -> Vec<HeatFact> {
    let known = [
        (job.place.ambient_degc.0.is_some(), HeatFact::LowestAtPlace),
        (
            job.duty.conductor_greatest_degc.is_some(),
            HeatFact::HighestOfConductor,
        ),
        (seat.degc.is_some(), HeatFact::OfReadings),
        (leg.expansion_per_k.is_some(), HeatFact::CableExpansion),
        (rubber.expansion_per_k.is_some(), HeatFact::RubberExpansion),
        (rubber.modulus_per_k.is_some(), HeatFact::RubberStiffness),
    ];
    let open = known.into_iter().filter(|(is_known, _)| !is_known);
    open.map(|(_, fact)| fact).collect()
}

impl Heat {
    /// All states that are examined: cable and rubber at one temperature, and the cable at its hottest with the rubber at each temperature.
    pub fn states(&self) -> Vec<Warmth> {
        let (low, high) = self.range_degc;
        let at = |step: u32| low + (high - low) * f64::from(step) / f64::from(N_STEPS);
        let steady = (0..=N_STEPS).map(|step| Warmth {
            body_degc: at(step),
            cable_degc: at(step),
        });
        let loaded = (0..N_STEPS).map(|step| Warmth {
            body_degc: at(step),
            cable_degc: high,
        });
        steady.chain(loaded).collect()
    }

    /// Growth of the cable relative to the bore, as a logarithm: least and greatest over the stated constants.
    pub fn growth_ratio(&self, warmth: Warmth) -> (f64, f64) {
        let cable = products(
            self.cable_per_k,
            (
                warmth.cable_degc - self.read_degc.1,
                warmth.cable_degc - self.read_degc.0,
            ),
        );
        let by = warmth.body_degc - self.rubber_degc;
        let rubber = products(self.rubber_per_k, (by, by));
        (cable.0 - rubber.1, cable.1 - rubber.0)
    }

    /// Least ratio of the moduli to the moduli at the temperature for which they are stated; above 0.
    pub fn stiffness_ratio(&self, warmth: Warmth) -> f64 {
        let by = warmth.body_degc - self.rubber_degc;
        1.0 + products(self.modulus_per_k, (by, by)).0
    }

    /// Returns itself, unless the rubber would lose all stiffness within the range: the row's constants do not reach so far.
    fn with_stiffness(self, id: &str) -> Result<Heat, Unknown> {
        let states = self.states();
        let soft = states
            .iter()
            .find(|warmth| self.stiffness_ratio(**warmth) <= 0.0);
        match soft {
            None => Ok(self),
            Some(warmth) => Err(Unknown::new(
                PressureHeat::SoftAt {
                    part: id.to_owned(),
                    degc: warmth.body_degc,
                },
                [PressureHeat::AskStiffness {
                    part: id.to_owned(),
                    from_degc: self.range_degc.0,
                    to_degc: self.range_degc.1,
                }],
            )),
        }
    }
}

/// Least and greatest product of two ranges.
fn products(a: (f64, f64), b: (f64, f64)) -> (f64, f64) {
    let all = [a.0 * b.0, a.0 * b.1, a.1 * b.0, a.1 * b.1];
    (
        all.iter().copied().fold(f64::INFINITY, f64::min),
        all.iter().copied().fold(f64::NEG_INFINITY, f64::max),
    )
}
