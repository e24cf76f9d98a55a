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
    // What is cut short of somebody's words is still theirs.
    let opened = short.matches('“').count();
    if opened > short.matches('”').count() {
        short.push('”');
    }
    short
}

/// A whole text, without what would turn or break a line: a reason is never cut off.
pub(crate) fn whole(text: &str) -> String {
    clipped(text, usize::MAX)
}

/// A letter as the page takes it: no control, nothing that turns the direction of writing.
pub(crate) fn plain(letter: char) -> char {
    match letter {
        '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{fffe}' | '\u{ffff}' => '\u{fffd}',
        letter if letter.is_control() => ' ',
        letter => letter,
    }
}

/// Text in which no number is parted from its fraction or its unit at the end of a line: half a number can be read as another.
pub(crate) fn unbroken(text: &str) -> String {
    let letters: Vec<char> = text.chars().collect();
    let joins = |at: usize| {
        let before = at.checked_sub(1).and_then(|at| letters.get(at));
        let rest: String = letters[at + 1..].iter().take(3).collect();
        let is_unit = ["in", "mm", "mil", "kV", "m "]
            .iter()
            .any(|unit| rest.starts_with(unit));
        before.is_some_and(char::is_ascii_digit)
            && (is_unit || rest.starts_with(|c: char| c.is_ascii_digit()))
    };
    letters
        .iter()
        .enumerate()
        .map(|(at, letter)| match letter {
            ' ' if joins(at) => '\u{a0}',
            letter => *letter,
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_stays_with_its_fraction_and_its_unit() {
        let shown = unbroken("may lie 7 3/4 to 7 13/16 in, 196.0 to 200.0 mm; 9 ends");
        let expected = "may lie 7~3/4 to 7~13/16~in, 196.0 to 200.0~mm; 9 ends";
        assert_eq!(shown.replace('\u{a0}', "~"), expected);
    }

    #[test]
    fn a_long_text_ends_in_an_ellipsis_and_a_short_one_is_left_alone() {
        assert_eq!(clipped("as it is", 8), "as it is");
        assert_eq!(clipped("longer than that", 8), "longer…");
        assert_eq!(clipped("a\u{202e}b\nc", 9), "a\u{fffd}b c");
    }
}
