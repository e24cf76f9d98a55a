//! Finite elements for one unknown scalar in an axisymmetric section: ∇·(c ∇φ) = 0 with weight 2πr.
//!
//! **What.** [`triangle`]: one quadratic triangle, straight or curved; [`quadrature`]: points and weights;
//! [`dofs`]: from nodes to unknowns; [`assembly`]: from elements to a sparse system; [`sparse`]: factorisation and solution.
//!
//! ```text
//! Mesh ── Dofs ── Pattern ── Cholesky            once for a mesh
//!   │               │            │
//!   └─ stiffness ── assemble ─ factorise ─ solve     again for each set of coefficients
//! ```
//!
//! **Why separate.** The same four steps serve potential, current and heat; what c means stands with them.
//!
//! **Invariants.** SI units; the coefficient c is per element or per quadrature point.
//! An element matrix holds geometry alone, so that a new coefficient costs one multiplication an entry.
//! Sums are taken in the order of elements on one thread: the same input gives the same bits.
//!
//! **Not here.** Meshes (`mesh`), materials and boundary conditions (`field`).
//!
//! **Source.** Textbook finite elements; each module says what was derived where.

pub mod assembly;
pub mod dofs;
mod ordering;
pub mod quadrature;
pub mod sparse;
mod structure;
pub mod triangle;

#[cfg(test)]
mod annulus_tests;
#[cfg(test)]
mod grid_tests;
