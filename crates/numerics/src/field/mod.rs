//! Fields: the potential in a section, and the numbers wanted of it, each with its estimated error.
//!
//! **What.** [`solve()`] meshes a [`Section`], solves ∇·((σ + jωε)∇φ) = 0 on it, refines until the estimated error of every wanted number
//! meets the tolerance, and answers.
//!
//! **Why separate.** Equation, estimate and refinement form one loop; nothing outside needs its inner parts.
//!
//! **Invariants.** Lengths in metres, potentials in volts, fields in V/m; rms input gives rms output.
//! Every number has its estimate, and a number that did not settle says so.
//!
//! **Not here.** Files (`case`), and the limits that judge a number.
//!
//! **Source.** `docs/theory/field.md`.

#![allow(
    clippy::needless_range_loop,
    reason = "components of a slope are named by axis and part, as in the formulas"
)]

mod along;
mod breakdown;
mod carried;
mod corner;
mod goal;
mod judge;
mod like;
mod newton;
mod peak;
mod potential;
mod recovery;
mod section;
mod solution;
mod solve;
mod solved;
mod system;
mod wanted;
mod ways;

pub use along::{LineSample, along};
pub use carried::{Prepared, Reuse, prepare};
pub use corner::{Corner, corners};
pub use section::{Conductivity, Disc, Material, Regime, Section};
pub use solve::solve;
pub use solved::{Cut, FieldError, Options, Solved, Stage, Unwatched, Watch};
pub use system::VACUUM_PERMITTIVITY;
pub use wanted::{Answer, Wanted};
