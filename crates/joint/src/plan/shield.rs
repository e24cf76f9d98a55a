//! Shield: a leg's shield beyond the joint in the plan.

use super::words::all_said;
use crate::cable::{Layer, ShieldKind};
use crate::checks::LegInputs;
use crate::fault::{Carries, Fault, carries, shield_area_mm2, weakest};
use crate::job::{Job, Leg};
use crate::said::{Carrier, Said, ShieldAsk, ShieldCurrent, ShieldLacks, ShieldLine, Wording};
use crate::section::Unknown;
use crate::shielding::{
    Round, ShieldLoss, Standing, Stands, along, measured_said, shield_loss, standing,
};
use crate::survey::measured;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A leg's shield beyond the joint.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ShieldDoc {
    /// Least and greatest resistance along the cable at 20 degC, ohm/km.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub resistance_ohm_per_km: Option<[f64; 2]>,
    /// Constructions at the two bounds of the resistance.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub resistance_of: Option<String>,
    /// Least and greatest current in the shield at the load, A; absent if not known, 0 if the shield is open at one end.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub current_a: Option<[f64; 2]>,
    /// Greatest loss by that current, W/m.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub loss_w_per_m: Option<f64>,
    /// Voltage at the open end at the load, V rms.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub standing_v: Option<f64>,
    /// The same voltage under the stated fault, if the fault current flows alike in three phases, V rms.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub standing_in_fault_v: Option<f64>,
    /// Short-circuit current that each part of the leg carries by its own paper.
    pub short_circuit: Vec<CarriesDoc>,
    /// Part with the smallest ratio of capacity to demand, among the parts for which both are known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub weakest: Option<String>,
    /// The whole in sentences.
    pub lines: Vec<String>,
    /// Facts that are not known, in sentences.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub not_known: Vec<String>,
    /// Questions to put, each once.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub questions: Vec<String>,
    /// Assumptions, limits, and statements that are never made.
    pub never: String,
}

/// Short-circuit current of one part.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct CarriesDoc {
    /// Name of the part.
    pub what: String,
    /// Current that it carries for the stated time by its own paper, A.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub carries_a: Option<f64>,
    /// Current that the job asks of it, A.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub asked_a: Option<f64>,
    /// Reason why one of them is not known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
}

impl ShieldDoc {
    fn ask(&mut self, unknown: &Unknown, wording: &dyn Wording) {
        let questions = all_said(&unknown.questions, wording);
        self.add(wording.say(&unknown.why), questions);
    }

    fn add(&mut self, why: String, questions: Vec<String>) {
        if !self.not_known.contains(&why) {
            self.not_known.push(why);
        }
        for question in questions {
            if !self.questions.contains(&question) {
                self.questions.push(question);
            }
        }
    }

    fn wants(&mut self, why: ShieldLacks, question: ShieldAsk, wording: &dyn Wording) {
        self.ask(&Unknown::new(why, [question]), wording);
    }

    fn say(&mut self, line: impl Into<Said>, wording: &dyn Wording) {
        self.lines.push(wording.say(&line.into()));
    }
}

