//! Wall: a part as a row of slices along its axis, each a relaxed tube of rings.
//!
//! The row states the inside of a body on a cable; the inside returns to the relaxed bore with the same volume and length.

use super::{Pressed, relaxed_unknown};
use crate::catalogue::{Body, FieldDuty, Inner, Region, Rubber};
use crate::said::{PressureBench, PressureSeat, RubberSaid, Said};
use crate::section::Unknown;
use jointwright_numerics::rubber::{Law, Ring, RubberError, Tube};

/// Slices between two corners of an inside.
const N_BETWEEN: u32 = 4;
/// Distance up to which two radii are equal, m.
const CLOSE_M: f64 = 1e-8;

/// Stretch of a part with one wall.
#[derive(Clone, Debug, PartialEq)]
pub struct Slice {
    /// Beginning and end from the part's datum, m; infinite for a part that is alike all along.
    pub along_m: (f64, f64),
    /// Tube.
    pub tube: Tube,
}

/// Slices of a part, in order.
#[derive(Clone, Debug, PartialEq)]
pub struct Wall {
    /// Slices.
    pub slices: Vec<Slice>,
    /// Whether the law is stated; else a neo-Hookean law of 1 Pa takes its place.
    pub has_law: bool,
}

/// Wall of a body: from its stated inside, else a uniform wall.
pub(super) fn of_body(body: &Body) -> Result<Wall, Pressed> {
    let (id, Some(rubber)) = (&body.head.id, &body.rubber) else {
        return Err(not_known(&body.head.id));
    };
    let Some((inner, on)) = body.inner.as_ref().and_then(|i| Some((i, i.on_diameter?))) else {
        return even(id, Some(rubber));
    };
    let shape = Shape {
        inner,
        on_m: on.m() / 2.0,
        bore_m: rubber.relaxed_bore.m() / 2.0,
        law: law(rubber),
    };
    let slices = shape.slices().map_err(|why| {
        let part = id.clone();
        Pressed::Refused(Said::of(PressureBench::WallIsNoTube { part }, why))
    })?;
    if slices.is_empty() {
        let part = id.clone();
        return Err(Pressed::Refused(
            PressureBench::NothingOnCable { part }.into(),
        ));
    }
    Ok(Wall {
        slices,
        has_law: rubber.law.is_some(),
    })
}

/// Even wall from the relaxed diameters.
pub(super) fn even(id: &str, rubber: Option<&Rubber>) -> Result<Wall, Pressed> {
    let Some(rubber) = rubber else {
        return Err(not_known(id));
    };
    let Some(outside) = rubber.relaxed_outside else {
        let part = id.to_owned();
        return Err(Pressed::Unknown(Unknown::new(
            PressureSeat::OutsideNotKnown { part: part.clone() },
            [PressureSeat::AskOutside { part }],
        )));
    };
    let ring = Ring {
        outside_m: outside.m() / 2.0,
        law: law(rubber),
    };
    let tube = Tube::new(rubber.relaxed_bore.m() / 2.0, vec![ring])
        .map_err(|why| Pressed::Refused(Said::of(id, rubber_said(why))))?;
    Ok(Wall {
        slices: vec![Slice {
            along_m: (f64::NEG_INFINITY, f64::INFINITY),
            tube,
        }],
        has_law: rubber.law.is_some(),
    })
}

fn not_known(id: &str) -> Pressed {
    Pressed::Unknown(relaxed_unknown(id))
}

/// Message for an error of the rubber mathematics.
pub(super) fn rubber_said(why: RubberError) -> RubberSaid {
    match why {
        RubberError::NoTube { bore_m } => RubberSaid::NoTube {
            bore_mm: bore_m * 1e3,
        },
        RubberError::NoStiffness => RubberSaid::NoStiffness,
        RubberError::NoCylinder => RubberSaid::NoCylinder,
        RubberError::BeyondLimit { excess, most } => RubberSaid::BeyondLimit { excess, most },
        RubberError::NoBalance => RubberSaid::NoBalance,
        RubberError::NoRadius { greatest_m } => RubberSaid::NoRadius {
            greatest_mm: greatest_m * 1e3,
        },
    }
}

fn law(rubber: &Rubber) -> Law {
    rubber.law.unwrap_or(Law::NeoHookean { modulus_pa: 1.0 })
}

struct Shape<'a> {
    inner: &'a Inner,
    /// Radius over the insulation for which the inside is stated, m.
    on_m: f64,
    bore_m: f64,
    law: Law,
}

