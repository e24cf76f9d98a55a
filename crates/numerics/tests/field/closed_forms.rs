//! Sections whose fields are known in closed form.

use super::{answers, arc, coaxial, conductor, insulator, is_near, line, region};
use jointwright_numerics::field::{Material, Regime, Section, VACUUM_PERMITTIVITY, Wanted};
use jointwright_numerics::outline::{Outline, Point};
use std::f64::consts::PI;

/// Far below the effect of a wrong digit in any input, and far above rounding.
const CLOSE: f64 = 1e-6;
const SLICE: f64 = 1e-3;

fn coaxial_wanted() -> Vec<Wanted> {
    vec![
        Wanted::Capacitance,
        Wanted::PeakInRegion { region_index: 0 },
        Wanted::PeakOnCurve {
            tag: "outer".to_owned(),
        },
        Wanted::PotentialAt {
            at: Point::new(9e-3, 0.4e-3),
        },
        Wanted::FieldAt {
            at: Point::new(9e-3, 0.4e-3),
            side: None,
        },
    ]
}

/// C = 2πεL / ln(b/a), E(r) = U / (r ln(b/a)).
fn one_layer(volts: f64, a: f64, b: f64, permittivity: f64) -> [f64; 5] {
    let ln = (b / a).ln();
    [
        2.0 * PI * permittivity * VACUUM_PERMITTIVITY * SLICE / ln,
        volts / (a * ln),
        volts / (b * ln),
        volts * (b / 9e-3).ln() / ln,
        volts / (9e-3 * ln),
    ]
}

#[track_caller]
fn check_one_layer(permittivity: f64, expected: [f64; 5], is_expected_near: bool) {
    let section = coaxial(
        &[6.65e-3, 11.1e-3],
        SLICE,
        &[insulator(permittivity)],
        8.7e3,
    );
    let found = answers(&section, &coaxial_wanted(), CLOSE);
    for (answer, expected) in found.iter().zip(expected) {
        let is_all_near = is_near(answer.value, expected, CLOSE);
        assert_eq!(is_all_near, is_expected_near, "{} {expected}", answer.value);
        assert!(
            !is_expected_near
                || (answer.value - expected).abs()
                    <= 3.0 * answer.error_estimate + 1e-9 * expected.abs(),
            "{} {expected} {}",
            answer.value,
            answer.error_estimate
        );
    }
}

#[test]
fn one_layer_between_cylinders_agrees_to_a_millionth() {
    check_one_layer(2.3, one_layer(8.7e3, 6.65e-3, 11.1e-3, 2.3), true);
}

#[test]
fn one_layer_is_told_from_one_a_hundredth_of_a_millimetre_thicker() {
    check_one_layer(2.3, one_layer(8.7e3, 6.65e-3, 11.11e-3, 2.3), false);
}

/// E in layer i at r is U / (ε_i r Σ ln(b/a)/ε).
#[track_caller]
fn check_two_layers(outer_permittivity: f64, is_expected_near: bool) {
    let section = coaxial(
        &[6.65e-3, 11.1e-3, 30e-3],
        SLICE,
        &[insulator(2.3), insulator(outer_permittivity)],
        8.7e3,
    );
    let wanted = [
        Wanted::Capacitance,
        Wanted::FieldAt {
            at: Point::new(11.1e-3, 0.5e-3),
            side: Some(0),
        },
        Wanted::FieldAt {
            at: Point::new(11.1e-3, 0.5e-3),
            side: Some(1),
        },
        Wanted::PotentialAt {
            at: Point::new(11.1e-3, 0.5e-3),
        },
    ];
    let sum = (11.1_f64 / 6.65).ln() / 2.3 + (30.0_f64 / 11.1).ln() / 2.8;
    let expected = [
        2.0 * PI * VACUUM_PERMITTIVITY * SLICE / sum,
        8.7e3 / (2.3 * 11.1e-3 * sum),
        8.7e3 / (2.8 * 11.1e-3 * sum),
        8.7e3 * (30.0_f64 / 11.1).ln() / 2.8 / sum,
    ];
    for (answer, expected) in answers(&section, &wanted, CLOSE).iter().zip(expected) {
        let near = is_near(answer.value, expected, CLOSE);
        assert_eq!(near, is_expected_near, "{} {expected}", answer.value);
    }
}

