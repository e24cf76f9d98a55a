//! Resistance: DC resistance of a conductor at 20 °C and at any other temperature.
//!
//! Invariant: an AWG or kcmil size follows the mass rule, a mm² size the standard's maximum; the basis says which.
//!
//! Source: iec_60287_1_1 table 1 (resistivity), iec_60228 table 2 (maxima), nec_ch9_t8 (printed rows); `docs/theory/cable.md`.

use super::table::{MetalRow, TABLE};
use super::{Conductor, Metal, Size, Stranding, Sure, Unknown};

/// Basis of a resistance.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// Computed from resistivity, area and lay: the resistance of such a conductor.
    Rule,
    /// Greatest resistance that the standard allows.
    Maximum,
    /// Value printed in a table.
    Printed,
}

/// DC resistance of a length of conductor at a temperature.
#[derive(Clone, Debug, PartialEq)]
pub struct DcResistance {
    /// Metal, which decides the change with temperature.
    pub metal: Metal,
    /// Temperature of the resistance, °C.
    pub temperature_degc: f64,
    /// Resistance, Ω/km.
    pub resistance_ohm_per_km: f64,
    /// Basis of the value.
    pub basis: Basis,
    /// Sureness of the value.
    pub sure: Sure,
    /// Source of the value.
    pub source: String,
}

/// Thousands of feet per kilometre: one foot is exactly 0.3048 m.
const KFT_PER_KM: f64 = 1.0 / 0.3048;

impl DcResistance {
    /// Resistance of the same conductor at another temperature.
    ///
    /// R(T) = R(T0) · (B + T)/(B + T0) · `B` temperature at which the straight line would reach zero, °C: 234.5 copper, 228.1 aluminium.
    ///
    /// # Assumes
    /// A straight line, as in the standards: good from about -50 to 250 °C.
    pub fn at(&self, temperature_degc: f64) -> DcResistance {
        let zero_c = metal_row(self.metal).inferred_zero_degc;
        DcResistance {
            resistance_ohm_per_km: self.resistance_ohm_per_km * (zero_c + temperature_degc)
                / (zero_c + self.temperature_degc),
            temperature_degc,
            ..self.clone()
        }
    }

    /// Resistance in Ω per thousand feet.
    pub fn ohm_per_kft(&self) -> f64 {
        self.resistance_ohm_per_km / KFT_PER_KM
    }
}

impl Metal {
    /// Temperature coefficient of resistance at `temperature_degc`, 1/K: 1/(B + T).
    pub fn coefficient_at_per_k(self, temperature_degc: f64) -> f64 {
        1.0 / (metal_row(self).inferred_zero_degc + temperature_degc)
    }
}

impl Conductor {
    /// DC resistance at 20 °C.
    ///
    /// AWG and kcmil: R = ρ20 · k / A; mm²: the greatest resistance that the standard allows.
    ///
    /// `ρ20` resistivity, Ω mm²/km; `k` lay factor, 1.02 for strands and 1 for one wire; `A` area, mm².
    ///
    /// # Errors
    /// The mm² size has no row.
    pub fn dc_resistance_20(self) -> Result<DcResistance, Unknown> {
        match self.size {
            Size::Mm2(_) => self.maximum_20(),
            Size::Awg(_) | Size::Kcmil(_) => Ok(self.rule_20()),
        }
    }

    /// DC resistance at 20 °C by resistivity, nominal area and lay, whatever unit the size is in.
    pub fn rule_20(self) -> DcResistance {
        let (metal, lay) = (metal_row(self.metal), &TABLE.resistance.lay);
        let (factor, sure, source) = match self.stranding {
            Stranding::Solid => (1.0, metal.sure, metal.source.clone()),
            _ => (
                lay.factor_ratio,
                metal.sure.worst(lay.sure),
                format!("{}; {}", metal.source, lay.source),
            ),
        };
        DcResistance {
            metal: self.metal,
            temperature_degc: 20.0,
            resistance_ohm_per_km: metal.resistivity_20_ohm_mm2_per_km * factor
                / self.size.area_mm2(),
            basis: Basis::Rule,
            sure,
            source,
        }
    }

    fn maximum_20(self) -> Result<DcResistance, Unknown> {
        let rows = &TABLE.resistance.maximum_20;
        let row = rows
            .iter()
            .find(|r| r.size == self.size && r.metal == self.metal);
        let row = row.ok_or(Unknown::Resistance { conductor: self })?;
        Ok(DcResistance {
            metal: self.metal,
            temperature_degc: 20.0,
            resistance_ohm_per_km: row.ohm_per_km,
            basis: Basis::Maximum,
            sure: row.sure,
            source: row.source.clone(),
        })
    }

    /// Printed class B row at 75 °C, or `None` if this size has none.
    pub fn printed_75(self) -> Option<DcResistance> {
        let rows = &TABLE.resistance.at_75;
        let row = rows
            .iter()
            .find(|r| r.size == self.size && r.metal == self.metal)?;
        Some(DcResistance {
            metal: self.metal,
            temperature_degc: 75.0,
            resistance_ohm_per_km: row.ohm_per_kft * KFT_PER_KM,
            basis: Basis::Printed,
            sure: row.sure,
            source: row.source.clone(),
        })
    }
}

fn metal_row(metal: Metal) -> &'static MetalRow {
    TABLE
        .resistance
        .metal
        .iter()
        .find(|r| r.metal == metal)
        .expect("data/cable/resistance.toml has a row for each metal")
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn conductor(size: Size, metal: Metal) -> Conductor {
        Conductor {
            size,
            metal,
            stranding: Stranding::Compressed,
        }
    }

    #[track_caller]
    fn check(size: &str, metal: Metal, basis: Basis, ohm_per_km: f64) {
        let size = Size::parse(size).expect("a size");
        let r = conductor(size, metal).dc_resistance_20().expect("a row");
        assert_eq!(r.basis, basis);
        assert!(
            (r.resistance_ohm_per_km / ohm_per_km - 1.0).abs() < 1e-3,
            "{} against {ohm_per_km}",
            r.resistance_ohm_per_km
        );
    }

    #[test]
    fn the_unit_of_the_size_decides_the_basis() {
        check("500 kcmil", Metal::Copper, Basis::Rule, 0.069_41);
        check("240 mm2", Metal::Copper, Basis::Maximum, 0.0754);
    }

    #[test]
    fn a_metric_size_without_a_row_is_unknown() {
        let said = conductor(Size::Mm2(241), Metal::Copper)
            .dc_resistance_20()
            .map_err(|u| u.to_string());
        assert_eq!(
            said,
            Err("no DC resistance row for 241 mm² copper compressed".to_owned())
        );
    }

    #[test]
    fn one_wire_has_no_lay() {
        let strands = conductor(Size::Awg(0), Metal::Aluminium)
            .rule_20()
            .resistance_ohm_per_km;
        let wire = Conductor {
            stranding: Stranding::Solid,
            ..conductor(Size::Awg(0), Metal::Aluminium)
        }
        .rule_20()
        .resistance_ohm_per_km;
        assert!((strands / wire - 1.02).abs() < 1e-12);
    }

    proptest! {
        #[test]
        fn heating_and_cooling_come_back(t in -50.0..250.0f64, kcmil in 1u32..2000) {
            let r = conductor(Size::Kcmil(kcmil), Metal::Copper).rule_20();
            let back = r.at(t).at(20.0).resistance_ohm_per_km;
            prop_assert!((back / r.resistance_ohm_per_km - 1.0).abs() < 1e-12);
        }
    }
}
