//! Basis: independent columns among some tens, their combinations, and systems of as many equations.
//!
//! **Source.** golub_van_loan, sections 4.2 and 10.9, from memory; the tests multiply back.

/// Least share of a column that must be new; below it, the column adds nothing.
const NEW_RATIO: f64 = 3e-6;

/// Combinations of some columns that are orthonormal with the heat capacities as weights, as many as are independent.
///
/// Columns that are nearly alike leave rounding errors in the first combinations; these are made orthonormal once more.
pub(super) fn orthonormal(columns: &[Vec<f64>], capacity: &[f64]) -> Vec<Vec<f64>> {
    let (kept, turns) = independent(columns, capacity);
    let kept: Vec<Vec<f64>> = kept.into_iter().map(|i| columns[i].clone()).collect();
    let states: Vec<Vec<f64>> = turns.iter().map(|turn| combined(&kept, turn)).collect();
    let weighted = |state: &Vec<f64>| -> Vec<f64> {
        let pairs = state.iter().zip(capacity);
        pairs.map(|(x, c)| x * c).collect()
    };
    let weighted: Vec<Vec<f64>> = states.iter().map(weighted).collect();
    let mut rows: Vec<Vec<f64>> = Vec::with_capacity(states.len());
    for (i, state) in states.iter().enumerate() {
        let mut row: Vec<f64> = Vec::with_capacity(i + 1);
        for before in 0..i {
            let share = product(state, &weighted[before]);
            row.push((share - product(&row, &rows[before][..before])) / rows[before][before]);
        }
        let left = product(state, &weighted[i]) - product(&row, &row);
        row.push(left.sqrt());
        rows.push(row);
    }
    let turns = inverse(&rows.iter().map(|row| &row[..]).collect::<Vec<_>>());
    let turns = turns.iter().enumerate();
    turns
        .map(|(i, turn)| combined(&states[..=i], &turn[..=i]))
        .collect()
}

/// Independent ones among some columns, by their indices, and combinations of them that are nearly orthonormal with the heat capacities as weights, each by its shares.
fn independent(columns: &[Vec<f64>], capacity: &[f64]) -> (Vec<usize>, Vec<Vec<f64>>) {
    let roots: Vec<f64> = capacity.iter().map(|c| c.sqrt()).collect();
    let weighted = columns.iter().map(|column| {
        let pairs = column.iter().zip(&roots);
        let mut weighted: Vec<f64> = pairs.map(|(x, root)| x * root).collect();
        let norm = product(&weighted, &weighted).sqrt();
        weighted.iter_mut().for_each(|x| *x /= norm);
        (weighted, norm)
    });
    let (weighted, norms): (Vec<Vec<f64>>, Vec<f64>) = weighted.unzip();
    let n = columns.len();
    let gram: Vec<Vec<f64>> = (0..n)
        .map(|i| {
            (0..=i)
                .map(|j| product(&weighted[i], &weighted[j]))
                .collect()
        })
        .collect();
    let at = |i: usize, j: usize| if i >= j { gram[i][j] } else { gram[j][i] };
    // Cholesky's factor with pivots, row by row: those of the columns that are kept, in the order in which they are.
    let mut left: Vec<f64> = (0..n)
        .map(|i| if norms[i] > 0.0 { at(i, i) } else { 0.0 })
        .collect();
    let mut kept: Vec<usize> = Vec::new();
    let mut shares: Vec<Vec<f64>> = vec![Vec::new(); n];
    loop {
        let next = (0..n).max_by(|i, j| left[*i].total_cmp(&left[*j]));
        let Some(pivot) = next.filter(|i| left[*i] > NEW_RATIO * NEW_RATIO) else {
            break;
        };
        let root = left[pivot].sqrt();
        let own = shares[pivot].clone();
        for i in 0..n {
            if left[i] <= 0.0 && i != pivot {
                continue;
            }
            let share = if i == pivot {
                root
            } else {
                (at(i, pivot) - product(&shares[i], &own)) / root
            };
            shares[i].push(share);
            left[i] -= share * share;
        }
        left[pivot] = 0.0;
        kept.push(pivot);
    }
    let mut turns = inverse(&kept.iter().map(|i| &shares[*i][..]).collect::<Vec<_>>());
    for turn in &mut turns {
        turn.iter_mut()
            .zip(&kept)
            .for_each(|(x, i)| *x /= norms[*i]);
    }
    (kept, turns)
}

/// Rows of the inverse of a lower triangle, given by its rows.
fn inverse(rows: &[&[f64]]) -> Vec<Vec<f64>> {
    let n = rows.len();
    let mut turns: Vec<Vec<f64>> = Vec::with_capacity(n);
    for (k, row) in rows.iter().enumerate() {
        let mut turn = vec![0.0; n];
        turn[k] = 1.0;
        for (share, before) in row.iter().zip(&turns) {
            turn.iter_mut()
                .zip(before)
                .for_each(|(x, b)| *x -= share * b);
        }
        turn.iter_mut().for_each(|x| *x /= row[k]);
        turns.push(turn);
    }
    turns
}
/// Sum of products.
pub(super) fn product(one: &[f64], other: &[f64]) -> f64 {
    // Eight sums at a time, which the processor adds side by side.
    let (head, tail) = (one.chunks_exact(8), other.chunks_exact(8));
    let rest = head.remainder().iter().zip(tail.remainder());
    let rest: f64 = rest.map(|(a, b)| a * b).sum();
    let mut sums = [0.0; 8];
    for (a, b) in head.zip(tail) {
        for k in 0..8 {
            sums[k] += a[k] * b[k];
        }
    }
    rest + sums.iter().sum::<f64>()
}

