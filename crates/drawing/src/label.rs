//! Label: texts of a picture.

/// Text in lines of at most `width` letters, at most `n_most` lines.
pub(crate) fn wrapped(text: &str, width: usize, n_most: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        let mut word: String = word.to_owned();
        if word.chars().count() > width {
            word = shortened(&word, width);
        }
        let fits = lines
            .last()
            .is_some_and(|line| line.chars().count() + 1 + word.chars().count() <= width);
        match lines.last_mut() {
            Some(line) if fits => {
                line.push(' ');
                line.push_str(&word);
            }
            _ => lines.push(word),
        }
    }
    if lines.len() > n_most {
        lines.truncate(n_most);
        if let Some(last) = lines.last_mut() {
            *last = format!("{} …", shortened(last, width.saturating_sub(2)));
        }
    }
    lines
}

/// Text cut to at most `width` letters.
pub(crate) fn shortened(text: &str, width: usize) -> String {
    if text.chars().count() <= width {
        return text.to_owned();
    }
    let mut short: String = text.chars().take(width.saturating_sub(1)).collect();
    short.push('…');
    short
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn long_texts_are_wrapped_and_end_somewhere() {
        let lines = wrapped(&"word ".repeat(100), 20, 3);
        assert_eq!(lines.len(), 3);
        assert!(lines.iter().all(|line| line.chars().count() <= 20));
        assert_eq!(wrapped(&"x".repeat(50), 20, 3)[0].chars().count(), 20);
    }
}
