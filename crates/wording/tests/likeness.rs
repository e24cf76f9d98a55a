//! Likeness of a leg, in whole sentences.

use jointwright_joint::cable::{
    Candidate, Lacking, Layer, Likeness, Metal, Near, Unlike, Words, candidates,
};
use jointwright_joint::said::Language;
use jointwright_joint::said::{PapersSaid, Wording};
use jointwright_units::{Interval, Length};
use jointwright_wording::Tongue;

/// The first constructions of the table, as near as can be.
fn near(n: usize) -> Vec<Near> {
    let first = candidates()[..n].iter().cloned();
    let near = |candidate| Near {
        candidate,
        off_ratio: 0.0,
    };
    first.map(near).collect()
}

fn english(likeness: &Likeness) -> String {
    Tongue::english(Words::Us).say(&PapersSaid::of(likeness).into())
}

fn phrase(candidate: &Candidate) -> String {
    candidate.phrase(Words::Us)
}

#[test]
fn every_sentence_says_what_it_does_not_say() {
    let unlike = Unlike::Metal(Metal::Copper, Metal::Aluminium);
    let all = [
        Likeness::FitsPapersOnly,
        Likeness::FitsOthersAlso(near(5)),
        Likeness::FitsOthersNotPapers(unlike, near(5)),
        Likeness::FitsNone(unlike),
        Likeness::NotEnough(Lacking::Diameter),
    ];
    let never = |language| match language {
        Language::English => "never which circuit it is or whether it is dead.",
        Language::Spanish => "nunca qué circuito es ni si está sin tensión.",
    };
    for likeness in all {
        for language in Language::ALL {
            for words in [Words::Us, Words::Iec] {
                let sentence = Tongue { language, words }.say(&PapersSaid::of(&likeness).into());
                assert!(sentence.ends_with(never(language)), "{sentence}");
                assert!(
                    !sentence.contains('%') || sentence.contains(" kV "),
                    "{sentence}"
                );
            }
        }
    }
}

#[test]
fn a_sentence_names_the_three_nearest_and_counts_all() {
    let sentence = english(&Likeness::FitsOthersAlso(near(5)));
    assert!(sentence.contains("also like 5 others"), "{sentence}");
    let named = |n: usize| sentence.contains(&phrase(&candidates()[n]));
    assert_eq!([0, 1, 2, 3, 4].map(named), [true, true, true, false, false]);
    let sentence = english(&Likeness::FitsOthersAlso(near(1)));
    let phrase = phrase(&candidates()[0]);
    assert!(
        sentence.contains(&format!(
            "also like {phrase} (0.0 times the readings' error off)."
        )),
        "{sentence}"
    );
}

#[test]
fn what_is_unlike_the_papers_is_named_with_both_ranges() {
    let mm = |tenths: i64| Length::from_nm(tenths * 100_000);
    let range = |least, greatest| Interval::new(mm(least), mm(greatest)).expect("in order");
    let unlike = Unlike::Over {
        layer: Layer::Jacket,
        read: range(459, 461),
        papers: range(380, 420),
    };
    let sentence = english(&Likeness::FitsNone(unlike));
    assert!(
        sentence.contains("over the jacket 1.808 to 1.814 in (45.9 to 46.1 mm) was read, errors included, by its papers it is "),
        "{sentence}"
    );
}
