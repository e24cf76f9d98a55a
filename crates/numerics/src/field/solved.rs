//! What goes into a solve besides the section, and what comes out.

use super::wanted::Answer;
use crate::fem::dofs::DofError;
use crate::fem::sparse::SparseError;
use crate::mesh::{Mesh, MeshError};

/// How close the answers shall be, and how much may be spent on it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Options {
    /// Estimated error, as a share of the number, for peaks, fields and potentials.
    pub tolerance: f64,
    /// Estimated error, as a share of the number, for a capacitance.
    pub capacitance_tolerance: f64,
    /// No further refinement from this many unknowns on.
    pub n_unknowns_most: usize,
}

impl Default for Options {
    fn default() -> Self {
        Self {
            tolerance: 1e-3,
            capacitance_tolerance: 2e-5,
            n_unknowns_most: 2_000_000,
        }
    }
}

/// Answers, and the solution they were taken from.
#[derive(Clone, Debug)]
pub struct Solved {
    /// One answer for each number wanted, in the same order.
    pub answers: Vec<Answer>,
    /// The last mesh.
    pub mesh: Mesh,
    /// Potential of each node of the mesh, real and imaginary part, V.
    pub potential: Vec<[f64; 2]>,
    /// Unknowns of the last system; a complex one counts twice.
    pub n_unknowns: usize,
    /// Relative residuals of Newton's method on the last mesh; empty for a linear problem.
    pub newton_residuals: Vec<f64>,
    /// What ended the refinement before every number was as close as asked.
    pub cut_short: Option<Cut>,
}

/// What ends a refinement before every number is as close as asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cut {
    /// As many unknowns as are allowed.
    Unknowns,
    /// As many refinements as are made.
    Refinements,
    /// Whoever watches.
    Watch,
}

/// What a solve is busy with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// Making or refining the mesh.
    Mesh,
    /// Numbering unknowns, element matrices, structure of the equations.
    Assemble,
    /// Factorising and solving.
    Solve,
    /// Taking the wanted numbers and estimating their errors.
    Judge,
}

/// Is told what a solve is busy with, and says whether it may go on; the clock is the caller's.
pub trait Watch {
    /// A stage begins.
    fn stage(&mut self, stage: Stage);
    /// Whether another refinement may begin.
    fn may_go_on(&mut self) -> bool;
}

/// A watch that never looks at a clock.
#[derive(Clone, Copy, Debug, Default)]
pub struct Unwatched;

impl Watch for Unwatched {
    fn stage(&mut self, _: Stage) {}
    fn may_go_on(&mut self) -> bool {
        true
    }
}

/// Why a section could not be solved.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum FieldError {
    /// No mesh.
    #[error("the section could not be meshed")]
    Mesh(#[source] MeshError),
    /// The potentials contradict each other.
    #[error("the potentials contradict each other")]
    Unknowns(#[source] DofError),
    /// Newton's method stuck.
    #[error(
        "the field with a conductivity that rises with it did not settle: relative residual {residual:.1e}"
    )]
    Newton {
        /// Where it stuck: residual over the currents at the electrodes.
        residual: f64,
    },
    /// Nothing to solve.
    #[error("there is nothing to solve")]
    Nothing,
    /// The equations could not be solved.
    #[error("the equations could not be solved")]
    Sparse(#[source] SparseError),
}