#[test]
fn two_layers_between_cylinders_agree_to_a_millionth() {
    check_two_layers(2.8, true);
}

#[test]
fn two_layers_are_told_from_a_permittivity_a_hundredth_off() {
    check_two_layers(2.81, false);
}

/// Two layers with a low conductivity: the potential between them divides like their impedances.
#[track_caller]
fn check_lossy(frequency_hz: f64, expected_frequency_hz: f64, is_expected_near: bool) {
    let (one, two) = (conductor(2.3, 1e-9), conductor(2.8, 4e-9));
    let mut section = coaxial(&[6.65e-3, 11.1e-3, 30e-3], SLICE, &[one, two], 8.7e3);
    section.regime = Regime::Complex { frequency_hz };
    let wanted = [Wanted::PotentialAt {
        at: Point::new(11.1e-3, 0.5e-3),
    }];
    let found = answers(&section, &wanted, CLOSE)[0];
    // Admittance of each layer per metre over 2π: σ + jωε over ln(b/a).
    let turn = 2.0 * PI * expected_frequency_hz * VACUUM_PERMITTIVITY;
    let admittance = |conductivity: f64, permittivity: f64, ratio: f64| {
        [conductivity / ratio.ln(), turn * permittivity / ratio.ln()]
    };
    let (p, q) = (
        admittance(1e-9, 2.3, 11.1 / 6.65),
        admittance(4e-9, 2.8, 30.0 / 11.1),
    );
    let sum = [p[0] + q[0], p[1] + q[1]];
    let size = sum[0] * sum[0] + sum[1] * sum[1];
    let value = [
        8.7e3 * (p[0] * sum[0] + p[1] * sum[1]) / size,
        8.7e3 * (p[1] * sum[0] - p[0] * sum[1]) / size,
    ];
    let phase = found.phase.unwrap_or_default();
    let is_all_near = is_near(found.value, value[0].hypot(value[1]), CLOSE)
        && (phase - value[1].atan2(value[0])).abs() < CLOSE;
    assert_eq!(is_all_near, is_expected_near, "{found:?} {value:?}");
}

#[test]
fn two_lossy_layers_divide_a_potential_like_their_impedances() {
    check_lossy(60.0, 60.0, true);
}

#[test]
fn lossy_layers_at_60_hz_are_told_from_those_at_50() {
    check_lossy(60.0, 50.0, false);
}

/// A void about the axis between two far plates: `quarter` holds its profile from the equator to the pole, as arcs.
fn void_between_plates(quarter: &[(Point, Option<Point>)], outside: Material) -> Section {
    const FAR: f64 = 40e-3;
    // Only the upper half: the plane through the middle is an equipotential.
    let n = quarter.len();
    let mut points: Vec<Point> = quarter.iter().map(|(place, _)| *place).collect();
    points.push(Point::new(0.0, 0.0));
    points.push(Point::new(FAR, 0.0));
    points.push(Point::new(FAR, FAR));
    points.push(Point::new(0.0, FAR));
    let (middle, rim, corner, top) = (n, n + 1, n + 2, n + 3);
    let mut curves: Vec<_> = (0..n - 1)
        .map(|piece| match quarter[piece].1 {
            Some(center) => arc(piece, piece + 1, center, "void"),
            None => line(piece, piece + 1, "void"),
        })
        .collect();
    let profile: Vec<i64> = (1..n as i64).collect();
    let next = n as i64;
    curves.push(line(middle, 0, "ground"));
    curves.push(line(n - 1, middle, "axis"));
    curves.push(line(0, rim, "ground"));
    curves.push(line(rim, corner, "far"));
    curves.push(line(corner, top, "plate"));
    curves.push(line(top, n - 1, "axis"));
    let mut inside = vec![next];
    inside.extend(&profile);
    inside.push(next + 1);
    let mut around: Vec<i64> = vec![next + 2, next + 3, next + 4, next + 5];
    around.extend(profile.iter().rev().map(|curve| -curve));
    Section {
        outline: Outline {
            points,
            curves,
            regions: vec![region("void", &inside), region("around", &around)],
        },
        materials: vec![insulator(1.0), outside],
        // A field of 1 kV/mm far away.
        potentials: vec![("ground".to_owned(), 0.0), ("plate".to_owned(), 1e6 * FAR)],
        floating: Vec::new(),
        regime: Regime::Capacitive,
        leave_out: Vec::new(),
    }
}

