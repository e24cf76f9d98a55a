//! Reduced: a ladder with a handful of states, for years of hours and fleets.
//!
//! With x the rise above the temperatures T0 without load, C dx/dt = −G x + p (b + F x).
//! Here p is the square of the load relative to full load, b the losses of full load at T0, and F their growth with the temperature.
//! The states are combinations of the responses of G + s C, at a few s, to the losses of the joint and to the losses of its cables.
//! In these states C is the unit matrix and G is diagonal, so each state decays by its own factor from one hour to the next.
//!
//! **Invariants.** At rest, with losses independent of the temperature, it equals the full ladder.
//! The loss of an hour follows the mean of the temperatures at its beginning and its end.

use super::jacobi::eigen;
use super::run::Ladder;
use super::shape::LadderError;
use super::temperatures::Temperatures;
use crate::heat::HeatError;

/// Number of groups of sources: those of the joint, and those of the last slice of each arm.
const N_GROUPS: usize = 2;
/// Values of s at which the ladder's response is taken, 1/s: at rest, a day, some hours, some tens of minutes.
const PLACES_PER_S: [f64; 4] = [0.0, 5e-5, 3e-4, 1e-3];
/// Greatest number of states.
pub const N_STATES_MOST: usize = N_GROUPS * PLACES_PER_S.len();
/// Number of rounds in which a step finds its mean temperatures.
const N_ROUNDS: usize = 3;
/// Times after which the reduced ladder is compared with the full one, s.
const COMPARED_S: [f64; 5] = [1800.0, 3600.0, 4.0 * 3600.0, 12.0 * 3600.0, 48.0 * 3600.0];
/// Least share of a vector that must be new; below it, the vector adds nothing.
const NEW_RATIO: f64 = 1e-7;

/// One number for each state.
type Each = [f64; N_STATES_MOST];

/// A ladder with at most eight states.
#[derive(Clone, Debug, PartialEq)]
pub struct Reduced {
    n_states: usize,
    /// Decay rate of each state, 1/s.
    decay_per_s: Each,
    /// b in the states.
    drive: Each,
    /// F in the states, by columns: the addition of each state's rise to the drive of all states.
    feedback: [Each; N_STATES_MOST],
    /// Contribution of each state to the temperatures at z = 0 and at the hottest watched place.
    outs: [Each; 2],
    /// These temperatures without load, °C.
    bases_degc: [f64; 2],
    error_k: f64,
}

/// Values of the states at one time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct State(Each);

/// Factors of a step of one length under a constant drive: the share of each state that remains and the gain from the drive, at its end and in its mean.
struct Stride {
    kept: Each,
    gained: Each,
    mean_kept: Each,
    mean_gained: Each,
}

impl Stride {
    fn new(decay_per_s: &Each, step_s: f64) -> Stride {
        let kept = decay_per_s.map(|decay| (-decay * step_s).exp());
        let gained = decay_per_s.map(|decay| -(-decay * step_s).exp_m1() / decay);
        let mean_kept = gained.map(|gained| gained / step_s);
        let mut mean_gained = [0.0; N_STATES_MOST];
        for (k, decay) in decay_per_s.iter().enumerate() {
            mean_gained[k] = (1.0 - mean_kept[k]) / decay;
        }
        Stride {
            kept,
            gained,
            mean_kept,
            mean_gained,
        }
    }
}

/// Temperatures at the end of an hour, or of a step of another length.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hour {
    /// At z = 0, °C.
    pub middle_degc: f64,
    /// At the place that is hottest among the watched ones at full load, °C.
    pub watched_degc: f64,
}

impl Reduced {
    /// Reduces a ladder for currents that keep their ratio, A at a load of 1.
    ///
    /// # Errors
    /// The same errors as [`Ladder::steady`] at these currents.
    ///
    /// ```
    /// use jointwright_numerics::heat::Stuff;
    /// use jointwright_numerics::ladder::{Arm, Hub, Ladder, Loss, Reduced, Ring, Slice, Star};
    /// let ring = |outside_m, conductivity_w_per_mk, loss| Ring {
    ///     outside_m,
    ///     stuff: Stuff { conductivity_w_per_mk, capacity_j_per_m3k: 2e6 },
    ///     loss,
    ///     is_watched: true,
    /// };
    /// let loss = Loss { at20_ohm_per_m: 1e-3, alpha_per_k: 4e-3, constant_w_per_m: 0.0 };
    /// let slice = |length_m| Slice {
    ///     length_m,
    ///     rings: vec![ring(0.010, 385.0, Some(loss)), ring(0.020, 0.25, None)],
    ///     film_w_per_m2k: 10.0,
    ///     ambient_degc: 20.0,
    /// };
    /// let star = Star { arms: vec![Arm { slices: vec![slice(0.1), slice(2.0)] }], hub: Hub::default() };
    /// let mut ladder = Ladder::new(star).unwrap();
    /// let reduced = Reduced::new(&mut ladder, &[100.0]).unwrap();
    /// let rest = reduced.at_rest(1.0).unwrap();
    /// let full = ladder.steady(&[100.0]).unwrap();
    /// assert!((reduced.hour(&rest).middle_degc - ladder.middle_degc(&full)).abs() < 1e-6);
    /// assert!(reduced.n_states() <= 8 && reduced.error_k() < 0.5);
    /// ```
    pub fn new(ladder: &mut Ladder, currents_a: &[f64]) -> Result<Reduced, LadderError> {
        let still: Vec<f64> = vec![0.0; currents_a.len()];
        let base = ladder.steady(&still)?;
        let full = ladder.steady(currents_a)?;
        let weights = weights(ladder, currents_a);
        let mut vectors: Vec<Vec<f64>> = Vec::new();
        for place in PLACES_PER_S {
            for weight in &weights {
                let answer = ladder.response(place, weight)?;
                add_vector(&mut vectors, answer, &ladder.network.capacity);
            }
        }
        let vectors = turned(ladder, &vectors);
        let mut reduced = Reduced::of(ladder, currents_a, &vectors, &base, &full);
        reduced.error_k = reduced.compared(ladder, currents_a, &base, &full)?;
        Ok(reduced)
    }

