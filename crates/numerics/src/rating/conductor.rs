//! Conductor: resistance to direct and alternating current, and dielectric loss of the insulation.
//!
//! Source: iec_60287_1_1, clauses 2.1 and 2.2, as recalled; `docs/theory/rating.md`.

use std::f64::consts::PI;

use super::error::RatingError;

/// Permittivity of vacuum, F/m.
const EPSILON_0_F_PER_M: f64 = 8.854_187_812_8e-12;
/// Greatest argument for which the formula of the proximity effect is given.
const GREATEST_PROXIMITY: f64 = 2.8;

/// A metal that conducts: ρ(T) = ρ20 (1 + α20 (T − 20)).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Metal {
    /// ρ20, resistivity at 20 °C, Ω·m.
    pub resistivity_20_ohm_m: f64,
    /// α20, change of resistance at 20 °C, 1/K.
    pub coefficient_20_per_k: f64,
}

impl Metal {
    /// Copper of conductors: iec_60287_1_1, table 1, read in a public copy.
    pub const COPPER: Metal = Metal {
        resistivity_20_ohm_m: 1.7241e-8,
        coefficient_20_per_k: 0.00393,
    };
    /// Aluminium of conductors: the same table.
    pub const ALUMINIUM: Metal = Metal {
        resistivity_20_ohm_m: 2.8264e-8,
        coefficient_20_per_k: 0.00403,
    };

    /// Resistance of a wire to direct current, Ω/m: R' = ρ20 l/A · (1 + α20 (T − 20)).
    ///
    /// A, `area_m2`: area across the wires, m² · l, `lay_ratio`: length of the wires over that of the whole, 1.02 for a common strand · T, `temperature_degc`: °C.
    ///
    /// # Source
    /// iec_60287_1_1, clause 2.1.1; a lay of 1.02 from memory.
    ///
    /// ```
    /// use jointwright_numerics::rating::Metal;
    /// let ohm_per_m = Metal::COPPER.resistance_ohm_per_m(177.35e-6, 1.02, 20.0);
    /// assert!((ohm_per_m * 304.8 - 0.030_22).abs() < 1e-5);
    /// ```
    pub fn resistance_ohm_per_m(&self, area_m2: f64, lay_ratio: f64, temperature_degc: f64) -> f64 {
        let at_20 = self.resistivity_20_ohm_m * lay_ratio / area_m2;
        at_temperature(at_20, self.coefficient_20_per_k, temperature_degc)
    }
}

/// Resistance at a temperature from the resistance at 20 °C, in the same unit.
///
/// R(T) = R20 (1 + α20 (T − 20)).
///
/// # Source
/// iec_60287_1_1, clause 2.1.1.
///
/// ```
/// use jointwright_numerics::rating::conductor::at_temperature;
/// assert!((at_temperature(1.0, 0.00393, 90.0) - 1.2751).abs() < 1e-12);
/// ```
pub fn at_temperature(at_20: f64, coefficient_20_per_k: f64, temperature_degc: f64) -> f64 {
    at_20 * (1.0 + coefficient_20_per_k * (temperature_degc - 20.0))
}

/// Diameter of a solid wire of the American wire gauge, m: d = 0.005 in · 92^((36 − n)/39).
///
/// n, `gauge`: its number; 1/0 is 0, 4/0 is −3.
///
/// # Source
/// definition of the gauge.
///
/// ```
/// use jointwright_numerics::rating::conductor::gauge_diameter_m;
/// assert!((gauge_diameter_m(36) - 0.127e-3).abs() < 1e-18);
/// assert!((gauge_diameter_m(-3) - 0.46 * 25.4e-3).abs() < 1e-15);
/// ```
pub fn gauge_diameter_m(gauge: i32) -> f64 {
    0.127e-3 * 92.0_f64.powf((36.0 - f64::from(gauge)) / 39.0)
}

/// Other conductors whose field causes the proximity effect.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Neighbours {
    /// One other conductor: the return of a single phase.
    One,
    /// Two other conductors of three phases.
    Two,
}

/// Inputs of the proximity effect.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Proximity {
    /// kp, factor of the strands in the proximity effect: 1 for round strands.
    pub strand_ratio: f64,
    /// dc, diameter of the conductor, m.
    pub diameter_m: f64,
    /// s, between the axes of neighbours, m; in flat formation the geometric mean of the two.
    pub spacing_m: f64,
    /// Number of other conductors.
    pub neighbours: Neighbours,
}

