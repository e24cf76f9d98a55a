//! Limit: what a value must keep to, on whose word, and what may be concluded from it.
//!
//! Why its own room: whether a value may rule at all is decided in one place, so that no check can pass on somebody's memory.
//!
//! Invariants: every limit has a source; common practice may fail, never pass; a value from memory rules nothing until the owner confirms it; a missing input is `not-judged`; an error larger than the margin is `not-judged`.
//!
//! Not here: which value a check compares (`checks`).

mod amount;
mod ask;
mod check_table;
pub mod fact_table;
mod memory;
mod ruling;

pub use amount::AmountQuestion;
pub(crate) use amount::shown;
pub use ask::{Ask, Fact, File, Who};
pub use check_table::{CheckRow, OwnerLimits, Rests, TABLE, check_row, slugs};
pub use memory::{MEMORY_TEXT, MemoryRow, memory_keys, memory_row};
pub use ruling::{Datum, Outcome, Reach, Ruling, Subject};

use crate::cable::Words;
use jointwright_units::{Interval, Length, Toward};

/// What an owner may limit of a check of this name.
pub fn owner_limits(slug: &str) -> OwnerLimits {
    check_row(slug).map_or(OwnerLimits::Nothing, |row| row.owner)
}

/// What a check of this name rests on.
pub fn rests(slug: &str) -> Rests {
    check_row(slug).map_or(Rests::Nothing, |row| row.rests)
}

/// On whose word a limit stands.
#[derive(Clone, Debug, PartialEq)]
pub enum Word {
    /// The part's own instructions.
    Instructions(String),
    /// The owner's engineer, by name and date.
    Owner(String),
    /// Common practice, without a source.
    CommonPractice(String),
    /// From memory; the key under which the owner may confirm it.
    Memory {
        /// Key.
        key: String,
        /// Where it is remembered from.
        source: String,
    },
    /// From memory, and confirmed by the owner.
    Confirmed(String),
    /// The worst that the instructions allow, computed from their own rows.
    WorstAllowed(String),
    /// What the job itself states or asks for.
    Job(String),
}

impl Word {
    /// Whether a value that keeps to the limit may pass.
    pub fn may_pass(&self) -> bool {
        !matches!(self, Word::CommonPractice(_) | Word::Memory { .. })
    }

    /// Whether a value that breaks the limit may fail.
    pub fn may_fail(&self) -> bool {
        !matches!(self, Word::Memory { .. })
    }

    /// What would let a limit on this word rule.
    pub(crate) fn ask(&self, check: &str, subject: &Subject) -> Ask {
        match self {
            Word::Memory { key, .. } => fact_table::CONFIRMATION.of(key),
            _ if owner_limits(check) == OwnerLimits::Length => fact_table::LIMIT.of(check),
            _ => word_on(check, subject),
        }
    }

    /// The source as a ruling prints it.
    pub fn source(&self) -> String {
        match self {
            Word::Instructions(source) => format!("instructions: {source}"),
            Word::Owner(source) => format!("owner: {source}"),
            Word::CommonPractice(what) => format!("common practice, no source: {what}"),
            Word::Memory { key, source } => {
                format!("from memory, waits for the owner (key {key}): {source}")
            }
            Word::Confirmed(source) => format!("confirmed by the owner: {source}"),
            Word::WorstAllowed(source) => {
                format!("no worse than the worst the instructions allow: {source}")
            }
            Word::Job(source) => format!("job: {source}"),
        }
    }
}

/// The word of a named engineer on a question that no fact settles here.
pub fn word_on(check: &str, subject: &Subject) -> Ask {
    fact_table::WORD.of(format!("{check}, {}", subject.words()))
}

/// Where values must lie.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Bound {
    /// Not below.
    AtLeast(Length),
    /// Not above.
    AtMost(Length),
    /// Between, both ends included.
    Within(Interval),
}

/// A limit on a length, with its source.
#[derive(Clone, Debug, PartialEq)]
pub struct Limit {
    /// Where values must lie.
    pub bound: Bound,
    /// On whose word.
    pub word: Word,
}

/// A length as known: what was read or computed, and how far off that may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Known {
    /// What was read or computed, least to greatest.
    pub read: Interval,
    /// How far off either end may be.
    pub error: Length,
}

impl Known {
    /// Value without error of its own.
    pub fn exact(read: Interval) -> Known {
        Known {
            read,
            error: Length::ZERO,
        }
    }
}

/// How a value stands to a bound.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// It keeps to it, error included.
    Keeps,
    /// It breaks it.
    Breaks,
    /// It keeps to it by less than its own error.
    WithinError,
}

