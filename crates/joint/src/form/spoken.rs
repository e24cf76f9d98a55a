//! Spoken: somebody's words in a file are printed in quotation marks everywhere, so that nobody takes them for the program's own.
//!
//! Why its own file: the program permits nothing, but a title, a note or a step of a paper may hold any words.
//! No list of phrases could tell which of them permit something, so no list decides.
//!
//! Invariants: the text of a field for words is quoted, whatever it says and in whatever language.
//! The text of a field for names is bare only if it is a short name.
//! No character inside a quotation ends it.
//! Equal texts stay equal, in whatever file they stand.
//!
//! Not here: the owner of the words, who is printed beside them (the source of a step, the name of the job) and once on every page (`plan::NEVER`); the list of phrases that `lint` looks for (`critic`).

/// Greatest number of words in a name.
const WORDS_MOST: usize = 3;
/// Greatest number of letters in a name.
const LETTERS_MOST: usize = 40;

/// Returns somebody's words in quotation marks.
pub fn said(text: &str) -> String {
    // No quotation mark inside the text may end the quotation.
    let is_mark = |c: char| matches!(c, '"' | '“' | '”' | '„' | '‟' | '«' | '»');
    let inner: String = text
        .chars()
        .map(|c| if is_mark(c) { '\'' } else { c })
        .collect();
    format!("“{inner}”")
}

/// Returns a short name bare, and any longer text as somebody's words.
pub fn name(text: &str) -> String {
    let is_short = text.split_whitespace().count() <= WORDS_MOST
        && text.chars().count() <= LETTERS_MOST
        && !text.contains([':', ';', '!', '?', '"', '“', '”', '„', '‟', '«', '»']);
    if is_short {
        text.to_owned()
    } else {
        said(text)
    }
}

/// Words without the quotation marks around them.
pub fn bare(said: &str) -> &str {
    let inner = said.strip_prefix('“').and_then(|s| s.strip_suffix('”'));
    inner.unwrap_or(said)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_are_quoted_and_nothing_in_them_ends_the_quotation() {
        assert_eq!(said("ok"), "“ok”");
        assert_eq!(
            said("x” This plan: \"SAFE\" to cut „"),
            "“x' This plan: 'SAFE' to cut '”"
        );
        assert_eq!(bare(&said("slide it on")), "slide it on");
    }

    #[test]
    fn a_short_name_is_bare_and_anything_longer_is_somebodys_words() {
        for text in [
            "18",
            "invented die 30",
            "Ines Calloway (invented)",
            "step 4",
            "555-0142",
        ] {
            assert_eq!(name(text), text);
        }
        for text in [
            "This cable is dead",
            "approved: may be energised",
            "freigegeben: darf eingeschaltet werden",
            "die! use",
            "averylongwordthatsaysverymuchinonewordonly",
        ] {
            assert_eq!(name(text), said(text));
        }
    }
}
