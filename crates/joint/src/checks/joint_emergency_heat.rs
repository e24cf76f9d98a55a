//! Does the conductor inside the body, at the end of the job's emergency, keep below the temperature for which the body's paper gives the joint in one?
//!
//! The emergency begins from the job's load in steady state and lasts as long as the job states.
//!
//! Source: the body's own instructions; the temperature from `warm`.

use super::{Inputs, LegInputs, asking_of_heat, slug};
use crate::limit::{Ruling, Word, fact_table as fact};
use crate::said::{LoadSaid, Said};
use crate::warm::{ERROR_IN_TIME_RATIO, Lasts, Warmed, runs_away};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    asking_of_heat(inputs, leg, on_leg(inputs, leg))
}

fn on_leg(inputs: &Inputs<'_>, leg: &LegInputs<'_>) -> Vec<Ruling> {
    let done = match inputs.warm.done(CHECK, leg.subject()) {
        Ok(done) => done,
        Err(rulings) => return rulings,
    };
    let (Some((index, of)), Some(body)) = (done.of(&leg.leg.id), leg.chosen.body) else {
        return Vec::new();
    };
    let not_judged = |why: Said| Ruling::not_judged(CHECK, leg.subject(), why);
    let id = &body.head.id;
    let at_emergency = match &done.at_emergency {
        Ok(at_emergency) => at_emergency,
        Err(why) => return vec![not_judged(why.into()).asking(fact::EMERGENCY.of(""))],
    };
    let Some(greatest_degc) = body.conductor_emergency_greatest_degc else {
        let why = LoadSaid::GreatestInEmergencyNotSaid { row: id.clone() };
        let ask = Said::ask(LoadSaid::AskGreatestInEmergency { body: id.clone() });
        return vec![
            not_judged(why.into())
                .with_hint(ask)
                .asking(fact::SERVICE_GREATEST.of(id)),
        ];
    };
    let word = &Word::Instructions(body.head.source().into());
    let at = match at_emergency {
        Some(legs) => &legs[index],
        None => {
            let ruling = runs_away(
                CHECK,
                leg.subject(),
                greatest_degc,
                word,
                LoadSaid::TooHotInEmergency,
            );
            return vec![done.weighed(ruling)];
        }
    };
    let lasts = match of.emergency_lasts {
        Some(Lasts::Seconds(s)) if s <= 0.0 => Some(LoadSaid::PassesBefore),
        Some(Lasts::Seconds(s)) => {
            let time_h = s / 3600.0;
            Some(LoadSaid::GetsThereIn { time_h })
        }
        _ => None,
    };
    let ruling = Warmed {
        check: CHECK,
        subject: leg.subject(),
        what: LoadSaid::InsideInEmergency {
            body: id.clone(),
            time_h: inputs.order.job.duty.emergency_s.unwrap_or(0.0) / 3600.0,
            load_a: at.load_a,
        }
        .into(),
        degc: at.joint_degc,
        error_ratio: ERROR_IN_TIME_RATIO,
        error_k: done.error_in_time_k,
        at,
        greatest_degc,
        word,
        hint: LoadSaid::TooHotInEmergency.into(),
    }
    .rule();
    let lasts = lasts.map(Said::from);
    let why = ruling.why.clone();
    let why = why.map(|why| Said::all([why].into_iter().chain(lasts)));
    vec![done.weighed(Ruling { why, ..ruling })]
}