    /// The ladder in the span of these vectors, each with its decay.
    fn of(
        ladder: &Ladder,
        currents_a: &[f64],
        vectors: &[(f64, Vec<f64>)],
        base: &Temperatures,
        full: &Temperatures,
    ) -> Reduced {
        let outs = ladder.outs(full);
        let (load, gain) = ladder.network.heating(currents_a);
        let (idle, _) = ladder.network.heating(&vec![0.0; currents_a.len()]);
        let at_base: Vec<f64> = (0..load.len())
            .map(|cell| load[cell] - idle[cell] + gain[cell] * base.degc[cell])
            .collect();
        let mut reduced = Reduced {
            n_states: vectors.len(),
            decay_per_s: [1.0; N_STATES_MOST],
            drive: [0.0; N_STATES_MOST],
            feedback: [[0.0; N_STATES_MOST]; N_STATES_MOST],
            outs: [[0.0; N_STATES_MOST]; 2],
            bases_degc: [outs[0].of(&base.degc), outs[1].of(&base.degc)],
            error_k: 0.0,
        };
        for (k, (decay_per_s, vector)) in vectors.iter().enumerate() {
            reduced.decay_per_s[k] = *decay_per_s;
            reduced.drive[k] = plain(vector, &at_base);
            reduced.outs[0][k] = outs[0].of(vector);
            reduced.outs[1][k] = outs[1].of(vector);
            for (l, (_, other)) in vectors.iter().enumerate() {
                reduced.feedback[k][l] = dot(vector, other, &gain);
            }
        }
        reduced
    }

    /// Number of states.
    pub fn n_states(&self) -> usize {
        self.n_states
    }

    /// Greatest difference found from the full ladder, at rest and at times after a step to full load, K; it is not a bound.
    pub fn error_k(&self) -> f64 {
        self.error_k
    }

    /// Steady states of a constant load, as a share of full load.
    ///
    /// # Errors
    /// [`HeatError::Runaway`].
    pub fn at_rest(&self, load_ratio: f64) -> Result<State, LadderError> {
        let square = load_ratio * load_ratio;
        let n = self.n_states;
        let mut matrix: Vec<Vec<f64>> = (0..n)
            .map(|i| (0..n).map(|j| -square * self.feedback[j][i]).collect())
            .collect();
        for (k, row) in matrix.iter_mut().enumerate() {
            row[k] += self.decay_per_s[k];
            row.push(square * self.drive[k]);
        }
        let state = solved(matrix).ok_or(HeatError::Runaway)?;
        let mut found = State([0.0; N_STATES_MOST]);
        found.0[..n].copy_from_slice(&state);
        Ok(found)
    }

    /// Temperatures in a state.
    pub fn hour(&self, state: &State) -> Hour {
        Hour {
            middle_degc: self.bases_degc[0] + plain(&state.0, &self.outs[0]),
            watched_degc: self.bases_degc[1] + plain(&state.0, &self.outs[1]),
        }
    }

    /// Runs through loads, each a share of full load for one step, and shows the temperatures after each.
    ///
    /// Returns the last state.
    pub fn run(
        &self,
        start: &State,
        step_s: f64,
        loads_ratio: &[f64],
        mut show: impl FnMut(Hour),
    ) -> State {
        let stride = Stride::new(&self.decay_per_s, step_s);
        let mut state = start.0;
        for load in loads_ratio {
            let square = load * load;
            let mut mean = state;
            let mut drive = [0.0; N_STATES_MOST];
            for _ in 0..N_ROUNDS {
                drive = self.drive;
                for (column, mean) in self.feedback.iter().zip(mean) {
                    for (drive, gain) in drive.iter_mut().zip(column) {
                        *drive += mean * gain;
                    }
                }
                for k in 0..N_STATES_MOST {
                    drive[k] *= square;
                    mean[k] = stride.mean_kept[k] * state[k] + stride.mean_gained[k] * drive[k];
                }
            }
            for k in 0..N_STATES_MOST {
                state[k] = stride.kept[k] * state[k] + stride.gained[k] * drive[k];
            }
            show(self.hour(&State(state)));
        }
        State(state)
    }