/// The plates and the rim are 40 radii away: the images' field is below 2 (1/40)³ of the whole.
const FAR_ENOUGH: f64 = 2e-4;

#[track_caller]
fn check_void(section: &Section, expected: f64, is_expected_near: bool) {
    let wanted = [
        Wanted::FieldAt {
            at: Point::new(0.0, 0.1e-3),
            side: None,
        },
        Wanted::FieldAt {
            at: Point::new(0.3e-3, 0.2e-3),
            side: Some(0),
        },
    ];
    for answer in answers(section, &wanted, 1e-4) {
        let near = is_near(answer.value * 1e-6, expected, FAR_ENOUGH);
        assert_eq!(near, is_expected_near, "{} {expected}", answer.value * 1e-6);
    }
}

fn sphere(permittivity: f64) -> Section {
    let center = Point::new(0.0, 0.0);
    let quarter = [
        (Point::new(1e-3, 0.0), Some(center)),
        (Point::new(0.0, 1e-3), None),
    ];
    void_between_plates(&quarter, insulator(permittivity))
}

#[test]
fn field_in_a_spherical_void_is_3_eps_over_2_eps_plus_1() {
    check_void(&sphere(2.3), 3.0 * 2.3 / (2.0 * 2.3 + 1.0), true);
}

#[test]
fn a_spherical_void_is_told_from_one_in_another_material() {
    check_void(&sphere(2.31), 3.0 * 2.3 / (2.0 * 2.3 + 1.0), false);
}

/// An oblate spheroid twice as wide as high, its profile as arcs through three points of the ellipse each.
fn oblate(height: f64) -> Section {
    const N_ARCS: usize = 24;
    let on = |angle: f64| Point::new(1e-3 * angle.cos(), height * angle.sin());
    let step = 0.5 * PI / N_ARCS as f64;
    let quarter: Vec<(Point, Option<Point>)> = (0..=N_ARCS)
        .map(|piece| {
            let angle = step * piece as f64;
            let mut place = on(angle);
            if piece == N_ARCS {
                place.r = 0.0;
            }
            let mut next = on(angle + step);
            if piece + 1 == N_ARCS {
                next.r = 0.0;
            }
            (place, Some(center(place, on(angle + 0.5 * step), next)))
        })
        .collect();
    void_between_plates(&quarter, insulator(2.3))
}

/// Centre of the circle through three places.
fn center(a: Point, b: Point, c: Point) -> Point {
    let (br, bz, cr, cz) = (b.r - a.r, b.z - a.z, c.r - a.r, c.z - a.z);
    let twice = 2.0 * (br * cz - bz * cr);
    let (bb, cc) = (br * br + bz * bz, cr * cr + cz * cz);
    Point::new(
        a.r + (cz * bb - bz * cc) / twice,
        a.z + (br * cc - cr * bb) / twice,
    )
}

/// E_v = ε E₀ / (ε − (ε − 1) N), N = 0.5272003 for 2 : 1 with the short axis along the field (`values.csv` of field-forms: void.oblate.2).
const OBLATE_2: f64 = 1.424466;

#[test]
fn field_in_an_oblate_void_follows_its_depolarisation_factor() {
    check_void(&oblate(0.5e-3), OBLATE_2, true);
}

#[test]
fn an_oblate_void_is_told_from_one_a_fiftieth_higher() {
    check_void(&oblate(0.51e-3), OBLATE_2, false);
}
