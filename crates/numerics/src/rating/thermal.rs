//! Thermal: thermal resistances between conductor and surroundings, K·m/W.
//!
//! Source: iec_60287_2_1; its clauses, formulas and constants are recalled and not read, except those that a published case repeats; `docs/theory/rating.md`.

use std::f64::consts::PI;

use super::error::RatingError;

/// Greatest number of bisections: more than a float has bits.
const N_HALVINGS: usize = 200;

/// Factor of the jacket's thermal resistance in touching trefoil: the heat leaves through a part of the circle only.
///
/// Source: iec_60287_2_1; repeated by cigre_tb880, case 0-1.
pub const TOUCHING_TREFOIL_RATIO: f64 = 1.6;

/// Thermal resistance of a layer between two circles, K·m/W: T = ρ/2π · ln(D/d).
///
/// ρ, `resistivity_k_m_per_w`: K·m/W · d, `inside_m`, and D, `outside_m`: diameters, m.
///
/// # Source
/// closed form; iec_60287_2_1.
///
/// ```
/// use jointwright_numerics::rating::thermal::layer_k_m_per_w;
/// let resistance = layer_k_m_per_w(3.5, 68.5e-3, 75.5e-3);
/// assert!((1.6 * resistance - 0.086_719_375).abs() < 1e-9);
/// ```
pub fn layer_k_m_per_w(resistivity_k_m_per_w: f64, inside_m: f64, outside_m: f64) -> f64 {
    resistivity_k_m_per_w / (2.0 * PI) * (outside_m / inside_m).ln()
}

/// u = 2L/De, above 1 if the cable is covered.
fn burial(depth_m: f64, outside_m: f64) -> Result<f64, RatingError> {
    let ratio = 2.0 * depth_m / outside_m;
    if ratio > 1.0 && outside_m > 0.0 {
        Ok(ratio)
    } else {
        Err(RatingError::NotBuried { depth_m, outside_m })
    }
}

/// Thermal resistance of the soil about one cable, K·m/W: T4 = ρ/2π · ln(u + √(u² − 1)), u = 2L/De.
///
/// L, `depth_m`: from the surface to the axis, m · De, `outside_m`: diameter over all, m.
///
/// # Assumes
/// The surface is isothermal and the soil has one resistivity; then the formula is exact.
///
/// # Errors
/// [`RatingError::NotBuried`].
///
/// # Source
/// closed form; iec_60287_2_1.
///
/// ```
/// use jointwright_numerics::rating::thermal::buried_k_m_per_w;
/// let resistance = buried_k_m_per_w(1.0, 1.0, 0.0755)?;
/// assert!((resistance - 0.631_775).abs() < 1e-6);
/// # Ok::<(), jointwright_numerics::rating::RatingError>(())
/// ```
pub fn buried_k_m_per_w(
    resistivity_k_m_per_w: f64,
    depth_m: f64,
    outside_m: f64,
) -> Result<f64, RatingError> {
    let ratio = burial(depth_m, outside_m)?;
    Ok(resistivity_k_m_per_w / (2.0 * PI) * ratio.acosh())
}

/// Thermal resistance of the soil about each of three cables in touching trefoil, with metal around each, K·m/W.
///
/// T4 = 1.5 ρ/π · (ln 2u − 0.630), u = 2L/De, L the depth of the trefoil's centre.
///
/// # Errors
/// [`RatingError::NotBuried`].
///
/// # Source
/// iec_60287_2_1; repeated by cigre_tb880, case 0-1.
///
/// ```
/// use jointwright_numerics::rating::thermal::touching_trefoil_k_m_per_w;
/// let resistance = touching_trefoil_k_m_per_w(1.0, 1.0, 0.0755)?;
/// assert!((resistance - 1.594_692_892).abs() < 1e-9);
/// # Ok::<(), jointwright_numerics::rating::RatingError>(())
/// ```
pub fn touching_trefoil_k_m_per_w(
    resistivity_k_m_per_w: f64,
    depth_m: f64,
    outside_m: f64,
) -> Result<f64, RatingError> {
    let ratio = burial(depth_m, outside_m)?;
    Ok(1.5 / PI * resistivity_k_m_per_w * ((2.0 * ratio).ln() - 0.630))
}

