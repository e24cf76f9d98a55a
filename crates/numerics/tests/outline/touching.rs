//! Curves that cross, touch, double or end on each other, and those that only meet.

use super::{arc, check_says, line, mm, region, walls};
use jointwright_numerics::outline::{Flaw, Outline, Point, check};

/// Outline of one loop of points joined by lines.
fn polygon(points: &[(f64, f64)]) -> Outline {
    let n = points.len();
    Outline {
        points: points.iter().map(|(r, z)| mm(*r, *z)).collect(),
        curves: (0..n).map(|at| line(at, (at + 1) % n, "rim")).collect(),
        regions: vec![region("loop", &(1..=n as i32).collect::<Vec<_>>())],
    }
}

#[test]
fn a_loop_that_crosses_itself_is_named_with_both_curves_and_the_place() {
    let bow = polygon(&[(10.0, 0.0), (20.0, 10.0), (20.0, 0.0), (10.0, 10.0)]);
    check_says(
        &bow,
        &["curve 1 (rim) and curve 3 (rim) cross at (15, 5) mm"],
    );
    check_says(
        &polygon(&[(10.0, 0.0), (20.0, 0.0), (20.0, 10.0), (10.0, 10.0)]),
        &[],
    );
}

#[test]
fn a_junction_in_the_middle_of_a_curve_is_not_glued() {
    let mut outline = walls();
    // The near wall ends in the middle of an undivided face.
    outline.points.push(mm(20.0, 5.0));
    outline.curves[2] = line(6, 3, "top");
    outline.curves.push(line(1, 6, "face"));
    outline.regions[0] = region("near", &[1, 8, 3, 4]);
    check_says(
        &outline,
        &[
            "curve 2 (face) and curve 8 (face) lie on each other from (20, 0) mm to (20, 5) mm: they are not glued",
            "curve 3 (top) ends at (20, 5) mm in the middle of curve 2 (face): they are not glued; curve 2 (face) must be divided there",
        ],
    );
    // The twin shares the lower half.
    outline.curves[1] = line(6, 2, "face");
    outline.regions[1] = region("far", &[7, 5, 6, -2, -8]);
    check_says(&outline, &[]);
}

#[test]
fn a_neighbour_with_a_curve_of_its_own_is_doubled() {
    let mut outline = walls();
    outline.curves.push(line(2, 1, "own"));
    outline.regions[1] = region("far", &[7, 5, 6, 8]);
    check_says(
        &outline,
        &["curve 2 (face) and curve 8 (own) lie on each other from (20, 0) mm to (20, 10) mm"],
    );
    // The same with separate points: both flaws are reported, because both must be cured.
    outline.points.push(outline.points[1]);
    outline.points.push(outline.points[2]);
    outline.curves[7] = line(7, 6, "own");
    outline.curves[6].from = 6;
    outline.curves[5].to = 7;
    let flaws = check(&outline);
    let n = |is: fn(&Flaw) -> bool| flaws.iter().filter(|flaw| is(flaw)).count();
    assert_eq!(n(|f| matches!(f, Flaw::Unglued { .. })), 2, "{flaws:?}");
    assert_eq!(n(|f| matches!(f, Flaw::Doubled { .. })), 1, "{flaws:?}");
    assert_eq!(flaws.len(), 3, "{flaws:?}");
}

#[test]
fn an_arc_that_cuts_through_a_line_or_an_arc_is_named() {
    let mut outline = walls();
    // A bulge of the inner curve to r = 10 + 12.36 mm crosses the face twice.
    outline.curves[3] = arc(3, 0, mm(16.0, 5.0), "inner");
    check_says(&outline, &[]);
    outline.curves[3] = arc(3, 0, mm(9.0, 5.0), "inner");
    check_says(&outline, &[]);
    outline.points[0] = mm(19.0, 0.0);
    outline.points[3] = mm(19.0, 10.0);
    outline.curves[3] = arc(3, 0, mm(16.0, 5.0), "inner");
    check_says(
        &outline,
        &[
            "curve 2 (face) and curve 4 (inner) cross at (20, ",
            "curve 2 (face) and curve 4 (inner) cross at (20, ",
        ],
    );
    outline.curves[1] = arc(1, 2, mm(15.0, 5.0), "face");
    check_says(&outline, &[]);
    outline.curves[1] = arc(1, 2, mm(12.0, 5.0), "face");
    check_says(&outline, &["cross", "cross"]);
}

#[test]
fn curves_that_touch_where_neither_ends_need_a_point() {
    let mut outline = walls();
    outline.points[0] = mm(17.0, 1.0);
    outline.points[3] = mm(17.0, 9.0);
    // Radius 5 about (15, 5) is too far; about (15, 5) through (17, 1) it is √20.
    outline.curves[3] = arc(3, 0, mm(14.0, 5.0), "inner");
    check_says(&outline, &[]);
    // Radius 5, so that it touches r = 19 in its middle.
    outline.points[1] = mm(19.0, 0.0);
    outline.points[2] = mm(19.0, 10.0);
    check_says(
        &outline,
        &["curve 2 (face) and curve 4 (inner) touch at (19, 5) mm, where neither ends"],
    );
}

