//! Pressures compared with published numbers, closed forms and limits.

use jointwright_numerics::rubber::{Ends, Law, Ring, Tube};

fn neo(bore_mm: f64, outer_mm: f64, modulus_mpa: f64) -> Tube {
    let law = Law::NeoHookean {
        modulus_pa: modulus_mpa * 1e6,
    };
    tube(bore_mm, &[(outer_mm, law)])
}

fn tube(bore_mm: f64, rings: &[(f64, Law)]) -> Tube {
    let ring = |&(outer_mm, law): &(f64, Law)| Ring {
        outside_m: outer_mm * 1e-3,
        law,
    };
    Tube::new(bore_mm * 1e-3, rings.iter().map(ring).collect()).expect("a tube")
}

fn pressure_mpa(tube: &Tube, radius_mm: f64, axial: f64) -> f64 {
    let pressed = tube.pressed_at(radius_mm * 1e-3, axial);
    pressed.expect("a pressure").pressure_pa * 1e-6
}

#[track_caller]
fn close(found: f64, expected: f64, tolerance: f64) {
    let off = (found - expected).abs();
    assert!(
        off <= tolerance * expected.abs(),
        "{found}: expected {expected}, off by {off}"
    );
}

// Oracle: Rivlin 1949, Green and Zerna sec. 3.10, evaluated elsewhere (mech.tube.1, .2, .4; closed form and quadrature agree to 1e-9).
#[test]
fn published_tubes() {
    let tube = neo(10.0, 20.0, 0.5);
    close(pressure_mpa(&tube, 15.0, 1.0), 0.214_114_2, 3e-7);
    close(pressure_mpa(&tube, 12.0, 1.0), 0.116_684_9, 3e-7);
    close(pressure_mpa(&tube, 15.0, 1.1), 0.208_839_9, 3e-7);
    // Twin: a formula that forgets the axial stretch gives the first number here too.
    assert!((pressure_mpa(&tube, 15.0, 1.1) / 0.214_114_2 - 1.0).abs() > 0.02);
}

// Oracle: mech.tube.limit, μ ln(B/A) for an infinite stretch; mech.tube.smallstrain, Lamé's 2 μ (u/A)(1 − A²/B²).
#[test]
fn the_ends_of_the_curve() {
    let tube = neo(10.0, 20.0, 0.5);
    close(pressure_mpa(&tube, 1e7, 1.0), 0.346_573_6, 1e-7);
    let lame = |share: f64| 2.0 * 0.5 * share * (1.0 - 0.25);
    close(pressure_mpa(&tube, 10.0 * 1.001, 1.0), lame(1e-3), 3e-3);
    close(pressure_mpa(&tube, 10.0 * 1.000_01, 1.0), lame(1e-5), 3e-5);
    // Twin: at a stretch of a half Lamé's formula is far off.
    assert!((pressure_mpa(&tube, 15.0, 1.0) / lame(0.5) - 1.0).abs() > 0.3);
}

// Oracle: a stiffening law with a distant limit is the neo-Hookean one; quadrature against closed form.
#[test]
fn quadrature_and_closed_form_agree() {
    let far = Law::Gent {
        modulus_pa: 0.5e6,
        limit: 1e9,
    };
    let gent = tube(8.0, &[(20.0, far)]);
    let neo = neo(8.0, 20.0, 0.5);
    for stretch in [1.001, 1.1, 1.5, 2.5] {
        for axial in [0.9, 1.0, 1.1] {
            let (found, exact) = (
                pressure_mpa(&gent, 8.0 * stretch, axial),
                pressure_mpa(&neo, 8.0 * stretch, axial),
            );
            assert!(
                (found - exact).abs() <= 1e-7 * exact + 1e-9,
                "{stretch} {axial}: {found} {exact}"
            );
        }
    }
}

