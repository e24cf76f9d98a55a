//! Rubber: what a thick tube of incompressible rubber does to a rigid cylinder that is too large for it.
//!
//! **What.** [`Tube::pressed()`]: contact pressure of a tube of one or several bonded rings, at fixed length or with free ends;
//! [`Tube::radius_for()`]: the other way round; [`Decay`]: what heat and time have used up of a property.
//!
//! **Why separate.** The mechanics of a tube has nothing of what the tube is for.
//!
//! **Invariants.** A cylinder no larger than the bore is not pressed: the pressure is 0 and never below.
//! Reduced times add up, so the order in which temperatures came does not matter.
//! SI units; stretches are lengths over relaxed lengths.
//!
//! **Not here.** Where a wall has a step the field of stress is not that of any tube; friction; rubber that is not elastic but for [`Decay`].
//!
//! **Source.** `docs/theory/rubber.md`.

mod decay;
mod error;
mod integral;
mod law;
mod tube;

pub use decay::{Decay, Stay};
pub use error::RubberError;
pub use law::Law;
pub use tube::{Ends, Pressed, Ring, Tube};
