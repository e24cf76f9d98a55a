//! Short circuit: the current that heats a metal from one temperature to another in a few seconds.
//!
//! Source: icea_p32382, icea_p45482, iec_60949; `docs/theory/rating.md`.
//! The two families differ by up to 2 % and are not interchangeable.

use std::f64::consts::PI;

use super::error::RatingError;

/// One circular mil, m².
const CMIL_M2: f64 = PI / 4.0 * 25.4e-6 * 25.4e-6;

/// ICEA's formula: (I/A)² t = k log10((T2 + B)/(T1 + B)), A in circular mils.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CircularMilForm {
    /// k, A²·s per circular mil squared.
    pub heat: f64,
    /// B, °C below 0 at which the resistance would vanish.
    pub zero_degc: f64,
}

impl CircularMilForm {
    /// Copper: 0.0297 and 234, read in a public text.
    pub const COPPER: CircularMilForm = CircularMilForm {
        heat: 0.0297,
        zero_degc: 234.0,
    };
    /// Aluminium: 0.0125 and 228, read in a public text.
    pub const ALUMINIUM: CircularMilForm = CircularMilForm {
        heat: 0.0125,
        zero_degc: 228.0,
    };

    /// Current that heats a conductor or a shield from a first to a second temperature, A.
    ///
    /// A, `area_m2`: m² · T1, T2: `from_degc`, `to_degc`, °C · t, `time_s`: s.
    /// For shields the same formula is written I = A M/√t.
    ///
    /// # Assumes
    /// No heat leaves the metal (adiabatic).
    ///
    /// # Errors
    /// [`RatingError::NoHeating`].
    ///
    /// # Source
    /// icea_p32382; for shields icea_p45482, memory.
    ///
    /// ```
    /// use jointwright_numerics::rating::short_circuit::CircularMilForm;
    /// let amperes = CircularMilForm::ALUMINIUM.current_a(53.508e-6, 90.0, 250.0, 1.0)?;
    /// assert!((amperes - 4967.1).abs() < 0.5);
    /// # Ok::<(), jointwright_numerics::rating::RatingError>(())
    /// ```
    pub fn current_a(
        &self,
        area_m2: f64,
        from_degc: f64,
        to_degc: f64,
        time_s: f64,
    ) -> Result<f64, RatingError> {
        let ratio = heating_ratio(self.zero_degc, from_degc, to_degc, time_s)?;
        Ok(area_m2 / CMIL_M2 * (self.heat * ratio.log10() / time_s).sqrt())
    }

    /// Temperature to which a current heats the metal, °C: ICEA's formula solved for T2.
    ///
    /// S, `area_m2`: m² · I, `current_a`: A · t, `time_s`: s, of all shots together.
    /// The heating is adiabatic.
    /// T1 lies above −B; a T2 above the melting point means that the metal melts.
    ///
    /// # Source
    /// icea_p32382.
    ///
    /// ```
    /// use jointwright_numerics::rating::short_circuit::CircularMilForm;
    /// let form = CircularMilForm::COPPER;
    /// let amperes = form.current_a(253.35e-6, 90.0, 250.0, 0.5)?;
    /// assert!((form.temperature_degc(253.35e-6, 90.0, amperes, 0.5) - 250.0).abs() < 1e-9);
    /// # Ok::<(), jointwright_numerics::rating::RatingError>(())
    /// ```
    pub fn temperature_degc(
        &self,
        area_m2: f64,
        from_degc: f64,
        current_a: f64,
        time_s: f64,
    ) -> f64 {
        let density = current_a / (area_m2 / CMIL_M2);
        let power = density * density * time_s / self.heat;
        (from_degc + self.zero_degc) * 10_f64.powf(power) - self.zero_degc
    }
}

