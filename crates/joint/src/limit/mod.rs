//! Limit: the limits of a value, their sources, and the conclusions that a comparison allows.
//!
//! Why its own room: one place decides whether a value may rule at all, so no check can pass on somebody's memory.
//!
//! Invariants:
//! - Every limit has a source.
//! - Common practice may fail, never pass.
//! - A value from memory rules nothing until the owner confirms it.
//! - A missing input is `not-judged`.
//! - An error larger than the margin is `not-judged`.
//!
//! Not here: the value that a check compares (`checks`).

mod amount;
mod ask;
mod check_table;
pub mod fact_table;
mod memory;
mod ruling;

pub use amount::AmountQuestion;
pub use ask::{Ask, Fact, File, Who};
pub(crate) use check_table::check_list;
pub use check_table::{CheckRow, Lengths, OwnerLimits, Rests, TABLE, check_row, slugs};
pub use fact_table::fact_row;
pub use memory::{MEMORY_TEXT, MemoryRow, memory_keys, memory_row};
pub use ruling::{Datum, Outcome, Reach, Ruling};

use crate::said::{LimitSaid, Of, Read, Said};
pub use crate::said::{Subject, Word};
use jointwright_units::{Interval, Length, Toward};

/// Limit that an owner may set for the check of this name.
pub fn owner_limits(slug: &str) -> OwnerLimits {
    check_row(slug).map_or(OwnerLimits::Nothing, |row| row.owner)
}

/// Computed result that the check of this name rests on.
pub fn rests(slug: &str) -> Rests {
    check_row(slug).map_or(Rests::Nothing, |row| row.rests)
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

    /// Ask that would let a limit from this source rule.
    pub(crate) fn ask(&self, check: &str, subject: &Subject) -> Ask {
        match self {
            Word::Memory { key, .. } => fact_table::CONFIRMATION.of(key),
            _ if owner_limits(check) == OwnerLimits::Length => fact_table::LIMIT.of(check),
            _ => word_on(check, subject),
        }
    }
}

/// Ask for a named engineer's word on a question that no fact settles here.
pub fn word_on(check: &str, subject: &Subject) -> Ask {
    fact_table::WORD.of(Of::Check {
        check: check.to_owned(),
        of: Box::new(subject.clone().into()),
    })
}

/// Bound of a value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Bound {
    /// Least value.
    AtLeast(Length),
    /// Greatest value.
    AtMost(Length),
    /// Range, both ends included.
    Within(Interval),
}

/// A limit on a length, with its source.
#[derive(Clone, Debug, PartialEq)]
pub struct Limit {
    /// Bound.
    pub bound: Bound,
    /// Source.
    pub word: Word,
}

/// A length as known: read or computed, with its error.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Known {
    /// Value as read or computed, least to greatest.
    pub read: Interval,
    /// Error of either end.
    pub error: Length,
}

impl Known {
    /// Value without an error of its own.
    pub fn exact(read: Interval) -> Known {
        Known {
            read,
            error: Length::ZERO,
        }
    }
}

/// Standing of a value with respect to a bound.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// The value keeps to the bound, error included.
    Keeps,
    /// The value breaks the bound.
    Breaks,
    /// The value keeps to the bound by less than its own error.
    WithinError,
}

impl Bound {
    /// Standing of a value with respect to this bound; a value exactly at the bound keeps to it.
    ///
    /// A value read outside the bound breaks it, however large the instrument's error: the instructions' prohibition stays.
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

/// Question about a length: check, subject, value, limit.
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
    /// Whether this program computed the value from the instructions' numbers, or compared a reading.
    pub reach: Reach,
    /// Name of the quantity, for the crew: "the insulation of leg A, phase 1".
    pub what: Said,
    /// Advice if it fails.
    pub hint: Said,
}

impl Question<'_> {
    /// Judges the value by the rules of this room.
    pub fn rule(self) -> Ruling {
        let standing = self.limit.bound.standing(self.value);
        let word = &self.limit.word;
        let (outcome, why) = match standing {
            Standing::Breaks if word.may_fail() => (Outcome::Fail, Some(self.breaks())),
            Standing::Keeps if word.may_pass() => (Outcome::Pass, None),
            Standing::WithinError => {
                let margin = self.limit.bound.margin(self.value.read);
                let within = LimitSaid::WithinError {
                    what: self.what.clone(),
                    margin: self.read(margin, Toward::Shorter),
                    error: self.read(self.value.error, Toward::Longer),
                };
                (Outcome::NotJudged, Some(within))
            }
            _ => {
                let word = word.clone();
                (Outcome::NotJudged, Some(LimitSaid::MayNotRule { word }))
            }
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
            source: Some(word.clone().into()),
            why: why.map(Said::from),
            hint: (outcome == Outcome::Fail).then_some(self.hint),
            asks: Vec::new(),
            stops: false,
            closed_by: None,
            closed_until: None,
            reach: self.reach,
        };
        ruling.asking_all(asks)
    }

    /// Ask that would settle it while it is not judged.
    fn asks(&self, standing: Standing) -> Option<Ask> {
        match standing {
            Standing::WithinError if self.reach == Reach::Instructions => {
                Some(fact_table::READING_CLOSER.of(self.subject.clone()))
            }
            Standing::WithinError => Some(word_on(self.check, &self.subject)),
            _ => Some(self.limit.word.ask(self.check, &self.subject)),
        }
    }

    /// A length as a crew reads it, rounded to one side.
    fn read(&self, length: Length, toward: Toward) -> Read {
        if check_row(self.check).is_some_and(|row| row.lengths == Lengths::Across) {
            Read::diameter(length, toward)
        } else {
            Read::along(length, toward)
        }
    }

    /// Amount by which it breaks its limit; rounding never makes it look better than it is.
    fn breaks(&self) -> LimitSaid {
        let (least, greatest) = (self.value.read.least(), self.value.read.greatest());
        let below = |limit: Length| LimitSaid::Below {
            what: self.what.clone(),
            is: self.read(least, Toward::Shorter),
            by: self.read(limit - least, Toward::Longer),
            least: self.read(limit, Toward::Longer),
        };
        let above = |limit: Length| LimitSaid::Above {
            what: self.what.clone(),
            is: self.read(greatest, Toward::Longer),
            by: self.read(greatest - limit, Toward::Longer),
            greatest: self.read(limit, Toward::Shorter),
        };
        match self.limit.bound {
            Bound::AtLeast(limit) => below(limit),
            Bound::AtMost(limit) => above(limit),
            Bound::Within(limit) if least < limit.least() => below(limit.least()),
            Bound::Within(limit) => above(limit.greatest()),
        }
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
            what: "it".into(),
            hint: "".into(),
        };
        let ruling = question.rule();
        assert_eq!(ruling.outcome, expected);
        assert_eq!(ruling.why.is_some(), expected != Outcome::Pass);
        assert!(ruling.limit.is_some() && ruling.source.is_some());
    }

    fn paper() -> Word {
        Word::Instructions("x".into())
    }

    fn memory() -> Word {
        Word::Memory {
            key: "k".to_owned(),
            source: "x".into(),
        }
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
        let practice = || Word::CommonPractice("x".into());
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
            Word::Confirmed("x".into()),
            Outcome::Fail,
        );
    }
}