/// Thermal resistance of the soil about the middle one of three spaced cables side by side, K·m/W.
///
/// T4 = ρ/2π · (ln(u + √(u² − 1)) + ln(1 + (2L/s)²)), u = 2L/De.
///
/// s, `spacing_m`: between axes, m.
///
/// # Assumes
/// The three cables have equal losses; a neighbouring cable is a line source.
///
/// # Errors
/// [`RatingError::NotBuried`].
///
/// # Source
/// closed form (images); iec_60287_2_1.
///
/// ```
/// use jointwright_numerics::rating::thermal::flat_middle_k_m_per_w;
/// let resistance = flat_middle_k_m_per_w(1.0, 1.0, 0.0755, 0.2)?;
/// assert!((resistance - 1.366_294).abs() < 1e-6);
/// # Ok::<(), jointwright_numerics::rating::RatingError>(())
/// ```
pub fn flat_middle_k_m_per_w(
    resistivity_k_m_per_w: f64,
    depth_m: f64,
    outside_m: f64,
    spacing_m: f64,
) -> Result<f64, RatingError> {
    let alone = buried_k_m_per_w(resistivity_k_m_per_w, depth_m, outside_m)?;
    let beside = (1.0 + (2.0 * depth_m / spacing_m).powi(2)).ln();
    Ok(alone + resistivity_k_m_per_w / (2.0 * PI) * beside)
}

/// Constants of the filling of a duct: T = U/(1 + 0.1 (V + Y θm) De), De in mm.
///
/// The constants are from memory.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Filling {
    /// U.
    pub still: f64,
    /// V, 1/mm.
    pub moving: f64,
    /// Y, 1/(mm·K).
    pub warming: f64,
}

impl Filling {
    /// Air in a duct of plastic; from memory.
    pub const AIR_IN_PLASTIC: Filling = Filling::of(1.87, 0.312, 0.0037);
    /// Air in a duct of metal; from memory.
    pub const AIR_IN_METAL: Filling = Filling::of(5.2, 1.4, 0.011);
    /// Air in a duct of fibre within concrete; from memory.
    pub const AIR_IN_FIBRE_IN_CONCRETE: Filling = Filling::of(5.2, 0.91, 0.010);
    /// Air in a duct of earthenware; from memory.
    pub const AIR_IN_EARTHENWARE: Filling = Filling::of(1.87, 0.28, 0.0036);
    /// Water in any duct; from memory.
    pub const WATER: Filling = Filling::of(0.1, 0.03, 0.001);

    const fn of(still: f64, moving: f64, warming: f64) -> Filling {
        Filling {
            still,
            moving,
            warming,
        }
    }

    /// Whether all values are finite and none is negative.
    pub(super) fn is_given(&self) -> bool {
        are_given(&[self.still, self.moving, self.warming])
    }

    /// T4', thermal resistance between the cables and the inside of their duct, K·m/W, for all heat in the duct.
    ///
    /// De, `group_m`: diameter of the circle about all cables, m, see [`group_diameter_m()`] · θm, `mean_degc`: mean temperature of the filling, °C.
    ///
    /// # Source
    /// iec_60287_2_1, memory.
    ///
    /// ```
    /// use jointwright_numerics::rating::thermal::Filling;
    /// let resistance = Filling::AIR_IN_PLASTIC.resistance_k_m_per_w(0.1, 50.0);
    /// assert!((resistance - 1.87 / (1.0 + 0.1 * (0.312 + 0.185) * 100.0)).abs() < 1e-12);
    /// ```
    pub fn resistance_k_m_per_w(&self, group_m: f64, mean_degc: f64) -> f64 {
        let moved = self.moving + self.warming * mean_degc;
        self.still / (1.0 + 0.1 * moved * group_m * 1e3)
    }
}

/// Whether all values are finite and none is negative.
fn are_given(numbers: &[f64]) -> bool {
    numbers.iter().all(|each| *each >= 0.0 && each.is_finite())
}

/// Diameter of the circle that represents 1 to 4 equal cables in one duct, m: 1, 1.65, 2.15 or 2.5 times one diameter; `None` for more cables.
///
/// # Source
/// iec_60287_2_1, memory.
///
/// ```
/// use jointwright_numerics::rating::thermal::group_diameter_m;
/// assert_eq!(group_diameter_m(3, 0.04), Some(0.086));
/// assert_eq!(group_diameter_m(5, 0.04), None);
/// ```
pub fn group_diameter_m(n_cables: usize, outside_m: f64) -> Option<f64> {
    let ratio = match n_cables {
        1 => 1.0,
        2 => 1.65,
        3 => 2.15,
        4 => 2.5,
        _ => return None,
    };
    Some(ratio * outside_m)
}

