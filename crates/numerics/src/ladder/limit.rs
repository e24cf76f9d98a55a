//! Limit: the load at which a ladder reaches a temperature, and the time that a greater load takes to do so.
//!
//! **Invariants.** The result keeps to the temperature: it is the cooler end of the last interval.

use super::run::Ladder;
use super::shape::LadderError;
use super::temperatures::Temperatures;
use crate::heat::HeatError;

/// Relative accuracy of the load or time found.
const CLOSE_RATIO: f64 = 1e-6;
/// Greatest load that is tried, as a multiple of the given one.
const LOAD_MOST_RATIO: f64 = 1e3;
/// First time that is tried, s; each further time is twice as long.
const FIRST_S: f64 = 60.0;

/// Spot whose temperature is wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spot {
    /// The core at z = 0, or the hub.
    Middle,
    /// The hottest place on the inside of all watched rings.
    Watched,
}

impl Ladder {
    /// Temperature at a spot, °C.
    pub fn at_spot_degc(&self, found: &Temperatures, spot: Spot) -> f64 {
        let watched = || self.hottest_watched(found).map(|(_, _, degc)| degc);
        match spot {
            Spot::Middle => self.middle_degc(found),
            Spot::Watched => watched().unwrap_or_else(|| self.middle_degc(found)),
        }
    }

    /// Steady load at which a spot reaches a temperature, as a multiple of the given currents.
    /// `None` if the spot is warmer without any load, or if no load heats it so far.
    ///
    /// # Accuracy
    /// 1e-6 of the load, never above the limit.
    ///
    /// # Errors
    /// The same errors as [`Ladder::steady`], except a runaway, which is above every limit.
    ///
    /// ```
    /// # use jointwright_numerics::heat::Stuff;
    /// # use jointwright_numerics::ladder::{Arm, Hub, Ladder, Loss, Ring, Slice, Spot, Star};
    /// # let stuff = Stuff { conductivity_w_per_mk: 385.0, capacity_j_per_m3k: 3.45e6 };
    /// # let loss = Loss { at20_ohm_per_m: 1e-3, alpha_per_k: 0.0, constant_w_per_m: 0.0 };
    /// # let core = Ring { outside_m: 0.01, stuff, loss: Some(loss), is_watched: false };
    /// # let slice = Slice { length_m: 1.0, rings: vec![core], film_w_per_m2k: 10.0, ambient_degc: 20.0 };
    /// # let star = Star { arms: vec![Arm { slices: vec![slice] }], hub: Hub::default() };
    /// let mut ladder = Ladder::new(star).unwrap();
    /// let steady = ladder.steady(&[100.0]).unwrap();
    /// let rise = ladder.middle_degc(&steady) - 20.0;
    /// // Without a change of resistance four times the rise takes twice the load.
    /// let load = ladder.load_to_degc(&[100.0], Spot::Middle, 20.0 + 4.0 * rise).unwrap();
    /// assert!((load.unwrap() - 2.0).abs() < 1e-5);
    /// ```
    pub fn load_to_degc(
        &mut self,
        currents_a: &[f64],
        spot: Spot,
        limit_degc: f64,
    ) -> Result<Option<f64>, LadderError> {
        let currents = |load: f64| currents_a.iter().map(|i| load * i).collect();
        let at_spot = |ladder: &Ladder, found: &Temperatures| ladder.at_spot_degc(found, spot);
        self.factor_to_degc(currents, at_spot, limit_degc, LOAD_MOST_RATIO)
    }

    /// Factor at which a temperature reaches a limit, with currents, A, that do not fall as it rises.
    /// `None` if the temperature is above the limit at 0, or below it up to the greatest factor.
    ///
    /// # Accuracy
    /// The same accuracy as [`Ladder::load_to_degc`].
    ///
    /// # Errors
    /// The same errors as [`Ladder::load_to_degc`].
    pub fn factor_to_degc(
        &mut self,
        currents_a: impl Fn(f64) -> Vec<f64>,
        degc: impl Fn(&Ladder, &Temperatures) -> f64,
        limit_degc: f64,
        greatest: f64,
    ) -> Result<Option<f64>, LadderError> {
        // Excess over the limit; infinite if the losses outgrow the cooling (thermal runaway).
        let excess = |factor: f64| -> Result<f64, LadderError> {
            match self.steady(&currents_a(factor)) {
                Ok(found) => Ok(degc(self, &found) - limit_degc),
                Err(LadderError::Heat(HeatError::Runaway)) => Ok(f64::INFINITY),
                Err(why) => Err(why),
            }
        };
        factor_to_limit(excess, greatest)
    }

