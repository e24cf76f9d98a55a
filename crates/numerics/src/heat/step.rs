//! Step: temperatures from a start to each wanted time.
//!
//! Each step is Alexander's method of three stages and order three, which damps stiff components:
//! a current that is suddenly switched on heats its neighbourhood faster than any step.
//! Each doubling of time has a fixed number of steps of one length, so one factorisation serves them all.
//!
//! **Source.** R. Alexander, SIAM Journal on Numerical Analysis 14 (1977) 1006–1021, from memory; the tests check the order conditions.

use super::section::HeatError;
use crate::fem::sparse::SparseError;

/// Equation of the temperatures: M dT/dt = b − A T.
pub(crate) trait Flow {
    /// Runs `work` with a function for b − A T at given temperatures, and with a solver of (M + s A) x = y.
    ///
    /// # Errors
    /// The error of a matrix that cannot be factorised, or of `work`.
    fn with_step<T>(
        &mut self,
        step_s: f64,
        work: impl FnOnce(
            &dyn Fn(&[f64]) -> Vec<f64>,
            &dyn Fn(&mut [f64]) -> Result<(), SparseError>,
        ) -> Result<T, SparseError>,
    ) -> Result<T, HeatError>;
}

/// Root of x³ − 3x² + 3x/2 − 1/6 between 1/6 and 1/2.
const GAMMA: f64 = 0.435_866_521_508_459;
/// First interval of time, as a share of the first wanted time.
const FIRST_RATIO: f64 = 1.0 / 4096.0;

/// Weights of the stages, by rows; the last row is the step itself.
const fn stages() -> [[f64; 3]; 3] {
    let (g, gg) = (GAMMA, GAMMA * GAMMA);
    let first = -(6.0 * gg - 16.0 * g + 1.0) / 4.0;
    let second = (6.0 * gg - 20.0 * g + 5.0) / 4.0;
    [[g, 0.0, 0.0], [(1.0 - g) / 2.0, g, 0.0], [first, second, g]]
}

/// Temperatures at each of the times, s, in rising order, from given temperatures at the start; `n_steps` in each doubling of time.
pub(crate) fn run(
    flow: &mut impl Flow,
    start_degc: Vec<f64>,
    times_s: &[f64],
    n_steps: usize,
) -> Result<Vec<Vec<f64>>, HeatError> {
    run_until(flow, start_degc, times_s, n_steps, |_| false)
}

/// Does the same as [`run`], but ends at the first temperatures for which `is_enough` is true.
pub(crate) fn run_until(
    flow: &mut impl Flow,
    start_degc: Vec<f64>,
    times_s: &[f64],
    n_steps: usize,
    mut is_enough: impl FnMut(&[f64]) -> bool,
) -> Result<Vec<Vec<f64>>, HeatError> {
    let mut here = start_degc;
    let mut reached = 0.0;
    let mut found = Vec::with_capacity(times_s.len());
    for &time in times_s {
        for until in stretches(reached, time) {
            let step = (until - reached) / n_steps as f64;
            here = steps(flow, here, step, n_steps)?;
            reached = until;
        }
        found.push(here.clone());
        if is_enough(&here) {
            break;
        }
    }
    Ok(found)
}

/// Number of solves that [`run`] takes.
pub(crate) fn n_solves(times_s: &[f64], n_steps: usize) -> usize {
    let mut reached = 0.0;
    let mut n_intervals = 0;
    for &time in times_s {
        n_intervals += stretches(reached, time).len();
        reached = time;
    }
    n_intervals * n_steps * stages().len()
}

/// Ends of the intervals between two times.
fn stretches(from: f64, to: f64) -> Vec<f64> {
    if to <= from {
        return Vec::new();
    }
    if from <= 0.0 {
        // Doublings from the first interval on; the last ends at `to`, because powers of two are exact.
        let mut ends = Vec::new();
        let mut share = FIRST_RATIO;
        while share <= 1.0 {
            ends.push(to * share);
            share *= 2.0;
        }
        return ends;
    }
    let n = (to / from).log2().ceil().max(1.0);
    let ratio = (to / from).powf(1.0 / n);
    let mut ends: Vec<f64> = (1..n as i32).map(|k| from * ratio.powi(k)).collect();
    ends.push(to);
    ends
}

fn steps(
    flow: &mut impl Flow,
    start: Vec<f64>,
    step_s: f64,
    n_steps: usize,
) -> Result<Vec<f64>, HeatError> {
    const STAGES: [[f64; 3]; 3] = stages();
    flow.with_step(GAMMA * step_s, |surplus, solve| {
        let mut here = start;
        for _ in 0..n_steps {
            // Slopes dT/dt of the stages: (M + γ dt A) k = b − A (T + dt Σ a k).
            let mut slopes: Vec<Vec<f64>> = Vec::with_capacity(3);
            for row in &STAGES {
                let mut at = here.clone();
                for (slope, weight) in slopes.iter().zip(row) {
                    for (degc, rate) in at.iter_mut().zip(slope) {
                        *degc += step_s * weight * rate;
                    }
                }
                let mut slope = surplus(&at);
                solve(&mut slope)?;
                slopes.push(slope);
            }
            for (slope, weight) in slopes.iter().zip(STAGES[2]) {
                for (degc, rate) in here.iter_mut().zip(slope) {
                    *degc += step_s * weight * rate;
                }
            }
        }
        Ok(here)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_stages_keep_the_conditions_of_order_three_and_damp_what_is_stiff() {
        let rows = stages();
        let c: Vec<f64> = rows.iter().map(|row| row.iter().sum()).collect();
        let weights = rows[2];
        let sum = |f: &dyn Fn(usize) -> f64| -> f64 { (0..3).map(|i| weights[i] * f(i)).sum() };
        assert!((sum(&|_| 1.0) - 1.0).abs() < 1e-14);
        assert!((sum(&|i| c[i]) - 0.5).abs() < 1e-14);
        assert!((sum(&|i| c[i] * c[i]) - 1.0 / 3.0).abs() < 1e-14);
        let of_row = |i: usize| (0..3).map(|j| rows[i][j] * c[j]).sum::<f64>();
        assert!((sum(&of_row) - 1.0 / 6.0).abs() < 1e-14);
        // For y' = λ y with infinite λ nothing remains: the last row is the step, and its matrix is regular.
        assert!((c[2] - 1.0).abs() < 1e-14 && GAMMA > 0.0);
    }

    #[test]
    fn stretches_end_at_the_times_asked() {
        let first = stretches(0.0, 1800.0);
        assert_eq!((first.len(), first[12]), (13, 1800.0));
        assert_eq!(stretches(1800.0, 3600.0), [3600.0]);
        assert_eq!(stretches(3600.0, 3600.0), [0.0; 0]);
        let long = stretches(1.0, 10.0);
        assert_eq!((long.len(), long[3]), (4, 10.0));
    }
}
