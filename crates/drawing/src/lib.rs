//! Pictures, as SVG.
//!
//! **What.**
//! - [`field_picture`]: the field of a section, shaded by its strength, with equipotential lines.
//! - [`field_sheet()`]: the field of one end with the strength along its interface.
//! - [`half_section`]: one leg as made up, with dimensions.
//! - [`strips`]: the cuts and marks of one end, at full size.
//! - [`along_axis`], [`emergency_against_time`]: the temperatures of a joint under load.
//!
//! **Why separate.** A picture shows computed results; nothing is computed with it.
//!
//! **Invariants.** Pure: the input goes in and a text comes out, the same text for the same input.
//! Nothing is said by colour alone, and the text is SVG for any input.
//! Size does not grow with the mesh: places are rounded to a tenth of a picture point, and equal lines are drawn once.
//!
//! **Not here.** Files, units as people write them, any judgement.

mod band;
mod canvas;
mod colour;
mod equipotential;
mod field_sheet;
mod frame;
mod half_section;
mod label;
mod leg_field;
mod level;
mod line_chart;
mod load;
mod picture;
#[cfg(test)]
mod picture_tests;
mod strip;
mod trace;

pub use field_sheet::{Banner, Curve, FieldSheet, Peak, field_sheet, field_strip};
pub use half_section::{Style, Theme, half_section};
pub use leg_field::{LegField, leg_field};
pub use load::{along_axis, emergency_against_time};
pub use picture::{Caption, Mark, field_picture};
pub use strip::{Strip, strips};
