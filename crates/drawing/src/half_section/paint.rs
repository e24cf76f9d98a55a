//! Paint: colours of a theme and hatching of the layers.

use super::Theme;
use crate::canvas::{Element, INVENTED, Look};
use std::fmt::Write;

/// Name of a layer or part, its tints on white and on near-black, and the size and path of its hatching.
type Hatch = (&'static str, [&'static str; 2], [f64; 2], &'static str);

/// Layers from the inside out as plans name them.
const HATCHES: [Hatch; 10] = [
    (
        "conductor",
        ["#f3d9c4", "#4a3423"],
        [1.6, 1.6],
        "M0 1.6L1.6 0M-0.4 0.4L0.4 -0.4M1.2 2L2 1.2",
    ),
    (
        "conductor-screen",
        ["#8a8a8a", "#9a9a9a"],
        [0.4, 0.4],
        "M0 0.2H0.4M0.2 0V0.4",
    ),
    (
        "insulation",
        ["#f7f3da", "#2c2f22"],
        [2.4, 2.4],
        "M0.5 0.6H0.9M1.7 1.8H2.1",
    ),
    (
        "insulation-screen",
        ["#8a8a8a", "#9a9a9a"],
        [0.5, 0.5],
        "M0 0.25H0.5M0.25 0V0.5",
    ),
    (
        "metallic-shield",
        ["#d5dfe8", "#26323c"],
        [0.8, 0.8],
        "M0.4 0V0.8",
    ),
    (
        "jacket",
        ["#dcd9e6", "#2a2733"],
        [1.2, 1.2],
        "M0 0L1.2 1.2M-0.3 0.9L0.3 1.5M0.9 -0.3L1.5 0.3",
    ),
    (
        "connector",
        ["#e6e6e6", "#333333"],
        [1.0, 1.0],
        "M0 0L1 1M1 0L0 1",
    ),
    (
        "electrode",
        ["#cfe0cf", "#23331f"],
        [1.2, 0.7],
        "M0 0.35H1.2",
    ),
    (
        "stress-control",
        ["#e8d3d3", "#3a2222"],
        [1.4, 1.0],
        "M0 1L0.7 0L1.4 1",
    ),
    ("window", ["#ffffff", "#101418"], [0.6, 0.6], "M0 0.6L0.6 0"),
];

/// Colours of a page.
#[derive(Clone, Debug)]
pub(super) struct Paint {
    theme: Theme,
    /// Prefix that distinguishes the patterns of this page from others in the same document.
    own: String,
    /// Colour of lines and letters.
    pub(super) ink: &'static str,
    /// Colour of the ground.
    pub(super) paper: &'static str,
    /// Colour of the letters across the face.
    pub(super) mark: &'static str,
}

impl Paint {
    pub(super) fn new(theme: Theme, mark: &str) -> Self {
        let (letter, ink, paper, across) = match theme {
            Theme::Light => ('l', "#16181c", "#ffffff", INVENTED),
            Theme::Dark => ('d', "#e9ecef", "#101418", "#ff9d8a"),
            Theme::Print => ('p', "#000000", "#ffffff", "#000000"),
        };
        let mut own = String::from(letter);
        for byte in mark.bytes() {
            // Writing to a text cannot fail.
            let _ = write!(own, "{byte:02x}");
        }
        Self {
            theme,
            own,
            ink,
            paper,
            mark: across,
        }
    }

    /// Fill of a layer or part; the ground if it has no hatching.
    pub(super) fn fill(&self, of: &str) -> String {
        if HATCHES.iter().any(|(name, ..)| *name == of) {
            format!("url(#{})", self.name(of))
        } else {
            self.paper.to_owned()
        }
    }

    /// Name of a layer or part in the document.
    pub(super) fn name(&self, of: &str) -> String {
        format!("{of}-{}", self.own)
    }

    /// All hatchings.
    pub(super) fn patterns(&self) -> Element {
        let pattern = |(name, [light, dark], [wide, high], d): Hatch| {
            let tint = match self.theme {
                Theme::Light => light,
                Theme::Dark => dark,
                Theme::Print => self.paper,
            };
            let sized = |element: Element| element.sized("width", wide).sized("height", high);
            let pattern = Element::new("pattern")
                .with("id", self.name(name))
                .with("patternUnits", "userSpaceOnUse");
            let ground = sized(Element::new("rect")).drawn(&Look::filled(tint));
            sized(pattern).around([ground, Element::path(d, &Look::line(self.ink, 0.14))])
        };
        Element::new("defs").around(HATCHES.map(pattern))
    }
}
