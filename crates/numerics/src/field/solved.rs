//! Inputs of a solve besides the section, and its outputs.

use super::wanted::Answer;
use crate::fem::dofs::DofError;
use crate::fem::sparse::SparseError;
use crate::mesh::{Mesh, MeshError};

/// Tolerances of the answers, and the limit of the effort.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Options {
    /// Permitted error, as a share of the number, for peaks, fields and potentials.
    pub tolerance: f64,
    /// Permitted error, as a share of the number, for a capacitance.
    pub capacitance_tolerance: f64,
    /// Number of unknowns at which refinement stops.
    pub n_unknowns_most: usize,
    /// Greatest work: the unknowns of each mesh times its solves, added up.
    ///
    /// A bound on work and not on time, so that a busy computer gives the same answers.
    pub work_most: usize,
}

impl Default for Options {
    fn default() -> Self {
        Self {
            tolerance: 1e-3,
            capacitance_tolerance: 2e-5,
            n_unknowns_most: 2_000_000,
            // Some half a minute of one core.
            work_most: 4_000_000,
        }
    }
}

/// Answers, and the solution that they were taken from.
#[derive(Clone, Debug)]
pub struct Solved {
    /// One answer for each wanted number, in the same order.
    pub answers: Vec<Answer>,
    /// The last mesh.
    pub mesh: Mesh,
    /// Potential of each node of the mesh, real and imaginary part, V.
    pub potential: Vec<[f64; 2]>,
    /// Unknowns of the last system; a complex unknown counts twice.
    pub n_unknowns: usize,
    /// Relative residuals of Newton's method on the last mesh; empty for a linear problem.
    pub newton_residuals: Vec<f64>,
    /// Reason why the refinement ended before every number met its tolerance; `None` if all met it.
    pub cut_short: Option<Cut>,
}

/// Reason why a refinement ends before every number meets its tolerance.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cut {
    /// The permitted number of unknowns is reached.
    Unknowns,
    /// The permitted number of refinements is reached.
    Refinements,
    /// The next mesh would take more work than is permitted.
    Work,
    /// The watch ended it.
    Watch,
}

/// Stage of a solve.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// Meshing or refining the mesh.
    Mesh,
    /// Numbering unknowns; computing element matrices and the structure of the equations.
    Assemble,
    /// Factorising and solving.
    Solve,
    /// Computing the wanted numbers and estimating their errors.
    Judge,
}

/// Watch of a solve: it is told each stage, and may end the solve, for example because nobody waits for it any longer.
pub trait Watch {
    /// A stage begins.
    fn stage(&mut self, stage: Stage);
    /// Whether another refinement may begin.
    fn may_go_on(&mut self) -> bool;
}

/// A watch that never stops the solve.
#[derive(Clone, Copy, Debug, Default)]
pub struct Unwatched;

impl Watch for Unwatched {
    fn stage(&mut self, _: Stage) {}
    fn may_go_on(&mut self) -> bool {
        true
    }
}

/// Reason why a section could not be solved.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum FieldError {
    /// There is no mesh.
    #[error("the section could not be meshed")]
    Mesh(#[source] MeshError),
    /// The potentials contradict each other.
    #[error("the potentials contradict each other")]
    Unknowns(#[source] DofError),
    /// Newton's method did not converge.
    #[error(
        "the field with a conductivity that rises with it did not settle: relative residual {residual:.1e}"
    )]
    Newton {
        /// Residual at which it stuck, over the currents at the electrodes.
        residual: f64,
    },
    /// There is nothing to solve.
    #[error("there is nothing to solve")]
    Nothing,
    /// The equations could not be solved.
    #[error("the equations could not be solved")]
    Sparse(#[source] SparseError),
}
