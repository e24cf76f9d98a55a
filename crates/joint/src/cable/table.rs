//! Table: the rows under `data/cable/`, read once.
//!
//! Why its own file: only this file of the room reads text; it returns lengths and sizes.
//!
//! Invariant: the files are our own and fixed in the build, so a row that does not read is a bug, which the tests here find.

use super::{Metal, Size, Stranding, Sure};
use jointwright_units::Length;
use serde::Deserialize;
use serde::de::DeserializeOwned;
use std::sync::LazyLock;

/// Everything under `data/cable/`.
pub struct Table {
    pub conductor: ConductorFile,
    pub resistance: ResistanceFile,
    pub wall: WallFile,
    pub layer: LayerFile,
}

/// The files of the table, by name.
pub const TABLE_TEXTS: [(&str, &str); 4] = [
    (
        "conductor",
        include_str!("../../../../data/cable/conductor.toml"),
    ),
    (
        "resistance",
        include_str!("../../../../data/cable/resistance.toml"),
    ),
    ("wall", include_str!("../../../../data/cable/wall.toml")),
    ("layer", include_str!("../../../../data/cable/layer.toml")),
];

/// The table, read on first use.
pub static TABLE: LazyLock<Table> = LazyLock::new(|| Table {
    conductor: read(0),
    resistance: read(1),
    wall: read(2),
    layer: read(3),
});

fn read<T: DeserializeOwned>(index: usize) -> T {
    let (name, text) = TABLE_TEXTS[index];
    toml::from_str(text)
        .unwrap_or_else(|error| panic!("embedded data/cable/{name}.toml reads: {error}"))
}

