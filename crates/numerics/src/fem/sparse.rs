//! Sparse direct solution of linear systems.
//!
//! **What.** [`Cholesky`] for symmetric positive definite matrices, [`QuasiDefinite`] for complex symmetric ones
//! whose real part is positive definite, [`Lu`] for unsymmetric ones.
//!
//! **Why separate.** Only this file names the library of factorisations, so the library can be exchanged.
//!
//! **Invariants.** One thread.
//! The analysis of a structure is done once and serves any values; memory is kept from one factorisation to the next.
//! A matrix that cannot be factorised, or a solution that is not finite, is an error and never a panic.
//!
//! **Not here.** The origin of the entries (`assembly`).
//!
//! **Source.** Quasi-definite matrices have an L D Lᵀ factorisation for every symmetric permutation: Vanderbei 1995 (memory).

pub use super::sparse_error::{SparseError, Values};
use super::structure::interleave;
pub use super::structure::{Structure, complex_residual, residual};
use faer::dyn_stack::{MemBuffer, MemStack, StackReq};
use faer::linalg::cholesky::ldlt::factor::{LdltError, LdltRegularization};
use faer::linalg::cholesky::llt::factor::{LltError, LltRegularization};
use faer::sparse::linalg::cholesky::{
    CholeskySymbolicParams, LdltRef, LltRef, SymbolicCholesky, SymbolicCholeskyRaw,
    SymmetricOrdering, factorize_symbolic_cholesky, supernodal,
};
use faer::sparse::linalg::lu::{
    LuRef, LuSymbolicParams, NumericLu, SymbolicLu, factorize_symbolic_lu,
};
use faer::sparse::linalg::{LuError, amd};
use faer::sparse::{FaerError, SparseColMatRef, SymbolicSparseColMat, SymbolicSparseColMatRef};
use faer::{Conj, MatMut, Par, Side, Spec};
use std::sync::Arc;

impl From<FaerError> for SparseError {
    fn from(error: FaerError) -> Self {
        match error {
            FaerError::IndexOverflow => Self::TooLarge,
            _ => Self::Memory,
        }
    }
}

fn columns(structure: &Structure) -> SymbolicSparseColMat<u32> {
    let (n, starts, rows) = (structure.n(), structure.starts(), structure.rows());
    SymbolicSparseColMat::new_checked(n, n, starts.to_vec(), None, rows.to_vec())
}

/// Chooses the order of elimination of a lower triangle, unless it is given, and computes the factor's structure.
fn analysis(lower: &Structure) -> Result<SymbolicCholesky<u32>, SparseError> {
    // The library chooses: blocked factors for sections, simplicial ones for the narrow bands of ladders.
    let params = CholeskySymbolicParams::default();
    let analysed = if lower.is_ordered() {
        // Without an order the library reads the upper triangle, whichever side is named.
        let upper = columns(&lower.transposed());
        let order = SymmetricOrdering::Identity;
        factorize_symbolic_cholesky(upper.as_ref(), Side::Upper, order, params)
    } else {
        let order = SymmetricOrdering::Amd;
        factorize_symbolic_cholesky(columns(lower).as_ref(), Side::Lower, order, params)
    };
    Ok(analysed?)
}

/// A minimum-degree order for a graph whose edges are given once each, by columns; it lists the vertex at each place.
pub(super) fn least_degree_order(starts: &[u32], rows: &[u32]) -> Vec<u32> {
    let n = starts.len() - 1;
    let mut order = vec![0; n];
    let mut places = vec![0; n];
    let graph = SymbolicSparseColMatRef::new_unsorted_checked(n, n, starts, None, rows);
    let need = amd::order_maybe_unsorted_scratch::<u32>(n, rows.len());
    let ordered = MemBuffer::try_new(need).ok().is_some_and(|mut memory| {
        let control = amd::Control::default();
        amd::order_maybe_unsorted(
            &mut order,
            &mut places,
            graph,
            control,
            MemStack::new(&mut memory),
        )
        .is_ok()
    });
    if !ordered {
        // Any order serves here; the factorisation reports the fault.
        order = (0..n as u32).collect();
    }
    order
}

/// Symmetric positive definite systems, by A = L Lᵀ.
///
/// A copy shares the analysis, and allocates its own memory at its first factorisation.
#[derive(Clone)]
pub struct Cholesky {
    matrix: SymbolicSparseColMat<u32>,
    symbolic: Arc<SymbolicCholesky<u32>>,
    workspace: Workspace,
}

/// Values of the factors, and memory for their making; a copy begins empty.
#[derive(Default)]
struct Workspace(Option<(Vec<f64>, MemBuffer)>);

