//! Canvas: shapes and texts of a page in picture points, the rectangles that they occupy, and the page as SVG.
//!
//! **Invariants.** No style sheet and no names, so that several pages may stand in one document.

use super::bounds::{Bounds, Place};
use crate::label::{escaped, shortened, wrapped};
use std::fmt::Write;

/// Width of a letter as a share of its size: more than the mean width in any text.
pub(crate) const LETTER: f64 = 0.6;
/// Width of a bold letter as a share of its size.
const BOLD_LETTER: f64 = 0.68;

/// Alignment of a text at its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Anchor {
    Start,
    Middle,
    End,
}

/// A text; its place is on its base line.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Words {
    pub(crate) at: Place,
    pub(crate) size: f64,
    pub(crate) anchor: Anchor,
    pub(crate) is_bold: bool,
    pub(crate) is_slanted: bool,
    /// Light letters, for a dark ground.
    pub(crate) is_light: bool,
    /// Ground around the letters, for a place on a picture.
    pub(crate) has_halo: bool,
    pub(crate) text: String,
}

impl Words {
    pub(crate) fn new(at: Place, size: f64, text: &str) -> Self {
        Self {
            at,
            size,
            anchor: Anchor::Start,
            is_bold: false,
            is_slanted: false,
            is_light: false,
            has_halo: false,
            text: text.to_owned(),
        }
    }

    pub(crate) fn anchored(self, anchor: Anchor) -> Self {
        Self { anchor, ..self }
    }

    pub(crate) fn bold(self) -> Self {
        Self {
            is_bold: true,
            ..self
        }
    }

    pub(crate) fn on_picture(self) -> Self {
        Self {
            has_halo: true,
            ..self
        }
    }

    /// Upper bound of its width.
    pub(crate) fn width(&self) -> f64 {
        let letter = if self.is_bold { BOLD_LETTER } else { LETTER };
        self.text.chars().count() as f64 * letter * self.size
    }

    /// Rectangle in which it is drawn.
    pub(crate) fn bounds(&self) -> Bounds {
        let width = self.width();
        let left = match self.anchor {
            Anchor::Start => self.at[0],
            Anchor::Middle => self.at[0] - 0.5 * width,
            Anchor::End => self.at[0] - width,
        };
        Bounds {
            left,
            top: self.at[1] - 0.8 * self.size,
            right: left + width,
            bottom: self.at[1] + 0.22 * self.size,
        }
    }

    fn svg(&self) -> String {
        let anchor = match self.anchor {
            Anchor::Start => "",
            Anchor::Middle => " text-anchor=\"middle\"",
            Anchor::End => " text-anchor=\"end\"",
        };
        let weight = if self.is_bold {
            " font-weight=\"bold\""
        } else {
            ""
        };
        let slant = if self.is_slanted {
            " font-style=\"italic\""
        } else {
            ""
        };
        let halo = if self.has_halo {
            " stroke=\"#fff\" stroke-width=\"3\" stroke-linejoin=\"round\" paint-order=\"stroke\""
        } else {
            ""
        };
        let fill = if self.is_light { "#fff" } else { "#111" };
        format!(
            "<text x=\"{:.1}\" y=\"{:.1}\" font-size=\"{}\" fill=\"{fill}\"{weight}{slant}{anchor}{halo}>{}</text>\n",
            self.at[0],
            self.at[1],
            self.size,
            escaped(&self.text)
        )
    }
}

/// A page.
#[derive(Debug, Default)]
pub(crate) struct Canvas {
    pub(crate) texts: Vec<Words>,
    /// Lines that no text may lie on.
    pub(crate) lines: Vec<[Place; 2]>,
    shapes: String,
    across: String,
    above: String,
    /// Height at which the next item goes.
    pub(crate) y: f64,
}

impl Canvas {
    /// Writes a text, wherever it is.
    pub(crate) fn text(&mut self, words: Words) {
        self.texts.push(words);
    }

