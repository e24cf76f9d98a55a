//! Projected: a star with some tens of states, for any currents of its arms, at rest and in time.
//!
//! With y the rise above the temperatures at rest with some currents, in states V with Vᵀ C V = 1:
//!
//! ```text
//! dy/dt = −(Λ − Σ qₐ Fₐ) y + Σ qₐ βₐ        Λ = Vᵀ (G − growth of the losses at rest) V, diagonal
//! ```
//!
//! qₐ: square of the current of arm a, less its square at rest, A² · βₐ: loss for each A² at rest · Fₐ: its growth with the temperature.
//! The states are combinations of the responses of (G + s C) to the losses of each arm's joint, of each arm's far cable and of the hub,
//! of the responses to the growth of the losses, and of temperatures that the caller knows.
//!
//! **Invariants.** At rest with those currents, and with the currents of the known temperatures, it equals the full ladder.
//! In time it is exact for its states.
//!
//! **Not here.** A handful of states for years of hours (`reduced`).
//!
//! **Source.** `docs/theory/ladder.md`.

use super::basis::{add_outer, orthonormal, product, solved};
use super::network::Out;
use super::run::Ladder;
use super::shape::LadderError;
use super::temperatures::Temperatures;
use super::tridiagonal::eigen;
use crate::heat::HeatError;

/// Values of s at which the responses are taken, 1/s: at rest, and from hours to seconds.
const PLACES_PER_S: [f64; 7] = [0.0, 5e-5, 4e-4, 2e-3, 6e-3, 2e-2, 9e-2];
/// Values of s from which the responses to the growth of the losses are taken too, 1/s: an overload of minutes heats the metal by its growth.
const GROWN_FROM_PER_S: f64 = 1e-3;
/// Values of s between them, at which the states are compared with the full ladder, 1/s.
const COMPARED_PER_S: [f64; 4] = [1.4e-4, 9e-4, 3.5e-3, 4.2e-2];
/// Greatest rise at which the states are compared, K; a greater one, near a runaway, is scaled down to it.
const COMPARED_K: f64 = 300.0;
/// Ratio of the stated error to the greatest difference found.
const SAFETY: f64 = 20.0;

/// Temperatures of some places, as combinations of the states.
#[derive(Clone, Debug, Default, PartialEq)]
struct Sight {
    places_m: Vec<f64>,
    /// Temperature of each place at rest, °C.
    bases_degc: Vec<f64>,
    /// Weights of the states, place by place.
    weights: Vec<f64>,
}

impl Sight {
    fn degcs<'s>(&'s self, rises: &'s Rises) -> impl Iterator<Item = (f64, f64)> + 's {
        self.degcs_of(rises, |_| true)
    }

    /// Temperatures of the places that count: place, m, and °C.
    fn degcs_of<'s>(
        &'s self,
        rises: &'s Rises,
        counts: impl Fn(f64) -> bool + 's,
    ) -> impl Iterator<Item = (f64, f64)> + 's {
        let rows = self.weights.chunks(rises.0.len().max(1));
        let each = self.places_m.iter().zip(&self.bases_degc).zip(rows);
        let each = each.filter(move |((place, _), _)| counts(**place));
        each.map(|((place, base), row)| (*place, base + product(row, &rises.0)))
    }

    fn hottest<'s>(
        &'s self,
        rises: &'s Rises,
        counts: impl Fn(f64) -> bool + 's,
    ) -> Option<(f64, f64)> {
        let places = self.degcs_of(rises, counts);
        places.max_by(|a, b| a.1.total_cmp(&b.1))
    }
}

/// Rises of the states above the temperatures at rest.
#[derive(Clone, Debug, PartialEq)]
pub struct Rises(Vec<f64>);

