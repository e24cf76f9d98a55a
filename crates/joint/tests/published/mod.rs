//! Published values against the cable table and its rules.
//!
//! Each file reads `tests/published/<key>/values.csv`; each check has a twin in which one input is wrong and the check must fail for every row.

mod concentric_neutral;
mod conductor_diameter;
mod conductor_resistance;
mod insulation_wall;
mod likeness;
mod shield_area;
mod tape_helix;

use jointwright_joint::cable::{
    Conductor, Construction, Insulation, Metal, Shield, Size, Stranding, Wall,
};
use jointwright_units::Length;
use std::collections::BTreeMap;

/// One row of a `values.csv`, by column name.
pub struct Row(BTreeMap<String, String>);

impl Row {
    pub fn text(&self, column: &str) -> &str {
        self.0
            .get(column)
            .unwrap_or_else(|| panic!("column {column}"))
    }

    pub fn number(&self, column: &str) -> f64 {
        let text = self.text(column);
        text.parse()
            .unwrap_or_else(|_| panic!("{} {column}: {text:?} is not a number", self.id()))
    }

    pub fn size(&self) -> Size {
        Size::parse(self.text("size")).unwrap_or_else(|e| panic!("{}: {e}", self.id()))
    }

    pub fn metal(&self) -> Metal {
        match self.text("metal") {
            "copper" => Metal::Copper,
            "aluminium" => Metal::Aluminium,
            other => panic!("{}: metal {other:?}", self.id()),
        }
    }

    pub fn id(&self) -> &str {
        self.text("id")
    }
}

/// Rows of `csv` whose `check` column is `check`; no such row means a broken file, not an empty test.
pub fn rows(csv: &str, check: &str) -> Vec<Row> {
    let mut lines = csv.lines();
    let head: Vec<&str> = lines.next().expect("a head line").split(',').collect();
    let all = lines.map(|line| {
        let cells: Vec<&str> = line.split(',').collect();
        assert_eq!(cells.len(), head.len(), "{line}");
        Row(head
            .iter()
            .zip(cells)
            .map(|(k, v)| ((*k).to_owned(), v.to_owned()))
            .collect())
    });
    let ours: Vec<Row> = all.filter(|row| row.text("check") == check).collect();
    assert!(!ours.is_empty(), "no row for {check}");
    for row in &ours {
        assert!(
            !row.text("source").is_empty() && !row.text("sure").is_empty(),
            "{}",
            row.id()
        );
    }
    ours
}

/// Whether `computed` is within `rel_tol` of `printed`.
pub fn near(computed: f64, printed: f64, rel_tol: f64) -> bool {
    (computed / printed - 1.0).abs() <= rel_tol
}

/// Whether `computed` is the row's `expected` value within its tolerance.
pub fn holds(row: &Row, computed: f64) -> bool {
    near(computed, row.number("expected"), row.number("rel_tol"))
}

pub fn inches(length: Length) -> f64 {
    length.mm() / 25.4
}

pub fn mil(n: f64) -> Length {
    Length::from_nm((n * 25_400.0).round() as i64)
}

pub fn conductor(size: Size, metal: Metal, stranding: Stranding) -> Conductor {
    Conductor {
        size,
        metal,
        stranding,
    }
}

/// A cable with the table's layers.
pub fn cable(conductor: Conductor, wall: Wall, shield: Shield) -> Construction {
    Construction {
        conductor,
        wall,
        insulation: Insulation::Xlpe,
        shield,
        conductor_screen: None,
        insulation_screen: None,
        jacket: None,
        stated: BTreeMap::new(),
    }
}

/// Sixteen wires, where the shield does not matter.
pub fn some_wires() -> Shield {
    Shield::ConcentricWires {
        count: 16,
        diameter: mil(64.0),
    }
}
