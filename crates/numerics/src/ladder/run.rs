//! Run: temperatures of a ladder, at rest and over time.

use super::network::{Network, Out};
use super::shape::{LadderError, Star};
use super::temperatures::Temperatures;
use crate::fem::sparse::{Cholesky, SparseError};
use crate::heat::HeatError;
use crate::heat::step::{self, Flow};

/// A heat source, and its effect at another place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Origin {
    /// Arm that contains the source; `None` for the hub.
    pub arm: Option<usize>,
    /// Place of the source along that arm, m.
    pub place_m: f64,
    /// Contribution to the wanted temperature, K.
    pub rise_k: f64,
}

/// Contributions to the temperature of one place; their sum is that temperature.
#[derive(Clone, Debug, PartialEq)]
pub struct Origins {
    /// Contributions of the sources, at the solved temperatures.
    pub heats: Vec<Origin>,
    /// Contribution of the surroundings, each with its weight: the temperature without any heat, °C.
    pub surroundings_degc: f64,
}

/// Number of steps in each doubling of time.
const N_STEPS: usize = 3;

/// The core of an arm: places along it, m, and the cells that hold their temperatures.
#[derive(Clone, Debug, PartialEq)]
pub struct Core {
    cells: Vec<(f64, usize)>,
}

impl Core {
    /// Temperatures along it: place, m, and °C; `found` must come from the same ladder.
    pub fn along(&self, found: &Temperatures) -> Vec<(f64, f64)> {
        let cells = self.cells.iter();
        cells
            .map(|(place, number)| (*place, found.degc[*number]))
            .collect()
    }
}

/// The network of a star, ready for solution with any currents.
pub struct Ladder {
    star: Star,
    pub(super) network: Network,
    /// Index of each link's entry, and of each diagonal, among the values of the lower triangle.
    entries: Vec<usize>,
    diagonals: Vec<usize>,
    n_entries: usize,
    cholesky: Cholesky,
    diagonal: Vec<f64>,
    cooling: Vec<f64>,
    /// Watched places of each arm: place along it, m, and its temperature.
    watched: Vec<Vec<(f64, Out)>>,
}

impl Ladder {
    /// Divides a star into cells.
    ///
    /// # Errors
    /// [`LadderError::Shape`] for an invalid slice.
    ///
    /// ```
    /// use jointwright_numerics::heat::Stuff;
    /// use jointwright_numerics::ladder::{Arm, Hub, Ladder, Loss, Ring, Slice, Star};
    /// let ring = |outside_m, conductivity_w_per_mk, loss| Ring {
    ///     outside_m,
    ///     stuff: Stuff { conductivity_w_per_mk, capacity_j_per_m3k: 2e6 },
    ///     loss,
    ///     is_watched: true,
    /// };
    /// // 10 W/m in a core of copper under 10 mm of a plastic, in air at 20 °C.
    /// let loss = Loss { at20_ohm_per_m: 1e-3, alpha_per_k: 0.0, constant_w_per_m: 0.0 };
    /// let slice = Slice {
    ///     length_m: 1.0,
    ///     rings: vec![ring(0.010, 385.0, Some(loss)), ring(0.020, 0.25, None)],
    ///     film_w_per_m2k: 10.0,
    ///     ambient_degc: 20.0,
    /// };
    /// let star = Star { arms: vec![Arm { slices: vec![slice] }], hub: Hub::default() };
    /// let mut ladder = Ladder::new(star).unwrap();
    /// let found = ladder.steady(&[100.0]).unwrap();
    /// let film = 1.0 / (10.0 * std::f64::consts::TAU * 0.020);
    /// let wall = 2_f64.ln() / (std::f64::consts::TAU * 0.25);
    /// let core = ladder.hottest_watched(&found).unwrap().2;
    /// // The core's middle is a little warmer than its outside.
    /// assert!((core - (20.0 + 10.0 * (film + wall))).abs() < 3e-3);
    /// ```
    pub fn new(star: Star) -> Result<Ladder, LadderError> {
        Ladder::finer(star, 1)
    }

