//! Shield: induced currents and voltages in the metal around the phases, and the metal's area.
//!
//! Source: iec_60287_1_1, clause 2.3 (losses), ieee_575 (standing voltages), icea_p45482 (areas), all recalled; `docs/theory/rating.md`.

use std::f64::consts::{LN_2, PI};

use super::MU0_OVER_2PI_H_PER_M;
use super::conductor::at_temperature;

/// Bonding of the shields of three phases.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Bond {
    /// Bonded at one end: no current circulates, λ1 = 0.
    /// Eddy currents within each shield are neglected.
    OneEnd,
    /// Bonded at both ends, with all three alike: trefoil, or flat and transposed.
    BothEnds {
        /// X, reactance of a shield, Ω/m.
        reactance_ohm_per_m: f64,
    },
    /// Bonded at both ends, flat and not transposed: the greatest of the three losses counts.
    BothEndsFlat {
        /// X, reactance between neighbours, Ω/m.
        reactance_ohm_per_m: f64,
        /// Xm, additional reactance of the outer ones, Ω/m.
        mutual_ohm_per_m: f64,
    },
}

/// The shield of each phase.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shield {
    /// Resistance at 20 °C, Ω/m.
    pub resistance_20_ohm_per_m: f64,
    /// α20, change of resistance at 20 °C, 1/K.
    pub coefficient_20_per_k: f64,
    /// Bonding of the three shields.
    pub bond: Bond,
}

impl Shield {
    /// λ1', ratio of the loss in the shield to the loss in the conductor.
    ///
    /// R, `conductor_ohm_per_m`: resistance of the conductor to alternating current, Ω/m · `temperature_degc`: of the shield, °C.
    ///
    /// # Source
    /// iec_60287_1_1, clause 2.3.
    ///
    /// ```
    /// use jointwright_numerics::rating::{Bond, shield::Shield};
    /// let shield = Shield {
    ///     resistance_20_ohm_per_m: 2e-4,
    ///     coefficient_20_per_k: 0.004,
    ///     bond: Bond::OneEnd,
    /// };
    /// assert_eq!(shield.loss_ratio(4e-5, 80.0), 0.0);
    /// ```
    pub fn loss_ratio(&self, conductor_ohm_per_m: f64, temperature_degc: f64) -> f64 {
        let own = at_temperature(
            self.resistance_20_ohm_per_m,
            self.coefficient_20_per_k,
            temperature_degc,
        );
        match self.bond {
            Bond::OneEnd => 0.0,
            Bond::BothEnds {
                reactance_ohm_per_m,
            } => loss_ratio(own, conductor_ohm_per_m, reactance_ohm_per_m),
            Bond::BothEndsFlat {
                reactance_ohm_per_m,
                mutual_ohm_per_m,
            } => {
                let three = flat_loss_ratios(
                    own,
                    conductor_ohm_per_m,
                    reactance_ohm_per_m,
                    mutual_ohm_per_m,
                );
                three.into_iter().fold(0.0, f64::max)
            }
        }
    }
}

/// 2ω · 10⁻⁷, Ω/m.
fn unit_reactance_ohm_per_m(frequency_hz: f64) -> f64 {
    2.0 * PI * frequency_hz * MU0_OVER_2PI_H_PER_M
}

/// X of a shield in trefoil, and between neighbours in flat formation, Ω/m: X = 2ω · 10⁻⁷ · ln(2s/d).
///
/// s, `spacing_m`: between axes, m · d, `mean_m`: mean diameter of the shield, m.
///
/// # Source
/// iec_60287_1_1, clause 2.3.1.
///
/// ```
/// use jointwright_numerics::rating::shield::reactance_ohm_per_m;
/// let ohm_per_m = reactance_ohm_per_m(50.0, 75.5e-3, 67.7e-3);
/// assert!((ohm_per_m - 5.040_331_399e-5).abs() < 1e-13);
/// ```
pub fn reactance_ohm_per_m(frequency_hz: f64, spacing_m: f64, mean_m: f64) -> f64 {
    unit_reactance_ohm_per_m(frequency_hz) * (2.0 * spacing_m / mean_m).ln()
}