/// A star with some tens of states.
#[derive(Clone, Debug, PartialEq)]
pub struct Projected {
    /// Squares of the currents at rest, A².
    squares_a2: Vec<f64>,
    /// Λ, 1/s.
    decays_per_s: Vec<f64>,
    /// Fₐ of each arm, by rows.
    growths: Vec<Vec<f64>>,
    /// βₐ of each arm.
    drives: Vec<Vec<f64>>,
    cores: Vec<Sight>,
    watched: Vec<Sight>,
    /// Estimated error, K for each unit of [`Projected::push`].
    error_k: f64,
}

/// Temperatures over time after a change of currents.
#[derive(Clone, Debug, PartialEq)]
pub struct Course {
    decays_per_s: Vec<f64>,
    /// Drive of each mode.
    drives: Vec<f64>,
    /// Modes, each with its states.
    modes: Vec<f64>,
}

impl Course {
    /// Rises after a time, s, from the temperatures at rest.
    pub fn after(&self, time_s: f64) -> Rises {
        let n = self.drives.len();
        let mut rises = vec![0.0; n];
        let each = self.decays_per_s.iter().zip(&self.drives);
        for ((decay, drive), mode) in each.zip(self.modes.chunks(n.max(1))) {
            let whole = decay * time_s;
            let gained = if whole == 0.0 {
                time_s
            } else {
                -(-whole).exp_m1() / decay
            };
            let share = drive * gained;
            rises
                .iter_mut()
                .zip(mode)
                .for_each(|(x, m)| *x += share * m);
        }
        Rises(rises)
    }
}

impl Projected {
    /// Projects a ladder about its temperatures at rest with currents, A for each arm.
    ///
    /// `known` are other steady temperatures of the ladder; `probe_a` are currents with which the states are compared with the ladder.
    ///
    /// # Errors
    /// The same errors as [`Ladder::steady`] at the currents at rest.
    ///
    /// ```
    /// use jointwright_numerics::heat::Stuff;
    /// use jointwright_numerics::ladder::{Arm, Hub, Ladder, Loss, Projected, Ring, Slice, Star};
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
    /// let start = ladder.steady(&[100.0]).unwrap();
    /// let projected = Projected::new(&mut ladder, &[100.0], &start, &[], &[150.0]).unwrap();
    /// let hour = projected.course(&[150.0]).unwrap().after(3600.0);
    /// let full = ladder.after(&start, &[150.0], &[3600.0]).unwrap().remove(0);
    /// let apart = projected.along_core(&hour, 0)[0].1 - ladder.middle_degc(&full);
    /// assert!(apart.abs() < 0.02 && projected.error_k(&[150.0]) < 0.1);
    /// let long = projected.course(&[150.0]).unwrap().after(1e9);
    /// let rest = projected.at_rest(&[150.0]).unwrap();
    /// let (long, rest) = (projected.along_core(&long, 0)[0].1, projected.along_core(&rest, 0)[0].1);
    /// assert!((long - rest).abs() < 1e-9);
    /// ```
    pub fn new(
        ladder: &mut Ladder,
        currents_a: &[f64],
        rest: &Temperatures,
        known: &[&Temperatures],
        probe_a: &[f64],
    ) -> Result<Projected, LadderError> {
        let growth = ladder.growths(currents_a);
        let mut columns = responses(ladder, [&growth, &ladder.growths(probe_a)], rest)?;
        columns.extend(known.iter().map(|known| {
            let pairs = known.degc.iter().zip(&rest.degc);
            pairs.map(|(other, rest)| other - rest).collect()
        }));
        let mut projected = Projected::of(ladder, currents_a, rest, &growth, &columns)?;
        projected.error_k = projected.compared(ladder, currents_a, rest, probe_a)?;
        Ok(projected)
    }