    /// Does the same with `fineness` times as many cells along and across.
    ///
    /// # Errors
    /// The same errors as [`Ladder::new`].
    pub fn finer(star: Star, fineness: usize) -> Result<Ladder, LadderError> {
        let network = Network::new(&star, fineness)?;
        let (structure, entries, diagonals) = network.structure()?;
        Ok(Ladder {
            cholesky: Cholesky::new(&structure)?,
            n_entries: structure.n_entries(),
            diagonal: network.diagonal(),
            cooling: network.cooling(),
            watched: watched(&star, &network),
            star,
            network,
            entries,
            diagonals,
        })
    }

    /// Exchanges the star; if it has the same cells, as with other films or losses, the analysis of the equations stays.
    ///
    /// # Errors
    /// The same errors as [`Ladder::new`].
    ///
    /// ```
    /// # use jointwright_numerics::heat::Stuff;
    /// # use jointwright_numerics::ladder::{Arm, Hub, Ladder, Loss, Ring, Slice, Star};
    /// # let stuff = Stuff { conductivity_w_per_mk: 385.0, capacity_j_per_m3k: 3.45e6 };
    /// # let loss = Loss { at20_ohm_per_m: 1e-3, alpha_per_k: 0.0, constant_w_per_m: 0.0 };
    /// # let core = Ring { outside_m: 0.01, stuff, loss: Some(loss), is_watched: false };
    /// # let slice = Slice { length_m: 1.0, rings: vec![core], film_w_per_m2k: 10.0, ambient_degc: 20.0 };
    /// let mut star = Star { arms: vec![Arm { slices: vec![slice] }], hub: Hub::default() };
    /// let mut ladder = Ladder::new(star.clone()).unwrap();
    /// let mut rise = |star: Star| {
    ///     ladder.exchange(star).unwrap();
    ///     let found = ladder.steady(&[100.0]).unwrap();
    ///     ladder.middle_degc(&found) - 20.0
    /// };
    /// let before = rise(star.clone());
    /// star.arms[0].slices[0].film_w_per_m2k = 5.0;
    /// assert!((rise(star) / before - 2.0).abs() < 1e-3);
    /// ```
    pub fn exchange(&mut self, star: Star) -> Result<(), LadderError> {
        let network = Network::new(&star, 1)?;
        if !network.has_cells_of(&self.network) {
            *self = Ladder::new(star)?;
            return Ok(());
        }
        self.diagonal = network.diagonal();
        self.cooling = network.cooling();
        self.watched = watched(&star, &network);
        (self.star, self.network) = (star, network);
        Ok(())
    }

    /// Number of temperatures.
    pub fn n_states(&self) -> usize {
        self.network.n
    }

    /// Star of this ladder.
    pub fn star(&self) -> &Star {
        &self.star
    }

    fn check(&self, currents_a: &[f64]) -> Result<(), LadderError> {
        let n_arms = self.star.arms.len();
        if currents_a.len() == n_arms {
            return Ok(());
        }
        Err(LadderError::Currents {
            n_currents: currents_a.len(),
            n_arms,
        })
    }

    /// Values of the lower triangle of s A + M, for a given diagonal of s A + M.
    fn values(&self, scale: f64, diagonal: impl Fn(usize) -> f64) -> Vec<f64> {
        let mut values = vec![0.0; self.n_entries];
        for (&entry, &(_, _, conductance)) in self.entries.iter().zip(&self.network.links) {
            values[entry] -= scale * conductance;
        }
        for (cell, &entry) in self.diagonals.iter().enumerate() {
            values[entry] += diagonal(cell);
        }
        values
    }

    /// Steady temperatures with a current in each arm, A.
    ///
    /// # Errors
    /// [`HeatError::NoCooling`], [`HeatError::Runaway`], or a number of currents other than the number of arms.
    pub fn steady(&mut self, currents_a: &[f64]) -> Result<Temperatures, LadderError> {
        self.check(currents_a)?;
        if self.network.films.iter().all(|film| film.1 <= 0.0) {
            return Err(HeatError::NoCooling.into());
        }
        let (mut load, gain) = self.network.heating(currents_a);
        for (load, cooling) in load.iter_mut().zip(&self.cooling) {
            *load += cooling;
        }
        let values = self.values(1.0, |cell| self.diagonal[cell] - gain[cell]);
        let factor = self
            .cholesky
            .factorise(&values)
            .map_err(|_| HeatError::Runaway)?;
        factor.solve(&mut load)?;
        let is_number = load.iter().all(|degc| degc.is_finite());
        if !is_number {
            return Err(HeatError::Runaway.into());
        }
        Ok(Temperatures { degc: load })
    }