impl Clone for Workspace {
    fn clone(&self) -> Workspace {
        Workspace(None)
    }
}

impl Workspace {
    /// Values and memory, allocated at their first use.
    ///
    /// # Errors
    /// [`SparseError`] if there is no memory.
    fn of(
        &mut self,
        n_values: usize,
        need: StackReq,
    ) -> Result<(&mut Vec<f64>, &mut MemBuffer), SparseError> {
        let made = match self.0.take() {
            Some(made) => made,
            None => (vec![0.0; n_values], memory(need)?),
        };
        let (values, memory) = self.0.insert(made);
        Ok((values, memory))
    }
}

/// A matrix factorised by [`Cholesky`].
#[derive(Debug)]
pub struct Factor<'a> {
    factor: LltRef<'a, u32, f64>,
}

impl Cholesky {
    /// Analyses a structure, given by its lower triangle.
    ///
    /// # Errors
    /// [`SparseError::Structure`] if there is an entry above the diagonal; too large, or out of memory.
    ///
    /// ```
    /// use jointwright_numerics::fem::sparse::{Cholesky, Structure};
    /// let lower = Structure::new(vec![0, 2, 3], vec![0, 1, 1]).unwrap();
    /// assert!(Cholesky::new(&lower).is_ok());
    /// ```
    pub fn new(lower: &Structure) -> Result<Self, SparseError> {
        lower.check_lower()?;
        Ok(Self {
            matrix: columns(lower),
            symbolic: Arc::new(analysis(lower)?),
            workspace: Workspace::default(),
        })
    }

    /// Factorises the matrix with these values of its lower triangle, `[n_entries]`.
    ///
    /// # Errors
    /// [`SparseError::NotFinite`], [`SparseError::NotPositive`].
    ///
    /// # Panics
    /// If the number of values differs from the number of entries.
    ///
    /// ```
    /// use jointwright_numerics::fem::sparse::{Cholesky, SparseError, Structure};
    /// let lower = Structure::new(vec![0, 2, 3], vec![0, 1, 1]).unwrap();
    /// let mut cholesky = Cholesky::new(&lower).unwrap();
    /// let mut values = [5.0, 7.0]; // the right-hand side, and then the solution
    /// cholesky.factorise(&[2.0, 1.0, 3.0]).unwrap().solve(&mut values).unwrap();
    /// assert!((values[0] - 1.6).abs() < 1e-15 && (values[1] - 1.8).abs() < 1e-15);
    /// let error = cholesky.factorise(&[1.0, 1.0, 1.0]).unwrap_err();
    /// assert!(matches!(error, SparseError::NotPositive { .. }));
    /// ```
    pub fn factorise(&mut self, values: &[f64]) -> Result<Factor<'_>, SparseError> {
        check_finite(Values::Matrix, values)?;
        let matrix = SparseColMatRef::new(self.matrix.as_ref(), values);
        let symbolic = &self.symbolic;
        let need = symbolic.factorize_numeric_llt_scratch::<f64>(Par::Seq, Spec::default());
        let (factors, memory) = self.workspace.of(symbolic.len_val(), need)?;
        let factor = symbolic.factorize_numeric_llt(
            factors,
            matrix,
            Side::Lower,
            LltRegularization::default(),
            Par::Seq,
            MemStack::new(memory),
            Spec::default(),
        );
        match factor {
            Ok(factor) => Ok(Factor { factor }),
            Err(LltError::NonPositivePivot { index }) => {
                let unknown = unknown_at(&self.symbolic, index);
                Err(SparseError::NotPositive { unknown })
            }
        }
    }
}

impl Factor<'_> {
    /// Solves for one right-hand side or several, one after another, in place.
    ///
    /// # Errors
    /// [`SparseError::NotFinite`] if a right-hand side or the solution is not finite.
    ///
    /// # Panics
    /// If the length is not a multiple of the number of unknowns.
    ///
    /// ```
    /// use jointwright_numerics::fem::sparse::{Cholesky, Structure};
    /// let lower = Structure::new(vec![0, 1, 2], vec![0, 1]).unwrap();
    /// let mut cholesky = Cholesky::new(&lower).unwrap();
    /// let factor = cholesky.factorise(&[2.0, 4.0]).unwrap();
    /// let mut values = [1.0, 1.0, 3.0, 2.0];
    /// factor.solve(&mut values).unwrap();
    /// assert!(values.iter().zip([0.5, 0.25, 1.5, 0.5]).all(|(found, wanted)| (found - wanted).abs() < 1e-15));
    /// ```
    pub fn solve(&self, rhs: &mut [f64]) -> Result<(), SparseError> {
        let symbolic = self.factor.symbolic();
        let Some(n_rhs) = n_columns(rhs, symbolic.nrows())? else {
            return Ok(());
        };
        let mut memory = memory(symbolic.solve_in_place_scratch::<f64>(n_rhs, Par::Seq))?;
        let columns = MatMut::from_column_major_slice_mut(rhs, symbolic.nrows(), n_rhs);
        self.factor.solve_in_place_with_conj(
            Conj::No,
            columns,
            Par::Seq,
            MemStack::new(&mut memory),
        );
        check_finite(Values::Solution, rhs)
    }
}