    /// The ladder in the span of these columns.
    fn of(
        ladder: &Ladder,
        currents_a: &[f64],
        rest: &Temperatures,
        growth: &[f64],
        columns: &[Vec<f64>],
    ) -> Result<Projected, LadderError> {
        let states = orthonormal(columns, &ladder.network.capacity);
        let n = states.len();
        // G less the growth of the losses, between the orthonormal states.
        let flows: Vec<Vec<f64>> = states
            .iter()
            .map(|column| {
                let mut flow = ladder.outflow(column);
                let own = column.iter().zip(growth);
                flow.iter_mut().zip(own).for_each(|(f, (x, g))| *f -= x * g);
                flow
            })
            .collect();
        let between = symmetric(n, |i, j| product(&states[i], &flows[j]));
        let (decays_per_s, modes) = eigen(&between.concat(), n)?;
        let weights = |out: Out| -> Vec<f64> {
            let seen: Vec<f64> = states.iter().map(|state| out.of(state)).collect();
            let modes = modes.chunks(n.max(1));
            modes.map(|mode| product(mode, &seen)).collect()
        };
        let arms = 0..currents_a.len();
        let sight = |places: Vec<(f64, Out)>| Sight {
            bases_degc: places.iter().map(|(_, out)| out.of(&rest.degc)).collect(),
            weights: places.iter().flat_map(|(_, out)| weights(*out)).collect(),
            places_m: places.into_iter().map(|(place, _)| place).collect(),
        };
        let cores = arms.clone().map(|arm| sight(ladder.core_outs(arm)));
        let watched = arms.clone().map(|arm| sight(ladder.watched_outs(arm)));
        let mut projected = Projected {
            squares_a2: currents_a.iter().map(|i| i * i).collect(),
            growths: vec![vec![0.0; n * n]; arms.len()],
            drives: vec![vec![0.0; n]; arms.len()],
            cores: cores.collect(),
            watched: watched.collect(),
            decays_per_s,
            error_k: 0.0,
        };
        projected.add_sources(ladder, rest, weights);
        Ok(projected)
    }

    fn add_sources(
        &mut self,
        ladder: &Ladder,
        rest: &Temperatures,
        weights: impl Fn(Out) -> Vec<f64>,
    ) {
        let n_arms = self.drives.len();
        for source in &ladder.network.sources {
            let seen = weights(Out::cell(source.cell));
            let (at_rest, growth) = source.per_a2(rest);
            // The hub takes the mean of all squares.
            let (arms, share) = match source.arm {
                Some(arm) => (arm..arm + 1, 1.0),
                None => (0..n_arms, 1.0 / n_arms as f64),
            };
            for arm in arms {
                let drive = self.drives[arm].iter_mut().zip(&seen);
                drive.for_each(|(drive, seen)| *drive += share * at_rest * seen);
                add_outer(&mut self.growths[arm], share * growth, &seen);
            }
        }
    }

    /// Number of states.
    pub fn n_states(&self) -> usize {
        self.decays_per_s.len()
    }

    /// Estimated error of any temperature with currents, A for each arm, K; it is not a bound.
    pub fn error_k(&self, currents_a: &[f64]) -> f64 {
        self.error_k * self.push(currents_a)
    }

    /// Size of the change of the losses from those at rest.
    fn push(&self, currents_a: &[f64]) -> f64 {
        let arms = currents_a.iter().zip(&self.squares_a2).zip(&self.drives);
        arms.map(|((current, at_rest), drive)| {
            (current * current - at_rest).abs() * product(drive, drive).sqrt()
        })
        .sum()
    }

    /// Matrix and drive with currents, A for each arm; `per_s` is added to the diagonal.
    fn system(&self, currents_a: &[f64], per_s: f64) -> Result<(Vec<f64>, Vec<f64>), LadderError> {
        let (n_currents, n_arms) = (currents_a.len(), self.squares_a2.len());
        if n_currents != n_arms {
            return Err(LadderError::Currents { n_currents, n_arms });
        }
        let n = self.n_states();
        let (mut matrix, mut drive) = (vec![0.0; n * n], vec![0.0; n]);
        for (k, decay) in self.decays_per_s.iter().enumerate() {
            matrix[k * n + k] = decay + per_s;
        }
        for (arm, (current, at_rest)) in currents_a.iter().zip(&self.squares_a2).enumerate() {
            let more = current * current - at_rest;
            if more != 0.0 {
                let growth = matrix.iter_mut().zip(&self.growths[arm]);
                growth.for_each(|(entry, growth)| *entry -= more * growth);
                let own = drive.iter_mut().zip(&self.drives[arm]);
                own.for_each(|(drive, own)| *drive += more * own);
            }
        }
        Ok((matrix, drive))
    }

