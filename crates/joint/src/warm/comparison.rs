//! Comparison: a temperature under load, compared with the greatest that somebody allows.

use super::{HOTTEST_DEGC, LegAt, LegWarm, Warm, WarmJoint};
use crate::limit::{
    AmountQuestion, Ask, Outcome, Reach, Ruling, Subject, Word, fact_table as fact,
};
use crate::said::{HeatSaid, Of, RatingSaid, Said, WarmingSaid};

impl Warm {
    /// Returns the solved joint, or the rulings that replace it; no ruling if nobody asked.
    pub(crate) fn done(
        &self,
        check: &'static str,
        subject: Subject,
    ) -> Result<&WarmJoint, Vec<Ruling>> {
        match self {
            Warm::Done(done) => Ok(done),
            Warm::NotAsked => Err(Vec::new()),
            Warm::BodyOpen => {
                let why = RatingSaid::BodyLeftOpen.into();
                let why = HeatSaid::NotKnown { why };
                Err(vec![Ruling::not_judged(check, subject, why)])
            }
            Warm::Refused(why) => Err(vec![Ruling::not_judged(check, subject, why.clone())]),
            Warm::Unknown(unknown) => {
                let why = unknown.why.clone();
                let why = HeatSaid::NotKnown { why };
                let ruling = Ruling::not_judged(check, subject, why);
                Err(vec![match unknown.ask() {
                    None => ruling,
                    Some(ask) => ruling.with_hint(ask),
                }])
            }
        }
    }
}

/// Temperature under load, and its greatest allowed value.
pub(crate) struct Warmed<'a> {
    pub check: &'static str,
    pub subject: Subject,
    /// Name of the temperature for the crew: "conductor in demo-straight-15 at 320 A".
    pub what: Said,
    pub degc: f64,
    /// Error of the temperature, as a share of its rise.
    pub error_ratio: f64,
    /// Further error, K.
    pub error_k: f64,
    pub at: &'a LegAt,
    pub greatest_degc: f64,
    pub word: &'a Word,
    pub hint: Said,
}

impl Warmed<'_> {
    /// Rules on the temperature.
    pub fn rule(self) -> Ruling {
        let rise = (self.degc - self.at.surrounding_degc).max(0.0);
        AmountQuestion {
            check: self.check,
            what: Said::listed([Said::from(&self.subject), self.what]),
            subject: self.subject,
            value: self.degc,
            error: self.error_ratio * rise + self.error_k,
            least: None,
            greatest: Some(self.greatest_degc),
            unit: "degC",
            word: self.word,
            hint: self.hint,
        }
        .rule()
    }
}

impl WarmJoint {
    /// Weakens a ruling by the origin of these temperatures.
    ///
    /// Nothing is ruled on values from memory that the owner has not confirmed.
    /// Nothing passes on diameters that nobody read.
    pub fn weighed(&self, ruling: Ruling) -> Ruling {
        let rests_on_memory = !self.unconfirmed.is_empty();
        let passes_unread = ruling.outcome == Outcome::Pass && !self.unread.is_empty();
        if ruling.outcome == Outcome::NotJudged || !(rests_on_memory || passes_unread) {
            return ruling;
        }
        let (mut why, mut hints) = (Vec::new(), Vec::new());
        if rests_on_memory {
            let keys: Vec<String> = self.unconfirmed.iter().map(|key| key.to_string()).collect();
            why.push(Said::from(HeatSaid::RestOnMemory { keys: keys.clone() }));
            hints.push(Said::from(HeatSaid::AskToConfirm { keys }));
        }
        if !self.unread.is_empty() {
            let unread: Vec<Of> = self.unread.iter().map(|ask| ask.of.clone()).collect();
            let of = unread.clone();
            why.push(HeatSaid::PapersStandFor { unread: of }.into());
            hints.push(HeatSaid::AskToRead { unread }.into());
        }
        why.extend(ruling.why);
        let keys = self.unconfirmed.iter();
        let confirmations = keys.map(|key| fact::CONFIRMATION.of(*key));
        let asks: Vec<Ask> = confirmations.chain(self.unread.iter().cloned()).collect();
        let weighed = Ruling {
            outcome: Outcome::NotJudged,
            why: Some(Said::all(why)),
            hint: Some(Said::Sentences(hints)),
            ..ruling
        };
        weighed.asking_all(asks)
    }

    /// Index of a leg among the answers, and its answers.
    pub fn of(&self, leg: &str) -> Option<(usize, &LegWarm)> {
        self.legs.iter().enumerate().find(|(_, of)| of.leg == leg)
    }
}

/// Failing ruling for a load with thermal runaway: no temperature is the last one.
pub(crate) fn runs_away(
    check: &'static str,
    subject: Subject,
    greatest_degc: f64,
    word: &Word,
    hint: impl Into<Said>,
) -> Ruling {
    let past_degc = HOTTEST_DEGC;
    let why = Said::of(&subject, WarmingSaid::RunsAway { past_degc });
    let found = WarmingSaid::WithoutEnd;
    let limit = WarmingSaid::AtMost {
        degc: greatest_degc,
    };
    let ruling = Ruling::on_words(check, subject, found, limit, word.clone());
    Ruling {
        reach: Reach::Computed,
        ..ruling.failing(why, hint)
    }
}
