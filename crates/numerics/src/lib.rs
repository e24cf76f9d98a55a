//! Mathematics in textbook words: formulas and their inputs, without their use.
//!
//! **What.** [`chain`]: positions of planes along one axis from the links between them.
//! [`outline`], [`mesh`], [`fem`], [`field`]: the electric potential of a section; [`gas`]: breakdown of air.
//! [`heat`]: temperatures of a section. [`ladder`]: temperatures of stepped cylinders, fast.
//! [`rating`]: currents and temperatures of long cables.
//! [`rubber`]: tubes on a rigid cylinder. [`case`]: files of such questions.
//!
//! **Why separate.** A formula can be read, tested and trusted only if it is not mixed with its use.
//!
//! **Invariants.** Pure: no clock, file, network, environment or thread.
//! The same input gives the same bits on every machine; random numbers come from a seed in the arguments.
//! No result depends on the order in which a list was written.
//!
//! **Not here.** Units as people write them (`jointwright-units`), limits, rulings and words of any trade.
//!
//! **Source.** Each module names its sources; the formulas stand in `docs/theory/`.

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