    /// Rises at rest with currents, A for each arm.
    ///
    /// # Errors
    /// [`HeatError::Runaway`], or a number of currents other than the number of arms.
    pub fn at_rest(&self, currents_a: &[f64]) -> Result<Rises, LadderError> {
        let (matrix, drive) = self.system(currents_a, 0.0)?;
        let found = solved(matrix, drive).ok_or(HeatError::Runaway)?;
        Ok(Rises(found))
    }

    /// Course of the temperatures from rest, after a change to these currents, A for each arm.
    ///
    /// # Errors
    /// A number of currents other than the number of arms; [`HeatError::Runaway`] if they are no numbers.
    pub fn course(&self, currents_a: &[f64]) -> Result<Course, LadderError> {
        let (matrix, drive) = self.system(currents_a, 0.0)?;
        let n = self.n_states();
        let (decays_per_s, modes) = eigen(&matrix, n)?;
        let drives = modes.chunks(n.max(1)).map(|mode| product(mode, &drive));
        Ok(Course {
            drives: drives.collect(),
            decays_per_s,
            modes,
        })
    }

    /// Temperatures along the core of an arm: place, m, and °C.
    pub fn along_core(&self, rises: &Rises, arm_index: usize) -> Vec<(f64, f64)> {
        self.cores[arm_index].degcs(rises).collect()
    }

    /// Hottest place of the core of an arm among those that count: place, m, and °C.
    pub fn hottest_core(
        &self,
        rises: &Rises,
        arm_index: usize,
        counts: impl Fn(f64) -> bool,
    ) -> Option<(f64, f64)> {
        self.cores[arm_index].hottest(rises, counts)
    }

    /// Hottest place on the inside of the watched rings of one arm: place along it, m, and °C.
    pub fn hottest_watched_of(&self, rises: &Rises, arm_index: usize) -> Option<(f64, f64)> {
        self.watched[arm_index].hottest(rises, |_| true)
    }

    /// Greatest difference between the rises of the full ladder and these, K for each unit of [`Projected::push`], times [`SAFETY`].
    ///
    /// The response of (G + s C) to a load is the mean of the rises after it, weighted by s exp(−s t).
    fn compared(
        &self,
        ladder: &mut Ladder,
        currents_a: &[f64],
        rest: &Temperatures,
        probe_a: &[f64],
    ) -> Result<f64, LadderError> {
        let growth = ladder.growths(probe_a);
        let at_rest = ladder.growths(currents_a);
        let mut more_w = vec![0.0; ladder.n_states()];
        for source in &ladder.network.sources {
            let square_a2 = ladder.network.square_a2(source, probe_a);
            let at_rest_a2 = ladder.network.square_of(source, &self.squares_a2);
            more_w[source.cell] += (square_a2 - at_rest_a2) * source.per_a2(rest).0;
        }
        let arms = 0..self.cores.len();
        let outs: Vec<Vec<(f64, Out)>> = arms
            .flat_map(|arm| [ladder.core_outs(arm), ladder.watched_outs(arm)])
            .collect();
        let mut greatest: f64 = 0.0;
        for per_s in COMPARED_PER_S {
            let (mut matrix, drive) = self.system(probe_a, per_s)?;
            let probed = ladder.loaded_response(per_s, &growth, &more_w);
            let full = match probed {
                Ok(full) => full,
                // Losses that outgrow the cooling at this s have no mean: they grow as at rest here, on both sides.
                Err(_) => {
                    let n = self.n_states();
                    matrix.fill(0.0);
                    for (k, decay) in self.decays_per_s.iter().enumerate() {
                        matrix[k * n + k] = decay + per_s;
                    }
                    ladder.loaded_response(per_s, &at_rest, &more_w)?
                }
            };
            let Some(own) = solved(matrix, drive).map(Rises) else {
                return Ok(f64::INFINITY);
            };
            let sights = self.cores.iter().zip(&self.watched);
            let sights = sights.flat_map(|(core, watched)| [core, watched]);
            let (mut apart, mut most): (f64, f64) = (0.0, 0.0);
            for (sight, outs) in sights.zip(&outs) {
                let seen = sight.degcs(&own).zip(&sight.bases_degc).zip(outs);
                for (((_, degc), base), (_, out)) in seen {
                    let rise = out.of(&full);
                    apart = apart.max((degc - base - rise).abs());
                    most = most.max(rise.abs());
                }
            }
            greatest = greatest.max(apart * (COMPARED_K / most).min(1.0));
        }
        let push = self.push(probe_a);
        Ok(if push > 0.0 {
            SAFETY * greatest / push
        } else {
            0.0
        })
    }
}

