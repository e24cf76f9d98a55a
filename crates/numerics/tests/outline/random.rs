//! Properties of the check over random outlines.

use super::{mm, walls};
use jointwright_numerics::outline::{Curve, Outline, Point, Region, Shape, Side, check};
use proptest::prelude::*;

fn coordinates() -> impl Strategy<Value = f64> {
    prop_oneof![
        8 => (0_i32..6).prop_map(|n| f64::from(n) * 0.01),
        2 => -0.02_f64..0.1,
        1 => prop::num::f64::ANY,
    ]
}

fn points() -> impl Strategy<Value = Point> {
    (coordinates(), coordinates()).prop_map(|(r, z)| Point::new(r, z))
}

fn outlines() -> impl Strategy<Value = Outline> {
    let shape = prop_oneof![
        3 => Just(Shape::Line),
        2 => points().prop_map(|center| Shape::Arc { center }),
    ];
    let curve = (0_usize..9, 0_usize..9, shape).prop_map(|(from, to, shape)| Curve {
        from,
        to,
        shape,
        tag: "t".to_owned(),
    });
    let side = (
        prop_oneof![20 => 0_usize..12, 1 => Just(usize::MAX)],
        any::<bool>(),
    )
        .prop_map(|(curve_index, is_reversed)| Side {
            curve_index,
            is_reversed,
        });
    let region = prop::collection::vec(side, 0..6).prop_map(|boundary| Region {
        name: "r".to_owned(),
        boundary,
    });
    (
        prop::collection::vec(points(), 0..9),
        prop::collection::vec(curve, 0..12),
        prop::collection::vec(region, 0..4),
    )
        .prop_map(|(points, curves, regions)| Outline {
            points,
            curves,
            regions,
        })
}

/// Moves, turns by quarters and mirrors an outline.
fn moved(outline: &Outline, by: Point, is_mirrored: bool) -> Outline {
    let turn = |p: Point| {
        let z = if is_mirrored { -p.z } else { p.z };
        Point::new(p.r + by.r, z + by.z)
    };
    let mut moved = outline.clone();
    for point in &mut moved.points {
        *point = turn(*point);
    }
    for curve in &mut moved.curves {
        if let Shape::Arc { center } = &mut curve.shape {
            *center = turn(*center);
        }
    }
    moved
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn hostile_outlines_are_judged_without_a_panic(outline in outlines()) {
        let flaws = check(&outline);
        for flaw in &flaws {
            prop_assert!(!flaw.to_string().is_empty());
        }
        // Answers about an outline with flaws are meaningless, but cause no panic.
        for place in [Point::new(0.01, 0.01), Point::new(f64::NAN, 0.0)] {
            let _ = (outline.regions_at(place), outline.curves_at(place));
            let _ = outline.holds_part_of(place, Point::new(0.03, 0.02));
        }
    }

    #[test]
    fn a_sound_outline_stays_sound_when_moved_along_the_axis_or_mirrored(z in -2.0_f64..2.0, r in 0.0_f64..2.0, is_mirrored: bool) {
        let mut outline = walls();
        outline.curves[1].shape = Shape::Arc { center: mm(14.0, 5.0) };
        prop_assert_eq!(check(&moved(&outline, Point::new(r, z), is_mirrored)), vec![]);
        // The twin: the bulge of the face now reaches past the outer curve.
        outline.curves[4].shape = Shape::Arc { center: mm(31.0, 5.0) };
        outline.points[4].r = 0.0215;
        outline.points[5].r = 0.0215;
        prop_assert!(!check(&moved(&outline, Point::new(r, z), is_mirrored)).is_empty());
    }

    #[test]
    fn places_inside_and_outside_a_disc_are_told_apart(angle in 0.0_f64..6.2, share in 0.0_f64..2.0) {
        prop_assume!((share - 1.0).abs() > 1e-6);
        let center = mm(30.0, 5.0);
        let at = |degrees: f64| {
            let (sine, cosine) = degrees.to_radians().sin_cos();
            Point::new(center.r + 0.01 * cosine, center.z + 0.01 * sine)
        };
        let arc = |from, to| Curve { from, to, shape: Shape::Arc { center }, tag: "rim".to_owned() };
        let side = |curve_index| Side { curve_index, is_reversed: false };
        let outline = Outline {
            points: vec![at(0.0), at(100.0), at(200.0)],
            curves: vec![arc(0, 1), arc(1, 2), arc(2, 0)],
            regions: vec![Region { name: "disc".to_owned(), boundary: vec![side(0), side(1), side(2)] }],
        };
        prop_assert_eq!(check(&outline), vec![]);
        let place = Point::new(center.r + share * 0.01 * angle.cos(), center.z + share * 0.01 * angle.sin());
        prop_assert_eq!(outline.regions_at(place).len(), usize::from(share < 1.0));
        let rim = Point::new(center.r + 0.01 * angle.cos(), center.z + 0.01 * angle.sin());
        prop_assert!(!outline.curves_at(rim).is_empty() && outline.regions_at(rim).len() == 1);
        let beyond = Point::new(center.r + 0.02 * angle.cos(), center.z + 0.02 * angle.sin());
        prop_assert_eq!(outline.holds_part_of(place, beyond), share < 1.0);
    }
}
