//! Does the bonding lead, heated by the stated short circuit of the shield, stay below what its paper allows it?
//!
//! It carries the whole current and starts at the highest temperature of the conductor; no heat leaves the metal.
//!
//! Source: the lead's own paper, as the job states it; icea_p32382.

use super::{Inputs, LegInputs, slug};
use crate::fault::{Fault, Heated, start_degc};
use crate::limit::{Ruling, Word, fact_table as fact};
use crate::said::{HeatedMetal, LoadSaid, Said};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let Some(lead) = &leg.leg.bonding_lead else {
        return Vec::new();
    };
    let job = &inputs.order.job;
    let Some(greatest_degc) = lead.fault_greatest_degc else {
        let why = LoadSaid::LeadGreatestNotStated;
        let ask = Said::ask(LoadSaid::AskLeadGreatest);
        let ruling = Ruling::not_judged(CHECK, leg.subject(), why).with_hint(ask);
        let missing = leg.missing(inputs);
        let fault = missing
            .fault_start()
            .into_iter()
            .chain(missing.shield_fault());
        return vec![
            ruling
                .asking(fact::BONDING_LEAD.of(&leg.leg.id))
                .asking_all(fault),
        ];
    };
    let (from_degc, fault) = match (start_degc(job), Fault::of_shield(job, leg.leg)) {
        (Ok(from_degc), Ok(fault)) => (from_degc, fault),
        (Err(why), _) | (_, Err(why)) => {
            let missing = leg.missing(inputs);
            let ruling = Ruling::not_judged(CHECK, leg.subject(), why);
            let asks = missing
                .fault_start()
                .into_iter()
                .chain(missing.shield_fault());
            return vec![ruling.asking_all(asks)];
        }
    };
    let ruling = Heated {
        check: CHECK,
        subject: leg.subject(),
        what: HeatedMetal::BondingLead,
        fault: &fault,
        metal: lead.metal,
        area_mm2: (lead.area_mm2, lead.area_mm2),
        from_degc,
        greatest_degc,
        word: &Word::Job(LoadSaid::PaperOfLead.into()),
        hint: LoadSaid::LeadTooSmall.into(),
    };
    vec![ruling.rule()]
}
