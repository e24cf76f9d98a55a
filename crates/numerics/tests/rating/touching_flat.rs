//! Three cables in one plane that touch, compared with soil as a continuum about their metal and jackets.
//!
//! Oracle: boundary elements written here, which share nothing with the sum of lines.
//! Each metal has one temperature, heat crosses its jacket straight outward, and the soil under an isothermal surface takes it from there.

use super::{apart, close};
use jointwright_numerics::rating::soil::group_k_m_per_w;
use jointwright_numerics::rating::thermal::layer_k_m_per_w;
use std::f64::consts::{PI, TAU};

/// Number of elements of each circle.
const N: usize = 80;

/// Three circles of radius 1 m, axes as deep as `u`, under jackets.
struct Three {
    u: f64,
    soil_k_m_per_w: f64,
    jacket_k_m_per_w: f64,
    /// Ratio of the outside to the inside of the jacket.
    jacket_ratio: f64,
}

/// Solves a x = b by elimination with pivots.
fn eliminated(mut a: Vec<Vec<f64>>, mut b: Vec<f64>) -> Vec<f64> {
    let n = b.len();
    for column in 0..n {
        let pivot = (column..n)
            .max_by(|one, other| a[*one][column].abs().total_cmp(&a[*other][column].abs()))
            .expect("a row");
        a.swap(column, pivot);
        b.swap(column, pivot);
        let (above, below) = a.split_at_mut(column + 1);
        let pivot = &above[column];
        for (row, right) in below.iter_mut().zip(column + 1..n) {
            let share = row[column] / pivot[column];
            for (value, over) in row.iter_mut().zip(pivot).skip(column) {
                *value -= share * over;
            }
            b[right] -= share * b[column];
        }
    }
    let mut x = vec![0.0; n];
    for row in (0..n).rev() {
        let known: f64 = (row + 1..n).map(|column| a[row][column] * x[column]).sum();
        x[row] = (b[row] - known) / a[row][row];
    }
    x
}

impl Three {
    /// Temperatures of the left, middle and right metal over the surface, with 1 W/m lost in each; or all three at one temperature, with 3 W/m together.
    fn metal_k(&self, is_one_temperature: bool) -> [f64; 3] {
        let ds = TAU / N as f64;
        let places: Vec<(f64, f64, usize)> = (0..3 * N)
            .map(|index| {
                let (cable, angle) = (index / N, (index % N) as f64 + 0.5);
                let (sin, cos) = (angle * ds).sin_cos();
                (2.0 * cable as f64 - 2.0 + cos, sin - self.u, cable)
            })
            .collect();
        let jacket = self.jacket_k_m_per_w * self.jacket_ratio.ln();
        let mut a: Vec<Vec<f64>> = Vec::new();
        for (here, &(x, y, cable)) in places.iter().enumerate() {
            let mut row: Vec<f64> = Vec::new();
            for (there, &(across, down, _)) in places.iter().enumerate() {
                let image = (x - across).hypot(y + down).ln();
                // For the effect of an element on itself: the mean over its length.
                let own = if here == there {
                    (0.5 * ds).ln() - 1.0
                } else {
                    (x - across).hypot(y - down).ln()
                };
                row.push(self.soil_k_m_per_w / TAU * ds * (image - own));
            }
            row[here] += jacket;
            row.extend((0..3).map(|metal| if metal == cable { -1.0 } else { 0.0 }));
            a.push(row);
        }
        let mut b = vec![0.0; 3 * N];
        for metal in 0..3 {
            let mut row = vec![0.0; 3 * N + 3];
            let mut lost = 1.0;
            if is_one_temperature && metal > 0 {
                (row[3 * N], row[3 * N + metal], lost) = (-1.0, 1.0, 0.0);
            } else {
                for (value, place) in row.iter_mut().zip(&places) {
                    *value = if is_one_temperature || place.2 == metal {
                        ds
                    } else {
                        0.0
                    };
                }
                lost = if is_one_temperature { 3.0 } else { lost };
            }
            a.push(row);
            b.push(lost);
        }
        let x = eliminated(a, b);
        [x[3 * N], x[3 * N + 1], x[3 * N + 2]]
    }

    fn jacket_k(&self) -> f64 {
        layer_k_m_per_w(self.jacket_k_m_per_w, 1.0, self.jacket_ratio)
    }

    /// The middle of three lines a diameter apart, and the jacket all round.
    fn by_lines_k(&self) -> f64 {
        let axes = [-2.0, 0.0, 2.0].map(|across| [across, self.u]);
        let each = group_k_m_per_w(self.soil_k_m_per_w, &axes, 2.0).expect("they lie so");
        each[1] + self.jacket_k()
    }

    /// 0.475 ln 2u − 0.346, the standard's form for metal around each, from memory.
    fn by_standard_k(&self) -> f64 {
        self.soil_k_m_per_w * (0.475 * (2.0 * self.u).ln() - 0.346) + self.jacket_k()
    }
}

#[test]
fn lines_a_diameter_apart_are_warmer_than_touching_cables_by_a_fifth_at_the_most() {
    for u in [5.0, 30.0] {
        for soil_k_m_per_w in [0.5, 1.0, 2.5] {
            for (jacket_k_m_per_w, jacket_ratio) in
                [(0.0, 1.05), (3.5, 1.05), (3.5, 1.1), (6.0, 1.2), (6.0, 2.5)]
            {
                let three = Three {
                    u,
                    soil_k_m_per_w,
                    jacket_k_m_per_w,
                    jacket_ratio,
                };
                let hottest = three.metal_k(false).into_iter().fold(0.0, f64::max);
                let ours = three.by_lines_k();
                assert!(
                    ours > hottest && ours < 1.2 * hottest,
                    "{u} {soil_k_m_per_w} {jacket_k_m_per_w}: {ours} {hottest}"
                );
                // The standard's form for metal could not replace it: under a jacket the middle is warmer than the form says.
                let is_low = three.by_standard_k() < hottest;
                assert!(
                    is_low || jacket_k_m_per_w == 0.0,
                    "{u} {soil_k_m_per_w} {jacket_k_m_per_w}"
                );
            }
        }
    }
}

/// Without a layer over the metal, touching cables have one temperature, as in the remembered form; and the elements agree with the closed form of one circle.
#[test]
fn bare_metal_that_touches_is_the_form_remembered_of_the_standard() {
    for u in [5.0, 30.0] {
        let bare = Three {
            u,
            soil_k_m_per_w: 1.0,
            jacket_k_m_per_w: 0.0,
            jacket_ratio: 1.0,
        };
        let one = bare.metal_k(true)[1];
        close(bare.by_standard_k(), one, 6e-3);
        apart(1.5 / PI * ((2.0 * u).ln() - 0.630), one, 6e-3);
    }
}
