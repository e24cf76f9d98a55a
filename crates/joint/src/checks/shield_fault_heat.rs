//! Does the cable's metallic shield, heated by the stated short circuit, stay below what the cable's papers allow it?
//!
//! Each leg's shield carries the whole stated current, unless the job states a current for the leg: currents do not divide by cross-section.
//! The shield starts at the highest temperature of the conductor, which no shield exceeds in service.
//! An old lapped tape is judged as a conductor between a helix and a tube.
//! A tape around a thinner cable has less metal, so the check passes only if the diameter under it was read on every phase.
//!
//! Source: the cable's own papers, as the job states them; icea_p32382, icea_p45482.

use super::{EndInputs, Inputs, LegInputs, slug};
use crate::cable::{Layer, Shield};
use crate::end::EndId;
use crate::fault::{Fault, Heated, shield_area_mm2, start_degc};
use crate::limit::{Ask, Outcome, Ruling, Word, fact_table as fact, word_on};
use crate::said::{HeatedMetal, Of, Said, ShieldFaultSaid};
use crate::survey::measured;

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    // All missing facts are asked for at once.
    let missing = leg.missing(inputs);
    let not_judged = |why: Said| {
        let papers = missing.shield_papers().into_iter();
        let fault = missing
            .fault_start()
            .into_iter()
            .chain(missing.shield_fault());
        let asks: Vec<Ask> = papers.chain(fault).chain(missing.shield_area()).collect();
        let word = asks.is_empty().then(|| word_on(CHECK, &leg.subject()));
        let ruling = Ruling::not_judged(CHECK, leg.subject(), why);
        let count = uncounted(inputs, leg)
            .into_iter()
            .flat_map(|open| open.asks);
        ruling.asking_all(asks).asking_all(word).asking_all(count)
    };
    let asked = [
        (leg.leg.shield_metal.is_none(), "shield.metal"),
        (
            leg.leg.shield_fault_greatest_degc.is_none(),
            "shield.fault_greatest",
        ),
    ];
    let open = asked.iter().filter(|(is_open, _)| *is_open);
    let open = open.map(|(_, name)| (*name).to_owned());
    let (Some(metal), Some(greatest_degc)) =
        (leg.leg.shield_metal, leg.leg.shield_fault_greatest_degc)
    else {
        let fields = open.collect();
        let why = ShieldFaultSaid::PapersNotStated { fields };
        let ask = Said::Questions(vec![ShieldFaultSaid::AskMetalAndLimit.into()]);
        return vec![not_judged(why.into()).with_hint(ask)];
    };
    let from_degc = match start_degc(&inputs.order.job) {
        Ok(degc) => degc,
        Err(why) => return vec![not_judged(why)],
    };
    let fault = match Fault::of_shield(&inputs.order.job, leg.leg) {
        Ok(fault) => fault,
        Err(why) => return vec![not_judged(why)],
    };
    if let Some(uncounted) = uncounted(inputs, leg) {
        return vec![uncounted];
    }
    let (cable, read) = measured(&inputs.order.job, leg.leg);
    let area_mm2 = match shield_area_mm2(&cable, n_counted(inputs, leg)) {
        Ok(area) => area,
        Err(why) => return vec![not_judged(why)],
    };
    let ruling = Heated {
        check: CHECK,
        subject: leg.subject(),
        what: HeatedMetal::MetallicShield,
        fault: &fault,
        metal,
        area_mm2,
        from_degc,
        greatest_degc,
        word: &Word::Job(ShieldFaultSaid::JobStatesPapers.into()),
        hint: ShieldFaultSaid::ShieldDoesNotCarry.into(),
    };
    let ruling = ruling.rule();
    if ruling.outcome == Outcome::Pass && read.is_none() && goes_by_diameter(&leg.leg.cable.shield)
    {
        return vec![unread(inputs, leg)];
    }
    vec![ruling]
}

/// Whether a shield has more metal around a thicker cable.
fn goes_by_diameter(shield: &Shield) -> bool {
    matches!(
        shield,
        Shield::LappedTape { .. } | Shield::CorrugatedTape { .. } | Shield::TapeWithWires { .. }
    )
}

/// Ruling on a tape around a cable that may be thinner than its papers say, so that the tape has less metal.
fn unread(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Ruling {
    let is_read = |end: &&EndInputs| end.survey.diameters.contains_key(&Layer::InsulationScreen);
    let open = leg.ends.iter().filter(|end| !is_read(end));
    let asks = open.map(|end| {
        leg.missing(inputs)
            .reading(end.id.phase, Layer::InsulationScreen)
    });
    let why = ShieldFaultSaid::TapeNotReadUnder;
    Ruling::not_judged(CHECK, leg.subject(), why).asking_all(asks)
}

/// Smallest number of wires or straps that was counted on an end of a leg.
fn n_counted(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Option<u32> {
    let counts = inputs.order.job.counts.of_leg(&leg.leg.id);
    counts.filter_map(|(_, row)| row.shield_elements).min()
}

/// Ruling on a shield whose wires or straps nobody has counted on every end: a missing one carries nothing.
fn uncounted(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Option<Ruling> {
    let of_papers = leg.leg.cable.shield.elements()?;
    let job = &inputs.order.job;
    let ends = job
        .phase_numbers()
        .map(|phase| EndId::new(&leg.leg.id, phase));
    let ends: Vec<EndId> = ends.filter(|end| job.counts.of(end).is_empty()).collect();
    if ends.is_empty() {
        return None;
    }
    let of = Of::Ends(ends.clone());
    let ask = ShieldFaultSaid::AskCount { ends: ends.clone() };
    let why = ShieldFaultSaid::NotCounted { ends, of_papers };
    let ruling = Ruling::not_judged(CHECK, leg.subject(), why);
    let ruling = ruling.with_hint(Said::Questions(vec![ask.into()]));
    Some(ruling.asking(fact::COUNT.of(of)))
}