/// Correction to the thermal resistance of the soil for a bank of another material about the ducts, K·m/W for all heat of the bank; negative if the bank conducts better.
///
/// ΔT = (ρe − ρc)/2π · ln(u + √(u² − 1)), u = L/rb, ln rb = ½ x/y (4/π − x/y) ln(1 + y²/x²) + ln x/2.
///
/// ρe of the soil, ρc of the bank, `resistivities_k_m_per_w` · L, `depth_m`: of the bank's centre, m · x and y, `sides_m`: its shorter and longer side, m.
/// Add it to the resistance of soil that has ρc everywhere.
///
/// # Errors
/// [`RatingError::NotBuried`]; [`RatingError::NoNumber`] if one side is more than three times the other.
///
/// # Source
/// iec_60287_2_1, memory.
///
/// ```
/// use jointwright_numerics::rating::thermal::bank_k_m_per_w;
/// // A square of 0.6 m: ln rb = ½ (4/π − 1) ln 2 + ln 0.3.
/// let radius = 0.3 * (0.5 * (4.0 / std::f64::consts::PI - 1.0) * 2_f64.ln()).exp();
/// let more = bank_k_m_per_w((1.2, 0.8), 1.0, (0.6, 0.6))?;
/// assert!((more - 0.4 / std::f64::consts::TAU * (1.0 / radius).acosh()).abs() < 1e-12);
/// # Ok::<(), jointwright_numerics::rating::RatingError>(())
/// ```
pub fn bank_k_m_per_w(
    resistivities_k_m_per_w: (f64, f64),
    depth_m: f64,
    sides_m: (f64, f64),
) -> Result<f64, RatingError> {
    let (x, y) = (sides_m.0.min(sides_m.1), sides_m.0.max(sides_m.1));
    if !(x > 0.0 && y <= 3.0 * x) {
        return Err(RatingError::NoNumber);
    }
    let ratio = x / y;
    let log = 0.5 * ratio * (4.0 / PI - ratio) * (1.0 + (y / x).powi(2)).ln() + (x / 2.0).ln();
    let u = burial(depth_m, 2.0 * log.exp())?;
    let (soil, bank) = resistivities_k_m_per_w;
    Ok((soil - bank) / (2.0 * PI) * u.acosh())
}

/// Constants of cables in free air: h = Z/De^g + E, W/(m²·K^1.25).
///
/// The constants are from memory.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hanging {
    /// Z.
    pub slope: f64,
    /// E.
    pub floor: f64,
    /// g.
    pub power: f64,
}

impl Hanging {
    /// One cable; from memory.
    pub const ALONE: Hanging = Hanging::of(0.21, 3.94, 0.60);
    /// Three cables in touching trefoil; from memory.
    pub const TREFOIL: Hanging = Hanging::of(0.96, 1.25, 0.20);
    /// Three cables side by side that touch; from memory.
    pub const FLAT_TOUCHING: Hanging = Hanging::of(0.62, 1.95, 0.25);

    const fn of(slope: f64, floor: f64, power: f64) -> Hanging {
        Hanging {
            slope,
            floor,
            power,
        }
    }

    /// h, coefficient of convection and radiation together, W/(m²·K^1.25).
    ///
    /// # Source
    /// iec_60287_2_1, memory.
    ///
    /// ```
    /// use jointwright_numerics::rating::thermal::Hanging;
    /// let h = Hanging::ALONE.coefficient(0.04);
    /// assert!((h - (0.21 / 0.04_f64.powf(0.6) + 3.94)).abs() < 1e-12);
    /// ```
    pub fn coefficient(&self, outside_m: f64) -> f64 {
        self.slope / outside_m.powf(self.power) + self.floor
    }

    /// Δθ, temperature of each cable's surface above the air, K: q = π De h Δθ^1.25.
    ///
    /// q, `heat_w_per_m`: heat that leaves one cable, W/m · De, `outside_m`: m.
    /// The standard writes it as T4 = 1/(π De h Δθ^0.25).
    ///
    /// # Source
    /// iec_60287_2_1, memory.
    ///
    /// ```
    /// use jointwright_numerics::rating::thermal::Hanging;
    /// let rise = Hanging::ALONE.rise_k(30.0, 0.04);
    /// let leaves = std::f64::consts::PI * 0.04 * Hanging::ALONE.coefficient(0.04) * rise.powf(1.25);
    /// assert!((leaves - 30.0).abs() < 1e-9);
    /// ```
    pub fn rise_k(&self, heat_w_per_m: f64, outside_m: f64) -> f64 {
        (heat_w_per_m / (PI * outside_m * self.coefficient(outside_m))).powf(0.8)
    }
}

/// Film of a surface in still air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum StillAir {
    /// One coefficient for convection and radiation together.
    Coefficient(Hanging),
    /// Separate terms for convection and radiation, see [`neher_mcgrath_rise_k()`].
    NeherMcGrath {
        /// ε, emissivity: 0.95 for jackets and painted conduits, from memory.
        emissivity_ratio: f64,
    },
}

