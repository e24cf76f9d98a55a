//! One test for each flaw, with a valid twin.

use super::{arc, check_says, line, mm, region, walls};
use jointwright_numerics::outline::{Entity, Flaw, Outline, Side};

#[test]
fn two_walls_that_share_a_curve_have_no_flaw_whichever_way_they_are_run() {
    let mut outline = walls();
    check_says(&outline, &[]);
    outline.regions[1] = region("far", &[2, -6, -5, -7]);
    check_says(&outline, &[]);
}

#[test]
fn a_point_that_no_curve_uses_is_no_flaw() {
    let mut outline = walls();
    outline.points.push(mm(-5.0, 3.0));
    outline.points.push(outline.points[1]);
    check_says(&outline, &[]);
}

#[test]
fn a_curve_to_a_point_that_is_not_there_is_named() {
    let mut outline = walls();
    outline.curves[4].to = 9;
    let flaws = check_says(
        &outline,
        &["curve 5 (outer) names point 9, but there are 6 points"],
    );
    assert_eq!(flaws[0].entity(), Entity::Curve(4));
    outline.curves[4].to = usize::MAX;
    check_says(&outline, &["curve 5 (outer) names point"]);
}

#[test]
fn a_region_of_a_curve_that_is_not_there_is_named() {
    for curve_index in [7, usize::MAX] {
        let mut outline = walls();
        outline.regions[1].boundary[0] = Side {
            curve_index,
            is_reversed: true,
        };
        let flaws = check_says(
            &outline,
            &[
                "curve 7 (interior) belongs to no region",
                "region \"far\" names curve",
            ],
        );
        assert_eq!(flaws[1].entity(), Entity::Region(1));
    }
}

#[test]
fn coordinates_that_are_no_numbers_are_named() {
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e300] {
        let mut outline = walls();
        outline.points[2].z = bad;
        let flaws = check_says(&outline, &["point 2 of the outline"]);
        assert_eq!(flaws[0].entity(), Entity::Point(2));
    }
}

#[test]
fn places_beyond_the_axis_are_named_and_rounding_is_not() {
    let mut outline = walls();
    for point in [0, 3] {
        outline.points[point].r = 0.0;
    }
    check_says(&outline, &[]);
    outline.points[0].r = -1e-13;
    check_says(&outline, &[]);
    outline.points[0].r = -1e-9;
    check_says(
        &outline,
        &[
            "curve 1 (interior) reaches to r = -0.000001 mm at (-0.000001, 0) mm",
            "curve 4 (inner)",
        ],
    );
}

#[test]
fn an_arc_that_bulges_over_the_axis_is_named_and_one_that_touches_it_is_not() {
    // A disc about (10, 0) as three arcs; the third touches the axis in its middle.
    let outline = |radius: f64| {
        let center = mm(10.0, 0.0);
        let at = |degrees: f64| {
            let (sine, cosine) = degrees.to_radians().sin_cos();
            mm(10.0 + radius * cosine, radius * sine)
        };
        Outline {
            points: vec![at(0.0), at(120.0), at(-120.0)],
            curves: vec![
                arc(0, 1, center, "a"),
                arc(1, 2, center, "b"),
                arc(2, 0, center, "c"),
            ],
            regions: vec![region("disc", &[1, 2, 3])],
        }
    };
    check_says(&outline(10.0), &[]);
    check_says(
        &outline(10.1),
        &["curve 2 (b) reaches to r = -0.1 mm at (-0.1, 0) mm"],
    );
}

#[test]
fn a_curve_without_length_is_named() {
    let mut outline = walls();
    outline.curves.push(line(2, 2, "dot"));
    check_says(
        &outline,
        &[
            "curve 8 (dot) has no length: it begins and ends at (20, 10) mm",
            "curve 8 (dot) belongs to no region",
        ],
    );
    let mut outline = walls();
    outline.points[1] = mm(10.0 + 5e-7, 0.0);
    let flaws = check_says(&outline, &["curve 1 (interior) has no length"]);
    assert!(matches!(flaws[0], Flaw::NoLength { .. }));
}

