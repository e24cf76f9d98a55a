//! Rating: what current three phases of a cable carry, and how warm each of its layers becomes.
//!
//! **What.** [`Conductor`]: resistance with skin and proximity effect; [`shield`]: reactances, losses, standing voltages, areas;
//! [`thermal`]: resistances to heat of layers, soil, ducts and air; [`Circuit`]: steady current and temperatures;
//! [`short_circuit`]: currents of a few seconds; [`step`]: how fast soil warms; [`fin`]: heat that leaves along a rod.
//! [`transient`]: how cable and soil warm together; [`cyclic`]: a load that repeats daily; [`emergency`]: a current for a while; [`mod@line`]: impedances with concentric neutrals; [`soil`]: cables that warm one another.
//!
//! **Why separate.** These are formulas of standards, each with its clause; what they are asked for is not theirs.
//!
//! **Invariants.** SI units, temperatures in degrees Celsius.
//! More current is never cooler, and a current that no steady temperature can carry is an error, never a number.
//!
//! **Not here.** Circuits of different loads solved together, eddy losses of shields, sun, limits.
//! The temperatures of a section that is no long cable: [`crate::heat`].
//!
//! **Source.** `docs/theory/rating.md`, which says of each constant how it was read.

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
