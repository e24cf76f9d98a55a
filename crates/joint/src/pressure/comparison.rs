//! Comparison: the pressure of a part on one end, compared with the worst that somebody allows.

use super::{Compared, Pressed, Seat, Sit, Warmth};
use crate::limit::{AmountQuestion, Outcome, Ruling, Subject, Word};
use crate::said::{Pressing, PressureHint, PressureRuled, PressureSaid, Said, Sits};
use crate::section::Unknown;

/// A part of rubber on one end, and the check that judges it.
pub(crate) struct Sitting<'a> {
    pub check: &'static str,
    /// Pressure that is judged.
    pub what: Pressing,
    pub subject: Subject,
    pub pressed: &'a Pressed,
    /// Advice if it fails.
    pub hint: PressureHint,
}

impl<'a> Sitting<'a> {
    /// Returns the computed pressures, or the rulings that replace them; no ruling if nobody asked.
    pub fn sit(&self) -> Result<&'a Sit, Vec<Ruling>> {
        let not_judged = |why: Said| vec![self.not_judged(why)];
        match self.pressed {
            Pressed::Done(sit) => Ok(sit),
            Pressed::NotAsked => Err(Vec::new()),
            Pressed::Past(why) => Err(not_judged(Said::of(
                self.what,
                Said::of(PressureRuled::NothingOfPast, why),
            ))),
            Pressed::Refused(why) => Err(not_judged(Said::of(self.what, why))),
            Pressed::Loose(why) => Err(vec![self.loose(why)]),
            Pressed::Unknown(unknown) => Err(vec![self.unknown(self.what, unknown)]),
        }
    }

    /// Not judged, for this reason.
    pub fn not_judged(&self, why: impl Into<Said>) -> Ruling {
        Ruling::not_judged(self.check, self.subject.clone(), why)
    }

    fn loose(&self, why: &Said) -> Ruling {
        let practice = Word::CommonPractice(PressureRuled::WhatDoesNotTouch.into());
        let (check, subject) = (self.check, self.subject.clone());
        let (found, wanted) = (PressureRuled::DoesNotTouch, PressureRuled::PressedOn);
        let ruling = Ruling::on_words(check, subject, found, wanted, practice);
        let subject = Said::from(&self.subject);
        ruling.failing(Said::listed([subject, why.clone()]), self.hint)
    }

    /// Advice: about a part that is too large, or about a used-up kit on a cable of its range.
    fn hint_for(&self, sit: &Sit) -> PressureHint {
        let is_in_range = sit.seat.here_m.0 - sit.seat.error_m >= sit.seat.allowed_m.0;
        if is_in_range {
            PressureHint::UsedUp
        } else {
            self.hint
        }
    }

    fn unknown(&self, about: impl Into<Said>, unknown: &Unknown) -> Ruling {
        let ruling = self.not_judged(Said::of(about, &unknown.why));
        match unknown.ask() {
            None => ruling,
            Some(ask) => ruling.with_hint(ask),
        }
    }

    /// Rulings on a least pressure: first against the worst allowed, then against the pressures asked for.
    pub fn rule(&self, sit: &Sit, compared: &Compared, asked_pa: &[(f64, Word)]) -> Vec<Ruling> {
        let mut rulings = vec![self.against_allowed(sit, compared)];
        if let Err(unknown) = &sit.heat {
            // As read, it may only fail: it cannot pass while the temperatures are unknown.
            rulings.retain(|ruling| ruling.outcome == Outcome::Fail);
            let about = PressureRuled::OverTemperatures(self.what);
            rulings.push(self.unknown(about, unknown));
        }
        let asked = asked_pa.iter();
        rulings.extend(asked.map(|(pa, word)| self.against_pressure(sit, compared, *pa, word)));
        rulings
    }

    /// The part, its seat and the judged pressure.
    pub fn sits(&self, sit: &Sit) -> Sits {
        Sits {
            subject: self.subject.clone(),
            what: self.what,
            part: sit.id.clone(),
            on: sit.seat.on.clone(),
        }
    }

    fn against_allowed(&self, sit: &Sit, compared: &Compared) -> Ruling {
        let oldest = sit.kit.oldest_of;
        let source = std::iter::once(Said::from(&sit.source)).chain(oldest.map(Said::from));
        let ruling = AmountQuestion {
            check: self.check,
            subject: self.subject.clone(),
            what: PressureRuled::AgainstWorst(self.sits(sit)).into(),
            value: compared.ratio,
            error: compared.error_ratio,
            least: Some(1.0),
            greatest: None,
            unit: "times",
            word: &Word::WorstAllowed(Said::listed(source)),
            hint: self.hint_for(sit).into(),
        }
        .rule();
        let ruling = match ruling.outcome {
            Outcome::Fail => Ruling {
                why: Some(
                    PressureRuled::TimesWorst {
                        sits: self.sits(sit),
                        ratio: compared.ratio,
                        least_mm: 2e3 * sit.seat.allowed_m.0,
                        oldest,
                        warmth: compared.warmth.map(Warmth::said),
                    }
                    .into(),
                ),
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
            what: PressureRuled::AtWarmth {
                sits: self.sits(sit),
                warmth: compared.pressure_warmth.map(Warmth::said),
            }
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

    /// Replaces a pass unless the readings show the thinnest and the thickest place.
    pub fn unless_not_read_around(&self, ruling: Ruling, seat: &Seat) -> Ruling {
        if seat.is_read_around || ruling.outcome != Outcome::Pass {
            return ruling;
        }
        self.not_judged(Said::of(self.what, PressureRuled::NotReadAround))
            .with_hint(PressureHint::ReadFour)
    }
}
