//! Quotes of the reader's own text in a message.
//!
//! Why separate: both kinds of error quote, and a hostile line must not reach a terminal with its control characters or at full length.
//! Invariants: at most 40 characters and an ellipsis; no control characters.

/// Greatest number of characters of the reader's text that a message repeats.
const QUOTED_CHARS_MAX: usize = 40;

/// `text` trimmed, shortened, and with every control character replaced.
pub(crate) fn quoted(text: &str) -> String {
    let text = text.trim();
    let mut out: String = text
        .chars()
        .take(QUOTED_CHARS_MAX)
        .map(|c| if c.is_control() { '\u{FFFD}' } else { c })
        .collect();
    if text.chars().nth(QUOTED_CHARS_MAX).is_some() {
        out.push('…');
    }
    out
}

/// Items joined by commas and a last "or".
pub(crate) fn list_of_choices<S: AsRef<str>>(items: &[S]) -> String {
    let mut out = String::new();
    for (index, item) in items.iter().enumerate() {
        if index > 0 {
            out.push_str(if index + 1 == items.len() {
                " or "
            } else {
                ", "
            });
        }
        out.push_str(item.as_ref());
    }
    out
}

#[cfg(test)]
mod tests {
    use super::{list_of_choices, quoted};

    #[track_caller]
    fn check(text: &str, expected: &str) {
        assert_eq!(quoted(text), expected);
    }

    #[test]
    fn a_long_text_is_shortened() {
        check(&"x".repeat(40), &"x".repeat(40));
        check(&"x".repeat(41), &format!("{}…", "x".repeat(40)));
    }

    #[test]
    fn control_characters_are_replaced() {
        check("7\u{1b}[31m", "7\u{FFFD}[31m");
    }

    #[test]
    fn choices_end_in_or() {
        assert_eq!(list_of_choices(&["a"]), "a");
        assert_eq!(list_of_choices(&["a", "b", "c"]), "a, b or c");
    }
}
