//! Goal: a wanted number followed from solution to solution, with its estimated error.
//!
//! **What.** [`follow`]: from the changes between solutions on finer and finer meshes; [`carried`]: from a similar section.
//!
//! **Invariants.** A number settles when its estimate is within its tolerance, and not before its triangles were halved [`REFINED_LEAST`] times, here or in the similar section.
//!
//! **Not here.** The numbers themselves (`judge`), the triangles to refine (`solve`).
//!
//! **Source.** `docs/theory/field.md`.

use super::judge::Judged;
use super::section::{Regime, Section};
use super::solved::Options;
use super::wanted::{Answer, Wanted};
use crate::gas;

/// Least number of refinements about a number before it settles: one step shows its change, not whether the change continues.
const REFINED_LEAST: u32 = 2;
/// Least ratio of an estimate to the one before, where the triangles were halved (the error falls by four to eight).
const FALL_RATIO: f64 = 0.25;
/// Same ratio for a way across a gap: it may end at a sharp edge of 270°, about which the error falls with h^(4/3).
const FALL_EDGE_RATIO: f64 = 0.4;
/// Error of a number as a share of its last change: where the triangles were halved, and where they were not.
const MOVED_REFINED_RATIO: f64 = 0.35;
const MOVED_KEPT_RATIO: f64 = 1.0;
/// Greatest ratio of one step to the step before that is assumed.
const CREEP_RATIO: f64 = 0.75;
/// Least error of a number, as a share of its size times the energy share of the slopes' disagreement.
const WHOLE_RATIO: f64 = 0.5;
/// Least error of a recovered number, as a share of the rough error of its slopes.
const ROUGH_RATIO: f64 = 0.1;
/// The same for the field at one point of a similar section: the point may lie in a larger triangle than the one whose error is known.
const ROUGH_POINT_RATIO: f64 = 0.5;
/// Least error of a capacitance, as a share of the energy in the slopes' disagreement.
const ROUGH_ENERGY_RATIO: f64 = 2.0;
/// Least error of a first solution, as a share of a number's size.
const FIRST_RATIO: f64 = 0.03;
const ROUGH_FIRST_RATIO: f64 = 2.0;

/// A wanted number, followed from solution to solution.
#[derive(Clone, Debug)]
pub(super) struct Goal {
    pub last: Judged,
    pub estimate: f64,
    pub is_settled: bool,
    pub is_refined: bool,
    /// Number of times that its triangles were halved.
    n_refined: u32,
    /// Last change of the number after its triangles had been halved; 0 before that is known.
    moved: f64,
}

impl Goal {
    fn moved_to(&self, judged: &Judged) -> f64 {
        (judged.parts[0] - self.last.parts[0]).hypot(judged.parts[1] - self.last.parts[1])
    }

    /// The same number of a similar section on a mesh as fine as this one's.
    ///
    /// Its error keeps its share of the number, and grows where the slopes have become so rough that they count beside it.
    fn carried(
        &self,
        section: &Section,
        wanted: &Wanted,
        options: &Options,
        judged: Judged,
    ) -> Self {
        let of_size = judged.size / self.last.size.max(f64::MIN_POSITIVE);
        let known = self.estimate * of_size.clamp(1.0, 1e3);
        let rougher = (known + ROUGH_RATIO * judged.rough_error)
            / (self.estimate + ROUGH_RATIO * self.last.rough_error).max(f64::MIN_POSITIVE);
        let floor = match wanted {
            Wanted::Capacitance => ROUGH_ENERGY_RATIO,
            Wanted::FieldAt { .. } | Wanted::AxialFieldAt { .. } => ROUGH_POINT_RATIO,
            _ => ROUGH_RATIO,
        };
        let estimate = (self.estimate * rougher.max(1.0))
            .max(floor * judged.rough_error)
            .max(WHOLE_RATIO * judged.energy_ratio * judged.size)
            + judged.search_error;
        Self {
            is_settled: estimate <= asked(section, wanted, options, &judged)
                && is_rate_seen(self.n_refined, wanted),
            last: judged,
            estimate,
            is_refined: false,
            n_refined: self.n_refined,
            moved: 0.0,
        }
    }
}

pub(super) fn answers(section: &Section, wanted: &[Wanted], goals: &[Goal]) -> Vec<Answer> {
    goals
        .iter()
        .zip(wanted)
        .map(|(goal, wanted)| answer(section, goal, wanted))
        .collect()
}

