//! Sentences about a value beside its limit.

use jointwright_joint::cable::Words;
use jointwright_joint::limit::{Bound, Known, Limit, Question, Reach, Subject, Word};
use jointwright_joint::said::Wording;
use jointwright_units::{Interval, Length};
use jointwright_wording::Tongue;

#[test]
fn issue_16_a_fail_says_its_lengths_in_the_units_of_the_job_and_none_looks_better_than_it_is() {
    let said = |check: &'static str, words: Words| {
        let limit = Limit {
            bound: Bound::AtLeast(Length::from_nm(75_000_000)),
            word: Word::Instructions("x".into()),
        };
        let question = Question {
            check,
            subject: Subject::joint(),
            value: Known::exact(Interval::point(Length::from_nm(60_010_000))),
            limit: &limit,
            reach: Reach::Instructions,
            what: "it".into(),
            hint: "".into(),
        };
        let why = question.rule().why.expect("a reason");
        Tongue::english(words).say(&why)
    };
    // 60.01 mm are 2.3626 in and 151.2 sixty-fourths: down; 14.99 mm are 37.8 of them: up; 75 mm are 189.0: up.
    assert_eq!(
        said("park_room", Words::Us),
        "it: 2 23/64 in (60.01 mm) is 19/32 in (14.99 mm) below the least permitted, 2 61/64 in (75.0 mm)"
    );
    assert_eq!(
        said("mouth_fit", Words::Us),
        "it: 2.362 in (60.01 mm) is 0.591 in (14.99 mm) below the least permitted, 2.953 in (75.0 mm)"
    );
    assert_eq!(
        said("park_room", Words::Iec),
        "it: 60.01 mm is 14.99 mm below the least permitted, 75.0 mm"
    );
}