/// X1 of a shield in flat formation with transposed cables, Ω/m: X1 = 2ω · 10⁻⁷ · ln(2 ∛2 s/d).
///
/// # Source
/// iec_60287_1_1, clause 2.3.2.
///
/// ```
/// use jointwright_numerics::rating::shield::{reactance_ohm_per_m, transposed_ohm_per_m};
/// let more = transposed_ohm_per_m(50.0, 0.2, 0.05) - reactance_ohm_per_m(50.0, 0.2, 0.05);
/// assert!((more - 2e-5 * std::f64::consts::PI * 2.0_f64.ln() / 3.0).abs() < 1e-12);
/// ```
pub fn transposed_ohm_per_m(frequency_hz: f64, spacing_m: f64, mean_m: f64) -> f64 {
    reactance_ohm_per_m(frequency_hz, spacing_m, mean_m)
        + unit_reactance_ohm_per_m(frequency_hz) * LN_2 / 3.0
}

/// Xm of flat formation, Ω/m: Xm = 2ω · 10⁻⁷ · ln 2.
///
/// # Source
/// iec_60287_1_1, clause 2.3.3.
///
/// ```
/// use jointwright_numerics::rating::shield::flat_mutual_ohm_per_m;
/// assert!((flat_mutual_ohm_per_m(50.0) - 4.355e-5).abs() < 1e-8);
/// ```
pub fn flat_mutual_ohm_per_m(frequency_hz: f64) -> f64 {
    unit_reactance_ohm_per_m(frequency_hz) * LN_2
}

/// λ1' of three equal shields bonded at both ends: λ1' = Rs/R · 1/(1 + (Rs/X)²).
///
/// Rs, `shield_ohm_per_m`, and R, `conductor_ohm_per_m`: resistances to alternating current, Ω/m · X: Ω/m.
///
/// # Source
/// iec_60287_1_1, clause 2.3.1.
///
/// ```
/// use jointwright_numerics::rating::shield::loss_ratio;
/// let ratio = loss_ratio(2.072_723_957e-4, 3.952_152_638e-5, 5.040_331_399e-5);
/// assert!((ratio - 0.292_814_251).abs() < 1e-9);
/// ```
pub fn loss_ratio(
    shield_ohm_per_m: f64,
    conductor_ohm_per_m: f64,
    reactance_ohm_per_m: f64,
) -> f64 {
    let (own, reactance) = (
        shield_ohm_per_m * shield_ohm_per_m,
        reactance_ohm_per_m * reactance_ohm_per_m,
    );
    shield_ohm_per_m / conductor_ohm_per_m * reactance / (own + reactance)
}

/// λ1' of three shields in flat formation, bonded at both ends and not transposed: lagging outer, middle, leading outer.
///
/// With P = X + Xm and Q = X − Xm/3, the middle one has Rs/R · Q²/(Rs² + Q²), and the outer ones have
/// Rs/R · (¾ P²/(Rs² + P²) + ¼ Q²/(Rs² + Q²) ± 2 Rs P Q Xm/(√3 (Rs² + P²)(Rs² + Q²))).
///
/// # Source
/// iec_60287_1_1, clause 2.3.3, memory; compared with the complex currents in our tests.
///
/// ```
/// use jointwright_numerics::rating::shield::flat_loss_ratios;
/// let [lagging, middle, leading] = flat_loss_ratios(2e-4, 4e-5, 1.1e-4, 4.355e-5);
/// assert!(lagging > leading && leading > middle);
/// ```
pub fn flat_loss_ratios(
    shield_ohm_per_m: f64,
    conductor_ohm_per_m: f64,
    reactance_ohm_per_m: f64,
    mutual_ohm_per_m: f64,
) -> [f64; 3] {
    let p = reactance_ohm_per_m + mutual_ohm_per_m;
    let q = reactance_ohm_per_m - mutual_ohm_per_m / 3.0;
    let own = shield_ohm_per_m * shield_ohm_per_m;
    let (p_sum, q_sum) = (own + p * p, own + q * q);
    let even = 0.75 * p * p / p_sum + 0.25 * q * q / q_sum;
    let uneven =
        2.0 * shield_ohm_per_m * p * q * mutual_ohm_per_m / (3.0_f64.sqrt() * p_sum * q_sum);
    let ratio = shield_ohm_per_m / conductor_ohm_per_m;
    [
        ratio * (even + uneven),
        ratio * q * q / q_sum,
        ratio * (even - uneven),
    ]
}

