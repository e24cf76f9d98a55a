//! Shape: slices, rings, arms, and the hub at which arms meet.

use crate::fem::sparse::SparseError;
use crate::heat::{HeatError, Stuff};

/// Loss of a ring for each metre of its slice: I² R20 (1 + α (T − 20 °C)) + q.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Loss {
    /// R20 for the current of the arm, Ω/m, whatever share of the current the ring itself carries.
    pub at20_ohm_per_m: f64,
    /// α, 1/K.
    pub alpha_per_k: f64,
    /// q, W/m, independent of the current.
    pub constant_w_per_m: f64,
}

/// A ring of one material about the axis; the first ring of a slice is its core and begins at the axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ring {
    /// Outside radius, m.
    pub outside_m: f64,
    /// Thermal conductivity and heat capacity.
    pub stuff: Stuff,
    /// Loss, or `None` if the ring has none.
    pub loss: Option<Loss>,
    /// Whether the hottest place on its inside is wanted.
    pub is_watched: bool,
}

/// A length along which nothing changes.
#[derive(Clone, Debug, PartialEq)]
pub struct Slice {
    /// Length, m.
    pub length_m: f64,
    /// Rings from the axis outward.
    pub rings: Vec<Ring>,
    /// Heat transfer coefficient of its outside, W/(m² K).
    pub film_w_per_m2k: f64,
    /// Temperature beyond the film, °C.
    pub ambient_degc: f64,
}

impl Slice {
    /// Outside radius, m.
    pub fn outside_m(&self) -> f64 {
        self.rings.last().map_or(0.0, |ring| ring.outside_m)
    }
}

/// Slices from z = 0 on; no heat leaves through the far end.
#[derive(Clone, Debug, PartialEq)]
pub struct Arm {
    /// Slices.
    pub slices: Vec<Slice>,
}

impl Arm {
    /// Length, m.
    pub fn length_m(&self) -> f64 {
        self.slices.iter().map(|slice| slice.length_m).sum()
    }

    /// Checks the shape.
    ///
    /// # Errors
    /// [`LadderError::Shape`].
    pub(super) fn check(&self) -> Result<(), LadderError> {
        let wrong = |index: usize, what: &'static str| Err(LadderError::Shape { index, what });
        if self.slices.is_empty() {
            return wrong(0, "there is none");
        }
        for (index, slice) in self.slices.iter().enumerate() {
            if !(slice.length_m > 0.0 && slice.length_m.is_finite()) {
                return wrong(index, "its length is not above 0");
            }
            if slice.rings.is_empty() {
                return wrong(index, "it has no rings");
            }
            let mut inside = 0.0;
            for ring in &slice.rings {
                if !(ring.outside_m > inside && ring.outside_m.is_finite()) {
                    return wrong(index, "its radii do not grow outward");
                }
                inside = ring.outside_m;
                let stuff = [
                    ring.stuff.conductivity_w_per_mk,
                    ring.stuff.capacity_j_per_m3k,
                ];
                if !stuff.iter().all(|value| *value > 0.0 && value.is_finite()) {
                    return wrong(index, "a conductivity or a capacity is not above 0");
                }
                let loss = ring.loss.map_or([0.0; 3], |loss| {
                    [loss.at20_ohm_per_m, loss.alpha_per_k, loss.constant_w_per_m]
                });
                if !loss.iter().all(|value| *value >= 0.0 && value.is_finite()) {
                    return wrong(index, "a loss is below 0");
                }
            }
            let is_cooled = slice.film_w_per_m2k >= 0.0 && slice.film_w_per_m2k.is_finite();
            if !is_cooled || !slice.ambient_degc.is_finite() {
                return wrong(index, "its film or what lies beyond it is no number");
            }
        }
        Ok(())
    }
}

/// Hub where arms meet: one temperature, which the cores of all arms share at z = 0.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Hub {
    /// Heat capacity, J/K.
    pub capacity_j_per_k: f64,
    /// Its own loss at 20 °C, W for each A² of the mean square of the arms' currents.
    pub at20_ohm: f64,
    /// α of that loss, 1/K.
    pub alpha_per_k: f64,
    /// Conductance to the surroundings, W/K.
    pub film_w_per_k: f64,
    /// Temperature of the surroundings, °C.
    pub ambient_degc: f64,
}

/// Arms that meet; a single arm has a plane of symmetry at z = 0.
#[derive(Clone, Debug, PartialEq)]
pub struct Star {
    /// Arms.
    pub arms: Vec<Arm>,
    /// Hub where they meet; ignored for a single arm.
    pub hub: Hub,
}

/// Reason why there is no ladder, or no temperature.
#[derive(Debug, thiserror::Error)]
pub enum LadderError {
    /// An invalid slice.
    #[error("slice {index}: {what}")]
    Shape {
        /// Its index in its arm.
        index: usize,
        /// Its fault.
        what: &'static str,
    },
    /// The number of currents differs from the number of arms.
    #[error("{n_currents} currents for {n_arms} arms")]
    Currents {
        /// Number of currents.
        n_currents: usize,
        /// Number of arms.
        n_arms: usize,
    },
    /// Nothing cools it, its losses outgrow the cooling, or it is too large.
    #[error(transparent)]
    Heat(#[from] HeatError),
    /// The equations cannot be solved.
    #[error("the equations cannot be set up")]
    Sparse(#[from] SparseError),
}
