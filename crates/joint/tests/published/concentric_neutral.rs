//! Concentric neutrals: number of wires, and the diameters of whole cables.

use super::{Row, cable, conductor, inches, rows};
use jointwright_joint::cable::{
    Band, Layer, Metal, NeutralFraction, Shield, Stranding, Wall, awg_wire_diameter, neutral_wires,
};

const CSV: &str = include_str!("../../../../tests/published/concentric_neutral/values.csv");

#[test]
fn the_rule_counts_the_wires() {
    for row in rows(CSV, "wire_count") {
        let count = |metal| {
            let fraction = if row.text("wires") == "full" {
                NeutralFraction::Full
            } else {
                NeutralFraction::Third
            };
            let c = conductor(row.size(), metal, Stranding::Compressed);
            f64::from(neutral_wires(c, fraction, row.number("wire_awg") as i8))
        };
        assert_eq!(count(Metal::Aluminium), row.number("first"), "{}", row.id());
        // The twin: copper needs more wires.
        assert!(count(Metal::Copper) > row.number("first"), "{}", row.id());
    }
}

/// Layers with printed diameters, and their columns.
const PRINTED: [(Layer, &str); 3] = [
    (Layer::Insulation, "first"),
    (Layer::InsulationScreen, "second"),
    (Layer::MetallicShield, "third"),
];

/// Half a unit of the last printed digit, in.
const PRINTED_HALF_IN: f64 = 0.005;

fn band(row: &Row, stranding: Stranding, level_or_class: (u16, u16), layer: Layer) -> Band {
    let (class_kv, level_percent) = level_or_class;
    let shield = Shield::ConcentricWires {
        count: row.number("wires") as u32,
        diameter: awg_wire_diameter(row.number("wire_awg") as i8),
    };
    let of = cable(
        conductor(row.size(), Metal::Aluminium, stranding),
        Wall::Icea {
            class_kv,
            level_percent,
        },
        shield,
    );
    of.diameter_over(layer)
        .unwrap_or_else(|unknown| panic!("{}: {unknown}", row.id()))
}

fn lies_inside(band: &Band, printed_in: f64) -> bool {
    (inches(band.least)..=inches(band.greatest)).contains(&printed_in)
}

fn nominal_is_near(row: &Row, band: &Band, printed_in: f64) -> bool {
    (inches(band.nominal) - printed_in).abs()
        <= printed_in * row.number("rel_tol") + PRINTED_HALF_IN
}

#[test]
fn every_printed_diameter_lies_inside_the_band() {
    for row in rows(CSV, "diameters") {
        for (layer, column) in PRINTED {
            let printed_in = row.number(column);
            // The rows do not state the stranding; both are computed, and both hold.
            for stranding in [Stranding::Concentric, Stranding::Compressed] {
                let found = band(&row, stranding, (15, 133), layer);
                assert!(lies_inside(&found, printed_in), "{} {layer:?}", row.id());
                // The twin: the wall of the class above.
                assert!(
                    !lies_inside(&band(&row, stranding, (25, 133), layer), printed_in),
                    "{} {layer:?}",
                    row.id()
                );
            }
        }
    }
}

#[test]
fn the_nominal_diameters_are_the_printed_ones_but_for_one_row() {
    let mut apart = Vec::new();
    for row in rows(CSV, "diameters") {
        for (layer, column) in PRINTED {
            let printed_in = row.number(column);
            if !nominal_is_near(
                &row,
                &band(&row, Stranding::Concentric, (15, 133), layer),
                printed_in,
            ) {
                apart.push((row.id().to_owned(), layer));
            }
            // The twin: the wall of the level below.
            let thinner = band(&row, Stranding::Concentric, (15, 100), layer);
            assert!(
                !nominal_is_near(&row, &thinner, printed_in),
                "{} {layer:?}",
                row.id()
            );
        }
    }
    // Our nominal over the insulation is 1.004 in, past the 1.000 in at which our screen row changes; SOURCE.md explains it.
    assert_eq!(
        apart,
        [("cn.kersting.third.4/0".to_owned(), Layer::InsulationScreen)]
    );
}
