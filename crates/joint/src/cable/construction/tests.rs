//! Tests of the diameters: sums done by hand, and laws.

use super::super::candidate::plain;
use super::super::{Metal, Size, Stranding, candidates};
use super::*;
use proptest::prelude::*;

const MIL: Length = Length::MIL;

fn cable(size: &str, stranding: Stranding, wall: Wall) -> Construction {
    let size = Size::parse(size).expect("a size");
    plain(
        Conductor {
            size,
            metal: Metal::Aluminium,
            stranding,
        },
        wall,
    )
}

fn utility() -> Construction {
    cable(
        "4/0 AWG",
        Stranding::Compressed,
        Wall::Icea {
            class_kv: 15,
            level_percent: 133,
        },
    )
}

/// Checks in hundredths of a mil, so that sums done by hand are exact.
#[track_caller]
fn check(construction: &Construction, layer: Layer, hundredths_of_mil: [i64; 3]) {
    let band = construction
        .diameter_over(layer)
        .expect("the rows are there");
    let said = [band.least, band.nominal, band.greatest].map(Length::nm);
    assert_eq!(said, hundredths_of_mil.map(|n| n * 254), "{layer:?}");
}

#[test]
fn a_utility_cable_adds_up_by_hand() {
    // 512 mil −2 % +1 %; screen 12/18/30; wall 210/220/250; screen 24/38/75 (1.0 in is spanned); wires 64; jacket 40/50/100.
    check(&utility(), Layer::Conductor, [50_176, 51_200, 51_712]);
    check(&utility(), Layer::ConductorScreen, [52_576, 54_800, 57_712]);
    check(&utility(), Layer::Insulation, [94_576, 98_800, 107_712]);
    check(
        &utility(),
        Layer::InsulationScreen,
        [99_376, 106_400, 122_712],
    );
    check(
        &utility(),
        Layer::MetallicShield,
        [112_176, 119_200, 135_512],
    );
    check(&utility(), Layer::Jacket, [120_176, 129_200, 155_512]);
}

#[test]
fn an_iec_cable_adds_up_by_hand() {
    // 240 mm² compact 17.8–19.2 mm; screen 0.3–1.0; wall 5.5: 4.85 to 5.5/0.85, rounded outward.
    let band = cable(
        "240 mm2",
        Stranding::Compact,
        Wall::Iec {
            u0_kv_tenths: 120,
            u_kv: 20,
        },
    )
    .diameter_over(Layer::Insulation);
    let band = band.expect("the rows are there");
    assert_eq!(
        band.least,
        Length::from_nm(17_800_000 + 600_000 + 9_700_000)
    );
    assert_eq!(
        band.nominal,
        Length::from_nm(18_500_000 + 1_200_000 + 11_000_000)
    );
    assert_eq!(
        band.greatest,
        Length::from_nm(19_200_000 + 2_000_000 + 2 * 6_470_589)
    );
    assert_eq!(band.sure, Sure::Memory);
}

#[test]
fn an_iec_oversheath_follows_the_diameter_under_it() {
    let mut stated = cable(
        "240 mm2",
        Stranding::Compact,
        Wall::Iec {
            u0_kv_tenths: 120,
            u_kv: 20,
        },
    );
    stated
        .stated
        .insert(Layer::MetallicShield, Interval::point(Length::MM * 30));
    // 0.035 · 30 + 1.0 = 2.05, to the nearest tenth 2.1 mm (a half rounds up).
    let jacket = stated.thickness_of(Layer::Jacket).expect("a rule");
    assert_eq!(jacket.nominal, Length::from_nm(2_100_000));
    assert_eq!(jacket.least, Length::from_nm(1_480_000));
    assert_eq!(jacket.greatest, Length::from_nm(2_730_000));
}

#[test]
fn a_missing_row_says_which() {
    let said = |c: Construction, layer| c.diameter_over(layer).map_err(|u| u.to_string());
    let compact = cable(
        "700 kcmil",
        Stranding::Compact,
        Wall::Icea {
            class_kv: 15,
            level_percent: 133,
        },
    );
    assert_eq!(
        said(compact, Layer::Jacket),
        Err("no row for 700 kcmil compact".to_owned())
    );
    let level = cable(
        "4/0 AWG",
        Stranding::Compact,
        Wall::Icea {
            class_kv: 15,
            level_percent: 150,
        },
    );
    assert_eq!(
        said(level.clone(), Layer::Insulation),
        Err("no wall row for 15 kV 150 %".to_owned())
    );
    assert!(level.diameter_over(Layer::ConductorScreen).is_ok());
    let voltage = cable(
        "240 mm2",
        Stranding::Compact,
        Wall::Iec {
            u0_kv_tenths: 127,
            u_kv: 22,
        },
    );
    assert_eq!(
        said(voltage, Layer::Insulation),
        Err("no wall row for 12.7/22 kV".to_owned())
    );
}

