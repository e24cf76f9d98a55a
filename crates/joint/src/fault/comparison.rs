//! Comparison: a temperature or a current of a short circuit, compared with the greatest that somebody allows.

use super::{Fault, melts_degc};
use crate::cable::Metal;
use crate::catalogue::{Head, Withstand};
use crate::limit::{AmountQuestion, Ruling, Subject, Word, fact_table, word_on};
use crate::said::{FaultHeatSaid, HeatedMetal, Said};

/// A metal heated by a short circuit, with the greatest temperature that it may reach.
pub(crate) struct Heated<'a> {
    pub check: &'static str,
    pub subject: Subject,
    /// Metal part.
    pub what: HeatedMetal,
    pub fault: &'a Fault,
    pub metal: Metal,
    /// Least and greatest area, mm².
    pub area_mm2: (f64, f64),
    /// Temperature at the start: the highest in service.
    pub from_degc: f64,
    pub greatest_degc: f64,
    pub word: &'a Word,
    pub hint: Said,
}

impl Heated<'_> {
    /// Passes if the temperature with the least area keeps to the limit, fails if the temperature with the greatest area does not; otherwise it is not judged.
    pub fn rule(self) -> Ruling {
        let melts = melts_degc(self.metal);
        // No paper allows metal to melt.
        let greatest = self.greatest_degc.min(melts - 1.0);
        let heated = |area| {
            let heated = self.fault.heated_degc(self.metal, area, self.from_degc);
            tenths(heated.min(melts), greatest)
        };
        let (hot, cool) = (heated(self.area_mm2.0), heated(self.area_mm2.1));
        let is_between = hot > greatest && cool <= greatest;
        let subject = self.subject;
        let value = if cool > greatest { cool } else { hot };
        let it_melts = hot >= melts;
        let heats = Said::from(FaultHeatSaid::Heats {
            subject: subject.clone(),
            what: self.what,
            fault: self.fault.shots(),
            from_degc: self.from_degc,
        });
        if is_between {
            let between = FaultHeatSaid::HeatsBetween {
                cool_degc: cool,
                hot_degc: hot,
                it_melts,
                greatest_degc: greatest,
            };
            let why = Said::of(Said::aside(between, self.word), heats);
            let ask = Said::Questions(vec![FaultHeatSaid::AskWhatShieldCarries.into()]);
            let word = word_on(self.check, &subject);
            let ruling = Ruling::not_judged(self.check, subject, why);
            return ruling.with_hint(ask).asking(word);
        }
        let what = if cool > greatest && cool < melts && hot > cool {
            FaultHeatSaid::HeatsUpTo {
                heats,
                hot_degc: hot,
                it_melts,
            }
            .into()
        } else if it_melts {
            FaultHeatSaid::HeatsToMelting { heats }.into()
        } else {
            heats
        };
        AmountQuestion {
            check: self.check,
            subject,
            what,
            value,
            error: 0.0,
            least: None,
            greatest: Some(greatest),
            unit: "degC",
            word: self.word,
            hint: self.hint,
        }
        .rule()
    }
}

/// A short circuit, with the short circuit that a part's paper allows.
pub(crate) struct Withstood<'a> {
    pub check: &'static str,
    pub subject: Subject,
    pub part: &'a Head,
    pub withstands: Option<Withstand>,
    pub fault: &'a Fault,
    pub hint: Said,
}

impl Withstood<'_> {
    /// Rulings on the current and on its heat.
    pub fn rule(self) -> Vec<Ruling> {
        let id = &self.part.id;
        let Some(withstands) = self.withstands else {
            let why = FaultHeatSaid::RowSaysNoFault { row: id.clone() };
            let ask = FaultHeatSaid::AskWhatFlowsThrough { part: id.clone() };
            let ask = Said::Questions(vec![ask.into()]);
            let ruling = Ruling::not_judged(self.check, self.subject, why).with_hint(ask);
            return vec![ruling.asking(fact_table::WITHSTANDS.of(id))];
        };
        let word = Word::Instructions(self.part.source().into());
        let current = AmountQuestion {
            check: self.check,
            subject: self.subject.clone(),
            what: FaultHeatSaid::CurrentThrough {
                subject: self.subject.clone(),
                part: id.clone(),
            }
            .into(),
            value: self.fault.current_a * 1e-3,
            error: 0.0,
            least: None,
            greatest: Some(withstands.current_a * 1e-3),
            unit: "kA",
            word: &word,
            hint: self.hint,
        };
        let given = withstands.current_a * withstands.current_a * withstands.time_s * 1e-6;
        // The same product in another order of operations is no excess.
        let squared = self.fault.square_ka2_s();
        let is_same = (squared / given - 1.0).abs() < SAME;
        let square = AmountQuestion {
            what: FaultHeatSaid::SquareThrough {
                subject: self.subject.clone(),
                part: id.clone(),
                fault: self.fault.shots(),
            }
            .into(),
            value: if is_same { given } else { squared },
            greatest: Some(given),
            unit: "kA2 s",
            ..current.clone()
        };
        vec![current.rule(), square.rule()]
    }
}

/// Relative difference below which two products of the same numbers are equal.
const SAME: f64 = 1e-9;

/// Rounds to tenths, unless that would move the value across its limit.
fn tenths(value: f64, limit: f64) -> f64 {
    let rounded = (value * 10.0).round() / 10.0;
    if (rounded > limit) == (value > limit) {
        rounded
    } else {
        value
    }
}