impl Shape<'_> {
    fn slices(&self) -> Result<Vec<Slice>, Said> {
        let mut corners: Vec<f64> = self
            .inner
            .regions
            .iter()
            .flat_map(|region| region.corners.iter().map(|(along, _)| along.m()))
            .collect();
        corners.sort_by(f64::total_cmp);
        corners.dedup_by(|a, b| (*a - *b).abs() < CLOSE_M);
        let mut slices: Vec<Slice> = Vec::new();
        for pair in corners.windows(2) {
            for step in 0..N_BETWEEN {
                let at = |share: f64| pair[0] + (pair[1] - pair[0]) * share / f64::from(N_BETWEEN);
                let (from, to) = (at(f64::from(step)), at(f64::from(step + 1)));
                let Some(tube) = self.tube(0.5 * (from + to))? else {
                    continue;
                };
                match slices.last_mut() {
                    Some(last) if last.along_m.1 >= from - CLOSE_M && last.tube == tube => {
                        last.along_m.1 = to;
                    }
                    _ => slices.push(Slice {
                        along_m: (from, to),
                        tube,
                    }),
                }
            }
        }
        Ok(slices)
    }

    /// Tube at a place along the axis; `None` if no rubber lies on the cable there.
    fn tube(&self, z: f64) -> Result<Option<Tube>, Said> {
        let rings = self.rings(z);
        let layer = self.inner.grading.map_or(0.0, |g| g.thickness.m());
        let Some(first) = rings.first() else {
            return Ok(None);
        };
        if first.0 > self.on_m + layer + CLOSE_M {
            return Ok(None);
        }
        if first.0 < self.on_m - CLOSE_M {
            return Err(PressureBench::ReachesInside {
                reaches_mm: 2e3 * first.0,
                stated_mm: 2e3 * self.on_m,
            }
            .into());
        }
        let mut inside = self.on_m;
        let mut found: Vec<Ring> = Vec::new();
        for (from, to, stiffness_ratio) in rings {
            if from > inside + layer + CLOSE_M {
                return Err(PressureBench::NothingBetween {
                    from_mm: 2e3 * inside,
                    to_mm: 2e3 * from,
                    along_mm: 1e3 * z,
                }
                .into());
            }
            inside = to;
            let relaxed_2 = to * to - self.on_m * self.on_m + self.bore_m * self.bore_m;
            let ring = Ring {
                outside_m: relaxed_2.max(0.0).sqrt(),
                law: self.law.times(stiffness_ratio),
            };
            match found.last_mut() {
                Some(last) if last.law == ring.law => *last = ring,
                _ => found.push(ring),
            }
        }
        Tube::new(self.bore_m, found)
            .map(Some)
            .map_err(|why| rubber_said(why).into())
    }

    /// Rings at a place, from the inside out: radii on the cable, m, and stiffness.
    fn rings(&self, z: f64) -> Vec<(f64, f64, f64)> {
        let spans: Vec<(f64, f64, &Region)> = self
            .inner
            .regions
            .iter()
            .flat_map(|region| {
                spans(region, z)
                    .into_iter()
                    .map(move |(a, b)| (a, b, region))
            })
            .collect();
        let mut radii: Vec<f64> = spans.iter().flat_map(|(a, b, _)| [*a, *b]).collect();
        radii.sort_by(f64::total_cmp);
        radii.dedup_by(|a, b| (*a - *b).abs() < CLOSE_M);
        let mut rings = Vec::new();
        for pair in radii.windows(2) {
            let middle = 0.5 * (pair[0] + pair[1]);
            let over = spans.iter().filter(|(a, b, _)| *a < middle && middle < *b);
            // Regions inside the insulation are drawn over it.
            let region = over.max_by_key(|(_, _, r)| r.serves != Some(FieldDuty::Insulation));
            if let Some((_, _, region)) = region {
                rings.push((pair[0], pair[1], region.stiffness_ratio.unwrap_or(1.0)));
            }
        }
        rings
    }
}

/// Radii between which a region lies at a place, m.
fn spans(region: &Region, z: f64) -> Vec<(f64, f64)> {
    let corners: Vec<(f64, f64)> = region
        .corners
        .iter()
        .map(|(along, diameter)| (along.m(), diameter.m() / 2.0))
        .collect();
    let mut crossings: Vec<f64> = Vec::new();
    for index in 0..corners.len() {
        let ((za, ra), (zb, rb)) = (corners[index], corners[(index + 1) % corners.len()]);
        if (za > z) != (zb > z) {
            crossings.push(ra + (rb - ra) * (z - za) / (zb - za));
        }
    }
    crossings.sort_by(f64::total_cmp);
    crossings
        .chunks_exact(2)
        .map(|pair| (pair[0], pair[1]))
        .collect()
}
