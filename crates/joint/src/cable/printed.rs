//! Printed: diameters and bounds as the crew of a job reads them: inches first with millimetres beside, or millimetres alone.
//!
//! Invariants: the printed range never lies outside the exact one; page, sentence and letter print one text, made in one place.
//!
//! Not here: marks and windows; the room that places them chooses their ticks.

use super::Words;
use jointwright_units::{Gauge, Interval, Length, Toward, bound_mm_text, bound_text, range_text};

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

    /// A diameter, or a difference of two, rounded to one side: `0.012 in (0.3 mm)`.
    pub fn diameter(self, diameter: Length, toward: Toward) -> String {
        self.read_with(Gauge::Calliper, diameter, toward)
    }

    /// A length along the cable, read with a rule and rounded to one side: `2 61/64 in (75.0 mm)`.
    pub fn along(self, length: Length, toward: Toward) -> String {
        self.read_with(Gauge::Rule, length, toward)
    }

    fn read_with(self, gauge: Gauge, length: Length, toward: Toward) -> String {
        match self {
            Words::Us => bound_text(length, toward, gauge),
            Words::Iec => bound_mm_text(length, toward),
        }
    }
}
