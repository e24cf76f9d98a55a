//! Printed: diameters and bounds as the crew of a job reads them: inches first with millimetres beside, or millimetres alone.
//!
//! Invariants: nothing printed lies outside of what it prints; one place, so that page, sentence and letter print one text.
//!
//! Not here: marks and windows, whose ticks are chosen where they are placed.

use super::Words;
use jointwright_units::{Interval, Length, Toward, bound_text, range_text};

impl Words {
    /// A range of diameters, rounded inward: `0.830 to 1.220 in (21.09 to 30.98 mm)`.
    pub fn diameters(self, range: Interval) -> String {
        let text = range_text(range);
        let mm = format!("{} to {} mm", text.mm.0, text.mm.1);
        match self {
            Words::Us if !text.inch.0.is_empty() => {
                format!("{} to {} in ({mm})", text.inch.0, text.inch.1)
            }
            _ => mm,
        }
    }

    /// A bound, rounded to the side that is permitted.
    pub fn bound(self, bound: Length, toward: Toward) -> String {
        match self {
            Words::Us => bound_text(bound, toward),
            Words::Iec => bound.to_string(),
        }
    }
}
