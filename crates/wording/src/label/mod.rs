//! Label: texts of pages, papers and pictures that are no messages of the core: titles, heads of columns, blanks.
//!
//! Why not in `joint::said`: a title belongs to one page of one door, and no plan holds it.
//!
//! Invariants: one enum a page or a picture, whole phrases with typed arguments; a label without a text in every language does not compile.

mod cut;
mod fixed;
mod front;
mod ruling;
mod sheet;
mod sheet_text;

pub use cut::CutLabel;
pub use front::{FrontLabel, PartLabel};
pub use ruling::RulingLabel;
pub use sheet::SheetLabel;
pub use sheet_text::SheetText;

use crate::Tongue;

/// Text that a door prints and that is no message of the core.
pub trait Label {
    /// Its text in a tongue.
    fn text(&self, tongue: Tongue) -> String;
}