    /// Writes a text unless its place is occupied; returns whether it was written.
    pub(crate) fn text_if_free(&mut self, words: Words, within: &Bounds) -> bool {
        let bounds = words.bounds().grown(1.0);
        let is_free = bounds.is_in(within) && self.is_free(&bounds);
        if is_free {
            self.texts.push(words);
        }
        is_free
    }

    /// Whether no text and no line lies there.
    pub(crate) fn is_free(&self, bounds: &Bounds) -> bool {
        self.texts.iter().all(|text| !text.bounds().meets(bounds))
            && self.lines.iter().all(|line| !bounds.is_crossed(*line))
    }

    /// Draws a shape: the element's name and attributes.
    pub(crate) fn shape(&mut self, element: &str) {
        // Writing to a text cannot fail.
        let _ = writeln!(self.shapes, "<{element}/>");
    }

    /// Draws a shape that the letters across the face do not cover.
    pub(crate) fn shape_above(&mut self, element: &str) {
        let _ = writeln!(self.above, "<{element}/>");
    }

    /// Draws a path with further attributes; nothing if the path is empty.
    pub(crate) fn path(&mut self, d: &str, more: &str) {
        if !d.is_empty() {
            self.shape(&format!("path {more} d=\"{d}\""));
        }
    }

    /// Draws a path that the letters across the face do not cover.
    pub(crate) fn path_above(&mut self, d: &str, more: &str) {
        if !d.is_empty() {
            self.shape_above(&format!("path {more} d=\"{d}\""));
        }
    }

    /// Writes large outlined letters across a part of the page, over its shading and below its curves.
    pub(crate) fn mark_across(&mut self, over: &Bounds, text: &str) {
        let text = shortened(text, 90);
        let lines = wrapped(&text, text.chars().count() / 2 + 6, 3);
        let [wide, high] = [over.right - over.left, over.bottom - over.top];
        let most = lines.iter().map(|line| line.chars().count()).max();
        let size = (0.95 * wide / (BOLD_LETTER * most.unwrap_or(1).max(1) as f64))
            .min(0.6 * high / lines.len().max(1) as f64);
        let [x, y] = [over.left + 0.5 * wide, over.top + 0.5 * high];
        let angle = -(0.45 * high).atan2(wide).to_degrees();
        // Light below dark, so that it is legible on every band and does not hide the lines below it.
        for (colour, width) in [
            ("#fff", (0.09 * size).max(2.6)),
            ("#b03a2e", (0.035 * size).max(1.0)),
        ] {
            let _ = writeln!(
                self.across,
                "<g transform=\"rotate({angle:.1} {x:.1} {y:.1})\" fill=\"none\" stroke=\"{colour}\" stroke-width=\"{width:.1}\" stroke-linejoin=\"round\" font-weight=\"bold\" text-anchor=\"middle\" font-size=\"{size:.1}\">"
            );
            for (n, line) in lines.iter().enumerate() {
                let down = (n as f64 - 0.5 * (lines.len() as f64 - 1.0)) * 1.4 * size + 0.36 * size;
                let _ = writeln!(
                    self.across,
                    "<text x=\"{x:.1}\" y=\"{:.1}\">{}</text>",
                    y + down,
                    escaped(line)
                );
            }
            self.across.push_str("</g>\n");
        }
    }

    /// The page as SVG, with a width in picture points and, for print, in millimetres.
    pub(crate) fn svg(&self, width: f64, width_mm: Option<f64>) -> String {
        let height = self.y.ceil();
        let size = match width_mm {
            Some(mm) => format!("width=\"{mm}mm\" height=\"{:.2}mm\"", mm * height / width),
            None => format!("width=\"{width}\" height=\"{height}\""),
        };
        let mut svg = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {height}\" {size} font-family=\"DejaVu Sans Condensed, DejaVu Sans, sans-serif\">\n\
             <rect width=\"{width}\" height=\"{height}\" fill=\"#fff\"/>\n"
        );
        svg.push_str(&self.shapes);
        svg.push_str(&self.across);
        svg.push_str(&self.above);
        for words in &self.texts {
            svg.push_str(&words.svg());
        }
        svg.push_str("</svg>\n");
        svg
    }
}
