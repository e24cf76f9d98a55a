//! Heat in an axisymmetric section: ρc ∂T/∂t = ∇·(k ∇T) + q, q a current's loss that grows with the temperature.
//!
//! **What.** [`HeatSection`]: outline, materials, currents, films; [`solve`]: temperatures and losses, steady or after a current was switched on.
//!
//! **Why separate.** The elements are those of the electric field; sources, films and time are not.
//!
//! **Invariants.** SI units, temperatures in degrees Celsius.
//! Every outer curve without a film is adiabatic; a current that no steady temperature can carry is an error, never a number.
//! Each answer carries its estimated error: from one mesh to a finer one, and from one length of step to its half.
//!
//! **Not here.** Radiation, limits of temperature, what a cable or joint is.
//!
//! **Source.** `docs/theory/heat.md`.

mod across;
mod section;
mod solve;
pub(crate) mod step;
mod system;

pub use section::{Ask, Film, HeatAnswer, HeatError, HeatSection, Joule, Stuff, What, When};
pub use solve::{HeatOptions, HeatSolved, solve, solve_on};