    /// The same temperature for all cells, °C.
    pub fn even(&self, degc: f64) -> Temperatures {
        Temperatures {
            degc: vec![degc; self.network.n],
        }
    }

    /// Temperatures at times since the start of these currents, s, in rising order.
    ///
    /// # Errors
    /// The same errors as [`Ladder::steady`], except [`HeatError::Runaway`]: a runaway takes time.
    pub fn after(
        &mut self,
        start: &Temperatures,
        currents_a: &[f64],
        times_s: &[f64],
    ) -> Result<Vec<Temperatures>, LadderError> {
        self.after_until(start, currents_a, times_s, |_| false)
    }

    /// Does the same, but ends at the first temperatures for which `is_enough` is true; later ones are not computed.
    ///
    /// # Errors
    /// The same errors as [`Ladder::after`].
    pub fn after_until(
        &mut self,
        start: &Temperatures,
        currents_a: &[f64],
        times_s: &[f64],
        is_enough: impl Fn(&Temperatures) -> bool,
    ) -> Result<Vec<Temperatures>, LadderError> {
        self.check(currents_a)?;
        let (mut load, gain) = self.network.heating(currents_a);
        for (load, cooling) in load.iter_mut().zip(&self.cooling) {
            *load += cooling;
        }
        let mut driven = Driven {
            ladder: self,
            load,
            gain,
        };
        let is_enough = |degc: &[f64]| {
            is_enough(&Temperatures {
                degc: degc.to_vec(),
            })
        };
        let start = start.degc.clone();
        let found = step::run_until(&mut driven, start, times_s, N_STEPS, is_enough)?;
        Ok(found
            .into_iter()
            .map(|degc| Temperatures { degc })
            .collect())
    }

    /// Temperatures along the core of an arm: place, m, and °C.
    pub fn along_core(&self, found: &Temperatures, arm_index: usize) -> Vec<(f64, f64)> {
        self.core(arm_index).along(found)
    }

    /// The core of an arm, which gives its temperatures without the ladder.
    pub fn core(&self, arm_index: usize) -> Core {
        let cells = &self.network.arms[arm_index];
        let places = cells.grid.places_m.windows(2);
        let middles = places.map(|pair| 0.5 * (pair[0] + pair[1]));
        let first = cells.numbers.iter().filter_map(|row| row[0]);
        Core {
            cells: middles.zip(first).collect(),
        }
    }

    /// Temperatures along the outside of an arm: place, m, and °C.
    pub fn along_outside(&self, found: &Temperatures, arm_index: usize) -> Vec<(f64, f64)> {
        self.network
            .outside(arm_index, &self.star.arms[arm_index], &found.degc)
    }

    /// Outside radius along an arm: place and radius, m.
    pub fn outside_radii_m(&self, arm_index: usize) -> Vec<(f64, f64)> {
        let (cells, arm) = (&self.network.arms[arm_index], &self.star.arms[arm_index]);
        let places = cells.grid.places_m.windows(2).zip(&cells.grid.slice_of);
        places
            .map(|(pair, slice)| {
                let rings = arm.slices[*slice].rings.iter();
                let outside = rings.fold(0.0, |most, ring| f64::max(most, ring.outside_m));
                (0.5 * (pair[0] + pair[1]), outside)
            })
            .collect()
    }

    /// Hottest place on the inside of all watched rings: arm, place along it in m, °C; a watched core counts with its hottest cell.
    pub fn hottest_watched(&self, found: &Temperatures) -> Option<(usize, f64, f64)> {
        self.hottest(found)
            .map(|(arm, place, out)| (arm, place, out.of(&found.degc)))
    }

