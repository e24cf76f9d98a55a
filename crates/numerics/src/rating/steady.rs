//! Steady: the current that brings a conductor to a temperature, and the temperatures that a current causes.
//!
//! From the conductor outward, every temperature follows from the one before.
//! The unknown is the current, or the conductor's temperature, for which the last temperature is that of the surroundings.
//! Shield temperature, shield loss and air film are therefore solved together, without a first guess.
//!
//! Source: iec_60287_1_1, clause 1.4; `docs/theory/rating.md`.

use super::conductor::Conductor;
use super::error::RatingError;
use super::shield::Shield;
use super::thermal::{Filling, StillAir};

/// Highest conductor temperature of the search, °C.
const GREATEST_DEGC: f64 = 1000.0;
/// Greatest number of bisections: more than a float has bits.
const N_HALVINGS: usize = 200;
/// Rounds for the mean temperature of a duct's filling; each leaves a small share of the previous error.
const N_ROUNDS: usize = 40;

/// Surroundings of the jacket.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Outside {
    /// T4, one thermal resistance for the heat of each cable, K·m/W.
    Soil {
        /// T4, K·m/W.
        resistance_k_m_per_w: f64,
    },
    /// Soil that dries around the cable where it exceeds a critical temperature, in two zones.
    DryingSoil {
        /// T4, one thermal resistance for the heat of each cable in moist soil, K·m/W.
        moist_k_m_per_w: f64,
        /// v, ratio of the resistivities of dry and moist soil, 1 or more.
        dry_ratio: f64,
        /// Δθx, temperature of the boundary of the dry zone above the surroundings, K.
        critical_rise_k: f64,
    },
    /// One or several cables in a duct.
    Duct {
        /// Filling of the duct.
        filling: Filling,
        /// Number of cables in it, with equal losses.
        n_cables: usize,
        /// Diameter of the circle that represents all of them, m.
        group_m: f64,
        /// Thermal resistance of duct wall and soil, for all heat of the duct, K·m/W.
        beyond_k_m_per_w: f64,
    },
    /// One or several cables in a conduit in free air.
    Conduit {
        /// Filling of the conduit.
        filling: Filling,
        /// Number of cables in it, with equal losses.
        n_cables: usize,
        /// Diameter of the circle that represents all of them, m.
        group_m: f64,
        /// Film of the conduit's surface, for the heat of all cables.
        film: StillAir,
        /// Outside diameter of the conduit, m.
        outside_m: f64,
    },
    /// Free air.
    Air {
        /// Film of the surface of each cable.
        film: StillAir,
        /// Diameter over all, m.
        outside_m: f64,
    },
}

/// Three phases of one cable, with their surroundings.
#[derive(Clone, Debug, PartialEq)]
pub struct Circuit {
    /// Frequency, Hz.
    pub frequency_hz: f64,
    /// Conductor of each phase.
    pub conductor: Conductor,
    /// Metal around each phase, if any.
    pub shield: Option<Shield>,
    /// Wd, dielectric loss of each phase, W/m.
    pub dielectric_w_per_m: f64,
    /// Layers from conductor to shield, in order, K·m/W; their sum is T1.
    pub inner_k_m_per_w: Vec<f64>,
    /// Layers over the shield, in order, K·m/W; their sum is T3.
    pub outer_k_m_per_w: Vec<f64>,
    /// Surroundings of the jacket.
    pub outside: Outside,
    /// Temperature of the surroundings, °C.
    pub ambient_degc: f64,
}

/// A circuit in steady state.
#[derive(Clone, Debug, PartialEq)]
pub struct Steady {
    /// Current of each phase, A.
    pub current_a: f64,
    /// Resistance of the conductor to alternating current, Ω/m.
    pub resistance_ohm_per_m: f64,
    /// Loss in the conductor, W/m.
    pub conductor_w_per_m: f64,
    /// λ1, ratio of the loss in the shield to the loss in the conductor.
    pub shield_ratio: f64,
    /// Loss in the shield, W/m.
    pub shield_w_per_m: f64,
    /// Temperatures of the conductor and of the outside of each inner layer, °C; the last one is the shield's.
    pub inner_degc: Vec<f64>,
    /// Temperatures of the outside of each layer over the shield, °C; the last one is the surface's.
    pub outer_degc: Vec<f64>,
}

