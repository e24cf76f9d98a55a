//! Do load and emergency keep joint and cable below the highest temperature that the job states for the conductor?
//!
//! Pressures are computed up to that temperature, and short circuits start from it: above it, both results are too favourable.
//!
//! Source: the job's own `duty.conductor_greatest`; the temperatures from `warm`.

use super::{Inputs, LegInputs, asking_of_heat, slug};
use crate::limit::{Ruling, Word, fact_table as fact};
use crate::said::{Hottest, Said, WarmingSaid, When};
use crate::warm::{ERROR_AT_REST_RATIO, ERROR_IN_TIME_RATIO, LegAt, Warmed, runs_away};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    asking_of_heat(inputs, leg, on_leg(inputs, leg))
}

fn on_leg(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let done = match inputs.warm.done(CHECK, leg.subject()) {
        Ok(done) => done,
        Err(rulings) => return rulings,
    };
    let Some((index, _)) = done.of(&leg.leg.id) else {
        return Vec::new();
    };
    let Some(greatest_degc) = inputs.order.job.duty.conductor_greatest_degc else {
        let why = WarmingSaid::not_stated("duty.conductor_greatest");
        let ask = Said::Questions(vec![WarmingSaid::AskGreatest.into()]);
        let ruling = Ruling::not_judged(CHECK, leg.subject(), why).with_hint(ask);
        return vec![ruling.asking(fact::CONDUCTOR_GREATEST.of(""))];
    };
    let word = &Word::Job("duty.conductor_greatest".into());
    let states = [
        (
            Ok(&done.at_load),
            When::AllTheTime,
            (ERROR_AT_REST_RATIO, 0.0),
        ),
        (
            done.at_emergency.as_ref(),
            When::EndOfEmergency,
            (ERROR_IN_TIME_RATIO, done.error_in_time_k),
        ),
    ];
    let asked = states.into_iter().map(|(state, when, error)| {
        let state = match state {
            Ok(state) => state,
            Err(why) => {
                let ruling = Ruling::not_judged(CHECK, leg.subject(), why.clone());
                return ruling.asking(fact::EMERGENCY.of(""));
            }
        };
        match state {
            None => {
                let hint = WarmingSaid::HotterThanStated;
                runs_away(CHECK, leg.subject(), greatest_degc, word, hint)
            }
            Some(legs) => {
                let at: &LegAt = &legs[index];
                let (hottest, degc) = hotter(at);
                Warmed {
                    check: CHECK,
                    subject: leg.subject(),
                    what: WarmingSaid::Conductor {
                        hottest,
                        load_a: at.load_a,
                        when,
                    }
                    .into(),
                    degc,
                    error_ratio: error.0,
                    error_k: error.1,
                    at,
                    greatest_degc,
                    word,
                    hint: WarmingSaid::HotterThanStated.into(),
                }
                .rule()
            }
        }
    });
    asked.map(|ruling| done.weighed(ruling)).collect()
}

/// Temperature of the hotter of joint and cable.
fn hotter(at: &LegAt) -> (Hottest, f64) {
    if at.joint_degc >= at.cable_degc {
        (Hottest::InJoint, at.joint_degc)
    } else {
        (Hottest::InCable, at.cable_degc)
    }
}