/// Voltage along each of three shields bonded at one end, V for one ampere and metre.
///
/// E_k = jω · 2 · 10⁻⁷ · Σ_m I_m ln(1/d_km), with d_kk half the mean diameter of shield k; the currents are balanced, I_m = 1, a², a.
///
/// `axes_m`: positions of the three axes across the run, m · `mean_m`: mean diameter of the shields, m.
///
/// # Assumes
/// The currents are balanced, and no other conductor is near.
/// In an earth fault the voltage is far higher; it is not computed here.
///
/// # Source
/// ieee_575, memory; the sum itself is a closed form.
///
/// ```
/// use jointwright_numerics::rating::shield::standing_v_per_a_m;
/// let flat = [[-0.2, 0.0], [0.0, 0.0], [0.2, 0.0]];
/// let [outer, middle, _] = standing_v_per_a_m(50.0, flat, 67.7e-3);
/// assert!((100e3 * middle - 11.161_314_46).abs() < 1e-7);
/// assert!((100e3 * outer - 13.861_887_01).abs() < 1e-7);
/// ```
pub fn standing_v_per_a_m(frequency_hz: f64, axes_m: [[f64; 2]; 3], mean_m: f64) -> [f64; 3] {
    // The three currents as real and imaginary parts: 1, a², a.
    let half_root_3 = 3.0_f64.sqrt() / 2.0;
    let currents = [[1.0, 0.0], [-0.5, -half_root_3], [-0.5, half_root_3]];
    let unit = unit_reactance_ohm_per_m(frequency_hz);
    std::array::from_fn(|of| {
        let mut sum = [0.0; 2];
        for (from, current) in currents.iter().enumerate() {
            let distance = if from == of {
                mean_m / 2.0
            } else {
                let (here, there) = (axes_m[of], axes_m[from]);
                (here[0] - there[0]).hypot(here[1] - there[1])
            };
            let weight = -distance.ln();
            sum = [sum[0] + current[0] * weight, sum[1] + current[1] * weight];
        }
        unit * sum[0].hypot(sum[1])
    })
}

/// Voltage along each shield in trefoil, V for one ampere and metre: E = 2ω · 10⁻⁷ · ln(2s/d).
///
/// # Source
/// ieee_575, memory; the same sum as [`standing_v_per_a_m()`].
///
/// ```
/// use jointwright_numerics::rating::shield::standing_trefoil_v_per_a_m;
/// let volts = 100.0 * 1e3 * standing_trefoil_v_per_a_m(50.0, 75.5e-3, 67.7e-3);
/// assert!((volts - 5.040_331_399).abs() < 1e-8);
/// ```
pub fn standing_trefoil_v_per_a_m(frequency_hz: f64, spacing_m: f64, mean_m: f64) -> f64 {
    reactance_ohm_per_m(frequency_hz, spacing_m, mean_m)
}

/// Area of round wires, m²: A = n π d²/4.
///
/// # Source
/// icea_p45482, memory: there n d², in circular mils.
///
/// ```
/// use jointwright_numerics::rating::shield::wires_area_m2;
/// assert!((wires_area_m2(16, 1.628e-3) - 33.31e-6).abs() < 1e-8);
/// ```
pub fn wires_area_m2(n_wires: usize, wire_m: f64) -> f64 {
    n_wires as f64 * PI / 4.0 * wire_m * wire_m
}