impl Steady {
    /// Temperature of the conductor, °C.
    ///
    /// See [`Circuit::at_current()`] for an example.
    pub fn conductor_degc(&self) -> f64 {
        self.inner_degc.first().copied().unwrap_or(f64::NAN)
    }

    /// Temperature of the shield, °C.
    ///
    /// See [`Circuit::at_temperature()`] for an example.
    pub fn shield_degc(&self) -> f64 {
        self.inner_degc.last().copied().unwrap_or(f64::NAN)
    }

    /// Temperature of the surface, °C.
    ///
    /// See [`Circuit::at_temperature()`] for an example.
    pub fn surface_degc(&self) -> f64 {
        let shield = self.shield_degc();
        self.outer_degc.last().copied().unwrap_or(shield)
    }
}

impl Outside {
    /// Whether resistances are 0 or more, diameters are positive, and all values are finite.
    fn is_given(&self) -> bool {
        let resists = |resistance: f64| resistance >= 0.0 && resistance.is_finite();
        let is_long = |length: f64| length > 0.0 && length.is_finite();
        match *self {
            Outside::Soil {
                resistance_k_m_per_w,
            } => resists(resistance_k_m_per_w),
            Outside::DryingSoil {
                moist_k_m_per_w,
                dry_ratio,
                critical_rise_k,
            } => resists(moist_k_m_per_w) && resists(critical_rise_k) && resists(dry_ratio - 1.0),
            Outside::Duct {
                filling,
                group_m,
                beyond_k_m_per_w,
                ..
            } => filling.is_given() && is_long(group_m) && resists(beyond_k_m_per_w),
            Outside::Conduit {
                filling,
                group_m,
                film,
                outside_m,
                ..
            } => filling.is_given() && is_long(group_m) && film.is_given() && is_long(outside_m),
            Outside::Air { film, outside_m } => film.is_given() && is_long(outside_m),
        }
    }

    /// Temperature of the surface above the surroundings, K.
    fn rise_k(&self, heat_w_per_m: f64, surface_degc: f64, ambient_degc: f64) -> f64 {
        match *self {
            Outside::Soil {
                resistance_k_m_per_w,
            } => heat_w_per_m * resistance_k_m_per_w,
            Outside::DryingSoil {
                moist_k_m_per_w,
                dry_ratio,
                critical_rise_k,
            } => {
                // v q T4 − (v − 1) Δθx, once the surface reaches Δθx.
                let moist = heat_w_per_m * moist_k_m_per_w;
                moist + (dry_ratio - 1.0) * (moist - critical_rise_k).max(0.0)
            }
            Outside::Duct {
                ref filling,
                n_cables,
                group_m,
                beyond_k_m_per_w,
            } => {
                let heat = heat_w_per_m * n_cables as f64;
                across_k(filling, group_m, heat, surface_degc) + heat * beyond_k_m_per_w
            }
            Outside::Conduit {
                ref filling,
                n_cables,
                group_m,
                film,
                outside_m,
            } => {
                let heat = heat_w_per_m * n_cables as f64;
                across_k(filling, group_m, heat, surface_degc)
                    + film.rise_k(heat, outside_m, ambient_degc)
            }
            Outside::Air { film, outside_m } => film.rise_k(heat_w_per_m, outside_m, ambient_degc),
        }
    }
}

/// Temperature difference across the filling of a duct at its own mean temperature, K.
fn across_k(filling: &Filling, group_m: f64, heat_w_per_m: f64, surface_degc: f64) -> f64 {
    let at =
        |mean_degc: f64| heat_w_per_m * filling.resistance_k_m_per_w(group_m, mean_degc.max(0.0));
    let mut mean_degc = surface_degc;
    for _ in 0..N_ROUNDS {
        mean_degc = surface_degc - at(mean_degc) / 2.0;
    }
    at(mean_degc)
}

