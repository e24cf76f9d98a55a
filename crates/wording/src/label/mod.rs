//! Label: texts of pages, papers and pictures that are no messages of the core: titles, heads of columns, blanks.
//!
//! Why not in `joint::said`: a title belongs to one page of one door, and no plan holds it.
//!
//! Invariants: one enum a page or a picture, whole phrases with typed arguments; a label without a text in every language does not compile.

mod ask_page;
mod cable_rate_page;
mod chart;
mod cut;
mod ends;
mod field_page;
mod field_picture;
mod fixed;
mod front;
mod half_section;
mod judge_page;
mod mark;
mod page;
mod plan_leg;
mod plan_ruling;
mod rate_page;
mod ruling;
mod sheet;
mod sheet_text;
mod strip;

pub use ask_page::AskPageLabel;
pub use cable_rate_page::{CableRatePageLabel, StretchLabel};
pub use chart::ChartLabel;
pub use cut::CutLabel;
pub use ends::EndsLabel;
pub use field_page::{FieldPageLabel, FieldTableLabel};
pub use field_picture::{FieldLabel, FieldLegend, Potential};
pub use front::{FrontLabel, PartLabel};
pub use half_section::HalfSectionLabel;
pub use judge_page::JudgePageLabel;
pub use mark::MarkLabel;
pub use page::PageLabel;
pub use plan_leg::{LegCutLabel, LegLine, LegStop, PlanLegLabel};
pub use plan_ruling::PlanRulingLabel;
pub use rate_page::{GovernsLabel, LastingLabel, LoadsLabel, RatePageLabel};
pub use ruling::RulingLabel;
pub use sheet::SheetLabel;
pub use sheet_text::SheetText;
pub use strip::StripLabel;

use crate::Tongue;

/// Text that a door prints and that is no message of the core.
pub trait Label {
    /// Its text in a tongue.
    fn text(&self, tongue: Tongue) -> String;
}
