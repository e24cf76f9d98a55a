//! Does the conductor, heated by the stated short circuit, stay below the temperature for which the body's paper gives the joint?
//!
//! The conductor starts at the highest temperature in service, no heat leaves the metal, and all shots count together: the warm side.
//! The limit is the body's own; the cable's permitted temperature does not apply to the joint.
//!
//! Source: the body's own instructions; icea_p32382.

use super::{Inputs, LegInputs, slug};
use crate::fault::{Fault, Heated, conductor_area_mm2, start_degc};
use crate::limit::{Ruling, Word, fact_table as fact};
use crate::said::{HeatedMetal, Said, ShortCircuitSaid};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let Some(body) = leg.chosen.body else {
        return Vec::new();
    };
    // All missing facts are asked for at once.
    let missing = leg.missing(inputs);
    let not_judged = |why: Said| {
        let limit = body.conductor_fault_greatest_degc.is_none();
        let limit = limit.then(|| fact::FAULT_GREATEST.of(&body.head.id));
        let asks = limit.into_iter().chain(missing.fault_start());
        let ruling = Ruling::not_judged(CHECK, leg.subject(), why);
        ruling.asking_all(asks).asking_all(missing.fault())
    };
    let duty = &inputs.order.job.duty;
    let id = &body.head.id;
    let Some(greatest_degc) = body.conductor_fault_greatest_degc else {
        let why = ShortCircuitSaid::FaultGreatestNotSaid { row: id.clone() };
        let ask = ShortCircuitSaid::AskFaultGreatest { body: id.clone() };
        let ask = Said::Questions(vec![ask.into()]);
        return vec![not_judged(why.into()).with_hint(ask)];
    };
    let from_degc = match start_degc(&inputs.order.job) {
        Ok(degc) => degc,
        Err(why) => return vec![not_judged(why)],
    };
    let fault = match Fault::of_conductor(duty) {
        Ok(fault) => fault,
        Err(why) => return vec![not_judged(why)],
    };
    let area = match conductor_area_mm2(&leg.leg.cable) {
        Ok(area) => area,
        Err(why) => {
            return vec![not_judged(why).asking(fact::CABLE.of(leg.subject()))];
        }
    };
    let ruling = Heated {
        check: CHECK,
        subject: leg.subject(),
        what: HeatedMetal::Conductor,
        fault: &fault,
        metal: leg.leg.cable.conductor.metal,
        area_mm2: (area, area),
        from_degc,
        greatest_degc,
        word: &Word::Instructions(body.head.source().into()),
        hint: ShortCircuitSaid::ConductorTooHot.into(),
    };
    vec![ruling.rule()]
}