/// A conductor that carries alternating current.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Conductor {
    /// R20, resistance to direct current at 20 °C, Ω/m.
    pub resistance_20_ohm_per_m: f64,
    /// α20, change of resistance at 20 °C, 1/K.
    pub coefficient_20_per_k: f64,
    /// ks, factor of the strands in the skin effect: 1 for round strands.
    pub skin_ratio: f64,
    /// Proximity effect; `None` if the others are far.
    pub proximity: Option<Proximity>,
}

impl Conductor {
    /// Resistance to alternating current, Ω/m: R = R' (1 + ys + yp), R' the resistance to direct current at the same temperature.
    ///
    /// # Errors
    /// [`RatingError::BeyondProximity`] if the proximity effect is outside the range of its formula.
    ///
    /// # Source
    /// iec_60287_1_1, clause 2.1.
    ///
    /// ```
    /// use jointwright_numerics::rating::Conductor;
    /// let conductor = Conductor {
    ///     resistance_20_ohm_per_m: 2.83e-5,
    ///     coefficient_20_per_k: 0.00393,
    ///     skin_ratio: 1.0,
    ///     proximity: None,
    /// };
    /// let ohm_per_m = conductor.resistance_ohm_per_m(90.0, 50.0)?;
    /// assert!((ohm_per_m - 3.8255e-5).abs() < 1e-9);
    /// # Ok::<(), jointwright_numerics::rating::RatingError>(())
    /// ```
    pub fn resistance_ohm_per_m(
        &self,
        temperature_degc: f64,
        frequency_hz: f64,
    ) -> Result<f64, RatingError> {
        let direct = at_temperature(
            self.resistance_20_ohm_per_m,
            self.coefficient_20_per_k,
            temperature_degc,
        );
        let skin = skin_share(direct, frequency_hz, self.skin_ratio);
        let proximity = match &self.proximity {
            Some(proximity) => proximity_share(direct, frequency_hz, proximity)?,
            None => 0.0,
        };
        Ok(direct * (1.0 + skin + proximity))
    }
}

/// x² of both effects: 8πf/R' · 10⁻⁷ · k.
fn argument_squared(direct_ohm_per_m: f64, frequency_hz: f64, strand_ratio: f64) -> f64 {
    8.0 * PI * frequency_hz / direct_ohm_per_m * 1e-7 * strand_ratio
}

/// ys, skin-effect factor: relative increase of the resistance R'.
///
/// x² = 8πf/R' · 10⁻⁷ · ks; ys = x⁴/(192 + 0.8 x⁴) up to x = 2.8,
/// −0.136 − 0.0177 x + 0.0563 x² up to 3.8, and 0.354 x − 0.733 above.
///
/// R', `direct_ohm_per_m`: resistance to direct current at the same temperature, Ω/m · f: Hz · ks: see [`Conductor`].
///
/// # Accuracy
/// Within 0.1 % of R of a solid round wire (Kelvin's functions) up to x = 2.8, within 0.6 % up to 8.
///
/// # Source
/// iec_60287_1_1, clause 2.1.2; the two upper branches from memory.
///
/// ```
/// use jointwright_numerics::rating::conductor::skin_share;
/// assert!((skin_share(3.608_533e-5, 50.0, 1.0) - 0.060_124).abs() < 1e-6);
/// ```
pub fn skin_share(direct_ohm_per_m: f64, frequency_hz: f64, strand_ratio: f64) -> f64 {
    let squared = argument_squared(direct_ohm_per_m, frequency_hz, strand_ratio);
    let argument = squared.sqrt();
    if argument <= 2.8 {
        crowding(squared)
    } else if argument <= 3.8 {
        -0.136 - 0.0177 * argument + 0.0563 * squared
    } else {
        0.354 * argument - 0.733
    }
}

/// x⁴/(192 + 0.8 x⁴).
fn crowding(squared: f64) -> f64 {
    let fourth = squared * squared;
    fourth / (192.0 + 0.8 * fourth)
}