impl Bound {
    /// How a value stands to this bound; exactly at the bound keeps to it.
    ///
    /// A value read outside the bound breaks it, however large the instrument's error: what the instructions forbid stays forbidden.
    pub fn standing(&self, value: Known) -> Standing {
        let margin = self.margin(value.read);
        if margin < Length::ZERO {
            Standing::Breaks
        } else if margin < value.error {
            Standing::WithinError
        } else {
            Standing::Keeps
        }
    }

    /// Distance of the worse end of an interval from the bound; negative outside.
    pub fn margin(&self, value: Interval) -> Length {
        match self {
            Bound::AtLeast(limit) => value.least() - *limit,
            Bound::AtMost(limit) => *limit - value.greatest(),
            Bound::Within(limit) => {
                (value.least() - limit.least()).min(limit.greatest() - value.greatest())
            }
        }
    }

    /// The bound as it stands in a ruling, millimetres.
    pub fn datum(&self) -> Datum {
        match self {
            Bound::AtLeast(limit) | Bound::AtMost(limit) => Datum::Number(limit.mm()),
            Bound::Within(limit) => Datum::range(*limit),
        }
    }
}

/// What is asked of a length: check, whom it concerns, value, limit.
#[derive(Clone, Debug)]
pub struct Question<'a> {
    /// Check.
    pub check: &'static str,
    /// Leg or end.
    pub subject: Subject,
    /// Value.
    pub value: Known,
    /// Limit.
    pub limit: &'a Limit,
    /// Whether the value was computed by us from the instructions' numbers (as against read and compared).
    pub reach: Reach,
    /// What it is, for the crew: "the insulation of leg A, phase 1".
    pub what: String,
    /// What to do when it fails.
    pub hint: &'a str,
}

