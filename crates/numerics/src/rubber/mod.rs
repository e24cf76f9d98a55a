//! Rubber: the pressure of a thick tube of incompressible rubber on a rigid cylinder larger than its bore.
//!
//! **What.** [`Tube::pressed()`]: contact pressure of a tube of one or several bonded rings, at fixed length or with free ends;
//! [`Tube::radius_for()`]: the inverse; [`Decay`]: the share of a property that heat and time have used up.
//!
//! **Why separate.** The mechanics of a tube does not depend on its use.
//!
//! **Invariants.** A cylinder no larger than the bore is not pressed: the pressure is 0, never negative.
//! Reduced times add up, so the order of the temperatures does not matter.
//! SI units; stretches are lengths over relaxed lengths.
//!
//! **Not here.** Steps of a wall, where the stress field differs from that of every tube; friction; inelastic rubber, except for [`Decay`].
//!
//! **Source.** `docs/theory/rubber.md`.

mod decay;
mod error;
mod integral;
mod law;
mod tube;

pub use decay::{Decay, Stay};
pub use error::RubberError;
pub use law::{Law, LawKind};
pub use tube::{Ends, Pressed, Ring, Tube};
