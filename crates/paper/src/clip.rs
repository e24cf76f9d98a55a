//! Clip: texts of a job cut to what a page has room for; the rest stands in plan.json.

/// Text of at most `n_most` letters, with an ellipsis where it was longer, and without what would turn or break a line.
pub(crate) fn clipped(text: &str, n_most: usize) -> String {
    let clean: String = text.chars().map(plain).collect();
    let clean = clean.split_whitespace().collect::<Vec<_>>().join(" ");
    if clean.chars().count() <= n_most {
        return clean;
    }
    let mut short: String = clean.chars().take(n_most.saturating_sub(1)).collect();
    short.truncate(short.trim_end().len());
    short.push('…');
    short
}

/// A letter as the page takes it: no control, nothing that turns the direction of writing.
pub(crate) fn plain(letter: char) -> char {
    match letter {
        '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{fffe}' | '\u{ffff}' => '\u{fffd}',
        letter if letter.is_control() => ' ',
        letter => letter,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_text_ends_in_an_ellipsis_and_a_short_one_is_left_alone() {
        assert_eq!(clipped("as it is", 8), "as it is");
        assert_eq!(clipped("longer than that", 8), "longer…");
        assert_eq!(clipped("a\u{202e}b\nc", 9), "a\u{fffd}b c");
    }
}
