//! Page: the picture as it grows, with the box of every text and the course of every line, so that a test can see what meets what.

use crate::label::escaped;
use std::fmt::Write;

/// Greatest width of a letter over its size.
const LETTER: f64 = 0.62;

/// A box on paper: left, top, right, bottom, mm.
pub(crate) type Rect = [f64; 4];

/// How a picture is coloured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Ink {
    pub(crate) paper: &'static str,
    pub(crate) line: &'static str,
    /// Fill of jacket and rubber.
    pub(crate) grey: &'static str,
}

/// The picture. Writing to a text cannot fail.
#[derive(Debug)]
pub(crate) struct Page {
    pub(crate) body: String,
    pub(crate) ink: Ink,
    /// Boxes of the texts that must stay readable.
    pub(crate) texts: Vec<(Rect, String)>,
    /// Dimension and extension lines.
    pub(crate) lines: Vec<Rect>,
}

/// Width that a text takes at most, mm.
pub(crate) fn width_of(text: &str, size: f64) -> f64 {
    LETTER * size * text.chars().count() as f64
}

impl Page {
    pub(crate) fn new(ink: Ink) -> Page {
        Page {
            body: String::new(),
            ink,
            texts: Vec::new(),
            lines: Vec::new(),
        }
    }

    /// Text with its base line at a place.
    pub(crate) fn text(&mut self, [x, y]: [f64; 2], size: f64, is_bold: bool, text: &str) {
        let weight = if is_bold { "bold" } else { "normal" };
        let _ = writeln!(
            self.body,
            "<text x=\"{x:.3}\" y=\"{y:.3}\" font-size=\"{size}\" font-weight=\"{weight}\" fill=\"{}\">{}</text>",
            self.ink.line,
            escaped(text)
        );
        let rect = [x, y - 0.8 * size, x + width_of(text, size), y + 0.25 * size];
        self.texts.push((rect, text.to_owned()));
    }

    pub(crate) fn line(&mut self, from: [f64; 2], to: [f64; 2], width: f64, dash: &str) {
        let dash = if dash.is_empty() {
            String::new()
        } else {
            format!(" stroke-dasharray=\"{dash}\"")
        };
        let _ = writeln!(
            self.body,
            "<line x1=\"{:.3}\" y1=\"{:.3}\" x2=\"{:.3}\" y2=\"{:.3}\" stroke=\"{}\" stroke-width=\"{width}\"{dash}/>",
            from[0], from[1], to[0], to[1], self.ink.line
        );
    }

    /// A line of a dimension, which no text may lie on.
    pub(crate) fn dimension_line(&mut self, from: [f64; 2], to: [f64; 2], width: f64, dash: &str) {
        self.line(from, to, width, dash);
        self.lines.push([
            from[0].min(to[0]),
            from[1].min(to[1]),
            from[0].max(to[0]),
            from[1].max(to[1]),
        ]);
    }

    /// A rectangle by two corners.
    pub(crate) fn rect(&mut self, [left, top, right, bottom]: Rect, fill: &str, dash: &str) {
        let dash = if dash.is_empty() {
            String::new()
        } else {
            format!(" stroke-dasharray=\"{dash}\"")
        };
        let _ = writeln!(
            self.body,
            "<rect x=\"{left:.3}\" y=\"{top:.3}\" width=\"{:.3}\" height=\"{:.3}\" fill=\"{fill}\" stroke=\"{}\" stroke-width=\"0.2\"{dash}/>",
            (right - left).max(0.0),
            (bottom - top).max(0.0),
            self.ink.line
        );
    }

    /// An arrow head with its tip at a place, pointing to the right (1) or the left (-1).
    pub(crate) fn arrow(&mut self, [x, y]: [f64; 2], way: f64) {
        let _ = writeln!(
            self.body,
            "<path d=\"M {x:.3} {y:.3} l {:.3} -0.7 l 0 1.4 Z\" fill=\"{}\"/>",
            -1.8 * way,
            self.ink.line
        );
    }

    /// Double line of a break, from the axis up.
    pub(crate) fn broken(&mut self, x: f64, top: f64, bottom: f64) {
        let (paper, line) = (self.ink.paper, self.ink.line);
        let middle = 0.5 * (top + bottom);
        let _ = writeln!(
            self.body,
            "<path d=\"M {0:.3} {top:.3} L {1:.3} {middle:.3} L {0:.3} {bottom:.3} L {2:.3} {bottom:.3} L {3:.3} {middle:.3} L {2:.3} {top:.3} Z\" fill=\"{paper}\" stroke=\"none\"/>",
            x - 1.0,
            x - 0.2,
            x + 1.0,
            x + 1.8
        );
        for at in [x - 1.0, x + 1.0] {
            let _ = writeln!(
                self.body,
                "<path d=\"M {at:.3} {top:.3} L {:.3} {middle:.3} L {at:.3} {bottom:.3}\" fill=\"none\" stroke=\"{line}\" stroke-width=\"0.25\"/>",
                at + 0.8
            );
        }
    }

    /// The whole picture, `height` mm high, with the mark of invented data across its face.
    pub(crate) fn whole(self, width: f64, height: f64, invented: Option<&str>) -> String {
        let Ink { paper, line, grey } = self.ink;
        let mut svg = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}mm\" height=\"{height:.3}mm\" viewBox=\"0 0 {width} {height:.3}\" font-family=\"DejaVu Sans Condensed, DejaVu Sans, sans-serif\">\n<defs>\n"
        );
        for (name, path) in [
            ("metal", "M 0 1.2 L 1.2 0"),
            ("tape", "M 0 0 L 1.2 1.2 M 0 1.2 L 1.2 0"),
            ("window", "M 0 0 L 1.2 1.2"),
        ] {
            let _ = writeln!(
                svg,
                "<pattern id=\"{name}\" width=\"1.2\" height=\"1.2\" patternUnits=\"userSpaceOnUse\"><rect width=\"1.2\" height=\"1.2\" fill=\"{paper}\"/><path d=\"{path}\" stroke=\"{line}\" stroke-width=\"0.15\"/></pattern>"
            );
        }
        let _ = writeln!(
            svg,
            "<pattern id=\"grey\" width=\"1\" height=\"1\" patternUnits=\"userSpaceOnUse\"><rect width=\"1\" height=\"1\" fill=\"{grey}\"/><circle cx=\"0.5\" cy=\"0.5\" r=\"0.14\" fill=\"{line}\"/></pattern>\n</defs>\n<rect width=\"{width}\" height=\"{height:.3}\" fill=\"{paper}\"/>"
        );
        if let Some(invented) = invented {
            svg.push_str(&across(invented, width, height, line));
        }
        svg.push_str(&self.body);
        svg.push_str("</svg>\n");
        svg
    }
}

/// The mark across the face, in outline.
fn across(invented: &str, width: f64, height: f64, line: &str) -> String {
    // Left of the column of numbers.
    let length = 0.66 * width;
    let size = (length / (0.66 * invented.chars().count().max(1) as f64)).min(8.0);
    let turn = -(height / width).atan().to_degrees() * 0.6;
    format!(
        "<text x=\"{0:.3}\" y=\"{1:.3}\" font-size=\"{size:.3}\" font-weight=\"bold\" text-anchor=\"middle\" fill=\"none\" stroke=\"{line}\" stroke-width=\"0.15\" transform=\"rotate({turn:.2} {0:.3} {1:.3})\">{2}</text>\n",
        0.38 * width,
        0.66 * height,
        escaped(invented)
    )
}