    /// Hottest place on the inside of the watched rings of one arm: place along it in m, °C.
    pub fn hottest_watched_of(&self, found: &Temperatures, arm_index: usize) -> Option<(f64, f64)> {
        let watched = self.watched.get(arm_index)?.iter();
        let places = watched.map(|(place, out)| (*place, out.of(&found.degc)));
        places.max_by(|a, b| a.1.total_cmp(&b.1))
    }

    fn hottest(&self, found: &Temperatures) -> Option<(usize, f64, Out)> {
        let arms = self.watched.iter().enumerate();
        let places = arms.flat_map(|(index, watched)| {
            let watched = watched.iter();
            watched.map(move |(place, out)| (index, *place, *out))
        });
        places.max_by(|a, b| a.2.of(&found.degc).total_cmp(&b.2.of(&found.degc)))
    }

    fn middle(&self) -> Out {
        let first = || self.network.arms[0].numbers[0][0].unwrap_or_default();
        Out::cell(self.network.hub.unwrap_or_else(first))
    }

    /// Temperature of the core at z = 0, or of the hub if several arms meet, °C.
    pub fn middle_degc(&self, found: &Temperatures) -> f64 {
        self.middle().of(&found.degc)
    }

    /// The two temperatures of a reduced ladder: at z = 0, and at the watched place that is hottest in `found`.
    pub(super) fn outs(&self, found: &Temperatures) -> [Out; 2] {
        let hottest = self.hottest(found).map_or(self.middle(), |(_, _, out)| out);
        [self.middle(), hottest]
    }

    /// Response of G + s C to a source, or to several, one after another, K.
    pub(super) fn response(
        &mut self,
        per_s: f64,
        source_w: &[f64],
    ) -> Result<Vec<f64>, LadderError> {
        let values = self.values(1.0, |cell| {
            self.diagonal[cell] + per_s * self.network.capacity[cell]
        });
        let mut answer = source_w.to_vec();
        let factor = self
            .cholesky
            .factorise(&values)
            .map_err(|_| HeatError::NoCooling)?;
        factor.solve(&mut answer)?;
        Ok(answer)
    }

    /// Growth of the losses with the temperature, W/K, cell by cell.
    pub(super) fn growths(&self, currents_a: &[f64]) -> Vec<f64> {
        self.network.heating(currents_a).1
    }

    /// Response of G + s C, less the growth of losses, to one source or several, one after another, K.
    pub(super) fn loaded_response(
        &mut self,
        per_s: f64,
        growth: &[f64],
        source_w: &[f64],
    ) -> Result<Vec<f64>, LadderError> {
        let values = self.values(1.0, |cell| {
            self.diagonal[cell] + per_s * self.network.capacity[cell] - growth[cell]
        });
        let mut answer = source_w.to_vec();
        let factor = self
            .cholesky
            .factorise(&values)
            .map_err(|_| HeatError::Runaway)?;
        factor.solve(&mut answer)?;
        Ok(answer)
    }

    /// Places along the core of an arm, m, with their temperatures.
    pub(super) fn core_outs(&self, arm_index: usize) -> Vec<(f64, Out)> {
        let cells = self.core(arm_index).cells.into_iter();
        cells
            .map(|(place, cell)| (place, Out::cell(cell)))
            .collect()
    }

    /// Watched places of an arm, m, with their temperatures.
    pub(super) fn watched_outs(&self, arm_index: usize) -> Vec<(f64, Out)> {
        self.watched[arm_index].clone()
    }

    /// G x, W.
    pub(super) fn outflow(&self, degc: &[f64]) -> Vec<f64> {
        self.network.outflow(&self.diagonal, degc)
    }

