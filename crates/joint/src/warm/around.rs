//! Around: surroundings of a leg, stretch by stretch, as a film on its surface, stated or computed.

use super::outside::{self, FREE_AIR, Part, Surface};
use super::shape::{Air, Shape, Stretch};
use crate::job::{Job, Leg, Surrounding};
use crate::said::{HeatCannot, Said, SoilSaid};
use jointwright_numerics::rating::thermal::Hanging;
use std::f64::consts::PI;

/// Surroundings of a leg, and messages about the computed ones.
#[derive(Default)]
pub(super) struct Around {
    pub stretches: Vec<Stretch>,
    pub says: Vec<Said>,
    pub memory: Vec<&'static str>,
}

impl Around {
    fn remember(&mut self, key: &'static str) {
        if !self.memory.contains(&key) {
            self.memory.push(key);
        }
    }
}

/// Surface of a leg's cable, for its surroundings.
fn surface(leg: &Leg, shape: &Shape) -> Surface {
    let shield_m = shape.layers.iter().rev().nth(1);
    Surface {
        jacket_m: (
            2.0 * shield_m.map_or(0.0, |layer| layer.outside_m),
            2.0 * shape.cable_m(),
        ),
        jacket_k_m_per_w: leg
            .jacket_stuff
            .map_or(0.0, |stuff| 1.0 / stuff.conductivity_w_per_mk),
    }
}

/// Surroundings of a leg from the middle of the joint outward.
pub(super) fn stretches(
    job: &Job,
    leg: &Leg,
    shape: &Shape,
    zero_mm: f64,
    rows: &[&Surrounding],
) -> Result<Around, Said> {
    let mut from_m = 0.0;
    let mut around = Around::default();
    for row in rows {
        let until_m = row
            .until
            .map_or(f64::INFINITY, |until| (until.mm() - zero_mm) * 1e-3);
        let touches_joint = from_m < shape.joint_end_m();
        let warmest = job.place.ambient_degc.1;
        if let Some(warmest) = warmest.filter(|degc| touches_joint && row.degc < *degc) {
            let why = HeatCannot::ColderThanPlace {
                what: row.what.clone(),
                degc: row.degc,
                place_degc: warmest,
            };
            return Err(at(row, why));
        }
        let (film_w_per_m2k, air) = film(leg, shape, row, touches_joint, &mut around)?;
        around.stretches.push(Stretch {
            until_m,
            degc: row.degc,
            film_w_per_m2k,
            air,
        });
        from_m = until_m;
    }
    Ok(around)
}

/// Puts the place of a row in its file before a message about it.
pub(super) fn at(row: &Surrounding, said: impl Into<Said>) -> Said {
    Said::of(row.place.to_string(), said)
}

/// Puts the place of a row and its own name before a message about it.
pub(super) fn at_named(row: &Surrounding, said: impl Into<Said>) -> Said {
    at(row, Said::of(&row.what, said))
}

/// Heat transfer coefficient of a row, stated or computed, W/(m² K); with the still air it describes, if it does.
fn film(
    leg: &Leg,
    shape: &Shape,
    row: &Surrounding,
    touches_joint: bool,
    around: &mut Around,
) -> Result<(f64, Option<Air>), Said> {
    let mut air = None;
    let resistance = match &row.soil {
        Some(soil) => {
            let parts = outside::in_soil(soil, row.duct.as_ref(), &surface(leg, shape), row.degc)
                .map_err(|why| at_named(row, why))?;
            let says = SoilSaid::OfStretch {
                leg: leg.id.clone(),
                what: row.what.clone(),
                outside: outside::said(&parts).into(),
            };
            around.says.push(says.into());
            parts
                .iter()
                .filter_map(|part| part.memory)
                .for_each(|key| around.remember(key));
            Some(parts.iter().map(|part: &Part| part.k_m_per_w).sum())
        }
        None => row.outside_k_m_per_w,
    };
    let film_w_per_m2k = match (row.film_w_per_m2k, resistance) {
        (Some(film), _) => film,
        (None, None) if row.air.is_some() => {
            let hanging = row.air.map_or(Hanging::ALONE, outside::hanging);
            let (diameter_m, rise_k) = (2.0 * shape.cable_m(), AIR_FIRST_K);
            around.remember(FREE_AIR);
            air = Some(Air {
                hanging,
                what: row.what.clone(),
                diameter_m,
                rise_k,
            });
            hanging.coefficient(diameter_m) * rise_k.powf(0.25)
        }
        (None, Some(_)) if touches_joint => {
            let why = HeatCannot::ResistanceAtJoint {
                what: row.what.clone(),
                joint_end_mm: shape.joint_end_m() * 1e3,
            };
            return Err(at(row, why));
        }
        (None, Some(outside)) => 1.0 / (2.0 * PI * shape.cable_m() * outside),
        (None, None) => return Err(at(row, HeatCannot::NeitherFilmNorResistance)),
    };
    Ok((film_w_per_m2k, air))
}

/// Temperature rise over still air at which the iteration for its film begins, K.
const AIR_FIRST_K: f64 = 10.0;
