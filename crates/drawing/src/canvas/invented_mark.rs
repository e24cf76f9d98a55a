//! Invented mark: large outlined letters over a picture, which say that its data are invented.
//!
//! **Invariants.** The letters are outlines without a fill: lines and numbers below them can still be read.

use super::bounds::Place;
use super::element::Element;
use super::look::Look;
use super::words::Anchor;
use crate::label::{shortened, wrapped};

/// Greatest number of letters.
const LETTERS_MOST: usize = 90;
/// Greatest number of lines.
const LINES_MOST: usize = 3;
/// Distance of a base line below the middle of its letters, as a share of their size.
const BASE: f64 = 0.36;

/// Letters across a picture.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Across {
    pub(crate) lines: Vec<String>,
    /// Place about which they are turned: the middle of the lines across them, and their anchor along them.
    pub(crate) at: Place,
    pub(crate) anchor: Anchor,
    /// Angle of the lines, clockwise, degrees.
    pub(crate) turn_deg: f64,
    pub(crate) size: f64,
    /// Distance of two lines as a share of the size.
    pub(crate) pitch: f64,
    /// Looks in which they are drawn, one over the other.
    pub(crate) looks: Vec<Look>,
}

impl Across {
    /// Text in lines of about half its length.
    pub(crate) fn lines(text: &str) -> Vec<String> {
        let text = shortened(text, LETTERS_MOST);
        wrapped(&text, text.chars().count() / 2 + 6, LINES_MOST)
    }

    /// Number of letters of the longest line, at least one.
    pub(crate) fn longest(lines: &[String]) -> f64 {
        let letters = lines.iter().map(|line| line.chars().count());
        letters.max().unwrap_or(1).max(1) as f64
    }

    pub(crate) fn elements(&self) -> Vec<Element> {
        self.looks.iter().map(|look| self.element(look)).collect()
    }

    fn element(&self, look: &Look) -> Element {
        // The letters are large: tenths are enough for them.
        let tenths = |number: f64| (10.0 * number).round() / 10.0;
        let [x, y] = self.at;
        let group = Element::new("g")
            .with(
                "transform",
                format!("rotate({:.1} {x:.1} {y:.1})", self.turn_deg),
            )
            .drawn(look)
            .with("font-weight", "bold")
            .sized("font-size", tenths(self.size));
        let middle = 0.5 * (self.lines.len() as f64 - 1.0);
        let lines = self.lines.iter().enumerate().map(|(n, line)| {
            let down = ((n as f64 - middle) * self.pitch + BASE) * self.size;
            Element::new("text")
                .at([("x", tenths(x)), ("y", tenths(y + down))])
                .saying(line)
        });
        self.anchor.of(group).around(lines)
    }
}