    /// Contributions to the temperatures of cores, each at the cell of an arm that is nearest to a place along it, m.
    ///
    /// Losses have their values at these temperatures; so all contributions add up, in any order.
    ///
    /// # Source
    /// closed form: superposition.
    /// The network is symmetric, so one response to 1 W at the place weights every source.
    ///
    /// # Errors
    /// The same errors as [`Ladder::steady`].
    pub fn origins(
        &mut self,
        found: &Temperatures,
        currents_a: &[f64],
        places: &[(usize, f64)],
    ) -> Result<Vec<Origins>, LadderError> {
        self.check(currents_a)?;
        let n = self.network.n;
        let mut one_w = vec![0.0; n * places.len()];
        for (column, (arm_index, place_m)) in one_w.chunks_mut(n).zip(places) {
            let cells = self.core(*arm_index).cells;
            let off = |(place, _): &(f64, usize)| (place - place_m).abs();
            let nearest = cells.iter().min_by(|a, b| off(a).total_cmp(&off(b)));
            column[nearest.map_or(0, |(_, cell)| *cell)] = 1.0;
        }
        let weights = self.response(0.0, &one_w)?;
        let each = weights.chunks(n);
        Ok(each
            .map(|weights| self.origins_by(weights, found, currents_a))
            .collect())
    }

    fn origins_by(&self, weights: &[f64], found: &Temperatures, currents_a: &[f64]) -> Origins {
        let heats = self.network.sources.iter().map(|source| Origin {
            arm: source.arm,
            place_m: source.place_m,
            rise_k: weights[source.cell] * self.network.loss_w(source, currents_a, found),
        });
        let films = self.network.films.iter();
        Origins {
            heats: heats.collect(),
            surroundings_degc: films
                .map(|(cell, conductance, ambient)| weights[*cell] * conductance * ambient)
                .sum(),
        }
    }

    /// Multiplies the Joule losses of an arm up to a place along it, m: a worse contact, without a new ladder.
    ///
    /// A factor that is a power of two is undone exactly by its reciprocal.
    pub fn times_loss(&mut self, arm_index: usize, until_m: f64, ratio: f64) {
        for source in &mut self.network.sources {
            if source.arm == Some(arm_index) && source.place_m < until_m {
                source.at20_ohm *= ratio;
            }
        }
    }

    /// Heat that leaves through all films, W.
    pub fn given_off_w(&self, found: &Temperatures) -> f64 {
        let each = self.network.films.iter();
        each.map(|(cell, conductance, ambient)| conductance * (found.degc[*cell] - ambient))
            .sum()
    }

    /// Loss of all currents, W.
    pub fn loss_w(&self, found: &Temperatures, currents_a: &[f64]) -> f64 {
        let (load, gain) = self.network.heating(currents_a);
        let each = load.iter().zip(&gain).zip(&found.degc);
        each.map(|((at_0, gain), degc)| at_0 + gain * degc).sum()
    }
}

/// Watched places of each arm, with their temperatures.
fn watched(star: &Star, network: &Network) -> Vec<Vec<(f64, Out)>> {
    let arms = star.arms.iter().enumerate();
    arms.map(|(index, arm)| network.watched(index, arm))
        .collect()
}

/// A ladder with its currents, as a function of time.
struct Driven<'l> {
    ladder: &'l mut Ladder,
    load: Vec<f64>,
    gain: Vec<f64>,
}

impl Flow for Driven<'_> {
    fn with_step<T>(
        &mut self,
        step_s: f64,
        work: impl FnOnce(
            &dyn Fn(&[f64]) -> Vec<f64>,
            &dyn Fn(&mut [f64]) -> Result<(), SparseError>,
        ) -> Result<T, SparseError>,
    ) -> Result<T, HeatError> {
        let ladder = &mut *self.ladder;
        let (load, gain) = (&self.load, &self.gain);
        let values = ladder.values(step_s, |cell| {
            step_s * (ladder.diagonal[cell] - gain[cell]) + ladder.network.capacity[cell]
        });
        let (network, diagonal) = (&ladder.network, &ladder.diagonal);
        let factor = ladder
            .cholesky
            .factorise(&values)
            .map_err(HeatError::Sparse)?;
        let surplus = |degc: &[f64]| -> Vec<f64> {
            let mut out = network.outflow(diagonal, degc);
            for (cell, out) in out.iter_mut().enumerate() {
                *out = load[cell] + gain[cell] * degc[cell] - *out;
            }
            out
        };
        work(&surplus, &|right| factor.solve(right)).map_err(HeatError::Sparse)
    }
}