/// Sum of rows, each with its share.
pub(super) fn combined(rows: &[Vec<f64>], shares: &[f64]) -> Vec<f64> {
    let mut sum = vec![0.0; rows.first().map_or(0, Vec::len)];
    for (row, share) in rows.iter().zip(shares) {
        sum.iter_mut()
            .zip(row)
            .for_each(|(sum, x)| *sum += share * x);
    }
    sum
}

/// Adds a share of x xᵀ to a matrix, by rows.
pub(super) fn add_outer(matrix: &mut [f64], share: f64, x: &[f64]) {
    if share == 0.0 {
        return;
    }
    for (row, own) in matrix.chunks_mut(x.len()).zip(x) {
        let own = share * own;
        row.iter_mut()
            .zip(x)
            .for_each(|(entry, x)| *entry += own * x);
    }
}

/// Solves a symmetric system, its matrix by rows, by elimination; `None` unless every pivot is positive.
pub(super) fn solved(mut a: Vec<f64>, mut right: Vec<f64>) -> Option<Vec<f64>> {
    let n = right.len();
    for k in 0..n {
        let (above, below) = a.split_at_mut((k + 1) * n);
        let own = &above[k * n..];
        let pivot = own[k];
        if pivot <= 0.0 || !pivot.is_finite() {
            return None;
        }
        for (i, row) in below.chunks_mut(n).enumerate() {
            // By symmetry the column below the pivot is the row beside it.
            let share = own[k + 1 + i] / pivot;
            let tail = k + 1 + i;
            row[tail..]
                .iter_mut()
                .zip(&own[tail..])
                .for_each(|(x, o)| *x -= share * o);
            right[tail] -= share * right[k];
        }
    }
    for k in (0..n).rev() {
        let row = &a[k * n..(k + 1) * n];
        let known: f64 = row[k + 1..]
            .iter()
            .zip(&right[k + 1..])
            .map(|(a, x)| a * x)
            .sum();
        right[k] = (right[k] - known) / row[k];
    }
    right.iter().all(|x| x.is_finite()).then_some(right)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn kept_columns_are_orthonormal_and_a_copy_is_left_out() {
        let capacity = [1.0, 2.0, 0.5, 3.0, 1.0];
        let column =
            |seed: f64| -> Vec<f64> { (0..5).map(|i| (seed * (i as f64 + 1.3)).sin()).collect() };
        let copy: Vec<f64> = column(1.0).iter().map(|x| -3.0 * x).collect();
        let given = vec![column(1.0), column(2.3), vec![0.0; 5], copy, column(4.1)];
        let states = orthonormal(&given, &capacity);
        assert_eq!(states.len(), 3);
        for (i, one) in states.iter().enumerate() {
            for (j, other) in states.iter().enumerate() {
                let weighted: Vec<f64> = one.iter().zip(&capacity).map(|(x, c)| x * c).collect();
                let wanted = f64::from(u8::from(i == j));
                assert!((product(&weighted, other) - wanted).abs() < 1e-12);
            }
        }
    }

    #[test]
    fn columns_that_are_nearly_alike_are_orthonormal_to_rounding() {
        let capacity = vec![1.0; 40];
        let column = |by: f64| -> Vec<f64> {
            let each = (0..40).map(f64::from);
            each.map(|i| (0.1 * i).cos() + by * (1.7 * i * i).sin())
                .collect()
        };
        let given = [column(0.0), column(1e-5), column(0.3), column(0.300_01)];
        let states = orthonormal(&given, &capacity);
        assert_eq!(states.len(), 2);
        let alike = [column(0.0), column(1e-5)];
        let states = [orthonormal(&alike, &capacity), states].concat();
        for pair in states.chunks(2) {
            assert!(product(&pair[0], &pair[1]).abs() < 1e-14);
            assert!((product(&pair[1], &pair[1]) - 1.0).abs() < 1e-14);
        }
    }

    #[test]
    fn a_solution_solves_and_a_pivot_that_is_not_positive_does_not() {
        let a = vec![4.0, 1.0, -0.5, 1.0, 3.0, 0.2, -0.5, 0.2, 2.0];
        let x = solved(a.clone(), vec![1.0, 2.0, 3.0]).unwrap();
        for (row, wanted) in a.chunks(3).zip([1.0, 2.0, 3.0]) {
            assert!((product(row, &x) - wanted).abs() < 1e-14);
        }
        assert_eq!(solved(vec![1.0, 2.0, 2.0, 1.0], vec![1.0, 1.0]), None);
    }
}
