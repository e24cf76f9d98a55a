//! Fin: heat that flows along a rod and leaves through its surroundings.
//!
//! θ'' = m² θ along a rod of conductivity k and area S, with the thermal resistance T of one metre to the surroundings.
//! Source: closed form; incropera_heat, chapter 3, memory; `docs/theory/rating.md`.

/// m, 1/m: m = √(1/(T k S)); the rise falls to 1/e over the length 1/m.
///
/// T, `resistance_k_m_per_w`: between rod and surroundings, K·m/W · k, `conductivity_w_per_m_k`: W/(m·K) · S, `area_m2`: m².
///
/// # Source
/// closed form.
///
/// ```
/// use jointwright_numerics::rating::fin::decay_per_m;
/// assert!((1e3 / decay_per_m(1.5, 218.0, 53.49e-6) - 132.2544).abs() < 1e-3);
/// ```
pub fn decay_per_m(resistance_k_m_per_w: f64, conductivity_w_per_m_k: f64, area_m2: f64) -> f64 {
    1.0 / (resistance_k_m_per_w * conductivity_w_per_m_k * area_m2).sqrt()
}

/// Rise at a place on an infinite rod over the temperature without the source, K: Q/(2 k S m) · e^(−m x).
///
/// Q, `heat_w`: heat of a point source, W · x, `distance_m`: distance from it in either direction, m.
///
/// # Source
/// closed form.
///
/// ```
/// use jointwright_numerics::rating::fin::rise_k;
/// assert!((rise_k(5.0, 0.0, 1.5, 218.0, 53.49e-6) - 28.3544).abs() < 1e-3);
/// ```
pub fn rise_k(
    heat_w: f64,
    distance_m: f64,
    resistance_k_m_per_w: f64,
    conductivity_w_per_m_k: f64,
    area_m2: f64,
) -> f64 {
    let decay = decay_per_m(resistance_k_m_per_w, conductivity_w_per_m_k, area_m2);
    heat_w / (2.0 * conductivity_w_per_m_k * area_m2 * decay) * (-decay * distance_m.abs()).exp()
}

/// Heat that an infinite rod takes from a wall at its one end, W: k S m θ.
///
/// θ, `rise_k`: temperature of the wall above the surroundings, K.
///
/// # Source
/// closed form; incropera_heat, chapter 3, memory.
///
/// ```
/// use jointwright_numerics::rating::fin::rod_loss_w;
/// use std::f64::consts::PI;
/// let (rod_m, film) = (0.005, 100.0);
/// let loss = rod_loss_w(75.0, 1.0 / (film * PI * rod_m), 398.0, PI / 4.0 * rod_m * rod_m);
/// assert!((loss - 8.310).abs() < 1e-3);
/// ```
pub fn rod_loss_w(
    rise_k: f64,
    resistance_k_m_per_w: f64,
    conductivity_w_per_m_k: f64,
    area_m2: f64,
) -> f64 {
    let decay = decay_per_m(resistance_k_m_per_w, conductivity_w_per_m_k, area_m2);
    conductivity_w_per_m_k * area_m2 * decay * rise_k
}
