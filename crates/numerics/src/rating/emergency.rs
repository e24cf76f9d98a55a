//! Emergency: a current above the continuous rating for a limited time, after an earlier load.
//!
//! Source: iec_60853, recalled; `docs/theory/rating.md`.

use super::error::RatingError;
use super::steady::{Circuit, Steady};
use super::transient::Transient;

/// Highest conductor temperature of the search, °C.
const GREATEST_DEGC: f64 = 1000.0;
/// Greatest number of bisections: more than a float has bits.
const N_HALVINGS: usize = 200;
/// Shortest time of the search, s.
const LEAST_S: f64 = 1e-3;
/// Longest time of the search, s: three hundred thousand years.
const GREATEST_S: f64 = 1e13;

/// Temperature rise of the conductor with its change of resistance, K: θ/(1 + a (θ∞ − θ)), a = 1/(B + θ0).
///
/// θ, `rise_k`, and θ∞, `steady_k`: after a time and in the steady state, both with the steady-state resistance, K · B, `zero_degc`: °C below 0 at which the resistance would vanish · θ0, `before_degc`: temperature at the beginning, °C.
///
/// # Assumes
/// There was no current before.
///
/// # Source
/// iec_60853, memory.
/// This equals a constant resistance at the temperature that is reached at the end; our tests show it.
///
/// ```
/// use jointwright_numerics::rating::emergency::corrected_rise_k;
/// let early = corrected_rise_k(10.0, 60.0, 234.5, 25.0);
/// assert!((early - 10.0 / (1.0 + 50.0 / 259.5)).abs() < 1e-12);
/// assert_eq!(corrected_rise_k(60.0, 60.0, 234.5, 25.0), 60.0);
/// ```
pub fn corrected_rise_k(rise_k: f64, steady_k: f64, zero_degc: f64, before_degc: f64) -> f64 {
    rise_k / (1.0 + (steady_k - rise_k) / (zero_degc + before_degc))
}

/// Time for which a current may last.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Lasts {
    /// Without limit: the temperature is not reached.
    Always,
    /// Until the temperature is reached, s.
    For {
        /// Time, s.
        time_s: f64,
    },
}

/// A circuit with one load for a long time, followed by another load.
#[derive(Clone, Debug, PartialEq)]
pub struct Emergency<'a> {
    circuit: &'a Circuit,
    transient: &'a Transient,
    before: Steady,
}

