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
mod ends;
mod enter;
mod finding;
mod phase_doc;
mod reading;
mod shape;
mod way;
mod way_doc;
mod words;

pub use blank::blank;
pub use document::{FORMAT, FindingDoc, Findings, findings, findings_of_ends, schema};
pub use ends::{Change, Ends, PhaseAsBuilt};
pub use enter::{entered, enters};
pub use finding::{Finding, FindingKind};
pub use phase_doc::{ChangeDoc, PhaseDoc};
pub use reading::{Built, BuiltReading, Decision, Found, read_built};
pub use shape::READINGS;
pub use way::{WayBack, Ways};
pub use way_doc::{WayDoc, WaysDoc};
