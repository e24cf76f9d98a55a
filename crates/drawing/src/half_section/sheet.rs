//! Sheet: texts, lines and shapes of a page in millimetres, with what each text and line belongs to.

use super::paint::Paint;
use crate::canvas::{Across, Anchor, Bounds, Canvas, Element, Look, Page, Place, Trail, Words};
use crate::label::shortened;

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
/// Width of a letter as a share of its size, bold or not: more than the mean width in any text.
const LETTER: f64 = crate::canvas::LETTER;
/// Width of the ground around a number or a bold text, mm.
const HALO: f64 = 0.7;

/// Upper bound of a text's width, mm.
pub(super) fn width_mm(words: &Words) -> f64 {
    words.width_at(LETTER)
}

/// The same text in room for so many letters of its size: a longer text gets smaller letters, and what is still too long is shortened.
pub(super) fn fitted(words: Words, n_letters: usize) -> Words {
    let n = words.text.chars().count();
    if n <= n_letters {
        return words;
    }
    let ratio = (n_letters as f64 / n as f64).max(SMALLEST);
    let most = (n_letters as f64 / ratio).floor() as usize;
    Words {
        size: (100.0 * words.size * ratio).floor() / 100.0,
        text: shortened(&words.text, most),
        ..words
    }
}

/// A text, and the row of its dimension.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Label {
    pub(super) words: Words,
    pub(super) row: Option<usize>,
}

impl Label {
    /// Rectangle in which it is drawn, mm.
    #[cfg(test)]
    pub(super) fn bounds(&self) -> Bounds {
        self.words.bounds_at(width_mm(&self.words))
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
    pub(super) from_mm: Place,
    pub(super) to_mm: Place,
    pub(super) width_mm: f64,
    pub(super) dashes: &'static str,
    pub(super) role: Role,
}

/// A page.
pub(super) struct Sheet {
    pub(super) paint: Paint,
    pub(super) height: f64,
    pub(super) texts: Vec<Label>,
    pub(super) strokes: Vec<Stroke>,
    shapes: Vec<Element>,
    across: Vec<Element>,
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
            shapes: Vec::new(),
            across: Vec::new(),
            numbers_mm: None,
        }
    }

    pub(super) fn text(&mut self, words: Words) {
        let words = words.inked(self.paint.ink);
        let words = if words.is_bold {
            words.on_ground(self.paint.paper, HALO)
        } else {
            words
        };
        self.texts.push(Label { words, row: None });
    }

    pub(super) fn text_of_row(&mut self, row: usize, words: Words) {
        let words = words.inked(self.paint.ink);
        self.texts.push(Label {
            words: words.on_ground(self.paint.paper, HALO),
            row: Some(row),
        });
    }

    pub(super) fn stroke(&mut self, from: Place, to: Place, width: f64, role: Role) {
        self.dashed(from, to, width, "", role);
    }

    pub(super) fn dashed(
        &mut self,
        from_mm: Place,
        to_mm: Place,
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
        let size = [(right - x).max(0.05), (bottom - y).max(0.05)];
        let look = Look::filled(fill.to_owned()).edged(self.paint.ink, width);
        let rectangle = Element::rectangle(&Bounds::new([x, y], size));
        self.shapes.push(rectangle.drawn(&look));
    }

    pub(super) fn trail(&mut self, trail: Trail, look: &Look) {
        self.shapes.push(Element::trail(trail, look));
    }

    /// Writes the text that must be read before anything else.
    pub(super) fn banner(&mut self, y: f64, text: &str) {
        let fill = self.paint.ink;
        self.rectangle([LEFT, y, RIGHT, y + 5.0], fill, 0.2);
        let words = Words::new([0.5 * WIDTH, y + 3.6], 3.2, text).bold();
        self.texts.push(Label {
            words: words.anchored(Anchor::Middle).inked(self.paint.paper),
            row: None,
        });
    }

    /// Writes large outlined letters across the face.
    pub(super) fn mark_across(&mut self, text: &str) {
        let lines = Across::lines(text);
        let size = (0.83 * WIDTH / (1.1 * LETTER * Across::longest(&lines))).min(16.0);
        let across = Across {
            lines,
            // Left of the middle, where there are fewer numbers.
            at: [0.415 * WIDTH, 0.58 * self.height],
            anchor: Anchor::Middle,
            turn_deg: -(0.7 * self.height).atan2(WIDTH).to_degrees(),
            size,
            pitch: 1.8,
            looks: vec![Look::line(self.paint.mark, 0.15)],
        };
        let letters = across.elements();
        let Some([left, top, bottom]) = self.numbers_mm else {
            self.across = letters;
            return;
        };
        // A line of a letter beside a digit could be read as part of the digit.
        let (own, height) = (self.paint.name("clip"), self.height);
        let free = Trail::from([0.0; 2])
            .level_to(WIDTH)
            .upright_to(top)
            .level_to(left);
        let free = free
            .upright_to(bottom)
            .level_to(WIDTH)
            .upright_to(height)
            .level_to(0.0)
            .close();
        let outside = Element::new("clipPath").with("id", own.clone());
        self.across = vec![
            outside.around([Element::new("path").along(free)]),
            Element::new("g")
                .with("clip-path", format!("url(#{own})"))
                .around(letters),
        ];
    }

    /// The page as SVG.
    pub(super) fn svg(&self) -> String {
        let mut canvas = Canvas::new(2);
        canvas.shape(self.paint.patterns());
        for shape in &self.shapes {
            canvas.shape(shape.clone());
        }
        for stroke in &self.strokes {
            let look = Look::line(self.paint.ink, stroke.width_mm).dashed(stroke.dashes);
            canvas.shape(Element::line(stroke.from_mm, stroke.to_mm, &look));
        }
        canvas.across(self.across.iter().cloned());
        for label in &self.texts {
            canvas.text(label.words.clone());
        }
        let page = Page::printed(Bounds::new([0.0; 2], [WIDTH, self.height]), WIDTH);
        canvas.svg(page.on_paper(self.paint.paper))
    }
}
