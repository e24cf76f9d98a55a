//! Cables: what a leg is made of, how thick every layer may be, and whether the leg measures like its papers.
//!
//! Why its own room: a fit is decided by least and greatest diameters, and those come from rows of standards, from the cable's own papers, or from memory; here each keeps its source and how sure it is.
//!
//! Invariants: diameters are sums of whole nanometres; a missing row is an `Unknown` that says what is missing, never a guess; what the cable's own papers state overrides the table; nothing here says which circuit a cable is or whether it is dead.
//!
//! Not here: readings and their instruments (`survey`), whether a part fits (`fit`), limits for rulings (`limit`).
//!
//! Source: rows under `data/cable/`, each with its own; formulas in `docs/theory/cable.md`.

mod candidate;
mod construction;
mod layer;
mod papers;
mod printed;
mod resistance;
mod shield;
mod size;
mod sure;
mod table;
mod unlike;

pub use candidate::{Candidate, candidates};
pub use construction::{Band, Construction, Insulation, Unknown, Wall};
pub use layer::{Layer, Words};
pub use papers::{
    Evidence, Lacking, Likeness, Near, compare, denied_by_papers, doubtful_layer, wrong_layer,
};
pub use resistance::{Basis, DcResistance};
pub use shield::{NeutralFraction, Shield, ShieldArea, ShieldKind, neutral_wires};
pub use size::{Conductor, Metal, Size, SizeError, Stranding, awg_wire_diameter};
pub use sure::Sure;
pub use table::TABLE_TEXTS;
pub use unlike::Unlike;