    /// Greatest difference from the full ladder at rest and after a step, K.
    fn compared(
        &self,
        ladder: &mut Ladder,
        currents_a: &[f64],
        base: &Temperatures,
        full: &Temperatures,
    ) -> Result<f64, LadderError> {
        let outs = ladder.outs(full);
        let apart = |hour: Hour, found: &Temperatures| {
            let middle = (hour.middle_degc - outs[0].of(&found.degc)).abs();
            middle.max((hour.watched_degc - outs[1].of(&found.degc)).abs())
        };
        let mut greatest = apart(self.hour(&self.at_rest(1.0)?), full);
        let exact = ladder.after(base, currents_a, &COMPARED_S)?;
        let still = State([0.0; N_STATES_MOST]);
        for (found, time) in exact.iter().zip(COMPARED_S) {
            let n = (time / COMPARED_S[0]).round() as usize;
            let state = self.run(&still, time / n as f64, &vec![1.0; n], |_| ());
            greatest = greatest.max(apart(self.hour(&state), found));
        }
        Ok(greatest)
    }
}

/// Losses of full load at 20 °C by cell: first of all slices except the last of each arm, then of the last ones.
fn weights(ladder: &Ladder, currents_a: &[f64]) -> [Vec<f64>; N_GROUPS] {
    let network = &ladder.network;
    let mut weights = [vec![0.0; network.n], vec![0.0; network.n]];
    for source in &network.sources {
        let loss = source.at20_ohm * network.square_a2(source, currents_a);
        weights[usize::from(source.is_far)][source.cell] += loss;
    }
    weights
}

fn plain(one: &[f64], other: &[f64]) -> f64 {
    one.iter().zip(other).map(|(a, b)| a * b).sum()
}

fn dot(one: &[f64], other: &[f64], capacity: &[f64]) -> f64 {
    let pairs = one.iter().zip(other).zip(capacity);
    pairs.map(|((a, b), c)| a * b * c).sum()
}

/// Adds the part of a vector that is orthogonal to the others, normalised with the heat capacities as weights.
fn add_vector(vectors: &mut Vec<Vec<f64>>, mut vector: Vec<f64>, capacity: &[f64]) {
    let whole = dot(&vector, &vector, capacity).sqrt();
    // Twice, which also removes the rounding error of the first pass.
    for _ in 0..2 {
        for known in vectors.iter() {
            let share = dot(known, &vector, capacity);
            for (value, known) in vector.iter_mut().zip(known) {
                *value -= share * known;
            }
        }
    }
    let own = dot(&vector, &vector, capacity).sqrt();
    if own > NEW_RATIO * whole {
        vector.iter_mut().for_each(|value| *value /= own);
        vectors.push(vector);
    }
}

/// Combinations of these vectors in which the conductances are diagonal, each with its decay, 1/s.
fn turned(ladder: &Ladder, vectors: &[Vec<f64>]) -> Vec<(f64, Vec<f64>)> {
    let flows: Vec<Vec<f64>> = vectors.iter().map(|v| ladder.outflow(v)).collect();
    let matrix = vectors
        .iter()
        .map(|one| flows.iter().map(|flow| plain(one, flow)).collect());
    let (decays, turns) = eigen(matrix.collect());
    let combined = |k: usize| {
        let mut sum = vec![0.0; ladder.n_states()];
        for (vector, row) in vectors.iter().zip(&turns) {
            for (sum, value) in sum.iter_mut().zip(vector) {
                *sum += row[k] * value;
            }
        }
        sum
    };
    let each = decays.into_iter().enumerate();
    each.map(|(k, decay)| (decay, combined(k))).collect()
}

/// Solves a small system, with its right side as last column, by elimination; `None` unless every pivot is positive.
fn solved(mut rows: Vec<Vec<f64>>) -> Option<Vec<f64>> {
    let n = rows.len();
    for k in 0..n {
        let pivot = rows[k][k];
        if pivot <= 0.0 || !pivot.is_finite() {
            return None;
        }
        let own = rows[k].clone();
        for row in rows.iter_mut().skip(k + 1) {
            let share = row[k] / pivot;
            for (value, own) in row.iter_mut().zip(&own) {
                *value -= share * own;
            }
        }
    }
    let mut found = vec![0.0; n];
    for k in (0..n).rev() {
        let known = plain(&rows[k][k + 1..n], &found[k + 1..]);
        found[k] = (rows[k][n] - known) / rows[k][k];
    }
    Some(found)
}
