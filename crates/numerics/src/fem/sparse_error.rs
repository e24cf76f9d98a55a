//! Errors of sparse systems: the reasons why one cannot be solved.

/// Reason why a system cannot be solved.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum SparseError {
    /// The matrix is not positive definite.
    #[error(
        "the matrix is not positive definite at unknown {unknown}; a part without a fixed value, or a coefficient that is not positive, does that"
    )]
    NotPositive {
        /// An unknown near which it is not positive definite.
        unknown: usize,
    },
    /// The matrix is singular.
    #[error("the matrix is singular; a part without a fixed value does that")]
    Singular,
    /// A value that is not finite.
    #[error("value {index} of the {what} is not a finite number")]
    NotFinite {
        /// List that contains it.
        what: Values,
        /// Its index in that list.
        index: usize,
    },
    /// A structure that breaks the rules of [`Structure`](crate::fem::sparse::Structure).
    #[error(
        "column {column} of the structure is not sorted, leaves the matrix or lacks its diagonal"
    )]
    Structure {
        /// The first column that breaks them.
        column: usize,
    },
    /// More entries than the index type can number.
    #[error("the factors have more entries than can be numbered")]
    TooLarge,
    /// Out of memory.
    #[error("the memory does not suffice for the factors")]
    Memory,
}

/// Lists of values.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Values {
    /// Entries of the matrix.
    Matrix,
    /// The right-hand side.
    RightHandSide,
    /// The solution.
    Solution,
}

impl std::fmt::Display for Values {
    fn fmt(&self, formatter: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        formatter.write_str(match self {
            Self::Matrix => "matrix",
            Self::RightHandSide => "right-hand side",
            Self::Solution => "solution",
        })
    }
}
