//! Effective area of metallic shields, in circular mils as the source writes them.

use super::{Row, holds, mil, rows};
use jointwright_joint::cable::{Shield, Size, awg_wire_diameter};
use jointwright_units::Length;

const CSV: &str = include_str!("../../../../tests/published/shield_area/values.csv");

fn circular_mils(shield: Shield, over_screen: Length) -> f64 {
    let mm2 = shield
        .area_on_mm2(over_screen)
        .unwrap_or_else(|unknown| panic!("{unknown}"));
    mm2 / Size::Kcmil(1).area_mm2() * 1000.0
}

#[track_caller]
fn check(name: &str, area: impl Fn(&Row, f64) -> f64) {
    for row in rows(CSV, name) {
        let computed = area(&row, 1.0);
        assert!(holds(&row, computed), "{}: {computed}", row.id());
        // The twin: the metal a hundredth thicker.
        assert!(!holds(&row, area(&row, 1.01)), "{}", row.id());
    }
}

#[test]
fn a_thousand_circular_mils_in_mm2() {
    for row in rows(CSV, "kcmil_in_mm2") {
        assert!(holds(&row, Size::Kcmil(1).area_mm2()), "{}", row.id());
        assert!(!holds(&row, Size::Kcmil(2).area_mm2()), "{}", row.id());
    }
}

#[test]
fn wires_are_their_own_area() {
    check("concentric_wires", |row, more| {
        let wire = awg_wire_diameter(row.number("second") as i8);
        let diameter = Length::from_nm((wire.nm() as f64 * more).round() as i64);
        circular_mils(
            Shield::ConcentricWires {
                count: row.number("first") as u32,
                diameter,
            },
            Length::ZERO,
        )
    });
}

#[test]
fn straps_are_their_own_area() {
    check("flat_straps", |row, more| {
        let (width, thickness) = (mil(row.number("second")), mil(row.number("third") * more));
        circular_mils(
            Shield::FlatStraps {
                count: row.number("first") as u32,
                width,
                thickness,
            },
            Length::ZERO,
        )
    });
}

#[test]
fn a_lapped_tape_is_more_than_one_turn() {
    check("lapped_tape", |row, more| {
        let thickness = mil(row.number("first") * more);
        let tape = Shield::LappedTape {
            thickness,
            width: None,
            overlap_percent: row.number("third"),
        };
        // The source states the mean diameter; the screen lies two thicknesses under it.
        circular_mils(tape, mil(row.number("second")) - thickness * 2)
    });
}

#[test]
fn a_corrugated_tape_is_its_turn_and_its_seam() {
    check("corrugated_tape", |row, more| {
        let tape = Shield::CorrugatedTape {
            thickness: mil(row.number("third") * more),
            overlap: mil(row.number("second")),
        };
        circular_mils(tape, mil(row.number("first")))
    });
}
