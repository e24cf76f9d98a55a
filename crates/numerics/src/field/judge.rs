//! The wanted numbers of one solution.

use super::breakdown;
use super::peak::Search;
use super::section::Section;
use super::solution::{Solution, energy_ratio, modulus};
use super::system::{System, coefficients};
use super::wanted::Wanted;
use crate::outline::Point;

/// A wanted number in one solution.
#[derive(Clone, Debug, Default)]
pub(super) struct Judged {
    /// Real and imaginary part, or the modulus and 0.
    pub parts: [f64; 2],
    pub at: Option<Point>,
    /// The other end of a way.
    pub to: Option<Point>,
    /// Triangles that determine the number: those that contain the place, or in which the peak may lie, each with its possible value.
    pub spots: Vec<(u32, f64)>,
    /// Error of the triangles' own slopes there, before recovery: a rough upper estimate of the number's error.
    pub rough_error: f64,
    /// Size of the whole quantity: for the axial component, the modulus of the field; otherwise the number's own size.
    pub size: f64,
    /// Greatest error of the search for the number, on this solution.
    pub search_error: f64,
    /// Share of the energy in the disagreement between slopes of neighbours, over the whole section.
    pub energy_ratio: f64,
}

impl Judged {
    pub fn modulus(&self) -> f64 {
        self.parts[0].hypot(self.parts[1])
    }
}

/// Computes every wanted number from a solution.
pub(super) fn judge(
    section: &Section,
    wanted: &[Wanted],
    system: &System,
    solution: &mut Solution<'_>,
) -> Vec<Judged> {
    let per_region = coefficients(section);
    let ratio = energy_ratio(solution, |region| {
        per_region[region][0].hypot(per_region[region][1])
    });
    wanted
        .iter()
        .map(|wanted| {
            let mut judged = judge_one(section, wanted, system, solution, ratio);
            judged.energy_ratio = ratio;
            judged
        })
        .collect()
}

fn judge_one(
    section: &Section,
    wanted: &Wanted,
    system: &System,
    solution: &mut Solution<'_>,
    ratio: f64,
) -> Judged {
    match wanted {
        Wanted::Capacitance => capacitance(section, system, solution, ratio),
        Wanted::PeakInRegion { region_index } => {
            let curves: Vec<usize> = section.outline.regions[*region_index]
                .boundary
                .iter()
                .map(|side| side.curve_index)
                .collect();
            let peak = Search {
                outline: &section.outline,
                leave_out: &section.leave_out,
                solution,
            }
            .on_curves(|curve| curves.contains(&curve), Some(*region_index));
            of_peak(peak)
        }
        Wanted::PeakOnCurve { tag } => {
            let peak = Search {
                outline: &section.outline,
                leave_out: &section.leave_out,
                solution,
            }
            .on_curves(|curve| section.outline.curves[curve].tag == *tag, None);
            of_peak(peak)
        }
        Wanted::PeakTangentialOnLine { from, to } => {
            let peak = Search {
                outline: &section.outline,
                leave_out: &section.leave_out,
                solution,
            }
            .tangential_on_line(*from, *to);
            of_peak(peak)
        }
        Wanted::BreakdownShare { .. } => breakdown_share(section, wanted, solution),
        Wanted::PotentialAt { at } => potential_at(solution, *at),
        Wanted::FieldAt { at, side } => field_at(solution, *at, *side),
        Wanted::AxialFieldAt { at } => axial_field_at(solution, *at),
    }
}

/// Capacitance, 2W/V².
fn capacitance(section: &Section, system: &System, solution: &Solution<'_>, ratio: f64) -> Judged {
    let volts = section.potentials.iter().map(|(_, volts)| *volts);
    let span =
        volts.clone().fold(f64::NEG_INFINITY, f64::max) - volts.fold(f64::INFINITY, f64::min);
    let value = 2.0 * system.energy(section, solution.potential) / (span * span);
    Judged {
        parts: [value, 0.0],
        rough_error: value * ratio,
        ..Judged::default()
    }
}

/// Judges a peak: it may lie at any examined spot, and exceed it by the difference of the slopes there.
fn of_peak(peak: super::peak::Peak) -> Judged {
    let greatest = peak
        .seen
        .iter()
        .map(|spot| spot.1)
        .fold(peak.value, f64::max);
    Judged {
        parts: [peak.value, 0.0],
        at: peak.at,
        spots: peak.seen,
        rough_error: greatest - peak.value,
        size: peak.value,
        ..Judged::default()
    }
}

/// Judges the way on which air is nearest to breakdown.
fn breakdown_share(section: &Section, wanted: &Wanted, solution: &mut Solution<'_>) -> Judged {
    let Wanted::BreakdownShare {
        region_index,
        ways,
        curve,
        pressure_pa,
    } = wanted
    else {
        return Judged::default();
    };
    let is_held = |tag: &str| {
        section.potentials.iter().any(|(held, _)| held == tag)
            || section.floating.iter().any(|held| held == tag)
    };
    let nearest = breakdown::Search {
        outline: &section.outline,
        solution,
        region_index: *region_index,
        curve: *curve,
        pressure_pa: *pressure_pa,
        is_held: &is_held,
    }
    .greatest(ways);
    let greatest = nearest.seen.iter().map(|spot| spot.1);
    Judged {
        parts: [nearest.value, 0.0],
        at: nearest.ends.map(|ends| ends[0]),
        to: nearest.ends.map(|ends| ends[1]),
        rough_error: greatest.fold(nearest.value, f64::max) - nearest.value,
        spots: nearest.seen,
        size: nearest.value,
        search_error: nearest.search_error,
        ..Judged::default()
    }
}

fn potential_at(solution: &mut Solution<'_>, at: Point) -> Judged {
    let holders = solution.holders(at, None);
    let mut judged = Judged::default();
    for &triangle in &holders {
        let value = solution.potential_at(triangle, at);
        for part in 0..2 {
            judged.parts[part] += value[part] / holders.len() as f64;
        }
        let error = solution.potential_error(triangle, at);
        judged.rough_error = judged.rough_error.max(error);
        judged.spots.push((triangle, 0.0));
    }
    judged.size = judged.modulus();
    judged
}

fn field_at(solution: &mut Solution<'_>, at: Point, side: Option<usize>) -> Judged {
    let holders = solution.holders(at, side);
    let mut slope = [[0.0; 2]; 2];
    let mut judged = Judged::default();
    for &triangle in &holders {
        let own = solution.recovery.slope(triangle, at);
        for axis in 0..2 {
            for part in 0..2 {
                slope[axis][part] += own[axis][part] / holders.len() as f64;
            }
        }
        let error = solution.gap(triangle, at);
        judged.rough_error = judged.rough_error.max(error);
        judged.spots.push((triangle, 0.0));
    }
    judged.parts = [modulus(slope), 0.0];
    judged.size = judged.parts[0];
    judged
}

fn axial_field_at(solution: &mut Solution<'_>, at: Point) -> Judged {
    let holders = solution.holders(at, None);
    let mut judged = Judged::default();
    for &triangle in &holders {
        let own = solution.recovery.slope(triangle, at);
        for part in 0..2 {
            judged.parts[part] -= own[1][part] / holders.len() as f64;
        }
        judged.size = judged.size.max(modulus(own));
        let error = solution.gap(triangle, at);
        judged.rough_error = judged.rough_error.max(error);
        judged.spots.push((triangle, 0.0));
    }
    judged
}
