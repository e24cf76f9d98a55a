//! Built: readings as built, each beside the window that somebody with authority set for it.
//!
//! Why its own room: a crew that reads 0.3 mm under needs one answer before it goes on: in the window, or stop and ask, and on whose word.
//!
//! Invariants:
//! - A reading is in its window only if its own error leaves no doubt.
//! - A reading for which nobody sets a window is never in a window.
//! - A slot without a reading is named; nothing is assumed for it.
//! - Readings are compared with the plan that the crew had, and with no other.
//!
//! Not here: the windows (`programme`, `cutback`), the decision of a named person.

mod blank;
mod bounds;
mod document;
mod finding;
mod reading;
mod shape;
mod words;

pub use blank::blank;
pub use document::{FORMAT, FindingDoc, Findings, findings, schema};
pub use finding::{Finding, FindingKind};
pub use reading::{Built, BuiltReading, Found, read_built};
pub use shape::READINGS;