impl StillAir {
    /// Whether all values are finite and none is negative.
    pub(super) fn is_given(&self) -> bool {
        match *self {
            StillAir::Coefficient(Hanging {
                slope,
                floor,
                power,
            }) => are_given(&[slope, floor, power]),
            StillAir::NeherMcGrath { emissivity_ratio } => are_given(&[emissivity_ratio]),
        }
    }

    /// Temperature of the surface above the air, K.
    ///
    /// `heat_w_per_m`: all heat that leaves, W/m · `outside_m`: diameter, m · `ambient_degc`: of the air, °C.
    ///
    /// # Source
    /// iec_60287_2_1, neher_mcgrath; both from memory.
    ///
    /// ```
    /// use jointwright_numerics::rating::thermal::{StillAir, Hanging, neher_mcgrath_rise_k};
    /// let one = StillAir::Coefficient(Hanging::ALONE).rise_k(30.0, 0.04, 40.0);
    /// assert_eq!(one, Hanging::ALONE.rise_k(30.0, 0.04));
    /// let other = StillAir::NeherMcGrath { emissivity_ratio: 0.95 }.rise_k(30.0, 0.04, 40.0);
    /// assert_eq!(other, neher_mcgrath_rise_k(30.0, 0.04, 0.95, 40.0));
    /// ```
    pub fn rise_k(&self, heat_w_per_m: f64, outside_m: f64, ambient_degc: f64) -> f64 {
        match *self {
            StillAir::Coefficient(hanging) => hanging.rise_k(heat_w_per_m, outside_m),
            StillAir::NeherMcGrath { emissivity_ratio } => {
                neher_mcgrath_rise_k(heat_w_per_m, outside_m, emissivity_ratio, ambient_degc)
            }
        }
    }
}

/// One foot, m: a thermal ohm-foot is so many K·m/W.
const FOOT_M: f64 = 0.3048;
/// One inch, m.
const INCH_M: f64 = 0.0254;

/// Temperature of a single surface above still air, K, with separate terms for convection and radiation.
///
/// T4 = 15.6/(D ((Δθ/D)^¼ + 1.6 ε (1 + 0.0167 θm))), thermal ohm-feet, D in inches, θm = θair + Δθ/2, °C.
///
/// q, `heat_w_per_m`: all heat that leaves, W/m · D, `outside_m`: m · ε, `emissivity_ratio` · θair, `ambient_degc`: °C.
/// An input that is not finite, or a diameter of 0, gives NaN.
///
/// # Source
/// neher_mcgrath, memory.
///
/// ```
/// use jointwright_numerics::rating::thermal::neher_mcgrath_rise_k;
/// // 1 in, 30 K above 40 °C: 15.6/(2.340 + 2.9157) thermal ohm-feet.
/// let resistance = 0.3048 * 15.6 / (30_f64.powf(0.25) + 1.6 * 0.95 * (1.0 + 0.0167 * 55.0));
/// let rise = neher_mcgrath_rise_k(30.0 / resistance, 0.0254, 0.95, 40.0);
/// assert!((rise - 30.0).abs() < 1e-9);
/// ```
pub fn neher_mcgrath_rise_k(
    heat_w_per_m: f64,
    outside_m: f64,
    emissivity_ratio: f64,
    ambient_degc: f64,
) -> f64 {
    let inches = outside_m / INCH_M;
    let leaves = |rise: f64| {
        let mean_degc = ambient_degc + rise / 2.0;
        let convected = (rise / inches).powf(0.25);
        let radiated = 1.6 * emissivity_ratio * (1.0 + 0.0167 * mean_degc);
        rise * inches * (convected + radiated) / (15.6 * FOOT_M)
    };
    let are_numbers = [heat_w_per_m, ambient_degc, emissivity_ratio]
        .iter()
        .all(|each| each.is_finite());
    if !(are_numbers && emissivity_ratio >= 0.0 && outside_m > 0.0 && outside_m.is_finite()) {
        return f64::NAN;
    }
    if heat_w_per_m <= 0.0 {
        return 0.0;
    }
    let mut high = 1.0;
    while leaves(high) < heat_w_per_m {
        high *= 2.0;
        if !high.is_finite() {
            return f64::NAN;
        }
    }
    let mut low = 0.0;
    for _ in 0..N_HALVINGS {
        let middle = low + (high - low) / 2.0;
        if middle <= low || middle >= high {
            break;
        }
        if leaves(middle) < heat_w_per_m {
            low = middle;
        } else {
            high = middle;
        }
    }
    low
}
