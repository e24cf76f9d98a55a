//! Paper: the make-up sheet as PDF, made from the plan alone.
//!
//! **What.** [`make_up_sheet`]: front pages, one side an end; marking strips at full size; figures, material, steps, rulings and sign-off behind them.
//!
//! **Why separate.** Setting type is not the trade's business: the plan document holds every number and word, and this room only places them. It is also the one room that does not compile for a browser.
//!
//! **Invariants.** The same bytes for the same plan; the date is the job's.
//! Every number is a text of the plan, so figure, table and plan.json cannot differ.
//! Where a ruling fails no number to cut to is printed, and no strip.
//! Everything made with invented data says so across every page, and nothing turns that off.
//!
//! **Not here.** Files, clocks, any rule of the trade.

mod clip;
mod front;
mod sheet;
mod world;

pub use world::PaperError;

use jointwright_joint::plan::Plan;

/// A small picture of one leg's field, for the back of the sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct FieldPicture {
    /// Leg.
    pub leg: String,
    /// The picture, as SVG.
    pub svg: String,
}

/// The make-up sheet of a plan: a tagged PDF/A-2a with its fonts inside; `fields` are pictures of the legs' fields.
///
/// # Errors
/// Message of the typesetter, if a page cannot be set: a fault of the program, not of the job.
pub fn make_up_sheet(plan: &Plan, fields: &[FieldPicture]) -> Result<Vec<u8>, PaperError> {
    let sheet = sheet::sheet(plan, fields);
    world::pdf(&sheet, &plan.job.id, &plan.job.date_parts())
}
