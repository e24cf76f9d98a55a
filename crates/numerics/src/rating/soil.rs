//! Soil: several buried cables that warm one another, by the method of images.
//!
//! A neighbouring cable is a line source of heat.
//! The surface has one temperature, so each line has an image above it that absorbs the heat it gives off.
//!
//! Source: iec_60287_2_1, recalled; the images are a closed form; `docs/theory/rating.md`.

use std::f64::consts::PI;

use super::error::RatingError;
use super::step::Line;
use super::thermal::buried_k_m_per_w;

/// Rise at one axis from the heat of another cable, K·m/W: ΔT = ρ/2π · ln(d'/d).
///
/// d', `image_m`: distance from the axis to the image of the other, m · d, `axis_m`: distance to the other itself, m.
///
/// # Source
/// closed form (images); iec_60287_2_1.
///
/// ```
/// use jointwright_numerics::rating::soil::mutual_k_m_per_w;
/// let mutual = mutual_k_m_per_w(1.0, 2.0, 0.2);
/// assert!((mutual - 10.0_f64.ln() / std::f64::consts::TAU).abs() < 1e-15);
/// ```
pub fn mutual_k_m_per_w(resistivity_k_m_per_w: f64, image_m: f64, axis_m: f64) -> f64 {
    resistivity_k_m_per_w / (2.0 * PI) * (image_m / axis_m).ln()
}

/// Distances to another axis and to its image, m; both axes are given as across and down.
///
/// # Errors
/// [`RatingError::NotBuried`] if one of them is not below the surface; [`RatingError::NoNumber`] if both are the same.
///
/// # Source
/// closed form (images).
///
/// ```
/// use jointwright_numerics::rating::soil::line;
/// let line = line([0.0, 1.0], [0.3, 0.6])?;
/// assert!((line.axis_m - 0.5).abs() < 1e-15 && (line.image_m - 0.3_f64.hypot(1.6)).abs() < 1e-15);
/// # Ok::<(), jointwright_numerics::rating::RatingError>(())
/// ```
pub fn line(here_m: [f64; 2], there_m: [f64; 2]) -> Result<Line, RatingError> {
    for axis_m in [here_m, there_m] {
        if axis_m[1].is_nan() || axis_m[1] <= 0.0 {
            return Err(RatingError::NotBuried {
                depth_m: axis_m[1],
                outside_m: 0.0,
            });
        }
    }
    let across = here_m[0] - there_m[0];
    let line = Line {
        axis_m: across.hypot(here_m[1] - there_m[1]),
        image_m: across.hypot(here_m[1] + there_m[1]),
    };
    if line.axis_m > 0.0 && line.image_m.is_finite() {
        Ok(line)
    } else {
        Err(RatingError::NoNumber)
    }
}

/// T4 of each of several equal cables with equal losses, including the others' share, K·m/W.
///
/// T4 = ρ/2π · (ln(u + √(u² − 1)) + Σ ln(d'/d)), u = 2L/De.
///
/// `axes_m`: across and down, m · De, `outside_m`: diameter over all, m.
///
/// # Assumes
/// The cables do not touch; a neighbouring cable is a line source.
///
/// # Errors
/// [`RatingError::NotBuried`]; [`RatingError::NoNumber`] if the distance of two axes is less than a diameter.
///
/// # Source
/// closed form (images); iec_60287_2_1.
///
/// ```
/// use jointwright_numerics::rating::soil::group_k_m_per_w;
/// use jointwright_numerics::rating::thermal::flat_middle_k_m_per_w;
/// let row = [[-0.2, 1.0], [0.0, 1.0], [0.2, 1.0]];
/// let each = group_k_m_per_w(1.0, &row, 0.05)?;
/// assert!((each[1] - flat_middle_k_m_per_w(1.0, 1.0, 0.05, 0.2)?).abs() < 1e-12);
/// assert!(each[0] < each[1]);
/// # Ok::<(), jointwright_numerics::rating::RatingError>(())
/// ```
pub fn group_k_m_per_w(
    resistivity_k_m_per_w: f64,
    axes_m: &[[f64; 2]],
    outside_m: f64,
) -> Result<Vec<f64>, RatingError> {
    let of_one = |(index, here): (usize, &[f64; 2])| {
        let mut resistance = buried_k_m_per_w(resistivity_k_m_per_w, here[1], outside_m)?;
        for (other, there) in axes_m.iter().enumerate() {
            if other != index {
                let line = line(*here, *there)?;
                // Rounding may put touching cables closer than their diameter in the last digit.
                if line.axis_m < outside_m * (1.0 - 1e-9) {
                    return Err(RatingError::NoNumber);
                }
                resistance += mutual_k_m_per_w(resistivity_k_m_per_w, line.image_m, line.axis_m);
            }
        }
        Ok(resistance)
    };
    axes_m.iter().enumerate().map(of_one).collect()
}

/// Rise of the soil at an axis from the heat of other cables, for unequal losses, K: Σ ρ/2π · ln(d'/d) · W.
///
/// Added to the temperature of the surroundings, it represents the other cables.
///
/// `others`: axis, across and down, m, and heat, W/m.
///
/// # Errors
/// The same errors as [`line()`].
///
/// # Source
/// closed form (images); iec_60287_2_1.
///
/// ```
/// use jointwright_numerics::rating::soil::{foreign_rise_k, mutual_k_m_per_w};
/// let rise = foreign_rise_k(1.2, [0.0, 1.0], &[([0.5, 1.0], 30.0), ([0.0, 1.5], 20.0)])?;
/// let first = 30.0 * mutual_k_m_per_w(1.2, 0.5_f64.hypot(2.0), 0.5);
/// assert!((rise - first - 20.0 * mutual_k_m_per_w(1.2, 2.5, 0.5)).abs() < 1e-12);
/// # Ok::<(), jointwright_numerics::rating::RatingError>(())
/// ```
pub fn foreign_rise_k(
    resistivity_k_m_per_w: f64,
    here_m: [f64; 2],
    others: &[([f64; 2], f64)],
) -> Result<f64, RatingError> {
    others.iter().try_fold(0.0, |rise, &(there_m, heat)| {
        let line = line(here_m, there_m)?;
        let mutual = mutual_k_m_per_w(resistivity_k_m_per_w, line.image_m, line.axis_m);
        Ok(rise + mutual * heat)
    })
}
