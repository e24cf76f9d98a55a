//! Cables that warm one another, compared with lines and images summed here, and circuits beside each other.

use std::f64::consts::PI;

use jointwright_numerics::rating::RatingError;
use jointwright_numerics::rating::soil::{foreign_rise_k, group_k_m_per_w, line, mutual_k_m_per_w};
use jointwright_numerics::rating::thermal::{buried_k_m_per_w, flat_middle_k_m_per_w};
use proptest::prelude::*;

use super::{apart, close};

/// Two circuits of three, 0.2 m from axis to axis and 0.6 m from middle to middle.
const TWO_CIRCUITS: [[f64; 2]; 6] = [
    [-0.5, 1.0],
    [-0.3, 1.0],
    [-0.1, 1.0],
    [0.1, 1.0],
    [0.3, 1.0],
    [0.5, 1.0],
];

// Oracle: steady conduction below a surface of one temperature, by relaxation of a square of soil with two small sources: the rise of one point for the heat of another is that of line and image.
#[test]
fn the_rise_beside_a_line_is_that_of_soil_relaxed_on_a_grid() {
    // A box of 2 by 1 in steps of 1/40 with a fixed surface temperature; its other sides have the temperatures of the images, so that it represents a half space.
    let (wide, deep) = (80_usize, 40_usize);
    let size = 1.0 / deep as f64;
    let source = (40_usize, 12_usize);
    let at = |x: usize, y: usize| {
        let across = (x as f64 - source.0 as f64) * size;
        let down = y as f64 * size;
        let depth = source.1 as f64 * size;
        mutual_k_m_per_w(1.0, across.hypot(down + depth), across.hypot(down - depth))
    };
    let mut rises = vec![vec![0.0; deep + 1]; wide + 1];
    for (x, column) in rises.iter_mut().enumerate() {
        for (y, rise) in column.iter_mut().enumerate() {
            if x == 0 || x == wide || y == deep {
                *rise = at(x, y);
            }
        }
    }
    for _ in 0..4000 {
        for x in 1..wide {
            for y in 1..deep {
                let beside = rises[x - 1][y] + rises[x + 1][y] + rises[x][y - 1] + rises[x][y + 1];
                // A watt into one node: its four links have the conductance of the soil.
                let heat = if (x, y) == source { 1.0 } else { 0.0 };
                let next = (beside + heat) / 4.0;
                rises[x][y] += 1.9 * (next - rises[x][y]);
            }
        }
    }
    for (x, y) in [(46, 12), (50, 12), (40, 24), (30, 20), (60, 30), (45, 3)] {
        close(rises[x][y], at(x, y), 5e-3);
        // Twin: without the image.
        let across = (x as f64 - 40.0) * size;
        let down = (y as f64 - 12.0) * size;
        apart(-across.hypot(down).ln() / (2.0 * PI), at(x, y), 5e-3);
    }
}

// Oracle: the middle of three by its own formula; six by lines and images summed here.
#[test]
fn equal_circuits_beside_each_other() {
    let three = group_k_m_per_w(0.9, &TWO_CIRCUITS[..3], 0.04).expect("a group");
    let middle = flat_middle_k_m_per_w(0.9, 1.0, 0.04, 0.2).expect("covered");
    close(three[1], middle, 1e-13);
    close(three[0], three[2], 1e-13);
    assert!(three[0] < three[1]);
    let six = group_k_m_per_w(0.9, &TWO_CIRCUITS, 0.04).expect("a group");
    let alone = buried_k_m_per_w(0.9, 1.0, 0.04).expect("covered");
    let beside = |distance: f64| 0.9 / (2.0 * PI) * (distance.hypot(2.0) / distance).ln();
    let third = [0.4, 0.2, 0.2, 0.4, 0.6].map(beside).iter().sum::<f64>();
    close(six[2], alone + third, 1e-13);
    close(six[3], six[2], 1e-13);
    let greatest = six.iter().copied().fold(0.0, f64::max);
    close(greatest, six[2], 1e-13);
    // Twin: the second circuit forgotten.
    apart(three[2], six[2], 0.2);
    // A circuit with half the loss, as external heat.
    let others: Vec<([f64; 2], f64)> = TWO_CIRCUITS[3..].iter().map(|axis| (*axis, 0.5)).collect();
    let foreign = foreign_rise_k(0.9, TWO_CIRCUITS[2], &others).expect("a rise");
    close(foreign, (six[2] - three[2]) / 2.0, 1e-12);
    assert_eq!(foreign_rise_k(0.9, TWO_CIRCUITS[2], &[]), Ok(0.0));
}

proptest! {
    // Law: the effect of one cable on another is mutual; farther is cooler; every further cable warms all.
    #[test]
    fn laws_of_groups(
        across in prop::collection::vec(0.08..0.4_f64, 2..7),
        depths in prop::collection::vec(0.3..1.5_f64, 7),
        factor in 1.05..2.0_f64,
    ) {
        let mut at = 0.0;
        let axes: Vec<[f64; 2]> = across
            .iter()
            .zip(&depths)
            .map(|(step, depth)| {
                at += step;
                [at, *depth]
            })
            .collect();
        let there = line(axes[0], axes[1]).expect("a line");
        prop_assert_eq!(line(axes[1], axes[0]), Ok(there));
        prop_assert!(there.image_m > there.axis_m);
        let all = group_k_m_per_w(1.0, &axes, 0.05).expect("a group");
        let fewer = group_k_m_per_w(1.0, &axes[1..], 0.05).expect("a group");
        prop_assert!(all[1..].iter().zip(&fewer).all(|(more, less)| more > less));
        let wider: Vec<[f64; 2]> = axes.iter().map(|axis| [factor * axis[0], axis[1]]).collect();
        let wider = group_k_m_per_w(1.0, &wider, 0.05).expect("a group");
        prop_assert!(all.iter().zip(&wider).all(|(near, far)| near > far));
    }
}

#[test]
fn cables_that_cannot_lie_so_are_refused() {
    for (axes, is_uncovered) in [
        ([[0.0, 1.0], [0.0, 1.0]], false),
        ([[0.0, 1.0], [0.03, 1.0]], false),
        ([[0.0, 1.0], [f64::NAN, 1.0]], false),
        ([[0.0, 1.0], [0.5, -1.0]], true),
        ([[0.0, 0.01], [0.5, 1.0]], true),
        ([[0.0, 1.0], [0.5, f64::NAN]], true),
    ] {
        let found = group_k_m_per_w(1.0, &axes, 0.04);
        let is_refused = match found {
            Err(RatingError::NotBuried { .. }) => is_uncovered,
            Err(RatingError::NoNumber) => !is_uncovered,
            _ => false,
        };
        assert!(is_refused, "{axes:?}: {found:?}");
    }
    // Touching cables are accepted.
    assert!(group_k_m_per_w(1.0, &[[0.0, 1.0], [0.04, 1.0]], 0.04).is_ok());
    assert_eq!(group_k_m_per_w(1.0, &[], 0.04), Ok(vec![]));
    let nowhere = foreign_rise_k(1.0, [0.0, 1.0], &[([0.0, 1.0], 20.0)]);
    assert_eq!(nowhere, Err(RatingError::NoNumber));
}