    /// Time for which currents may flow from a start until a spot reaches a temperature, s; `None` if it stays below for `longest_s`.
    ///
    /// # Accuracy
    /// 1e-6 of the time, besides the error of the steps; never above the limit.
    /// 0 if the start is above the limit.
    ///
    /// # Errors
    /// The same errors as [`Ladder::after`].
    pub fn lasts_s(
        &mut self,
        start: &Temperatures,
        currents_a: &[f64],
        spot: Spot,
        limit_degc: f64,
        longest_s: f64,
    ) -> Result<Option<f64>, LadderError> {
        if self.at_spot_degc(start, spot) > limit_degc {
            return Ok(Some(0.0));
        }
        let is_above = |ladder: &mut Ladder, time: f64| -> Result<bool, LadderError> {
            let found = ladder.after(start, currents_a, &[time])?;
            let reached = found.iter().map(|found| ladder.at_spot_degc(found, spot));
            // A temperature that has run away beyond finite numbers is above, too.
            Ok(reached
                .into_iter()
                .any(|degc| degc.is_nan() || degc > limit_degc))
        };
        let (mut low, mut high) = (0.0, FIRST_S.min(longest_s));
        while !is_above(self, high)? {
            if high >= longest_s {
                return Ok(None);
            }
            low = high;
            high = (2.0 * high).min(longest_s);
        }
        halved((low, high), |middle| is_above(self, middle)).map(Some)
    }
}

/// Factor at which an excess over a limit, which grows with the factor, passes 0; `None` if it is above 0 at 0, or below it up to the greatest factor.
///
/// # Accuracy
/// 1e-6 of the factor, never above the limit.
///
/// # Errors
/// The errors of the excess.
///
/// ```
/// use jointwright_numerics::ladder::factor_to_limit;
/// let excess = |factor: f64| Ok::<f64, ()>(factor * factor - 2.0);
/// let found = factor_to_limit(excess, 20.0).unwrap().unwrap();
/// assert!(found * found <= 2.0 && found > 1.41421);
/// assert_eq!(factor_to_limit(excess, 1.4), Ok(None));
/// ```
pub fn factor_to_limit<E>(
    mut excess: impl FnMut(f64) -> Result<f64, E>,
    greatest: f64,
) -> Result<Option<f64>, E> {
    let (mut low, mut high) = ((0.0, excess(0.0)?), 1.0_f64.min(greatest));
    if low.1 > 0.0 {
        return Ok(None);
    }
    loop {
        let above = excess(high)?;
        if above > 0.0 {
            return closed_in(low, (high, above), excess).map(Some);
        }
        if high >= greatest {
            return Ok(None);
        }
        low = (high, above);
        high = (2.0 * high).min(greatest);
    }
}

/// Bracket of the factor, with the temperature's distance below the limit at its lower end and above the limit at its upper end.
struct Bracket {
    low: (f64, f64),
    high: (f64, f64),
}

impl Bracket {
    fn width(&self) -> f64 {
        self.high.0 - self.low.0
    }

    fn middle(&self) -> f64 {
        self.low.0 + 0.5 * self.width()
    }

    /// Secant point: the factor at which a line over the square of the factor, to which heat is nearly proportional, reaches the limit.
    fn straight(&self) -> f64 {
        let share = -self.low.1 / (self.high.1 - self.low.1);
        let squares = [self.low.0, self.high.0].map(|factor| factor * factor);
        (squares[0] + share * (squares[1] - squares[0])).sqrt()
    }

    /// Makes a factor inside the bracket one of its ends; returns its excess over the limit.
    fn cut<E>(
        &mut self,
        factor: f64,
        excess: &mut impl FnMut(f64) -> Result<f64, E>,
    ) -> Result<f64, E> {
        let is_inside = factor > self.low.0 && factor < self.high.0;
        let factor = if is_inside { factor } else { self.middle() };
        let found = excess(factor)?;
        let end = if found > 0.0 {
            &mut self.high
        } else {
            &mut self.low
        };
        *end = (factor, found);
        Ok(found)
    }
}

/// The lower end of a bracket after it is narrowed; its upper end always stays above the limit.
fn closed_in<E>(
    low: (f64, f64),
    high: (f64, f64),
    mut excess: impl FnMut(f64) -> Result<f64, E>,
) -> Result<f64, E> {
    let mut bracket = Bracket { low, high };
    while bracket.width() > CLOSE_RATIO * bracket.high.0 {
        let before = bracket.width();
        if bracket.high.1.is_finite() {
            let slope = (bracket.high.1 - bracket.low.1) / before;
            let guess = bracket.straight();
            let found = bracket.cut(guess, &mut excess)?;
            // A point at twice the distance lies on the other side, so that both ends close in.
            let step = 0.4 * CLOSE_RATIO * bracket.high.0 + 2.0 * found.abs() / slope;
            let other = if found > 0.0 {
                bracket.high.0 - step
            } else {
                bracket.low.0 + step
            };
            bracket.cut(other, &mut excess)?;
        }
        if bracket.width() > 0.5 * before {
            let middle = bracket.middle();
            bracket.cut(middle, &mut excess)?;
        }
    }
    Ok(bracket.low.0)
}

/// The lower end of a bracket after bisection; its upper end always stays above the limit.
fn halved(
    (mut low, mut high): (f64, f64),
    mut is_above: impl FnMut(f64) -> Result<bool, LadderError>,
) -> Result<f64, LadderError> {
    while high - low > CLOSE_RATIO * high {
        let middle = 0.5 * (low + high);
        if is_above(middle)? {
            high = middle;
        } else {
            low = middle;
        }
    }
    Ok(low)
}
