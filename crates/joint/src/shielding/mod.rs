//! Shielding: the metallic shield along the cable: its resistance, its circulating current and its standing voltage.
//!
//! Why its own room: losses, voltages and readings of continuity rest on one interval of resistance and on the same bonding points of a shield.
//!
//! Invariants:
//! - A fact that nobody states is asked for, never guessed.
//! - Where a range is left open, the warm side is taken.
//! - Only balanced currents of three phases are computed, and the omission of all others is stated.
//! - No voltage is called harmless.
//!
//! Not here: short circuits in the shield (`fault`); whose limit it is (`checks`).
//!
//! Source: iec_60287_1_1, clause 2.3; ieee_575, memory; `docs/theory/shields.md`.

mod along;
mod loss;
mod reading;
mod standing;

pub use along::{ShieldResistance, along, along_by_papers, mean_m, measured_said};
pub use loss::{Round, ShieldLoss, shield_loss};
pub use reading::{Agreed, Agreement, agreement};
pub use standing::{Standing, Stands, standing};

use crate::said::Said;
use crate::section::Unknown;

fn unknown(why: impl Into<Said>, question: impl Into<Said>) -> Unknown {
    Unknown::new(why, [question])
}
