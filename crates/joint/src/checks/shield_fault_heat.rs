//! Does the cable's metallic shield, heated by the stated short circuit, stay below what the cable's papers allow it?
//!
//! Each leg's shield carries the whole stated current, unless the job states that of the leg: currents do not share out by section.
//! It begins at the highest temperature of the conductor, which no shield exceeds in service.
//! An old lapped tape is judged between a helix and a tube.
//!
//! Source: the cable's own papers, as the job states them; icea_p32382, icea_p45482.

use super::{Check, Inputs, Judge, LegInputs};
use crate::cable::Layer;
use crate::fault::{Fault, Heated, shield_area_mm2, start_degc};
use crate::limit::{Ruling, Word};
use crate::survey::measured;

pub(super) const CHECK: Check = Check {
    slug: "shield_fault_heat",
    question: "Does the cable's metallic shield, heated by the stated short circuit, stay below what the cable's papers allow it?",
    judge: Judge::Leg(judge),
};

const HINT: &str = "Stop and call: this shield does not carry the stated short circuit. The engineer decides on fault level, clearing time, or how the current returns.";

fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let not_judged = |why: String| Ruling::not_judged(CHECK.slug, leg.subject(), why);
    let asked = [
        (leg.leg.shield_metal.is_none(), "shield.metal"),
        (
            leg.leg.shield_fault_greatest_degc.is_none(),
            "shield.fault_greatest",
        ),
    ];
    let open = asked.iter().filter(|(is_open, _)| *is_open);
    let open: Vec<&str> = open.map(|(_, name)| *name).collect();
    let (Some(metal), Some(greatest_degc)) =
        (leg.leg.shield_metal, leg.leg.shield_fault_greatest_degc)
    else {
        let why = format!("the job does not state the cable's {}", open.join(", "));
        let ask = "Ask: Of what metal is this cable's shield, and to what temperature may it rise in a short circuit, by the cable's papers?";
        return vec![not_judged(why).with_hint(ask)];
    };
    let from_degc = match start_degc(&inputs.order.job) {
        Ok(degc) => degc,
        Err(why) => return vec![not_judged(why)],
    };
    let fault = match Fault::of_shield(&inputs.order.job, leg.leg) {
        Ok(fault) => fault,
        Err(why) => return vec![not_judged(why)],
    };
    let counts = inputs.order.job.counts.iter();
    let counts = counts.filter(|count| count.leg == leg.leg.id);
    let n_counted = counts.map(|count| count.shield_elements).min();
    let area_mm2 = match shield_area_mm2(&measured(&inputs.order.job, leg.leg).0, n_counted) {
        Ok(area) => area,
        Err(why) => return vec![not_judged(why)],
    };
    let ruling = Heated {
        check: CHECK.slug,
        subject: leg.subject(),
        what: Layer::MetallicShield.name(inputs.order.job.words),
        fault: &fault,
        metal,
        area_mm2,
        from_degc,
        greatest_degc,
        word: &Word::Job("the cable's papers, as the job states them".to_owned()),
        hint: HINT,
    };
    vec![ruling.rule()]
}
