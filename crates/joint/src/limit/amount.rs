//! Amount: a computed number with its limits, by the same rules as a length.

use super::{Datum, Outcome, Reach, Ruling, Subject, Word};
use crate::said::{LimitSaid, Said};

/// Question about a computed number.
#[derive(Clone, Debug)]
pub struct AmountQuestion<'a> {
    /// Check.
    pub check: &'static str,
    /// Leg or end.
    pub subject: Subject,
    /// Name of the quantity, for the crew.
    pub what: Said,
    /// Number, in the unit.
    pub value: f64,
    /// Error of the number and its limit together, in the unit.
    pub error: f64,
    /// Least allowed value, if there is one.
    pub least: Option<f64>,
    /// Greatest allowed value, if there is one.
    pub greatest: Option<f64>,
    /// Unit of all these numbers.
    pub unit: &'static str,
    /// Source of the limit.
    pub word: &'a Word,
    /// Advice if it fails.
    pub hint: Said,
}

impl AmountQuestion<'_> {
    /// Judges the number: outside the limit it fails, inside it passes; if the distance is less than the error, either way, it is not judged.
    pub fn rule(self) -> Ruling {
        let below = self
            .greatest
            .map_or(f64::INFINITY, |most| most - self.value);
        let above = self.least.map_or(f64::INFINITY, |least| self.value - least);
        let margin = below.min(above);
        let limit = self.greatest.or(self.least).unwrap_or(f64::INFINITY);
        let unit = self.unit;
        let (outcome, why) = if margin.abs() < self.error {
            let why = LimitSaid::AmountWithinError {
                what: self.what.clone(),
                is_inside: margin >= 0.0,
                margin: margin.abs(),
                error: self.error,
                unit: unit.to_owned(),
            };
            (Outcome::NotJudged, Some(why))
        } else if margin < 0.0 && self.word.may_fail() {
            let why = self.breaks(below < above, -margin, limit);
            (Outcome::Fail, Some(why))
        } else if margin < 0.0 || !self.word.may_pass() {
            let word = self.word.clone();
            (Outcome::NotJudged, Some(LimitSaid::MayNotRule { word }))
        } else {
            (Outcome::Pass, None)
        };
        let ask = if margin.abs() < self.error {
            super::word_on(self.check, &self.subject)
        } else {
            self.word.ask(self.check, &self.subject)
        };
        let ruling = Ruling {
            check: self.check,
            subject: self.subject,
            outcome,
            value: Some(Datum::Number(self.value)),
            limit: Some(Datum::Number(limit)),
            unit: Some(unit),
            margin: Some(margin),
            error: Some(self.error).filter(|error| error.is_finite()),
            decides: None,
            source: Some(self.word.clone().into()),
            why: why.map(Said::from),
            hint: (outcome == Outcome::Fail).then_some(self.hint),
            asks: Vec::new(),
            stops: false,
            closed_by: None,
            closed_until: None,
            reach: Reach::Computed,
        };
        ruling.asking(ask)
    }

    /// Amount by which it breaks its limit.
    fn breaks(&self, is_above: bool, by: f64, limit: f64) -> LimitSaid {
        let (what, value, unit) = (self.what.clone(), self.value, self.unit.to_owned());
        if is_above {
            LimitSaid::AmountAbove {
                what,
                value,
                by,
                greatest: limit,
                unit,
            }
        } else {
            LimitSaid::AmountBelow {
                what,
                value,
                by,
                least: limit,
                unit,
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(value: f64, error: f64, word: &Word, expected: Outcome) {
        let ruling = AmountQuestion {
            check: "interface_stress",
            subject: Subject::leg("A"),
            what: "it".into(),
            value,
            error,
            least: None,
            greatest: Some(1.0),
            unit: "kV/mm",
            word,
            hint: "".into(),
        }
        .rule();
        assert_eq!(ruling.outcome, expected, "{value} ± {error}");
        assert_eq!(ruling.why.is_some(), expected != Outcome::Pass);
    }

    #[test]
    fn an_amount_is_ruled_like_a_length() {
        let allowed = Word::WorstAllowed("x".into());
        check(0.9, 0.05, &allowed, Outcome::Pass);
        check(0.97, 0.05, &allowed, Outcome::NotJudged);
        check(1.0, 0.0, &allowed, Outcome::Pass);
        check(1.01, 0.05, &allowed, Outcome::NotJudged);
        check(1.1, 0.05, &allowed, Outcome::Fail);
        let practice = Word::CommonPractice("x".into());
        check(0.5, 0.0, &practice, Outcome::NotJudged);
        check(1.5, 0.0, &practice, Outcome::Fail);
        let memory = Word::Memory {
            key: "k".to_owned(),
            source: "x".into(),
        };
        check(1.5, 0.0, &memory, Outcome::NotJudged);
    }
}
