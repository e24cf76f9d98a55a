//! Form: reading of files that people write, and complaints about everything wrong in them.
//!
//! Why its own room: a crew gives up if it mends one mistake and is then shown the next.
//! So a file is read against one static table of fields ([`Shape`]), one run finds every complaint, and the JSON Schema comes from the same table.
//!
//! Invariants: reading never panics and never stops at the first complaint.
//! Every complaint has a line and a column.
//! The order of keys and the comments change nothing.
//!
//! Not here: the meaning of a field (`job`, `catalogue`), and access to files (the doors pass texts).

mod csv;
mod record;
mod schema;
mod shape;
mod source;
pub mod spoken;
mod walk;

pub use csv::read_csv;
pub use record::{Item, Record, Value};
pub use schema::json_schema;
pub use shape::{Field, Kind, Measure, Need, Shape, field};
pub use source::{Complaint, Complaints, Source, Span};
pub use walk::read;
