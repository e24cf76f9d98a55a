//! The mark of a plan, as it is read aloud, and its issue.

use jointwright_joint::cable::Words;
use jointwright_joint::fingerprint::Fingerprint;
use jointwright_joint::said::{Language, MarkSaid, Wording};
use jointwright_wording::Tongue;
use std::collections::BTreeSet;

fn say(language: Language, said: MarkSaid) -> String {
    let words = Words::Us;
    Tongue { language, words }.say(&said.into())
}

fn aloud(language: Language, short: &str) -> String {
    let short = short.to_owned();
    say(language, MarkSaid::Aloud { short })
}

#[test]
fn a_mark_is_spelled_letter_by_letter() {
    assert_eq!(
        aloud(Language::English, "KTRM-47WX"),
        "Kilo Tango Romeo Mike, four seven Whiskey X-ray"
    );
    assert_eq!(
        aloud(Language::Spanish, "KTRM-47WX"),
        "Kilo Tango Romeo Mike, cuatro siete Whiskey X-ray"
    );
}

#[test]
fn every_letter_of_a_mark_has_a_word_of_its_own_in_every_language() {
    // Enough marks that every letter stands in one of them.
    let marks = (0..200).map(|n: u32| Fingerprint::of([("n", n.to_string().as_str())]).short());
    let letters: BTreeSet<char> = marks
        .flat_map(|mark| mark.replace('-', "").chars().collect::<Vec<_>>())
        .collect();
    assert_eq!(letters.len(), 16, "{letters:?}");
    for language in Language::ALL {
        let words: BTreeSet<String> = letters
            .iter()
            .map(|letter| aloud(language, &letter.to_string()))
            .collect();
        assert_eq!(words.len(), letters.len(), "{words:?}");
        assert!(words.iter().all(|word| word.len() > 1), "{words:?}");
    }
}

#[test]
fn an_issue_says_which_one_it_replaces() {
    let english = |said| say(Language::English, said);
    assert_eq!(english(MarkSaid::NotNumbered), "issue not numbered");
    assert_eq!(english(MarkSaid::Issue { issue: 1 }), "issue 1");
    assert_eq!(
        english(MarkSaid::Issue { issue: 3 }),
        "issue 3, replaces 2, destroy it"
    );
}