/// Returns the shield of a leg for the plan.
pub(super) fn shield_doc(job: &Job, inputs: &LegInputs<'_>, wording: &dyn Wording) -> ShieldDoc {
    let leg = inputs.leg;
    let mut doc = ShieldDoc {
        resistance_ohm_per_km: None,
        resistance_of: None,
        current_a: None,
        loss_w_per_m: None,
        standing_v: None,
        standing_in_fault_v: None,
        short_circuit: Vec::new(),
        weakest: None,
        lines: Vec::new(),
        not_known: Vec::new(),
        questions: Vec::new(),
        never: wording.say(&ShieldCurrent::Never.into()),
    };
    match along(job, leg) {
        Err(unknown) => doc.ask(&unknown, wording),
        Ok(along) => {
            let (least, greatest) = along.at_20_ohm_per_m;
            let line = ShieldLine::Resistance {
                least_ohm_per_km: 1e3 * least,
                greatest_ohm_per_km: 1e3 * greatest,
                between: along.says.clone(),
                on: measured_said(job, leg),
            };
            doc.say(line, wording);
            doc.resistance_ohm_per_km = Some([1e3 * least, 1e3 * greatest]);
            doc.resistance_of = Some(wording.say(&along.says));
        }
    }
    if let Some(area) = tape_area(job, leg) {
        doc.say(area, wording);
    }
    match shield_loss(job, leg) {
        // A stated current takes precedence over the current that balanced phases would drive.
        _ if leg.shield_load_a.is_some() => stated(job, leg, &mut doc, wording),
        Err(unknown) => doc.ask(&unknown, wording),
        Ok(ShieldLoss::Nothing(why)) => {
            doc.say(ShieldLine::InSteadyLoad { why }, wording);
            (doc.current_a, doc.loss_w_per_m) = (Some([0.0, 0.0]), Some(0.0));
        }
        Ok(ShieldLoss::Round(round)) => current(job, leg, &round, &mut doc, wording),
    }
    match standing(job, leg) {
        Err(unknown) => doc.ask(&unknown, wording),
        Ok(Stands::Bonded(why)) => doc.say(ShieldLine::NoVoltage { why }, wording),
        Ok(Stands::Open(stands)) => voltage(job, leg, &stands, &mut doc, wording),
    }
    contacts(job, leg, &mut doc, wording);
    short_circuit(&carries(job, leg, &inputs.chosen), &mut doc, wording);
    doc
}

/// Line with the area that the standard takes for a tape on a new cable, beside the two computed bounds of the area; the standard's area is from memory and rules nothing.
fn tape_area(job: &Job, leg: &Leg) -> Option<ShieldLine> {
    let shield = leg.cable.shield;
    let has_wires = match shield.kind() {
        ShieldKind::FlatStraps | ShieldKind::ConcentricWires => return None,
        ShieldKind::LappedTape | ShieldKind::CorrugatedTape => false,
        ShieldKind::TapeWithWires => true,
    };
    let (cable, _) = measured(job, leg);
    let over = cable.diameter_over(Layer::InsulationScreen).ok()?;
    let areas = [over.least, over.greatest].map(|over| shield.area_on_mm2(over));
    let [Ok(least), Ok(greatest)] = areas else {
        return None;
    };
    Some(ShieldLine::TapeArea {
        has_wires,
        standard_mm2: (least, greatest),
        computed_mm2: shield_area_mm2(&cable, None).ok()?,
    })
}

/// Adds the heat of the stated short circuit in each connection that was read.
fn contacts(job: &Job, leg: &Leg, doc: &mut ShieldDoc, wording: &dyn Wording) {
    let Ok(fault) = Fault::of_shield(job, leg) else {
        return;
    };
    for (end, row) in job.contacts.of_leg(&leg.id) {
        let line = ShieldLine::Contact {
            end: end.clone(),
            at: row.at.clone(),
            milli_ohm: 1e3 * row.ohm,
            shots: fault.shots().into(),
            heat_kj: fault.heat_kj(row.ohm),
        };
        doc.say(line, wording);
    }
}

/// Adds the current of each part, and the part with the smallest ratio of capacity to demand.
fn short_circuit(all: &[Carries], doc: &mut ShieldDoc, wording: &dyn Wording) {
    let say = |what: &Carrier| wording.say(&what.clone().into());
    let is_known = |part: &&Carries| part.share_ratio().is_some();
    let unknown = all.iter().filter(|part| !is_known(part));
    let not_known: Vec<Carrier> = unknown.map(|part| part.what.clone()).collect();
    let known = weakest(all).and_then(|part| Some((part, part.share_ratio()?)));
    if let Some((part, times_ratio)) = known {
        let line = ShieldLine::Weakest {
            what: part.what.clone(),
            times_ratio,
            not_known,
        };
        doc.say(line, wording);
        doc.weakest = Some(say(&part.what));
    } else {
        doc.say(ShieldLine::WeakestNotKnown { not_known }, wording);
    }
    let doc_of = |part: &Carries| CarriesDoc {
        what: say(&part.what),
        carries_a: part.carries_a.clone().ok(),
        asked_a: part.asked_a.clone().ok(),
        why: part.carries_a.as_ref().err().map(|why| wording.say(why)),
    };
    doc.short_circuit = all.iter().map(doc_of).collect();
}