/// Resistance of round wires laid around a core, Ω/m of cable: R = ρ/(n π d²/4) · √(1 + (π Dm/p)²).
///
/// ρ, `resistivity_ohm_m`: Ω·m · d, `wire_m`: m · Dm, `mean_m`: mean diameter of the layer, m · p, `pitch_m`: length of lay, m.
///
/// # Source
/// closed form: a helix unrolled.
///
/// ```
/// use jointwright_numerics::rating::shield::wires_ohm_per_m;
/// let straight = wires_ohm_per_m(1.7241e-8, 16, 1.628e-3, 0.03, 1e9);
/// let laid = wires_ohm_per_m(1.7241e-8, 16, 1.628e-3, 0.03, 0.3);
/// assert!((straight - 5.1766e-4).abs() < 1e-7);
/// assert!((laid / straight - 1.0482).abs() < 1e-4);
/// ```
pub fn wires_ohm_per_m(
    resistivity_ohm_m: f64,
    n_wires: usize,
    wire_m: f64,
    mean_m: f64,
    pitch_m: f64,
) -> f64 {
    let longer = 1.0_f64.hypot(PI * mean_m / pitch_m);
    resistivity_ohm_m / wires_area_m2(n_wires, wire_m) * longer
}

/// Effective area of a lapped tape along the cable, m²; between the first two values it depends on the contact of the turns.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TapeArea {
    /// No contact between turns: the current follows the helix, b w/√(1 + (π Dm/p)²), p = w (1 − L).
    pub no_contact_m2: f64,
    /// Full contact between turns: a tube, π Dm b/(1 − L).
    pub full_contact_m2: f64,
    /// Value of icea_p45482 for a new cable, from memory: π Dm b √(1/(2 (1 − L))).
    pub taken_m2: f64,
}

/// Effective area of a lapped tape, as an interval that depends on the contact.
///
/// b, `thickness_m`, and w, `width_m`: of the tape, m · Dm, `mean_m`: mean diameter, m · L, `overlap_ratio`: share of the width that lies under the next turn, below 1.
///
/// # Source
/// icea_p45482, memory: there 4 b Dm √(100/(2 (100 − L))), in circular mils; the two ends of the interval are closed forms.
///
/// ```
/// use jointwright_numerics::rating::shield::tape_area;
/// let area = tape_area(0.127e-3, 25.4e-3, 24.13e-3, 0.25);
/// assert!((area.taken_m2 * 1e6 - 7.8608).abs() < 1e-3);
/// assert!(area.no_contact_m2 < 0.3 * area.taken_m2 && area.taken_m2 < area.full_contact_m2);
/// ```
pub fn tape_area(thickness_m: f64, width_m: f64, mean_m: f64, overlap_ratio: f64) -> TapeArea {
    let open = 1.0 - overlap_ratio;
    let tube = PI * mean_m * thickness_m;
    let helix = 1.0_f64.hypot(PI * mean_m / (width_m * open));
    TapeArea {
        no_contact_m2: thickness_m * width_m / helix,
        full_contact_m2: tube / open,
        taken_m2: tube * (0.5 / open).sqrt(),
    }
}

/// Area of flat straps, m²: A = n w b.
///
/// # Source
/// icea_p45482, memory: there 1.27 n w b, in circular mils, with 1.27 for 4/π.
///
/// ```
/// use jointwright_numerics::rating::shield::straps_area_m2;
/// assert!((straps_area_m2(7, 4.445e-3, 0.635e-3) - 19.758e-6).abs() < 1e-9);
/// ```
pub fn straps_area_m2(n_straps: usize, width_m: f64, thickness_m: f64) -> f64 {
    n_straps as f64 * width_m * thickness_m
}

/// Allowance for the corrugation under a longitudinal tape, added to the diameter, m: 50 mil.
const CORRUGATION_M: f64 = 50.0 * 25.4e-6;

/// Area of a longitudinal corrugated tape, m²: A = (π (D + 50 mil) + B) b.
///
/// D, `under_m`: diameter over the insulation screen, m · B, `overlap_m`: overlap of its edges, m · b, `thickness_m`: m.
///
/// # Source
/// icea_p45482, memory: there with 1.27 for 4/π, in circular mils.
///
/// ```
/// use jointwright_numerics::rating::shield::corrugated_area_m2;
/// let area = corrugated_area_m2(24.13e-3, 9.525e-3, 0.2032e-3);
/// assert!((area * 1e6 - 18.150).abs() < 1e-3);
/// ```
pub fn corrugated_area_m2(under_m: f64, overlap_m: f64, thickness_m: f64) -> f64 {
    (PI * (under_m + CORRUGATION_M) + overlap_m) * thickness_m
}
