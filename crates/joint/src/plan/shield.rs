//! Shield: what the plan says of a leg's shield beyond the joint.

use super::all_said;
use crate::cable::{Layer, ShieldKind};
use crate::checks::LegInputs;
use crate::fault::{Carries, Fault, carries, shield_area_mm2, weakest};
use crate::job::{Job, Leg};
use crate::limit::shown;
use crate::said::{Carrier, Wording};
use crate::section::Unknown;
use crate::shielding::{
    Round, ShieldLoss, Standing, Stands, along, measured_said, shield_loss, standing,
};
use crate::survey::measured;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What stands under everything that is said of voltages along shields.
pub const NO_VOLTAGE: &str = "The voltage that stands in a fault to earth is larger by far and is not computed. No voltage here is called harmless.";

/// What every current and voltage along a shield assumes.
pub const ASSUMES: &str = "Balanced currents in three cables alone; currents of a neutral, and eddy currents within a shield, are left out.";

/// A leg's shield beyond the joint.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct ShieldDoc {
    /// Least and greatest resistance along the cable at 20 degC, ohm/km.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub resistance_ohm_per_km: Option<[f64; 2]>,
    /// Between what it lies.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub resistance_of: Option<String>,
    /// Least and greatest current round it at the load, A; absent where it is not known, 0 where it is open at one end.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub current_a: Option<[f64; 2]>,
    /// Greatest loss of that current, W/m.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub loss_w_per_m: Option<f64>,
    /// Voltage at its open end at the load, V rms.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub standing_v: Option<f64>,
    /// The same under the stated fault, where that flows in three phases alike, V rms.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub standing_in_fault_v: Option<f64>,
    /// What short-circuit current each part of the leg carries by its own paper.
    pub short_circuit: Vec<CarriesDoc>,
    /// The part that carries the least of what is asked of it, of those that are known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub weakest: Option<String>,
    /// All of it in sentences.
    pub lines: Vec<String>,
    /// What is not known, in sentences.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub not_known: Vec<String>,
    /// Questions to put, each once.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub questions: Vec<String>,
    /// What is assumed, what is not computed, and what is never said.
    pub never: String,
}

/// What short-circuit current one part carries.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct CarriesDoc {
    /// What it is.
    pub what: String,
    /// Current that it carries for the stated time by its own paper, A.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub carries_a: Option<f64>,
    /// Current that the job asks of it, A.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub asked_a: Option<f64>,
    /// Why one of them is not known.
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

    fn wants(&mut self, why: &str, question: &str) {
        self.add(why.to_owned(), vec![question.to_owned()]);
    }
}

/// What is said of a leg's shield.
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
        never: format!("{ASSUMES} {NO_VOLTAGE}"),
    };
    match along(job, leg) {
        Err(unknown) => doc.ask(&unknown, wording),
        Ok(along) => {
            let (least, greatest) = along.at_20_ohm_per_m;
            let between = if least == greatest {
                shown(1e3 * least)
            } else {
                format!("{} to {}", shown(1e3 * least), shown(1e3 * greatest))
            };
            doc.lines.push(format!(
                "{between} ohm/km at 20 degC: {}; {}.",
                wording.say(&along.says),
                wording.say(&measured_said(job, leg))
            ));
            doc.resistance_ohm_per_km = Some([1e3 * least, 1e3 * greatest]);
            doc.resistance_of = Some(wording.say(&along.says));
        }
    }
    doc.lines.extend(tape_area(job, leg));
    match shield_loss(job, leg) {
        // What somebody states goes before what balanced phases would drive.
        _ if leg.shield_load_a.is_some() => stated(job, leg, &mut doc),
        Err(unknown) => doc.ask(&unknown, wording),
        Ok(ShieldLoss::Nothing(why)) => {
            let why = wording.say(&why);
            doc.lines.push(format!("In steady load {why}."));
            (doc.current_a, doc.loss_w_per_m) = (Some([0.0, 0.0]), Some(0.0));
        }
        Ok(ShieldLoss::Round(round)) => current(job, leg, &round, &mut doc),
    }
    match standing(job, leg) {
        Err(unknown) => doc.ask(&unknown, wording),
        Ok(Stands::Bonded(why)) => doc.lines.push(format!("Voltage: {}.", wording.say(&why))),
        Ok(Stands::Open(stands)) => voltage(job, leg, &stands, &mut doc),
    }
    contacts(job, leg, &mut doc, wording);
    short_circuit(&carries(job, leg, &inputs.chosen), &mut doc, wording);
    doc
}

/// What the standard takes for the area of a tape on a new cable, beside the two ends between which it lies; it is from memory and rules nothing.
fn tape_area(job: &Job, leg: &Leg) -> Option<String> {
    let shield = leg.cable.shield;
    let of = match shield.kind() {
        ShieldKind::FlatStraps | ShieldKind::ConcentricWires => return None,
        ShieldKind::LappedTape | ShieldKind::CorrugatedTape => "the tape",
        ShieldKind::TapeWithWires => "tape and wires together, the tape",
    };
    let (cable, _) = measured(job, leg);
    let over = cable.diameter_over(Layer::InsulationScreen).ok()?;
    let areas = [over.least, over.greatest].map(|over| shield.area_on_mm2(over));
    let (least, greatest) = match areas {
        [Ok(least), Ok(greatest)] => (least, greatest),
        _ => return None,
    };
    let between = shield_area_mm2(&cable, None).ok()?;
    Some(format!(
        "Effective area of {of} by the standard's form for a new cable: {} to {} mm2 ([icea_p45482], from memory: it rules nothing); computed with is {} to {} mm2.",
        shown(least),
        shown(greatest),
        shown(between.0),
        shown(between.1)
    ))
}

