//! Form: how files that people write are read, and what is said when something in them is wrong.
//!
//! Why its own room: a crew that mends one mistake and is then shown the next is a crew that gives up.
//! So a file is walked from one static table of fields ([`Shape`]), every complaint is found in one run, and the JSON Schema comes from the same table.
//!
//! Invariants: reading never panics and never stops at the first complaint; every complaint has a line and a column; the order of keys and the comments change nothing.
//!
//! Not here: what a field means (`job`, `catalogue`), and any file access (the doors pass texts).

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
pub use shape::{Field, Kind, Measure, Need, Shape};
pub use source::{Complaint, Complaints, Source, Span};
pub use walk::read;
