//! Tridiagonal: eigenvalues and eigenvectors of a symmetric matrix of some tens of rows, by Householder's reduction and QL steps.
//!
//! **Source.** golub_van_loan, chapter 8, and the procedures tred2 and tql2 of Wilkinson and Reinsch 1971, from memory; the tests multiply back.

use crate::heat::HeatError;

/// Most QL steps for one eigenvalue.
const N_STEPS_MOST: usize = 60;

/// Eigenvalues and eigenvectors, the vectors as rows: A uₖ = λₖ uₖ; `a` has its rows one after another.
///
/// # Errors
/// [`HeatError::Runaway`] if the matrix is not finite.
pub(super) fn eigen(a: &[f64], n: usize) -> Result<(Vec<f64>, Vec<f64>), HeatError> {
    if !a.iter().all(|value| value.is_finite()) {
        return Err(HeatError::Runaway);
    }
    let mut u = a.to_vec();
    let (mut values, mut beside) = reduced(&mut u, n);
    settled(&mut values, &mut beside, &mut u, n)?;
    Ok((values, u))
}

/// Reduces a matrix to its diagonal and the entries beside it; it becomes the transposed product of the reflections.
fn reduced(a: &mut [f64], n: usize) -> (Vec<f64>, Vec<f64>) {
    let (mut diagonal, mut beside) = (vec![0.0; n], vec![0.0; n]);
    // The reflection of each column k acts on the rows below it: P = 1 − v vᵀ / h.
    let mut reflections: Vec<(Vec<f64>, f64)> = Vec::with_capacity(n);
    for k in 0..n.saturating_sub(2) {
        let mut v: Vec<f64> = (k + 1..n).map(|i| a[i * n + k]).collect();
        let norm = v.iter().map(|x| x * x).sum::<f64>().sqrt();
        let alpha = if v[0] > 0.0 { -norm } else { norm };
        beside[k] = alpha;
        v[0] -= alpha;
        let h = 0.5 * v.iter().map(|x| x * x).sum::<f64>();
        if h > 0.0 {
            reflect_both(a, n, k + 1, &v, h);
        }
        reflections.push((v, h));
    }
    for k in 0..n {
        diagonal[k] = a[k * n + k];
    }
    if n > 1 {
        beside[n - 2] = a[(n - 1) * n + n - 2];
    }
    a.fill(0.0);
    for k in 0..n {
        a[k * n + k] = 1.0;
    }
    // Rows of the transposed product: each is a vector, reflected from the last reflection to the first.
    for (k, (v, h)) in reflections.iter().enumerate().rev() {
        if *h > 0.0 {
            for row in a.chunks_mut(n).skip(k + 1) {
                let tail = &mut row[k + 1..];
                let share = tail.iter().zip(v).map(|(x, v)| x * v).sum::<f64>() / h;
                tail.iter_mut().zip(v).for_each(|(x, v)| *x -= share * v);
            }
        }
    }
    (diagonal, beside)
}

/// P A P for the rows and columns from `first` on, with P = 1 − v vᵀ / h.
fn reflect_both(a: &mut [f64], n: usize, first: usize, v: &[f64], h: f64) {
    let rows = a.chunks(n).skip(first);
    let mut p: Vec<f64> = rows
        .map(|row| row[first..].iter().zip(v).map(|(x, v)| x * v).sum::<f64>() / h)
        .collect();
    let half = 0.5 * p.iter().zip(v).map(|(p, v)| p * v).sum::<f64>() / h;
    p.iter_mut().zip(v).for_each(|(p, v)| *p -= half * v);
    for (i, row) in a.chunks_mut(n).skip(first).enumerate() {
        let (vi, pi) = (v[i], p[i]);
        for (x, (v, p)) in row[first..].iter_mut().zip(v.iter().zip(&p)) {
            *x -= vi * p + pi * v;
        }
    }
}

/// Turns a tridiagonal matrix into its eigenvalues; the rows of `u` are turned with it.
fn settled(d: &mut [f64], e: &mut [f64], u: &mut [f64], n: usize) -> Result<(), HeatError> {
    for low in 0..n {
        for step in 0.. {
            let is_small = |k: &usize| {
                let around = d[*k].abs() + d[*k + 1].abs();
                e[*k].abs() <= f64::EPSILON * around
            };
            let end = (low..n - 1).find(is_small).unwrap_or(n - 1);
            if end == low {
                break;
            }
            if step == N_STEPS_MOST {
                return Err(HeatError::Runaway);
            }
            // Wilkinson's shift.
            let g = (d[low + 1] - d[low]) / (2.0 * e[low]);
            let r = g.hypot(1.0).copysign(g);
            let mut g = d[end] - d[low] + e[low] / (g + r);
            let (mut s, mut c, mut p) = (1.0, 1.0, 0.0);
            let mut is_split = false;
            for i in (low..end).rev() {
                let (f, b) = (s * e[i], c * e[i]);
                let r = f.hypot(g);
                e[i + 1] = r;
                if r == 0.0 {
                    d[i + 1] -= p;
                    e[end] = 0.0;
                    is_split = true;
                    break;
                }
                (s, c) = (f / r, g / r);
                g = d[i + 1] - p;
                let r = (d[i] - g) * s + 2.0 * c * b;
                p = s * r;
                d[i + 1] = g + p;
                g = c * r - b;
                let (above, below) = u.split_at_mut((i + 1) * n);
                for (x, y) in above[i * n..].iter_mut().zip(&mut below[..n]) {
                    let (one, other) = (*x, *y);
                    *y = s * one + c * other;
                    *x = c * one - s * other;
                }
            }
            if !is_split {
                d[low] -= p;
                e[low] = g;
                e[end] = 0.0;
            }
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_matrix_times_its_vectors_is_its_values_times_them() {
        for n in [1, 2, 3, 17, 40] {
            let entry = |i: usize, j: usize| {
                let own = if i == j { (i * i) as f64 } else { 0.0 };
                own + 1.0 / (1.0 + (i + j) as f64) + ((i * j) as f64).sin()
            };
            let a: Vec<f64> = (0..n * n).map(|k| entry(k / n, k % n)).collect();
            let (values, vectors) = eigen(&a, n).unwrap();
            for (value, vector) in values.iter().zip(vectors.chunks(n)) {
                let length: f64 = vector.iter().map(|x| x * x).sum();
                assert!((length - 1.0).abs() < 1e-12);
                for (row, own) in a.chunks(n).zip(vector) {
                    let product: f64 = row.iter().zip(vector).map(|(a, x)| a * x).sum();
                    assert!((product - value * own).abs() < 1e-10 * (n * n) as f64);
                }
            }
        }
    }

    #[test]
    fn a_matrix_that_is_no_number_is_an_error() {
        assert!(eigen(&[f64::NAN], 1).is_err());
    }
}
