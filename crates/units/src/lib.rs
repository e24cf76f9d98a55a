//! Lengths and quantities: their types, how people write them, and how they are printed.
//!
//! Why its own room: a tape is read in sixteenths of an inch, a calliper in tenths of a millimetre, and 7 1/16 in misread as 7.16 in is a failed joint.
//! A length is therefore a whole number of nanometres from the moment it is read, and the project's only conversion factors stand here.
//!
//! Invariants: 1/64 in is exactly 396 875 nm; only the printers whose names say so round; no I/O.
//!
//! Not here: the object that a length belongs to, and whether the length is right.

mod interval;
mod length;
mod length_error;
mod mark;
mod parse;
mod print;
mod quantity;
mod quantity_error;
mod quote;
mod station;

pub use interval::Interval;
pub use length::Length;
pub use length_error::LengthError;
pub use mark::{
    Gauge, Mark, RangeText, Tick, Toward, Window, WindowText, bound_mm_text, bound_text, mark,
    metric_mark, metric_middle_mark, middle_mark, mm_beside, range_text, window_text,
};
pub use quantity::{
    Area, Current, Frequency, Resistance, ResistancePerLength, Seconds, Temperature, Torque,
    VoltagePeak, VoltageRms,
};
pub use quantity_error::QuantityError;
pub use station::Station;