#[test]
fn two_points_of_two_curves_at_one_place_are_not_glued() {
    let mut outline = walls();
    outline.points.push(outline.points[2]);
    outline.curves[5].to = 6;
    check_says(
        &outline,
        &[
            "curve 2 (face) and curve 6 (interior) end at two different points, 2 and 6 (numbered from 0), at the same place (20, 10) mm: they are not glued",
        ],
    );
    outline.points[6].r += 0.9e-9;
    assert!(matches!(
        super::check(&outline)[0],
        Flaw::Unglued { points: [2, 6], .. }
    ));
}

#[test]
fn arcs_must_lie_on_their_circle() {
    let mut outline = walls();
    // A bulge of the outer curve about (25, 5).
    let center = mm(25.0, 5.0);
    outline.curves[4] = arc(4, 5, center, "outer");
    check_says(&outline, &[]);
    outline.curves[4] = arc(4, 5, mm(25.0, 5.0 + 0.9e-6), "outer");
    check_says(&outline, &[]);
    outline.curves[4] = arc(4, 5, mm(25.0, 5.000_01), "outer");
    check_says(
        &outline,
        &[
            "curve 5 (outer) is an arc about (25, 5.00001) mm, but its ends lie 7.0710749 mm and 7.0710607 mm from there",
        ],
    );
    outline.curves[4] = arc(4, 5, mm(30.0, 10.0), "outer");
    check_says(&outline, &["centre (30, 10) mm says no circle"]);
    outline.curves[4] = arc(4, 5, mm(f64::NAN, 10.0), "outer");
    check_says(&outline, &["says no circle"]);
}

#[test]
fn an_arc_of_half_a_turn_does_not_say_which_half() {
    let mut outline = walls();
    outline.curves[4] = arc(4, 5, mm(30.0, 5.0), "outer");
    check_says(
        &outline,
        &["curve 5 (outer) is an arc of half a turn from (30, 0) mm to (30, 10) mm"],
    );
    outline.curves[4] = arc(4, 5, mm(29.999_99, 5.0), "outer");
    check_says(&outline, &[]);
}

#[test]
fn loops_must_close_and_the_gap_is_named() {
    let mut outline = walls();
    outline.regions[0] = region("near", &[1, -2, 3, 4]);
    check_says(
        &outline,
        &[
            "region \"near\" is not closed: curve 1 (interior) ends at (20, 0) mm, but curve 2 (face), which is next, begins at (20, 10) mm; run the other way it would fit",
            "curve 2 (face) ends at (20, 0) mm, but curve 3 (interior), which is next, begins at (20, 10) mm",
        ],
    );
    outline.regions[0] = region("near", &[1, 2, 4]);
    check_says(
        &outline,
        &[
            "curve 2 (face) ends at (20, 10) mm, but curve 4 (inner), which is next, begins at (10, 10) mm",
            "curve 3 (interior) belongs to no region",
        ],
    );
    outline.regions[0] = region("near", &[1]);
    outline.regions[0].boundary.clear();
    let flaws = super::check(&outline);
    assert!(flaws.iter().any(|f| matches!(f, Flaw::EmptyLoop { .. })));
}

#[test]
fn a_loop_must_not_run_a_curve_twice() {
    let mut outline = walls();
    outline.points.push(mm(15.0, 5.0));
    outline.curves.push(line(0, 6, "slit"));
    outline.regions[0] = region("near", &[1, 2, 3, 4, 8, -8]);
    check_says(&outline, &["region \"near\" runs curve 8 (slit) twice"]);
}

#[test]
fn a_curve_of_no_region_is_named() {
    let mut outline = walls();
    outline.points.push(mm(14.0, 5.0));
    outline.points.push(mm(16.0, 5.0));
    outline.curves.push(line(6, 7, "sheet"));
    let flaws = check_says(&outline, &["curve 8 (sheet) belongs to no region"]);
    assert_eq!(flaws[0].entity(), Entity::Curve(7));
}