#[test]
fn a_wall_of_nothing_is_unknown() {
    for mil in [0, -220] {
        let none = Construction {
            wall: Wall::Stated(MIL * mil),
            ..utility()
        };
        assert!(none.diameter_over(Layer::Insulation).is_err(), "{mil}");
    }
}

#[test]
fn the_papers_replace_the_row_and_what_is_outside_builds_on_them() {
    let mut stated = cable(
        "700 kcmil",
        Stranding::Compact,
        Wall::Icea {
            class_kv: 15,
            level_percent: 133,
        },
    );
    let on_papers = Interval::around(Length::MM * 26, Length::from_nm(300_000));
    stated.stated.insert(Layer::Insulation, on_papers);
    let insulation = stated.diameter_over(Layer::Insulation).expect("stated");
    assert_eq!(
        (insulation.interval(), insulation.sure),
        (on_papers, Sure::Papers)
    );
    stated.insulation_screen = Some(Interval::point(Length::MM));
    let screen = stated
        .diameter_over(Layer::InsulationScreen)
        .expect("stated all the way");
    assert_eq!(
        screen.interval(),
        Interval::around(Length::MM * 28, Length::from_nm(300_000))
    );
    assert_eq!(screen.sure, Sure::Papers);
    assert!(stated.diameter_over(Layer::Conductor).is_err());
}

#[test]
fn a_sum_is_no_surer_than_its_worst_row_and_names_every_source() {
    let mut concentric = utility();
    concentric.conductor.stranding = Stranding::Concentric;
    let band = concentric.diameter_over(Layer::Insulation).expect("rows");
    assert!(band.sure.is_memory());
    for part in ["nec_ch9_t8", "tolerance", "icea_s94649"] {
        assert!(
            band.sources.iter().any(|s| s.contains(part)),
            "{part} in {:?}",
            band.sources
        );
    }
}

#[test]
fn a_stated_wall_that_is_a_row_measures_like_the_row() {
    let stated = Construction {
        wall: Wall::Stated(MIL * 220),
        ..utility()
    };
    let (a, b) = (
        stated.diameter_over(Layer::Jacket),
        utility().diameter_over(Layer::Jacket),
    );
    let (a, b) = (a.expect("rows"), b.expect("rows"));
    assert_eq!(a.interval(), b.interval());
}

#[test]
fn the_shield_area_of_a_tape_needs_the_screen_under_it() {
    let tape = Shield::LappedTape {
        thickness: MIL * 5,
        width: None,
        overlap_percent: 25.0,
    };
    let known = Construction {
        shield: tape,
        ..utility()
    }
    .shield_area()
    .expect("the screen is known");
    assert_eq!(known.sure, Sure::Memory);
    let unknown = Construction {
        shield: tape,
        ..cable("700 kcmil", Stranding::Compact, Wall::Stated(MIL * 220))
    };
    assert_eq!(unknown.shield_area(), None);
    let wires = Construction {
        shield: utility().shield,
        ..unknown
    }
    .shield_area()
    .expect("wires need no diameter");
    assert!((wires.area_mm2 / (16.0 * 4.096 * 0.506_707_5) - 1.0).abs() < 1e-6);
}

#[test]
fn the_extremes_of_every_row_keep_their_order() {
    for candidate in candidates() {
        let construction = plain(candidate.conductor, candidate.walls[0]);
        let mut inside = Length::ZERO;
        for layer in Layer::ALL {
            let band = construction
                .diameter_over(layer)
                .expect("every candidate has rows");
            assert!(
                band.least <= band.nominal && band.nominal <= band.greatest,
                "{construction:?} {layer:?}"
            );
            assert!(inside < band.least, "{construction:?} {layer:?}");
            inside = band.least;
        }
    }
}

proptest! {
    #[test]
    fn a_wall_stated_thicker_is_never_a_thinner_cable(wall_mil in 60i64..600, more_mil in 1i64..100) {
        let over = |mil| Construction { wall: Wall::Stated(MIL * mil), ..utility() }.diameter_over(Layer::Insulation);
        let (thin, thick) = (over(wall_mil), over(wall_mil + more_mil));
        let (thin, thick) = (thin.expect("stated"), thick.expect("stated"));
        prop_assert!(thin.nominal < thick.nominal);
        // Rows are rounded to 5 mil and the pattern is not, so the bounds may cross by that much, twice.
        prop_assert!(thin.least <= thick.least + MIL * 10 && thin.greatest <= thick.greatest + MIL * 10);
    }

    #[test]
    fn narrower_papers_never_widen_a_diameter(least_um in 200i64..900, width_um in 0i64..400, cut_um in 0i64..200) {
        let over = |least: i64, width: i64| {
            let papers = Interval::new(Length::from_nm(least * 1000), Length::from_nm((least + width) * 1000));
            let c = Construction { conductor_screen: papers, ..utility() };
            c.diameter_over(Layer::Jacket).expect("rows").interval()
        };
        let cut = cut_um.min(width_um / 2);
        prop_assert!(over(least_um, width_um).covers(over(least_um + cut, width_um - 2 * cut)));
    }
}
