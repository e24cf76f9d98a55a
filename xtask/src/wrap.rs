//! Wrap: text broken into lines that fit a terminal of 80 columns.

/// Greatest width of a line.
const COLUMNS: usize = 80;

/// Breaks `text` at spaces; the first line begins with `lead`, the others with `indent`.
///
/// A word wider than a line stays whole.
pub fn at_80(lead: &str, text: &str, indent: &str) -> String {
    let mut lines: Vec<String> = Vec::new();
    let mut line = lead.to_owned();
    let mut is_empty = true;
    for word in text.split_whitespace() {
        let width = line.chars().count() + usize::from(!is_empty) + word.chars().count();
        if !is_empty && width > COLUMNS {
            lines.push(std::mem::replace(&mut line, indent.to_owned()));
            is_empty = true;
        }
        if !is_empty {
            line.push(' ');
        }
        line.push_str(word);
        is_empty = false;
    }
    lines.push(line);
    lines.join("\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_line_passes_80_columns_and_no_word_is_lost() {
        let text = "a fitter reads this line ".repeat(12);
        let shown = at_80("  1. ", &text, "     ");
        assert!(shown.lines().all(|line| line.chars().count() <= COLUMNS));
        assert!(shown.lines().count() > 3);
        assert!(shown.starts_with("  1. a fitter"));
        assert!(
            shown
                .lines()
                .skip(1)
                .all(|line| line.starts_with("     ") && line.chars().nth(5) != Some(' '))
        );
        assert_eq!(
            shown.split_whitespace().count(),
            1 + text.split_whitespace().count()
        );
    }

    #[test]
    fn a_word_wider_than_a_line_stays_whole() {
        let word = "x".repeat(100);
        assert_eq!(
            at_80("", &format!("at {word} now"), "  "),
            format!("at\n  {word}\n  now")
        );
    }
}