#[test]
fn two_regions_on_one_side_of_a_curve_overlap() {
    let mut outline = walls();
    outline.regions.push(region("again", &[1, 2, 3, 4]));
    check_says(
        &outline,
        &[
            "curve 1 (interior) has both region \"near\" and region \"again\" on one side",
            "curve 2 (face) bounds 3 regions",
        ],
    );
    // The same side, although its direction is reversed.
    outline.regions[2] = region("again", &[-4, -3, -2, -1]);
    check_says(
        &outline,
        &[
            "has both region \"near\" and region \"again\" on one side",
            "bounds 3 regions",
        ],
    );
}

#[test]
fn a_curve_has_two_sides() {
    let mut outline = walls();
    outline.points.push(mm(25.0, 5.0));
    outline.curves.push(line(1, 6, "rib"));
    outline.curves.push(line(6, 2, "rib"));
    outline.regions.push(region("third", &[8, 9, -2]));
    check_says(
        &outline,
        &["curve 2 (face) bounds 3 regions, region \"near\" and region \"far\" among them"],
    );
    // The twin: the third region cut out of the second.
    outline.regions[1] = region("far", &[7, 5, 6, -9, -8]);
    check_says(&outline, &[]);
}

#[test]
fn a_region_inside_another_overlaps_it() {
    let mut outline = walls();
    let first = outline.points.len();
    for (r, z) in [(22.0, 2.0), (28.0, 2.0), (25.0, 8.0)] {
        outline.points.push(mm(r, z));
    }
    outline.curves.extend([
        line(first, first + 1, "void"),
        line(first + 1, first + 2, "void"),
        line(first + 2, first, "void"),
    ]);
    outline.regions.push(region("void", &[8, 9, 10]));
    check_says(
        &outline,
        &[
            "region \"void\" overlaps region \"far\": curve 8 (void), of the first, runs through the inside of the second at (25, 2) mm",
        ],
    );
    // One that shares a corner of the other.
    outline.curves[9] = line(first + 2, first, "void");
    outline.points[first] = mm(20.0, 0.0);
    outline.curves[7].from = 1;
    outline.curves[9].to = 1;
    check_says(&outline, &["region \"void\" overlaps region \"far\""]);
    // The twin outside touches at that corner only.
    outline.points[first + 1] = mm(28.0, -2.0);
    outline.points[first + 2] = mm(25.0, -8.0);
    check_says(&outline, &[]);
}

#[test]
fn two_regions_of_one_name_are_named() {
    let mut outline = walls();
    outline.regions[1].name = "near".to_owned();
    let flaws = check_says(
        &outline,
        &["region \"near\" and the region after it at place 2 have the same name"],
    );
    assert_eq!(flaws[0].entity(), Entity::Region(1));
}

#[test]
fn a_loop_without_area_is_named() {
    let outline = Outline {
        points: vec![mm(10.0, 0.0), mm(20.0, 0.0), mm(15.0, 0.0)],
        curves: vec![line(0, 2, "a"), line(2, 1, "b"), line(0, 1, "c")],
        regions: vec![region("flat", &[1, 2, -3])],
    };
    let flaws = super::check(&outline);
    assert!(
        flaws.iter().any(|f| matches!(f, Flaw::Doubled { .. })),
        "{flaws:?}"
    );
    // A sliver as long as a cable and thinner than the tolerance of places.
    let mut sliver = outline;
    sliver.points[2] = mm(15.0, 6e-6);
    check_says(&sliver, &[]);
    sliver.points[2] = mm(15.0, 1.5e-6);
    check_says(
        &sliver,
        &["the boundary of region \"flat\" encloses no area"],
    );
}

#[test]
fn flaws_come_in_the_order_of_the_curves() {
    let mut outline = walls();
    outline.curves[5].to = 77;
    outline.curves[0].from = 88;
    outline.curves.push(line(3, 3, "dot"));
    check_says(&outline, &["curve 1", "curve 6", "curve 8", "curve 8"]);
}
