//! Finite elements for one unknown scalar in an axisymmetric section: ∇·(c ∇φ) = 0 with weight 2πr.
//!
//! **What.** [`triangle`]: one quadratic triangle, straight or curved; [`quadrature`]: points and weights;
//! [`dofs`]: the unknowns of the nodes; [`assembly`]: the sparse system of the elements; [`sparse`]: factorisation and solution.
//!
//! ```text
//! Mesh ── Dofs ── Pattern ── Cholesky            once for a mesh
//!   │               │            │
//!   └─ stiffness ── assemble ─ factorise ─ solve     again for each set of coefficients
//! ```
//!
//! **Why separate.** The same four steps serve potential, current and heat; each of these states the meaning of c.
//!
//! **Invariants.** SI units; the coefficient c is per element or per quadrature point.
//! An element matrix holds only geometry, so a new coefficient costs one multiplication for each entry.
//! Sums follow the order of elements on one thread: the same input gives the same bits.
//!
//! **Not here.** Meshes (`mesh`), materials and boundary conditions (`field`).
//!
//! **Source.** Textbook finite elements; each module states its own derivations.

pub mod assembly;
pub mod dofs;
mod ordering;
pub mod quadrature;
pub mod sparse;
mod sparse_error;
mod structure;
pub mod triangle;

#[cfg(test)]
mod annulus_tests;
#[cfg(test)]
mod grid_tests;
