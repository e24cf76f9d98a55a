//! Rating: the current-carrying capacity of three phases of a cable, and the temperature of each layer.
//!
//! **What.** [`Conductor`]: resistance with skin and proximity effect; [`shield`]: reactances, losses, standing voltages, areas;
//! [`thermal`]: thermal resistances of layers, soil, ducts and air; [`Circuit`]: steady current and temperatures;
//! [`short_circuit`]: currents of a few seconds; [`step`]: warming of soil after a step of heat; [`fin`]: heat that flows along a rod.
//! [`transient`]: warming of cable and soil together; [`cyclic`]: a load that repeats daily; [`emergency`]: a current for a limited time; [`mod@line`]: impedances with concentric neutrals; [`soil`]: cables that warm one another.
//!
//! **Why separate.** These are formulas of standards, each with its clause; their use lies elsewhere.
//!
//! **Invariants.** SI units, temperatures in degrees Celsius.
//! More current never gives a lower temperature, and a current without a steady temperature is an error, never a number.
//!
//! **Not here.** Joint solutions of circuits with different loads, eddy losses of shields, sun, limits.
//! The temperatures of other sections than long cables: [`crate::heat`].
//!
//! **Source.** `docs/theory/rating.md`, which states for each constant how it was read.

pub mod conductor;
pub mod cyclic;
pub mod emergency;
mod error;
pub mod fin;
pub mod line;
pub mod shield;
pub mod short_circuit;
pub mod soil;
pub mod steady;
pub mod step;
pub mod thermal;
pub mod transient;

pub use conductor::{Conductor, Metal, Neighbours, Proximity};
pub use error::RatingError;
pub use shield::Bond;
pub use steady::{Circuit, Outside, Steady};

/// Series factor of two parallel lines, μ0/2π, H/m.
pub(crate) const MU0_OVER_2PI_H_PER_M: f64 = 2e-7;