/// The heat of the stated short circuit in each connection that was read.
fn contacts(job: &Job, leg: &Leg, doc: &mut ShieldDoc, wording: &dyn Wording) {
    let Ok(fault) = Fault::of_shield(job, leg) else {
        return;
    };
    for (end, row) in job.contacts.of_leg(&leg.id) {
        doc.lines.push(format!(
            "{end}, {}: {} mohm, in which {} make {} kJ.",
            row.at,
            shown(1e3 * row.ohm),
            wording.say(&fault.shots().into()),
            shown(fault.heat_kj(row.ohm))
        ));
    }
}

/// What each part carries, and which carries the least of what is asked of it.
fn short_circuit(all: &[Carries], doc: &mut ShieldDoc, wording: &dyn Wording) {
    let say = |what: &Carrier| wording.say(&what.clone().into());
    let is_known = |part: &&Carries| part.share_ratio().is_some();
    let unknown = all.iter().filter(|part| !is_known(part));
    let unknown: Vec<String> = unknown.map(|part| say(&part.what)).collect();
    if let (Some(part), Some(times)) = (weakest(all), weakest(all).and_then(Carries::share_ratio)) {
        let of = if unknown.is_empty() {
            String::new()
        } else {
            format!(
                " of those that are known; not known: {}",
                unknown.join(", ")
            )
        };
        doc.lines.push(format!(
            "Weakest in a short circuit: {}, {} times what is asked of it{of}.",
            say(&part.what),
            shown(times)
        ));
        doc.weakest = Some(say(&part.what));
    } else {
        doc.lines.push(format!(
            "Weakest in a short circuit: not known of {}.",
            unknown.join(", ")
        ));
    }
    let doc_of = |part: &Carries| CarriesDoc {
        what: say(&part.what),
        carries_a: part.carries_a.clone().ok(),
        asked_a: part.asked_a.clone().ok(),
        why: part.carries_a.as_ref().err().map(|why| wording.say(why)),
    };
    doc.short_circuit = all.iter().map(doc_of).collect();
}

/// The current that the job states for the shield, and its loss in the greatest resistance at the conductor's highest temperature.
fn stated(job: &Job, leg: &Leg, doc: &mut ShieldDoc) {
    let (Some(shield_a), Ok(along)) = (leg.shield_load_a, along(job, leg)) else {
        return;
    };
    let hottest = job.duty.conductor_greatest_degc.unwrap_or(20.0).max(20.0);
    let loss = along.at_ohm_per_m(hottest).1 * shield_a * shield_a;
    doc.lines.push(format!(
        "The job states {} A in it all the time; they make up to {} W/m, shield at {} degC.",
        shown(shield_a),
        shown(loss),
        shown(hottest)
    ));
    doc.current_a = Some([shield_a, shield_a]);
    doc.loss_w_per_m = Some(loss);
}

/// The current round a shield and its loss, from the coldest that the place is to the conductor's highest temperature.
fn current(job: &Job, leg: &Leg, round: &Round, doc: &mut ShieldDoc) {
    let Some(load_a) = job.load_of_a(leg) else {
        doc.wants(
            "the job does not state duty.load",
            "What load do these cables carry?",
        );
        return;
    };
    let Some(hottest) = job.duty.conductor_greatest_degc else {
        doc.wants(
            "the job does not state duty.conductor_greatest, which no shield exceeds in service",
            "What is the highest temperature of the conductor in service?",
        );
        return;
    };
    let coldest = job.place.ambient_degc.0.unwrap_or(20.0).min(20.0);
    let degc = (coldest.min(hottest), hottest);
    let (least, greatest) = round.current_ratio(degc);
    let loss = round.greatest_loss_ohm_per_m(degc) * load_a * load_a;
    doc.lines.push(format!(
        "At {} A {} to {} A flow round it and make up to {} W/m, shield at {} to {} degC.",
        shown(load_a),
        shown(least * load_a),
        shown(greatest * load_a),
        shown(loss),
        shown(degc.0),
        shown(degc.1)
    ));
    doc.current_a = Some([least * load_a, greatest * load_a]);
    doc.loss_w_per_m = Some(loss);
}

/// The voltage at the open end, at the load and in a balanced fault.
fn voltage(job: &Job, leg: &Leg, stands: &Standing, doc: &mut ShieldDoc) {
    let along = format!("along {} m", shown(stands.length_m));
    match job.load_of_a(leg) {
        None => doc.wants(
            "the job does not state duty.load",
            "What load do these cables carry?",
        ),
        Some(load_a) => {
            let volts = stands.voltage_v(load_a);
            doc.lines.push(format!(
                "At {} A {} V stand at its open end, {along}.",
                shown(load_a),
                shown(volts)
            ));
            doc.standing_v = Some(volts);
        }
    }
    match (job.duty.fault_a, job.duty.is_fault_balanced) {
        (Some(fault_a), Some(true)) => {
            let volts = stands.voltage_v(fault_a);
            doc.lines.push(format!(
                "While {} kA flow in three phases alike {} V stand there.",
                shown(1e-3 * fault_a),
                shown(volts)
            ));
            doc.standing_in_fault_v = Some(volts);
        }
        (Some(_), Some(false)) => doc.lines.push(
            "The stated fault flows to earth: what stands at the open end then is not computed."
                .to_owned(),
        ),
        (None, _) => doc.wants(
            "the job does not state duty.fault",
            "What fault current can flow in the conductor?",
        ),
        (_, None) => doc.wants(
            "the job does not state duty.fault_kind",
            "Does the stated fault flow in three phases alike, or to earth?",
        ),
    }
}