/// (T2 + B)/(T1 + B), above 1.
fn heating_ratio(
    zero_degc: f64,
    from_degc: f64,
    to_degc: f64,
    time_s: f64,
) -> Result<f64, RatingError> {
    let ratio = (to_degc + zero_degc) / (from_degc + zero_degc);
    if ratio >= 1.0 && from_degc > -zero_degc && time_s > 0.0 {
        Ok(ratio)
    } else {
        Err(RatingError::NoHeating {
            from_degc,
            to_degc,
            time_s,
        })
    }
}

/// IEC's formula: I = ε K S √(ln((T2 + β)/(T1 + β))/t).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SquareMetreForm {
    /// K, A·√s/m².
    pub heat_a_root_s_per_m2: f64,
    /// β, °C below 0 at which the resistance would vanish.
    pub zero_degc: f64,
}

impl SquareMetreForm {
    /// Copper: 226 A·√s/mm² and 234.5, read in a public text.
    pub const COPPER: SquareMetreForm = SquareMetreForm {
        heat_a_root_s_per_m2: 226e6,
        zero_degc: 234.5,
    };
    /// Aluminium: 148 A·√s/mm², read in a public text; 228 from memory.
    pub const ALUMINIUM: SquareMetreForm = SquareMetreForm {
        heat_a_root_s_per_m2: 148e6,
        zero_degc: 228.0,
    };
    /// Lead: 41 A·√s/mm² and 230, from memory.
    pub const LEAD: SquareMetreForm = SquareMetreForm {
        heat_a_root_s_per_m2: 41e6,
        zero_degc: 230.0,
    };

    /// K and β of a metal from its heat capacity and resistivity: K = √(σ (β + 20)/ρ20).
    ///
    /// σ, `heat_j_per_m3_k`: volumetric heat capacity, J/(m³·K) · ρ20, `resistivity_20_ohm_m`: Ω·m.
    ///
    /// # Source
    /// iec_60949, table I; the formula is a closed form.
    ///
    /// ```
    /// use jointwright_numerics::rating::short_circuit::SquareMetreForm;
    /// let copper = SquareMetreForm::of(3.45e6, 1.7241e-8, 234.5);
    /// assert!((copper.heat_a_root_s_per_m2 * 1e-6 - 225.67).abs() < 0.01);
    /// ```
    pub fn of(heat_j_per_m3_k: f64, resistivity_20_ohm_m: f64, zero_degc: f64) -> SquareMetreForm {
        SquareMetreForm {
            heat_a_root_s_per_m2: (heat_j_per_m3_k * (zero_degc + 20.0) / resistivity_20_ohm_m)
                .sqrt(),
            zero_degc,
        }
    }

    /// Current that heats the metal from a first to a second temperature, A.
    ///
    /// S, `area_m2`: m² · T1, T2: `from_degc`, `to_degc`, °C · t, `time_s`: s.
    /// This is the adiabatic value; multiply it by ε of [`conductor_leak_ratio()`] or [`screen_leak_ratio()`] for the heat that leaves.
    ///
    /// # Errors
    /// [`RatingError::NoHeating`].
    ///
    /// # Source
    /// iec_60949, memory.
    ///
    /// ```
    /// use jointwright_numerics::rating::short_circuit::SquareMetreForm;
    /// let amperes = SquareMetreForm::ALUMINIUM.current_a(53.49e-6, 90.0, 250.0, 1.0)?;
    /// assert!((amperes - 5053.936).abs() < 0.01);
    /// # Ok::<(), jointwright_numerics::rating::RatingError>(())
    /// ```
    pub fn current_a(
        &self,
        area_m2: f64,
        from_degc: f64,
        to_degc: f64,
        time_s: f64,
    ) -> Result<f64, RatingError> {
        let ratio = heating_ratio(self.zero_degc, from_degc, to_degc, time_s)?;
        Ok(self.heat_a_root_s_per_m2 * area_m2 * (ratio.ln() / time_s).sqrt())
    }
}

/// Non-adiabatic constants of a conductor's surroundings: X in √(mm²/s), Y in mm²/s.
///
/// The constants are from memory and unconfirmed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leak {
    /// X, √(mm²/s).
    pub root: f64,
    /// Y, mm²/s.
    pub whole: f64,
}