/// Complex symmetric systems (A + jB)(x + jy) = f + jg with A positive definite, by real L D Lᵀ without pivots.
///
/// ```text
/// |  A  −B | | x |   |  f |
/// | −B  −A | | y | = | −g |      solved with x and y side by side: x_0, y_0, x_1, y_1, …
/// ```
#[derive(Clone)]
pub struct QuasiDefinite {
    /// Structure of A and B.
    lower: Structure,
    matrix: SymbolicSparseColMat<u32>,
    symbolic: Arc<SymbolicCholesky<u32>>,
    matrix_values: Vec<f64>,
    workspace: Workspace,
}

/// A matrix factorised by [`QuasiDefinite`].
#[derive(Debug)]
pub struct ComplexFactor<'a> {
    factor: LdltRef<'a, u32, f64>,
}

impl QuasiDefinite {
    /// Analyses the structure that A and B share, given by its lower triangle.
    ///
    /// # Errors
    /// As [`Cholesky::new`].
    ///
    /// ```
    /// use jointwright_numerics::fem::sparse::{QuasiDefinite, Structure};
    /// let lower = Structure::new(vec![0, 2, 3], vec![0, 1, 1]).unwrap();
    /// assert!(QuasiDefinite::new(&lower).is_ok());
    /// ```
    pub fn new(lower: &Structure) -> Result<Self, SparseError> {
        lower.check_lower()?;
        let doubled = lower.doubled_lower();
        Ok(Self {
            matrix: columns(&doubled),
            matrix_values: vec![0.0; doubled.n_entries()],
            symbolic: Arc::new(analysis(&doubled)?),
            workspace: Workspace::default(),
            lower: lower.clone(),
        })
    }

    /// Factorises A + jB, each given by the values of its lower triangle, `[n_entries]`.
    ///
    /// # Errors
    /// [`SparseError::NotFinite`]; [`SparseError::NotPositive`] if A is not positive definite.
    ///
    /// # Panics
    /// If the number of values differs from the number of entries.
    ///
    /// ```
    /// use jointwright_numerics::fem::sparse::{QuasiDefinite, Structure};
    /// let one = Structure::new(vec![0, 1], vec![0]).unwrap();
    /// let mut solver = QuasiDefinite::new(&one).unwrap();
    /// let (mut real, mut imaginary) = ([1.0], [0.0]);
    /// solver.factorise(&[1.0], &[1.0]).unwrap().solve(&mut real, &mut imaginary).unwrap();
    /// assert_eq!((real, imaginary), ([0.5], [-0.5])); // 1 / (1 + j)
    /// assert!(solver.factorise(&[-1.0], &[1.0]).is_err());
    /// ```
    pub fn factorise(
        &mut self,
        real: &[f64],
        imaginary: &[f64],
    ) -> Result<ComplexFactor<'_>, SparseError> {
        check_finite(Values::Matrix, real)?;
        check_finite(Values::Matrix, imaginary)?;
        interleave(&self.lower, [real, imaginary], &mut self.matrix_values);
        let matrix = SparseColMatRef::new(self.matrix.as_ref(), &self.matrix_values[..]);
        let symbolic = &self.symbolic;
        let need = symbolic.factorize_numeric_ldlt_scratch::<f64>(Par::Seq, Spec::default());
        let (factors, memory) = self.workspace.of(symbolic.len_val(), need)?;
        let factor = symbolic.factorize_numeric_ldlt(
            factors,
            matrix,
            Side::Lower,
            LdltRegularization::default(),
            Par::Seq,
            MemStack::new(memory),
            Spec::default(),
        );
        match factor {
            Ok(_) => {
                check_signs(symbolic, factors)?;
                let factor = LdltRef::new(symbolic, factors);
                Ok(ComplexFactor { factor })
            }
            Err(LdltError::ZeroPivot { index }) => {
                let unknown = unknown_at(&self.symbolic, index) / 2;
                Err(SparseError::NotPositive { unknown })
            }
        }
    }
}

