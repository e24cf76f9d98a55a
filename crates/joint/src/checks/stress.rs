//! Stress: the checks of a field, which differ in the place only; each is a row of the table of checks.
//!
//! It compares the greatest field at a place over the windows with the worst that the instructions allow there, in service and during a stated trial.
//! Then it compares it with the owner's limit.
//!
//! - End of the electrode: the rounded end, on the side of the body's insulation.
//! - Deflector: the rounded tip, and the first arc from the heel.
//! - Interfaces between cable, adapter and body: the tangential field, up to half a millimetre before the edge of the screen.
//! - Edge of the insulation screen: nobody can survey the radius of an edge cut by hand, so the field is judged half a millimetre before it. It is zero if the deflector covers the edge at every place that the windows allow.
//!
//! Source: `docs/theory/worst.md`.

use super::{Inputs, LegInputs};
use crate::ask::asking;
use crate::limit::{AmountQuestion, Outcome, Ruling, Word, word_on};
use crate::said::{Said, StressSaid};
use crate::section::Quantity;
use crate::study::{PlugStudy, Seen, SolvedStudy, Study, Worst};
use jointwright_units::VoltageRms;

/// Place of a field.
pub(super) type Row = Quantity;

/// Rulings on the field at one place of a leg.
pub(super) fn rule(
    check: &'static str,
    quantity: Quantity,
    inputs: &Inputs<'_>,
    leg: &LegInputs<'_>,
) -> Vec<Ruling> {
    let mut rulings = Stress { check, quantity }.rule(inputs, leg);
    if quantity == Quantity::Interface {
        rulings.extend(asking(plug(check, leg).into_iter().collect(), || {
            if matches!(*leg.plug, PlugStudy::Unknown(_)) {
                leg.missing(inputs).taper()
            } else {
                vec![word_on(check, &leg.subject())]
            }
        }));
    }
    rulings
}

/// Ruling on a tapered plug with an unknown fact, or whose field did not settle; its own fields have no limit except the limit of the gap.
fn plug(check: &'static str, leg: &LegInputs<'_>) -> Option<Ruling> {
    let not_judged = |why: &Said| {
        let why = Said::of(StressSaid::TaperedPlug, why);
        Ruling::not_judged(check, leg.subject(), why)
    };
    match leg.plug.as_ref() {
        PlugStudy::None => None,
        PlugStudy::Unknown(unknown) => {
            let ruling = not_judged(&unknown.why);
            Some(match unknown.ask() {
                None => ruling,
                Some(ask) => ruling.with_hint(ask),
            })
        }
        PlugStudy::Refused(why) => Some(not_judged(why)),
        PlugStudy::Done(worst) => {
            let unsettled = worst.seen.values().any(|(value, _)| !value.is_settled);
            unsettled.then(|| not_judged(&StressSaid::NotSettled.into()))
        }
    }
}

/// A check of a field, and the place of the field.
struct Stress {
    check: &'static str,
    quantity: Quantity,
}

/// A voltage on the conductor, and the fields at it.
struct At<'a> {
    voltage: VoltageRms,
    /// Frequency of the trial; `None` in service.
    trial_hz: Option<f64>,
    here: &'a Worst,
    allowed: &'a Result<Worst, Said>,
}

impl Stress {
    /// Message about the field.
    fn said(&self, said: impl Into<Said>) -> Said {
        Said::of(name(self.quantity), said)
    }

    fn rule(&self, inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
        let done = match solved(self.check, name(self.quantity), inputs, leg) {
            Ok(done) => done,
            Err(rulings) => return rulings,
        };
        let mut rulings = self.at(inputs, leg, &At::service(done));
        if let Some(trial) = &done.trial {
            let at = At {
                voltage: trial.drive.voltage,
                trial_hz: Some(trial.drive.frequency_hz.unwrap_or(0.0)),
                here: &trial.here,
                allowed: &trial.allowed,
            };
            rulings.extend(self.at(inputs, leg, &at));
        }
        if done.conducts() && self.quantity == Quantity::Interface {
            let why = StressSaid::ImpulseThroughConducting;
            rulings.push(Ruling::not_judged(self.check, leg.subject(), why));
        }
        // Facts that are missing for the worst that the instructions allow; an engineer's word if a field did not settle.
        let asks = || {
            let missing = leg.missing(inputs).field();
            if missing.is_empty() {
                vec![word_on(self.check, &leg.subject())]
            } else {
                missing
            }
        };
        asking(rulings, asks)
    }