impl Question<'_> {
    /// The ruling, by the rules of this room; its sentence in the words and units of the job.
    pub fn rule(self, words: Words) -> Ruling {
        let standing = self.limit.bound.standing(self.value);
        let word = &self.limit.word;
        let (outcome, why) = match standing {
            Standing::Breaks if word.may_fail() => (Outcome::Fail, Some(self.sentence(words))),
            Standing::Keeps if word.may_pass() => (Outcome::Pass, None),
            Standing::WithinError => (
                Outcome::NotJudged,
                Some(format!(
                    "{} is inside by {}, less than the {} by which it may be off",
                    self.what,
                    self.said(
                        words,
                        self.limit.bound.margin(self.value.read),
                        Toward::Shorter
                    ),
                    self.said(words, self.value.error, Toward::Longer)
                )),
            ),
            _ => (
                Outcome::NotJudged,
                Some(format!("the limit may not rule: {}", word.source())),
            ),
        };
        let asks = self.asks(standing);
        let ruling = Ruling {
            check: self.check,
            subject: self.subject,
            outcome,
            value: Some(Datum::of(self.value.read)),
            limit: Some(self.limit.bound.datum()),
            unit: Some("mm"),
            margin: Some(self.limit.bound.margin(self.value.read).mm()),
            error: Some(self.value.error.mm()),
            decides: None,
            source: Some(word.source()),
            why,
            hint: (outcome == Outcome::Fail).then(|| self.hint.to_owned()),
            asks: Vec::new(),
            stops: false,
            closed_by: None,
            closed_until: None,
            reach: self.reach,
        };
        ruling.asking_all(asks)
    }

    /// What would settle it while it is not judged.
    fn asks(&self, standing: Standing) -> Option<Ask> {
        match standing {
            Standing::WithinError if self.reach == Reach::Instructions => {
                Some(fact_table::READING_CLOSER.of(self.subject.words()))
            }
            Standing::WithinError => Some(word_on(self.check, &self.subject)),
            _ => Some(self.limit.word.ask(self.check, &self.subject)),
        }
    }

    /// A length as a crew reads it, rounded to one side.
    fn said(&self, words: Words, length: Length, toward: Toward) -> String {
        if check_row(self.check).is_some_and(|row| row.is_of_diameters) {
            words.diameter(length, toward)
        } else {
            words.along(length, toward)
        }
    }

    /// By how much it breaks its limit, with nothing rounded to look better than it is.
    fn sentence(&self, words: Words) -> String {
        let (least, greatest) = (self.value.read.least(), self.value.read.greatest());
        let said = |length, toward| self.said(words, length, toward);
        let below = |limit: Length| {
            format!(
                "{} is {} below the least permitted, {}",
                said(least, Toward::Shorter),
                said(limit - least, Toward::Longer),
                said(limit, Toward::Longer)
            )
        };
        let above = |limit: Length| {
            format!(
                "{} is {} above the greatest permitted, {}",
                said(greatest, Toward::Longer),
                said(greatest - limit, Toward::Longer),
                said(limit, Toward::Shorter)
            )
        };
        let side = match self.limit.bound {
            Bound::AtLeast(limit) => below(limit),
            Bound::AtMost(limit) => above(limit),
            Bound::Within(limit) if least < limit.least() => below(limit.least()),
            Bound::Within(limit) => above(limit.greatest()),
        };
        format!("{}: {side}", self.what)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(mm: i64) -> Length {
        Length::MM * mm
    }

    #[track_caller]
    fn check(bound: Bound, read: (i64, i64), error_mm: i64, word: Word, expected: Outcome) {
        let limit = Limit { bound, word };
        let read = Interval::new(mm(read.0), mm(read.1)).expect("bounds in order");
        let question = Question {
            check: "insulation_in_body",
            subject: Subject::joint(),
            value: Known {
                read,
                error: mm(error_mm),
            },
            limit: &limit,
            reach: Reach::Instructions,
            what: "it".to_owned(),
            hint: "",
        };
        let ruling = question.rule(Words::Iec);
        assert_eq!(ruling.outcome, expected);
        assert_eq!(ruling.why.is_some(), expected != Outcome::Pass);
        assert!(ruling.limit.is_some() && ruling.source.is_some());
    }

    fn paper() -> Word {
        Word::Instructions("x".to_owned())
    }

    fn memory() -> Word {
        Word::Memory {
            key: "k".to_owned(),
            source: "x".to_owned(),
        }
    }

    #[test]
    fn issue_16_a_fail_says_its_lengths_in_the_units_of_the_job_and_none_looks_better_than_it_is() {
        let said = |check: &'static str, words: Words| {
            let limit = Limit {
                bound: Bound::AtLeast(Length::from_nm(75_000_000)),
                word: paper(),
            };
            let question = Question {
                check,
                subject: Subject::joint(),
                value: Known::exact(Interval::point(Length::from_nm(60_010_000))),
                limit: &limit,
                reach: Reach::Instructions,
                what: "it".to_owned(),
                hint: "",
            };
            question.rule(words).why.expect("a reason")
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

    #[test]
    fn inside_passes_outside_fails_and_the_bound_itself_passes() {
        check(Bound::AtLeast(mm(10)), (10, 12), 0, paper(), Outcome::Pass);
        check(Bound::AtLeast(mm(10)), (9, 12), 0, paper(), Outcome::Fail);
        check(Bound::AtMost(mm(12)), (10, 12), 0, paper(), Outcome::Pass);
        check(Bound::AtMost(mm(11)), (10, 12), 0, paper(), Outcome::Fail);
        check(
            Bound::Within(Interval::new(mm(9), mm(12)).unwrap()),
            (9, 12),
            0,
            paper(),
            Outcome::Pass,
        );
        check(
            Bound::Within(Interval::new(mm(9), mm(11)).unwrap()),
            (9, 12),
            0,
            paper(),
            Outcome::Fail,
        );
    }

    #[test]
    fn an_error_larger_than_the_margin_is_not_judged() {
        check(Bound::AtLeast(mm(10)), (11, 12), 1, paper(), Outcome::Pass);
        check(
            Bound::AtLeast(mm(10)),
            (11, 12),
            2,
            paper(),
            Outcome::NotJudged,
        );
    }

    #[test]
    fn a_reading_outside_fails_however_large_its_error() {
        check(Bound::AtLeast(mm(10)), (9, 12), 5, paper(), Outcome::Fail);
    }

    #[test]
    fn common_practice_may_fail_and_never_pass() {
        let practice = || Word::CommonPractice("x".to_owned());
        check(
            Bound::AtLeast(mm(10)),
            (11, 12),
            0,
            practice(),
            Outcome::NotJudged,
        );
        check(
            Bound::AtLeast(mm(10)),
            (9, 12),
            0,
            practice(),
            Outcome::Fail,
        );
    }

    #[test]
    fn memory_rules_nothing_until_it_is_confirmed() {
        check(
            Bound::AtLeast(mm(10)),
            (11, 12),
            0,
            memory(),
            Outcome::NotJudged,
        );
        check(
            Bound::AtLeast(mm(10)),
            (9, 12),
            0,
            memory(),
            Outcome::NotJudged,
        );
        check(
            Bound::AtLeast(mm(10)),
            (9, 12),
            0,
            Word::Confirmed("x".to_owned()),
            Outcome::Fail,
        );
    }
}
