//! Construction: the layers of a leg, and the least, nominal and greatest diameter over each.
//!
//! Why its own file: every fit rests on these sums, so each carries its rows and the worst of their sureness.
//!
//! Invariants: sums of whole nanometres, rounded outward; a diameter or thickness on the cable's own papers replaces the row; a missing row is an `Unknown`.
//!
//! Not here: readings.
//!
//! Source: rows under `data/cable/`; `docs/theory/cable.md`.

use super::band::{Band, add_sources};
use super::table::{Family, IecJacket, TABLE, Thickness};
use super::{Conductor, DcResistance, Layer, Shield, ShieldArea, Sure, Unknown, Wall};
use jointwright_units::{Interval, Length};
use std::collections::BTreeMap;

/// Insulation material; the wall tables are the same for all three.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Insulation {
    /// Cross-linked polyethylene.
    Xlpe,
    /// Tree-retardant cross-linked polyethylene.
    TrXlpe,
    /// Ethylene-propylene rubber.
    Epr,
}

/// Construction of a leg.
#[derive(Clone, Debug, PartialEq)]
pub struct Construction {
    /// Conductor.
    pub conductor: Conductor,
    /// Insulation wall.
    pub wall: Wall,
    /// Insulation material.
    pub insulation: Insulation,
    /// Metallic shield.
    pub shield: Shield,
    /// Thickness of the conductor screen on the papers; `None` for the table's range.
    pub conductor_screen: Option<Interval>,
    /// Thickness of the insulation screen on the papers; `None` for the table's range.
    pub insulation_screen: Option<Interval>,
    /// Thickness of the jacket on the papers; `None` for the table's range.
    pub jacket: Option<Interval>,
    /// Diameters on the cable's own papers, which replace the table's.
    pub stated: BTreeMap<Layer, Interval>,
}

impl Conductor {
    /// Diameter over the bare conductor by the table.
    ///
    /// # Errors
    /// The table has no row for this size and stranding.
    pub fn diameter(self) -> Result<Band, Unknown> {
        let rows = &TABLE.conductor;
        let is_ours = |size, stranding| size == self.size && stranding == self.stranding;
        if let Some(row) = rows.bounds.iter().find(|r| is_ours(r.size, r.stranding)) {
            let middle = Length::from_nm((row.least() + row.greatest()).nm().div_euclid(2));
            return Ok(Band::row(
                row.least(),
                middle,
                row.greatest(),
                row.sure,
                &row.source,
            ));
        }
        let row = rows.diameter.iter().find(|r| is_ours(r.size, r.stranding));
        let row = row.ok_or(Unknown::ConductorDiameter { conductor: self })?;
        let tolerance = rows
            .tolerance
            .iter()
            .find(|r| r.stranding == self.stranding);
        let tolerance = tolerance.ok_or(Unknown::ConductorDiameter { conductor: self })?;
        let nominal = row.nominal();
        let mut band = Band::row(
            percent_floor(nominal, 100 - tolerance.minus_percent),
            nominal,
            percent_ceil(nominal, 100 + tolerance.plus_percent),
            row.sure.worst(tolerance.sure),
            &row.source,
        );
        add_sources(&mut band.sources, std::slice::from_ref(&tolerance.source));
        Ok(band)
    }
}

fn percent_floor(length: Length, percent: i64) -> Length {
    Length::from_nm((length.nm() * percent).div_euclid(100))
}

fn percent_ceil(length: Length, percent: i64) -> Length {
    Length::from_nm(-(-length.nm() * percent).div_euclid(100))
}

impl Construction {
    /// Least, nominal and greatest diameter over `layer`.
    ///
    /// D(layer) = D(layer inside) + 2·t, unless the papers state D.
    ///
    /// # Errors
    /// Names the missing row.
    pub fn diameter_over(&self, layer: Layer) -> Result<Band, Unknown> {
        if let Some(stated) = self.stated.get(&layer) {
            return Ok(Band::stated(*stated));
        }
        match layer.inner() {
            None => self.conductor.diameter(),
            Some(inner) => {
                let under = self.diameter_over(inner)?;
                let thickness = self.thickness_on(layer, &under)?;
                Ok(under.under_layer(&thickness))
            }
        }
    }

