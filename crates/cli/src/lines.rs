//! Lines: the text of a page, 80 columns wide, in one tongue.
//!
//! Not here: the sentences (crate `wording`, and the document).

use jointwright_joint::cable::Words;
use jointwright_wording::Tongue;
use jointwright_wording::label::Label;

/// Width of a page, columns: every crew's terminal has as many.
pub const WIDTH: usize = 80;

/// Lines of a page, none wider than the page.
pub struct Lines {
    /// Text so far.
    pub text: String,
    /// Tongue of the text.
    pub tongue: Tongue,
}

impl Default for Lines {
    /// No lines yet, for a page that is English whatever its files say.
    fn default() -> Lines {
        Lines::new(Tongue::english(Words::Us))
    }
}

impl Lines {
    /// No lines yet, in a tongue.
    pub const fn new(tongue: Tongue) -> Lines {
        Lines {
            text: String::new(),
            tongue,
        }
    }

    /// Returns the text of a label in the tongue of the page.
    pub fn say(&self, label: &impl Label) -> String {
        self.tongue.label(label)
    }

    /// Adds a line.
    pub fn add(&mut self, line: &str) {
        self.text.push_str(line.trim_end());
        self.text.push('\n');
    }

    /// Adds an empty line.
    pub fn blank(&mut self) {
        self.text.push('\n');
    }

    /// Adds text wrapped at the width, with later lines indented further.
    pub fn wrap(&mut self, indent: &str, text: &str) {
        let later = format!("{indent}  ");
        let options = textwrap::Options::new(WIDTH)
            .initial_indent(indent)
            .subsequent_indent(&later)
            .word_splitter(textwrap::WordSplitter::NoHyphenation)
            .word_separator(textwrap::WordSeparator::AsciiSpace);
        for line in textwrap::wrap(text, options) {
            self.add(&line);
        }
    }

    /// Adds a label, wrapped.
    pub fn label(&mut self, indent: &str, label: &impl Label) {
        self.wrap(indent, &self.say(label));
    }

    /// Adds a label whose lines are broken already.
    pub fn laid_out(&mut self, indent: &str, label: &impl Label) {
        for line in self.say(label).lines() {
            self.add(&format!("{indent}{line}"));
        }
    }

    /// Adds a line of columns; if the last column is too long for the page, it stands on the next line.
    pub fn wrap_under(&mut self, head: &str, last: &str) {
        let line = format!("{head}  {last}");
        if line.chars().count() <= WIDTH {
            self.add(&line);
            return;
        }
        self.add(head);
        self.wrap("      ", last);
    }

    /// Adds a name, padded to so many columns, and a text behind it; if both do not fit in one line, the name stands on lines of its own.
    pub fn named(&mut self, indent: &str, name: &str, columns: usize, behind: &str) {
        let line = format!("{indent}{name:<columns$}{behind}");
        if line.chars().count() <= WIDTH {
            self.add(&line);
            return;
        }
        self.wrap(indent, name);
        self.add(&format!("{indent}{:<columns$}{behind}", ""));
    }

    /// Adds an empty line, then a heading.
    pub fn heading(&mut self, label: &impl Label) {
        self.blank();
        self.label("", label);
    }
}

/// Returns the page with its headings in bold if `style` is set; a heading begins at the edge of the page.
pub fn styled(page: &str, style: bool) -> String {
    if !style {
        return page.to_owned();
    }
    let line = |line: &str| {
        if line.is_empty() || line.starts_with(' ') {
            format!("{line}\n")
        } else {
            format!("\x1b[1m{line}\x1b[0m\n")
        }
    };
    page.lines().map(line).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_heading_is_bold_whatever_letter_it_begins_with() {
        for heading in ["LEG A", "*** X", "Área", "¿Qué falta?", "7 kV"] {
            let page = format!("{heading}\n  under it\n\n");
            let expected = format!("\x1b[1m{heading}\x1b[0m\n  under it\n\n");
            assert_eq!(styled(&page, true), expected);
            assert_eq!(styled(&page, false), page);
        }
    }

    #[test]
    fn a_name_too_long_for_its_line_stands_over_its_numbers() {
        let mut lines = Lines::default();
        lines.named("  ", "ñandú", 8, "7 mm");
        lines.named("  ", &"ñ".repeat(70), 44, &format!("{:>14}", "7 mm"));
        let expected = format!("  ñandú   7 mm\n  {}\n{:>60}\n", "ñ".repeat(70), "7 mm");
        assert_eq!(lines.text, expected);
    }
}