impl Circuit {
    /// Finds the current that brings the conductor to a temperature, with all temperatures and losses.
    ///
    /// I² = (Δθ − Wd (T1/2 + T3 + T4)) / (R (T1 + (1 + λ1)(T3 + T4))), with λ1 at the shield's temperature.
    /// In soil that dries, v T4 replaces T4, and the numerator grows by (v − 1) Δθx.
    ///
    /// # Assumes
    /// Half the dielectric loss passes through the inner layers.
    /// One cable represents three: the one with the greatest loss or the warmest place.
    ///
    /// # Errors
    /// [`RatingError::NoRoom`], [`RatingError::NoResistance`], [`RatingError::BeyondProximity`], [`RatingError::NoNumber`].
    ///
    /// # Source
    /// iec_60287_1_1, clause 1.4.1.1; cigre_tb880, case 0-1.
    ///
    /// ```
    /// use jointwright_numerics::rating::{Circuit, Conductor, Outside};
    /// let circuit = Circuit {
    ///     frequency_hz: 50.0,
    ///     conductor: Conductor {
    ///         resistance_20_ohm_per_m: 1e-4,
    ///         coefficient_20_per_k: 0.00393,
    ///         skin_ratio: 0.0,
    ///         proximity: None,
    ///     },
    ///     shield: None,
    ///     dielectric_w_per_m: 0.0,
    ///     inner_k_m_per_w: vec![0.4],
    ///     outer_k_m_per_w: vec![0.1],
    ///     outside: Outside::Soil { resistance_k_m_per_w: 1.5 },
    ///     ambient_degc: 20.0,
    /// };
    /// let steady = circuit.at_temperature(90.0)?;
    /// // 70 K over 2 K·m/W is 35 W/m; R = 1.2751e-4 Ω/m.
    /// assert!((steady.current_a - (35.0 / 1.2751e-4_f64).sqrt()).abs() < 1e-9);
    /// assert!((steady.shield_degc() - 76.0).abs() < 1e-9);
    /// assert!((steady.surface_degc() - 72.5).abs() < 1e-9);
    /// # Ok::<(), jointwright_numerics::rating::RatingError>(())
    /// ```
    pub fn at_temperature(&self, conductor_degc: f64) -> Result<Steady, RatingError> {
        self.looked_over()?;
        let resistance = self
            .conductor
            .resistance_ohm_per_m(conductor_degc, self.frequency_hz)?;
        if !(resistance > 0.0 && conductor_degc.is_finite()) {
            return Err(RatingError::NoNumber);
        }
        let left_k = |current_a: f64| {
            let (steady, last) = self.outward(current_a, conductor_degc, resistance);
            (steady, last - self.ambient_degc)
        };
        let (_, room) = left_k(0.0);
        if room <= 0.0 {
            return Err(RatingError::NoRoom {
                conductor_degc: conductor_degc - room,
            });
        }
        // Doubled until the heat can no longer leave.
        let mut high = 1.0;
        while left_k(high).1 > 0.0 {
            high *= 2.0;
            if high > 1e9 {
                return Err(RatingError::NoResistance);
            }
        }
        let current = halved(0.0, high, |current| left_k(current).1 > 0.0);
        finite(left_k(current).0)
    }

