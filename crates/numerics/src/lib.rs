//! Mathematics in textbook words: what a formula needs, and nothing of what it is used for.
//!
//! **What.** [`chain`]: positions of planes along one axis from the links between them.
//! [`outline`], [`mesh`], [`fem`], [`field`]: the potential of a section; [`gas`]: breakdown of air.
//! [`heat`]: its temperatures. [`ladder`]: those of stepped cylinders, fast. [`rating`]: currents and temperatures of long cables.
//! [`rubber`]: tubes on a rigid cylinder. [`case`]: files of such questions.
//!
//! **Why separate.** A formula can be read, tested and trusted only when nothing of its use is mixed into it.
//!
//! **Invariants.** Pure: no clock, file, network, environment or thread.
//! The same input gives the same bits on every machine; what is random comes from a seed in the arguments.
//! Nothing depends on the order in which a list was written down.
//!
//! **Not here.** Units as people write them (`jointwright-units`), limits, rulings and words of a trade.
//!
//! **Source.** Each module names its own; the formulas stand in `docs/theory/`.

pub mod case;
pub mod chain;
pub mod fem;
pub mod field;
pub mod gas;
pub mod heat;
pub mod ladder;
pub mod mesh;
pub mod outline;
pub mod rating;
pub mod rubber;
