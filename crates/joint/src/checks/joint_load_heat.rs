//! Does the conductor inside the body, at the job's load all the time, keep below the temperature for which the body's paper gives the joint?
//!
//! The limit is the body's own; the cable's permitted temperature does not apply to the joint.
//!
//! Source: the body's own instructions; the temperature from `warm`.

use super::{Inputs, LegInputs, asking_of_heat, slug};
use crate::limit::{Ruling, Word, fact_table as fact};
use crate::said::{LoadSaid, Said};
use crate::warm::{ERROR_AT_REST_RATIO, Warmed, in_tenths, runs_away};

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
    let id = &body.head.id;
    let Some(greatest_degc) = body.conductor_greatest_degc else {
        let why = LoadSaid::GreatestAtLoadNotSaid { row: id.clone() };
        let ask = Said::ask(LoadSaid::AskGreatestAtLoad { body: id.clone() });
        let ruling = Ruling::not_judged(CHECK, leg.subject(), why).with_hint(ask);
        return vec![ruling.asking(fact::SERVICE_GREATEST.of(id))];
    };
    let word = &Word::Instructions(body.head.source().into());
    let at = match &done.at_load {
        Some(legs) => &legs[index],
        None => {
            let ruling = runs_away(
                CHECK,
                leg.subject(),
                greatest_degc,
                word,
                LoadSaid::TooHotAtLoad,
            );
            return vec![done.weighed(ruling)];
        }
    };
    let ruling = Warmed {
        check: CHECK,
        subject: leg.subject(),
        what: LoadSaid::InsideAtLoad {
            body: id.clone(),
            load_a: at.load_a,
        }
        .into(),
        degc: at.joint_degc,
        error_ratio: ERROR_AT_REST_RATIO,
        error_k: 0.0,
        at,
        greatest_degc,
        word,
        hint: LoadSaid::TooHotAtLoad.into(),
    };
    let ruling = ruling.rule();
    // Its own contact is not always the origin of the heat.
    let by = at.joint_degc - at.alone_degc;
    let more = LoadSaid::MoreThanCable {
        by_k: by,
        shares: in_tenths(by, &done.shares(of)),
    };
    let why = ruling.why.clone().map(|why| Said::all([why, more.into()]));
    vec![done.weighed(Ruling { why, ..ruling })]
}
