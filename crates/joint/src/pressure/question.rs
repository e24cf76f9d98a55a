//! Question: how hard a part sits on one end, beside the worst that somebody allows.

use super::{Compared, Pressed, Seat, Sit};
use crate::limit::{AmountQuestion, Outcome, Ruling, Subject, Word};
use crate::said::{PressureSaid, Said};
use crate::section::Unknown;

/// Of a kit that the store has used up.
pub(crate) const USED_UP: &str =
    "Stop. Do not use it on this leg. Set it aside, marked, and take another.";

/// A part of rubber on one end, and what is said of it.
pub(crate) struct Sitting<'a> {
    pub check: &'static str,
    /// What it is, for the crew: "pressure".
    pub what: &'a str,
    pub subject: Subject,
    pub pressed: &'a Pressed,
    pub hint: &'a str,
}

impl<'a> Sitting<'a> {
    /// What was computed, or the rulings for want of it; none where nobody asked.
    pub fn sit(&self) -> Result<&'a Sit, Vec<Ruling>> {
        let not_judged = |why: Said| vec![self.not_judged(why)];
        match self.pressed {
            Pressed::Done(sit) => Ok(sit),
            Pressed::NotAsked => Err(Vec::new()),
            Pressed::Past(why) => Err(not_judged(Said::of(
                self.what,
                Said::of("nothing is computed of a part that is past its date", why),
            ))),
            Pressed::Refused(why) => Err(not_judged(Said::of(self.what, why))),
            Pressed::Loose(why) => Err(vec![self.loose(why)]),
            Pressed::Unknown(unknown) => Err(vec![self.unknown("", unknown)]),
        }
    }

    /// Nothing is said, for this reason.
    pub fn not_judged(&self, why: impl Into<Said>) -> Ruling {
        Ruling::not_judged(self.check, self.subject.clone(), why)
    }

    fn loose(&self, why: &Said) -> Ruling {
        let practice = Word::CommonPractice("what does not touch does not sit".into());
        let (check, subject) = (self.check, self.subject.clone());
        let ruling = Ruling::on_words(check, subject, "does not touch", "pressed on", practice);
        let subject = self.subject.words().into();
        ruling.failing(Said::listed([subject, why.clone()]), self.hint)
    }

    /// What to do: about a part that is too large, or about a kit that is used up on a cable of its range.
    fn hint_for(&self, sit: &Sit) -> &'a str {
        let is_in_range = sit.seat.here_m.0 - sit.seat.error_m >= sit.seat.allowed_m.0;
        if is_in_range { USED_UP } else { self.hint }
    }

    fn unknown(&self, when: &str, unknown: &Unknown) -> Ruling {
        let about = format!("{}{when}", self.what);
        let ruling = self.not_judged(Said::of(about, &unknown.why));
        match unknown.ask() {
            None => ruling,
            Some(ask) => ruling.with_hint(ask),
        }
    }

    /// Rulings on a least pressure: against the worst allowed, then against what is asked for.
    pub fn rule(&self, sit: &Sit, compared: &Compared, asked_pa: &[(f64, Word)]) -> Vec<Ruling> {
        let mut rulings = vec![self.against_allowed(sit, compared)];
        if let Err(unknown) = &sit.heat {
            // As read it may fail, and says nothing else while the temperatures are open.
            rulings.retain(|ruling| ruling.outcome == Outcome::Fail);
            let when = " over the temperatures of this joint";
            rulings.push(self.unknown(when, unknown));
        }
        let asked = asked_pa.iter();
        rulings.extend(asked.map(|(pa, word)| self.against_pressure(sit, compared, *pa, word)));
        rulings
    }

    fn against_allowed(&self, sit: &Sit, compared: &Compared) -> Ruling {
        let oldest = &sit.kit.oldest_words;
        let separator = if oldest.is_empty() { "" } else { ", " };
        let ruling = AmountQuestion {
            check: self.check,
            subject: self.subject.clone(),
            what: format!(
                "{}, {} of {} on the {}, against the worst that its instructions allow",
                self.subject.words(),
                self.what,
                sit.id,
                sit.seat.on
            )
            .into(),
            value: compared.ratio,
            error: compared.error_ratio,
            least: Some(1.0),
            greatest: None,
            unit: "times",
            word: &Word::WorstAllowed(format!("{}{separator}{oldest}", sit.source).into()),
            hint: self.hint_for(sit).into(),
        }
        .rule();
        let ruling = match ruling.outcome {
            Outcome::Fail => Ruling {
                why: Some(format!(
                    "{}, {} of {} on the {}: {:.2} times the worst that its instructions allow, {:.1} mm{separator}{oldest}{}",
                    self.subject.words(),
                    self.what,
                    sit.id,
                    sit.seat.on,
                    compared.ratio,
                    2e3 * sit.seat.allowed_m.0,
                    compared
                        .warmth
                        .map_or(String::new(), |warmth| format!("; {}", warmth.words()))
                ).into()),
                ..ruling
            },
            _ => ruling,
        };
        self.unless_not_read_around(ruling, &sit.seat)
    }

    fn against_pressure(&self, sit: &Sit, compared: &Compared, pa: f64, word: &Word) -> Ruling {
        let (Some(pressure), Ok(_)) = (compared.pressure_pa, &sit.heat) else {
            return self.not_judged(PressureSaid::AskedButNotSaid {
                what: self.what.into(),
                kpa: pa * 1e-3,
                word: word.clone(),
            });
        };
        let ruling = AmountQuestion {
            check: self.check,
            subject: self.subject.clone(),
            what: format!(
                "{}, {} of {} on the {}, {}",
                self.subject.words(),
                self.what,
                sit.id,
                sit.seat.on,
                compared
                    .pressure_warmth
                    .map_or(String::new(), |warmth| warmth.words())
            )
            .into(),
            value: pressure * 1e-3,
            error: compared.pressure_error_pa * 1e-3,
            least: Some(pa * 1e-3),
            greatest: None,
            unit: "kPa",
            word,
            hint: self.hint.into(),
        }
        .rule();
        self.unless_not_read_around(ruling, &sit.seat)
    }

    /// A pass needs readings that show the thinnest and the thickest place.
    pub fn unless_not_read_around(&self, ruling: Ruling, seat: &Seat) -> Ruling {
        if seat.is_read_around || ruling.outcome != Outcome::Pass {
            return ruling;
        }
        let why = format!(
            "{}: a tape, or fewer than four diameters around the cable, say nothing of its thinnest and thickest place",
            self.what
        );
        self.not_judged(why)
            .with_hint("Read four diameters around the cable, with a calliper.")
    }
}
