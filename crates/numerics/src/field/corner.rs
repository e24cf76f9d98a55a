//! Corners at which a field is singular: found from outline, materials and held potentials, before any solution.
//!
//! ```text
//!   ε1 \ φ=V        about a point the potential is a sum of terms r^λ; where the least λ lies below 1
//!       ●───────    the field grows as r^(λ−1) without end: a mesh would give whatever it is fine enough for
//!   ε2 / φ=V
//! ```
//!
//! **What.** [`corners()`]: about each point of the outline, the least exponent λ of each fan of regions between conductors,
//! edges without flux, or all the way round.
//!
//! **Why separate.** It needs no mesh, and its result decides which numbers may be wanted of one.
//!
//! **Assumes.** Conductivity that rises with the field has its value at rest; complex coefficients are replaced by their moduli.
//! On the axis, only a fan of one region between the axis and a conductor is examined: a cone or a disc.
//!
//! **Not here.** Whether a disc leaves the corner out, and the message about it (`case`).
//!
//! **Source.** Separation of variables in a fan of wedges, closed form; for a cone, P_1(cos θ) = 0 at a right angle.

use super::section::Section;
use super::system::coefficients;
use crate::outline::{Outline, Point};
use std::f64::consts::{FRAC_PI_2, TAU};

/// Share of the shortest curve at a point at which the directions of its curves are taken.
const REACH: f64 = 1e-4;
/// Angle below which a sector is a cusp, which holds no field, rad.
const CUSP_ANGLE: f64 = 0.01;
/// Greatest distance from 1 at which a least exponent counts as 1.
const SMOOTH: f64 = 2e-3;
/// Exponents that are tried: the first, and the step.
const POWER_LEAST: f64 = 0.02;
const POWER_STEP: f64 = 1e-3;
/// Distance below which a point lies on the axis, m.
const ON_AXIS: f64 = 1e-12;

/// A point at which the field of some regions is singular.
#[derive(Clone, Debug, PartialEq)]
pub struct Corner {
    /// Index of the point in the outline.
    pub point_index: usize,
    /// Its place, m.
    pub at: Point,
    /// Least exponent of the distance in the potential, below 1.
    pub power: f64,
    /// Regions whose field is singular there.
    pub region_indices: Vec<usize>,
    /// Curves along which the field is singular.
    pub curve_indices: Vec<usize>,
}

/// A sector about a point, from one curve to the next, counter-clockwise.
struct Sector {
    angle: f64,
    region: Option<usize>,
    first: usize,
    last: usize,
}

/// Sectors between two edges, or all sectors.
struct Fan<'s> {
    sectors: Vec<&'s Sector>,
    /// Whether the potential is held at the first and at the last edge; `None` if the fan closes on itself.
    held: Option<[bool; 2]>,
}

