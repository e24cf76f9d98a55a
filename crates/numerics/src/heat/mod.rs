//! Heat in an axisymmetric section: ρc ∂T/∂t = ∇·(k ∇T) + q, q a current's loss that grows with the temperature.
//!
//! **What.** [`HeatSection`]: outline, materials, currents, films; [`solve`]: temperatures and losses, steady or after the start of a current.
//!
//! **Why separate.** The elements are shared with the electric field; sources, films and time are not.
//!
//! **Invariants.** SI units, temperatures in degrees Celsius.
//! Every outer curve without a film is adiabatic; a current without a steady temperature (thermal runaway) is an error, never a number.
//! Each answer carries its estimated error: the difference from one mesh to a finer one, and from one step length to its half.
//!
//! **Not here.** Radiation, limits of temperature, the meaning of a cable or joint.
//!
//! **Source.** `docs/theory/heat.md`.

mod across;
mod section;
mod solve;
pub(crate) mod step;
mod system;

pub use section::{Ask, Film, HeatAnswer, HeatError, HeatSection, Joule, Stuff, What, When};
pub use solve::{HeatOptions, HeatSolved, solve, solve_on};
