//! Jacobi: eigenvalues and eigenvectors of a small symmetric matrix, by rotations.
//!
//! **Source.** golub_van_loan, section 8.5, from memory; the tests multiply back.

/// Number of sweeps after which the off-diagonal entries are far below rounding.
const N_SWEEPS_MOST: usize = 30;

/// Eigenvalues and eigenvectors, the vectors as columns: A U = U Λ.
pub(super) fn eigen(mut a: Vec<Vec<f64>>) -> (Vec<f64>, Vec<Vec<f64>>) {
    let n = a.len();
    let mut u: Vec<Vec<f64>> = (0..n)
        .map(|i| (0..n).map(|j| f64::from(u8::from(i == j))).collect())
        .collect();
    for _ in 0..N_SWEEPS_MOST {
        let mut beside = 0.0;
        for p in 0..n {
            for q in p + 1..n {
                beside += a[p][q] * a[p][q];
                if a[p][q] != 0.0 {
                    rotate(&mut a, &mut u, p, q);
                }
            }
        }
        let whole: f64 = (0..n).map(|i| a[i][i] * a[i][i]).sum();
        if beside <= f64::EPSILON * f64::EPSILON * whole {
            break;
        }
    }
    ((0..n).map(|i| a[i][i]).collect(), u)
}

/// Rotates the plane of p and q so that the entry between them vanishes.
fn rotate(a: &mut [Vec<f64>], u: &mut [Vec<f64>], p: usize, q: usize) {
    let theta = (a[q][q] - a[p][p]) / (2.0 * a[p][q]);
    let t = theta.signum() / (theta.abs() + theta.hypot(1.0));
    let t = if theta == 0.0 { 1.0 } else { t };
    let c = 1.0 / t.hypot(1.0);
    let s = t * c;
    for row in a.iter_mut() {
        let (x, y) = (row[p], row[q]);
        row[p] = c * x - s * y;
        row[q] = s * x + c * y;
    }
    let (above, below) = a.split_at_mut(q);
    for (x, y) in above[p].iter_mut().zip(below[0].iter_mut()) {
        let (one, other) = (*x, *y);
        *x = c * one - s * other;
        *y = s * one + c * other;
    }
    for row in u.iter_mut() {
        let (x, y) = (row[p], row[q]);
        row[p] = c * x - s * y;
        row[q] = s * x + c * y;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_matrix_times_its_vectors_is_its_values_times_them() {
        let a: Vec<Vec<f64>> = (0..6)
            .map(|i| {
                (0..6)
                    .map(|j| 1.0 / (1.0 + (i + j) as f64) + if i == j { i as f64 } else { 0.0 })
                    .collect()
            })
            .collect();
        let (values, vectors) = eigen(a.clone());
        for k in 0..6 {
            for i in 0..6 {
                let product: f64 = (0..6).map(|j| a[i][j] * vectors[j][k]).sum();
                assert!((product - values[k] * vectors[i][k]).abs() < 1e-13);
            }
        }
    }
}