/// yp, proximity-effect factor: relative increase of the resistance R'.
///
/// With F = x⁴/(192 + 0.8 x⁴), x² = 8πf/R' · 10⁻⁷ · kp and q = (dc/s)²:
/// for three conductors F q (0.312 q + 1.18/(F + 0.27)), for two 2.9 F q.
///
/// # Errors
/// [`RatingError::BeyondProximity`] above x = 2.8, where no formula is given.
///
/// # Source
/// iec_60287_1_1, clauses 2.1.3 and 2.1.4.
///
/// ```
/// use jointwright_numerics::rating::{Neighbours, Proximity, conductor::proximity_share};
/// let proximity = Proximity {
///     strand_ratio: 1.0,
///     diameter_m: 0.0303,
///     spacing_m: 0.0755,
///     neighbours: Neighbours::Two,
/// };
/// let share = proximity_share(3.608_533e-5, 50.0, &proximity)?;
/// assert!((share - 0.035_100).abs() < 1e-6);
/// # Ok::<(), jointwright_numerics::rating::RatingError>(())
/// ```
pub fn proximity_share(
    direct_ohm_per_m: f64,
    frequency_hz: f64,
    proximity: &Proximity,
) -> Result<f64, RatingError> {
    let squared = argument_squared(direct_ohm_per_m, frequency_hz, proximity.strand_ratio);
    if squared > GREATEST_PROXIMITY * GREATEST_PROXIMITY {
        return Err(RatingError::BeyondProximity {
            argument: squared.sqrt(),
        });
    }
    let crowding = crowding(squared);
    let near = (proximity.diameter_m / proximity.spacing_m).powi(2);
    Ok(crowding
        * near
        * match proximity.neighbours {
            Neighbours::One => 2.9,
            Neighbours::Two => 0.312 * near + 1.18 / (crowding + 0.27),
        })
}

/// Capacitance of a wall between two coaxial circles, F/m: C = 2π ε0 εr / ln(D/d).
///
/// D, `outside_m`, and d, `inside_m`: diameters of the wall, m · εr: relative permittivity.
///
/// # Source
/// closed form.
///
/// ```
/// use jointwright_numerics::rating::conductor::coaxial_capacitance_f_per_m;
/// let farad_per_m = coaxial_capacitance_f_per_m(2.5, 33.3e-3, 64.3e-3);
/// assert!((farad_per_m - 2.1138e-10).abs() < 1e-13);
/// ```
pub fn coaxial_capacitance_f_per_m(
    relative_permittivity: f64,
    inside_m: f64,
    outside_m: f64,
) -> f64 {
    2.0 * PI * EPSILON_0_F_PER_M * relative_permittivity / (outside_m / inside_m).ln()
}

/// Capacitance as the standard rounds it, F/m: C = εr / (18 ln(D/d)) · 10⁻⁹; 0.14 % less.
///
/// # Source
/// iec_60287_1_1, clause 2.2.
///
/// ```
/// use jointwright_numerics::rating::conductor::rounded_capacitance_f_per_m;
/// let farad_per_m = rounded_capacitance_f_per_m(2.5, 33.3e-3, 64.3e-3);
/// assert!((farad_per_m - 2.1109e-10).abs() < 1e-13);
/// ```
pub fn rounded_capacitance_f_per_m(
    relative_permittivity: f64,
    inside_m: f64,
    outside_m: f64,
) -> f64 {
    relative_permittivity / (18.0 * (outside_m / inside_m).ln()) * 1e-9
}

/// Wd, loss in the insulation of one phase, W/m: Wd = 2πf C U0² tan δ.
///
/// C: F/m · U0, `phase_v`: rms voltage between conductor and earth, V · tan δ: loss factor.
///
/// # Source
/// iec_60287_1_1, clause 2.2; cigre_tb880, p. 198.
///
/// ```
/// use jointwright_numerics::rating::conductor::dielectric_loss_w_per_m;
/// let loss = dielectric_loss_w_per_m(50.0, 0.237_683_304e-9, 19_052.558_8, 0.004);
/// assert!((loss - 0.108_421_437_5).abs() < 1e-9);
/// ```
pub fn dielectric_loss_w_per_m(
    frequency_hz: f64,
    capacitance_f_per_m: f64,
    phase_v: f64,
    loss_ratio: f64,
) -> f64 {
    2.0 * PI * frequency_hz * capacitance_f_per_m * phase_v * phase_v * loss_ratio
}
