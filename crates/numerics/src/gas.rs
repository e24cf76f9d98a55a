//! Gas: the breakdown voltage of an air gap in a uniform field.
//!
//! **What.** [`breakdown_crest_v()`]: from the length of the gap and the pressure.
//!
//! **Why separate.** One curve with two branches and one measured value, each with its source and its range.
//!
//! **Invariants.** The voltage is never below the measured minimum, and it rises with the gap.
//! A breakdown voltage is a crest value; compare it with crest values only.
//!
//! **Not here.** The place of the gap and the voltage across it; starting electrons, rough surfaces, humidity.
//!
//! **Source.** `docs/theory/gap.md`.

/// Least breakdown voltage of air, measured, V crest; at 0.567 Torr·cm.
pub const LEAST_V: f64 = 327.0;
/// Townsend's constants of air: ionisations per centimetre and Torr, volts per centimetre and Torr, electrons per ion.
const A: f64 = 15.0;
const B: f64 = 365.0;
const GAMMA: f64 = 0.01;
/// Constants of Schumann's form of the breakdown voltage: U = C √(pd) + E pd, pd in bar·cm, U in kV crest; from memory.
const SCHUMANN_C: f64 = 6.72;
const SCHUMANN_E: f64 = 24.36;
const TORR_PER_BAR: f64 = 750.062;
const BAR_PER_PASCAL: f64 = 1e-5;

/// Curve from which a breakdown voltage is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Curve {
    /// Townsend's criterion with the constants of air, as read in the source.
    Townsend,
    /// The lower of Townsend's criterion and Schumann's form, which is from memory; Schumann's is the lower one above about 0.2 mm at one bar.
    LowerOfBoth,
}

/// Breakdown voltage of an air gap in a uniform field, V crest.
///
/// `gap_m` in metres, `pressure_pa` in pascals.
/// Below the gap of the measured minimum, the result is that minimum: towards
/// smaller gaps the two constants no longer describe the measurements, and discharges find a longer path.
///
/// Townsend: U = B·pd / (ln(A·pd) − ln(ln(1 + 1/γ))).
///
/// Errors: at 1 mm and one bar the Townsend curve lies about a tenth above Schumann's.
/// Source: constants A = 15, B = 365 (cm, Torr), γ = 0.01 and the measured minimum of 327 V at 0.567 Torr·cm as read in public texts; Schumann's form from memory.
///
/// ```
/// use jointwright_numerics::gas::{Curve, breakdown_crest_v};
/// let bar = 101_325.0;
/// let volts = breakdown_crest_v(1e-4, bar, Curve::Townsend);
/// assert!((volts - 865.0).abs() < 2.0);
/// assert!((breakdown_crest_v(1e-6, bar, Curve::Townsend) - 327.0).abs() < 1e-9);
/// ```
pub fn breakdown_crest_v(gap_m: f64, pressure_pa: f64, curve: Curve) -> f64 {
    let bar_cm = gap_m.max(0.0) * 100.0 * pressure_pa * BAR_PER_PASCAL;
    let torr_cm = bar_cm * TORR_PER_BAR;
    let ln_ln = (1.0 + 1.0 / GAMMA).ln().ln();
    // Below the minimum of the formula, at pd = e·ln(1 + 1/γ)/A, the formula rises towards smaller gaps.
    if (A * torr_cm).ln() <= 1.0 + ln_ln {
        return LEAST_V;
    }
    let townsend = B * torr_cm / ((A * torr_cm).ln() - ln_ln);
    let schumann = 1e3 * (SCHUMANN_C * bar_cm.sqrt() + SCHUMANN_E * bar_cm);
    let volts = match curve {
        Curve::Townsend => townsend,
        Curve::LowerOfBoth => townsend.min(schumann),
    };
    // The formula's minimum, 305 V, is below the measured minimum, which applies.
    volts.max(LEAST_V)
}

