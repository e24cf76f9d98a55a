//! Insulation walls and oversheath: nominal by class, and the thickness at a point.

use super::{Row, cable, conductor, mil, near, rows, some_wires};
use jointwright_joint::cable::{Band, Construction, Layer, Metal, Size, Stranding, Wall};
use jointwright_units::{Interval, Length};

const CSV: &str = include_str!("../../../../tests/published/insulation_wall/values.csv");

fn on_4_aught(wall: Wall) -> Construction {
    cable(
        conductor(Size::Awg(-3), Metal::Aluminium, Stranding::Compressed),
        wall,
        some_wires(),
    )
}

fn on_185_mm2(wall: Wall) -> Construction {
    cable(
        conductor(Size::Mm2(185), Metal::Aluminium, Stranding::Compact),
        wall,
        some_wires(),
    )
}

fn wall_mm(of: &Construction) -> f64 {
    of.wall_nominal()
        .unwrap_or_else(|unknown| panic!("{unknown}"))
        .mm()
}

fn thickness(of: &Construction, layer: Layer) -> Band {
    of.thickness_of(layer)
        .unwrap_or_else(|unknown| panic!("{unknown}"))
}

fn is_expected(row: &Row, value: f64) -> bool {
    near(value, row.number("expected_least"), row.number("rel_tol"))
}

#[test]
fn icea_walls_are_in_the_data() {
    for row in rows(CSV, "icea") {
        let class_kv = row.number("first") as u16;
        let wall = |level_percent| Wall::Icea {
            class_kv,
            level_percent,
        };
        let level = row.number("second") as u16;
        assert!(
            is_expected(&row, wall_mm(&on_4_aught(wall(level))) / 0.0254),
            "{}",
            row.id()
        );
        let other = if level == 100 { 133 } else { 100 };
        assert!(
            !is_expected(&row, wall_mm(&on_4_aught(wall(other))) / 0.0254),
            "{}",
            row.id()
        );
    }
}

#[test]
fn icea_point_limits_are_in_the_data() {
    let limits = |nominal_mil: f64| {
        let band = thickness(
            &on_4_aught(Wall::Stated(mil(nominal_mil))),
            Layer::Insulation,
        );
        (band.least, band.greatest)
    };
    for row in rows(CSV, "icea_point") {
        let expected = (
            mil(row.number("expected_least")),
            mil(row.number("expected_greatest")),
        );
        assert_eq!(limits(row.number("first")), expected, "{}", row.id());
        assert_ne!(limits(row.number("first") + 10.0), expected, "{}", row.id());
    }
}

#[test]
fn iec_walls_are_in_the_data() {
    for row in rows(CSV, "iec") {
        let u0_kv_tenths = (row.number("first") * 10.0).round() as u32;
        let u_kv = row.number("second") as u32;
        assert!(
            is_expected(&row, wall_mm(&on_185_mm2(Wall::Iec { u0_kv_tenths, u_kv }))),
            "{}",
            row.id()
        );
        let twin = if u_kv == 20 {
            Wall::Iec {
                u0_kv_tenths: 180,
                u_kv: 30,
            }
        } else {
            Wall::Iec {
                u0_kv_tenths: 120,
                u_kv: 20,
            }
        };
        assert!(
            !is_expected(&row, wall_mm(&on_185_mm2(twin))),
            "{}",
            row.id()
        );
    }
}

#[test]
fn the_thinnest_iec_point_is_nine_tenths_less_a_tenth() {
    let least_mm = |t_mm: f64| {
        let wall = Wall::Stated(Length::from_nm((t_mm * 1e6).round() as i64));
        thickness(&on_185_mm2(wall), Layer::Insulation).least.mm()
    };
    for row in rows(CSV, "iec_point") {
        assert!(
            is_expected(&row, least_mm(row.number("first"))),
            "{}",
            row.id()
        );
        assert!(
            !is_expected(&row, least_mm(row.number("first") + 0.1)),
            "{}",
            row.id()
        );
    }
}

#[test]
fn the_iec_oversheath_is_the_formula_rounded_to_a_tenth() {
    let nominal_mm = |under_mm: f64| {
        let mut of = on_185_mm2(Wall::Iec {
            u0_kv_tenths: 120,
            u_kv: 20,
        });
        of.stated.insert(
            Layer::MetallicShield,
            Interval::point(Length::from_nm((under_mm * 1e6).round() as i64)),
        );
        thickness(&of, Layer::Jacket).nominal.mm()
    };
    for row in rows(CSV, "iec_jacket") {
        assert!(
            is_expected(&row, nominal_mm(row.number("first"))),
            "{}",
            row.id()
        );
        assert!(
            !is_expected(&row, nominal_mm(row.number("first") + 5.0)),
            "{}",
            row.id()
        );
    }
}
