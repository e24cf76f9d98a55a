//! Spoken: what a file says in words stands in quotation marks wherever it is printed, so that nobody takes it for this program's.
//!
//! Why its own file: the program permits nothing, but a title, a note or a step of a paper may hold any words; no list of phrases could tell which of them permit, so none decides.
//!
//! Invariants: what a field for words holds is quoted, whatever it says and in whatever language; a field for names is bare only where it holds a short name; nothing inside a quotation ends it; equal texts stay equal, in whatever file they stand.
//!
//! Not here: whose words they are, which stands beside them (the source of a step, the name of the job) and once on every page (`plan::NEVER`); the list of phrases that `lint` looks for (`critic`).

/// Most words of a name.
const WORDS_MOST: usize = 3;
/// Most letters of a name.
const LETTERS_MOST: usize = 40;

/// Words of somebody.
pub fn said(text: &str) -> String {
    // No quotation mark of its own may end the quotation.
    let is_mark = |c: char| matches!(c, '"' | '“' | '”' | '„' | '‟' | '«' | '»');
    let inner: String = text
        .chars()
        .map(|c| if is_mark(c) { '\'' } else { c })
        .collect();
    format!("“{inner}”")
}

/// A name: bare where it is short, else somebody's words.
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

/// The words themselves, without the marks around them.
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
