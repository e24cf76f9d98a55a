//! Step: how a buried cable approaches its steady temperature after its current was switched on.
//!
//! Source: iec_60853, memory; the integral is abramowitz_stegun, chapter 5; `docs/theory/rating.md`.

use super::error::RatingError;

/// Euler's constant.
const EULER: f64 = 0.577_215_664_901_532_9;
/// Argument below which the series is used, and above which the continued fraction.
const TURN: f64 = 1.0;
/// Argument above which the integral is below the smallest float.
const VANISHES: f64 = 740.0;

/// E1, exponential integral ∫ e⁻ᵗ/t dt from x to infinity; the same as −Ei(−x).
///
/// # Accuracy
/// 1e-13 of its value: a series below 1, a continued fraction above.
///
/// # Errors
/// [`RatingError::NoIntegral`] unless x is above 0.
///
/// # Source
/// abramowitz_stegun, 5.1.11 and 5.1.22.
///
/// ```
/// use jointwright_numerics::rating::step::exponential_integral;
/// assert!((exponential_integral(0.5)? - 0.559_773_594_8).abs() < 1e-10);
/// # Ok::<(), jointwright_numerics::rating::RatingError>(())
/// ```
pub fn exponential_integral(argument: f64) -> Result<f64, RatingError> {
    if argument.is_nan() || argument <= 0.0 {
        return Err(RatingError::NoIntegral { argument });
    }
    Ok(if argument <= TURN {
        series(argument)
    } else if argument > VANISHES {
        0.0
    } else {
        fraction(argument)
    })
}

/// −γ − ln x − Σ (−x)ⁿ/(n · n!).
fn series(argument: f64) -> f64 {
    let (mut power, mut sum) = (1.0, 0.0);
    for n in 1..40 {
        power *= -argument / f64::from(n);
        let term = power / f64::from(n);
        sum += term;
        if term.abs() <= f64::EPSILON * sum.abs() {
            break;
        }
    }
    -EULER - argument.ln() - sum
}

/// e⁻ˣ/(x + 1 − 1²/(x + 3 − 2²/(x + 5 − …))), by Lentz's method.
fn fraction(argument: f64) -> f64 {
    let mut below = argument + 1.0;
    let mut inverse = 1.0 / below;
    let mut ratio = f64::INFINITY;
    let mut value = inverse;
    for n in 1..400 {
        let square = -f64::from(n) * f64::from(n);
        below += 2.0;
        inverse = 1.0 / (below + square * inverse);
        ratio = below + square / ratio;
        let change = ratio * inverse;
        value *= change;
        if (change - 1.0).abs() <= f64::EPSILON {
            break;
        }
    }
    value * (-argument).exp()
}

/// β, share of the steady rise of the soil at the cable's surface that is reached after a time.
///
/// β(t) = (E1(De²/16tδ) − E1(L²/tδ)) / (2 ln(4L/De)).
///
/// De, `outside_m`: diameter over all, m · L, `depth_m`: of the axis, m · δ, `diffusivity_m2_per_s`: of the soil, m²/s · t, `time_s`: s.
///
/// # Assumes
/// A line of constant heat below an isothermal surface.
///
/// # Errors
/// [`RatingError::NotBuried`]; [`RatingError::NoIntegral`] for a negative time.
/// At time 0 the result is 0.
///
/// # Source
/// iec_60853, memory; compared in our tests with its steady limit.
///
/// ```
/// use jointwright_numerics::rating::step::attainment_ratio;
/// let reached = attainment_ratio(0.0755, 1.0, 5e-7, 6.0 * 3600.0)?;
/// assert!((reached - 0.361_106_625_7).abs() < 1e-9);
/// # Ok::<(), jointwright_numerics::rating::RatingError>(())
/// ```
pub fn attainment_ratio(
    outside_m: f64,
    depth_m: f64,
    diffusivity_m2_per_s: f64,
    time_s: f64,
) -> Result<f64, RatingError> {
    if 2.0 * depth_m <= outside_m || outside_m <= 0.0 {
        return Err(RatingError::NotBuried { depth_m, outside_m });
    }
    let spread_m2 = diffusivity_m2_per_s * time_s;
    let own = exponential_integral(outside_m * outside_m / (16.0 * spread_m2))?;
    let image = exponential_integral(depth_m * depth_m / spread_m2)?;
    Ok((own - image) / (2.0 * (4.0 * depth_m / outside_m).ln()))
}

/// Another cable in the same soil, with the same heat and the same start.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// d, from axis to axis, m.
    pub axis_m: f64,
    /// d', to the image of its axis above the surface, m.
    pub image_m: f64,
}

/// β, share of the steady rise of the soil that is reached after a time, with other cables beside it.
///
/// β(t) = (E1(De²/16tδ) − E1(L²/tδ) + Σ (E1(d²/4tδ) − E1(d'²/4tδ))) / (2 (ln(4L/De) + Σ ln(d'/d))).
///
/// Symbols as in [`attainment_ratio()`] and [`Line`].
///
/// # Assumes
/// Lines of equal and constant heat below an isothermal surface.
///
/// # Errors
/// [`RatingError::NotBuried`]; [`RatingError::NoIntegral`] for a negative time; [`RatingError::NoNumber`] if an image is not farther than its axis.
///
/// # Source
/// iec_60853, memory; without other cables it equals [`attainment_ratio()`].
///
/// ```
/// use jointwright_numerics::rating::step::{Line, attainment_ratio, group_attainment_ratio};
/// let alone = group_attainment_ratio(0.0755, 1.0, 5e-7, &[], 21_600.0)?;
/// assert_eq!(alone, attainment_ratio(0.0755, 1.0, 5e-7, 21_600.0)?);
/// let beside = Line { axis_m: 0.2, image_m: 2.01 };
/// assert!(group_attainment_ratio(0.0755, 1.0, 5e-7, &[beside], 21_600.0)? < alone);
/// # Ok::<(), jointwright_numerics::rating::RatingError>(())
/// ```
pub fn group_attainment_ratio(
    outside_m: f64,
    depth_m: f64,
    diffusivity_m2_per_s: f64,
    others: &[Line],
    time_s: f64,
) -> Result<f64, RatingError> {
    let alone = attainment_ratio(outside_m, depth_m, diffusivity_m2_per_s, time_s)?;
    if others.is_empty() {
        return Ok(alone);
    }
    let spread_m2 = 4.0 * diffusivity_m2_per_s * time_s;
    let own = 2.0 * (4.0 * depth_m / outside_m).ln();
    let (mut now, mut end) = (alone * own, own);
    for other in others {
        if !(other.axis_m > 0.0 && other.image_m > other.axis_m) {
            return Err(RatingError::NoNumber);
        }
        now += exponential_integral(other.axis_m * other.axis_m / spread_m2)?
            - exponential_integral(other.image_m * other.image_m / spread_m2)?;
        end += 2.0 * (other.image_m / other.axis_m).ln();
    }
    Ok(now / end)
}
