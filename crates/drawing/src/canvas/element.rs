//! Element: one element of an SVG, with its attributes and what it holds.
//!
//! **Invariants.** Tags are written here and nowhere else, and every text and value is escaped.

use super::bounds::{Bounds, Place};
use super::look::Look;
use super::trail::Trail;
use std::fmt::Write;

/// Digits behind the point of a size, without zeros at the end.
const SIZE_DIGITS: usize = 4;

/// Value of an attribute.
#[derive(Clone, Debug, PartialEq)]
enum Value {
    /// Number written with as many digits as the places of its page.
    Place(f64),
    /// Number written without zeros at the end.
    Size(f64),
    Text(String),
    /// Path, written with as many digits as the places of its page.
    Trail(Trail),
}

/// Content of an element.
#[derive(Clone, Debug, PartialEq)]
enum Inside {
    Nothing,
    Text(String),
    Elements(Vec<Element>),
}

/// An element of a picture.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Element {
    name: &'static str,
    attributes: Vec<(&'static str, Value)>,
    inside: Inside,
}

impl Element {
    pub(crate) const fn new(name: &'static str) -> Self {
        Self {
            name,
            attributes: Vec::new(),
            inside: Inside::Nothing,
        }
    }

    /// Path with its fill and line; its places are written as they stand.
    pub(crate) fn path(d: impl Into<String>, look: &Look) -> Self {
        Self::new("path").drawn(look).with("d", d)
    }

    /// Trail with its fill and line.
    pub(crate) fn trail(trail: Trail, look: &Look) -> Self {
        Self::new("path").drawn(look).along(trail)
    }

    /// Adds a trail.
    pub(crate) fn along(mut self, trail: Trail) -> Self {
        self.attributes.push(("d", Value::Trail(trail)));
        self
    }

    pub(crate) fn rectangle(bounds: &Bounds) -> Self {
        let [width, height] = [bounds.right - bounds.left, bounds.bottom - bounds.top];
        Self::new("rect")
            .at([("x", bounds.left), ("y", bounds.top)])
            .at([("width", width), ("height", height)])
    }

    pub(crate) fn circle([x, y]: Place, radius: f64) -> Self {
        Self::new("circle").at([("cx", x), ("cy", y), ("r", radius)])
    }

    /// Straight line; it has nothing to fill.
    pub(crate) fn line([x1, y1]: Place, [x2, y2]: Place, look: &Look) -> Self {
        let line = Self::new("line").at([("x1", x1), ("y1", y1), ("x2", x2), ("y2", y2)]);
        line.stroked(look)
    }

    /// Adds an attribute.
    pub(crate) fn with(mut self, name: &'static str, value: impl Into<String>) -> Self {
        self.attributes.push((name, Value::Text(value.into())));
        self
    }

    /// Adds an attribute before all others, by which the element is found again.
    pub(crate) fn tagged(mut self, name: &'static str, value: impl Into<String>) -> Self {
        self.attributes.insert(0, (name, Value::Text(value.into())));
        self
    }

    /// Adds places and extents.
    pub(crate) fn at<const N: usize>(mut self, numbers: [(&'static str, f64); N]) -> Self {
        let places = numbers.map(|(name, number)| (name, Value::Place(number)));
        self.attributes.extend(places);
        self
    }

    /// Adds a width or another size.
    pub(crate) fn sized(mut self, name: &'static str, size: f64) -> Self {
        self.attributes.push((name, Value::Size(size)));
        self
    }

    /// Adds fill and line.
    pub(crate) fn drawn(self, look: &Look) -> Self {
        self.with("fill", look.fill.clone()).stroked(look)
    }

    /// Adds a line, without its fill.
    fn stroked(self, look: &Look) -> Self {
        let Some((colour, width)) = &look.line else {
            return self;
        };
        let mut element = self
            .with("stroke", colour.clone())
            .sized("stroke-width", *width);
        if look.is_round {
            element = element.with("stroke-linejoin", "round");
        }
        if let Some(opacity) = look.opacity {
            element = element.sized("stroke-opacity", opacity);
        }
        if !look.dashes.is_empty() {
            element = element.with("stroke-dasharray", look.dashes);
        }
        element
    }

    /// Puts a text inside.
    pub(crate) fn saying(self, text: &str) -> Self {
        Self {
            inside: Inside::Text(text.to_owned()),
            ..self
        }
    }

    /// Puts elements inside.
    pub(crate) fn around(self, elements: impl IntoIterator<Item = Element>) -> Self {
        Self {
            inside: Inside::Elements(elements.into_iter().collect()),
            ..self
        }
    }

    /// Writes the element on a line of its own, with so many digits behind the point of a place.
    pub(super) fn write(&self, svg: &mut String, digits: usize) {
        svg.push('<');
        svg.push_str(self.name);
        for (name, value) in &self.attributes {
            // Writing to a text cannot fail.
            let _ = match value {
                Value::Place(place) => write!(svg, " {name}=\"{place:.digits$}\""),
                Value::Size(size) => write!(svg, " {name}=\"{}\"", trimmed(*size)),
                Value::Text(text) => write!(svg, " {name}=\"{}\"", escaped(text)),
                Value::Trail(trail) => write!(svg, " {name}=\"{}\"", trail.d(digits)),
            };
        }
        match &self.inside {
            Inside::Nothing => svg.push_str("/>\n"),
            Inside::Text(text) => {
                let _ = writeln!(svg, ">{}</{}>", escaped(text), self.name);
            }
            Inside::Elements(elements) => {
                svg.push_str(">\n");
                for element in elements {
                    element.write(svg, digits);
                }
                let _ = writeln!(svg, "</{}>", self.name);
            }
        }
    }
}

/// A size as a picture writes it.
pub(super) fn trimmed(size: f64) -> String {
    let whole = format!("{size:.SIZE_DIGITS$}");
    whole.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// Text escaped for SVG.
fn escaped(text: &str) -> String {
    let mut safe = String::new();
    for letter in text.chars() {
        match letter {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            // Characters that XML forbids, and characters that change the direction of writing.
            '\u{fffe}' | '\u{ffff}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' => {
                safe.push('\u{fffd}');
            }
            letter if letter.is_control() => safe.push(' '),
            letter => safe.push(letter),
        }
    }
    safe
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_text_breaks_out_of_its_place() {
        let hostile = "</text><script>alert(\"1\")&\u{0}\u{202e}";
        let mut svg = String::new();
        let words = Element::new("text").with("data-what", hostile);
        words.saying(hostile).write(&mut svg, 1);
        assert_eq!(svg.matches(['<', '>']).count(), 4, "{svg}");
        assert_eq!(svg.matches('"').count(), 2, "{svg}");
        assert!(!svg.contains(['\u{0}', '\u{202e}']), "{svg}");
        assert!(svg.contains("&amp;"));
    }

    #[test]
    fn sizes_have_no_zeros_at_their_end() {
        for (size, text) in [
            (0.0, "0"),
            (10.0, "10"),
            (2.30, "2.3"),
            (0.12, "0.12"),
            (1.0 / 3.0, "0.3333"),
        ] {
            assert_eq!(trimmed(size), text);
        }
    }
}
