//! Words: a text at its place.

use super::bounds::{Bounds, Place};
use super::element::Element;
use super::look::{INK, PAPER};

/// Width of a letter as a share of its size: more than the mean width in any text.
pub(crate) const LETTER: f64 = 0.6;
/// Width of a bold letter as a share of its size.
pub(crate) const BOLD_LETTER: f64 = 0.68;
/// Width of the ground around letters on a picture, picture points.
const HALO: f64 = 3.0;

/// Alignment of a text at its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Anchor {
    Start,
    Middle,
    End,
}

impl Anchor {
    /// An element aligned so.
    pub(super) fn of(self, element: Element) -> Element {
        match self {
            Anchor::Start => element,
            Anchor::Middle => element.with("text-anchor", "middle"),
            Anchor::End => element.with("text-anchor", "end"),
        }
    }
}

/// A text; its place is on its base line.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Words {
    pub(crate) at: Place,
    pub(crate) size: f64,
    pub(crate) anchor: Anchor,
    pub(crate) is_bold: bool,
    pub(crate) is_slanted: bool,
    /// Whether it is read from below upward.
    pub(crate) is_upright: bool,
    pub(crate) ink: &'static str,
    /// Colour and width of the ground around the letters, so that lines behind them never look like part of a number.
    pub(crate) halo: Option<(&'static str, f64)>,
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
            is_upright: false,
            ink: INK,
            halo: None,
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

    pub(crate) fn slanted(self) -> Self {
        Self {
            is_slanted: true,
            ..self
        }
    }

    pub(crate) fn upright(self) -> Self {
        Self {
            is_upright: true,
            ..self
        }
    }

    pub(crate) fn inked(self, ink: &'static str) -> Self {
        Self { ink, ..self }
    }

    pub(crate) fn on_picture(self) -> Self {
        self.on_ground(PAPER, HALO)
    }

    pub(crate) fn on_ground(self, colour: &'static str, width: f64) -> Self {
        Self {
            halo: Some((colour, width)),
            ..self
        }
    }

    /// Upper bound of its width.
    pub(crate) fn width(&self) -> f64 {
        self.width_at(if self.is_bold { BOLD_LETTER } else { LETTER })
    }

    /// Width of as many letters of this share of their size.
    pub(crate) fn width_at(&self, letter: f64) -> f64 {
        self.text.chars().count() as f64 * letter * self.size
    }

    /// Rectangle in which it is drawn.
    pub(crate) fn bounds(&self) -> Bounds {
        self.bounds_at(self.width())
    }

    /// Rectangle in which it is drawn if it is so wide.
    pub(crate) fn bounds_at(&self, width: f64) -> Bounds {
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

    pub(crate) fn element(&self) -> Element {
        let [x, y] = self.at;
        let mut text = Element::new("text")
            .at([("x", x), ("y", y)])
            .sized("font-size", self.size)
            .with("fill", self.ink);
        if self.is_bold {
            text = text.with("font-weight", "bold");
        }
        if self.is_slanted {
            text = text.with("font-style", "italic");
        }
        text = self.anchor.of(text);
        if self.is_upright {
            text = text.with("transform", format!("rotate(-90 {x:.4} {y:.4})"));
        }
        if let Some((colour, width)) = self.halo {
            text = text
                .with("stroke", colour)
                .sized("stroke-width", width)
                .with("stroke-linejoin", "round")
                .with("paint-order", "stroke");
        }
        text.saying(&self.text)
    }
}
