//! Canvas: shapes and texts of a picture, the rectangles that they occupy, and the whole as SVG.
//!
//! **What.**
//! - [`Element`]: one element, escaped; the only room that writes tags.
//! - [`Look`]: fill and line of a shape, and the shared colours.
//! - [`Trail`]: lines from place to place.
//! - [`Words`]: a text at its place.
//! - [`Across`]: letters across the face.
//! - [`Canvas`]: the layers of a picture; [`Page`]: its size.
//!
//! **Why its own room.** Every picture writes its elements, escapes and numbers in one way.
//!
//! **Invariants.** No style sheet, and no names but those that a picture gives, so that several pictures may stand in one document.
//!
//! **Not here.** What a picture shows, and paths on the fine grid ([`trace`](crate::trace)).

mod bounds;
mod element;
mod invented_mark;
mod look;
mod trail;
mod words;

pub(crate) use bounds::{Bounds, Place, do_cross};
pub(crate) use element::Element;
pub(crate) use invented_mark::Across;
pub(crate) use look::{BLACK, EQUIPOTENTIAL, FRAME, GRID, INK, INVENTED, Look, OUTLINE, PAPER};
pub(crate) use trail::Trail;
pub(crate) use words::{Anchor, BOLD_LETTER, LETTER, Words};

use element::trimmed;

/// Typefaces, the first that is at hand.
const FONTS: [&str; 3] = ["DejaVu Sans Condensed", "DejaVu Sans", "sans-serif"];

/// Size of a picture, and its ground.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Page {
    /// Part of the plane that is shown.
    view: Bounds,
    /// Width and height as attributes.
    size: [String; 2],
    fonts: String,
    paper: &'static str,
}

impl Page {
    /// Picture for a screen, picture points.
    pub(crate) fn points(width: f64, height: f64) -> Self {
        Self {
            view: Bounds::new([0.0; 2], [width, height]),
            size: [width, height].map(trimmed),
            fonts: FONTS.join(", "),
            paper: PAPER,
        }
    }

    /// Picture for paper: the part of the plane that is shown, and its width in millimetres.
    pub(crate) fn printed(view: Bounds, width_mm: f64) -> Self {
        let [width, height] = [view.right - view.left, view.bottom - view.top];
        Self {
            view,
            size: [width_mm, width_mm * height / width].map(|mm| format!("{}mm", trimmed(mm))),
            fonts: FONTS.join(", "),
            paper: PAPER,
        }
    }

    pub(crate) fn on_paper(self, paper: &'static str) -> Self {
        Self { paper, ..self }
    }

    pub(crate) fn in_font(self, font: &str) -> Self {
        Self {
            fonts: font.to_owned(),
            ..self
        }
    }

    /// The picture with these elements, over its ground.
    fn around(self, elements: impl IntoIterator<Item = Element>) -> Element {
        let (view, [width, height]) = (&self.view, self.size);
        let extent = [view.right - view.left, view.bottom - view.top];
        let [left, top] = [view.left, view.top].map(trimmed);
        let [wide, high] = extent.map(trimmed);
        let ground = Element::rectangle(view).drawn(&Look::filled(self.paper));
        Element::new("svg")
            .with("xmlns", "http://www.w3.org/2000/svg")
            .with("viewBox", format!("{left} {top} {wide} {high}"))
            .with("width", width)
            .with("height", height)
            .with("font-family", self.fonts)
            .around([ground].into_iter().chain(elements))
    }
}

/// Layers of a picture: shapes, letters across its face, shapes above them, texts.
#[derive(Debug)]
pub(crate) struct Canvas {
    /// Digits behind the point of a place.
    digits: usize,
    pub(crate) texts: Vec<Words>,
    /// Lines that no text may lie on.
    pub(crate) lines: Vec<[Place; 2]>,
    shapes: Vec<Element>,
    across: Vec<Element>,
    above: Vec<Element>,
    /// Height at which the next item goes.
    pub(crate) y: f64,
}

impl Canvas {
    /// Empty canvas, whose places are written with so many digits behind the point.
    pub(crate) const fn new(digits: usize) -> Self {
        Self {
            digits,
            texts: Vec::new(),
            lines: Vec::new(),
            shapes: Vec::new(),
            across: Vec::new(),
            above: Vec::new(),
            y: 0.0,
        }
    }

    /// Writes a text above everything, wherever it is.
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

    /// Draws a shape over the shapes before it.
    pub(crate) fn shape(&mut self, element: Element) {
        self.shapes.push(element);
    }

    /// Draws a shape that the letters across the face do not cover.
    pub(crate) fn shape_above(&mut self, element: Element) {
        self.above.push(element);
    }

    /// Draws a path; nothing if the path is empty.
    pub(crate) fn path(&mut self, d: &str, look: &Look) {
        if !d.is_empty() {
            self.shape(Element::path(d, look));
        }
    }

    /// Draws a trail; nothing if it is empty.
    pub(crate) fn trail(&mut self, trail: Trail, look: &Look) {
        if !trail.is_empty() {
            self.shape(Element::trail(trail, look));
        }
    }

    /// Draws a trail that the letters across the face do not cover.
    pub(crate) fn trail_above(&mut self, trail: Trail, look: &Look) {
        if !trail.is_empty() {
            self.shape_above(Element::trail(trail, look));
        }
    }

    /// Writes elements across the face: over the shapes, below everything else.
    pub(crate) fn across(&mut self, elements: impl IntoIterator<Item = Element>) {
        self.across.extend(elements);
    }

    /// The picture as SVG.
    pub(crate) fn svg(&self, page: Page) -> String {
        let layers = [&self.shapes, &self.across, &self.above];
        let texts = self.texts.iter().map(Words::element);
        let elements = layers.into_iter().flatten().cloned().chain(texts);
        let mut svg = String::new();
        page.around(elements).write(&mut svg, self.digits);
        svg
    }
}