// Oracle: several rings of one rubber equal one ring.
#[test]
fn rings_of_one_rubber_are_one_tube() {
    for law in [
        Law::MooneyRivlin {
            c1_pa: 0.18e6,
            c2_pa: 0.04e6,
        },
        Law::Gent {
            modulus_pa: 0.4e6,
            limit: 30.0,
        },
    ] {
        let one = tube(8.0, &[(20.0, law)]);
        let three = tube(8.0, &[(9.0, law), (15.0, law), (20.0, law)]);
        for ends in [Ends::FixedLength, Ends::Free] {
            let (one, three) = (one.pressed(13e-3, ends), three.pressed(13e-3, ends));
            let (one, three) = (one.expect("one"), three.expect("three"));
            close(three.pressure_pa, one.pressure_pa, 1e-11);
            close(three.axial_stretch, one.axial_stretch, 1e-11);
        }
    }
}

// Oracle: tube formula with μ 0.35 MPa, relaxed bore 18 mm, wall 10 mm, computed elsewhere, in kPa:
// on cables of 19 to 36 mm, and with a set of 0 to 20 percent from a holdout of 54 mm.
#[test]
fn anchors_of_a_pre_expanded_body() {
    let fresh = neo(9.0, 19.0, 0.35);
    for (cable_mm, kpa) in [
        (19.0, 28.0),
        (22.0, 92.0),
        (24.0, 123.0),
        (28.0, 167.0),
        (32.0, 195.0),
        (36.0, 213.0),
    ] {
        let found = pressure_mpa(&fresh, cable_mm / 2.0, 1.0) * 1e3;
        assert!(
            (found - kpa).abs() <= 0.51,
            "{cable_mm} mm: {found} kPa, expected {kpa}"
        );
    }
    for (set, on_24, on_30) in [
        (0.0, 123.0, 182.0),
        (0.05, 84.0, 150.0),
        (0.10, 47.0, 119.0),
        (0.15, 12.0, 91.0),
        (0.20, 0.0, 65.0),
    ] {
        let bore_mm = 9.0 + set * (27.0 - 9.0);
        let old = fresh.set_to(bore_mm * 1e-3);
        for (cable_mm, kpa) in [(24.0, on_24), (30.0, on_30)] {
            let pressed = old
                .pressed(cable_mm * 0.5e-3, Ends::FixedLength)
                .expect("a pressure");
            let found = pressed.pressure_pa * 1e-3;
            assert!(
                (found - kpa).abs() <= 0.6,
                "set {set}, {cable_mm} mm: {found} kPa, expected {kpa}"
            );
        }
    }
}

#[test]
fn a_cylinder_that_is_not_larger_than_the_bore_is_not_pressed() {
    let tube = neo(10.0, 20.0, 0.5);
    for radius in [1e-3, 9.9e-3, 10e-3] {
        let pressed = tube.pressed(radius, Ends::Free).expect("nothing");
        assert_eq!(pressed.pressure_pa, 0.0);
    }
}

#[test]
fn what_is_no_tube_is_refused() {
    let law = Law::NeoHookean { modulus_pa: 1e6 };
    let ring = |outside_m: f64| Ring { outside_m, law };
    assert!(Tube::new(0.0, vec![ring(1.0)]).is_err());
    assert!(Tube::new(1.0, vec![ring(1.0)]).is_err());
    assert!(Tube::new(1.0, vec![ring(2.0), ring(1.5)]).is_err());
    assert!(Tube::new(1.0, Vec::new()).is_err());
    assert!(Tube::new(f64::NAN, vec![ring(2.0)]).is_err());
    let soft = Law::MooneyRivlin {
        c1_pa: -1.0,
        c2_pa: 0.5,
    };
    assert!(
        Tube::new(
            1.0,
            vec![Ring {
                outside_m: 2.0,
                law: soft
            }]
        )
        .is_err()
    );
    let tube = neo(10.0, 20.0, 0.5);
    assert!(tube.pressed(f64::NAN, Ends::Free).is_err());
    assert!(tube.pressed_at(0.02, 0.0).is_err());
    let brittle = Law::Gent {
        modulus_pa: 1e6,
        limit: 0.5,
    };
    let brittle = Tube::new(
        1e-2,
        vec![Ring {
            outside_m: 2e-2,
            law: brittle,
        }],
    )
    .expect("a tube");
    assert!(brittle.pressed(2e-2, Ends::FixedLength).is_err());
}