    /// Finds the temperatures that a current causes.
    ///
    /// # Errors
    /// [`RatingError::Runaway`] if the losses outgrow the cooling (thermal runaway); [`RatingError::BeyondProximity`], [`RatingError::NoNumber`].
    ///
    /// # Source
    /// iec_60287_1_1, clause 1.4.1.1, solved for the temperature.
    ///
    /// ```
    /// use jointwright_numerics::rating::{Circuit, Conductor, Outside};
    /// let circuit = Circuit {
    ///     frequency_hz: 50.0,
    ///     conductor: Conductor {
    ///         resistance_20_ohm_per_m: 1e-4,
    ///         coefficient_20_per_k: 0.0,
    ///         skin_ratio: 0.0,
    ///         proximity: None,
    ///     },
    ///     shield: None,
    ///     dielectric_w_per_m: 0.0,
    ///     inner_k_m_per_w: vec![0.4],
    ///     outer_k_m_per_w: vec![0.1],
    ///     outside: Outside::Soil { resistance_k_m_per_w: 1.5 },
    ///     ambient_degc: 20.0,
    /// };
    /// let steady = circuit.at_current(500.0)?;
    /// assert!((steady.conductor_degc() - 70.0).abs() < 1e-9);
    /// # Ok::<(), jointwright_numerics::rating::RatingError>(())
    /// ```
    pub fn at_current(&self, current_a: f64) -> Result<Steady, RatingError> {
        self.looked_over()?;
        if !(current_a >= 0.0 && current_a.is_finite()) {
            return Err(RatingError::NoNumber);
        }
        let at = |conductor_degc: f64| -> Result<(Steady, f64), RatingError> {
            let resistance = self
                .conductor
                .resistance_ohm_per_m(conductor_degc, self.frequency_hz)?;
            Ok(self.outward(current_a, conductor_degc, resistance))
        };
        // The coldest conductor has the greatest argument; if that is in range, all are.
        at(self.ambient_degc)?;
        let is_too_cold =
            |degc: f64| at(degc).is_ok_and(|(_, last_degc)| last_degc < self.ambient_degc);
        if is_too_cold(GREATEST_DEGC) {
            return Err(RatingError::Runaway {
                current_a,
                greatest_degc: GREATEST_DEGC,
            });
        }
        let conductor = halved(self.ambient_degc, GREATEST_DEGC, is_too_cold);
        finite(at(conductor)?.0)
    }

    fn looked_over(&self) -> Result<(), RatingError> {
        let layers = self.inner_k_m_per_w.iter().chain(&self.outer_k_m_per_w);
        let are_layers = layers
            .clone()
            .all(|layer| *layer >= 0.0 && layer.is_finite());
        let is_place = self.ambient_degc.is_finite() && self.ambient_degc < GREATEST_DEGC;
        let is_loss = self.dielectric_w_per_m >= 0.0 && self.dielectric_w_per_m.is_finite();
        let is_wave = self.frequency_hz >= 0.0 && self.frequency_hz.is_finite();
        if are_layers && is_place && is_loss && is_wave && self.outside.is_given() {
            Ok(())
        } else {
            Err(RatingError::NoNumber)
        }
    }

    /// State of the circuit from the conductor outward, and the temperature at its outer end.
    fn outward(&self, current_a: f64, conductor_degc: f64, resistance: f64) -> (Steady, f64) {
        let conductor_loss = current_a * current_a * resistance;
        let mut degc = conductor_degc;
        let mut inner_degc = vec![degc];
        for layer in &self.inner_k_m_per_w {
            degc -= (conductor_loss + self.dielectric_w_per_m / 2.0) * layer;
            inner_degc.push(degc);
        }
        let shield_ratio = self
            .shield
            .as_ref()
            .map_or(0.0, |shield| shield.loss_ratio(resistance, degc));
        let shield_loss = shield_ratio * conductor_loss;
        let all = conductor_loss + shield_loss + self.dielectric_w_per_m;
        let mut outer_degc = Vec::with_capacity(self.outer_k_m_per_w.len());
        for layer in &self.outer_k_m_per_w {
            degc -= all * layer;
            outer_degc.push(degc);
        }
        let last = degc - self.outside.rise_k(all, degc, self.ambient_degc);
        let steady = Steady {
            current_a,
            resistance_ohm_per_m: resistance,
            conductor_w_per_m: conductor_loss,
            shield_ratio,
            shield_w_per_m: shield_loss,
            inner_degc,
            outer_degc,
        };
        (steady, last)
    }
}

/// Bisection: the point at which a condition that is true at `low` and false at `high` ceases to be true.
fn halved(mut low: f64, mut high: f64, holds: impl Fn(f64) -> bool) -> f64 {
    for _ in 0..N_HALVINGS {
        let middle = low + (high - low) / 2.0;
        if middle <= low || middle >= high {
            break;
        }
        if holds(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    low
}

fn finite(steady: Steady) -> Result<Steady, RatingError> {
    let degrees = steady.inner_degc.iter().chain(&steady.outer_degc);
    let are_degrees = degrees.clone().all(|degc| degc.is_finite());
    if are_degrees && steady.current_a.is_finite() && steady.shield_ratio.is_finite() {
        Ok(steady)
    } else {
        Err(RatingError::NoNumber)
    }
}