/// Rows of a symmetric matrix.
fn symmetric(n: usize, entry: impl Fn(usize, usize) -> f64) -> Vec<Vec<f64>> {
    let lower = (0..n).map(|i| (0..=i).map(|j| entry(i, j)).collect());
    let lower: Vec<Vec<f64>> = lower.collect();
    let at = |i: usize, j: usize| lower[i.max(j)][i.min(j)];
    (0..n).map(|i| (0..n).map(|j| at(i, j)).collect()).collect()
}

/// Responses of the ladder to its losses at rest, at every s, and to their growth, at rest and from [`GROWN_FROM_PER_S`] on.
fn responses(
    ladder: &mut Ladder,
    [growth, probed]: [&[f64]; 2],
    rest: &Temperatures,
) -> Result<Vec<Vec<f64>>, LadderError> {
    let (n, n_arms) = (ladder.n_states(), ladder.star().arms.len());
    // Joint and far cable of each arm, and the hub, for each A².
    let n_groups = 2 * n_arms + 1;
    let mut losses = vec![0.0; n * n_groups];
    let mut growths = vec![vec![0.0; n]; n_arms];
    for source in &ladder.network.sources {
        let group = source
            .arm
            .map_or(n_groups - 1, |arm| 2 * arm + usize::from(source.is_far));
        let (at_rest, growth) = source.per_a2(rest);
        losses[group * n + source.cell] += at_rest;
        if let Some(arm) = source.arm {
            growths[arm][source.cell] += growth;
        }
    }
    let heated = losses
        .chunks(n)
        .filter(|column| column.iter().any(|w| *w > 0.0));
    let losses: Vec<f64> = heated.flatten().copied().collect();
    let pairs = growth.iter().zip(probed);
    let halfway: Vec<f64> = pairs.map(|(one, other)| 0.5 * (one + other)).collect();
    let mut columns: Vec<Vec<f64>> = Vec::new();
    for place in PLACES_PER_S {
        let mut respond = |losses: &[f64]| {
            // In time the losses grow half as with the probe's currents, unless they outgrow the cooling at this s.
            let in_time = (place > 0.0).then(|| ladder.loaded_response(place, &halfway, losses));
            match in_time {
                Some(Ok(found)) => Ok(found),
                _ => ladder.loaded_response(place, growth, losses),
            }
        };
        let found = respond(&losses)?;
        if place == 0.0 || place >= GROWN_FROM_PER_S {
            let rise: Vec<f64> = (0..n)
                .map(|cell| found.chunks(n).map(|of| of[cell]).sum())
                .collect();
            let grown = growths.iter().flat_map(|growth| growth.iter().zip(&rise));
            let grown: Vec<f64> = grown.map(|(growth, x)| growth * x).collect();
            columns.extend(respond(&grown)?.chunks(n).map(<[f64]>::to_vec));
        }
        columns.extend(found.chunks(n).map(<[f64]>::to_vec));
    }
    Ok(columns)
}
