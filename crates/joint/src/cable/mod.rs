//! Cables: the construction of a leg, the range of thickness of every layer, and whether the leg measures like its papers.
//!
//! Why its own room: least and greatest diameters decide a fit; they come from rows of standards, from the cable's own papers, or from memory, and here each keeps its source and its sureness.
//!
//! Invariants:
//! - Diameters are sums of whole nanometres.
//! - A missing row is an `Unknown` that names the missing fact, never a guess.
//! - The cable's own papers override the table.
//! - No result says which circuit a cable is or whether it is dead.
//!
//! Not here: readings and their instruments (`survey`), whether a part fits (`fit`), limits for rulings (`limit`).
//!
//! Source: rows under `data/cable/`, each with its own; formulas in `docs/theory/cable.md`.

mod band;
mod candidate;
mod construction;
mod layer;
mod papers;
mod resistance;
mod shield;
mod size;
mod sureness;
mod table;
mod unknown;
mod unlike;
mod wall;

pub use band::Band;
pub use candidate::{Candidate, candidates};
pub use construction::{Construction, Insulation};
pub use layer::{Layer, Words};
pub use papers::{
    Evidence, Lacking, Likeness, Near, compare, denied_by_papers, doubtful_layer, wrong_layer,
};
pub use resistance::{Basis, DcResistance};
pub use shield::{NeutralFraction, Shield, ShieldArea, ShieldKind, neutral_wires};
pub use size::{Conductor, Metal, Size, SizeError, Stranding, awg_wire_diameter};
pub use sureness::Sure;
pub use table::TABLE_TEXTS;
pub use unknown::Unknown;
pub use unlike::Unlike;
pub use wall::Wall;
