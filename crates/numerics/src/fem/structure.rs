//! Sparsity pattern of a matrix, and residuals of a solution.
//!
//! ```text
//! starts  0       2    3        column 0 holds the rows 0 and 1, column 1 the row 1:
//! rows    0   1   1             the lower triangle of a symmetric 2 × 2 matrix
//! ```
//!
//! **What.** [`Structure`]; [`residual`] and [`complex_residual`].
//!
//! **Why separate.** Assembly and factorisation share it, and a residual must not be computed by the code that it judges.
//!
//! **Invariants.** The rows of a column are sorted and distinct; the diagonal is always present.
//!
//! **Not here.** Factorisations (`sparse`).
//!
//! **Source.** Textbook compressed columns.

use super::sparse_error::SparseError;

/// Sparsity pattern of a square matrix: the sorted rows of each column, always with the diagonal.
///
/// For a symmetric matrix, it is the pattern of the lower triangle alone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Structure {
    starts: Vec<u32>,
    rows: Vec<u32>,
    /// Whether the unknowns are already numbered in the order of elimination.
    is_ordered: bool,
}

impl Structure {
    /// Makes a structure from the start of each column and the rows of its entries.
    ///
    /// # Shapes
    /// `starts` [n + 1], from 0 to the number of entries; `rows` `[n_entries]`.
    ///
    /// # Errors
    /// [`SparseError::Structure`] if a column is not sorted, leaves the matrix or lacks its diagonal.
    ///
    /// ```
    /// use jointwright_numerics::fem::sparse::Structure;
    /// let lower = Structure::new(vec![0, 2, 3], vec![0, 1, 1]).unwrap();
    /// assert_eq!((lower.n(), lower.n_entries()), (2, 3));
    /// assert!(Structure::new(vec![0, 2, 3], vec![1, 0, 1]).is_err());
    /// ```
    pub fn new(starts: Vec<u32>, rows: Vec<u32>) -> Result<Self, SparseError> {
        if starts.first() != Some(&0) {
            return Err(SparseError::Structure { column: 0 });
        }
        let n = starts.len() - 1;
        for (column, ends) in starts.windows(2).enumerate() {
            let own = rows.get(ends[0] as usize..ends[1] as usize).unwrap_or(&[]);
            let is_sorted = own.is_sorted_by(|one, next| one < next);
            let is_inside = own.last().is_some_and(|&last| (last as usize) < n);
            if !(is_sorted && is_inside && own.binary_search(&(column as u32)).is_ok()) {
                return Err(SparseError::Structure { column });
            }
        }
        if starts[n] as usize != rows.len() {
            return Err(SparseError::Structure { column: n });
        }
        Ok(Self::of_sorted(starts, rows, false))
    }

    /// A structure whose rows are already sorted.
    pub(super) fn of_sorted(starts: Vec<u32>, rows: Vec<u32>, is_ordered: bool) -> Self {
        Self {
            starts,
            rows,
            is_ordered,
        }
    }

    /// Start of each column among the entries, [n + 1].
    pub(super) fn starts(&self) -> &[u32] {
        &self.starts
    }

    /// Rows of the entries, `[n_entries]`.
    pub(super) fn rows(&self) -> &[u32] {
        &self.rows
    }

    /// Whether the unknowns are already numbered in the order of elimination.
    pub(super) fn is_ordered(&self) -> bool {
        self.is_ordered
    }

    /// Refuses a structure that has entries above the diagonal.
    pub(super) fn check_lower(&self) -> Result<(), SparseError> {
        let is_first = |&column: &usize| self.rows[self.starts[column] as usize] == column as u32;
        match (0..self.n()).find(|column| !is_first(column)) {
            Some(column) => Err(SparseError::Structure { column }),
            None => Ok(()),
        }
    }

    /// The same structure, with its unknowns marked as ordered.
    #[cfg(test)]
    pub(super) fn into_ordered(self) -> Self {
        Self {
            is_ordered: true,
            ..self
        }
    }

    /// Number of rows and of columns.
    ///
    /// ```
    /// use jointwright_numerics::fem::sparse::Structure;
    /// assert_eq!(Structure::new(vec![0, 2, 3], vec![0, 1, 1]).unwrap().n(), 2);
    /// ```
    #[inline]
    pub fn n(&self) -> usize {
        self.starts.len() - 1
    }

    /// Number of stored entries.
    ///
    /// ```
    /// use jointwright_numerics::fem::sparse::Structure;
    /// assert_eq!(Structure::new(vec![0, 2, 3], vec![0, 1, 1]).unwrap().n_entries(), 3);
    /// ```
    #[inline]
    pub fn n_entries(&self) -> usize {
        self.rows.len()
    }

    /// Rows of a column, and the indices of their entries among the values.
    #[inline]
    fn column(&self, column: usize) -> impl Iterator<Item = (usize, usize)> {
        let range = self.starts[column] as usize..self.starts[column + 1] as usize;
        range
            .clone()
            .zip(&self.rows[range])
            .map(|(entry, &row)| (entry, row as usize))
    }

    /// Index of a diagonal entry among the values.
    #[cfg(test)]
    pub(super) fn diagonal_entry(&self, unknown: usize) -> usize {
        let is_own = |&(_, row): &(usize, usize)| row == unknown;
        self.column(unknown).find(is_own).unwrap().0
    }

