//! Wall: a part as a row of slices along its axis, each a tube of rings as it is when nothing is in it.
//!
//! The inside of a body is stated on a cable; it goes back to the relaxed bore without changing its volume or its length.

use super::{Pressed, metres, questions};
use crate::catalogue::{Body, FieldDuty, Inner, Region, Rubber};
use crate::section::Unknown;
use jointwright_numerics::rubber::{Law, Ring, RubberError, Tube};

/// Looks between two corners of an inside.
const N_BETWEEN: u32 = 4;
/// Radii nearer than this are one, m.
const CLOSE_M: f64 = 1e-8;

/// A stretch of a part with one wall.
#[derive(Clone, Debug, PartialEq)]
pub struct Slice {
    /// Where it begins and ends from the part's datum, m; endless for a part that is alike all along.
    pub along_m: (f64, f64),
    /// The tube.
    pub tube: Tube,
}

/// The slices of a part, in order.
#[derive(Clone, Debug, PartialEq)]
pub struct Wall {
    /// Slices.
    pub slices: Vec<Slice>,
    /// Whether its law is stated; else a neo-Hookean one of 1 Pa stands for it.
    pub has_law: bool,
}

/// Wall of a body: that of its inside where that is stated, else an even one.
pub(super) fn of_body(body: &Body) -> Result<Wall, Pressed> {
    let (id, Some(rubber)) = (&body.head.id, &body.rubber) else {
        return Err(not_known(&body.head.id));
    };
    let Some((inner, on)) = body.inner.as_ref().and_then(|i| Some((i, i.on_diameter?))) else {
        return even(id, Some(rubber));
    };
    let shape = Shape {
        inner,
        on_m: metres(on) / 2.0,
        bore_m: metres(rubber.relaxed_bore) / 2.0,
        law: law(rubber),
    };
    let slices = shape.slices().map_err(|why| {
        Pressed::Refused(format!("the wall of {id} is not that of a tube: {why}").into())
    })?;
    if slices.is_empty() {
        return Err(Pressed::Refused(
            format!("no part of the inside of {id} lies on the cable").into(),
        ));
    }
    Ok(Wall {
        slices,
        has_law: rubber.law.is_some(),
    })
}

/// An even wall from the relaxed diameters.
pub(super) fn even(id: &str, rubber: Option<&Rubber>) -> Result<Wall, Pressed> {
    let Some(rubber) = rubber else {
        return Err(not_known(id));
    };
    let Some(outside) = rubber.relaxed_outside else {
        return Err(Pressed::Unknown(Unknown {
            why: format!("the outside diameter of {id} when nothing is in it is not known").into(),
            questions: vec![
                format!("What is the outside diameter of {id} when nothing is in it?").into(),
            ],
        }));
    };
    let ring = Ring {
        outside_m: metres(outside) / 2.0,
        law: law(rubber),
    };
    let tube = Tube::new(metres(rubber.relaxed_bore) / 2.0, vec![ring])
        .map_err(|why| Pressed::Refused(format!("{id}: {why}").into()))?;
    Ok(Wall {
        slices: vec![Slice {
            along_m: (f64::NEG_INFINITY, f64::INFINITY),
            tube,
        }],
        has_law: rubber.law.is_some(),
    })
}

fn not_known(id: &str) -> Pressed {
    Pressed::Unknown(Unknown {
        why: format!("how {id} is when nothing is in it is not known").into(),
        questions: questions(id),
    })
}

fn law(rubber: &Rubber) -> Law {
    rubber.law.unwrap_or(Law::NeoHookean { modulus_pa: 1.0 })
}

struct Shape<'a> {
    inner: &'a Inner,
    /// Radius over the insulation on which the inside is stated, m.
    on_m: f64,
    bore_m: f64,
    law: Law,
}

impl Shape<'_> {
    fn slices(&self) -> Result<Vec<Slice>, String> {
        let mut corners: Vec<f64> = self
            .inner
            .regions
            .iter()
            .flat_map(|region| region.corners.iter().map(|(along, _)| metres(*along)))
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

    /// The tube at a place along the axis; nothing where no rubber lies on the cable.
    fn tube(&self, z: f64) -> Result<Option<Tube>, String> {
        let rings = self.rings(z);
        let layer = self.inner.grading.map_or(0.0, |g| metres(g.thickness));
        let Some(first) = rings.first() else {
            return Ok(None);
        };
        if first.0 > self.on_m + layer + CLOSE_M {
            return Ok(None);
        }
        if first.0 < self.on_m - CLOSE_M {
            return Err(format!(
                "it reaches to a diameter of {:.1} mm, inside the {:.1} mm on which it is stated",
                2e3 * first.0,
                2e3 * self.on_m
            ));
        }
        let mut inside = self.on_m;
        let mut found: Vec<Ring> = Vec::new();
        for (from, to, stiffness_ratio) in rings {
            if from > inside + layer + CLOSE_M {
                return Err(format!(
                    "nothing lies between diameters {:.1} and {:.1} mm at {:.1} mm along",
                    2e3 * inside,
                    2e3 * from,
                    1e3 * z
                ));
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
            .map_err(|why: RubberError| why.to_string())
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
            // What lies inside the insulation is drawn over it.
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
        .map(|(along, diameter)| (metres(*along), metres(*diameter) / 2.0))
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