    /// Least, nominal and greatest thickness of `layer` at one side of the cable; the conductor's is its radius.
    ///
    /// # Errors
    /// Names the missing row.
    pub fn thickness_of(&self, layer: Layer) -> Result<Band, Unknown> {
        match layer {
            Layer::Conductor => {
                let mut band = self.diameter_over(layer)?;
                band.least = Length::from_nm(band.least.nm() / 2);
                band.nominal = Length::from_nm(band.nominal.nm() / 2);
                band.greatest = Length::from_nm((band.greatest.nm() + 1) / 2);
                Ok(band)
            }
            Layer::Insulation => self.wall_thickness(),
            Layer::MetallicShield => self.shield.thickness(),
            Layer::ConductorScreen => Ok(self.conductor_screen_thickness()),
            Layer::InsulationScreen if let Some(papers) = self.insulation_screen => {
                Ok(Band::stated(papers))
            }
            Layer::Jacket if let Some(papers) = self.jacket => Ok(Band::stated(papers)),
            Layer::InsulationScreen => {
                self.thickness_on(layer, &self.diameter_over(Layer::Insulation)?)
            }
            Layer::Jacket => self.thickness_on(layer, &self.diameter_over(Layer::MetallicShield)?),
        }
    }

    fn thickness_on(&self, layer: Layer, under: &Band) -> Result<Band, Unknown> {
        match (layer, self.insulation_screen, self.jacket) {
            (Layer::InsulationScreen, Some(papers), _) | (Layer::Jacket, _, Some(papers)) => {
                Ok(Band::stated(papers))
            }
            (Layer::InsulationScreen, None, _) => Ok(rows_on(
                &TABLE.layer.insulation_screen,
                self.family(),
                under,
            )),
            (Layer::Jacket, _, None) => Ok(match self.family() {
                Family::Icea => rows_on(&TABLE.layer.jacket, Family::Icea, under),
                Family::Iec => iec_jacket(&TABLE.layer.iec_jacket, under),
            }),
            _ => self.thickness_of(layer),
        }
    }

    /// Nominal insulation wall.
    ///
    /// # Errors
    /// The table has no row for the class, level or voltage.
    pub fn wall_nominal(&self) -> Result<Length, Unknown> {
        self.wall_row().map(|(nominal, ..)| nominal)
    }

    fn wall_row(&self) -> Result<(Length, Sure, &'static str), Unknown> {
        let missing = Unknown::WallRow { wall: self.wall };
        let area_mm2 = self.conductor.size.area_mm2();
        match self.wall {
            Wall::Stated(nominal) if nominal <= Length::ZERO => Err(missing),
            Wall::Stated(nominal) => Ok((nominal, Sure::Papers, "the cable's papers")),
            Wall::Icea {
                class_kv,
                level_percent,
            } => {
                let row = TABLE
                    .wall
                    .icea
                    .iter()
                    .find(|r| (r.class_kv, r.level_percent) == (class_kv, level_percent));
                row.map(|r| (r.nominal(), r.sure, r.source.as_str()))
                    .ok_or(missing)
            }
            Wall::Iec { u0_kv_tenths, u_kv } => {
                let mut rows = TABLE
                    .wall
                    .iec
                    .iter()
                    .filter(|r| (r.u0_kv_tenths, r.u_kv) == (u0_kv_tenths, u_kv));
                let row = rows.find(|r| area_mm2 <= f64::from(r.up_to_mm2));
                row.map(|r| (r.nominal(), r.sure, r.source.as_str()))
                    .ok_or(missing)
            }
        }
    }

    fn wall_thickness(&self) -> Result<Band, Unknown> {
        let (nominal, sure, source) = self.wall_row()?;
        let mut band = match self.family() {
            Family::Icea => icea_points(nominal),
            Family::Iec => iec_points(nominal),
        };
        band.sure = band.sure.worst(sure);
        let limits = std::mem::replace(&mut band.sources, vec![source.to_owned()]);
        add_sources(&mut band.sources, &limits);
        Ok(band)
    }

    fn conductor_screen_thickness(&self) -> Band {
        if let Some(papers) = self.conductor_screen {
            return Band::stated(papers);
        }
        let (family, kcmil) = (self.family(), self.conductor.size.kcmil());
        let mut rows = TABLE
            .layer
            .conductor_screen
            .iter()
            .filter(|r| r.family == Some(family));
        let row = rows.find(|r| r.up_to_kcmil.is_none_or(|most| kcmil <= f64::from(most)));
        let row = row.expect("the last conductor screen row of each family has no bound");
        Band::row(
            row.least(),
            row.nominal(),
            row.greatest(),
            row.sure,
            &row.source,
        )
    }