impl Leak {
    /// Copper in cross-linked polyethylene; from memory.
    pub const COPPER_XLPE: Leak = Leak::of(0.41, 0.12);
    /// Copper in ethylene-propylene rubber above 3 kV; from memory.
    pub const COPPER_EPR: Leak = Leak::of(0.32, 0.07);
    /// Aluminium in cross-linked polyethylene; from memory.
    pub const ALUMINIUM_XLPE: Leak = Leak::of(0.57, 0.16);
    /// Aluminium in ethylene-propylene rubber above 3 kV; from memory.
    pub const ALUMINIUM_EPR: Leak = Leak::of(0.44, 0.10);

    const fn of(root: f64, whole: f64) -> Leak {
        Leak { root, whole }
    }
}

/// ε of a conductor, non-adiabatic factor on the current: ε = √(1 + X √(t/S) + Y t/S), S in mm².
///
/// # Source
/// iec_60949, table II, memory.
///
/// ```
/// use jointwright_numerics::rating::short_circuit::{Leak, conductor_leak_ratio};
/// let ratio = conductor_leak_ratio(Leak::COPPER_XLPE, 240e-6, 1.0);
/// assert!((ratio - 1.013_393_007).abs() < 1e-9);
/// ```
pub fn conductor_leak_ratio(leak: Leak, area_m2: f64, time_s: f64) -> f64 {
    let ratio = time_s / (area_m2 * 1e6);
    (1.0 + leak.root * ratio.sqrt() + leak.whole * ratio).sqrt()
}

/// ε of a screen, non-adiabatic factor: ε = 1 + 0.61 M√t − 0.069 (M√t)² + 0.0043 (M√t)³.
///
/// M, `touch_per_root_s`: 1/√s, see [`touch_per_root_s()`] · t, `time_s`: s.
///
/// # Source
/// iec_60949, clause 6, memory.
///
/// ```
/// use jointwright_numerics::rating::short_circuit::screen_leak_ratio;
/// assert!((screen_leak_ratio(0.05, 1.0) - 1.030_328_038).abs() < 1e-9);
/// ```
pub fn screen_leak_ratio(touch_per_root_s: f64, time_s: f64) -> f64 {
    let argument = touch_per_root_s * time_s.sqrt();
    1.0 + argument * (0.61 + argument * (-0.069 + 0.0043 * argument))
}

/// A material in contact with a screen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Beside {
    /// Volumetric heat capacity, J/(m³·K).
    pub heat_j_per_m3_k: f64,
    /// Thermal resistivity, K·m/W.
    pub resistivity_k_m_per_w: f64,
}

/// M of a screen, 1/√s: M = F (√(σ2/ρ2) + √(σ3/ρ3))/(2 σ1 δ), with a factor 10³ if δ is in mm.
///
/// σ1, `heat_j_per_m3_k`: of the screen, J/(m³·K) · δ, `thickness_m`: m · F, `contact_ratio`: 0.7 if full contact is not known.
///
/// # Source
/// iec_60949, clause 6, memory.
///
/// ```
/// use jointwright_numerics::rating::short_circuit::{Beside, touch_per_root_s};
/// let plastic = Beside { heat_j_per_m3_k: 2.4e6, resistivity_k_m_per_w: 3.5 };
/// let touch = touch_per_root_s(3.45e6, 1e-3, [plastic, plastic], 0.7);
/// assert!((touch - 0.168_02).abs() < 1e-5);
/// ```
pub fn touch_per_root_s(
    heat_j_per_m3_k: f64,
    thickness_m: f64,
    beside: [Beside; 2],
    contact_ratio: f64,
) -> f64 {
    let taken: f64 = beside
        .iter()
        .map(|side| (side.heat_j_per_m3_k / side.resistivity_k_m_per_w).sqrt())
        .sum();
    contact_ratio * taken / (2.0 * heat_j_per_m3_k * thickness_m)
}
