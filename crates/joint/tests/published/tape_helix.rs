//! Lengths of tape against a curve that is integrated turn by turn.

use super::{Row, holds, rows};
use jointwright_joint::cable::Layer;
use jointwright_joint::catalogue::Wrap;
use jointwright_joint::material::tape_length_m;
use jointwright_units::Length;

const CSV: &str = include_str!("../../../../tests/published/tape_helix/values.csv");

fn mm(value: f64) -> Length {
    Length::from_nm((value * 1e6).round() as i64)
}

fn computed(row: &Row, more_mm: f64) -> f64 {
    let wrap = Wrap {
        over: Layer::Jacket,
        length: mm(row.number("stretch_mm")),
        lap_ratio: row.number("lap"),
        layers: row.number("passes") as i64,
        drawn_ratio: row.number("drawn"),
    };
    let tape = (mm(row.number("width_mm")), mm(row.number("thickness_mm")));
    tape_length_m(&wrap, tape, mm(row.number("under_mm") + more_mm))
}

#[test]
fn a_tape_is_as_long_as_its_curve() {
    for row in rows(CSV, "tape_length") {
        let found = computed(&row, 0.0);
        assert!(holds(&row, found), "{}: {found}", row.id());
        // The twin: a diameter larger by a tenth of a millimetre gives another length.
        assert!(!holds(&row, computed(&row, 0.1)), "{}", row.id());
    }
}
