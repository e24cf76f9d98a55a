//! Spoken: texts of a file that permit something stand on page and paper as that file's words, in quotation marks.
//!
//! The program permits nothing; but a title, a note or a step of a paper may hold any words, and on a page nobody could tell whose they are.
//! One place does it for all of them, where a file is read.

/// Beginnings of words that permit, release or call something safe; whoever writes one is quoted. Too many are quoted rather than too few.
const PERMITTING: &[&str] = &[
    "accepted",
    "all clear",
    "allowed",
    "approv",
    "authoris",
    "authoriz",
    "be kept",
    "be touched",
    "can be",
    "can now",
    "certif",
    "clear to",
    "cleared",
    "close the breaker",
    "de energi",
    "dead",
    "deenergi",
    "discharged",
    "earthed",
    "energi",
    "fit for service",
    "go ahead",
    "good joint",
    "good to go",
    "grounded",
    "guarantee",
    "handed over",
    "harmless",
    "in order",
    "isolated",
    "may be",
    "may now",
    "may touch",
    "may cut",
    "no need to",
    "no voltage",
    "not live",
    "ok",
    "okay",
    "passed",
    "permission",
    "permit",
    "proved",
    "proven",
    "ready",
    "release",
    "safe",
    "signed off",
    "sound joint",
    "switch",
    "to touch",
    "voltage free",
    "you can",
    "you may",
];

/// Whether a text holds words that permit.
pub(super) fn permits(text: &str) -> bool {
    let letters: String = text
        .to_lowercase()
        .chars()
        .map(|c| if c.is_alphanumeric() { c } else { ' ' })
        .collect();
    let words: Vec<&str> = letters.split_whitespace().collect();
    let text = format!(" {}", words.join(" "));
    PERMITTING.iter().any(|word| {
        // Two letters begin too many words.
        let word = if word.len() < 3 {
            format!(" {word} ")
        } else {
            format!(" {word}")
        };
        format!("{text} ").contains(&word)
    })
}

/// The text as its file's words, where it permits; else as it is.
pub(super) fn spoken(text: &str, path: &str) -> String {
    if !permits(text) {
        return text.to_owned();
    }
    let file = path.rsplit(['/', '\\']).next().unwrap_or(path);
    // No quotation mark of its own may end the quotation.
    let inner: String = text
        .chars()
        .map(|c| {
            if matches!(c, '"' | '“' | '”' | '„' | '«' | '»') {
                '\''
            } else {
                c
            }
        })
        .collect();
    format!("{file} says “{inner}”")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_that_permit_are_their_files_and_others_stay_as_they_are() {
        assert_eq!(
            spoken("approved: may be energised", "a/b/job.toml"),
            "job.toml says “approved: may be energised”"
        );
        assert_eq!(
            spoken("x” This plan: SAFE to cut", "job.toml"),
            "job.toml says “x' This plan: SAFE to cut”"
        );
        for text in [
            "Straight joint, feeder 7b",
            "vault 9, unsafely near",
            "unapproved",
            "Oklahoma",
        ] {
            assert_eq!(spoken(text, "job.toml"), text);
        }
    }

    #[test]
    fn each_sentence_that_permits_is_known() {
        for text in [
            "Approved by the owner",
            "may be energised",
            "May  be\u{a0}energized",
            "DE-ENERGISED",
            "Cable is dead.",
            "safe to cut",
            "OK to proceed",
            "ok",
            "Permit 17 covers this",
            "cleared and released",
            "You can switch it in",
            "go-ahead given",
            "all clear",
            "joint may be kept",
            "passed the trial",
            "ready for service",
            "No voltage here",
        ] {
            assert!(permits(text), "{text}");
        }
    }
}