/// Takes the numbers of a similar section, and their errors from the roughness of the slopes.
pub(super) fn carried(
    section: &Section,
    wanted: &[Wanted],
    options: &Options,
    goals: &[Goal],
    judged: Vec<Judged>,
) -> Vec<Goal> {
    let known = judged.into_iter().zip(goals).zip(wanted);
    known
        .map(|((judged, old), wanted)| old.carried(section, wanted, options, judged))
        .collect()
}

/// Takes the numbers of a new solution and estimates their errors from their changes.
pub(super) fn follow(
    section: &Section,
    wanted: &[Wanted],
    options: &Options,
    goals: &[Goal],
    judged: Vec<Judged>,
) -> Vec<Goal> {
    judged
        .into_iter()
        .enumerate()
        .map(|(index, judged)| {
            let moved = goals.get(index).map_or(0.0, |goal| goal.moved_to(&judged));
            let estimate = match goals.get(index) {
                // A single solution says too little about the whole to settle anything.
                None if matches!(wanted[index], Wanted::Capacitance) => f64::INFINITY,
                None => (ROUGH_FIRST_RATIO * judged.rough_error).max(FIRST_RATIO * judged.size),
                Some(goal) => estimate(goal, &judged, &wanted[index]),
            };
            let estimate = estimate + judged.search_error;
            let asked = asked(section, &wanted[index], options, &judged);
            let n_refined = goals
                .get(index)
                .map_or(0, |goal| goal.n_refined + u32::from(goal.is_refined));
            Goal {
                is_settled: estimate <= asked && is_rate_seen(n_refined, &wanted[index]),
                last: judged,
                estimate,
                is_refined: false,
                n_refined,
                moved,
            }
        })
        .collect()
}

/// Whether a number's triangles were halved often enough to see its change shrink.
fn is_rate_seen(n_refined: u32, wanted: &Wanted) -> bool {
    n_refined >= REFINED_LEAST || matches!(wanted, Wanted::Capacitance)
}

/// Error of a number after one more solution.
fn estimate(goal: &Goal, judged: &Judged, wanted: &Wanted) -> f64 {
    let moved = goal.moved_to(judged);
    if matches!(wanted, Wanted::Capacitance) {
        return if goal.is_refined {
            moved.max(ROUGH_ENERGY_RATIO * judged.rough_error)
        } else {
            (2.0 * moved).max(goal.estimate)
        };
    }
    let (moved, fall) = if goal.is_refined {
        // Beside a singular place a number creeps: the remaining change follows from the ratio of its steps.
        let shrinks = if goal.moved > 0.0 {
            (moved / goal.moved).min(CREEP_RATIO)
        } else {
            0.0
        };
        let left = (shrinks / (1.0 - shrinks)).max(MOVED_REFINED_RATIO);
        let fall = if matches!(wanted, Wanted::BreakdownShare { .. }) {
            FALL_EDGE_RATIO
        } else {
            FALL_RATIO
        };
        (left * moved, fall)
    } else {
        (MOVED_KEPT_RATIO * moved, 1.0)
    };
    moved
        .max(fall * goal.estimate)
        .max(ROUGH_RATIO * judged.rough_error)
        .max(WHOLE_RATIO * judged.energy_ratio * judged.size)
}

/// Tolerance for a number.
fn asked(section: &Section, wanted: &Wanted, options: &Options, judged: &Judged) -> f64 {
    let volts = section.potentials.iter().map(|(_, volts)| *volts);
    let span =
        volts.clone().fold(f64::NEG_INFINITY, f64::max) - volts.fold(f64::INFINITY, f64::min);
    match wanted {
        Wanted::Capacitance => options.capacitance_tolerance * judged.modulus(),
        Wanted::PotentialAt { .. } => options.tolerance * judged.modulus().max(1e-3 * span),
        // A number so small that no voltage of the section could break down the air needs no accuracy of its own.
        Wanted::BreakdownShare { .. } => {
            options.tolerance * judged.modulus().max(1e-3 * span / gas::LEAST_V)
        }
        _ => options.tolerance * judged.modulus(),
    }
}

fn answer(section: &Section, goal: &Goal, wanted: &Wanted) -> Answer {
    let is_complex = matches!(section.regime, Regime::Complex { .. });
    let has_phase = matches!(
        wanted,
        Wanted::PotentialAt { .. } | Wanted::AxialFieldAt { .. }
    );
    let [real, imaginary] = goal.last.parts;
    Answer {
        value: if is_complex {
            goal.last.modulus()
        } else {
            real
        },
        phase: (is_complex && has_phase).then(|| imaginary.atan2(real)),
        error_estimate: goal.estimate,
        at: goal.last.at,
        to: goal.last.to,
        is_settled: goal.is_settled,
    }
}