impl<'a> Emergency<'a> {
    /// Starts from a steady load.
    ///
    /// # Errors
    /// The errors of [`Circuit::at_current()`] for the earlier load.
    ///
    /// See [`Emergency::current_a()`] for an example.
    pub fn after(
        circuit: &'a Circuit,
        transient: &'a Transient,
        before_a: f64,
    ) -> Result<Emergency<'a>, RatingError> {
        Ok(Emergency {
            circuit,
            transient,
            before: circuit.at_current(before_a)?,
        })
    }

    /// The earlier steady state.
    ///
    /// See [`Emergency::current_a()`] for an example.
    pub fn before(&self) -> &Steady {
        &self.before
    }

    fn resistance_ohm_per_m(&self, degc: f64) -> Result<f64, RatingError> {
        let frequency_hz = self.circuit.frequency_hz;
        self.circuit
            .conductor
            .resistance_ohm_per_m(degc, frequency_hz)
    }

    fn room_k(&self, to_degc: f64) -> Result<f64, RatingError> {
        let before_degc = self.before.conductor_degc();
        let room = to_degc - before_degc;
        if room.is_nan() || to_degc > GREATEST_DEGC {
            Err(RatingError::NoNumber)
        } else if room <= 0.0 {
            Err(RatingError::AlreadyWarm {
                before_degc,
                to_degc,
            })
        } else {
            Ok(room)
        }
    }

    /// Current that brings the conductor to a temperature within a time, A.
    ///
    /// I² = (I1² R1 + (θ − θ1)/Z(t))/R(θ); I1, R1, θ1 belong to the load before, and Z(t) is [`Transient::rise_k_m_per_w()`].
    ///
    /// # Assumes
    /// The resistance has its final value throughout.
    /// Shield and air stay as they were given to the [`Transient`]: give their final values.
    ///
    /// # Errors
    /// [`RatingError::AlreadyWarm`], [`RatingError::TooShort`], [`RatingError::BeyondProximity`], [`RatingError::NoNumber`].
    ///
    /// # Source
    /// iec_60853, memory: its part 2, there in shares of the steady current.
    ///
    /// ```
    /// use jointwright_numerics::rating::emergency::{Emergency, Lasts};
    /// use jointwright_numerics::rating::transient::{Body, Transient, Wall};
    /// use jointwright_numerics::rating::{Circuit, Conductor, Outside};
    /// let wall = |inside_m, outside_m, resistance_k_m_per_w| Wall {
    ///     inside_m,
    ///     outside_m,
    ///     resistance_k_m_per_w,
    ///     heat_j_per_m3_k: 2.4e6,
    /// };
    /// let body = Body {
    ///     conductor_j_per_m_k: 640.0,
    ///     insulation: wall(0.0207, 0.0335, 0.3),
    ///     shield_j_per_m_k: 100.0,
    ///     jacket: Some(wall(0.0353, 0.0395, 0.1)),
    ///     losses_ratio: 1.0,
    ///     outside_k_m_per_w: 0.7,
    /// };
    /// let circuit = Circuit {
    ///     frequency_hz: 60.0,
    ///     conductor: Conductor {
    ///         resistance_20_ohm_per_m: 1e-4,
    ///         coefficient_20_per_k: 0.00393,
    ///         skin_ratio: 0.0,
    ///         proximity: None,
    ///     },
    ///     shield: None,
    ///     dielectric_w_per_m: 0.0,
    ///     inner_k_m_per_w: vec![0.3],
    ///     outer_k_m_per_w: vec![0.1],
    ///     outside: Outside::Soil { resistance_k_m_per_w: 0.7 },
    ///     ambient_degc: 40.0,
    /// };
    /// let transient = Transient::of(&body, None)?;
    /// let emergency = Emergency::after(&circuit, &transient, 300.0)?;
    /// assert!(emergency.before().conductor_degc() < 60.0);
    /// let amperes = emergency.current_a(130.0, 3600.0)?;
    /// assert!((emergency.temperature_degc(amperes, 3600.0)? - 130.0).abs() < 1e-9);
    /// let Lasts::For { time_s } = emergency.lasts(amperes, 130.0)? else {
    ///     panic!("130 °C are reached");
    /// };
    /// assert!((time_s - 3600.0).abs() < 1e-3);
    /// assert_eq!(emergency.lasts(310.0, 130.0)?, Lasts::Always);
    /// # Ok::<(), jointwright_numerics::rating::RatingError>(())
    /// ```
    pub fn current_a(&self, to_degc: f64, time_s: f64) -> Result<f64, RatingError> {
        let more = self.room_k(to_degc)? / self.transient.rise_k_m_per_w(time_s)?;
        let resistance = self.resistance_ohm_per_m(to_degc)?;
        let current = ((self.before.conductor_w_per_m + more) / resistance).sqrt();
        if current.is_finite() {
            Ok(current)
        } else {
            Err(RatingError::NoNumber)
        }
    }

    /// Temperature of the conductor at a time after the current changed, °C.
    ///
    /// θ = θ1 + (I² R(θ) − I1² R1) Z(t), by bisection.
    ///
    /// # Errors
    /// [`RatingError::Runaway`], [`RatingError::TooShort`], [`RatingError::BeyondProximity`], [`RatingError::NoNumber`].
    ///
    /// # Source
    /// iec_60853, memory; see [`corrected_rise_k()`].
    ///
    /// See [`Emergency::current_a()`] for an example.
    pub fn temperature_degc(&self, current_a: f64, time_s: f64) -> Result<f64, RatingError> {
        if !(current_a >= 0.0 && current_a.is_finite()) {
            return Err(RatingError::NoNumber);
        }
        let response = self.transient.rise_k_m_per_w(time_s)?;
        let (before_degc, before) = (self.before.conductor_degc(), self.before.conductor_w_per_m);
        // The lowest temperature that a loss of 0 or more can give.
        let mut low = before_degc - before * response;
        // The coldest conductor has the greatest argument; if that is in range, all are.
        self.resistance_ohm_per_m(low)?;
        let is_too_cold = |degc: f64| {
            self.resistance_ohm_per_m(degc).is_ok_and(|resistance| {
                let loss = current_a * current_a * resistance;
                degc < before_degc + (loss - before) * response
            })
        };
        if is_too_cold(GREATEST_DEGC) {
            return Err(RatingError::Runaway {
                current_a,
                greatest_degc: GREATEST_DEGC,
            });
        }
        let mut high = GREATEST_DEGC;
        for _ in 0..N_HALVINGS {
            let middle = low + (high - low) / 2.0;
            if middle <= low || middle >= high {
                break;
            }
            if is_too_cold(middle) {
                low = middle;
            } else {
                high = middle;
            }
        }
        Ok(low)
    }

    /// Time for which a current may last until the conductor reaches a temperature.
    ///
    /// # Errors
    /// [`RatingError::AlreadyWarm`]; [`RatingError::TooShort`] if it is reached before two cells represent the cable; [`RatingError::BeyondProximity`], [`RatingError::NoNumber`].
    ///
    /// # Source
    /// iec_60853, memory, solved for the time.
    ///
    /// See [`Emergency::current_a()`] for an example.
    pub fn lasts(&self, current_a: f64, to_degc: f64) -> Result<Lasts, RatingError> {
        if !(current_a >= 0.0 && current_a.is_finite()) {
            return Err(RatingError::NoNumber);
        }
        let room = self.room_k(to_degc)?;
        let loss = current_a * current_a * self.resistance_ohm_per_m(to_degc)?;
        let needed = room / (loss - self.before.conductor_w_per_m).max(0.0);
        let is_reached = |time_s: f64| -> Result<bool, RatingError> {
            Ok(self.transient.rise_k_m_per_w(time_s)? >= needed)
        };
        let (mut low, mut high) = (self.transient.least_s().max(LEAST_S), GREATEST_S);
        if !is_reached(high)? {
            return Ok(Lasts::Always);
        }
        if is_reached(low)? {
            return Err(RatingError::TooShort {
                time_s: low,
                least_s: low,
            });
        }
        for _ in 0..N_HALVINGS {
            // Bisection of the logarithm, because times differ by powers of ten.
            let middle = (low * high).sqrt();
            if middle <= low || middle >= high {
                break;
            }
            if is_reached(middle)? {
                high = middle;
            } else {
                low = middle;
            }
        }
        Ok(Lasts::For { time_s: low })
    }
}
