//! Outlines: each flaw is found and named, and its valid twin is not.

mod flaws;
mod random;
mod touching;

use jointwright_numerics::outline::{Curve, Flaw, Outline, Point, Region, Shape, Side, check};

/// A point of millimetres.
pub(crate) fn mm(r: f64, z: f64) -> Point {
    Point::new(r / 1e3, z / 1e3)
}

pub(crate) fn line(from: usize, to: usize, tag: &str) -> Curve {
    Curve {
        from,
        to,
        shape: Shape::Line,
        tag: tag.to_owned(),
    }
}

pub(crate) fn arc(from: usize, to: usize, center: Point, tag: &str) -> Curve {
    Curve {
        shape: Shape::Arc { center },
        ..line(from, to, tag)
    }
}

/// A region by curve numbers from 1, negative where reversed.
pub(crate) fn region(name: &str, numbers: &[i32]) -> Region {
    let side = |number: &i32| Side {
        curve_index: number.unsigned_abs() as usize - 1,
        is_reversed: *number < 0,
    };
    Region {
        name: name.to_owned(),
        boundary: numbers.iter().map(side).collect(),
    }
}

/// Two walls, 10 mm wide each, that share curve 2.
///
/// ```text
///   3 o---3---o 2---6---o 5
///     |  near |   far   |
///     4       2         5        r to the right
///     |       |         |
///   0 o---1---o 1---7---o 4
/// ```
pub(crate) fn walls() -> Outline {
    Outline {
        points: vec![
            mm(10.0, 0.0),
            mm(20.0, 0.0),
            mm(20.0, 10.0),
            mm(10.0, 10.0),
            mm(30.0, 0.0),
            mm(30.0, 10.0),
        ],
        curves: vec![
            line(0, 1, "interior"),
            line(1, 2, "face"),
            line(2, 3, "interior"),
            line(3, 0, "inner"),
            line(4, 5, "outer"),
            line(5, 2, "interior"),
            line(1, 4, "interior"),
        ],
        regions: vec![region("near", &[1, 2, 3, 4]), region("far", &[7, 5, 6, -2])],
    }
}

/// Compares the flaws of an outline with the words expected, one for each flaw, in order.
#[track_caller]
pub(crate) fn check_says(outline: &Outline, expected: &[&str]) -> Vec<Flaw> {
    let flaws = check(outline);
    let said: Vec<String> = flaws.iter().map(ToString::to_string).collect();
    let agree = said.len() == expected.len()
        && said
            .iter()
            .zip(expected)
            .all(|(said, words)| said.contains(words));
    assert!(agree, "said {said:#?}, expected {expected:#?}");
    flaws
}