/// Adds the current that the job states for the shield, and its loss in the greatest resistance at the conductor's highest temperature.
fn stated(job: &Job, leg: &Leg, doc: &mut ShieldDoc, wording: &dyn Wording) {
    let (Some(shield_a), Ok(along)) = (leg.shield_load_a, along(job, leg)) else {
        return;
    };
    let shield_degc = job.duty.conductor_greatest_degc.unwrap_or(20.0).max(20.0);
    let loss_w_per_m = along.at_ohm_per_m(shield_degc).1 * shield_a * shield_a;
    let line = ShieldCurrent::Stated {
        shield_a,
        loss_w_per_m,
        shield_degc,
    };
    doc.say(line, wording);
    doc.current_a = Some([shield_a, shield_a]);
    doc.loss_w_per_m = Some(loss_w_per_m);
}

/// Adds the circulating current of a shield and its loss, between the coldest temperature of the place and the conductor's highest temperature.
fn current(job: &Job, leg: &Leg, round: &Round, doc: &mut ShieldDoc, wording: &dyn Wording) {
    let Some(load_a) = job.load_of_a(leg) else {
        doc.wants(ShieldLacks::Load, ShieldAsk::Load, wording);
        return;
    };
    let Some(hottest) = job.duty.conductor_greatest_degc else {
        doc.wants(ShieldLacks::Hottest, ShieldAsk::Hottest, wording);
        return;
    };
    let coldest = job.place.ambient_degc.0.unwrap_or(20.0).min(20.0);
    let shield_degc = (coldest.min(hottest), hottest);
    let (least, greatest) = round.current_ratio(shield_degc);
    let round_a = (least * load_a, greatest * load_a);
    let loss_w_per_m = round.greatest_loss_ohm_per_m(shield_degc) * load_a * load_a;
    let line = ShieldCurrent::FlowsRound {
        load_a,
        round_a,
        loss_w_per_m,
        shield_degc,
    };
    doc.say(line, wording);
    doc.current_a = Some([round_a.0, round_a.1]);
    doc.loss_w_per_m = Some(loss_w_per_m);
}

/// Adds the voltage at the open end, at the load and in a balanced fault.
fn voltage(job: &Job, leg: &Leg, stands: &Standing, doc: &mut ShieldDoc, wording: &dyn Wording) {
    match job.load_of_a(leg) {
        None => doc.wants(ShieldLacks::Load, ShieldAsk::Load, wording),
        Some(load_a) => {
            let volts_v = stands.voltage_v(load_a);
            let line = ShieldCurrent::StandsOpen {
                load_a,
                volts_v,
                length_m: stands.length_m,
            };
            doc.say(line, wording);
            doc.standing_v = Some(volts_v);
        }
    }
    match (job.duty.fault_a, job.duty.is_fault_balanced) {
        (Some(fault_a), Some(true)) => {
            let volts_v = stands.voltage_v(fault_a);
            let fault_ka = 1e-3 * fault_a;
            doc.say(ShieldCurrent::StandsInFault { fault_ka, volts_v }, wording);
            doc.standing_in_fault_v = Some(volts_v);
        }
        (Some(_), Some(false)) => doc.say(ShieldCurrent::FaultToEarth, wording),
        (None, _) => doc.wants(ShieldLacks::Fault, ShieldAsk::Fault, wording),
        (_, None) => doc.wants(ShieldLacks::FaultKind, ShieldAsk::FaultKind, wording),
    }
}
