//! Fields: the potential in a section, and what is wanted of it, each number with its estimated error.
//!
//! **What.** [`solve()`] meshes a [`Section`], solves ∇·((σ + jωε)∇φ) = 0 on it, refines until every wanted number is
//! estimated to be as close as asked, and answers.
//!
//! **Why separate.** The equation, the estimate and the refinement are one loop; nothing outside needs to see inside it.
//!
//! **Invariants.** Lengths in metres, potentials in volts, fields in V/m; what goes in rms comes out rms.
//! No number comes without its estimate, and one that did not settle says so.
//!
//! **Not here.** Files (`case`), what a number is judged by.
//!
//! **Source.** `docs/theory/field.md`.

#![allow(
    clippy::needless_range_loop,
    reason = "components of a slope are named by axis and part, as in the formulas"
)]

mod across;
mod along;
mod corner;
mod judge;
mod newton;
mod peak;
mod recovery;
mod section;
mod solution;
mod solve;
mod solved;
mod system;
mod wanted;
mod warm;

pub use along::{Along, along};
pub use corner::{Corner, corners};
pub use section::{Conductivity, Disc, Material, Regime, Section};
pub use solve::solve;
pub use solved::{Cut, FieldError, Options, Solved, Stage, Unwatched, Watch};
pub use system::VACUUM_PERMITTIVITY;
pub use wanted::{Answer, Wanted};
pub use warm::{Prepared, Reuse, prepare};
