//! Knowledge of the trade, in working order: cables, parts, the job, measurements, fit, cutbacks, checks, rulings.
//!
//! Why its own room: the same knowledge runs in the terminal, on the office server and in the browser of a phone in the pit.
//! So it is pure: texts, dates and seeds are arguments.
//!
//! Invariants: a missing input is never a pass; a computed result only tightens what the instructions allow; nothing here says that anything is safe to cut, touch or energise.
//!
//! Not here: files, clocks, printing (the doors), and mathematics without trade words (`jointwright-numerics`).

pub mod ask;
pub mod built;
pub mod cable;
pub mod catalogue;
pub mod checks;
pub mod critic;
pub mod cutback;
pub mod end;
pub mod fault;
mod file_words;
pub mod fingerprint;
pub mod fit;
pub mod form;
pub mod job;
pub mod judge;
pub mod limit;
pub mod material;
pub mod model;
pub mod plan;
pub mod plane;
pub mod pressure;
pub mod programme;
pub mod said;
pub mod section;
pub mod shielding;
pub mod slot;
pub mod stage;
pub mod study;
pub mod survey;
pub mod underlay;
pub mod warm;
