//! Sheet: texts, lines and shapes of a page in millimetres, and the page as SVG.

use super::paint::Paint;
use crate::label::{escaped, shortened, wrapped};
use std::fmt::Write;

/// Width of the page, mm.
pub(super) const WIDTH: f64 = 190.0;
/// Left edge of the drawing, mm.
pub(super) const LEFT: f64 = 4.0;
/// Right edge of the drawing, mm.
pub(super) const RIGHT: f64 = 186.0;
/// Least share of its size to which a text is made smaller.
const SMALLEST: f64 = 0.75;
/// Size of small texts, mm.
pub(super) const SMALL: f64 = 2.3;
/// Width of a letter as a share of its size: more than the mean width in any text.
pub(super) const LETTER: f64 = 0.6;

/// Alignment of a text at its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Anchor {
    Start,
    Middle,
    End,
}

/// A text at its place; `y` is its base line.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Words {
    pub(super) x_mm: f64,
    pub(super) y_mm: f64,
    pub(super) size_mm: f64,
    pub(super) is_bold: bool,
    pub(super) is_on_banner: bool,
    pub(super) anchor: Anchor,
    /// Row of its dimension.
    pub(super) row: Option<usize>,
    pub(super) text: String,
}

impl Words {
    pub(super) fn new(x_mm: f64, y_mm: f64, size_mm: f64, text: &str) -> Self {
        Self {
            x_mm,
            y_mm,
            size_mm,
            is_bold: false,
            is_on_banner: false,
            anchor: Anchor::Start,
            row: None,
            text: text.to_owned(),
        }
    }

    /// The same in room for so many letters of its size: a longer text gets smaller letters, and what is still too long is shortened.
    pub(super) fn fitted(self, n_letters: usize) -> Self {
        let n = self.text.chars().count();
        if n <= n_letters {
            return self;
        }
        let ratio = (n_letters as f64 / n as f64).max(SMALLEST);
        let most = (n_letters as f64 / ratio).floor() as usize;
        Self {
            size_mm: (100.0 * self.size_mm * ratio).floor() / 100.0,
            text: shortened(&self.text, most),
            ..self
        }
    }

    pub(super) fn bold(self) -> Self {
        Self {
            is_bold: true,
            ..self
        }
    }

    pub(super) fn anchored(self, anchor: Anchor) -> Self {
        Self { anchor, ..self }
    }

    pub(super) fn of_row(self, row: usize) -> Self {
        Self {
            row: Some(row),
            ..self
        }
    }

    /// Upper bound of its width, mm.
    pub(super) fn width_mm(&self) -> f64 {
        self.text.chars().count() as f64 * LETTER * self.size_mm
    }

    /// Left, top, right and bottom, mm.
    #[cfg(test)]
    pub(super) fn bounds_mm(&self) -> [f64; 4] {
        let width = self.width_mm();
        let left = match self.anchor {
            Anchor::Start => self.x_mm,
            Anchor::Middle => self.x_mm - 0.5 * width,
            Anchor::End => self.x_mm - width,
        };
        [
            left,
            self.y_mm - 0.8 * self.size_mm,
            left + width,
            self.y_mm + 0.22 * self.size_mm,
        ]
    }
}

/// Purpose of a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Role {
    /// Part of the dimension of this row.
    Dimension(usize),
    /// Line from a plane down to its row.
    Extension(usize),
    /// Line from a layer or part to its name.
    Leader,
    /// The datum.
    Datum,
    /// Line between the texts of two rows.
    Rule,
}

/// A straight line.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Stroke {
    pub(super) from_mm: [f64; 2],
    pub(super) to_mm: [f64; 2],
    pub(super) width_mm: f64,
    pub(super) dashes: &'static str,
    pub(super) role: Role,
}

/// A page.
pub(super) struct Sheet {
    pub(super) paint: Paint,
    pub(super) height: f64,
    pub(super) texts: Vec<Words>,
    pub(super) strokes: Vec<Stroke>,
    shapes: String,
    across: Option<String>,
    /// Left, top and bottom of the numbers, mm: nothing may be drawn over them.
    pub(super) numbers_mm: Option<[f64; 3]>,
}

impl Sheet {
    pub(super) fn new(paint: Paint) -> Self {
        Self {
            paint,
            height: 0.0,
            texts: Vec::new(),
            strokes: Vec::new(),
            shapes: String::new(),
            across: None,
            numbers_mm: None,
        }
    }

    pub(super) fn text(&mut self, words: Words) {
        self.texts.push(words);
    }

    pub(super) fn stroke(&mut self, from: [f64; 2], to: [f64; 2], width: f64, role: Role) {
        self.dashed(from, to, width, "", role);
    }

    pub(super) fn dashed(
        &mut self,
        from_mm: [f64; 2],
        to_mm: [f64; 2],
        width_mm: f64,
        dashes: &'static str,
        role: Role,
    ) {
        self.strokes.push(Stroke {
            from_mm,
            to_mm,
            width_mm,
            dashes,
            role,
        });
    }

    /// Draws a rectangle from left top to right bottom, with a fill, mm.
    pub(super) fn rectangle(&mut self, [x, y, right, bottom]: [f64; 4], fill: &str, width: f64) {
        let (wide, high) = ((right - x).max(0.05), (bottom - y).max(0.05));
        // Writing to a text cannot fail.
        let _ = writeln!(
            self.shapes,
            "<rect x=\"{x:.2}\" y=\"{y:.2}\" width=\"{wide:.2}\" height=\"{high:.2}\" fill=\"{fill}\" stroke=\"{}\" stroke-width=\"{width}\"/>",
            self.paint.ink
        );
    }