    /// Structure and order of the system with twice the unknowns, (x_0, y_0, x_1, y_1, …), lower triangle.
    pub(super) fn doubled_lower(&self) -> Self {
        let mut starts = Vec::with_capacity(2 * self.n() + 1);
        let mut rows = Vec::with_capacity(4 * self.n_entries());
        starts.push(0);
        for column in 0..self.n() {
            for part in 0..2 {
                let own = self.column(column);
                rows.extend(
                    own.flat_map(|(_, row)| [2 * row as u32, 2 * row as u32 + 1])
                        .skip(part),
                );
                starts.push(rows.len() as u32);
            }
        }
        Self {
            starts,
            rows,
            is_ordered: self.is_ordered,
        }
    }

    /// The structure of the transposed matrix.
    pub(super) fn transposed(&self) -> Self {
        let mut starts = vec![0; self.starts.len()];
        for &row in &self.rows {
            starts[row as usize + 1] += 1;
        }
        for column in 0..self.n() {
            starts[column + 1] += starts[column];
        }
        let mut next = starts.clone();
        let mut rows = vec![0; self.n_entries()];
        for column in 0..self.n() {
            for (_, row) in self.column(column) {
                rows[next[row] as usize] = column as u32;
                next[row] += 1;
            }
        }
        Self {
            starts,
            rows,
            is_ordered: self.is_ordered,
        }
    }
}

/// Writes [[A, −B], [−B, −A]] with parts side by side, in the order of `doubled_lower`.
pub(super) fn interleave(lower: &Structure, [real, imaginary]: [&[f64]; 2], entries: &mut [f64]) {
    assert_eq!(real.len(), lower.n_entries());
    assert_eq!(imaginary.len(), lower.n_entries());
    let mut rest = entries;
    for ends in lower.starts.windows(2) {
        let own = ends[0] as usize..ends[1] as usize;
        let (first, tail) = rest.split_at_mut(2 * own.len());
        let (second, tail) = tail.split_at_mut(2 * own.len() - 1);
        rest = tail;
        let pairs = real[own.clone()].iter().zip(&imaginary[own]);
        for (entry, (&a, &b)) in pairs.enumerate() {
            first[2 * entry] = a;
            first[2 * entry + 1] = -b;
            // The column of the imaginary part begins at its own diagonal.
            if entry > 0 {
                second[2 * entry - 1] = -b;
            }
            second[2 * entry] = -a;
        }
    }
}

/// Relative residual of A x = b: ‖b − A x‖ / (‖A‖ ‖x‖ + ‖b‖), in maximum norms; about 1e-16 for a solution accurate to rounding.
///
/// `is_symmetric` states that the structure holds the lower triangle alone.
///
/// # Panics
/// If lengths differ.
///
/// ```
/// use jointwright_numerics::fem::sparse::{Structure, residual};
/// let lower = Structure::new(vec![0, 2, 3], vec![0, 1, 1]).unwrap();
/// assert!(residual(&lower, true, &[2.0, 1.0, 3.0], &[1.6, 1.8], &[5.0, 7.0]) < 1e-15);
/// assert!(residual(&lower, true, &[2.0, 1.0, 3.0], &[1.6, 1.9], &[5.0, 7.0]) > 1e-3);
/// ```
pub fn residual(
    structure: &Structure,
    is_symmetric: bool,
    values: &[f64],
    solution: &[f64],
    rhs: &[f64],
) -> f64 {
    assert_eq!(values.len(), structure.n_entries());
    assert_eq!(solution.len(), structure.n());
    assert_eq!(rhs.len(), structure.n());
    let mut rest = rhs.to_vec();
    let mut row_sums = vec![0.0; structure.n()];
    for column in 0..structure.n() {
        for (entry, row) in structure.column(column) {
            let value = values[entry];
            rest[row] -= value * solution[column];
            row_sums[row] += value.abs();
            if is_symmetric && row != column {
                rest[column] -= value * solution[row];
                row_sums[column] += value.abs();
            }
        }
    }
    let scale = greatest(&row_sums) * greatest(solution) + greatest(rhs);
    if scale == 0.0 {
        0.0
    } else {
        greatest(&rest) / scale
    }
}

/// Relative residual, as [`residual`], of (A + jB)(x + jy) = f + jg with A and B given by their lower triangles.
///
/// # Panics
/// If lengths differ.
///
/// ```
/// use jointwright_numerics::fem::sparse::{Structure, complex_residual};
/// let one = Structure::new(vec![0, 1], vec![0]).unwrap();
/// assert_eq!(complex_residual(&one, [&[1.0], &[1.0]], [&[0.5], &[-0.5]], [&[1.0], &[0.0]]), 0.0);
/// assert!(complex_residual(&one, [&[1.0], &[1.0]], [&[0.5], &[0.5]], [&[1.0], &[0.0]]) > 0.1);
/// ```
pub fn complex_residual(
    lower: &Structure,
    values: [&[f64]; 2],
    solution: [&[f64]; 2],
    rhs: [&[f64]; 2],
) -> f64 {
    let doubled = lower.doubled_lower();
    let mut entries = vec![0.0; doubled.n_entries()];
    interleave(lower, values, &mut entries);
    let pairs = |first: &[f64], second: &[f64], sign: f64| -> Vec<f64> {
        assert_eq!(first.len(), second.len());
        let both = first.iter().zip(second);
        both.flat_map(|(&one, &other)| [one, sign * other])
            .collect()
    };
    let both_solutions = pairs(solution[0], solution[1], 1.0);
    let both_rhs = pairs(rhs[0], rhs[1], -1.0);
    residual(&doubled, true, &entries, &both_solutions, &both_rhs)
}

/// Greatest absolute value; NaN if any value is NaN.
fn greatest(values: &[f64]) -> f64 {
    let greater = |most: f64, value: &f64| {
        if value.abs() <= most {
            most
        } else {
            value.abs()
        }
    };
    values.iter().fold(0.0, greater)
}
