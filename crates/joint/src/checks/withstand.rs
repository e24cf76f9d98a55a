//! Withstand: the checks of parts that carry a short circuit, which differ in the part only; each is a row of the table of checks.
//!
//! It compares two quantities with the values that the part withstands: the current, for its forces, and I²t of all shots, for its heat.
//! The shield part carries the whole stated current, unless the job states a current for the leg.
//!
//! Source: the part's own instructions.

use super::{Inputs, LegInputs};
use crate::fault::{Fault, Withstood};
use crate::limit::{Ruling, fact_table as fact};
use crate::said::{Said, ShieldFaultSaid, ShortCircuitSaid};

/// Part that carries the current.
#[derive(Clone, Copy)]
pub(super) enum Row {
    Connector,
    ShieldPart,
}

/// Rulings on the withstand of one part of a leg.
pub(super) fn rule(
    check: &'static str,
    row: Row,
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
) -> Vec<Ruling> {
    let job = &inputs.order.job;
    let chosen = &leg.chosen;
    let (part, fault, hint): (_, _, Said) = match row {
        Row::Connector => (
            chosen.connector.map(|part| (&part.head, part.withstands)),
            Fault::of_conductor(&job.duty),
            ShortCircuitSaid::ConnectorNotGiven.into(),
        ),
        Row::ShieldPart => (
            chosen.shield_part.map(|part| (&part.head, part.withstands)),
            Fault::of_shield(job, leg.leg),
            ShieldFaultSaid::ShieldPartDoesNotCarry.into(),
        ),
    };
    let Some((part, withstands)) = part else {
        return Vec::new();
    };
    let fault = match fault {
        Ok(fault) => fault,
        Err(why) => {
            // All missing facts are asked for at once.
            let missing = leg.missing(inputs);
            let asks = match row {
                Row::Connector => missing.fault(),
                Row::ShieldPart => missing.shield_fault(),
            };
            let of_part = withstands.is_none();
            let of_part = of_part.then(|| fact::WITHSTANDS.of(&part.id));
            let ruling = Ruling::not_judged(check, leg.subject(), why);
            return vec![ruling.asking_all(asks).asking_all(of_part)];
        }
    };
    Withstood {
        check,
        subject: leg.subject(),
        part,
        withstands,
        fault: &fault,
        hint,
    }
    .rule()
}