    /// Draws a path with further attributes.
    pub(super) fn path(&mut self, d: &str, more: &str) {
        let _ = writeln!(self.shapes, "<path d=\"{d}\" {more}/>");
    }

    /// Writes the text that must be read before anything else.
    pub(super) fn banner(&mut self, y: f64, text: &str) {
        let fill = self.paint.ink;
        self.rectangle([LEFT, y, RIGHT, y + 5.0], fill, 0.2);
        let words = Words::new(0.5 * WIDTH, y + 3.6, 3.2, text).bold();
        self.text(Words {
            anchor: Anchor::Middle,
            is_on_banner: true,
            ..words
        });
    }

    /// Writes large outlined letters across the face.
    pub(super) fn mark_across(&mut self, text: &str) {
        let text = shortened(text, 90);
        let lines = wrapped(&text, text.chars().count() / 2 + 6, 3);
        let most = lines.iter().map(|line| line.chars().count()).max();
        let size = (0.83 * WIDTH / (1.1 * LETTER * most.unwrap_or(1).max(1) as f64)).min(16.0);
        // Left of the middle, where there are fewer numbers.
        let [x, y] = [0.415 * WIDTH, 0.58 * self.height];
        let angle = -(0.7 * self.height).atan2(WIDTH).to_degrees();
        let mut across = format!(
            "<g transform=\"rotate({angle:.1} {x:.1} {y:.1})\" fill=\"none\" stroke=\"{}\" stroke-width=\"0.15\" font-weight=\"bold\" text-anchor=\"middle\" font-size=\"{size:.1}\">\n",
            self.paint.mark
        );
        for (n, line) in lines.iter().enumerate() {
            let down = (n as f64 - 0.5 * (lines.len() as f64 - 1.0)) * 1.8 * size + 0.36 * size;
            let _ = writeln!(
                across,
                "<text x=\"{x:.1}\" y=\"{:.1}\">{}</text>",
                y + down,
                escaped(line)
            );
        }
        across.push_str("</g>\n");
        if let Some([left, top, bottom]) = self.numbers_mm {
            // A line of a letter beside a digit could be read as part of the digit.
            let (own, height) = (self.paint.name("clip"), self.height);
            across = format!(
                "<clipPath id=\"{own}\"><path d=\"M0 0H{WIDTH}V{top:.2}H{left:.2}V{bottom:.2}H{WIDTH}V{height}H0Z\"/></clipPath>\n<g clip-path=\"url(#{own})\">\n{across}</g>\n"
            );
        }
        self.across = Some(across);
    }

    /// The page as SVG.
    pub(super) fn svg(&self) -> String {
        let (height, paint) = (self.height, &self.paint);
        let mut svg = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{WIDTH}mm\" height=\"{height}mm\" viewBox=\"0 0 {WIDTH} {height}\" font-family=\"DejaVu Sans Condensed, DejaVu Sans, sans-serif\">\n"
        );
        svg.push_str(&paint.patterns());
        let _ = writeln!(
            svg,
            "<rect width=\"{WIDTH}\" height=\"{height}\" fill=\"{}\"/>",
            paint.paper
        );
        svg.push_str(&self.shapes);
        for stroke in &self.strokes {
            let ([x1, y1], [x2, y2]) = (stroke.from_mm, stroke.to_mm);
            let dashes = match stroke.dashes {
                "" => String::new(),
                dashes => format!(" stroke-dasharray=\"{dashes}\""),
            };
            let _ = writeln!(
                svg,
                "<line x1=\"{x1:.2}\" y1=\"{y1:.2}\" x2=\"{x2:.2}\" y2=\"{y2:.2}\" stroke=\"{}\" stroke-width=\"{}\"{dashes}/>",
                paint.ink, stroke.width_mm
            );
        }
        svg.push_str(self.across.as_deref().unwrap_or_default());
        for words in &self.texts {
            svg.push_str(&written(words, paint));
        }
        svg.push_str("</svg>\n");
        svg
    }
}

/// A text as SVG.
fn written(words: &Words, paint: &Paint) -> String {
    let anchor = match words.anchor {
        Anchor::Start => "",
        Anchor::Middle => " text-anchor=\"middle\"",
        Anchor::End => " text-anchor=\"end\"",
    };
    let weight = if words.is_bold {
        " font-weight=\"bold\""
    } else {
        ""
    };
    let fill = if words.is_on_banner {
        paint.paper
    } else {
        paint.ink
    };
    // Ground around the letters, so that lines behind them never look like part of a number.
    let has_halo = words.row.is_some() || (words.is_bold && !words.is_on_banner);
    let halo = match has_halo {
        true => format!(
            " stroke=\"{}\" stroke-width=\"0.7\" stroke-linejoin=\"round\" paint-order=\"stroke\"",
            paint.paper
        ),
        false => String::new(),
    };
    format!(
        "<text x=\"{:.2}\" y=\"{:.2}\" font-size=\"{}\" fill=\"{fill}\"{weight}{anchor}{halo}>{}</text>\n",
        words.x_mm,
        words.y_mm,
        words.size_mm,
        escaped(&words.text)
    )
}
