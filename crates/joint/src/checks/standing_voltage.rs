//! Does the voltage along a shield that is open at one end stay below what the owner allows, at the stated load?
//!
//! It takes the greatest voltage of the three shields, with balanced currents and the warm side of every range.
//! Nothing passes if the owner sets no limit: no voltage is called harmless.
//! An earth fault drives a higher voltage, which is not computed.
//!
//! Source: the owner's limit; ieee_575, memory.

use super::{Inputs, LegInputs, slug};
use crate::limit::{AmountQuestion, Ruling, Word, fact_table as fact};
use crate::said::{Said, VoltageSaid, WarmingSaid};
use crate::shielding::{Stands, standing};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let job = &inputs.order.job;
    let not_judged = |why: Said| Ruling::not_judged(CHECK, leg.subject(), why);
    let limits: Vec<(f64, Word)> = job
        .limits_of(CHECK)
        .filter_map(|row| Some((row.greatest_v?, Word::Owner(row.source.clone().into()))))
        .collect();
    let stands = match standing(job, leg.leg) {
        Ok(Stands::Open(stands)) => stands,
        // No shield is open at one end, so there is nothing to check.
        Ok(Stands::Bonded(_)) => return Vec::new(),
        Err(unknown) => {
            let ask = Said::Questions(unknown.questions);
            let asks = leg.missing(inputs).standing();
            return vec![not_judged(unknown.why).with_hint(ask).asking_all(asks)];
        }
    };
    let Some(load_a) = job.load_of_a(leg.leg) else {
        let why = WarmingSaid::not_stated("duty.load");
        return vec![not_judged(why.into()).asking(fact::LOAD.of(""))];
    };
    // An emergency raises the voltage in proportion to the current.
    let load_a = job.emergency_of_a(leg.leg).unwrap_or(load_a).max(load_a);
    let volts = stands.voltage_v(load_a);
    if limits.is_empty() {
        let why = VoltageSaid::NobodyLimits {
            volts,
            length_m: stands.length_m,
            load_a,
        };
        let ask = Said::Questions(vec![VoltageSaid::AskWhatMayStand.into()]);
        let limit = fact::LIMIT.of(CHECK);
        return vec![not_judged(why.into()).with_hint(ask).asking(limit)];
    }
    let rule = |(greatest_v, word): (f64, Word)| {
        AmountQuestion {
            check: CHECK,
            subject: leg.subject(),
            what: VoltageSaid::AtOpenEnd {
                subject: leg.subject(),
                length_m: stands.length_m,
                load_a,
            }
            .into(),
            value: volts,
            error: 0.0,
            least: None,
            greatest: Some(greatest_v),
            unit: "V",
            word: &word,
            hint: VoltageSaid::TooMuch.into(),
        }
        .rule()
    };
    limits.into_iter().map(rule).collect()
}