/// Gap above which the breakdown voltage of either curve grows ever more slowly with the gap, m.
///
/// Townsend's curve has its inflection at A·pd = e² ln(1 + 1/γ), e times the gap of its minimum; Schumann's has none.
///
/// Source: closed form, the second derivative of [`breakdown_crest_v`].
///
/// ```
/// use jointwright_numerics::gas::slower_from_m;
/// assert!((slower_from_m(101_325.0) - 30e-6).abs() < 1e-6);
/// ```
pub fn slower_from_m(pressure_pa: f64) -> f64 {
    let torr_cm = 2.0_f64.exp() * (1.0 + 1.0 / GAMMA).ln() / A;
    torr_cm / (100.0 * pressure_pa * BAR_PER_PASCAL * TORR_PER_BAR)
}

#[cfg(test)]
mod tests {
    use super::*;

    const ATMOSPHERE: f64 = 101_325.0;

    #[track_caller]
    fn check(gap_mm: f64, curve: Curve, expected_v: f64, close: f64) {
        let found = breakdown_crest_v(gap_mm * 1e-3, ATMOSPHERE, curve);
        assert!(
            (found - expected_v).abs() <= close * expected_v,
            "{gap_mm} mm: {found} V, expected {expected_v} V"
        );
    }

    // Oracle: Lieberman and Lichtenberg, table 14.1 constants, evaluated elsewhere (pd.paschen.0.1mm, .1.0mm, .10.0mm).
    #[test]
    fn the_curve_is_that_of_the_constants() {
        check(0.1, Curve::Townsend, 865.0205, 2e-3);
        check(1.0, Curve::Townsend, 5034.989, 2e-3);
        check(10.0, Curve::Townsend, 35_509.33, 2e-3);
    }

    // Oracle: Kuffel, Zaengl and Kuffel, ch. 5, from memory (pd.schumann.1.0): 31.08 kV at 1 bar·cm.
    #[test]
    fn the_lower_curve_is_schumanns_where_that_is_lower() {
        let found = breakdown_crest_v(1e-2, 1e5, Curve::LowerOfBoth);
        assert!((found - 31_080.0).abs() < 1.0, "{found}");
        assert!(found < breakdown_crest_v(1e-2, 1e5, Curve::Townsend));
    }

    #[test]
    fn it_rises_with_the_gap_and_never_falls_below_the_measured_minimum() {
        for curve in [Curve::Townsend, Curve::LowerOfBoth] {
            let mut last = 0.0;
            for step in 0..400 {
                let gap = 1e-6 * 1.03_f64.powi(step);
                let volts = breakdown_crest_v(gap, ATMOSPHERE, curve);
                assert!(
                    volts >= LEAST_V && volts >= last,
                    "{gap} m: {volts} V after {last} V"
                );
                last = volts;
            }
        }
    }

    // Oracle: the measured minimum for air, about 327 V at 7.5 µm and one atmosphere, as read in public texts.
    #[test]
    fn the_least_voltage_is_the_measured_one() {
        check(7.5e-3, Curve::Townsend, 327.0, 0.04);
        check(1e-3, Curve::Townsend, 327.0, 1e-9);
    }

    #[test]
    fn it_bends_down_from_the_inflection_on_and_up_before() {
        let from = slower_from_m(ATMOSPHERE);
        let bend = |gap: f64, curve: Curve| {
            let volts = |gap: f64| breakdown_crest_v(gap, ATMOSPHERE, curve);
            volts(0.99 * gap) + volts(1.01 * gap) - 2.0 * volts(gap)
        };
        for curve in [Curve::Townsend, Curve::LowerOfBoth] {
            for step in 0..300 {
                let gap = 1.02 * from * 1.03_f64.powi(step);
                assert!(bend(gap, curve) < 0.0, "{gap} m");
            }
        }
        assert!(bend(0.9 * from, Curve::Townsend) > 0.0);
    }
}