#[test]
fn a_screen_lip_that_leaves_the_interface_tangentially_is_legal() {
    // A screen of thickness 1 with its edge rounded by R on the insulation, at every radius and place.
    for radius in [0.05, 0.25, 1.0, 3.0] {
        for z in [0.0, 7.3, -1_234.567_891_234] {
            let outline = Outline {
                points: vec![
                    mm(6.65, z - 80.0),
                    mm(6.65, z + 40.0),
                    mm(11.1, z + 40.0),
                    mm(11.1, z + radius),
                    mm(11.1, z - 80.0),
                    mm(11.1 + radius, z),
                    mm(30.0, z),
                    mm(30.0, z - 80.0),
                ],
                curves: vec![
                    line(0, 1, "cond"),
                    line(1, 2, "interior"),
                    line(2, 3, "screen"),
                    line(3, 4, "iface"),
                    line(4, 0, "interior"),
                    arc(3, 5, mm(11.1 + radius, z + radius), "lip"),
                    line(5, 6, "face"),
                    line(6, 7, "outer"),
                    line(7, 4, "interior"),
                ],
                regions: vec![
                    region("ins", &[1, 2, 3, 4, 5]),
                    region("body", &[-4, 6, 7, 8, 9]),
                ],
            };
            check_says(&outline, &[]);
        }
    }
}

/// A body round two electrodes whose rounded ends touch at a point that the loop visits twice.
fn pinched() -> Outline {
    let (left, right) = (mm(15.0, 5.0), mm(25.0, 5.0));
    Outline {
        points: vec![
            mm(10.0, 0.0),
            mm(15.0, 0.0),
            mm(20.0, 5.0),
            mm(25.0, 0.0),
            mm(30.0, 0.0),
            mm(30.0, 20.0),
            mm(10.0, 20.0),
            mm(25.0, 10.0),
            mm(15.0, 10.0),
        ],
        curves: vec![
            line(1, 3, "gap"),
            arc(1, 2, left, "one"),
            arc(2, 3, right, "other"),
            line(8, 6, "interior"),
            line(6, 5, "outer"),
            line(5, 7, "interior"),
            arc(7, 2, right, "other"),
            arc(2, 8, left, "one"),
        ],
        regions: vec![
            region("below", &[2, 3, -1]),
            region("above", &[4, 5, 6, 7, 8]),
        ],
    }
}

#[test]
fn regions_that_touch_in_a_point_are_legal() {
    check_says(&pinched(), &[]);
}

#[test]
fn a_loop_pinched_at_a_point_is_legal_and_one_that_passes_through_itself_is_not() {
    // Both sides of the touching electrodes as one region.
    let mut outline = pinched();
    outline.regions = vec![region("both", &[4, 5, 6, 7, -2, 1, -3, 8])];
    check_says(
        &outline,
        &["the boundary of region \"both\" passes through itself at (20, 5) mm"],
    );
    outline.regions = vec![region("both", &[4, 5, 6, 7, 3, -1, 2, 8])];
    check_says(&outline, &[]);
    // A loop that goes round the same area twice.
    let mut eight = polygon(&[
        (10.0, 0.0),
        (20.0, 0.0),
        (20.0, 10.0),
        (13.0, 2.0),
        (18.0, 3.0),
    ]);
    eight.curves = vec![
        line(0, 1, "a"),
        line(1, 2, "b"),
        line(2, 0, "c"),
        line(0, 4, "d"),
        line(4, 3, "e"),
        line(3, 0, "f"),
    ];
    eight.regions = vec![region("twice", &[1, 2, 3, 4, 5, 6])];
    check_says(
        &eight,
        &["the boundary of region \"twice\" passes through itself at (10, 0) mm"],
    );
    eight.regions = vec![region("once", &[1, 2, 3, -6, -5, -4])];
    check_says(&eight, &[]);
}

#[test]
fn many_curves_on_one_place_are_told_of_without_end() {
    // Sixty diameters of a circle cross each other 1770 times.
    let mut outline = Outline::default();
    for at in 0..60 {
        let (sine, cosine) = (f64::from(at) * 0.05).sin_cos();
        outline
            .points
            .push(Point::new(1.0 + 0.5 * cosine, 0.5 * sine));
        outline
            .points
            .push(Point::new(1.0 - 0.4 * cosine, -0.4 * sine));
        let first = outline.points.len() - 2;
        outline.curves.push(line(first, first + 1, "spoke"));
    }
    let flaws = check(&outline);
    assert!(flaws.iter().any(|f| matches!(f, Flaw::TooMany { .. })));
    assert!(flaws.len() < 1300, "{}", flaws.len());
}
