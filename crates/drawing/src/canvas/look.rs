//! Look: fill and line of a shape, and the colours that all pictures share.

use std::borrow::Cow;

/// Colour of letters and curves.
pub(crate) const INK: &str = "#111";
/// Colour of the ground.
pub(crate) const PAPER: &str = "#fff";
/// Black, for crosses, conductors and papers to cut along.
pub(crate) const BLACK: &str = "#000";
/// Colour of the outlines of parts.
pub(crate) const OUTLINE: &str = "#222";
/// Colour of axes and frames.
pub(crate) const FRAME: &str = "#444";
/// Colour of the lines of a scale behind curves.
pub(crate) const GRID: &str = "#ccc";
/// Colour of equipotential lines.
pub(crate) const EQUIPOTENTIAL: &str = "#123a5e";
/// Colour of the letters that say across a light page that its data are invented.
pub(crate) const INVENTED: &str = "#b03a2e";

/// A colour, or the name of a hatching.
type Colour = Cow<'static, str>;

/// Fill and line of a shape.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Look {
    pub(super) fill: Colour,
    pub(super) line: Option<(Colour, f64)>,
    pub(super) is_round: bool,
    /// Lengths of strokes and gaps; empty for a full line.
    pub(super) dashes: &'static str,
    pub(super) opacity: Option<f64>,
}

impl Look {
    /// Area without a line.
    pub(crate) fn filled(fill: impl Into<Colour>) -> Self {
        Self {
            fill: fill.into(),
            line: None,
            is_round: false,
            dashes: "",
            opacity: None,
        }
    }

    /// Line without an area.
    pub(crate) fn line(colour: impl Into<Colour>, width: f64) -> Self {
        Self::filled("none").edged(colour, width)
    }

    /// The same with a line.
    pub(crate) fn edged(self, colour: impl Into<Colour>, width: f64) -> Self {
        Self {
            line: Some((colour.into(), width)),
            ..self
        }
    }

    /// The same with round corners of its line.
    pub(crate) fn round(self) -> Self {
        Self {
            is_round: true,
            ..self
        }
    }

    pub(crate) fn dashed(self, dashes: &'static str) -> Self {
        Self { dashes, ..self }
    }

    /// The same with a line that lets through what is below it.
    pub(crate) fn faint(self, opacity: f64) -> Self {
        Self {
            opacity: Some(opacity),
            ..self
        }
    }
}
