//! Emergency: a current above the steady one, for a while, from a load before.
//!
//! Source: iec_60853, recalled; `docs/theory/rating.md`.

use super::error::RatingError;
use super::steady::{Circuit, Steady};
use super::transient::Transient;

/// Highest conductor temperature that is tried, °C.
const GREATEST_DEGC: f64 = 1000.0;
/// Halvings of an interval, more than a float has bits.
const N_HALVINGS: usize = 200;
/// Shortest time that is tried, s.
const LEAST_S: f64 = 1e-3;
/// Longest time that is tried, s: three hundred thousand years.
const GREATEST_S: f64 = 1e13;

/// Rise of the conductor with its change of resistance, K: θ/(1 + a (θ∞ − θ)), a = 1/(B + θ0).
///
/// θ, `rise_k`, and θ∞, `steady_k`: after a time and at last, both with the resistance at last, K · B, `zero_degc`: °C below 0 at which the resistance would vanish · θ0, `before_degc`: temperature at the beginning, °C.
///
/// # Assumes
/// No current before.
///
/// # Source
/// iec_60853, memory.
/// It is the same as to hold, all along, the resistance of the temperature that is reached at the end; our tests show it.
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

/// How long a current may last.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Lasts {
    /// The temperature is not reached.
    Always,
    /// Until it is reached, s.
    For {
        /// Time, s.
        time_s: f64,
    },
}

/// A circuit that has long carried one load, and then carries another.
#[derive(Clone, Debug, PartialEq)]
pub struct Emergency<'a> {
    circuit: &'a Circuit,
    transient: &'a Transient,
    before: Steady,
}

impl<'a> Emergency<'a> {
    /// After a steady load.
    ///
    /// # Errors
    /// What [`Circuit::at_current()`] says of the load before.
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

    /// The state before.
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

    /// Current that takes the conductor to a temperature within a time, A.
    ///
    /// I² = (I1² R1 + (θ − θ1)/Z(t))/R(θ), I1, R1, θ1 those of the load before, Z(t) of [`Transient::rise_k_m_per_w()`].
    ///
    /// # Assumes
    /// The resistance is that of the end all along; shield and air as they were given to the [`Transient`]: give them as they are at the end.
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

    /// Temperature of the conductor a time after the current was changed, °C.
    ///
    /// θ = θ1 + (I² R(θ) − I1² R1) Z(t), by halving.
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
        // The coldest that a loss of 0 or more leads to.
        let mut low = before_degc - before * response;
        // The coldest conductor has the largest argument; if that is in range, all are.
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

    /// How long a current may last until the conductor is at a temperature.
    ///
    /// # Errors
    /// [`RatingError::AlreadyWarm`]; [`RatingError::TooShort`] where it is reached before two cells stand for the cable; [`RatingError::BeyondProximity`], [`RatingError::NoNumber`].
    ///
    /// # Source
    /// iec_60853, memory, the other way round.
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
            // Halved by ratio, as times differ by powers of ten.
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
