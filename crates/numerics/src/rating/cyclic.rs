//! Cyclic: the factor by which the peak of a daily load may exceed the steady current.
//!
//! Source: iec_60853, recalled; `docs/theory/rating.md`.

use super::error::RatingError;

/// Hours in a cycle.
const N_HOURS: usize = 24;
/// Hours before the warmest moment that count one by one; earlier hours count by their mean.
const N_FOLLOWED: usize = 6;

/// A load that repeats every 24 hours.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cycle {
    losses: [f64; N_HOURS],
}

impl Cycle {
    /// Cycle of the loads of each hour, in any unit; only their ratios to the greatest load count.
    ///
    /// # Errors
    /// [`RatingError::NoNumber`] if a load is below 0, or none is above 0.
    ///
    /// # Source
    /// iec_60853, memory: the loss is proportional to the square of the load.
    ///
    /// ```
    /// use jointwright_numerics::rating::cyclic::Cycle;
    /// let half = std::array::from_fn(|hour| if hour < 12 { 0.5 } else { 1.0 });
    /// assert!((Cycle::of(half)?.loss_load_ratio() - 0.625).abs() < 1e-15);
    /// # Ok::<(), jointwright_numerics::rating::RatingError>(())
    /// ```
    pub fn of(loads: [f64; 24]) -> Result<Cycle, RatingError> {
        let greatest = loads.iter().copied().fold(0.0, f64::max);
        let are_loads = loads.iter().all(|load| *load >= 0.0 && load.is_finite());
        if are_loads && greatest > 0.0 {
            Ok(Cycle {
                losses: loads.map(|load| (load / greatest) * (load / greatest)),
            })
        } else {
            Err(RatingError::NoNumber)
        }
    }

    /// μ, loss-load factor: mean of the squares of load over peak load.
    ///
    /// See [`Cycle::of()`] for an example.
    pub fn loss_load_ratio(&self) -> f64 {
        self.losses.iter().sum::<f64>() / N_HOURS as f64
    }

    /// M, cyclic rating factor: the ratio of the permitted peak to the steady current.
    ///
    /// 1/M² = Σ Yi (θ(i + 1) − θ(i)) + μ (1 − θ(6)), i = 0 to 5.
    /// Yi is the ratio of the loss to that at the peak, in the hour that ends i hours before the warmest moment.
    /// The warmest moment is sought among the ends of all hours.
    ///
    /// θ, `reached`: share of the steady rise that is reached after a number of seconds, 0 at the start.
    /// It is [`super::transient::Transient::reached_ratio()`] or, without the cable's own heat capacity, [`super::transient::Transient::soil_reached_ratio()`].
    ///
    /// # Assumes
    /// The resistance does not change with the temperature; each load is constant for an hour.
    ///
    /// # Errors
    /// The errors of `reached`.
    ///
    /// # Source
    /// iec_60853, memory; compared in our tests with the sum over all days before.
    ///
    /// ```
    /// use jointwright_numerics::rating::cyclic::Cycle;
    /// // A cable that warms at once follows the peak, one that never warms the mean.
    /// let half = std::array::from_fn(|hour| if hour < 12 { 0.5 } else { 1.0 });
    /// let cycle = Cycle::of(half)?;
    /// assert!((cycle.factor_ratio(|_| Ok(1.0))? - 1.0).abs() < 1e-15);
    /// assert!((cycle.factor_ratio(|_| Ok(0.0))? - 0.625_f64.sqrt().recip()).abs() < 1e-15);
    /// # Ok::<(), jointwright_numerics::rating::RatingError>(())
    /// ```
    pub fn factor_ratio(
        &self,
        reached: impl Fn(f64) -> Result<f64, RatingError>,
    ) -> Result<f64, RatingError> {
        let mut shares = [0.0; N_FOLLOWED + 1];
        for (hours, share) in shares.iter_mut().enumerate().skip(1) {
            *share = reached(hours as f64 * 3600.0)?;
        }
        let rest = self.loss_load_ratio() * (1.0 - shares[N_FOLLOWED]);
        let warmest = (0..N_HOURS)
            .map(|last| {
                let followed = (0..N_FOLLOWED).map(|before| {
                    let loss = self.losses[(last + N_HOURS - before) % N_HOURS];
                    loss * (shares[before + 1] - shares[before])
                });
                followed.sum::<f64>() + rest
            })
            .fold(0.0, f64::max);
        Ok(warmest.sqrt().recip())
    }
}

/// Least M of all days with a given loss-load factor.
///
/// M is least if the load falls on the hours with the greatest weight.
/// Of 24 μ hours with the loss of the peak, as many as possible are those of the last six with the greatest weight θ(i + 1) − θ(i); the rest lie before them.
/// Since 1/M² is linear in the losses of the hours, each from 0 to 1 and with the sum 24 μ, no day has a smaller M.
///
/// μ, `loss_load_ratio`: 1/24 to 1, because a day of hours has one whole hour at its peak · θ, `reached`: as in [`Cycle::factor_ratio()`].
///
/// # Assumes
/// The same as [`Cycle::factor_ratio()`].
///
/// # Errors
/// [`RatingError::NoNumber`] for a factor that no day has; the errors of `reached`.
///
/// # Source
/// The form is iec_60853, memory; that no day has a smaller M is a closed form.
///
/// ```
/// use jointwright_numerics::rating::cyclic::least_factor_ratio;
/// // All of six hours at their peak, though the day's mean is a half.
/// let least = least_factor_ratio(0.5, |time_s| Ok(time_s / 43_200.0))?;
/// assert!((least - 0.75_f64.sqrt().recip()).abs() < 1e-12);
/// # Ok::<(), jointwright_numerics::rating::RatingError>(())
/// ```
pub fn least_factor_ratio(
    loss_load_ratio: f64,
    reached: impl Fn(f64) -> Result<f64, RatingError>,
) -> Result<f64, RatingError> {
    let mut hours = loss_load_ratio * N_HOURS as f64;
    if !(1.0 - 1e-9..=N_HOURS as f64).contains(&hours) {
        return Err(RatingError::NoNumber);
    }
    let mut shares = [0.0; N_FOLLOWED + 1];
    for (hour, share) in shares.iter_mut().enumerate().skip(1) {
        *share = reached(hour as f64 * 3600.0)?;
    }
    let mut weights: [f64; N_FOLLOWED] =
        std::array::from_fn(|hour| shares[hour + 1] - shares[hour]);
    weights.sort_by(|one, other| other.total_cmp(one));
    let mut warmest = loss_load_ratio * (1.0 - shares[N_FOLLOWED]);
    for weight in weights {
        warmest += weight * hours.clamp(0.0, 1.0);
        hours -= 1.0;
    }
    Ok(warmest.sqrt().recip())
}