impl ComplexFactor<'_> {
    /// Solves in place for one right-hand side or several, each given by its real and its imaginary part.
    ///
    /// # Errors
    /// [`SparseError::NotFinite`] if a right-hand side or the solution is not finite.
    ///
    /// # Panics
    /// If the lengths differ or are not a multiple of the number of unknowns.
    ///
    /// ```
    /// use jointwright_numerics::fem::sparse::{QuasiDefinite, Structure};
    /// let one = Structure::new(vec![0, 1], vec![0]).unwrap();
    /// let mut solver = QuasiDefinite::new(&one).unwrap();
    /// let factor = solver.factorise(&[1.0], &[0.0]).unwrap();
    /// let (mut real, mut imaginary) = ([3.0], [4.0]);
    /// factor.solve(&mut real, &mut imaginary).unwrap();
    /// assert_eq!((real, imaginary), ([3.0], [4.0]));
    /// ```
    pub fn solve(&self, real: &mut [f64], imaginary: &mut [f64]) -> Result<(), SparseError> {
        assert_eq!(real.len(), imaginary.len());
        let symbolic = self.factor.symbolic();
        check_finite(Values::RightHandSide, imaginary)?;
        let Some(n_rhs) = n_columns(real, symbolic.nrows() / 2)? else {
            return Ok(());
        };
        let mut both: Vec<f64> = real
            .iter()
            .zip(&*imaginary)
            .flat_map(|(&f, &g)| [f, -g])
            .collect();
        let mut memory = memory(symbolic.solve_in_place_scratch::<f64>(n_rhs, Par::Seq))?;
        let columns = MatMut::from_column_major_slice_mut(&mut both, symbolic.nrows(), n_rhs);
        self.factor.solve_in_place_with_conj(
            Conj::No,
            columns,
            Par::Seq,
            MemStack::new(&mut memory),
        );
        for ((pair, x), y) in both
            .chunks_exact(2)
            .zip(real.iter_mut())
            .zip(imaginary.iter_mut())
        {
            (*x, *y) = (pair[0], pair[1]);
        }
        check_finite(Values::Solution, &both)
    }
}

/// Checks that every pivot of a real part is positive and every pivot of an imaginary part negative; otherwise A is not positive definite.
fn check_signs(symbolic: &SymbolicCholesky<u32>, values: &[f64]) -> Result<(), SparseError> {
    let check = |place: usize, pivot: f64| {
        let unknown = unknown_at(symbolic, place);
        let expected = if unknown.is_multiple_of(2) {
            pivot
        } else {
            -pivot
        };
        if expected > 0.0 && expected.is_finite() {
            Ok(())
        } else {
            Err(SparseError::NotPositive {
                unknown: unknown / 2,
            })
        }
    };
    match symbolic.raw() {
        SymbolicCholeskyRaw::Simplicial(columns) => {
            let starts = columns.col_ptr();
            (0..columns.ncols()).try_for_each(|place| check(place, values[starts[place] as usize]))
        }
        SymbolicCholeskyRaw::Supernodal(blocks) => {
            let factor = supernodal::SupernodalLdltRef::new(blocks, values);
            (0..blocks.n_supernodes()).try_for_each(|index| {
                let block = factor.supernode(index);
                let pivots = block.val();
                (0..pivots.ncols())
                    .try_for_each(|own| check(block.start() + own, pivots[(own, own)]))
            })
        }
    }
}

/// Unsymmetric systems, by P A Q = L U with partial pivoting.
pub struct Lu {
    matrix: SymbolicSparseColMat<u32>,
    symbolic: SymbolicLu<u32>,
    numeric: NumericLu<u32, f64>,
    memory: MemBuffer,
}

/// A matrix factorised by [`Lu`].
#[derive(Debug)]
pub struct LuFactor<'a> {
    factor: LuRef<'a, u32, f64>,
}

impl Lu {
    /// Analyses a structure.
    ///
    /// # Errors
    /// If the structure is too large, or memory does not suffice.
    ///
    /// ```
    /// use jointwright_numerics::fem::sparse::{Lu, Structure};
    /// let square = Structure::new(vec![0, 2, 4], vec![0, 1, 0, 1]).unwrap();
    /// assert!(Lu::new(&square).is_ok());
    /// ```
    pub fn new(structure: &Structure) -> Result<Self, SparseError> {
        let matrix = columns(structure);
        let symbolic = factorize_symbolic_lu(matrix.as_ref(), LuSymbolicParams::default())?;
        let need = symbolic.factorize_numeric_lu_scratch::<f64>(Par::Seq, Spec::default());
        Ok(Self {
            matrix,
            numeric: NumericLu::new(),
            memory: memory(need)?,
            symbolic,
        })
    }