/// Thickness rules of a cable.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Family {
    Icea,
    Iec,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ConductorFile {
    pub diameter: Vec<Diameter>,
    pub bounds: Vec<Bounds>,
    pub tolerance: Vec<Tolerance>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Diameter {
    #[serde(deserialize_with = "size")]
    pub size: Size,
    pub stranding: Stranding,
    diameter_mil: Option<i64>,
    diameter_um: Option<i64>,
    pub sure: Sure,
    pub source: String,
}

impl Diameter {
    pub fn nominal(&self) -> Length {
        either(self.diameter_mil, self.diameter_um)
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Bounds {
    #[serde(deserialize_with = "size")]
    pub size: Size,
    pub stranding: Stranding,
    least_um: i64,
    greatest_um: i64,
    pub sure: Sure,
    pub source: String,
}

impl Bounds {
    pub fn least(&self) -> Length {
        Length::from_nm(self.least_um * 1000)
    }

    pub fn greatest(&self) -> Length {
        Length::from_nm(self.greatest_um * 1000)
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Tolerance {
    pub stranding: Stranding,
    pub minus_percent: i64,
    pub plus_percent: i64,
    pub sure: Sure,
    pub source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ResistanceFile {
    pub metal: Vec<MetalRow>,
    pub lay: Lay,
    pub at_75: Vec<At75>,
    pub maximum_20: Vec<Maximum20>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MetalRow {
    pub metal: Metal,
    pub resistivity_20_ohm_mm2_per_km: f64,
    pub inferred_zero_degc: f64,
    pub sure: Sure,
    pub source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lay {
    pub factor_ratio: f64,
    pub sure: Sure,
    pub source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct At75 {
    #[serde(deserialize_with = "size")]
    pub size: Size,
    pub metal: Metal,
    pub ohm_per_kft: f64,
    pub sure: Sure,
    pub source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Maximum20 {
    #[serde(deserialize_with = "size")]
    pub size: Size,
    pub metal: Metal,
    pub ohm_per_km: f64,
    pub sure: Sure,
    pub source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WallFile {
    pub icea: Vec<IceaWall>,
    pub icea_point: Vec<IceaPoint>,
    pub icea_pattern: IceaPattern,
    pub iec: Vec<IecWall>,
    pub iec_point: IecPoint,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct IceaWall {
    pub class_kv: u16,
    pub level_percent: u16,
    nominal_mil: i64,
    pub sure: Sure,
    pub source: String,
}

impl IceaWall {
    pub fn nominal(&self) -> Length {
        Length::MIL * self.nominal_mil
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct IceaPoint {
    nominal_mil: i64,
    least_mil: i64,
    greatest_mil: i64,
    pub sure: Sure,
    pub source: String,
}

impl IceaPoint {
    pub fn nominal(&self) -> Length {
        Length::MIL * self.nominal_mil
    }

    pub fn least(&self) -> Length {
        Length::MIL * self.least_mil
    }

    pub fn greatest(&self) -> Length {
        Length::MIL * self.greatest_mil
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct IceaPattern {
    pub least_percent: i64,
    pub more_mil: i64,
    pub sure: Sure,
    pub source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct IecWall {
    pub u0_kv_tenths: u32,
    pub u_kv: u32,
    pub up_to_mm2: u32,
    nominal_um: i64,
    pub sure: Sure,
    pub source: String,
}

impl IecWall {
    pub fn nominal(&self) -> Length {
        Length::from_nm(self.nominal_um * 1000)
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct IecPoint {
    pub least_percent: i64,
    pub less_um: i64,
    pub eccentricity_percent: i64,
    pub sure: Sure,
    pub source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LayerFile {
    pub conductor_screen: Vec<Thickness>,
    pub insulation_screen: Vec<Thickness>,
    pub jacket: Vec<Thickness>,
    pub iec_jacket: IecJacket,
    pub corrugation: Thickness,
}

/// A thickness range, with the cables for which it holds.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Thickness {
    pub family: Option<Family>,
    pub up_to_kcmil: Option<u32>,
    over_up_to_mil: Option<i64>,
    least_mil: Option<i64>,
    least_um: Option<i64>,
    nominal_mil: Option<i64>,
    nominal_um: Option<i64>,
    greatest_mil: Option<i64>,
    greatest_um: Option<i64>,
    pub sure: Sure,
    pub source: String,
}

impl Thickness {
    pub fn least(&self) -> Length {
        either(self.least_mil, self.least_um)
    }

    pub fn nominal(&self) -> Length {
        either(self.nominal_mil, self.nominal_um)
    }

    pub fn greatest(&self) -> Length {
        either(self.greatest_mil, self.greatest_um)
    }

    /// Greatest diameter under the layer for which the row holds; `None` if there is no bound.
    pub fn under_greatest(&self) -> Option<Length> {
        self.over_up_to_mil.map(|mil| Length::MIL * mil)
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct IecJacket {
    pub slope_permille: i64,
    pub plus_um: i64,
    pub step_um: i64,
    pub floor_um: i64,
    pub least_percent: i64,
    pub less_um: i64,
    pub greatest_percent: i64,
    pub sure: Sure,
    pub source: String,
}

fn either(mil: Option<i64>, um: Option<i64>) -> Length {
    match (mil, um) {
        (Some(mil), None) => Length::MIL * mil,
        (None, Some(um)) => Length::from_nm(um * 1000),
        _ => panic!("a row of data/cable states a length in mil or in µm, once"),
    }
}

fn size<'de, D: serde::Deserializer<'de>>(from: D) -> Result<Size, D::Error> {
    let text = String::deserialize(from)?;
    Size::parse(&text).map_err(serde::de::Error::custom)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_file_reads_and_every_length_is_positive() {
        let table = &*TABLE;
        for row in &table.conductor.diameter {
            assert!(row.nominal() > Length::ZERO, "{}", row.size);
        }
        for row in &table.conductor.bounds {
            assert!(
                Length::ZERO < row.least() && row.least() < row.greatest(),
                "{}",
                row.size
            );
        }
        for row in &table.wall.icea_point {
            assert!(row.least() < row.nominal() && row.nominal() < row.greatest());
        }
        let layer = &table.layer;
        for row in layer
            .conductor_screen
            .iter()
            .chain(&layer.insulation_screen)
            .chain(&layer.jacket)
            .chain([&layer.corrugation])
        {
            assert!(row.least() < row.nominal() && row.nominal() < row.greatest());
        }
    }

    #[test]
    fn no_conductor_has_two_rows() {
        let rows = &TABLE.conductor;
        let keys: BTreeSet<_> = rows
            .diameter
            .iter()
            .map(|r| (r.size, r.stranding))
            .chain(rows.bounds.iter().map(|r| (r.size, r.stranding)))
            .collect();
        assert_eq!(keys.len(), rows.diameter.len() + rows.bounds.len());
    }

    #[test]
    fn every_row_names_a_source() {
        let t = &*TABLE;
        let sources = (t.conductor.diameter.iter().map(|r| &r.source))
            .chain(t.conductor.bounds.iter().map(|r| &r.source))
            .chain(t.conductor.tolerance.iter().map(|r| &r.source))
            .chain(t.resistance.at_75.iter().map(|r| &r.source))
            .chain(t.resistance.maximum_20.iter().map(|r| &r.source))
            .chain(t.wall.icea.iter().map(|r| &r.source))
            .chain(t.wall.icea_point.iter().map(|r| &r.source))
            .chain(t.wall.iec.iter().map(|r| &r.source));
        assert_eq!(sources.filter(|s| s.trim().is_empty()).count(), 0);
    }

    #[test]
    fn every_icea_wall_has_point_limits() {
        let wall = &TABLE.wall;
        for row in &wall.icea {
            assert!(
                wall.icea_point.iter().any(|p| p.nominal() == row.nominal()),
                "{} kV {} %",
                row.class_kv,
                row.level_percent
            );
        }
    }

    #[test]
    fn solid_rows_are_the_american_wire_gauge() {
        for row in TABLE
            .conductor
            .diameter
            .iter()
            .filter(|r| r.stranding == Stranding::Solid)
        {
            let Size::Awg(n) = row.size else {
                panic!("{}", row.size)
            };
            assert_eq!(
                row.nominal(),
                super::super::awg_wire_diameter(n),
                "{}",
                row.size
            );
        }
    }
}
