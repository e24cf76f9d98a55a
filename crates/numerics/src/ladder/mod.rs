//! Ladder: heat along and across stepped cylinders, as a network of thermal resistances and heat capacities.
//!
//! ```text
//!        film        film            film
//!      ___|___     ___|___     _______|_______
//!     | ring 2|___|       |   |               |
//!     |_______|___| ring 1|___|_______________|
//!     | ring 1|   |_______|   |               |      a core with a loss, rings about it,
//!     |_______|___| core  |___|_______________|      slice beside slice from z = 0 on
//!     |  core |   |       |   |
//!  ---+-------+---+-------+---+---------------+--> z
//! ```
//!
//! **What.** [`Arm`]: slices from a plane of symmetry, or from a hub at which several arms meet ([`Star`]);
//! [`Ladder`]: all its temperatures, steady and in time; [`Reduced`]: the same ladder with at most eight states;
//! [`Projected`]: the same ladder with some tens of states, for any currents;
//! [`Ladder::load_to_degc`], [`Ladder::lasts_s`]: the load that reaches a temperature, and the time to reach it;
//! [`Ladder::origins`]: the contributions to the temperature of one place;
//! [`elements`]: one arm for finite elements, which are independent of the network.
//!
//! **Why separate.** Finite elements solve any section but take time; a ladder answers what-if questions, and runs years of hours.
//!
//! **Invariants.** SI units, temperatures in degrees Celsius.
//! If nothing changes along the axis and no ring has a loss, its steady state is the closed form of layers.
//! A current without a steady temperature (thermal runaway) is an error, never a number.
//!
//! **Not here.** The meaning of a joint; the film at a place.
//!
//! **Source.** `docs/theory/ladder.md`.

mod basis;
mod elements;
mod grid;
mod jacobi;
mod limit;
mod network;
mod projected;
mod reduced;
mod run;
mod shape;
mod temperatures;
mod tridiagonal;

pub use elements::elements;
pub use limit::{Spot, factor_to_limit};
pub use projected::{Course, Projected, Rises};
pub use reduced::{Hour, N_STATES_MOST, Reduced, State};
pub use run::{Core, Ladder, Origin, Origins};
pub use shape::{Arm, Hub, LadderError, Loss, Ring, Slice, Star};
pub use temperatures::Temperatures;
