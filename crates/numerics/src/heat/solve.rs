//! Solves on a mesh and on finer ones, until the answers change little enough.

use super::section::{Ask, HeatAnswer, HeatError, HeatSection, What, When};
use super::step;
use super::system::System;
use crate::mesh::{self, Mesh, MeshOptions};

/// Steps in each doubling of time; the answers come from twice as many.
const N_STEPS: usize = 3;
/// Error of an answer as a share of its last change, if every triangle was halved; at corners the error falls no faster.
const MOVED_RATIO: f64 = 0.5;
/// Error as a share of the change when steps were halved: it falls by eight, at least by four.
const STEPPED_RATIO: f64 = 0.35;

/// Tolerances of the answers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatOptions {
    /// Permitted error of temperatures, K.
    pub tolerance_k: f64,
    /// Permitted error of losses, as a share.
    pub loss_tolerance_ratio: f64,
    /// Greatest number of unknowns of a mesh.
    pub n_unknowns_most: usize,
    /// Greatest work: the unknowns of each mesh times its solves, added up.
    ///
    /// A bound on work and not on time, so that a busy computer gives the same answers.
    pub work_most: usize,
}

impl Default for HeatOptions {
    fn default() -> Self {
        Self {
            tolerance_k: 0.01,
            loss_tolerance_ratio: 1e-4,
            n_unknowns_most: 300_000,
            // Some half a minute of one core.
            work_most: 30_000_000,
        }
    }
}

/// Answers, in the order of the questions.
#[derive(Clone, Debug, PartialEq)]
pub struct HeatSolved {
    /// Answers.
    pub answers: Vec<HeatAnswer>,
    /// Number of unknowns of the last mesh.
    pub n_unknowns: usize,
}

/// Solves a section for the wanted quantities.
///
/// # Errors
/// [`HeatError`].
/// Numbers that did not settle are answers, and say so.
pub fn solve(
    section: &HeatSection,
    asks: &[Ask],
    options: &HeatOptions,
) -> Result<HeatSolved, HeatError> {
    let build = mesh::build(&section.outline, &MeshOptions::default());
    solve_on(section, build.map_err(HeatError::Mesh)?, asks, options)
}

/// Does the same as [`solve`], starting from a given mesh of the section's outline.
///
/// # Errors
/// [`HeatError`].
pub fn solve_on(
    section: &HeatSection,
    mesh: Mesh,
    asks: &[Ask],
    options: &HeatOptions,
) -> Result<HeatSolved, HeatError> {
    let mut system = System::new(section, mesh)?;
    let mut last: Option<Numbers> = None;
    let n_solves = n_solves(section, asks);
    let mut work = 0;
    loop {
        let numbers = numbers(section, asks, &mut system)?;
        let answers = estimate(asks, options, last.as_ref(), &numbers);
        // Halves all edges: four times the unknowns.
        let n_next = 4 * system.n_unknowns();
        work += system.n_unknowns() * n_solves;
        let is_large = n_next > options.n_unknowns_most;
        let is_long = work + n_next * n_solves > options.work_most;
        let is_enough = answers.iter().all(|answer| answer.is_settled) || is_long;
        if last.is_some() && is_enough || is_large {
            return Ok(HeatSolved {
                answers,
                n_unknowns: system.n_unknowns(),
            });
        }
        let all = vec![true; system.mesh().triangles.len()];
        let finer = mesh::refine(&section.outline, system.mesh(), &all);
        system = System::new(section, finer)?;
        last = Some(numbers);
    }
}

/// Number of solves on one mesh.
fn n_solves(section: &HeatSection, asks: &[Ask]) -> usize {
    match section.when {
        When::Since { .. } => {
            let times = times(asks);
            step::n_solves(&times, N_STEPS) + step::n_solves(&times, 2 * N_STEPS)
        }
        When::Steady => 1,
    }
}

/// Times that are asked for, s, in order and each once.
fn times(asks: &[Ask]) -> Vec<f64> {
    let mut times: Vec<f64> = asks.iter().map(|ask| ask.time_s).collect();
    times.sort_by(f64::total_cmp);
    times.dedup();
    times
}

/// The wanted numbers on one mesh, and their changes when the time steps were halved.
struct Numbers {
    values: Vec<f64>,
    stepped: Vec<f64>,
}

fn numbers(section: &HeatSection, asks: &[Ask], system: &mut System) -> Result<Numbers, HeatError> {
    let When::Since { start_degc } = section.when else {
        let solution = system.steady()?;
        let values: Result<Vec<f64>, HeatError> = asks
            .iter()
            .map(|ask| number(system, &solution, ask))
            .collect();
        return Ok(Numbers {
            stepped: vec![0.0; asks.len()],
            values: values?,
        });
    };
    let times = times(asks);
    let mut runs = Vec::new();
    for n_steps in [N_STEPS, 2 * N_STEPS] {
        let solutions = step::run(system, system.even(start_degc), &times, n_steps)?;
        let at = |ask: &Ask| {
            let index = times.iter().position(|time| *time == ask.time_s);
            number(system, &solutions[index.unwrap_or_default()], ask)
        };
        let values: Result<Vec<f64>, HeatError> = asks.iter().map(at).collect();
        runs.push(values?);
    }
    let stepped = runs[0].iter().zip(&runs[1]).map(|(a, b)| (a - b).abs());
    Ok(Numbers {
        stepped: stepped.collect(),
        values: runs.swap_remove(1),
    })
}

fn number(system: &System, solution: &[f64], ask: &Ask) -> Result<f64, HeatError> {
    match ask.what {
        What::TotalLoss => Ok(system.loss_w(solution)),
        What::TemperatureAt(at) => system
            .temperature_at(solution, at)
            .ok_or(HeatError::Nowhere { at }),
    }
}

fn estimate(
    asks: &[Ask],
    options: &HeatOptions,
    last: Option<&Numbers>,
    now: &Numbers,
) -> Vec<HeatAnswer> {
    asks.iter()
        .enumerate()
        .map(|(index, ask)| {
            let value = now.values[index];
            let moved = last.map_or(f64::INFINITY, |last| (value - last.values[index]).abs());
            let error_estimate = MOVED_RATIO * moved + STEPPED_RATIO * now.stepped[index];
            let asked = match ask.what {
                What::TemperatureAt(_) => options.tolerance_k,
                What::TotalLoss => options.loss_tolerance_ratio * value.abs(),
            };
            HeatAnswer {
                value,
                error_estimate,
                is_settled: error_estimate <= asked,
            }
        })
        .collect()
}