/// The points of a section at which its field is singular.
///
/// These are corners of a conductor seen through more than half a turn, corners between materials, and ends of foils.
///
/// # Assumes
/// The outline has no flaws.
///
/// ```
/// use jointwright_numerics::{case, field::corners};
/// let text = r#"{"case": "step", "about": "invented",
///   "points": [[1, 0], [1, 5], [2, 5], [2, 9], [4, 9], [4, 0]],
///   "curves": [{"from": 0, "to": 1, "tag": "inner"}, {"from": 1, "to": 2, "tag": "inner"}, {"from": 2, "to": 3, "tag": "inner"},
///              {"from": 3, "to": 4, "tag": "interior"}, {"from": 4, "to": 5, "tag": "outer"}, {"from": 5, "to": 0, "tag": "interior"}],
///   "regions": [{"name": "wall", "material": "pe", "boundary": [1, 2, 3, 4, 5, 6]}],
///   "materials": {"pe": {"eps_r": 2.3}}, "potentials_kv": {"inner": 10, "outer": 0},
///   "wanted": [{"name": "C", "kind": "capacitance"}]}"#;
/// let found = corners(&case::read(text).unwrap().section);
/// // Of the two corners of the step the outer one, at (2, 5) mm, is seen through three quarters of a turn.
/// assert_eq!(found.len(), 1);
/// assert_eq!(found[0].point_index, 2);
/// assert!((found[0].power - 2.0 / 3.0).abs() < 1e-3);
/// ```
pub fn corners(section: &Section) -> Vec<Corner> {
    let outline = &section.outline;
    let beside = sides(outline);
    let mut ends: Vec<Vec<(usize, bool)>> = vec![Vec::new(); outline.points.len()];
    for (index, curve) in outline.curves.iter().enumerate() {
        ends[curve.from].push((index, true));
        ends[curve.to].push((index, false));
    }
    let weights: Vec<f64> = coefficients(section)
        .iter()
        .map(|[real, imaginary]| real.hypot(*imaginary))
        .collect();
    let is_held = |curve: usize| {
        let tag = &outline.curves[curve].tag;
        section.potentials.iter().any(|(held, _)| held == tag) || section.floating.contains(tag)
    };
    let mut found = Vec::new();
    for (point_index, ends) in ends.iter().enumerate() {
        let sectors = sectors(outline, &beside, point_index, ends);
        let at = outline.points[point_index];
        for fan in fans(&sectors, &is_held) {
            let power = if at.r.abs() <= ON_AXIS {
                on_axis(outline, &fan)
            } else {
                least_power(&fan, &weights)
            };
            if power >= 1.0 - SMOOTH {
                continue;
            }
            let mut region_indices: Vec<usize> = fan
                .sectors
                .iter()
                .filter_map(|sector| sector.region)
                .collect();
            region_indices.dedup();
            let curves = fan.sectors.iter().flat_map(|s| [s.first, s.last]);
            let mut curve_indices: Vec<usize> = curves.collect();
            curve_indices.sort_unstable();
            curve_indices.dedup();
            found.push(Corner {
                point_index,
                at,
                power,
                region_indices,
                curve_indices,
            });
        }
    }
    found
}

/// The regions on the left and on the right of each curve in its direction.
fn sides(outline: &Outline) -> Vec<[Option<usize>; 2]> {
    let mut beside = vec![[None; 2]; outline.curves.len()];
    for (index, region) in outline.regions.iter().enumerate() {
        let mut doubled = 0.0;
        for side in &region.boundary {
            let sign = if side.is_reversed { -1.0 } else { 1.0 };
            // A polygon through places of the curve suffices for the sign.
            for step in 0..8 {
                let [a, b] =
                    [step, step + 1].map(|k| outline.place(side.curve_index, f64::from(k) / 8.0));
                doubled += sign * (a.r * b.z - b.r * a.z);
            }
        }
        for side in &region.boundary {
            let is_left = (doubled > 0.0) != side.is_reversed;
            beside[side.curve_index][usize::from(!is_left)] = Some(index);
        }
    }
    beside
}

fn sectors(
    outline: &Outline,
    beside: &[[Option<usize>; 2]],
    point_index: usize,
    ends: &[(usize, bool)],
) -> Vec<Sector> {
    let at = outline.points[point_index];
    let lengths = ends.iter().map(|&(curve, _)| outline.length(curve));
    let reach = REACH * lengths.fold(f64::INFINITY, f64::min);
    let mut ways: Vec<(f64, usize, Option<usize>)> = ends
        .iter()
        .map(|&(curve, is_start)| {
            let share = reach / outline.length(curve);
            let place = outline.place(curve, if is_start { share } else { 1.0 - share });
            let angle = (place.z - at.z).atan2(place.r - at.r);
            // The region on the left of a curve that leaves the point.
            (angle, curve, beside[curve][usize::from(!is_start)])
        })
        .collect();
    ways.sort_by(|a, b| a.0.total_cmp(&b.0));
    (0..ways.len())
        .map(|index| {
            let (angle, first, region) = ways[index];
            let (next, last, _) = ways[(index + 1) % ways.len()];
            let turn = (next - angle).rem_euclid(TAU);
            Sector {
                angle: if turn > 0.0 { turn } else { TAU },
                region,
                first,
                last,
            }
        })
        .collect()
}