    /// Factorises the matrix with these values, `[n_entries]`.
    ///
    /// # Errors
    /// [`SparseError::NotFinite`]; [`SparseError::Singular`] if the structure alone makes the matrix singular.
    /// [`LuFactor::solve`] finds a matrix whose values make it singular.
    ///
    /// # Panics
    /// If the number of values differs from the number of entries.
    ///
    /// ```
    /// use jointwright_numerics::fem::sparse::{Lu, Structure};
    /// let square = Structure::new(vec![0, 2, 4], vec![0, 1, 0, 1]).unwrap();
    /// let mut lu = Lu::new(&square).unwrap();
    /// let mut values = [5.0, 6.0];
    /// lu.factorise(&[1.0, 0.0, 2.0, 3.0]).unwrap().solve(&mut values).unwrap();
    /// assert!((values[0] - 1.0).abs() < 1e-15 && (values[1] - 2.0).abs() < 1e-15);
    /// ```
    pub fn factorise(&mut self, values: &[f64]) -> Result<LuFactor<'_>, SparseError> {
        check_finite(Values::Matrix, values)?;
        let factor = self.symbolic.factorize_numeric_lu(
            &mut self.numeric,
            SparseColMatRef::new(self.matrix.as_ref(), values),
            Par::Seq,
            MemStack::new(&mut self.memory),
            Spec::default(),
        );
        match factor {
            Ok(factor) => Ok(LuFactor { factor }),
            Err(LuError::SymbolicSingular { .. }) => Err(SparseError::Singular),
            Err(LuError::Generic(error)) => Err(error.into()),
        }
    }
}

impl LuFactor<'_> {
    /// Solves for one right-hand side or several, one after another, in place.
    ///
    /// # Errors
    /// [`SparseError::NotFinite`] for a right-hand side; [`SparseError::Singular`] if the solution is not finite.
    ///
    /// # Panics
    /// If the length is not a multiple of the number of unknowns.
    ///
    /// ```
    /// use jointwright_numerics::fem::sparse::{Lu, SparseError, Structure};
    /// let square = Structure::new(vec![0, 2, 4], vec![0, 1, 0, 1]).unwrap();
    /// let mut lu = Lu::new(&square).unwrap();
    /// let error = lu.factorise(&[1.0, 1.0, 1.0, 1.0]).unwrap().solve(&mut [1.0, 2.0]);
    /// assert_eq!(error, Err(SparseError::Singular));
    /// ```
    pub fn solve(&self, rhs: &mut [f64]) -> Result<(), SparseError> {
        let symbolic = self.factor.symbolic();
        let Some(n_rhs) = n_columns(rhs, symbolic.nrows())? else {
            return Ok(());
        };
        let mut memory = memory(symbolic.solve_in_place_scratch::<f64>(n_rhs, Par::Seq))?;
        let columns = MatMut::from_column_major_slice_mut(rhs, symbolic.nrows(), n_rhs);
        self.factor.solve_in_place_with_conj(
            Conj::No,
            columns,
            Par::Seq,
            MemStack::new(&mut memory),
        );
        check_finite(Values::Solution, rhs).map_err(|_| SparseError::Singular)
    }
}

fn memory(need: StackReq) -> Result<MemBuffer, SparseError> {
    MemBuffer::try_new(need).map_err(|_| SparseError::Memory)
}

fn check_finite(what: Values, values: &[f64]) -> Result<(), SparseError> {
    // Without an early exit this loop runs at the speed of memory.
    if values
        .iter()
        .fold(true, |all, value| all & value.is_finite())
    {
        return Ok(());
    }
    let index = values.iter().position(|value| !value.is_finite());
    let index = index.unwrap_or(values.len());
    Err(SparseError::NotFinite { what, index })
}

/// Number of right-hand sides; `None` if there is nothing to solve.
fn n_columns(rhs: &[f64], n: usize) -> Result<Option<usize>, SparseError> {
    if n == 0 || rhs.is_empty() {
        assert!(rhs.is_empty());
        return Ok(None);
    }
    assert!(rhs.len().is_multiple_of(n));
    check_finite(Values::RightHandSide, rhs)?;
    Ok(Some(rhs.len() / n))
}

/// The unknown that was eliminated at a place in the order.
fn unknown_at(symbolic: &SymbolicCholesky<u32>, place: usize) -> usize {
    match symbolic.perm() {
        Some(order) => order
            .arrays()
            .0
            .get(place)
            .map_or(place, |&unknown| unknown as usize),
        None => place,
    }
}

#[cfg(test)]
#[path = "sparse_tests.rs"]
mod tests;