    /// Thickness rules of the cable; a wall that is only stated follows the unit of the conductor size.
    fn family(&self) -> Family {
        match self.wall {
            Wall::Icea { .. } => Family::Icea,
            Wall::Iec { .. } => Family::Iec,
            Wall::Stated(_) if self.conductor.size.is_metric() => Family::Iec,
            Wall::Stated(_) => Family::Icea,
        }
    }

    /// Effective area of the metallic shield, or `None` if the diameter under it is not known.
    pub fn shield_area(&self) -> Option<ShieldArea> {
        let (on, sure) = if self.shield.area_needs_diameter() {
            let screen = self.diameter_over(Layer::InsulationScreen).ok()?;
            (screen.nominal, screen.sure.worst(Sure::MemoryRecomputed))
        } else {
            (Length::ZERO, Sure::MemoryRecomputed)
        };
        let area_mm2 = self.shield.area_on_mm2(on).ok()?;
        let source = format!(
            "icea_p45482 effective area of {}",
            self.shield.kind().name()
        );
        Some(ShieldArea {
            area_mm2,
            sure,
            source,
        })
    }

    /// DC resistance of the conductor at 20 °C.
    ///
    /// # Errors
    /// The mm² size has no row.
    pub fn dc_resistance_20(&self) -> Result<DcResistance, Unknown> {
        self.conductor.dc_resistance_20()
    }
}

/// ICEA point limits of a wall: its row, or the pattern of the rows.
fn icea_points(nominal: Length) -> Band {
    let wall = &TABLE.wall;
    match wall.icea_point.iter().find(|r| r.nominal() == nominal) {
        Some(row) => Band::row(row.least(), nominal, row.greatest(), row.sure, &row.source),
        None => {
            let pattern = &wall.icea_pattern;
            let least = percent_floor(nominal, pattern.least_percent);
            let greatest = nominal + Length::MIL * pattern.more_mil;
            Band::row(least, nominal, greatest, pattern.sure, &pattern.source)
        }
    }
}

/// IEC point limits: least 0.9·t − 0.1 mm; greatest t/(1 − 0.15).
fn iec_points(nominal: Length) -> Band {
    let rule = &TABLE.wall.iec_point;
    let least = percent_floor(nominal, rule.least_percent) - Length::from_nm(rule.less_um * 1000);
    let greatest =
        Length::from_nm(-(-nominal.nm() * 100).div_euclid(100 - rule.eccentricity_percent));
    Band::row(
        least.max(Length::ZERO).min(nominal),
        nominal,
        greatest,
        rule.sure,
        &rule.source,
    )
}

/// Hull of the rows of `family` for every possible diameter under the layer; the nominal comes from the row of the nominal diameter.
fn rows_on(rows: &[Thickness], family: Family, under: &Band) -> Band {
    let row_at = |diameter: Length| {
        let mut ours = rows
            .iter()
            .enumerate()
            .filter(|(_, r)| r.family == Some(family));
        let found = ours.find(|(_, r)| r.under_greatest().is_none_or(|most| diameter <= most));
        found.expect("the last row of each family has no bound").0
    };
    let spanned = &rows[row_at(under.least)..=row_at(under.greatest)];
    let nominal = &rows[row_at(under.nominal)];
    let mut band = Band::row(
        nominal.least(),
        nominal.nominal(),
        nominal.greatest(),
        nominal.sure,
        &nominal.source,
    );
    for row in spanned {
        band.least = band.least.min(row.least());
        band.greatest = band.greatest.max(row.greatest());
        band.sure = band.sure.worst(row.sure);
        add_sources(&mut band.sources, std::slice::from_ref(&row.source));
    }
    band
}

fn iec_jacket(rule: &IecJacket, under: &Band) -> Band {
    let um = |n: i64| Length::from_nm(n * 1000);
    let nominal_on = |d: Length| {
        let exact_nm = d.nm() * rule.slope_permille / 1000 + um(rule.plus_um).nm();
        let step = um(rule.step_um).nm();
        Length::from_nm((exact_nm + step / 2).div_euclid(step) * step).max(um(rule.floor_um))
    };
    let least = percent_floor(nominal_on(under.least), rule.least_percent) - um(rule.less_um);
    let greatest = percent_ceil(nominal_on(under.greatest), rule.greatest_percent);
    Band::row(
        least,
        nominal_on(under.nominal),
        greatest,
        rule.sure,
        &rule.source,
    )
}

#[cfg(test)]
mod tests;