/// The fans about a point: conductors or the outside separate them.
fn fans<'s>(sectors: &'s [Sector], is_held: &dyn Fn(usize) -> bool) -> Vec<Fan<'s>> {
    let n = sectors.len();
    let starts = (0..n).find(|&k| sectors[k].region.is_none() || is_held(sectors[k].first));
    let Some(start) = starts else {
        let all = sectors.iter().collect();
        return vec![Fan {
            sectors: all,
            held: None,
        }];
    };
    let mut found = Vec::new();
    let mut open: Vec<&Sector> = Vec::new();
    for k in 0..n {
        let sector = &sectors[(start + k) % n];
        if sector.region.is_none() {
            continue;
        }
        open.push(sector);
        let next = &sectors[(start + k + 1) % n];
        if is_held(sector.last) || next.region.is_none() {
            let held = [is_held(open[0].first), is_held(sector.last)];
            found.push(Fan {
                sectors: std::mem::take(&mut open),
                held: Some(held),
            });
        }
    }
    found
}

/// Exponent for a region between the axis and a conductor: below 1 if the conductor is seen through more than a right angle.
fn on_axis(outline: &Outline, fan: &Fan<'_>) -> f64 {
    let ([sector], Some(held)) = (fan.sectors.as_slice(), fan.held) else {
        return f64::INFINITY;
    };
    let is_axis = |curve: usize| {
        let curve = &outline.curves[curve];
        [curve.from, curve.to]
            .iter()
            .all(|&point| outline.points[point].r.abs() <= ON_AXIS)
    };
    let touches = [is_axis(sector.first), is_axis(sector.last)];
    let is_cone = touches[0] != touches[1] && (held[0] || held[1]);
    if is_cone && sector.angle > FRAC_PI_2 + CUSP_ANGLE {
        // The exact exponent is a zero of a Legendre function; the caller needs only that it is below 1.
        return FRAC_PI_2 / sector.angle;
    }
    f64::INFINITY
}

/// Least positive exponent that a fan permits; infinite if none below 1 exists.
fn least_power(fan: &Fan<'_>, weights: &[f64]) -> f64 {
    let wedges: Vec<(f64, f64)> = fan
        .sectors
        .iter()
        .map(|sector| {
            let weight = sector.region.map_or(1.0, |region| weights[region]);
            let angle = if sector.angle < CUSP_ANGLE {
                0.0
            } else {
                sector.angle
            };
            (angle, weight)
        })
        .collect();
    if wedges.iter().all(|(angle, _)| *angle == 0.0) {
        return f64::INFINITY;
    }
    let mut power = POWER_LEAST;
    let mut before = mismatch(&wedges, fan.held, power);
    while power < 1.0 {
        let next = power + POWER_STEP;
        let after = mismatch(&wedges, fan.held, next);
        if before * after <= 0.0 {
            return power + POWER_STEP * before / (before - after);
        }
        (power, before) = (next, after);
    }
    f64::INFINITY
}

/// Residual that is zero at a valid exponent: potential and flux over the exponent, carried from edge to edge.
fn mismatch(wedges: &[(f64, f64)], held: Option<[bool; 2]>, power: f64) -> f64 {
    let greatest = wedges.iter().map(|wedge| wedge.1).fold(0.0, f64::max);
    let mut columns = [[1.0, 0.0], [0.0, 1.0]];
    for (angle, weight) in wedges {
        let weight = weight / greatest;
        let (sine, cosine) = (power * angle).sin_cos();
        columns = columns.map(|[u, w]| {
            [
                cosine * u + sine / weight * w,
                cosine * w - weight * sine * u,
            ]
        });
    }
    match held {
        None => 2.0 - columns[0][0] - columns[1][1],
        Some([is_first, is_last]) => {
            let state = columns[usize::from(is_first)];
            state[usize::from(!is_last)]
        }
    }
}