    fn at(&self, inputs: &Inputs<'_>, leg: &LegInputs<'_>, at: &At<'_>) -> Vec<Ruling> {
        let Some(here) = at.here.seen.get(&self.quantity) else {
            // An owner's limit is never ignored silently.
            let is_asked = inputs.order.job.limits_of(self.check).next().is_some();
            let why = self.said(StressSaid::NoSuchPart);
            let ruling = || Ruling::not_judged(self.check, leg.subject(), why);
            return is_asked.then(ruling).into_iter().collect();
        };
        if !here.value.is_settled {
            let why = self.said(StressSaid::NotSettled);
            return vec![Ruling::not_judged(self.check, leg.subject(), why)];
        }
        let mut rulings = vec![self.against_allowed(leg, at, here)];
        // The owner's limit is for service only.
        let owners = inputs.order.job.limits_of(self.check);
        for row in owners.filter(|_| at.trial_hz.is_none()) {
            let word = Word::Owner(row.source.clone().into());
            let error = here.value.error_per_m;
            rulings.push(self.question(leg, at, here, error, row.greatest_kv_per_mm, &word));
        }
        rulings
    }

    fn question(
        &self,
        leg: &LegInputs<'_>,
        at: &At<'_>,
        here: &Seen,
        error_per_m: f64,
        greatest: Option<f64>,
        word: &Word,
    ) -> Ruling {
        let scale = kv_per_mm(at.voltage);
        AmountQuestion {
            check: self.check,
            subject: leg.subject(),
            what: StressSaid::AtWorst {
                subject: leg.subject(),
                quantity: self.quantity,
                voltage_kv: at.voltage.kv(),
                trial_hz: at.trial_hz,
            }
            .into(),
            value: here.value.per_volt_per_m * scale,
            error: error_per_m * scale,
            least: None,
            greatest,
            unit: FIELD_UNIT,
            word,
            hint: StressSaid::EngineerDecides.into(),
        }
        .rule()
    }

    fn against_allowed(&self, leg: &LegInputs<'_>, at: &At<'_>, here: &Seen) -> Ruling {
        let subject = leg.subject();
        let allowed = match at.allowed {
            Err(why) => {
                let why = self.said(why);
                return Ruling::not_judged(self.check, subject, why);
            }
            Ok(worst) => worst.seen.get(&self.quantity),
        };
        let (Some(allowed), Some(body), Study::Done(done)) =
            (allowed, leg.chosen.body, leg.study.as_ref())
        else {
            return Ruling::not_judged(self.check, subject, name(self.quantity));
        };
        if !allowed.value.is_settled {
            let why = self.said(StressSaid::AllowedNotSettled);
            return Ruling::not_judged(self.check, subject, why);
        }
        // A state wholly inside the allowed states is an allowed state, whatever the error.
        let most = allowed.value.per_volt_per_m;
        let own = here.value.error_per_m + allowed.value.error_per_m;
        let error = if done.is_within() { 0.0 } else { own };
        let word = Word::WorstAllowed(Said::listed([
            body.head.source().into(),
            StressSaid::AtOwnWall.into(),
        ]));
        let most = most * kv_per_mm(at.voltage);
        let ruling = self.question(leg, at, here, error, Some(most), &word);
        let is_one_of_those = done.is_within() && ruling.outcome == Outcome::Pass;
        Ruling {
            error: Some(own * kv_per_mm(at.voltage)),
            decides: is_one_of_those.then(|| StressSaid::IsOneOfThose.into()),
            ..ruling
        }
    }
}

impl<'a> At<'a> {
    fn service(done: &'a SolvedStudy) -> At<'a> {
        At {
            voltage: done.input.service.voltage,
            trial_hz: None,
            here: &done.here,
            allowed: &done.allowed,
        }
    }
}

/// Message that names a field.
fn name(quantity: Quantity) -> Said {
    StressSaid::Quantity { quantity }.into()
}

/// Unit of fields, rms.
const FIELD_UNIT: &str = "kV/mm";

/// Field strength, kV/mm, of a unit field (one per metre and volt) at a voltage.
fn kv_per_mm(voltage: VoltageRms) -> f64 {
    voltage.v() * 1e-6
}

/// Returns the solved study of a leg, or the rulings that replace it; no ruling if nobody asked for it, or the body is left open.
pub(super) fn solved<'l>(
    check: &'static str,
    what: impl Into<Said>,
    inputs: &Inputs<'_>,
    leg: &'l LegInputs<'_>,
) -> Result<&'l SolvedStudy, Vec<Ruling>> {
    let not_judged = |why: Said| {
        let missing = leg.missing(inputs).field();
        let is_known = missing.is_empty();
        let word = is_known.then(|| word_on(check, &leg.subject()));
        let ruling = Ruling::not_judged(check, leg.subject(), why);
        vec![ruling.asking_all(missing).asking_all(word)]
    };
    match leg.study.as_ref() {
        Study::Done(done) => Ok(done),
        Study::NotAsked => Err(Vec::new()),
        Study::Refused(why) => Err(not_judged(Said::of(what, why))),
        Study::Unknown(unknown) => {
            let mut rulings = not_judged(Said::of(what, &unknown.why));
            if let Some(ask) = unknown.ask() {
                rulings[0].hint = Some(ask);
            }
            Err(rulings)
        }
    }
}
